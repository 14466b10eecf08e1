//! What the parts of this question share: headlines, lines and drawings.

use super::found::{Asked, Found};
use crate::ask::{side_by_side, working};
use crate::chart::{Chart, Table, chart, nothing, use_width};
use crate::component::{Headline, fold, headline};
use crate::dom::{Node, el, said};
use crate::drawing::Plan;
use crate::later::working::list;
use crate::text::{self, Style, page, whole, words};
use pitchline_core::fit::{FrameHeadline, Row, frame_working};
use pitchline_core::physics::frame::TIGHT_M;
use pitchline_core::{Headline as Which, Slot, Unit};

/// Says something of the answers.
pub(super) type Say<T> = fn(&Found, Style) -> T;

/// What shows its working.
#[derive(Clone, Copy)]
pub(super) enum Shows {
    /// A headline that the drive answers.
    Drive(Which),
    /// One about frame, deck and box.
    Frame(FrameHeadline),
    /// Nothing shows it.
    Nothing,
}

/// Headlines side by side, each with its working folded away beneath.
pub(super) fn headlines(asked: &Asked, list: &[(Shows, Say<Headline>)]) -> Node {
    let one = |(which, say): &(Shows, Say<Headline>)| {
        let (now, say, app) = (asked.clone(), *say, asked.app);
        let now = move || now.get().map(|f| say(&f, app.style())).unwrap_or_default();
        let working = match which {
            Shows::Drive(which) => working(app, *which),
            Shows::Frame(which) => frame(asked, *which),
            Shows::Nothing => Node::None,
        };
        el("div").class("answer").with(headline(now)).with(working).into()
    };
    side_by_side(asked.app, list.iter().map(one).collect())
}

fn frame(asked: &Asked, which: FrameHeadline) -> Node {
    let asked = asked.clone();
    let inside = move || {
        let (asked, app) = (asked.clone(), asked.app);
        let steps = move || {
            let found = asked.get();
            found.map(|f| frame_working(&f.draft, &f.build, f.centre_m, which)).unwrap_or_default()
        };
        list(app, page::STEPPED, steps)
    };
    fold("working", "Working", inside).into()
}

/// With the unit of a length.
pub(super) fn unit(style: Style, figure: &str) -> String {
    format!("{figure}\u{a0}{}", style.units.shown(Unit::Millimetre).symbol)
}

/// A length with its unit, to a tenth of a millimetre.
pub(super) fn mm(style: Style, length_m: f64) -> String {
    unit(style, &style.millimetres(length_m))
}

/// The same to a millimetre.
pub(super) fn rough(style: Style, length_m: f64) -> String {
    unit(style, &style.rough_millimetres(length_m))
}

/// A length as it was entered.
pub(super) fn entered(style: Style, length_m: f64) -> String {
    unit(style, &style.entered_millimetres(length_m))
}

/// What is needed, bare.
pub(super) fn least(style: Style, length_m: f64) -> String {
    style.bounded_millimetres(length_m, true)
}

/// A length with its unit, so rounded up or down.
pub(super) fn bound(style: Style, length_m: f64, up: bool) -> String {
    unit(style, &style.bounded_millimetres(length_m, up))
}

/// What is needed, with its unit.
pub(super) fn at_least(style: Style, length_m: f64) -> String {
    bound(style, length_m, true)
}

/// What there is, with its unit.
pub(super) fn at_most(style: Style, length_m: f64) -> String {
    bound(style, length_m, false)
}

/// An angle to a tenth of a degree, bare, rounded in the same way.
pub(super) fn tenth(style: Style, angle: f64, up: bool) -> String {
    style.significant(whole(angle * 10.0, up) / 10.0, 3)
}

/// Room between two parts, or how much there is too little, bare: to a tenth
/// where it is tight or none.
pub(super) fn room(style: Style, room_m: f64) -> String {
    if room_m < 0.0 {
        least(style, -room_m)
    } else if room_m < TIGHT_M {
        style.bounded_millimetres(room_m, false)
    } else {
        style.rough_millimetres(room_m)
    }
}

/// From one to the other, in the file's unit, rounded outward to whole steps:
/// what rests on such inputs is no surer.
pub(super) fn band(style: Style, [low, high]: [f64; 2], unit: Unit, step: f64) -> String {
    let low = (low / step).floor() * step;
    let most = style.quantity((high / step).ceil() * step, unit, 2);
    if low > 0.0 {
        format!("{} to {most}", style.value(low, unit, 2))
    } else {
        format!("up to {most}")
    }
}

/// A share in whole percent.
pub(super) fn percent(share: f64, style: Style) -> String {
    format!("{}\u{a0}%", style.fixed(share * 100.0, 0))
}

/// An angle in whole degrees.
pub(super) fn degrees(style: Style, angle: f64) -> String {
    format!("{}°", style.fixed(angle, 0))
}

/// Which sizes were assumed, by their names; empty where none was.
pub(super) fn sizes(rows: &[Row]) -> String {
    let name = |row: &Row| {
        let label = text::label(row.slot.kind(), row.key).to_lowercase();
        // The part is said where the label alone does not tell.
        match row.key {
            "width_mm" | "length_mm" | "height_mm" | "thickness_mm" | "pitch_mm"
                if row.slot != Slot::Truck =>
            {
                format!("{} {label}", words::slot(row.slot).to_lowercase())
            }
            _ => label,
        }
    };
    rows.iter().map(name).collect::<Vec<_>>().join("; ")
}

/// A length as a headline, or how much room there is too little.
pub(super) fn length(name: &str, length_m: f64, limit: String, style: Style) -> Headline {
    Headline {
        name: name.into(),
        figure: room(style, length_m),
        unit: style.units.shown(Unit::Millimetre).symbol,
        limit,
    }
}

/// A paragraph that follows the answers.
pub(super) fn line(asked: &Asked, say: Say<String>) -> Node {
    let (asked, app) = (asked.clone(), asked.app);
    let now = move || asked.get().map(|f| say(&f, app.style())).unwrap_or_default();
    el("p").class("facts").with(said(now)).into()
}

/// A drawing to scale.
#[derive(Clone, Copy)]
pub(super) struct Drawn {
    /// What it shows, as a sentence.
    pub(super) finding: Say<String>,
    /// The drawing.
    pub(super) plan: Say<Plan>,
    /// Further rows of its table.
    pub(super) more: Say<Vec<(&'static str, String)>>,
}

pub(super) fn drawn(asked: &Asked, view: Drawn) -> Node {
    let app = asked.app;
    let with = {
        let asked = asked.clone();
        move || asked.get().map(|found| (found, app.style()))
    };
    let (told, draw, rows) = (with.clone(), with.clone(), with);
    chart(Chart {
        key: Box::new(move || app.key()),
        finding: Box::new(move || {
            told().map_or_else(String::new, |(found, style)| (view.finding)(&found, style))
        }),
        draw: Box::new(move |width| {
            let drawing = draw().map(|(found, style)| (view.plan)(&found, style).draw(width));
            drawing.unwrap_or_else(|| nothing(width, ""))
        }),
        table: Box::new(move || {
            rows().map_or_else(Table::default, |(found, style)| table(view, &found, style))
        }),
        hint: "Arrow keys visit the dimensions",
        width: use_width(340.0),
        on_pick: None,
    })
}

fn table(view: Drawn, found: &Found, style: Style) -> Table {
    let plan = (view.plan)(found, style);
    let mut rows = plan.rows();
    rows.extend(
        (view.more)(found, style)
            .into_iter()
            .map(|(name, value)| vec![name.into(), value, String::new()]),
    );
    Table {
        label: "Dimensions".into(),
        caption: (view.finding)(found, style),
        heads: vec!["Measure".into(), plan.ruler.symbol.into(), "Note".into()],
        rows,
    }
}
