//! How far?

mod season;

use super::answers::{Answers, Say, Workings, in_a_line};
use super::draws::{Draws, sketch};
use super::hint::hint;
use super::input::{Input, InputAs};
use super::registry::Line;
use super::sure::{self, OverSpeed};
use super::trip::{self, Trip};
use crate::app::{App, Banded, Found, use_app};
use crate::chart::{Bar, Bars, Drawing, Figure, Table};
use crate::component::{Caution, Fold};
use crate::text::range as said;
use crate::text::{Answer, Style, answer, page, words};
use leptos::prelude::*;
use pitchline_core::{Answers, Headline, Slot};
use season::Seasons;

static DISTANCE: &[(Headline, Say)] = &[(Headline::Distance, |app, found, style| {
    distance(app, found, style).explained(&said::explained(&found.answers, style))
})];

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    in_a_line(app, distance)
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let counted = move || {
        let style = app.style();
        app.found().and_then(|found| said::counted(&found.answers, style)).unwrap_or_default()
    };
    view! {
        <Answers list=DISTANCE />
        <OverSpeed />
        <div class="fields">
            <InputAs of=Slot::Ride key="cruise_km_h" place="far" label=said::CRUISE />
            <Input of=Slot::Ride key="start_charge_percent" />
        </div>
        <Caution text=said::CAUTION />
        <Fold class="evidence" title=crate::text::trip::RIDE holds="ride" hint=trip::hint()>
            <Trip />
        </Fold>
        <Fold class="evidence" title=said::ENERGY hint=hint(energy_hint)>
            <Figure sketch=sketch(move || app.found(), &ENERGY) hint=page::ALONG_BARS />
        </Fold>
        <Fold class="evidence" title=said::SEASONS hint=hint(season::hint)>
            <Seasons />
        </Fold>
        <Fold
            class="evidence"
            title=said::COUNTED
            hint=hint(|found, style| said::counted_hint(&found.answers, style))
        >
            <p>{counted}</p>
        </Fold>
        {sure::fold(Banded::Distance)}
        <Workings list=DISTANCE />
    }
    .into_any()
}

/// The distance at the rider's speed.
fn distance(app: App, found: &Found, style: Style) -> Answer {
    let (answers, sure) = (&found.answers, app.sure(Banded::Distance));
    let reach = answers.distance.cruise;
    let name = said::at_speed(reach.speed_m_s, &answer::from_charge(answers), style);
    answer::distance(name, answers, sure.about(reach.distance_m), style)
}

/// Where the energy of the ride goes, largest first.
static ENERGY: Draws<Found> = Draws {
    finding: |found, style| energy_finding(&found.answers, style),
    draw: |found, style, width| energy_draw(&found.answers, style, width),
    table: |found, style| energy_rows(&found.answers, style),
};

fn energy_finding(answers: &Answers, style: Style) -> String {
    let stored_wh = answers.distance.ledger.stored_wh;
    largest(answers)
        .map_or_else(|| said::NO_ENERGY.into(), |most| said::energy(stored_wh, most, style))
}

fn energy_hint(found: &Found, _: Style) -> String {
    largest(&found.answers).map_or_else(|| said::NO_ENERGY.into(), said::energy_hint)
}

/// The two that take most.
fn largest(answers: &Answers) -> Option<[(&'static str, f64); 2]> {
    match sorted(answers).as_slice() {
        [first, second, ..] => Some([(first.name, first.share), (second.name, second.share)]),
        _ => None,
    }
}

fn energy_draw(answers: &Answers, style: Style, width: f64) -> Drawing {
    let bar = |sink: &Sink| {
        let text = said::energy_amount(sink.wh, sink.share, style);
        Bar {
            name: sink.name.into(),
            values: vec![sink.wh],
            readout: format!("{}: {text}", sink.name),
            text,
        }
    };
    let bars = sorted(answers).iter().map(bar).collect();
    Bars { bars, nothing: said::NO_ENERGY.into(), ..Bars::default() }.draw(width)
}

fn energy_rows(answers: &Answers, style: Style) -> Table {
    let row = |sink: &Sink| {
        vec![
            sink.name.into(),
            style.significant(sink.wh, 2),
            style.significant(sink.share * 100.0, 2),
        ]
    };
    Table {
        label: said::ENERGY_TABLE.into(),
        caption: said::ENERGY.into(),
        heads: said::ENERGY_HEADS.map(String::from).into(),
        rows: sorted(answers).iter().map(row).collect(),
    }
}

/// Something that takes energy.
struct Sink {
    name: &'static str,
    wh: f64,
    share: f64,
}

/// Everything that takes energy on the ride, largest first.
fn sorted(answers: &Answers) -> Vec<Sink> {
    let energy = &answers.distance.ledger;
    // Under half a percent a bar is not seen.
    let least_wh = 0.005 * energy.stored_wh;
    let sinks = words::SINKS.into_iter().zip(energy.sinks_wh()).filter(|(_, wh)| *wh >= least_wh);
    let mut sorted: Vec<Sink> = Vec::new();
    for (name, wh) in sinks {
        let place = sorted.iter().position(|sink| sink.wh < wh).unwrap_or(sorted.len());
        sorted.insert(place, Sink { name, wh, share: wh / energy.stored_wh });
    }
    sorted
}
