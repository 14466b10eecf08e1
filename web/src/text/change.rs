//! What an edit has changed in an answer, in words.

use super::Style;
use pitchline_core::Unit;

/// Of a change that does not matter.
const SAME: &str = "about the same";
/// The unit of a difference between percentages.
pub const POINTS: &str = "points";
/// A change is none where it is less than this share of the band about the answer: nobody could tell
/// on the road. A rule of thumb, no source.
const SMALL: f64 = 0.1;

/// What an edit has changed in an answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Change {
    /// As it is seen: "+4 km/h".
    pub shown: String,
    /// As it is heard: "4 km/h more than before".
    pub spoken: String,
    /// Whether it is more; none where it is about the same.
    pub more: Option<bool>,
}

/// Of an answer that was and is, with the band about it; all in the unit that is shown.
fn change([was, is]: [f64; 2], band: [f64; 2], size: impl Fn(f64) -> (String, String)) -> Change {
    let (by, [low, high]) = (is - was, band);
    let (figure, unit) = size(by.abs());
    let nothing = !figure.contains(|digit: char| matches!(digit, '1'..='9'));
    if nothing || by.abs() < SMALL * (high - low) {
        return Change { shown: SAME.into(), spoken: SAME.into(), more: None };
    }
    let more = by > 0.0;
    let (sign, word) = if more { ("+", "more") } else { ("−", "less") };
    Change {
        shown: format!("{sign}{figure}\u{a0}{unit}"),
        spoken: format!("{figure} {unit} {word} than before"),
        more: Some(more),
    }
}

/// Of a speed, in m/s.
#[must_use]
pub fn speed(of: [f64; 2], band_m_s: [f64; 2], style: Style) -> Change {
    let unit = Unit::KilometrePerHour;
    let shown = |v: f64| style.shown_si(v, unit);
    let size = |by| (style.fixed(by, 0), style.units.shown(unit).symbol.into());
    change(of.map(shown), band_m_s.map(shown), size)
}

/// Of a hill, as a share: in points, since a percentage of percent would be read as either.
#[must_use]
pub fn hill(of: [f64; 2], band: [f64; 2], style: Style) -> Change {
    let percent = |grade: f64| grade.max(0.0) * 100.0;
    let size = |by: f64| {
        let figure = style.fixed(by, 0);
        let unit = if figure == "1" { "point" } else { POINTS };
        (figure, unit.into())
    };
    change(of.map(percent), band.map(percent), size)
}

/// Of a distance, in m.
#[must_use]
pub fn distance(of: [f64; 2], band_m: [f64; 2], style: Style) -> Change {
    let shown = |far: f64| style.shown_si(far, Unit::Kilometre);
    let decimals = style.distance_decimals(band_m);
    let size = |by| (style.fixed(by, decimals), style.units.shown(Unit::Kilometre).symbol.into());
    change(of.map(shown), band_m.map(shown), size)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Units;

    const KM_H: f64 = 1.0 / 3.6;

    #[test]
    fn a_change_has_sign_unit_and_word() {
        let style = Style::default();
        let faster = speed([40.0 * KM_H, 44.0 * KM_H], [42.0 * KM_H, 46.0 * KM_H], style);
        assert_eq!(faster.shown, "+4\u{a0}km/h");
        assert_eq!((faster.spoken.as_str(), faster.more), ("4 km/h more than before", Some(true)));
        let less = hill([0.23, 0.20], [0.18, 0.22], style);
        assert_eq!((less.shown.as_str(), less.more), ("−3\u{a0}points", Some(false)));
        assert_eq!(less.spoken, "3 points less than before");
        assert_eq!(hill([0.20, 0.21], [0.21; 2], style).shown, "+1\u{a0}point");
        // NIST SP 811: 1 mi = 1609.344 m.
        let imperial = Style { units: Units::Imperial, ..style };
        let far = distance([16_093.44, 32_186.88], [30_000.0, 34_000.0], imperial);
        assert_eq!(far.shown, "+10\u{a0}mi");
    }

    #[test]
    fn a_change_that_nobody_could_tell_is_none() {
        let style = Style::default();
        let wide = [30_000.0, 43_000.0];
        // A tenth of 13 km is 1.3 km.
        assert_eq!(distance([35_000.0, 36_200.0], wide, style).shown, SAME);
        assert_eq!(distance([35_000.0, 36_400.0], wide, style).more, Some(true));
        // Less than what is shown, though no band is known yet.
        let band = [11.1, 11.1];
        assert_eq!(speed([11.0, 11.1], band, style).shown, SAME);
        assert_eq!(speed([11.1, 11.1], band, style).more, None);
        // What cannot climb does not climb down.
        assert_eq!(hill([-0.02, -0.01], [0.0, 0.0], style).shown, SAME);
    }
}
