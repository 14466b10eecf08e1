//! Where an axis is marked: round numbers, 1, 2 or 5 times a power of ten.

use super::scale::{widened, within};

/// The marked values of an axis.
#[derive(Clone, Debug, PartialEq)]
pub struct Ticks {
    /// The values, rising.
    pub values: Vec<f64>,
    /// How many decimals tell them apart and lose nothing.
    pub decimals: u8,
}

/// Round values within `low..=high`, at most `about + 1` of them.
///
/// ```
/// use pitchline_web::chart::ticks;
/// let t = ticks(0.0, 1.0, 5);
/// assert_eq!(t.values, [0.0, 0.2, 0.4, 0.6, 0.8, 1.0]);
/// assert_eq!(t.decimals, 1);
/// ```
pub fn ticks(low: f64, high: f64, about: usize) -> Ticks {
    let (low, high) = widened(low, high);
    let step = Step::at_least((high - low) / about.max(1) as f64);
    // A hair of tolerance, or an end such as 0.3 would lose its own tick.
    let first = (step.count(low) - 1e-9).ceil();
    let last = (step.count(high) + 1e-9).floor();
    let mut values = Vec::new();
    let mut n = first;
    while n <= last && values.len() <= about {
        values.push(within(step.times(n), low, high));
        n += 1.0;
    }
    Ticks { values, decimals: step.decimals() }
}

/// The range widened to whole steps, so that an axis begins and ends on a
/// tick.
pub fn round_out(low: f64, high: f64, about: usize) -> (f64, f64) {
    let (low, high) = widened(low, high);
    let step = Step::at_least((high - low) / about.max(1) as f64);
    (step.times((step.count(low) + 1e-9).floor()), step.times((step.count(high) - 1e-9).ceil()))
}

/// `digit` times ten to the `power`, kept apart so that the multiples come out
/// as the nearest representable number and not as a sum of roundings.
#[derive(Clone, Copy)]
struct Step {
    digit: f64,
    power: i32,
}

impl Step {
    fn at_least(size: f64) -> Self {
        for power in -9..13 {
            for digit in [1.0, 2.0, 5.0] {
                let step = Self { digit, power };
                if step.times(1.0) >= size * (1.0 - 1e-9) {
                    return step;
                }
            }
        }
        Self { digit: 1.0, power: 13 }
    }

    fn times(self, n: f64) -> f64 {
        let tens = ten_to(self.power.unsigned_abs());
        if self.power < 0 { n * self.digit / tens } else { n * self.digit * tens }
    }

    /// How many steps make `value`.
    fn count(self, value: f64) -> f64 {
        value / self.times(1.0)
    }

    fn decimals(self) -> u8 {
        self.power.min(0).unsigned_abs() as u8
    }
}

fn ten_to(power: u32) -> f64 {
    (0..power).fold(1.0, |tens, _| tens * 10.0)
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn known_axes() {
        // Worked by hand from the 1-2-5 rule.
        let t = ticks(0.0, 47.0, 5);
        assert_eq!(t.values, [0.0, 10.0, 20.0, 30.0, 40.0]);
        assert_eq!(t.decimals, 0);
        let t = ticks(-0.3, 0.3, 6);
        assert_eq!(t.values, [-0.3, -0.2, -0.1, 0.0, 0.1, 0.2, 0.3]);
        assert_eq!(t.decimals, 1);
        let t = ticks(0.0, 0.1, 4);
        assert_eq!(t.values, [0.0, 0.05, 0.1]);
        assert_eq!(t.decimals, 2);
        assert_eq!(ticks(900.0, 2100.0, 3).values, [1000.0, 1500.0, 2000.0]);
    }

    #[test]
    fn rounding_out_keeps_round_ends() {
        assert_eq!(round_out(3.0, 47.0, 5), (0.0, 50.0));
        assert_eq!(round_out(0.0, 50.0, 5), (0.0, 50.0));
        assert_eq!(round_out(-7.0, 12.0, 4), (-10.0, 15.0));
    }

    proptest! {
        // A failure is told by its smallest case; no file is left in the tree.
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn inside_rising_and_few(low in any::<f64>(), high in any::<f64>(), about in 1_usize..12) {
            let (from, to) = widened(low, high);
            let t = ticks(low, high, about);
            prop_assert!(t.values.len() <= about + 1);
            prop_assert!(t.values.iter().all(|v| *v >= from && *v <= to));
            prop_assert!(t.values.windows(2).all(|pair| pair[0] < pair[1]));
        }

        #[test]
        fn labels_tell_ticks_apart(low in -1e4..1e4_f64, span in 1e-2..1e4_f64) {
            let t = ticks(low, low + span, 6);
            let words: Vec<_> =
                t.values.iter().map(|v| super::super::plain(*v, t.decimals)).collect();
            for (word, value) in words.iter().zip(&t.values) {
                let read: f64 = word.replace('−', "-").parse().unwrap();
                prop_assert!((read - value).abs() < 1e-9 * value.abs().max(1.0));
            }
            prop_assert!(words.windows(2).all(|pair| pair[0] != pair[1]));
        }

        #[test]
        fn rounding_out_holds_the_range(low in -1e9..1e9_f64, span in 0.0..1e9_f64) {
            let (a, b) = round_out(low, low + span, 5);
            let slack = 1e-6 * (low.abs() + span).max(1.0);
            prop_assert!(a <= low + slack && b >= low + span - slack);
        }
    }
}
