//! Scales: from a value to a place in the drawing.

/// Values beyond this are held here, so that no sum or quotient overflows.
const FAR: f64 = 1e12;

/// `v` held between `low` and `high`; not a number becomes `high`. The
/// standard clamp would bring along the whole float formatter for the message
/// of its panic.
pub(crate) fn within(v: f64, low: f64, high: f64) -> f64 {
    v.min(high).max(low)
}

/// `v` held where sums stay finite; not a number becomes 0.
pub(crate) fn held(v: f64) -> f64 {
    if v.is_nan() { 0.0 } else { within(v, -FAR, FAR) }
}

/// A straight map from a range of values to a range of places.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Linear {
    low: f64,
    high: f64,
    from: f64,
    to: f64,
}

impl Linear {
    /// Maps `low` to `from` and `high` to `to`. A range in the wrong order is
    /// turned; one too narrow to tell its ends apart is widened about its
    /// middle; anything that is not a number counts as 0.
    pub fn new(low: f64, high: f64, from: f64, to: f64) -> Self {
        let (low, high) = widened(low, high);
        Self { low, high, from, to }
    }

    /// The value at the start.
    pub fn low(&self) -> f64 {
        self.low
    }

    /// The value at the end.
    pub fn high(&self) -> f64 {
        self.high
    }

    /// The place of a value: outside the range it lies outside the places, but
    /// it is always a number.
    pub fn at(&self, value: f64) -> f64 {
        let part = (held(value) - self.low) / (self.high - self.low);
        self.from + part * (self.to - self.from)
    }

    /// Whether the value lies in the range, ends included.
    pub fn holds(&self, value: f64) -> bool {
        value >= self.low && value <= self.high
    }
}

/// The range in order and wide enough to divide by.
pub(super) fn widened(low: f64, high: f64) -> (f64, f64) {
    let (a, b) = (held(low), held(high));
    let (low, high) = if a <= b { (a, b) } else { (b, a) };
    let size = low.abs().max(high.abs());
    if high - low > 1e-6 * size.max(1.0) {
        return (low, high);
    }
    let more = (0.05 * size).max(0.5);
    (low - more, high + more)
}

/// The lowest and highest of the finite values, `None` if there are none.
pub fn extent(values: impl Iterator<Item = f64>) -> Option<(f64, f64)> {
    values.filter(|v| v.is_finite()).fold(None, |seen, v| match seen {
        None => Some((v, v)),
        Some((low, high)) => Some((v.min(low), v.max(high))),
    })
}

/// Equal places side by side, one for each of `count` things.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Band {
    from: f64,
    step: f64,
}

impl Band {
    /// Shares the places between `from` and `to` among `count` things.
    pub fn new(count: usize, from: f64, to: f64) -> Self {
        let step = (to - from) / count.max(1) as f64;
        Self { from, step }
    }

    /// Where the place of thing `index` begins.
    pub fn start(&self, index: usize) -> f64 {
        self.from + self.step * index as f64
    }

    /// The middle of the place of thing `index`.
    pub fn middle(&self, index: usize) -> f64 {
        self.start(index) + self.step / 2.0
    }

    /// How wide each place is.
    pub fn width(&self) -> f64 {
        self.step
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    #[test]
    fn ends_and_middle() {
        let scale = Linear::new(10.0, 30.0, 100.0, 0.0);
        assert_eq!(scale.at(10.0), 100.0);
        assert_eq!(scale.at(30.0), 0.0);
        assert_eq!(scale.at(20.0), 50.0);
        assert!(scale.holds(30.0) && !scale.holds(30.1));
    }

    #[test]
    fn one_value_stands_in_the_middle() {
        let scale = Linear::new(7.0, 7.0, 0.0, 100.0);
        assert_eq!(scale.at(7.0), 50.0);
    }

    #[test]
    fn bands_touch_and_fill() {
        let band = Band::new(4, 20.0, 100.0);
        assert_eq!(band.width(), 20.0);
        assert_eq!(band.start(3) + band.width(), 100.0);
        assert_eq!(band.middle(0), 30.0);
        assert_eq!(Band::new(0, 0.0, 10.0).width(), 10.0);
    }

    #[test]
    fn extent_skips_what_is_not_finite() {
        let values = [f64::NAN, 3.0, -1.0, f64::INFINITY];
        assert_eq!(extent(values.into_iter()), Some((-1.0, 3.0)));
        assert_eq!(extent([f64::NAN].into_iter()), None);
    }

    proptest! {
        // A failure is told by its smallest case; no file is left in the tree.
        #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

        #[test]
        fn always_a_number_and_in_order(
            low in any::<f64>(), high in any::<f64>(), a in any::<f64>(), b in any::<f64>(),
        ) {
            let scale = Linear::new(low, high, 0.0, 300.0);
            prop_assert!(scale.low() < scale.high());
            let (a, b) = (scale.at(a.min(b)), scale.at(a.max(b)));
            prop_assert!(a.is_finite() && b.is_finite() && a <= b);
        }
    }
}
