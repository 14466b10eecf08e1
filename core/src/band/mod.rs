//! How sure: an answer as a band, and what moves it most.

mod curve;
mod sample;
mod spread;

pub use curve::{CURVE_SAMPLES, CurvePoint, CurveSampler};
pub use spread::{INPUTS, SPREADS, Spread, Uncertain};

use crate::answers::{Drive, FULL, SLOW_M_S, Sag};
use crate::build::Build;
use crate::math::abs;
use crate::physics::road_load::Slope;
use crate::ride::{Steps, Trip, Until};
use alloc::vec::Vec;
use sample::{Sequence, quantile, triangle};
use serde::Serialize;

/// An answer that a band is asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
pub enum Quantity {
    /// Top speed on the flat with a full pack, m/s.
    TopSpeed,
    /// Steepest hill at 10 km/h with a full pack, as a share.
    Hill,
    /// Distance at the rider's cruising speed on the flat, m.
    SteadyDistance,
    /// Distance of the rider's outing until the pack is empty, m.
    OutingDistance,
    /// Time to charge, from where the rider begins until the charger ends, s.
    ChargeTime,
    /// The same until there is enough, s.
    EnoughTime,
}

/// An input that moves an answer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Mover {
    /// The input.
    pub input: Uncertain,
    /// The answer with this input alone at the tenth of its hundredths, in the answer's unit.
    pub low: f64,
    /// The answer with it at the ninetieth, in the answer's unit.
    pub high: f64,
}

impl Mover {
    /// By how much the answer changes as this input alone goes from the tenth
    /// to the ninetieth of its hundredths, in the answer's unit.
    #[must_use]
    pub fn swing(&self) -> f64 {
        self.high - self.low
    }
}

impl Quantity {
    /// Samples of a band that is shown: fewer where each is a ride in time.
    #[must_use]
    pub const fn samples(self) -> usize {
        match self {
            Self::OutingDistance => 120,
            _ => 500,
        }
    }

    /// The same with both ends of every input before them.
    #[must_use]
    pub const fn whole(self) -> usize {
        self.samples() + 2 * INPUTS
    }
}

/// An answer as a band.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Band {
    /// The answer for exactly what was entered, in the answer's unit.
    pub nominal: f64,
    /// One in ten is below, in the answer's unit.
    pub p10: f64,
    /// Half are below, in the answer's unit.
    pub p50: f64,
    /// One in ten is above, in the answer's unit.
    pub p90: f64,
    /// Every input that is not known exactly, what moves the answer most first.
    pub movers: [Mover; INPUTS],
    /// Samples that gave an answer, a count.
    pub samples: usize,
}

impl Band {
    /// The band of all [`Quantity::samples`] at once. None where there is no answer.
    ///
    /// ```
    /// use pitchline_core::band::{Band, P90_PLACE, Quantity, Uncertain};
    /// use pitchline_core::{Build, Draft};
    ///
    /// let build = Build::check(&Draft::typical()).unwrap();
    /// let band = Band::of(&build, Quantity::TopSpeed).unwrap();
    /// assert!(band.p10 < band.p50 && band.p50 < band.p90);
    /// // Top speed grows with Kv, which may be 10 % off, and by no larger share: air and sag hold it.
    /// let kv = band.movers.iter().find(|mover| mover.input == Uncertain::Kv).unwrap();
    /// assert!(kv.swing() > 0.0 && kv.swing() < 2.0 * 0.10 * P90_PLACE * band.nominal);
    /// ```
    #[must_use]
    pub fn of(build: &Build, quantity: Quantity) -> Option<Self> {
        let mut sampler = Sampler::new(build, quantity);
        sampler.take(quantity.whole());
        sampler.band()
    }
}

/// Takes samples of an answer, some at a time.
///
/// ```
/// use pitchline_core::band::{Quantity, Sampler};
/// use pitchline_core::{Build, Draft};
/// let build = Build::check(&Draft::typical()).unwrap();
/// let mut sampler = Sampler::new(&build, Quantity::TopSpeed);
/// while sampler.taken() < 64 {
///     sampler.take(16); // and let the page breathe
/// }
/// let band = sampler.band().unwrap();
/// assert!(band.p10 < band.p50 && band.p50 < band.p90);
/// ```
#[derive(Clone, Debug)]
pub struct Sampler {
    build: Build,
    quantity: Quantity,
    nominal: Option<f64>,
    sequence: Sequence,
    /// The answer with each input at its tenth, then at its ninetieth hundredth.
    ends: Vec<Option<f64>>,
    taken: usize,
    values: Vec<f64>,
}

/// Rides of a band are cut more coarsely: within 0.3 % of the usual ones.
const COARSE: Steps = Steps { changing_s: 1.0, changing: 4.0, steady_s: 15.0, steady_growth: 20.0 };
/// Place, of -1 to 1, of a triangle's ninetieth hundredth, `1 − √0.2`: between it and its
/// negative lie 8 of 10.
pub const P90_PLACE: f64 = 0.552_786_404_500_042;

impl Sampler {
    /// For an answer of a build; no samples yet.
    #[must_use]
    pub fn new(build: &Build, quantity: Quantity) -> Self {
        Self {
            build: *build,
            quantity,
            nominal: answer(build, quantity),
            sequence: Sequence::new(),
            ends: Vec::with_capacity(2 * INPUTS),
            taken: 0,
            values: Vec::new(),
        }
    }

    /// How many samples were taken.
    #[must_use]
    pub fn taken(&self) -> usize {
        self.taken
    }

    /// How much is to be taken yet for a band that is shown.
    #[must_use]
    pub fn left(&self) -> usize {
        self.quantity.whole().saturating_sub(self.ends.len() + self.taken)
    }

    /// Works the answer out so many times more; the same on every machine,
    /// however they are parted. The first eighteen tell what moves it and are
    /// not counted as samples.
    pub fn take(&mut self, count: usize) {
        for _ in 0..count {
            let mut build = self.build;
            if let Some(spread) = SPREADS.get(self.ends.len() / 2) {
                let upper = self.ends.len() % 2 == 1;
                spread.put(&mut build, if upper { P90_PLACE } else { -P90_PLACE });
                self.ends.push(answer(&build, self.quantity));
                continue;
            }
            self.taken += 1;
            for (spread, share) in SPREADS.iter().zip(self.sequence.next()) {
                spread.put(&mut build, triangle(share));
            }
            self.values.extend(answer(&build, self.quantity));
        }
    }

    /// The band of what was taken so far. None where there is no answer, as
    /// with a charger that does not fit, or no sample yet.
    #[must_use]
    pub fn band(&self) -> Option<Band> {
        let nominal = self.nominal?;
        if self.values.is_empty() {
            return None;
        }
        let mut values = self.values.clone();
        let [p10, p50, p90] = [0.1, 0.5, 0.9].map(|share| quantile(&mut values, share));
        let samples = values.len();
        Some(Band { nominal, p10, p50, p90, movers: self.movers(nominal), samples })
    }

    /// All inputs, the strongest first. One whose ends have no answer moves nothing.
    fn movers(&self, nominal: f64) -> [Mover; INPUTS] {
        let mut movers =
            SPREADS.map(|spread| Mover { input: spread.input, low: nominal, high: nominal });
        for (mover, ends) in movers.iter_mut().zip(self.ends.chunks(2)) {
            if let [Some(low), Some(high)] = ends {
                (mover.low, mover.high) = (*low, *high);
            }
        }
        movers.sort_by(|one, other| abs(other.swing()).total_cmp(&abs(one.swing())));
        movers
    }
}

/// The answer itself.
fn answer(build: &Build, quantity: Quantity) -> Option<f64> {
    let drive = Drive::new(build);
    match quantity {
        Quantity::TopSpeed => {
            let full = drive.supply(1.0, Sag::Burst);
            Some(drive.top_speed(&full, &FULL, Slope::FLAT).speed_m_s)
        }
        Quantity::Hill => {
            let full = drive.supply(1.0, Sag::Burst);
            Some(drive.steepest(&full, SLOW_M_S).grade)
        }
        Quantity::SteadyDistance => Some(drive.reach(build.ride.cruise_m_s).distance_m),
        Quantity::OutingDistance => {
            Some(Trip::out(&drive, build.ride.outing, Until::EMPTY, COARSE).whole().distance_m)
        }
        Quantity::ChargeTime => drive.charge_time_s(build.ride.charge_from, 1.0).ok(),
        Quantity::EnoughTime => {
            drive.charge_time_s(build.ride.charge_from, build.ride.charge_to).ok()
        }
    }
}
