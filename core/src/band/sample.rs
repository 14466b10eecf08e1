//! Points that fill a cube evenly, the same on every machine.

use super::spread::INPUTS;
use crate::math::sqrt;

/// The additive recurrence whose steps are the square roots of primes, less
/// their whole parts; it begins in the middle of the cube.
///
/// Source: R. D. Richtmyer, "The evaluation of definite integrals, and a
/// quasi-Monte-Carlo method based on the properties of algebraic numbers",
/// Los Alamos LA-1342, 1951, from memory.
#[derive(Clone, Debug)]
pub(super) struct Sequence {
    at: [f64; INPUTS],
    step: [f64; INPUTS],
}

/// The first primes, each with the whole part of its root.
const PRIMES: [(f64, f64); INPUTS] = [
    (2.0, 1.0),
    (3.0, 1.0),
    (5.0, 2.0),
    (7.0, 2.0),
    (11.0, 3.0),
    (13.0, 3.0),
    (17.0, 4.0),
    (19.0, 4.0),
    (23.0, 4.0),
];

impl Sequence {
    pub(super) fn new() -> Self {
        Self { at: [0.5; INPUTS], step: PRIMES.map(|(prime, whole)| sqrt(prime) - whole) }
    }

    /// The next point, each coordinate between 0 and 1.
    pub(super) fn next(&mut self) -> [f64; INPUTS] {
        for (at, step) in self.at.iter_mut().zip(self.step) {
            *at += step;
            if *at >= 1.0 {
                *at -= 1.0;
            }
        }
        self.at
    }
}

/// A share between 0 and 1 as a place between -1 and 1 under a triangle.
pub(super) fn triangle(share: f64) -> f64 {
    if share < 0.5 { sqrt(2.0 * share) - 1.0 } else { 1.0 - sqrt(2.0 * (1.0 - share)) }
}

/// The value below which a share of the values lie, between two of them in
/// proportion; it puts `values` into another order. 0 for none.
pub(super) fn quantile(values: &mut [f64], share: f64) -> f64 {
    let last = values.len().saturating_sub(1);
    let place = share * last as f64;
    // No more than 2^52 samples are ever kept.
    #[allow(clippy::cast_possible_truncation, clippy::cast_sign_loss, reason = "0 to last")]
    let whole = place as usize;
    let low = nth(values, whole);
    let above = values.iter().skip(whole + 1).fold(f64::INFINITY, |least, v| least.min(*v));
    if above.is_finite() { low + (place - whole as f64) * (above - low) } else { low }
}

/// Puts the value that belongs at a place in order there, no smaller one after
/// it and no larger one before it.
// `select_nth_unstable_by` does the same, and costs the page two kilobytes more.
fn nth(values: &mut [f64], place: usize) -> f64 {
    let (mut from, mut to) = (0, values.len());
    while to > from + 1 {
        let pivot = value(values, from + (to - from) / 2);
        // Smaller ones first, then those alike, then the larger ones.
        let (mut small, mut at, mut large) = (from, from, to);
        while at < large {
            let now = value(values, at);
            if now < pivot {
                values.swap(small, at);
                small += 1;
                at += 1;
            } else if now > pivot {
                large -= 1;
                values.swap(at, large);
            } else {
                at += 1;
            }
        }
        if place < small {
            to = small;
        } else if place >= large {
            from = large;
        } else {
            return pivot;
        }
    }
    value(values, place)
}

fn value(values: &[f64], place: usize) -> f64 {
    values.get(place).copied().unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::vec::Vec;

    #[test]
    fn quantiles_are_those_of_a_sorted_list() {
        // 0, 7, 14 ... 98 modulo 101, some twice: sorting is the other way to know.
        let values: Vec<f64> = (0..300).map(|k| f64::from(k * 7 % 101)).collect();
        let mut sorted = values.clone();
        sorted.sort_by(f64::total_cmp);
        for share in [0.0, 0.1, 0.25, 0.5, 0.9, 0.999, 1.0] {
            let place: f64 = share * 299.0;
            let (low, part) = (sorted[place as usize], place.fract());
            let high = sorted[(place as usize + 1).min(299)];
            let want = low + part * (high - low);
            let got = quantile(&mut values.clone(), share);
            assert!((got - want).abs() < 1e-9, "{share}: {got} {want}");
        }
        assert_eq!(quantile(&mut [], 0.5), 0.0);
        assert_eq!(quantile(&mut [3.0], 0.9), 3.0);
    }

    #[test]
    fn a_triangle_has_its_mean_and_spread() {
        // Mean 0, variance 1/6, by integration.
        let n = 20_000;
        let (mut mean, mut square) = (0.0, 0.0);
        for k in 0..n {
            let x = triangle((f64::from(k) + 0.5) / f64::from(n));
            mean += x / f64::from(n);
            square += x * x / f64::from(n);
        }
        assert!(mean.abs() < 1e-9 && (square - 1.0 / 6.0).abs() < 1e-4);
    }

    #[test]
    fn the_points_are_those_of_the_formula() {
        // Fraction of 0.5 + n √p.
        let mut sequence = Sequence::new();
        let mut point = [0.0; INPUTS];
        for _ in 0..500 {
            point = sequence.next();
        }
        for (share, prime) in
            point.iter().zip([2.0_f64, 3.0, 5.0, 7.0, 11.0, 13.0, 17.0, 19.0, 23.0])
        {
            let want = (0.5 + 500.0 * prime.sqrt()).fract();
            assert!((share - want).abs() < 1e-9, "{prime}: {share} {want}");
        }
    }

    #[test]
    fn each_coordinate_is_even() {
        let mut sequence = Sequence::new();
        let mut counts = [[0_u32; 10]; INPUTS];
        for _ in 0..1000 {
            for (count, share) in counts.iter_mut().zip(sequence.next()) {
                count[(share * 10.0) as usize] += 1;
            }
        }
        for count in counts.iter().flatten() {
            assert!((90..=110).contains(count), "{counts:?}");
        }
    }
}
