//! Numbers as people type and read them.

use super::unit::{Shown, Units};
use crate::chart::plain;
use pitchline_core::Unit;

/// How this reader writes numbers.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Style {
    /// Metric or imperial.
    pub units: Units,
    /// Whether decimals stand behind a comma.
    pub comma: bool,
}

impl Style {
    /// A value in the unit that this reader sees, with `digits` significant digits.
    #[must_use]
    pub fn value(self, value: f64, unit: Unit, digits: u8) -> String {
        let shown = self.units.shown(unit);
        self.significant(shown.from_file(value), digits)
    }

    /// The same with the unit behind it.
    #[must_use]
    pub fn quantity(self, value: f64, unit: Unit, digits: u8) -> String {
        let (text, mut shown) = (self.value(value, unit, digits), self.units.shown(unit));
        if text == "1" && unit.whole() {
            shown.symbol = unit.symbol_of_one();
        }
        with_unit(text, shown)
    }

    /// A value in SI as a quantity of that unit.
    #[must_use]
    pub fn si(self, value: f64, unit: Unit, digits: u8) -> String {
        self.quantity(value / unit.si(), unit, digits)
    }

    /// A value in SI, in the unit of that kind that this reader sees.
    #[must_use]
    pub fn shown_si(self, value: f64, unit: Unit) -> f64 {
        self.units.shown(unit).from_file(value / unit.si())
    }

    /// A speed in m/s as whole km/h or mph: no band supports more.
    #[must_use]
    pub fn speed(self, speed_m_s: f64) -> String {
        self.fixed(self.shown_si(speed_m_s, Unit::KilometrePerHour), 0)
    }

    /// The same with its unit.
    #[must_use]
    pub fn speed_unit(self, speed_m_s: f64) -> String {
        with_unit(self.speed(speed_m_s), self.units.shown(Unit::KilometrePerHour))
    }

    /// A distance in m as whole km or miles, below ten with one decimal.
    #[must_use]
    pub fn distance(self, distance_m: f64) -> String {
        let shown = self.shown_si(distance_m, Unit::Kilometre);
        self.fixed(shown, if shown < 9.95 { 1 } else { 0 })
    }

    /// The same with its unit.
    #[must_use]
    pub fn distance_unit(self, distance_m: f64) -> String {
        with_unit(self.distance(distance_m), self.units.shown(Unit::Kilometre))
    }

    /// Two numbers with so many decimals as a band, or one where they read alike.
    #[must_use]
    #[inline(never)]
    pub fn span(self, [low, high]: [f64; 2], decimals: u8) -> String {
        let mut text = self.fixed(low, decimals);
        let high = self.fixed(high, decimals);
        if text != high {
            text.push('–');
            text.push_str(&high);
        }
        text
    }

    /// Decimals of a band of distances in m: whole km or miles, one more where the band is
    /// narrower than two of them and below ten.
    #[must_use]
    pub fn distance_decimals(self, band_m: [f64; 2]) -> u8 {
        let [low, high] = band_m.map(|distance| self.shown_si(distance, Unit::Kilometre));
        u8::from(high < 9.95 && high - low < 2.0)
    }

    /// A way in m: metres or feet, from about a kilometre in km or miles.
    #[must_use]
    pub fn way(self, way_m: f64) -> String {
        if way_m >= 950.0 {
            return self.distance_unit(way_m);
        }
        let shown = self.shown_si(way_m, Unit::Metre);
        let step = if shown < 99.5 { 1.0 } else { 10.0 };
        with_unit(self.fixed((shown / step).round() * step, 0), self.units.shown(Unit::Metre))
    }

    /// A length in m as bare millimetres with one decimal, or inches with two:
    /// what a calliper shows.
    #[must_use]
    pub fn millimetres(self, length_m: f64) -> String {
        let shown = self.units.shown(Unit::Millimetre);
        let decimals = if shown.from_file(1.0) < 1.0 { 2 } else { 1 };
        self.fixed(shown.from_file(length_m * 1e3), decimals)
    }

    /// A length in m as whole millimetres, or inches with one decimal: what
    /// rests on allowances and assumed sizes is no surer.
    #[must_use]
    pub fn rough_millimetres(self, length_m: f64) -> String {
        let shown = self.units.shown(Unit::Millimetre);
        let decimals = u8::from(shown.from_file(1.0) < 1.0);
        self.fixed(shown.from_file(length_m * 1e3), decimals)
    }

    /// A length in m as it was entered: as bare millimetres to a tenth, or inches
    /// to a hundredth, zeros at its end cut off.
    #[must_use]
    pub fn entered_millimetres(self, length_m: f64) -> String {
        let shown = self.units.shown(Unit::Millimetre);
        let decimals = if shown.from_file(1.0) < 1.0 { 2 } else { 1 };
        self.trimmed(shown.from_file(length_m * 1e3), decimals)
    }

    /// A length in m, bare, to a tenth of a millimetre or a hundredth of an inch: what is needed
    /// rounded up and what there is down, so that the two never read alike where one falls short.
    #[must_use]
    pub fn bounded_millimetres(self, length_m: f64, up: bool) -> String {
        let each = self.units.shown(Unit::Millimetre).from_file(1e3);
        let steps = if each < 1e3 { 100.0 * each } else { 10.0 * each };
        self.entered_millimetres(whole(length_m * steps, up) / steps)
    }

    /// A share in percent as it was entered, to two digits.
    #[must_use]
    pub fn entered_percent(self, share: f64) -> String {
        self.si(share, Unit::Percent, 2)
    }

    /// A bare number with so many significant digits, zeros at its end cut off.
    #[must_use]
    pub fn significant(self, value: f64, digits: u8) -> String {
        self.trimmed(value, decimals(value, digits))
    }

    /// A bare number with exactly so many decimals.
    #[must_use]
    pub fn fixed(self, value: f64, decimals: u8) -> String {
        let text = plain(value, decimals);
        if self.comma { text.replace('.', ",") } else { text }
    }

    /// A value of a file for an input: as many digits as anyone would type, or three where
    /// another unit makes more of what was entered.
    #[must_use]
    pub fn input(self, value: f64, shown: Shown) -> String {
        let now = shown.from_file(value);
        let text = plain(now, decimals(now, 4));
        let typed = from_exact(&text.replace('−', "-")).is_some_and(|typed| {
            (shown.to_file(typed) - value).abs() <= 1e-9 * value.abs().max(1.0)
        });
        let digits = if typed || now == value { 4 } else { 3 };
        // A true minus sign is for reading; a hyphen is what people type.
        self.significant(now, digits).replace('−', "-")
    }

    fn trimmed(self, value: f64, decimals: u8) -> String {
        let text = self.fixed(value, decimals);
        if decimals == 0 {
            return text;
        }
        let text = text.trim_end_matches('0');
        text.strip_suffix(['.', ',']).unwrap_or(text).to_string()
    }
}

/// To a whole number, up or down; a hair off one is that one.
#[must_use]
pub fn whole(value: f64, up: bool) -> f64 {
    if up { (value - 1e-6).ceil() } else { (value + 1e-6).floor() }
}

/// A share in whole percent: no answer supports more.
#[must_use]
pub fn percent(share: f64) -> String {
    format!("{}\u{a0}%", plain(share * 100.0, 0))
}

fn with_unit(mut text: String, shown: Shown) -> String {
    if !shown.symbol.is_empty() {
        // A no-break space keeps number and unit together.
        text.push('\u{a0}');
        text.push_str(shown.symbol);
    }
    text
}

/// Decimals that leave `digits` significant ones.
fn decimals(value: f64, digits: u8) -> u8 {
    let mut whole = 1;
    let mut size = value.abs();
    if size == 0.0 || !size.is_finite() {
        return 0;
    }
    while size >= 10.0 {
        size /= 10.0;
        whole += 1;
    }
    while size < 1.0 && whole > -8 {
        size *= 10.0;
        whole -= 1;
    }
    (i16::from(digits) - whole).clamp(0, 9) as u8
}

/// A value without the hair that a conversion leaves, to 1e-9 of its unit.
#[must_use]
pub fn tidy(value: f64) -> f64 {
    let tidy = (value * 1e9).round() / 1e9;
    // Far values have no such digits; what is no number stays none.
    if value.abs() < 1e6 { tidy } else { value }
}

/// What someone typed, as a number in the unit they see.
///
/// Accepts a decimal point or comma, a true minus sign, and spaces or
/// apostrophes between thousands.
///
/// ```
/// use pitchline_web::text::number::parse;
/// assert_eq!(parse("1,5"), Some(1.5));
/// assert_eq!(parse("−12"), Some(-12.0));
/// assert_eq!(parse("12 000"), Some(12000.0));
/// assert_eq!(parse("1.2.3"), None);
/// assert_eq!(parse("1e9"), None);
/// ```
#[must_use]
pub fn parse(text: &str) -> Option<f64> {
    let text = text.trim();
    if text.len() > 24 {
        return None;
    }
    let mut clean = String::new();
    for letter in text.chars() {
        match letter {
            '0'..='9' => clean.push(letter),
            ',' | '.' => clean.push('.'),
            '-' | '−' => clean.push('-'),
            '+' if clean.is_empty() => {}
            ' ' | '\u{a0}' | '\u{2009}' | '\u{202f}' | '\'' | '’' => {}
            _ => return None,
        }
    }
    from_exact(&clean)
}

/// What someone typed, read as thousands set off by the mark that is not this reader's for
/// decimals: `1,000` where decimals stand behind a point.
///
/// ```
/// use pitchline_web::text::{Style, number::grouped};
/// assert_eq!(grouped("1,000", Style::default()), Some(1000.0));
/// assert_eq!(grouped("12,345,678", Style::default()), Some(12_345_678.0));
/// for plain in ["1.000", "1,00", "0,500", "1000", "1,0000", ",500"] {
///     assert_eq!(grouped(plain, Style::default()), None);
/// }
/// ```
#[must_use]
pub fn grouped(text: &str, style: Style) -> Option<f64> {
    let mark = if style.comma { '.' } else { ',' };
    let mut groups = text.trim().split(mark);
    let first = groups.next().filter(|first| matches!(first.len(), 1..=3))?;
    let mut digits = first.to_string();
    for group in groups {
        if group.len() != 3 {
            return None;
        }
        digits.push_str(group);
    }
    let plain = digits.len() > first.len() && !first.starts_with('0');
    (plain && digits.bytes().all(|b| b.is_ascii_digit())).then(|| from_exact(&digits))?
}

/// A number in the fewest digits that give it back exactly.
///
/// In the browser JavaScript does this, which has it built in; ours would cost
/// the page ten kilobytes of tables each way.
#[must_use]
pub fn exact(value: f64) -> String {
    #[cfg(target_arch = "wasm32")]
    return js_sys::Number::from(value)
        .to_string_with_radix(10)
        .map_or_else(|_| String::new(), String::from);
    #[cfg(not(target_arch = "wasm32"))]
    value.to_string()
}

/// A number from [`exact`], or from digits, sign and point; `None` if it is none.
#[must_use]
pub fn from_exact(text: &str) -> Option<f64> {
    let plain = |c: char| c.is_ascii_digit() || matches!(c, '.' | '-' | '+' | 'e');
    if text.is_empty() || !text.chars().all(plain) {
        return None;
    }
    #[cfg(target_arch = "wasm32")]
    // Like the unary plus of JavaScript.
    let value = f64::try_from(wasm_bindgen::JsValue::from_str(text)).ok()?;
    #[cfg(not(target_arch = "wasm32"))]
    let value = text.parse::<f64>().ok()?;
    value.is_finite().then_some(value)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn one_of_a_thing_is_one() {
        let said = |value, unit| Style::default().quantity(value, unit, 3);
        assert_eq!(said(1.0, Unit::Cells), "1\u{a0}cell");
        assert_eq!(said(2.0, Unit::Cells), "2\u{a0}cells");
        assert_eq!(said(1.0, Unit::Teeth), "1\u{a0}tooth");
        assert_eq!(said(1.0, Unit::Kilogram), "1\u{a0}kg");
    }

    #[test]
    fn numbers_are_rounded_to_what_is_known() {
        let style = Style::default();
        for (value, digits, text) in [
            (41.37, 2, "41"),
            (7.0, 2, "7"),
            (0.012_345, 3, "0.0123"),
            (1234.6, 2, "1235"),
            (-3.25, 3, "−3.25"),
            (0.0, 3, "0"),
        ] {
            assert_eq!(style.significant(value, digits), text);
        }
        assert_eq!(Style { comma: true, ..style }.significant(1.5, 3), "1,5");
    }

    /// 22 km/h are 13.6702 mph, and 13.7 mph are what was typed; NIST SP 811, appendix B: 1 mile
    /// is 1609.344 m.
    #[test]
    fn an_input_shows_what_was_entered_and_rounds_what_was_converted() {
        let input = |value: f64, units: Units, unit: Unit| {
            Style { units, comma: false }.input(value, units.shown(unit))
        };
        let (km, mi) = (Units::Metric, Units::Imperial);
        assert_eq!(input(22.0, mi, Unit::KilometrePerHour), "13.7");
        assert_eq!(input(13.75 * 1.609_344, mi, Unit::KilometrePerHour), "13.75");
        assert_eq!(input(21.37, km, Unit::KilometrePerHour), "21.37");
        assert_eq!(input(187.3 * 0.453_592_37, mi, Unit::Kilogram), "187.3");
        assert_eq!(input(-3.5, mi, Unit::Celsius), "25.7");
    }

    proptest! {
        #[test]
        fn what_is_written_is_read(value in -1e5..1e5_f64, comma in any::<bool>()) {
            let text = Style { comma, units: Units::Metric }.fixed(value, 4);
            let read = parse(&text).unwrap();
            prop_assert!((read - value).abs() <= 0.5001e-4);
        }

        #[test]
        fn exact_is_exact(value in any::<f64>().prop_filter("finite", |v| v.is_finite())) {
            prop_assert_eq!(from_exact(&exact(value)), Some(value));
        }

        #[test]
        fn nothing_typed_panics(text in ".{0,40}") {
            let _ = parse(&text);
        }
    }
}
