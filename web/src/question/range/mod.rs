//! How far?

mod season;

use super::answers::{Answers, Say, Workings, say};
use super::draws::{ALONG_BARS, Draws, sketch, table};
use super::input::Input;
use super::registry::Line;
use super::sure::Sure;
use super::trip::Trip;
use crate::app::{App, Banded, Found, use_app};
use crate::chart::{Bar, Bars, Drawing, Figure, Table};
use crate::component::{Caution, Fold};
use crate::text::{Answer, Style, answer, page, percent, words};
use leptos::prelude::*;
use pitchline_core::ride::END_SHARE;
use pitchline_core::{Answers, Headline, Slot, Unit};
use season::Seasons;

static DISTANCE: &[(Headline, Say)] = &[(Headline::Distance, distance)];

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let answer = say(app, distance).get();
    Line::plain(format!("{} {}. {}", answer.figure, answer.unit, answer.limit))
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let facts = move || {
        let style = app.style();
        app.found().and_then(|found| spent(&found.answers, style)).unwrap_or_default()
    };
    view! {
        <Answers list=DISTANCE />
        <p class="facts">{facts}</p>
        <div class="fields">
            <Input of=Slot::Ride key="start_charge_percent" />
        </div>
        <Caution text=page::CAUTION_PACK />
        <Fold class="evidence" title=page::RIDE holds="ride">
            <Trip />
        </Fold>
        <Fold class="evidence" title="Where the energy goes">
            <Figure sketch=sketch(move || app.found(), &ENERGY) hint=ALONG_BARS />
        </Fold>
        <Fold class="evidence" title="In the cold, and with age">
            <Seasons />
        </Fold>
        <Fold class="evidence" title=page::SURE>
            <Sure of=Banded::Distance />
        </Fold>
        <Workings list=DISTANCE />
    }
    .into_any()
}

/// The distance at the rider's speed.
fn distance(app: App, found: &Found, style: Style) -> Answer {
    let (answers, sure) = (&found.answers, app.sure(Banded::Distance));
    let reach = answers.distance.cruise;
    let speed = style.speed_unit(reach.speed_m_s);
    let name = format!("At {speed}, no stops{}", answer::from_charge(answers));
    answer::distance(name, answers, sure.about(reach.distance_m), style)
}

/// Up to where it is counted, and what it takes; none where it does not get going.
fn spent(answers: &Answers, style: Style) -> Option<String> {
    let distance = &answers.distance;
    let spent = style.quantity(distance.wh_per_km, Unit::WattHourPerKilometre, 2);
    let reach = &distance.cruise;
    if reach.distance_m <= 0.0 {
        return None;
    }
    let last = style.speed_unit(END_SHARE * reach.wish_m_s);
    Some(format!(
        "Counted until the board drops below {last} (80\u{a0}% of {}). {}. After that it limps another {} down to walking pace. {spent} from the cells, on the flat without stops. At the same speed stops, hills and wind take more.",
        if reach.wish_m_s < reach.speed_m_s {
            "what it reaches"
        } else {
            "the speed you asked for"
        },
        match reach.full_wish_m {
            none if none <= 0.0 =>
                format!("It never reaches {}", style.speed_unit(reach.speed_m_s)),
            full_m => format!("The first {} are at the full speed", style.distance_unit(full_m)),
        },
        style.distance_unit(reach.limp_m),
    ))
}

/// Where the energy of the ride goes, largest first.
static ENERGY: Draws<Found> = Draws {
    finding: |found, style| energy_finding(&found.answers, style),
    draw: |found, style, width| energy_draw(&found.answers, style, width),
    table: |found, style| energy_rows(&found.answers, style),
};

fn energy_finding(answers: &Answers, style: Style) -> String {
    let spent = style.quantity(answers.distance.ledger.stored_wh, Unit::WattHour, 3);
    match sorted(answers).as_slice() {
        [first, second, ..] => format!(
            "Most of the {spent} goes into {} ({}) and {} ({}). A label counts nominal volts and no heat in the cells, so its figure is another.",
            first.name.to_ascii_lowercase(),
            percent(first.share),
            second.name.to_ascii_lowercase(),
            percent(second.share)
        ),
        _ => "No ride, no energy.".into(),
    }
}

fn energy_draw(answers: &Answers, style: Style, width: f64) -> Drawing {
    let bar = |sink: &Sink| {
        let text =
            format!("{}, {}", style.quantity(sink.wh, Unit::WattHour, 2), percent(sink.share));
        Bar {
            name: sink.name.into(),
            values: vec![sink.wh],
            readout: format!("{}: {text}", sink.name),
            text,
        }
    };
    let bars = sorted(answers).iter().map(bar).collect();
    Bars { bars, nothing: "No ride, no energy.".into(), ..Bars::default() }.draw(width)
}

fn energy_rows(answers: &Answers, style: Style) -> Table {
    let row = |sink: &Sink| {
        vec![
            sink.name.into(),
            style.significant(sink.wh, 2),
            style.significant(sink.share * 100.0, 2),
        ]
    };
    let rows = sorted(answers).iter().map(row).collect();
    table("Where the energy goes", vec!["Into".into(), "Wh".into(), "%".into()], rows)
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
