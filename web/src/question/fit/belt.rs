//! Which belts fit the mount, how tight they want to be, and how hard they work.

use super::cure::{Mend, Mending};
use super::view::{Drawn, Headlines, Line, ToScale, told};
use crate::app::{Fit, use_app};
use crate::chart::{Grid, Table};
use crate::component::Fold;
use crate::drawing::BeltSide;
use crate::text::{Answer, Style, fit as words};
use leptos::prelude::*;
use pitchline_core::fit::Between;
use pitchline_core::{Belt, BeltChoice, Record, Slot};

pub(super) fn centre(found: &Fit, style: Style) -> Answer {
    words::centre(&found.together.belt, style)
}

pub(super) fn pull(found: &Fit, style: Style) -> Answer {
    words::pull(&found.together.belt.load, style)
}

pub(super) fn tension(found: &Fit, style: Style) -> Answer {
    words::tension(&found.together.belt.load, style)
}

/// The belt on offer to order.
fn pick(found: &Fit) -> Option<&Record> {
    found.belt_on_offer(found.together.belt.pick()?.offer?)
}

pub(super) fn belts_hint(found: &Fit, _: Style) -> String {
    words::belts(&found.together.belt, pick(found).map(|part| &*part.name))
}

pub(super) fn tight_hint(found: &Fit, style: Style) -> String {
    words::tension_short(&found.together.belt.load, style)
}

/// The belts that fit, and what puts the best of them on the board.
#[component]
pub(super) fn Belts() -> impl IntoView {
    let app = use_app();
    let grid = move |rows: fn(&Fit, &str, Style) -> Table| {
        move || {
            let (style, catalog) = (app.style(), app.catalog());
            // That nothing fits has been said already.
            let some = app.fit().filter(|found| !found.together.belt.fitting.is_empty());
            some.map(|found| {
                let table = rows(&found, &catalog.currency, style);
                view! { <div class="chart belts"><Grid table /></div> }
            })
        }
    };
    let best = Memo::new(move |_| {
        let found = app.fit()?;
        // What is on the board already need not be taken.
        let part = pick(&found).filter(|part| part.id != found.draft.record(Slot::Belt).id)?;
        Some(Mend::take(Slot::Belt, part, &found.draft))
    });
    let take = move || best.get().map(|mend| view! { <p class="cures"><Mending mend /></p> });
    view! {
        <Line say=|found, style| words::which(&found.together.belt, style) />
        {grid(order)}
        {take}
        <Headlines list=&[centre] />
        <Fold class="working" title=words::BELTS_MORE>
            {grid(more)}
        </Fold>
    }
}

/// How tight, how to check it, and how hard the belt is pulled.
#[component]
pub(super) fn Tight() -> impl IntoView {
    view! {
        <Headlines list=&[tension, pull] />
        <p>{told(|found, style| words::tight(&found.together.belt.load, style))}</p>
    }
}

fn part<'a>(found: &'a Fit, belt: &BeltChoice) -> Option<&'a Record> {
    belt.offer.and_then(|place| found.belt_on_offer(place))
}

/// What a belt is ordered by.
fn order(found: &Fit, _: &str, style: Style) -> Table {
    let row = |belt: &BeltChoice| {
        let part = part(found, belt);
        let figures = part.and_then(|part| Belt::from_record(part).ok());
        // A belt of the usual lengths is one like that on the board.
        let profile = part.unwrap_or_else(|| found.draft.record(Slot::Belt)).tag(0);
        let figures = figures.unwrap_or(found.build.belt);
        words::belts_row(belt, part.map(|part| &*part.name), profile, &figures, style)
    };
    Table {
        label: String::new(),
        caption: words::BELTS_CAPTION.into(),
        heads: words::belts_heads(style),
        rows: found.together.belt.fitting.iter().map(row).collect(),
    }
}

/// Their other figures.
fn more(found: &Fit, currency: &str, style: Style) -> Table {
    let row = |belt: &BeltChoice| {
        let name = part(found, belt).map(|part| &*part.name);
        words::belts_more_row(belt, name, currency, style)
    };
    Table {
        label: String::new(),
        caption: words::BELTS_MORE_CAPTION.into(),
        heads: words::belts_more_heads(style),
        rows: found.together.belt.fitting.iter().map(row).collect(),
    }
}

/// The drive from the side.
pub(super) static SIDE: Drawn = Drawn {
    label: words::DRIVE_TABLE,
    finding: |found, style| {
        words::drive_finding(found.room(Between::PulleyRoad).unwrap_or(0.0), style)
    },
    plan: |found, style| side(found).plan(style),
    more: |found, style| side(found).more(style),
};

/// Its figure.
#[component]
pub(super) fn Side() -> impl IntoView {
    view! { <ToScale of=&SIDE /> }
}

fn side(found: &Fit) -> BeltSide {
    let (build, at) = (&found.build, &found.together.layout);
    let room = |between| found.room(between).unwrap_or(0.0);
    BeltSide {
        wheel_m: build.wheel.diameter_m,
        axle_m: at.axle_up_m,
        centre_m: found.together.centre_m,
        motor_m: (at.motor_ahead_m, at.motor_up_m),
        pitches_m: found.together.belt.pulleys.map(|size| size.pitch_diameter_m),
        pulleys_m: at.pulleys_m,
        pulley_clear_m: room(Between::PulleyRoad),
        motor_clear_m: room(Between::MotorRoad),
        can_m: build.motor.can_diameter_m,
        centre_known: build.belt.teeth.is_some() || build.bench.measured_centre_m.is_some(),
        can_assumed: !found.given(Slot::Motor, "can_diameter_mm")
            || !found.given(Slot::Truck, "mount_angle_deg"),
    }
}
