//! How far?

use super::answer::{Figure, answers, figure, table};
use super::field::input_of;
use super::question;
use crate::chart::{Bar, Bars, Drawing, Table};
use crate::component::{Headline, caution};
use crate::dom::{Node, el, said};
use crate::later;
use crate::state::{App, Banded, Sure};
use crate::text::{Style, page, percent, words};
use pitchline_core::band::Quantity;
use pitchline_core::ride::END_SHARE;
use pitchline_core::{Answers, Headline as Which, Slot, Unit};

/// Names of the sinks, in the core's order.
pub const SINKS: [&str; 11] = [
    "Cells, as heat",
    "Joints and wires",
    "Controller",
    "Windings",
    "Motor iron and bearings",
    "Belts",
    "Rolling",
    "Air",
    "Climbing",
    "Brakes",
    "Speed at the end",
];

pub(super) fn far(app: App) -> Node {
    let inside = vec![
        answers(
            app,
            &[(Which::Distance, |app, a, style| distance(a, app.sure(Banded::Distance), style))],
        ),
        el("p").class("facts").with(said(move || spent(app).unwrap_or_default())).into(),
        el("div").class("fields").with(input_of(app, Slot::Ride, "start_charge_percent")).into(),
        caution(page::CAUTION_PACK),
        later::sure(app, Quantity::SteadyDistance),
        figure(app, ENERGY),
        later::ride(app),
        later::season(app),
    ];
    question("far", page::FAR, inside)
}

fn spent(app: App) -> Option<String> {
    let (found, style) = (app.found()?, app.style());
    let distance = &found.answers.distance;
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

/// From which charge, unless the pack is full.
pub(super) fn from(answers: &Answers) -> String {
    let start = answers.distance.cruise.start_charge;
    if start < 0.9995 { format!(", from {}", percent(start)) } else { String::new() }
}

/// The distance as a headline.
pub(super) fn distance(answers: &Answers, sure: Sure, style: Style) -> Headline {
    let reach = answers.distance.cruise;
    let shown = style.units.shown(Unit::Kilometre);
    let name = format!("At {}, no stops{}", style.speed_unit(reach.speed_m_s), from(answers));
    let why = words::met(reach.limit, reach.sag);
    if reach.distance_m <= 0.0 {
        let limit = format!("It doesn't get going: {why}");
        return Headline { name, figure: "0".into(), unit: shown.symbol, limit };
    }
    let limit = if reach.wish_m_s < reach.speed_m_s {
        format!("Too fast to reach: {} at most", style.speed_unit(reach.wish_m_s))
    } else {
        format!("Ends at {} charge: {why}", percent(reach.end_charge))
    };
    let band = sure.about(reach.distance_m);
    let decimals = style.distance_decimals(band);
    let figure = style.span(band.map(|far| style.shown_si(far, Unit::Kilometre)), decimals);
    Headline { name, figure, unit: shown.symbol, limit }
}

/// Where the energy of the ride goes, largest first.
const ENERGY: Figure = Figure {
    finding: energy_finding,
    draw: energy_draw,
    rows: energy_rows,
    hint: "Arrow keys move along the bars",
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
    let sinks = SINKS.into_iter().zip(energy.sinks_wh()).filter(|(_, wh)| *wh >= least_wh);
    let mut sorted: Vec<Sink> = Vec::new();
    for (name, wh) in sinks {
        let place = sorted.iter().position(|sink| sink.wh < wh).unwrap_or(sorted.len());
        sorted.insert(place, Sink { name, wh, share: wh / energy.stored_wh });
    }
    sorted
}
