//! From an answer to a figure.

use crate::app::use_app;
use crate::chart::{Drawing, Sketch, Table};
use crate::text::Style;
use leptos::prelude::*;
use std::sync::Arc;

/// How something is drawn.
pub struct Draws<T> {
    /// Its finding, as a sentence.
    pub finding: fn(&T, Style) -> String,
    /// Its drawing, for a width.
    pub draw: fn(&T, Style, f64) -> Drawing,
    /// Its numbers.
    pub table: fn(&T, Style) -> Table,
}

/// A figure's sketch of what `of` gives, made anew when that or the way of writing changes.
pub fn sketch<T: Send + Sync>(
    of: impl Fn() -> Option<Arc<T>> + Send + Sync + 'static,
    draws: &'static Draws<T>,
) -> Signal<Option<Arc<Sketch>>> {
    let app = use_app();
    kept(Box::new(move || {
        let (of, style) = (of()?, app.style());
        let (said, rows) = (of.clone(), of.clone());
        Some(Sketch::new(
            move || (draws.finding)(&said, style),
            move |width| (draws.draw)(&of, style, width),
            move || (draws.table)(&rows, style),
        ))
    }))
}

/// A sketch, kept until what it reads changes.
pub fn kept(
    sketch: Box<dyn Fn() -> Option<Arc<Sketch>> + Send + Sync>,
) -> Signal<Option<Arc<Sketch>>> {
    Memo::new_with_compare(move |_| sketch(), |_, _| true).into()
}
