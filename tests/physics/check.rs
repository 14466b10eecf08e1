//! One number of the core beside one from elsewhere.

/// A number to reproduce.
#[derive(Clone)]
pub(crate) struct Check {
    /// What it is; unique.
    pub(crate) name: String,
    /// What the core gives.
    pub(crate) got: f64,
    /// What it should be.
    pub(crate) want: f64,
    /// How far it may be off, in its own unit: the rounding of what is printed.
    pub(crate) within: f64,
    /// Where `want` comes from.
    pub(crate) source: &'static str,
}

pub(crate) fn check(
    name: impl Into<String>,
    got: f64,
    want: f64,
    within: f64,
    source: &'static str,
) -> Check {
    Check { name: name.into(), got, want, within, source }
}

/// A yes or no, as a number: 1 is yes.
pub(crate) fn holds(name: impl Into<String>, got: bool, source: &'static str) -> Check {
    check(name, f64::from(u8::from(got)), 1.0, 0.0, source)
}

/// Fails with every check that is off, not only the first.
pub(crate) fn all_hold(checks: &[Check]) {
    let off: Vec<String> = checks
        .iter()
        .filter(|c| !c.got.is_finite() || (c.got - c.want).abs() > c.within)
        .map(|c| {
            let Check { name, got, want, within, source } = c;
            format!("{name}: {got}, but {want} ± {within} by {source}")
        })
        .collect();
    assert!(off.is_empty(), "{} of {} are off\n{}", off.len(), checks.len(), off.join("\n"));
}

/// Where a falling or rising function crosses zero, by plain halving, so that
/// no search of the core's own stands behind an expected number.
pub(crate) fn halve(mut lo: f64, mut hi: f64, f: impl Fn(f64) -> f64) -> f64 {
    let rising = f(lo) < 0.0;
    for _ in 0..120 {
        let middle = 0.5 * (lo + hi);
        if (f(middle) < 0.0) == rising { lo = middle } else { hi = middle }
    }
    0.5 * (lo + hi)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    #[should_panic(expected = "1 of 2 are off")]
    fn a_number_that_is_off_fails() {
        all_hold(&[
            check("right", 1.0, 1.0, 0.0, "by hand"),
            check("off", 1.1, 1.0, 0.05, "by hand"),
        ]);
    }

    #[test]
    #[should_panic(expected = "1 of 1 are off")]
    fn no_number_fails() {
        all_hold(&[check("none", f64::NAN, 1.0, f64::INFINITY, "by hand")]);
    }

    #[test]
    fn halving_finds_a_known_root() {
        // The square root of two, by definition.
        let root = halve(0.0, 2.0, |x| x * x - 2.0);
        assert!((root - std::f64::consts::SQRT_2).abs() < 1e-15);
    }
}
