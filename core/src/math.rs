//! The only file that names the float library, so that native and wasm take
//! the same code path on every target, `no_std` included.

pub(crate) use exact::{abs, floor, sqrt};
pub(crate) use libm::{asin, cbrt, exp, log as ln, round};

// These have one right result each, so it does not matter who finds it. Without a standard library
// wasm works square roots out digit by digit: that took a fifth of the time of an answer.
#[cfg(feature = "std")]
mod exact {
    pub(crate) fn abs(x: f64) -> f64 {
        x.abs()
    }

    pub(crate) fn floor(x: f64) -> f64 {
        x.floor()
    }

    pub(crate) fn sqrt(x: f64) -> f64 {
        x.sqrt()
    }
}

#[cfg(not(feature = "std"))]
mod exact {
    pub(crate) use libm::{fabs as abs, floor, sqrt};
}

/// Pi.
pub(crate) const PI: f64 = core::f64::consts::PI;
/// Square root of three: line-to-line against phase.
pub(crate) const SQRT_3: f64 = 1.732_050_807_568_877_2;

/// A share within 0 and 1; 0 if it is not a number.
pub(crate) fn share(x: f64) -> f64 {
    if x > 0.0 { x.min(1.0) } else { 0.0 }
}

/// Sine and cosine of an angle in degrees, within a turn either way.
///
/// By their series: the library's bring tables for arguments of any size.
#[must_use]
pub fn sine_cosine(degrees: f64) -> (f64, f64) {
    let turned = degrees - 360.0 * round(degrees / 360.0);
    // Beyond a right angle the cosine changes its sign, the sine is that of the rest.
    let (folded, sign) = if turned > 90.0 {
        (180.0 - turned, -1.0)
    } else if turned < -90.0 {
        (-180.0 - turned, -1.0)
    } else {
        (turned, 1.0)
    };
    let x = folded * (PI / 180.0);
    let (mut sine, mut cosine) = (1.0, 1.0);
    let mut n = 24.0;
    while n > 0.0 {
        sine = 1.0 - x * x / (n * (n + 1.0)) * sine;
        cosine = 1.0 - x * x / (n * (n - 1.0)) * cosine;
        n -= 2.0;
    }
    (x * sine, sign * cosine)
}

/// Angle, in degrees, of what rises by `rise` over `run`; from -180 to 180.
#[must_use]
pub fn angle(rise: f64, run: f64) -> f64 {
    libm::atan2(rise, run) * (180.0 / PI)
}

/// Root of a continuous `f` between `lo` and `hi`, where the signs differ.
///
/// Chandrupatla's bracketed method: inverse quadratic steps where they are
/// safe, bisection otherwise, so it always ends. Where the signs do not
/// differ the end with the smaller `|f|` is returned.
///
/// Source: T. R. Chandrupatla, Adv. Eng. Softw. 28 (1997) 145-149, from memory.
pub(crate) fn root(lo: f64, hi: f64, tolerance: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let ends = [(lo, f(lo)), (hi, f(hi))];
    root_between(ends, tolerance, f)
}

/// The same where `f` is known at both ends: each is a place and its value.
pub(crate) fn root_between(
    [(mut b, mut fb), (mut a, mut fa)]: [(f64, f64); 2],
    tolerance: f64,
    mut f: impl FnMut(f64) -> f64,
) -> f64 {
    if fa == 0.0 || fb == 0.0 || (fa > 0.0) == (fb > 0.0) {
        return if abs(fa) < abs(fb) { a } else { b };
    }
    let mut t = 0.5;
    for _ in 0..80 {
        let x = a + t * (b - a);
        let fx = f(x);
        let (c, fc);
        if (fx > 0.0) == (fa > 0.0) {
            (c, fc) = (a, fa);
        } else {
            (c, fc) = (b, fb);
            (b, fb) = (a, fa);
        }
        (a, fa) = (x, fx);
        let best = if abs(fa) < abs(fb) { a } else { b };
        let half = tolerance / abs(b - a);
        if fx == 0.0 || half > 0.5 {
            return best;
        }
        let xi = (a - b) / (c - b);
        let phi = (fa - fb) / (fc - fb);
        t = if phi * phi < xi && (1.0 - phi) * (1.0 - phi) < 1.0 - xi {
            fa / (fb - fa) * fc / (fb - fc) + (c - a) / (b - a) * fa / (fc - fa) * fb / (fc - fb)
        } else {
            0.5
        };
        t = t.max(half);
        t = t.min(1.0 - half);
    }
    a
}

#[cfg(test)]
mod tests {
    use super::{angle, root, sine_cosine};

    #[test]
    fn finds_known_roots() {
        // Square root of two, and Kepler's equation M = 0.65, e = 0.83, both by definition.
        let x = root(0.0, 2.0, 1e-14, |x| x * x - 2.0);
        assert!((x - core::f64::consts::SQRT_2).abs() < 1e-12);
        let e = root(0.0, 3.0, 1e-14, |e| e - 0.83 * libm::sin(e) - 0.65);
        assert!((e - 0.83 * libm::sin(e) - 0.65).abs() < 1e-12);
    }

    #[test]
    fn sine_and_cosine_are_those_of_the_standard_library() {
        for step in -720..=720 {
            let degrees = f64::from(step) / 2.0;
            let (sine, cosine) = sine_cosine(degrees);
            let radians = degrees.to_radians();
            assert!((sine - radians.sin()).abs() < 1e-14, "{degrees}");
            assert!((cosine - radians.cos()).abs() < 1e-14, "{degrees}");
            let back = angle(sine, cosine) - degrees;
            assert!((back - 360.0 * (back / 360.0).round()).abs() < 1e-12, "{degrees}");
        }
    }

    #[test]
    fn a_jump_is_bracketed() {
        let x = root(0.0, 1.0, 1e-12, |x| if x < 0.3 { 1.0 } else { -1.0 });
        assert!((x - 0.3).abs() < 1e-9);
    }
}
