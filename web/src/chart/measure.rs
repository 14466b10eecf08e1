//! How much room a text takes, guessed from its letters: a drawing is laid
//! out before any browser sees it.

use super::scale::within;

/// Height of a line of text in logical pixels.
pub(super) const LINE: f64 = 15.0;
/// From a baseline up to the top of its letters.
pub(super) const RISE: f64 = 11.0;
/// From a baseline down to the bottom of its letters.
pub(super) const DROP: f64 = 4.0;

/// The width a drawing is laid out for: 200 to 2000 logical pixels, 360 if it
/// is not a number.
pub(crate) fn held_width(width: f64) -> f64 {
    if width.is_nan() { 360.0 } else { within(width, 200.0, 2000.0) }
}

/// Width of a text at 12 logical pixels in a common sans-serif face, a little
/// on the generous side.
pub fn text_width(text: &str) -> f64 {
    text.chars().map(letter_width).sum()
}

fn letter_width(letter: char) -> f64 {
    match letter {
        'i' | 'j' | 'l' | 't' | 'f' | 'r' | 'I' | ' ' | '.' | ',' | ':' | ';' | '\'' | '!'
        | '|' | '(' | ')' | '/' | '·' => 4.3,
        'm' | 'w' | 'M' | 'W' | '%' | '…' => 11.5,
        'A'..='Z' => 8.8,
        '0'..='9' => 7.0,
        ' '..='~' => 7.1,
        // General punctuation and signs are no wider than a digit.
        '\u{2000}'..='\u{22ff}' => 7.5,
        '\u{1100}'.. => 13.0,
        _ => 8.8,
    }
}

/// The text, cut with an ellipsis if it is wider than `room`.
pub(super) fn fit(text: &str, room: f64) -> String {
    if text_width(text) <= room {
        return text.to_owned();
    }
    let mut out = String::new();
    let mut left = room - letter_width('…');
    for letter in text.chars() {
        left -= letter_width(letter);
        if left < 0.0 {
            break;
        }
        out.push(letter);
    }
    if !out.is_empty() {
        out.truncate(out.trim_end().len());
        out.push('…');
    }
    out
}

/// The text in lines no wider than `room`, broken at spaces; a single word
/// that is too wide is cut.
pub(super) fn wrap(text: &str, room: f64) -> Vec<String> {
    let mut lines: Vec<String> = Vec::new();
    for word in text.split_whitespace() {
        match lines.last_mut() {
            Some(line) if text_width(line) + letter_width(' ') + text_width(word) <= room => {
                line.push(' ');
                line.push_str(word);
            }
            _ => lines.push(fit(word, room)),
        }
    }
    lines
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn cut_text_fits_and_says_so() {
        let cut = fit("Signal Steps from the quay", 80.0);
        assert!(text_width(&cut) <= 80.0);
        assert!(cut.starts_with("Signal") && cut.ends_with('…'));
        assert_eq!(fit("Quay", 80.0), "Quay");
        assert_eq!(fit("Quay", 3.0), "");
    }

    #[test]
    fn wrapping_keeps_every_word() {
        let text = "Nothing to draw until the pack is known";
        let lines = wrap(text, 120.0);
        assert!(lines.len() > 1);
        assert!(lines.iter().all(|line| text_width(line) <= 120.0));
        assert_eq!(lines.join(" "), text);
    }
}
