//! The head of the page, and the answers that stay in view.

use super::answer::{Say, say};
use super::field::{lead_to, lead_to_part};
use super::on_it::MISFITS;
use super::{far, fast, steep};
use crate::browser;
use crate::component::{Headline, button, headline};
use crate::dom::{Node, el, said};
use crate::state::{App, Banded, Place, Sure};
use crate::text::{self, Style, Units, page};
use pitchline_core::Answers;
use std::cell::RefCell;
use std::rc::Rc;

pub(super) fn header(app: App) -> Node {
    let unit = move |units: Units, words: &'static str| {
        button(words, move || app.set_units(units)).pressed(move || app.units() == units)
    };
    let offline =
        move || app.read(|model| if model.offline == "ready" { page::OFFLINE } else { "" });
    el("header")
        .class("top")
        .with(
            el("div")
                .with(el("h1").with("Pitchline"))
                .with(el("p").class("maker").with(said(move || app.catalog().maker.clone())))
                .with(el("p").class("tagline").with(page::TAGLINE))
                // Said once, by appearing: nothing is covered and nothing has to be closed.
                .with(
                    el("p")
                        .class("tagline")
                        .attr("role", "status")
                        .with(said(move || offline().into())),
                ),
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

/// Three answers that stay in view, each leading to its question, and under
/// them what stands in the way, leading to where it is told.
pub(super) fn strip(app: App) -> Node {
    let tile = |to: &'static str, says: Say| {
        let headline = headline(move || say(app, says));
        button("", move || browser::go_to(to)).class("tile").with(headline)
    };
    let note = |says: fn(App) -> String, act: fn(App)| {
        button("", move || act(app)).class("strip-note").with(said(move || says(app)))
    };
    let class = move || Some(if app.read(|m| m.waits()) { "strip waits" } else { "strip" }.into());
    el("nav")
        .follow("class", class)
        .attr("aria-label", "Answers")
        .with(tile("fast", |app, a, style| top_speed(a, app.sure(Banded::Speed), style)))
        .with(tile("steep", |app, a, style| hill(a, app.sure(Banded::Hill), style)))
        .with(tile("far", |app, a, style| distance(a, app.sure(Banded::Distance), style)))
        .with(note(missing, |app| {
            if let Some(slot) = app.peek(|m| m.draft.unfilled().first().map(|u| u.slot)) {
                lead_to_part(slot);
            }
        }))
        .with(note(misfits, |app| {
            let later = app.peek(|model| model.amiss) > 0;
            browser::go_to(if later { AMISS } else { MISFITS });
        }))
        .with(note(waits, |app| app.peek(|m| m.typed.fault().map(|f| f.0)).map_or((), lead_to)))
        .into()
}

/// Id of what does not fit by size, told by the later piece together with the rest.
pub const AMISS: &str = "amiss";

/// The first part that is missing; nothing where all are there.
fn missing(app: App) -> String {
    app.read(|model| model.draft.unfilled().first().map_or_else(String::new, text::pick_another))
}

/// How many parts do not go together; nothing where all do.
fn misfits(app: App) -> String {
    let by_size = app.read(|model| model.amiss);
    match app.found().map_or(0, |found| found.notices.len()) + by_size {
        0 => String::new(),
        1 => "1 thing does not fit".into(),
        n => format!("{n} things do not fit"),
    }
}

/// What is wrong with the first faulty field; nothing where none is.
fn waits(app: App) -> String {
    let waits = |(_, fault): (Place, &str)| format!("{} {fault}.", page::WAITS);
    app.read(|model| model.typed.fault().map_or_else(String::new, waits))
}

/// Milliseconds after the last change at which the answers are read out.
const SETTLED: u32 = 1000;

/// For who does not see the strip: its answers, once an edit and its bands have
/// settled and they are others than before.
pub(super) fn aloud(app: App) -> Node {
    // The first screen is no edit: what is said of it is only kept.
    let last = Rc::new(RefCell::new((app.key(), String::new())));
    let says = move || {
        let (key, last) = (app.key(), last.clone());
        browser::later(SETTLED, move || {
            // A later change has its own turn, as have the end of a fault and a band.
            if app.key() != key || app.peek(|model| model.waits() || model.unsure()) {
                return;
            }
            let now = sentence(app);
            let (said, before) = last.replace((key.clone(), now.clone()));
            if said != key && before != now {
                app.change(|model| model.heard = now);
            }
        });
        app.read(|model| model.heard.clone())
    };
    el("p").class("aloud").attr("role", "status").with(said(says)).into()
}

fn sentence(app: App) -> String {
    let Some(found) = app.found() else { return String::new() };
    let part = |says: fn(&Answers, Sure, Style) -> Headline, of| {
        let Headline { figure, unit, .. } = says(&found.answers, app.sure(of), app.style());
        // A dash is passed over in speech.
        let figure = figure.replace('–', " to ");
        if unit.is_empty() { figure } else { format!("{figure} {unit}") }
    };
    let (speed, hill) = (part(top_speed, Banded::Speed), part(hill, Banded::Hill));
    let far = part(distance, Banded::Distance);
    format!("Top speed {speed}, steepest hill {hill}, distance {far}.")
}

/// The first answer of the strip.
pub(super) fn top_speed(answers: &Answers, sure: Sure, style: Style) -> Headline {
    fast::speed(page::TOP_SPEED.into(), answers.speed.flat_full, sure, style)
}

/// The second.
pub(super) fn hill(answers: &Answers, sure: Sure, style: Style) -> Headline {
    let found = answers.climb.slow;
    let name = format!("{} {}", page::HILL, style.speed_unit(found.speed_m_s));
    steep::hill(name, found, sure, style)
}

/// The third.
pub(super) fn distance(answers: &Answers, sure: Sure, style: Style) -> Headline {
    let speed = style.speed_unit(answers.distance.cruise.speed_m_s);
    let name = format!("{} {speed}{}", page::DISTANCE, far::from(answers));
    Headline { name, ..far::distance(answers, sure, style) }
}
