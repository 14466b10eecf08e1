//! How sure the answers are: worked out in small pieces after each edit, those of the strip first.

use super::Found;
use super::store::App;
use super::sure::{Banded, Sure};
use super::task::{Job, Task};
use leptos::prelude::*;
use pitchline_core::band::{Band, CurvePoint, CurveSampler, Quantity, Sampler};
use std::sync::Arc;

/// Speeds of the distance's curve, about.
const SPEEDS: usize = 12;

/// What was worked out last of an answer.
#[derive(Clone, Default)]
pub struct Banding {
    /// The band; none where there is no answer.
    pub band: Option<Band>,
    /// The answers that it belongs to.
    pub found: Option<Arc<Found>>,
}

/// The band of the distance at every speed.
#[derive(Clone, Default)]
pub struct BandCurve {
    /// From slow to fast.
    pub points: Vec<CurvePoint>,
    /// The answers that they belong to.
    pub found: Option<Arc<Found>>,
}

/// What is worked out, as signals of the root.
#[derive(Clone, Copy, Default)]
pub(super) struct Bands {
    of: RwSignal<[Banding; Banded::COUNT]>,
    curve: RwSignal<BandCurve>,
    /// By [`Banded`]; none on a host without a page.
    tasks: StoredValue<[Option<Task>; Banded::COUNT]>,
}

impl Banded {
    /// What the core calls it.
    #[must_use]
    pub fn quantity(self) -> Quantity {
        match self {
            Self::Speed => Quantity::TopSpeed,
            Self::Hill => Quantity::Hill,
            Self::Distance => Quantity::SteadyDistance,
            Self::Outing => Quantity::OutingDistance,
            Self::Charge => Quantity::ChargeTime,
            Self::Enough => Quantity::EnoughTime,
        }
    }
}

impl App {
    /// Begins to work out bands, and goes on for as long as the page lives.
    pub fn begin_bands(self) {
        let tasks = Banded::ALL.map(|of| {
            let follow = move || _ = self.found();
            Some(Task::new(follow, move || Some(self.band_job(of))))
        });
        self.bands.tasks.set_value(tasks);
    }

    /// What was worked out last of an answer's band; tracked.
    #[must_use]
    pub fn banding(self, of: Banded) -> Banding {
        self.bands.of.with(|all| all[of as usize].clone())
    }

    /// The band of the distance at every speed, as it was worked out last; tracked.
    #[must_use]
    pub fn band_curve(self) -> BandCurve {
        self.bands.curve.get()
    }

    /// The work on a band.
    #[must_use]
    pub fn band_task(self, of: Banded) -> Option<Task> {
        self.bands.tasks.with_value(|tasks| tasks[of as usize])
    }

    /// How sure an answer is; tracked.
    #[must_use]
    pub fn sure(self, of: Banded) -> Sure {
        self.bands.of.with(|all| match &all[of as usize] {
            Banding { band: Some(band), found: Some(found) } => {
                Sure { nominal: band.nominal, low: band.p10, high: band.p90, of: Some(found.count) }
            }
            _ => Sure::default(),
        })
    }

    /// Whether the bands of the strip are still to come; tracked.
    #[must_use]
    pub fn unsure(self) -> bool {
        let now = self.found().map(|found| found.count);
        let strip = [Banded::Speed, Banded::Hill, Banded::Distance];
        self.bands.of.with(|all| {
            strip.iter().any(|of| all[*of as usize].found.as_ref().map(|f| f.count) != now)
        })
    }

    /// Takes the samples; for the distance then those of its curve.
    fn band_job(self, of: Banded) -> Job {
        let Some(now) = self.found() else { return Box::new(|| 1.0) };
        let mut sampler = Sampler::new(&now.build, of.quantity());
        let mut curve = (of == Banded::Distance).then(|| {
            let along = &now.answers.distance.curve;
            let each = along.len().div_ceil(SPEEDS).max(1);
            let some = along.iter().step_by(each);
            // To the very end of the curve, wherever the steps leave off.
            let last = along.last().filter(|_| (along.len() - 1) % each != 0);
            CurveSampler::new(&now.build, some.chain(last).map(|point| point.speed_m_s))
        });
        let speeds = SPEEDS * curve.as_ref().map_or(0, CurveSampler::left);
        let all = (sampler.left() + speeds).max(1);
        // A ride in time takes a millisecond or so, anything else far less.
        let at_once = if of == Banded::Outing { 1 } else { 8 };
        let bands = self.bands;
        let mut told = false;
        Box::new(move || {
            if sampler.left() > 0 {
                sampler.take(sampler.left().min(at_once));
            }
            if sampler.left() == 0 && !told {
                told = true;
                let banding = Banding { band: sampler.band(), found: Some(now.clone()) };
                bands.of.update(|all| all[of as usize] = banding);
            } else if let Some(curve) = curve.as_mut().filter(|curve| told && curve.left() > 0) {
                curve.take();
                if curve.left() == 0 {
                    let found = Some(now.clone());
                    bands.curve.set(BandCurve { points: curve.curve(), found });
                }
            }
            let speeds = SPEEDS * curve.as_ref().map_or(0, CurveSampler::left);
            1.0 - (sampler.left() + speeds) as f64 / all as f64
        })
    }
}
