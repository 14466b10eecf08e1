//! What the parts of this question share: headlines, lines and drawings.

use crate::app::{Fit, use_app};
use crate::chart::{Figure, Table};
use crate::component::{AnswerView, SideBySide};
use crate::drawing::Plan;
use crate::question::{Draws, sketch};
use crate::text::{Answer, Style, fit as words};
use leptos::prelude::*;
use std::sync::Arc;

/// Says something of the answers.
pub(super) type Say<T> = fn(&Fit, Style) -> T;

/// What is said of the answers of now; empty where there are none.
pub(super) fn told<T: Default + PartialEq + Send + Sync + 'static>(say: Say<T>) -> Memo<T> {
    let app = use_app();
    Memo::new(move |_| {
        let style = app.style();
        app.fit().map(|found| say(&found, style)).unwrap_or_default()
    })
}

/// Headlines side by side.
#[component]
pub(super) fn Headlines(list: &'static [Say<Answer>]) -> impl IntoView {
    let app = use_app();
    let one = |say: &Say<Answer>| view! { <AnswerView answer=told(*say) /> };
    let list = list.iter().map(one).collect_view();
    let waits = Signal::derive(move || app.waits());
    view! { <SideBySide waits>{list}</SideBySide> }
}

/// A paragraph that follows the answers.
#[component]
pub(super) fn Line(say: Say<String>) -> impl IntoView {
    view! { <p class="facts">{told(say)}</p> }
}

/// A drawing to scale.
pub(super) struct Drawn {
    /// What opens its table.
    pub(super) label: &'static str,
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
    view! { <Figure sketch=sketch(now, &OF_NOW) hint=words::ALONG_DIMENSIONS /> }
}

fn table(view: &Drawn, found: &Fit, style: Style) -> Table {
    let plan = (view.plan)(found, style);
    let mut rows = plan.rows();
    rows.extend(
        (view.more)(found, style)
            .into_iter()
            .map(|(name, value)| vec![name.into(), value, String::new()]),
    );
    let [measure, note] = words::DIMENSION_HEADS.map(String::from);
    Table {
        label: view.label.into(),
        caption: (view.finding)(found, style),
        heads: vec![measure, plan.ruler.symbol.into(), note],
        rows,
    }
}
