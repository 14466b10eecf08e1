//! How sure answers are.

/// The band about an answer, as it was last worked out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Sure {
    /// The answer for exactly what was entered, in SI.
    pub nominal: f64,
    /// One in ten is below.
    pub low: f64,
    /// One in ten is above.
    pub high: f64,
    /// Which answers it belongs to, by [`Found::count`](super::Found); none where it was never
    /// worked out.
    pub of: Option<u32>,
}

impl Sure {
    /// Low and high about the answer of now. While the band of an edit is on its way the last one
    /// stands in, as wide for its middle; without one both are the answer.
    #[must_use]
    #[inline(never)]
    pub fn about(self, now: f64) -> [f64; 2] {
        let scale = now / self.nominal;
        if now == self.nominal {
            [self.low, self.high]
        } else if self.of.is_some() && scale > 0.0 && scale.is_finite() {
            [self.low * scale, self.high * scale]
        } else {
            [now, now]
        }
    }
}

/// The answers that have a band.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Banded {
    /// Top speed, m/s.
    Speed,
    /// Steepest hill at 10 km/h, as a share.
    Hill,
    /// Distance at the rider's speed, m.
    Distance,
    /// Distance of the rider's outing, m.
    Outing,
    /// Time on the charger until it ends, s.
    Charge,
    /// The same until there is enough.
    Enough,
}

impl Banded {
    /// All of them.
    pub const ALL: [Self; Self::COUNT] =
        [Self::Speed, Self::Hill, Self::Distance, Self::Outing, Self::Charge, Self::Enough];
    /// How many there are.
    pub const COUNT: usize = 6;
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_band_goes_with_its_answer_until_the_next_is_there() {
        let worked = Sure { nominal: 20.0, low: 18.0, high: 23.0, of: Some(3) };
        assert_eq!(worked.about(20.0), [18.0, 23.0]);
        assert_eq!(worked.about(10.0), [9.0, 11.5]);
        // Where there is no share of it, there is no band.
        assert_eq!(worked.about(0.0), [0.0, 0.0]);
        assert_eq!(worked.about(-1.0), [-1.0, -1.0]);
        let still = Sure { nominal: 0.0, low: 0.0, high: 4.0, of: Some(3) };
        assert_eq!(still.about(0.0), [0.0, 4.0]);
        assert_eq!(still.about(5.0), [5.0, 5.0]);
        assert_eq!(Sure::default().about(10.0), [10.0, 10.0]);
    }
}
