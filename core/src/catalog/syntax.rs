//! Where a text stops being JSON, as the person who wrote it would look for it.

use crate::error::{Error, Reason};
use alloc::string::ToString;

/// What the parser says, and what that is: the slip, and whether it is at the end of what stands
/// before.
const SLIPS: [(&str, &str, bool); 7] = [
    ("expected `,`", "a comma is missing here", true),
    ("expected `:`", "a colon is missing here", true),
    ("trailing comma", "this comma has nothing after it", true),
    ("EOF", "the file ends with a bracket, brace or quote still open", false),
    ("trailing characters", "there is more text after the last brace", false),
    ("key must be a string", "expected a key in double quotes", false),
    ("control character", "a quote is left open on this line", false),
];

/// The fault of a text that is not JSON. Columns count letters.
#[inline]
pub fn syntax_fault(json: &str, error: &serde_json::Error) -> Error {
    let said = error.to_string();
    let found = SLIPS.iter().find(|(words, _, _)| said.starts_with(words));
    let (slip, before) = found.map_or(("", false), |(_, slip, before)| (*slip, *before));
    // The parser counts the bytes of a line.
    let start: usize =
        json.split_inclusive('\n').take(error.line().saturating_sub(1)).map(str::len).sum();
    let mut at = json.floor_char_boundary(start.saturating_add(error.column().saturating_sub(1)));
    if before {
        let read = json.get(..at).unwrap_or(json).trim_end();
        at = read.len();
        if read.ends_with(',') {
            at = at.saturating_sub(1);
        }
    }
    let read = json.get(..at).unwrap_or(json);
    let last = read.rsplit('\n').next().unwrap_or(read);
    let (line, column) = (read.matches('\n').count() + 1, last.chars().count() + 1);
    Error::new("", Reason::Syntax { line, column, slip })
}
