//! Numbers to text by whole-number arithmetic, which costs the page far less
//! than the general formatter.

use super::scale::{held, within};

/// Appends `v` with at most one decimal. Not a number becomes 0; magnitudes
/// beyond a million are held there, far outside any drawing.
pub(super) fn put_tenths(out: &mut String, v: f64) {
    let tenths = (within(held(v), -1e6, 1e6) * 10.0).round() as i64;
    if tenths < 0 {
        out.push('-');
    }
    put_digits(out, tenths.unsigned_abs() / 10);
    let rest = (tenths.unsigned_abs() % 10) as u8;
    if rest > 0 {
        out.push('.');
        out.push(char::from(b'0' + rest));
    }
}

/// `v` with at most one decimal, for attributes.
pub(crate) fn tenths(v: f64) -> String {
    let mut out = String::new();
    put_tenths(&mut out, v);
    out
}

/// `v` with exactly `decimals` (at most 9) decimals, a decimal point and a
/// true minus sign. Not a number becomes 0; magnitudes beyond 10^12 are held
/// there.
///
/// ```
/// use pitchline_web::chart::plain;
/// assert_eq!(plain(-2.5, 1), "−2.5");
/// assert_eq!(plain(-0.01, 1), "0.0");
/// ```
pub fn plain(v: f64, decimals: u8) -> String {
    let decimals = decimals.min(9);
    let mut unit = 1_u64;
    for _ in 0..decimals {
        unit *= 10;
    }
    let v = held(v);
    let mut whole = v.abs().floor();
    let mut part = ((v.abs() - whole) * unit as f64).round();
    if part >= unit as f64 {
        whole += 1.0;
        part = 0.0;
    }
    let mut out = String::new();
    if v < 0.0 && whole + part > 0.0 {
        out.push('−');
    }
    put_digits(&mut out, whole as u64);
    if decimals > 0 {
        out.push('.');
        let mut place = unit / 10;
        while place > 0 {
            out.push(char::from(b'0' + (part as u64 / place % 10) as u8));
            place /= 10;
        }
    }
    out
}

fn put_digits(out: &mut String, n: u64) {
    if n > 9 {
        put_digits(out, n / 10);
    }
    out.push(char::from(b'0' + (n % 10) as u8));
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tenths_are_rounded_and_short() {
        for (v, text) in [
            (0.0, "0"),
            (12.0, "12"),
            (12.34, "12.3"),
            (12.36, "12.4"),
            (-0.04, "0"),
            (-3.5, "-3.5"),
            (f64::NAN, "0"),
            (f64::INFINITY, "1000000"),
        ] {
            assert_eq!(tenths(v), text);
        }
    }

    #[test]
    fn plain_agrees_with_the_standard_formatter() {
        for v in [0.0, 1.0, 9.99, 9.9999, 1234.5678, 0.05, 86_400.0, 999_999_999_999.0] {
            for decimals in 0..6 {
                assert_eq!(
                    plain(v, decimals),
                    format!("{v:.*}", usize::from(decimals)),
                    "{v} to {decimals}"
                );
            }
        }
    }
}
