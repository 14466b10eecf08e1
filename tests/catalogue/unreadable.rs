//! Files of which nothing can be read: refused whole, and the place named.

use crate::{demo_text, text};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Error, Reason};

fn refusal(text: &str) -> Error {
    match Catalog::read(text) {
        Ok((_, faults)) => panic!("was read, with {faults:?}"),
        Err(error) => error,
    }
}

fn place(text: &str) -> (usize, usize) {
    match refusal(text).reason {
        Reason::Syntax { line, column, .. } => (line, column),
        reason => panic!("{reason:?}"),
    }
}

/// Lines and columns are counted from 1, by hand.
#[test]
fn a_slip_of_the_pen_is_found_by_line_and_column() {
    for (text, line, column) in [
        ("{\n  \"maker\": \"M\"\n  \"notes\": \"N\"\n}", 2, 15), // no comma after "M"
        ("{\n  \"maker\": \"M\",\n}", 2, 15),                    // a comma too many
        ("{ \"a\": [{}\n\n  {}] }", 1, 11),                      // no comma after the brace
        ("{ \"a\" 5 }", 1, 6),                                   // no colon after "a"
        ("{ \"é\": 1 \"ü\": 2 }", 1, 9),                         // letters, not bytes, are counted
        ("{ \"maker\": 'M' }", 1, 12),                           // wrong quotes
        ("{ \"maker\": \"M\" } }", 1, 18),                       // a brace too many
        ("{\n  // ours\n}", 2, 3),                               // a comment
        ("{ \"price\": 1e999 }", 1, 16),                         // beyond any number
        ("{ \"price\": NaN }", 1, 12),                           // not a number
    ] {
        assert_eq!(place(text), (line, column), "{text}");
    }
    assert_eq!(
        refusal("{\n  \"maker\": \"M\"\n  \"notes\": \"N\"\n}").to_string(),
        ": is not valid JSON at line 2, column 15: a comma is missing here"
    );
}

/// Wherever the demo is cut off, the line is the last one left.
#[test]
fn a_truncated_file_ends_on_its_last_line() {
    let demo = demo_text();
    let ends: Vec<_> = demo.char_indices().map(|(at, _)| at).filter(|at| *at > 0).collect();
    for end in ends.into_iter().step_by(97) {
        let cut = demo[..end].trim_end();
        if cut.ends_with('}') && end == demo.len() {
            continue;
        }
        let (line, column) = place(cut);
        assert_eq!(line, cut.lines().count(), "{end}");
        let last = cut.lines().last().unwrap().len();
        assert!(column.abs_diff(last) <= 1, "{end}: column {column} of {last}");
    }
}

#[test]
fn nothing_at_all_is_not_a_catalogue() {
    for text in ["", " \n", "catalogue"] {
        assert!(matches!(refusal(text).reason, Reason::Syntax { .. }), "{text:?}");
    }
    for text in ["[]", "1", "null", "\"catalogue\""] {
        assert_eq!(refusal(text).to_string(), ": expected an object in braces");
    }
}

#[test]
fn a_file_beyond_1_mib_is_not_read() {
    let mut text = demo_text();
    let room = (1 << 20) - text.len();
    text.push_str(&" ".repeat(room));
    assert!(Catalog::read(&text).is_ok());
    text.push(' ');
    assert_eq!(refusal(&text).to_string(), ": has more than 1048576 bytes");
}

/// Far more than a stack could follow.
#[test]
fn deep_nesting_is_refused() {
    for (open, close) in [("[", "]"), ("{\"a\":", "}")] {
        let deep = format!("{{\"kits\": {}1{}}}", open.repeat(100_000), close.repeat(100_000));
        let (line, column) = place(&deep);
        assert_eq!(line, 1);
        assert!(column < 1000, "{column}");
    }
}

#[test]
fn the_broken_fixture_is_broken_where_it_says() {
    // The comma at the end of line 5 is missing: after its last quote, which is letter 58.
    assert_eq!(place(&text("tests/fixture/broken.json")), (5, 59));
}
