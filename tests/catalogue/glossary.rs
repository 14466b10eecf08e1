//! The glossary of the developers' guide, made from the core's own.

use crate::{text, written};
use pitchline_core::physics::symbol::{MEANINGS, SYMBOLS};
use std::fmt::Write as _;

const HEAD: &str = "| symbol | what | unit |\n|---|---|---|\n";

/// The guide with this glossary at its end.
fn with(guide: &str, rows: &str) -> String {
    let (before, _) = guide.split_once(HEAD).expect("the guide ends with the glossary's table");
    [before, HEAD, rows].concat()
}

#[test]
fn the_glossary_is_fresh() {
    assert_eq!(SYMBOLS.len(), MEANINGS.len());
    let mut rows = String::new();
    for ((symbol, unit), meaning) in SYMBOLS.iter().zip(MEANINGS) {
        let unit = if unit.symbol().is_empty() { "–" } else { unit.symbol() };
        writeln!(rows, "| {symbol} | {meaning} | {unit} |").expect("a string takes all");
    }
    let guide = "DEVELOPERS.md";
    written::keep(guide, &with(&text(guide), &rows), |kept, fresh| kept == fresh);
}
