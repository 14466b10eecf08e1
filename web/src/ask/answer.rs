//! What the questions share: a headline with its working, and runs of one limit.

use super::working;
use crate::chart::{Chart, Drawing, Region, Table, chart, nothing, use_width};
use crate::component::{Headline, headline};
use crate::dom::{Node, el};
use crate::state::App;
use crate::text::{Style, page, words};
use pitchline_core::{Answers, Headline as Which, Limit};

/// Says a headline of the answers.
pub(super) type Say = fn(App, &Answers, Style) -> Headline;

/// A headline from the answers; where a part is missing, none and why.
pub(super) fn say(app: App, say: Say) -> Headline {
    app.found().map(|found| say(app, &found.answers, app.style())).unwrap_or_else(|| Headline {
        name: page::NO_FIGURES.into(),
        figure: "–".into(),
        ..Headline::default()
    })
}

/// Headlines side by side, each with its working folded away beneath.
pub(super) fn answers(app: App, list: &[(Which, Say)]) -> Node {
    let answer = |(which, says): &(Which, Say)| {
        let says = *says;
        let headline = headline(move || say(app, says));
        el("div").class("answer").with(headline).with(working::working(app, *which)).into()
    };
    side_by_side(app, list.iter().map(answer).collect())
}

/// Headlines in a row, greyed while they are for the value before.
pub fn side_by_side(app: App, headlines: Node) -> Node {
    let class =
        move || Some(if app.read(|m| m.waits()) { "answers waits" } else { "answers" }.into());
    el("div").follow("class", class).with(headlines).into()
}

/// What binds, in words for a headline.
pub(super) fn bound(limit: Limit) -> String {
    format!("Limit: {}", words::limit(limit))
}

/// Stretches of a curve in which one limit binds. Each limit keeps its dash
/// throughout the curve.
pub(super) fn regions(points: &[(f64, Limit)]) -> Vec<Region> {
    let mut kinds: Vec<Limit> = Vec::new();
    let mut regions: Vec<Region> = Vec::new();
    let mut last = None;
    for (x, limit) in points {
        if last == Some(*limit) {
            if let Some(region) = regions.last_mut() {
                region.to = *x;
            }
            continue;
        }
        // The next stretch begins where the last one ends.
        let from = regions.last().map_or(*x, |region| region.to);
        let kind = kinds.iter().position(|known| known == limit).unwrap_or_else(|| {
            kinds.push(*limit);
            kinds.len() - 1
        });
        // The words for it are short beside a curve.
        let name = words::limit(*limit);
        let name = name.strip_suffix(" limit").unwrap_or(name).into();
        regions.push(Region { from, to: *x, kind, name });
        last = Some(*limit);
    }
    regions
}

/// What a chart of the answers shows.
#[derive(Clone, Copy)]
pub(super) struct Figure {
    /// Its finding, as a sentence.
    pub(super) finding: fn(&Answers, Style) -> String,
    /// Its drawing, for a width.
    pub(super) draw: fn(&Answers, Style, f64) -> Drawing,
    /// Its numbers.
    pub(super) rows: fn(&Answers, Style) -> Table,
    /// What the arrow keys do.
    pub(super) hint: &'static str,
}

/// What the arrow keys do on a curve.
pub const ALONG_CURVE: &str = "Arrow keys move along the curve";

/// A chart of the answers.
pub(super) fn figure(app: App, figure: Figure) -> Node {
    let width = use_width(340.0);
    let Figure { finding, draw, rows, hint } = figure;
    let with = move || app.found().map(|found| (found, app.style()));
    chart(Chart {
        key: Box::new(move || app.key()),
        finding: Box::new(move || with().map_or_else(String::new, |(f, s)| finding(&f.answers, s))),
        draw: Box::new(move |width| {
            with().map_or_else(|| nothing(width, ""), |(f, s)| draw(&f.answers, s, width))
        }),
        table: Box::new(move || with().map_or_else(Table::default, |(f, s)| rows(&f.answers, s))),
        hint,
        width,
        on_pick: None,
    })
}

/// A table under its usual title.
pub fn table(caption: &str, heads: Vec<String>, rows: Vec<Vec<String>>) -> Table {
    Table { label: "Table".into(), caption: caption.into(), heads, rows }
}
