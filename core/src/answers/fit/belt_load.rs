//! What the belt on the board must pull, what it may, and how tight it has to be.

use crate::answers::climb::CRAWL_M_S;
use crate::answers::drive::{Drive, Sag};
use crate::answers::explain::Headline;
use crate::answers::limit::Limit;
use crate::answers::push::FULL;
use crate::physics::belt_geometry::{
    BeltCentre, BeltCentreInRun, BeltLength, BeltSpan, BeltWedge, BrakePull, BrakeTorque,
    CentreAsMeasured, DrivePull, JumpTorque, LargePulleyRadius, MeshShare, PeakPull, RatedPull,
    RatedPullInMesh, SlotCentre, SmallPulleyRadius, SpanDeflection, SpanFrequency, StaticTension,
    TENSION_SHARES, TEST_FORCE_N, TeethInMesh, TouchingCentre, whole,
};
use crate::physics::gear::{BeltPull, MotorSpeed, ShaftTorque};
use crate::physics::motor::GreatestTorque;
use crate::physics::road_load::Slope;
use crate::working::Working;
use serde::Serialize;

/// Where the centre distance that a board runs at was taken from.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum CentreFrom {
    /// From the teeth of the belt on the board, within the mount's stops.
    Belt,
    /// As measured.
    Measured,
    /// The middle of the mount's travel, as nothing better is known.
    Slot,
}

/// How a belt lies at a centre distance.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct BeltMesh {
    /// Centre distance, m.
    pub centre_m: f64,
    /// Free span, m.
    pub span_m: f64,
    /// Wrap of the smaller pulley, rad.
    pub wrap_rad: f64,
    /// Teeth in mesh there.
    pub teeth: f64,
    /// Of which whole, teeth.
    pub whole_teeth: f64,
    /// Share of the belt's rating that they leave.
    pub rating_share: f64,
}

/// How to check a tension.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct BeltCheck {
    /// Deflection at mid span, m, under [`TEST_FORCE_N`], 10 N.
    pub deflection_m: f64,
    /// Note of the plucked span, Hz.
    pub frequency_hz: f64,
}

/// A static tension, and what comes with it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct BeltTension {
    /// As a share of the greatest pull.
    pub share: f64,
    /// Pull in each span of the belt at rest, N.
    pub force_n: f64,
    /// Shaft torque of one motor, N·m, at which the belt may skip teeth.
    pub jump_n_m: f64,
    /// How to check it; none where the pulleys would overlap.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub check: Option<BeltCheck>,
}

/// Pull in each belt, and what it may be.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct BeltLoad {
    /// At the greatest push of a full pack at a crawl, N, whatever the belt is rated for.
    pub drive_n: f64,
    /// What sets that push.
    pub drive_limit: Limit,
    /// When braking, N: at the controller's motor current limit for braking or
    /// the motor's own, up to what the tyres hold. A pack that takes no more back
    /// only lessens it.
    pub brake_n: f64,
    /// What sets that: the controller, the motor, or grip.
    pub brake_limit: Limit,
    /// The greater of the two, N.
    pub peak_n: f64,
    /// Held at cruising speed on the flat, N; 0 where the board rolls by itself.
    pub steady_n: f64,
    /// Held at 10 km/h up the rider's hill, N; 0 where the board rolls by itself.
    pub hill_n: f64,
    /// Highest pull, N, as the push takes it: with the teeth in mesh where the
    /// centre distance is known from belt or measurement, else in full.
    pub rated_n: f64,
    /// Greatest pull as a share of that: above 1 it asks too much.
    pub used: f64,
    /// Static tension: least, aimed at, most. Common practice, no source.
    pub tensions: [BeltTension; 3],
    /// Force for the check of the deflection, N.
    pub test_force_n: f64,
    /// Whether the belt's mass and length are given, or assumed by its width.
    pub belt_weighed: bool,
}

/// A rating that never binds: the motors do not know what the belt is rated for.
const UNRATED_N: f64 = 1e12;

impl Drive {
    /// Pitch radii of the smaller and the larger pulley, m.
    pub(super) fn radii(&self, w: &mut Working) -> [f64; 2] {
        let [small, large] = self.pulley_teeth();
        let pitch = self.build.belt.pitch_m;
        [
            w.apply(SmallPulleyRadius { teeth: small, pitch }),
            w.apply(LargePulleyRadius { teeth: large, pitch }),
        ]
    }

    /// Teeth of the smaller and the larger pulley.
    fn pulley_teeth(&self) -> [f64; 2] {
        let (motor, wheel) = (self.build.motor_pulley.teeth, self.build.wheel_pulley.teeth);
        [motor.min(wheel), motor.max(wheel)]
    }

    /// The mount's stops, m, the nearer first.
    pub(super) fn stops(&self) -> [f64; 2] {
        let (one, other) = (self.build.truck.centre_min_m, self.build.truck.centre_max_m);
        [one.min(other), one.max(other)]
    }

    /// Where the centre distance is best taken from.
    pub(super) fn centre_from(&self) -> CentreFrom {
        if self.build.belt.teeth.is_some() {
            CentreFrom::Belt
        } else if self.build.bench.measured_centre_m.is_some() {
            CentreFrom::Measured
        } else {
            CentreFrom::Slot
        }
    }

    /// Centre distance that the board runs at, m; none where its pulleys would overlap.
    pub(super) fn centre(&self, radii: [f64; 2], w: &mut Working) -> Option<f64> {
        let (belt, bench) = (&self.build.belt, &self.build.bench);
        let ([small, large], [least, most]) = (radii, self.stops());
        let centre = match (belt.teeth, bench.measured_centre_m) {
            (Some(teeth), _) => {
                let length = w.apply(BeltLength { teeth, pitch: belt.pitch_m });
                w.apply(BeltCentreInRun { length, small, large, least, most })
            }
            (None, Some(measured)) => w.apply(CentreAsMeasured { measured }),
            (None, None) => w.apply(SlotCentre { least, most }),
        };
        (centre > w.apply(TouchingCentre { small, large })).then_some(centre)
    }

    /// How a belt lies at a centre distance at which the pulleys do not overlap.
    pub(super) fn mesh(&self, radii: [f64; 2], centre: f64, w: &mut Working) -> BeltMesh {
        let ([small, large], [teeth, _]) = (radii, self.pulley_teeth());
        let wedge = w.apply(BeltWedge { small, large, centre });
        let mesh = w.apply(TeethInMesh { teeth, wedge });
        BeltMesh {
            centre_m: centre,
            span_m: BeltSpan { centre, small, large }.value(),
            wrap_rad: crate::math::PI - 2.0 * wedge,
            teeth: mesh,
            whole_teeth: whole(mesh),
            rating_share: w.apply(MeshShare { mesh }),
        }
    }

    /// Highest pull of the belt on the board, N: with its teeth in mesh where
    /// the centre distance is known, from its own teeth or as measured.
    pub(crate) fn belt_rated_explained(&self, w: &mut Working) -> f64 {
        let belt = &self.build.belt;
        let (rating, width) = (1e-3 * belt.rating_n_per_m, 1e3 * belt.width_m);
        let radii = self.radii(w);
        let known = self.centre_from() != CentreFrom::Slot;
        let centre = if known { self.centre(radii, w) } else { None };
        let Some(centre) = centre else { return w.apply(RatedPull { rating, width }) };
        let share = self.mesh(radii, centre, w).rating_share;
        w.apply(RatedPullInMesh { rating, width, share })
    }

    /// Pull at the greatest push and when braking, N, and what sets each.
    pub(crate) fn belt_pulls(&self, w: &mut Working) -> [(f64, Limit); 2] {
        let mut drive = *self;
        drive.belt_rated_n = UNRATED_N;
        let (b, pitch) = (&self.build, self.build.belt.pitch_m);
        let supply = self.supply_explained(1.0, Sag::Burst, w);
        let push = drive.push_explained(&supply, &FULL, CRAWL_M_S, Slope::FLAT, w);
        let omega =
            w.apply(MotorSpeed { ratio: self.ratio, speed: CRAWL_M_S, radius: self.radius_m });
        let iron = self.iron_n_m(omega, w);
        let torque = w.apply(GreatestTorque {
            constant: self.torque_per_amp,
            current: push.motor_current_a,
            iron,
        });
        let pushed = w.apply(DrivePull { torque, teeth: b.motor_pulley.teeth, pitch });
        let hold = self.grip_n_m(Slope::FLAT, w);
        let (set, rated) = (b.controller.brake_current_a, b.motor.max_current_a);
        let torque = w.apply(BrakeTorque { constant: self.torque_per_amp, set, rated, iron, hold });
        let limit = match torque < hold {
            false => Limit::Grip,
            true if rated < set => Limit::MotorCurrent,
            true => Limit::BrakeCurrent,
        };
        let braked = w.apply(BrakePull { torque, teeth: b.motor_pulley.teeth, pitch });
        [(pushed, push.limit), (braked, limit)]
    }

    /// Greatest pull in the belt, N.
    pub(super) fn belt_peak_n(&self, w: &mut Working) -> f64 {
        let [(pushed, _), (braked, _)] = self.belt_pulls(w);
        w.apply(PeakPull { drive: pushed, brake: braked })
    }

    /// Pull, N, that holds a speed on a slope; 0 where the board rolls by itself.
    fn belt_held_n(&self, speed_m_s: f64, slope: Slope, w: &mut Working) -> f64 {
        let load = self.load_explained(speed_m_s, slope, w);
        if load <= 0.0 {
            return 0.0;
        }
        let b = &self.build;
        let torque = w.apply(ShaftTorque {
            force: load,
            radius: self.radius_m,
            ratio: self.ratio,
            efficiency: b.belt.efficiency,
            motors: self.motors,
        });
        w.apply(BeltPull { torque, teeth: b.motor_pulley.teeth, pitch: b.belt.pitch_m })
    }

    fn belt_tension(
        &self,
        share: f64,
        peak: f64,
        mesh: Option<(BeltMesh, [f64; 2])>,
        w: &mut Working,
    ) -> BeltTension {
        let belt = &self.build.belt;
        let force = w.apply(StaticTension { share, peak });
        let check = mesh.map(|(mesh, [small, large])| {
            let span = w.apply(BeltSpan { centre: mesh.centre_m, small, large });
            let mass = belt.mass_per_m_explained(w);
            BeltCheck {
                deflection_m: w.apply(SpanDeflection { force: TEST_FORCE_N, span, tension: force }),
                frequency_hz: w.apply(SpanFrequency { tension: force, mass, span }),
            }
        });
        let jump = w.apply(JumpTorque {
            tension: force,
            teeth: self.build.motor_pulley.teeth,
            pitch: belt.pitch_m,
        });
        BeltTension { share, force_n: force, jump_n_m: jump, check }
    }

    /// What the belt must pull, what it may, and how tight it has to be.
    pub(super) fn belt_load(&self, mesh: Option<BeltMesh>) -> BeltLoad {
        let w = &mut Working::off();
        let radii = self.radii(w);
        let mesh = mesh.map(|mesh| (mesh, radii));
        let [(drive_n, drive_limit), (brake_n, brake_limit)] = self.belt_pulls(w);
        let peak_n = PeakPull { drive: drive_n, brake: brake_n }.value();
        let ride = &self.build.ride;
        let rated_n = self.belt_rated_n;
        BeltLoad {
            drive_n,
            drive_limit,
            brake_n,
            brake_limit,
            peak_n,
            steady_n: self.belt_held_n(ride.cruise_m_s, Slope::FLAT, w),
            hill_n: self.belt_held_n(10.0 / 3.6, Slope::of_grade(ride.grade), w),
            rated_n,
            used: peak_n / rated_n,
            tensions: TENSION_SHARES.map(|share| self.belt_tension(share, peak_n, mesh, w)),
            test_force_n: TEST_FORCE_N,
            belt_weighed: self.build.belt.is_weighed(),
        }
    }
}

/// The steps that lead to a headline about the belt.
pub(crate) fn explain(drive: &Drive, headline: Headline, w: &mut Working) {
    let b = &drive.build;
    match headline {
        Headline::BeltCentre => {
            let radii @ [small, large] = drive.radii(w);
            if let Some(teeth) = b.belt.teeth {
                let length = w.apply(BeltLength { teeth, pitch: b.belt.pitch_m });
                w.apply(TouchingCentre { small, large });
                // A belt too short wants no centre distance at all.
                if crate::physics::belt_geometry::centre_m(length, small, large).is_ok() {
                    w.apply(BeltCentre { length, small, large });
                }
            } else {
                drive.centre(radii, w);
            }
        }
        Headline::BeltRating => {
            drive.belt_rated_explained(w);
        }
        Headline::BeltPull => {
            drive.belt_peak_n(w);
        }
        Headline::BeltSteady => {
            drive.belt_held_n(b.ride.cruise_m_s, Slope::FLAT, w);
        }
        Headline::BeltHill => {
            drive.belt_held_n(10.0 / 3.6, Slope::of_grade(b.ride.grade), w);
        }
        _ => {
            let radii = drive.radii(w);
            let centre = drive.centre(radii, w);
            let mesh = centre.map(|c| (drive.mesh(radii, c, &mut Working::off()), radii));
            let peak = drive.belt_peak_n(w);
            let [_, share, _] = TENSION_SHARES;
            drive.belt_tension(share, peak, mesh, w);
        }
    }
}
