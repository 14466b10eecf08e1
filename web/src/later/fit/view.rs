//! What the parts of this question share: headlines, lines and drawings.

use super::found::{Asked, Found};
use crate::ask::working;
use crate::chart::{Chart, Table, chart, nothing, use_width};
use crate::component::{Headline, headline};
use crate::dom::{Node, el, said};
use crate::drawing::Plan;
use crate::text::Style;
use pitchline_core::Headline as Which;

/// Says something of the answers.
pub(super) type Say<T> = fn(&Found, Style) -> T;

/// Headlines side by side, each with its working folded away beneath.
pub(super) fn headlines(asked: &Asked, list: &[(Which, Say<Headline>)]) -> Node {
    let one = |(which, say): &(Which, Say<Headline>)| {
        let (asked, say, app) = (asked.clone(), *say, asked.app);
        let now = move || asked.found().map(|f| say(&f, app.style())).unwrap_or_default();
        el("div").class("answer").with(headline(now)).with(working(app, *which)).into()
    };
    el("div").class("answers").with(list.iter().map(one).collect::<Node>()).into()
}

/// A paragraph that follows the answers.
pub(super) fn line(asked: &Asked, say: Say<String>) -> Node {
    let (asked, app) = (asked.clone(), asked.app);
    let now = move || asked.found().map(|f| say(&f, app.style())).unwrap_or_default();
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
        move || asked.found().map(|found| (found, app.style()))
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
        heads: vec!["Measure".into(), plan.ruler.symbol.into(), "".into()],
        rows,
    }
}
