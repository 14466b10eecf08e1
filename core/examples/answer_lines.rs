//! Answers builds: one build file a line in, one line of JSON out.
//!
//! ```text
//! echo '{"rider": {"mass_kg": 95}}' | cargo run --release -p pitchline-core --example answer_lines
//! ```
//!
//! Each line has `answers`, as the page's module gives them, and `charging`: the question how long
//! it charges, or why it is refused.

use pitchline_core::catalog::read_build;
use pitchline_core::{Build, answers, charging};
use serde_json::{Value, json};
use std::io::{Write, stdin, stdout};

fn main() -> Result<(), Box<dyn std::error::Error>> {
    let mut out = stdout().lock();
    for (index, line) in stdin().lines().enumerate() {
        let found = answer(&line?).map_err(|why| format!("line {}: {why}", index + 1))?;
        writeln!(out, "{found}")?;
    }
    Ok(())
}

fn answer(line: &str) -> Result<Value, String> {
    let value: Value = serde_json::from_str(line).map_err(|error| error.to_string())?;
    let (draft, ignored) = read_build(&value).map_err(|errors| format!("{errors:?}"))?;
    if !ignored.is_empty() {
        return Err(format!("not understood: {ignored:?}"));
    }
    let build = Build::check(&draft).map_err(|errors| format!("{errors:?}"))?;
    let charging = match charging(&draft, &build) {
        Ok(charging) => json!({ "found": charging }),
        Err(refusal) => json!({ "refused": refusal }),
    };
    Ok(json!({ "answers": answers(&build), "charging": charging }))
}
