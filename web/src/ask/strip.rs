//! The head of the page, and the answers that stay in view.

use super::{app, far, fast, steep};
use crate::browser;
use crate::component::{Headline, headline};
use crate::text::{Style, Units, page};
use leptos::html;
use leptos::prelude::*;
use leptos::{ev, prelude::AnyView};
use pitchline_core::Answers;

pub(super) fn header() -> AnyView {
    let app = app();
    let maker = move || app.catalog().maker.clone();
    let unit = move |units: Units, words: &'static str| {
        html::button()
            .r#type("button")
            .attr("aria-pressed", move || if app.units() == units { "true" } else { "false" })
            .on(ev::click, move |_| app.set_units(units))
            .child(words)
            .into_any()
    };
    html::header()
        .class("top")
        .child((
            html::div()
                .child((
                    html::h1().child("Pitchline"),
                    html::p().class("maker").child(maker),
                    html::p().class("tagline").child(page::TAGLINE),
                ))
                .into_any(),
            html::div()
                .class("units")
                .role("group")
                .attr("aria-label", "Units")
                .child((unit(Units::Metric, "km, kg"), unit(Units::Imperial, "mi, lb")))
                .into_any(),
        ))
        .into_any()
}

/// Three answers that stay in view; each leads to its question.
pub(super) fn strip() -> AnyView {
    let app = app();
    let tile = |to: &'static str, name: &'static str, say: fn(&Answers, Style) -> Headline| {
        let said = Signal::derive(move || {
            let style = app.style.get();
            let said = app.answers.with(|answers| answers.as_ref().map(|a| say(a, style)));
            Headline { name: name.into(), ..said.unwrap_or_default() }
        });
        html::button()
            .r#type("button")
            .class("tile")
            .on(ev::click, move |_| browser::scroll_to(to))
            .child(headline(said))
            .into_any()
    };
    html::nav()
        .class(move || if app.waits() { "strip waits" } else { "strip" })
        .attr("aria-label", "Answers")
        .child((
            tile("fast", page::TOP_SPEED, |a, style| {
                fast::speed(String::new(), a.speed.flat_full, style)
            }),
            tile("steep", page::HILL, |a, style| steep::hill(String::new(), a.climb.slow, style)),
            tile("far", page::DISTANCE, far::distance),
            html::p()
                .class("strip-waits")
                .attr("hidden", move || !app.waits())
                .child(page::WAITS)
                .into_any(),
        ))
        .into_any()
}
