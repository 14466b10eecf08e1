//! A ride in time that is taken a few steps at a time.

use super::course::{Course, Leg, Manner, Steps, TracePoint, Until};
use super::journey::{Journey, Moment};
use super::ledger::Ledger;
use super::record::Record;
use super::ridden::{Hottest, Ridden, RideEnd};
use super::simulate::{Phase, SHORT};
use super::style::{Style, StyleFigures};
use crate::answers::{Drive, Limit};
use crate::math::share;
use crate::physics::road_load::Slope;
use alloc::vec::Vec;

/// A ride on its way: whoever must not stand still takes it a few steps at a
/// time.
///
/// ```
/// use pitchline_core::ride::{Steps, Style, Trip, Until};
/// use pitchline_core::{Build, Draft, Drive};
///
/// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
/// let mut trip = Trip::in_style(&drive, Style::Town, Until::distance(1000.0), Steps::USUAL);
/// while trip.advance(50) {
///     assert!(trip.share() < 1.0);
/// }
/// // Town is ridden at 20 km/h at most, so a kilometre takes three minutes and more.
/// assert!((trip.now().distance_m - 1000.0).abs() < 1.0 && trip.now().time_s > 180.0);
/// // In one go it is the same ride.
/// assert_eq!(trip.finish(), drive.ride_style(Style::Town, Until::distance(1000.0)));
/// ```
#[derive(Clone, Debug)]
pub struct Trip {
    pub(super) journey: Journey,
    pub(super) course: Way,
    /// The next leg or ramp, and when the round began.
    pub(super) at: usize,
    pub(super) begun_s: f64,
    pub(super) phase: Phase,
    pub(super) manner: Manner,
    pub(super) until: Until,
    pub(super) steps: Steps,
    pub(super) creep_s: f64,
    /// Length of the next steady step, s, and how long it may become.
    pub(super) steady_s: f64,
    pub(super) steady_most_s: f64,
    /// The speed wished for, m/s, or what the board reaches with a full pack where that is less.
    pub(super) wish_m_s: f64,
    /// The limit at which the speed has settled.
    pub(super) settled: Option<Limit>,
    /// Whether it is still falling to the first speed that it settles at.
    pub(super) sinking: bool,
    pub(super) record: Option<Record>,
    pub(super) ride: Ridden,
    /// How the distance ended; what follows is limping.
    pub(super) ended: Option<RideEnd>,
    over: bool,
    limps: bool,
}

/// A course of one's own.
#[derive(Clone, Debug)]
pub(super) enum Way {
    Legs(Vec<Leg>),
    Trace(Vec<TracePoint>),
}

/// A leg, or a ramp from one point of a trace to the next.
pub(super) enum Bit {
    Leg(Leg),
    Ramp(TracePoint, TracePoint),
}

impl Way {
    /// The highest speed that is asked for, m/s.
    pub(super) fn wish_m_s(&self) -> f64 {
        match self {
            Self::Legs(legs) => Course::Legs(legs),
            Self::Trace(points) => Course::Trace(points),
        }
        .wish_m_s()
    }

    pub(super) fn bit(&self, at: usize) -> Option<Bit> {
        match self {
            Self::Legs(legs) => legs.get(at).copied().map(Bit::Leg),
            Self::Trace(points) => Some(Bit::Ramp(*points.get(at)?, *points.get(at + 1)?)),
        }
    }
}

/// A ride goes on, or ends.
pub(super) type Going = Result<(), RideEnd>;

impl Trip {
    /// At the start of a ride on a course from a charge, a share held between 0 and 1.
    #[must_use]
    pub fn new(
        drive: &Drive,
        course: Course<'_>,
        manner: Manner,
        until: Until,
        charge: f64,
        steps: Steps,
    ) -> Self {
        let journey = Journey::new(drive, share(charge));
        let now = journey.now;
        let ride = Ridden {
            distance_m: 0.0,
            time_s: 0.0,
            start_charge: now.charge,
            end_charge: now.charge,
            end: RideEnd::Time,
            top_m_s: 0.0,
            wh_per_km: 0.0,
            ledger: Ledger::default(),
            hottest: Hottest {
                winding_c: now.winding_c,
                case_c: now.case_c,
                controller_c: now.controller_c,
                cell_c: now.cell_c,
            },
            held_back: None,
            not_held: None,
            stopped: None,
            brake_held_back: None,
            winding_hot: None,
            wish_m_s: 0.0,
            full_wish_m: 0.0,
            limp_m: 0.0,
            moments: Vec::new(),
            extents: Vec::new(),
        };
        let wish_m_s = drive.reached_m_s(course.wish_m_s());
        Self {
            journey,
            course: match course {
                Course::Legs(legs) => Way::Legs(legs.into()),
                Course::Trace(points) => Way::Trace(points.into()),
            },
            at: 0,
            begun_s: 0.0,
            phase: Phase::Next,
            manner,
            until,
            steps,
            creep_s: steps.changing_s,
            steady_s: steps.steady_s,
            steady_most_s: steps.steady_s,
            wish_m_s,
            settled: None,
            sinking: false,
            record: Some(Record::new(&now)),
            ride,
            ended: None,
            over: false,
            limps: true,
        }
    }

    /// At the start of a ride at a steady speed on the flat, m/s and above 0, from the rider's start charge.
    #[must_use]
    pub fn steady(drive: &Drive, speed_m_s: f64) -> Self {
        let figures = StyleFigures { cruise_m_s: speed_m_s, ..Style::Steady.figures(&drive.build) };
        let (legs, charge) = (figures.legs(), drive.build.ride.start_charge);
        let course = Course::Legs(&legs);
        Self::new(drive, course, figures.manner(), Until::EMPTY, charge, Steps::USUAL)
    }

    /// The same without moments on the way. All else is the same to the last digit.
    #[must_use]
    pub fn unrecorded(mut self) -> Self {
        self.record = None;
        self
    }

    /// The same without moments on the way and without what it limps, for distances by the hundred.
    #[must_use]
    pub fn brief(mut self) -> Self {
        self.limps = false;
        self.unrecorded()
    }

    /// At the start of a ride in a style, from the rider's start charge.
    #[must_use]
    pub fn in_style(drive: &Drive, style: Style, until: Until, steps: Steps) -> Self {
        let figures = style.figures(&drive.build);
        let charge = drive.build.ride.start_charge;
        let legs = figures.legs();
        Self::new(drive, Course::Legs(&legs), figures.manner(), until, charge, steps)
    }

    /// Takes so many steps, of the length that [`Steps`] says, fewer where the ride ends; tells whether it goes on.
    pub fn advance(&mut self, steps: u32) -> bool {
        for _ in 0..steps {
            if self.over {
                break;
            }
            if let Err(end) = self.step() {
                self.end(end);
            }
        }
        !self.over
    }

    /// Completes the ride, and goes on limping where its speed is lost; after that it is over.
    fn end(&mut self, end: RideEnd) {
        let limps = self.limps && end == RideEnd::Slow && self.ended.is_none();
        if self.ended.is_none() {
            self.complete(end);
        } else {
            self.ride.limp_m = self.journey.now.distance_m - self.ride.distance_m;
        }
        self.over = !limps;
    }

    /// What came of the ride so far.
    fn complete(&mut self, end: RideEnd) {
        let now = self.journey.now;
        let met = self.met(Limit::Empty, Slope::FLAT);
        self.ended = Some(end);
        let r = &mut self.ride;
        r.end = end;
        r.distance_m = now.distance_m;
        r.time_s = now.time_s;
        r.end_charge = now.charge;
        r.ledger = self.journey.ledger;
        if now.distance_m > 0.0 {
            r.wh_per_km = r.ledger.stored_wh / (now.distance_m / 1000.0);
        }
        r.wish_m_s = self.wish_m_s;
        let reached = self.wish_m_s >= SHORT * self.course.wish_m_s();
        r.full_wish_m = match r.not_held {
            _ if !reached => 0.0,
            Some(met) => met.distance_m,
            None => now.distance_m,
        };
        if r.end == RideEnd::Empty && r.stopped.is_none() {
            // The pack does not even feed the idling controller.
            r.stopped = Some(met);
        }
        if let Some(record) = &mut self.record {
            record.close(&now);
        }
    }

    /// Where it is.
    #[must_use]
    pub fn now(&self) -> &Moment {
        &self.journey.now
    }

    /// About how much of the ride is done, as a share; 1 only once it has ended.
    #[must_use]
    pub fn share(&self) -> f64 {
        if self.over {
            return 1.0;
        }
        let now = &self.journey.now;
        let start = self.ride.start_charge.max(1e-9);
        let spent = (start - now.charge) / start;
        let made = (now.distance_m / self.until.distance_m).max(now.time_s / self.until.time_s);
        spent.max(made).clamp(0.0, 0.99)
    }

    /// What came of it; of one that has not ended, so far.
    #[must_use]
    pub fn finish(mut self) -> Ridden {
        if self.ended.is_none() {
            self.complete(RideEnd::Time);
        }
        if let Some(record) = self.record {
            (self.ride.moments, self.ride.extents) = (record.moments, record.extents);
        }
        self.ride
    }

    /// All of it.
    pub(crate) fn whole(mut self) -> Ridden {
        while self.advance(u32::MAX) {}
        self.finish()
    }
}

impl Drive {
    /// A ride on a course from a charge, a share held between 0 and 1.
    #[must_use]
    pub fn ride(
        &self,
        course: Course<'_>,
        manner: Manner,
        until: Until,
        charge: f64,
        steps: Steps,
    ) -> Ridden {
        Trip::new(self, course, manner, until, charge, steps).whole()
    }

    /// A ride in a style from the rider's start charge.
    #[must_use]
    pub fn ride_style(&self, style: Style, until: Until) -> Ridden {
        Trip::in_style(self, style, until, Steps::USUAL).whole()
    }
}
