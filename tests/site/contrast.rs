//! Whether the colours stand out enough from each other, in both themes.
//!
//! Ratio and relative luminance as WCAG 2.2 defines them,
//! <https://www.w3.org/TR/WCAG22/#dfn-contrast-ratio>; 4.5:1 for text is its
//! criterion 1.4.3, 3:1 for what must be told apart its criterion 1.4.11.

use std::fs;

use pitchline_tests::root;

use crate::tokens::{colour, themes};

const TEXT: f64 = 4.5;
const SHAPE: f64 = 3.0;

/// The page's own tokens, those of the charts and those of the recovery panel.
const SHEETS: [&str; 3] = ["web/style/tokens.css", "web/style/chart.css", "web/style/recovery.css"];
/// What the night changes of them.
const DARK: &str = "web/style/dark.css";

const GROUNDS: &[&str] = &["--paper", "--card"];

/// What is drawn, on which grounds it may stand, and the ratio it owes.
const PAIRS: &[(&str, &[&str], f64)] = &[
    ("--ink", GROUNDS, TEXT),
    ("--ink-soft", GROUNDS, TEXT),
    ("--accent", GROUNDS, TEXT),
    ("--on-accent", &["--accent"], TEXT),
    ("--good", GROUNDS, TEXT),
    ("--warn", GROUNDS, TEXT),
    ("--bad", GROUNDS, TEXT),
    ("--line", GROUNDS, SHAPE),
    ("--focus", GROUNDS, SHAPE),
    // The recovery panel and the buttons on it, plain and filled.
    ("--recovery-ink", &["--recovery-paper"], TEXT),
    ("--recovery-accent", &["--recovery-paper"], TEXT),
    ("--recovery-edge", &["--recovery-paper"], SHAPE),
    // Series of a chart, and text on a part filled with one.
    ("--s1", GROUNDS, SHAPE),
    ("--s2", GROUNDS, SHAPE),
    ("--s3", GROUNDS, SHAPE),
    ("--s4", GROUNDS, SHAPE),
    ("--on-s1", &["--s1"], TEXT),
    ("--on-s2", &["--s2"], TEXT),
    ("--on-s3", &["--s3"], TEXT),
    ("--on-s4", &["--s4"], TEXT),
    // Figures in the cells of a map, low to high.
    ("--on-m1", &["--m1"], TEXT),
    ("--on-m2", &["--m2"], TEXT),
    ("--on-m3", &["--m3"], TEXT),
    ("--on-m4", &["--m4"], TEXT),
    ("--on-m5", &["--m5"], TEXT),
    ("--on-m6", &["--m6"], TEXT),
];

#[test]
fn every_colour_stands_out() {
    let sheet = |name: &str| {
        fs::read_to_string(root().join(name)).unwrap_or_else(|error| panic!("{name}: {error}"))
    };
    // As the page has it: a sheet of its own, linked for that medium.
    let dark = format!("@media (prefers-color-scheme: dark) {{ {} }}", sheet(DARK));
    let themes = themes(&(SHEETS.map(sheet).join("\n") + &dark));
    assert_ne!(themes.light, themes.dark);
    let mut faults = Vec::new();
    for (theme, tokens) in [("light", &themes.light), ("dark", &themes.dark)] {
        for (drawn, grounds, least) in PAIRS {
            for ground in *grounds {
                match colour(tokens, drawn).and_then(|a| Ok(ratio(a, colour(tokens, ground)?))) {
                    // Not rounded: 2.999 is not 3.
                    Ok(ratio) if ratio >= *least => {}
                    Ok(ratio) => faults
                        .push(format!("{theme}: {drawn} on {ground} is {ratio:.3}, not {least}")),
                    Err(fault) => faults.push(format!("{theme}: {fault}")),
                }
            }
        }
    }
    assert!(faults.is_empty(), "\n  {}", faults.join("\n  "));
}

fn ratio(a: [u8; 3], b: [u8; 3]) -> f64 {
    let (a, b) = (luminance(a), luminance(b));
    (a.max(b) + 0.05) / (a.min(b) + 0.05)
}

fn luminance(colour: [u8; 3]) -> f64 {
    let [r, g, b] = colour.map(|part| {
        let part = f64::from(part) / 255.0;
        if part <= 0.04045 { part / 12.92 } else { ((part + 0.055) / 1.055).powf(2.4) }
    });
    0.2126 * r + 0.7152 * g + 0.0722 * b
}

#[test]
fn ratios_are_those_of_the_standard() {
    // WCAG 2.2, "contrast ratio": ratios range from 1 to 21.
    assert!((ratio([0; 3], [255; 3]) - 21.0).abs() < 1e-9);
    assert!((ratio([90, 17, 200], [90, 17, 200]) - 1.0).abs() < 1e-12);
    // W3C's issue tracker, w3c/wcag#200: #777777 on white is 4.48:1, and not enough.
    assert!((ratio([0x77; 3], [255; 3]) - 4.48).abs() < 0.005);
}
