//! What the parts of this question share: headlines, lines and drawings.

use crate::app::{Fit, use_app};
use crate::chart::{Figure, Table};
use crate::component::{AnswerView, SideBySide};
use crate::drawing::Plan;
use crate::question::{Draws, Working, WorkingSteps, sketch};
use crate::text::{self, Answer, Style, page, whole, words};
use leptos::prelude::*;
use pitchline_core::fit::{FrameHeadline, Row, frame_working};
use pitchline_core::physics::frame::TIGHT_M;
use pitchline_core::{Headline as Which, Slot, Unit};
use std::sync::Arc;

/// Says something of the answers.
pub(super) type Say<T> = fn(&Fit, Style) -> T;
/// A headline, and what shows its working.
pub(super) type Answered = (Shows, Say<Answer>);

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

/// What is said of the answers of now; empty where there are none.
fn told<T: Default + PartialEq + Send + Sync + 'static>(say: Say<T>) -> Memo<T> {
    let app = use_app();
    Memo::new(move |_| {
        let style = app.style();
        app.fit().map(|found| say(&found, style)).unwrap_or_default()
    })
}

/// Headlines side by side, each with its working folded away beneath.
#[component]
pub(super) fn Headlines(list: &'static [Answered]) -> impl IntoView {
    let app = use_app();
    let one = |(shows, say): &Answered| {
        let working = match *shows {
            Shows::Drive(which) => view! { <Working which title=page::WORKING_FOLD /> }.into_any(),
            Shows::Frame(which) => view! { <FrameWorking which /> }.into_any(),
            Shows::Nothing => ().into_any(),
        };
        view! { <div class="answer"><AnswerView answer=told(*say) /> {working}</div> }
    };
    let list = list.iter().map(one).collect_view();
    let waits = Signal::derive(move || app.waits());
    view! { <SideBySide waits>{list}</SideBySide> }
}

/// The working of a headline about frame, deck and box, folded away.
#[component]
fn FrameWorking(which: FrameHeadline) -> impl IntoView {
    let app = use_app();
    let steps = move || {
        let found = app.fit();
        found
            .map(|f| frame_working(&f.draft, &f.build, f.together.centre_m, which))
            .unwrap_or_default()
    };
    view! { <WorkingSteps title=page::WORKING_FOLD first=page::STEPPED steps /> }
}

/// A paragraph that follows the answers.
#[component]
pub(super) fn Line(say: Say<String>) -> impl IntoView {
    view! { <p class="facts">{told(say)}</p> }
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
pub(super) fn length(name: &str, length_m: f64, limit: String, style: Style) -> Answer {
    Answer {
        name: name.into(),
        figure: room(style, length_m),
        unit: style.units.shown(Unit::Millimetre).symbol,
        limit,
    }
}

/// A drawing to scale.
pub(super) struct Drawn {
    /// What it shows, as a sentence.
    pub(super) finding: Say<String>,
    /// The drawing.
    pub(super) plan: Say<Plan>,
    /// Further rows of its table.
    pub(super) more: Say<Vec<(&'static str, String)>>,
}

/// A drawing of the answers of now.
struct OfNow {
    found: Arc<Fit>,
    drawn: &'static Drawn,
}

static OF_NOW: Draws<OfNow> = Draws {
    finding: |OfNow { found, drawn }, style| (drawn.finding)(found, style),
    draw: |OfNow { found, drawn }, style, width| (drawn.plan)(found, style).draw(width),
    table: |OfNow { found, drawn }, style| table(drawn, found, style),
};

/// The figure of a drawing.
#[component]
pub(super) fn ToScale(of: &'static Drawn) -> impl IntoView {
    let app = use_app();
    let now = move || Some(Arc::new(OfNow { found: app.fit()?, drawn: of }));
    view! { <Figure sketch=sketch(now, &OF_NOW) hint="Arrow keys visit the dimensions" /> }
}

fn table(view: &Drawn, found: &Fit, style: Style) -> Table {
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
