//! The only file that names the float library, so that native and wasm take
//! the same code path on every target, `no_std` included.

pub(crate) use libm::{asin, exp, fabs as abs, floor, log as ln, round, sqrt};

/// Pi.
pub(crate) const PI: f64 = core::f64::consts::PI;
/// Square root of three: line-to-line against phase.
pub(crate) const SQRT_3: f64 = 1.732_050_807_568_877_2;

/// Root of a continuous `f` between `lo` and `hi`, where the signs differ.
///
/// Chandrupatla's bracketed method: inverse quadratic steps where they are
/// safe, bisection otherwise, so it always ends. Where the signs do not
/// differ the end with the smaller `|f|` is returned.
///
/// Source: T. R. Chandrupatla, Adv. Eng. Softw. 28 (1997) 145-149, from memory.
pub(crate) fn root(lo: f64, hi: f64, tolerance: f64, mut f: impl FnMut(f64) -> f64) -> f64 {
    let (mut a, mut b) = (hi, lo);
    let (mut fa, mut fb) = (f(a), f(b));
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
    use super::root;

    #[test]
    fn finds_known_roots() {
        // Square root of two, and Kepler's equation M = 0.65, e = 0.83, both by definition.
        let x = root(0.0, 2.0, 1e-14, |x| x * x - 2.0);
        assert!((x - core::f64::consts::SQRT_2).abs() < 1e-12);
        let e = root(0.0, 3.0, 1e-14, |e| e - 0.83 * libm::sin(e) - 0.65);
        assert!((e - 0.83 * libm::sin(e) - 0.65).abs() < 1e-12);
    }

    #[test]
    fn a_jump_is_bracketed() {
        let x = root(0.0, 1.0, 1e-12, |x| if x < 0.3 { 1.0 } else { -1.0 });
        assert!((x - 0.3).abs() < 1e-9);
    }
}
