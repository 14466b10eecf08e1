//! What the questions share: a headline with its working, and runs of one limit.

use super::{app, working};
use crate::chart::{Chart, ChartProps, Drawing, Region, Table, nothing, use_width};
use crate::component::{Headline, headline};
use crate::text::{Style, words};
use leptos::html;
use leptos::prelude::*;
use pitchline_core::{Answers, Limit};

/// A headline from the answers, with its working folded away beneath.
pub(super) fn answered(
    which: pitchline_core::Headline,
    say: impl Fn(&Answers) -> Headline + Send + Sync + 'static,
) -> AnyView {
    let app = app();
    let said = Signal::derive(move || {
        app.answers.with(|answers| answers.as_ref().map(|a| say(a)).unwrap_or_default())
    });
    html::div().class("answer").child((headline(said), working::working(which))).into_any()
}

/// Several headlines side by side.
pub(super) fn answers(list: Vec<AnyView>) -> AnyView {
    let app = app();
    html::div()
        .class(move || if app.waits() { "answers waits" } else { "answers" })
        .child(list)
        .into_any()
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
        regions.push(Region { from, to: *x, kind, name: words::limit(*limit).into() });
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
pub(super) const ALONG_CURVE: &str = "Arrow keys move along the curve";

/// A chart of the answers.
pub(super) fn figure(figure: Figure) -> AnyView {
    let app = app();
    let width = use_width(340.0);
    let Figure { finding, draw, rows, hint } = figure;
    let finding = Signal::derive(move || {
        let style = app.style.get();
        app.answers.with(|a| a.as_ref().map_or_else(String::new, |a| finding(a, style)))
    });
    let marks = Signal::derive(move || {
        let (style, width) = (app.style.get(), width.get());
        app.answers
            .with(|a| a.as_ref().map_or_else(|| nothing(width, ""), |a| draw(a, style, width)))
    });
    let numbers = Signal::derive(move || {
        let style = app.style.get();
        app.answers.with(|a| a.as_ref().map_or_else(Table::default, |a| rows(a, style)))
    });
    Chart(
        ChartProps::builder()
            .finding(finding)
            .marks(marks)
            .table(numbers)
            .hint(Signal::stored(hint.to_string()))
            .width(width)
            .build(),
    )
    .into_any()
}

/// A table under its usual title.
pub(super) fn table(caption: &str, heads: Vec<String>, rows: Vec<Vec<String>>) -> Table {
    Table { label: "Table".into(), caption: caption.into(), heads, rows }
}
