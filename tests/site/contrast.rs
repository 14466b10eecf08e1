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

/// What is drawn, on which grounds it may stand, and the ratio it owes.
const PAIRS: &[(&str, &[&str], f64)] = &[
    ("--ink", &["--paper", "--card"], TEXT),
    ("--ink-soft", &["--paper", "--card"], TEXT),
    ("--accent", &["--paper", "--card"], TEXT),
    ("--on-accent", &["--accent"], TEXT),
    ("--good", &["--paper", "--card"], TEXT),
    ("--warn", &["--paper", "--card"], TEXT),
    ("--bad", &["--paper", "--card"], TEXT),
    ("--border", &["--paper", "--card"], SHAPE),
    ("--focus", &["--paper", "--card"], SHAPE),
    ("--series-1", &["--card"], SHAPE),
    ("--series-2", &["--card"], SHAPE),
    ("--series-3", &["--card"], SHAPE),
    ("--series-4", &["--card"], SHAPE),
];

#[test]
fn every_colour_stands_out() {
    let css = fs::read_to_string(root().join("web/style/tokens.css"))
        .expect("web/style/tokens.css can be read");
    let themes = themes(&css);
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
