//! The head of the page, and the answers that stay in view.

use super::answer::{Say, say};
use super::{far, fast, steep};
use crate::browser;
use crate::component::{Headline, button, headline};
use crate::dom::{Node, el, said};
use crate::state::App;
use crate::text::{Units, page};

pub(super) fn header(app: App) -> Node {
    let unit = move |units: Units, words: &'static str| {
        button(words, move || app.set_units(units)).pressed(move || app.units() == units)
    };
    el("header")
        .class("top")
        .with(
            el("div")
                .with(el("h1").with("Pitchline"))
                .with(el("p").class("maker").with(said(move || app.catalog().maker.clone())))
                .with(el("p").class("tagline").with(page::TAGLINE)),
        )
        .with(
            el("div")
                .class("units")
                .attr("role", "group")
                .attr("aria-label", "Units")
                .with(unit(Units::Metric, "km, kg"))
                .with(unit(Units::Imperial, "mi, lb")),
        )
        .into()
}

/// Three answers that stay in view; each leads to its question.
pub(super) fn strip(app: App) -> Node {
    let tile = |to: &'static str, name: &'static str, says: Say| {
        let headline = headline(move || Headline { name: name.into(), ..say(app, says) });
        button("", move || browser::scroll_to(to)).class("tile").with(headline)
    };
    let class = move || Some(if app.read(|m| m.waits()) { "strip waits" } else { "strip" }.into());
    el("nav")
        .follow("class", class)
        .attr("aria-label", "Answers")
        .with(tile("fast", page::TOP_SPEED, |_, a, style| {
            fast::speed(String::new(), a.speed.flat_full, style)
        }))
        .with(tile("steep", page::HILL, |_, a, style| {
            steep::hill(String::new(), a.climb.slow, style)
        }))
        .with(tile("far", page::DISTANCE, |_, a, style| far::distance(a, style)))
        .with(
            el("p")
                .class("strip-waits")
                .flag("hidden", move || !app.read(|m| m.waits()))
                .with(page::WAITS),
        )
        .into()
}
