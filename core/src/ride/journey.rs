//! A board on its way: the state, and one step of it.

use super::flow::Flow;
use super::ledger::Ledger;
use crate::answers::{Drive, FULL, Least, Limit, Supply};
use crate::build::WHEELS;
use crate::math::abs;
use crate::parts::Mode;
use crate::physics::cell::{CellInTime, CellState, Decay};
use crate::physics::gear;
use crate::physics::gear::{BeltTorque, CountedSpeed};
use crate::physics::heat::{Cooling, MotorHeat, Node};
use crate::physics::motion::{EffectiveMass, Moved, RotorInertia, moved};
use crate::physics::motor::HeldCurrent;
use crate::physics::road_load::{RollingForce, Slope, SlopeForce};
use crate::working::Working;
use serde::Serialize;

/// A moment of a ride.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Moment {
    /// Time since the start, s.
    pub time_s: f64,
    /// Distance, m.
    pub distance_m: f64,
    /// Speed, m/s.
    pub speed_m_s: f64,
    /// Charge, as a share.
    pub charge: f64,
    /// Temperature of the cells, °C.
    pub cell_c: f64,
    /// Temperature of the windings, °C.
    pub winding_c: f64,
    /// Temperature of the motors' cases, °C.
    pub case_c: f64,
    /// Temperature of the controller's switches, °C.
    pub controller_c: f64,
    /// Current out of the pack over the last step, A.
    pub pack_a: f64,
    /// Volts at the controller over the last step.
    pub bus_v: f64,
    /// Current of each motor over the last step, A.
    pub motor_a: f64,
}

/// Heat capacity of a pack, J/(kg K), and its conductance to the air, W/K for
/// each kg. Common practice, no source.
const PACK_J_KG_K: f64 = 1000.0;
const PACK_W_KG_K: f64 = 0.18;
/// Heat capacity of a controller, J/(kg K). Common practice, no source.
const CONTROLLER_J_KG_K: f64 = 800.0;
/// The cell's resistance follows its temperature in steps of this, K.
const CELL_STEP_K: f64 = 0.02;

/// A step that was thought through but not taken.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Plan {
    pub(crate) step_s: f64,
    pub(crate) speed_m_s: f64,
    /// Braking beyond the motors', N; positive.
    pub(crate) brake_n: f64,
    /// What held it back, if anything.
    pub(crate) limit: Option<Limit>,
    flow: Flow,
    decay: Decay,
    lead_ohm: f64,
    /// Windings and cases amid the step, °C.
    pub(crate) amid: (f64, f64),
    pub(crate) slope: Slope,
}

/// A board on its way.
#[derive(Clone, Debug)]
pub(crate) struct Journey {
    /// Its winding resistance follows the windings' temperature.
    pub(crate) drive: Drive,
    cell: CellInTime,
    pub(crate) state: CellState,
    pub(crate) now: Moment,
    pub(crate) ledger: Ledger,
    pub(crate) felt_kg: f64,
    decay: Decay,
    motor: MotorHeat,
    pack: Node,
    controller: Node,
    copper: f64,
    cell_c: f64,
}

impl Journey {
    /// At rest, everything as warm as the air, with a charge.
    pub(crate) fn new(drive: &Drive, charge: f64) -> Self {
        let b = &drive.build;
        let air = b.place.air_c;
        let c = &b.controller;
        let cell = drive.cell_in_time(0.0);
        let wheel = b.wheel.mass_kg;
        let rotor = RotorInertia { mass: b.motor.mass_kg }.value();
        let mut journey = Self {
            drive: *drive,
            cell,
            state: CellState::rested(charge),
            now: Moment {
                time_s: 0.0,
                distance_m: 0.0,
                speed_m_s: 0.0,
                charge,
                cell_c: air,
                winding_c: air,
                case_c: air,
                controller_c: air,
                pack_a: 0.0,
                bus_v: b.pack.series * cell.open.ocv_v(charge),
                motor_a: 0.0,
            },
            ledger: Ledger::default(),
            felt_kg: EffectiveMass {
                mass: drive.mass_kg,
                wheels: WHEELS,
                wheel,
                motors: drive.motors,
                rotor,
                ratio: drive.ratio,
                radius: drive.radius_m,
            }
            .value(),
            decay: Decay::new(&cell.shape, 1.0),
            motor: MotorHeat::of_mass(b.motor.mass_kg, b.motor.winding_k_per_w),
            pack: Node {
                capacity_j_k: PACK_J_KG_K * b.pack_mass_kg(),
                to_air_w_k: PACK_W_KG_K * b.pack_mass_kg(),
            },
            controller: Node {
                capacity_j_k: CONTROLLER_J_KG_K * c.mass_kg,
                to_air_w_k: 1.0 / c.heat_sink_k_per_w,
            },
            copper: c.convention.copper_factor(),
            cell_c: air,
        };
        journey.drive.set_winding(air);
        journey
    }

    /// Starts with windings and cases at a temperature.
    pub(crate) fn set_warm(&mut self, winding_c: f64) {
        (self.now.winding_c, self.now.case_c) = (winding_c, winding_c);
        self.drive.set_winding(winding_c);
    }

    /// How far the cell's filters get in a step.
    pub(crate) fn decay(&self, step_s: f64) -> Decay {
        if step_s == self.decay.step_s { self.decay } else { Decay::new(&self.cell.shape, step_s) }
    }

    /// A step whose motion and motor current are known.
    pub(crate) fn coast(
        &self,
        decay: &Decay,
        supply: &Supply,
        moved: Moved,
        motor_a: f64,
        slope: Slope,
    ) -> Option<Plan> {
        let mean = 0.5 * (self.now.speed_m_s + moved.speed_m_s);
        let omega = self.drive.motor_rad_s(mean);
        let iron = self.drive.iron_n_m(omega, &mut Working::off());
        let (amid, drive) = self.amid(decay.step_s, motor_a, mean, iron * omega);
        Some(Plan {
            step_s: decay.step_s,
            speed_m_s: moved.speed_m_s,
            brake_n: 0.0,
            limit: None,
            flow: drive.flow(supply, mean, motor_a)?,
            decay: *decay,
            lead_ohm: supply.lead_ohm,
            amid,
            slope,
        })
    }

    /// The pack over a step of some length.
    pub(crate) fn supply(&self, decay: &Decay) -> Supply {
        let pack = &self.drive.build.pack;
        let expected = self.now.pack_a / pack.parallel;
        let cell = self.cell.source(&self.state, decay, expected);
        let lead_ohm = self.drive.lead_ohm;
        Supply {
            open_v: pack.series * cell.open_v,
            resistance_ohm: pack.series / pack.parallel * cell.resistance_ohm + lead_ohm,
            lead_ohm,
        }
    }

    /// Thinks a step through that would end at a speed; `None` where the pack
    /// does not even feed the idling controller.
    ///
    /// A board that pushes to its electrical limit is held there, not beyond it at every other step.
    pub(crate) fn plan(&self, step_s: f64, wish_m_s: f64, slope: Slope) -> Option<Plan> {
        let d = &self.drive;
        let fastest = CountedSpeed {
            erpm: d.build.controller.erpm_limit,
            pairs: d.build.motor.pole_pairs,
            radius: d.radius_m,
            ratio: d.ratio,
        }
        .value();
        let free = || self.free(step_s, wish_m_s, slope);
        if wish_m_s <= fastest || self.now.speed_m_s > fastest {
            return free();
        }
        let mut plan = self.free(step_s, fastest, slope)?;
        if plan.flow.motor_a <= 0.0 {
            return free();
        }
        plan.limit = plan.limit.or(Some(Limit::ElectricalSpeed));
        Some(plan)
    }

    /// A step that knows of no such limit until it is beyond it.
    ///
    /// Speed changes evenly. Where the push does not reach, the change is what
    /// the push allows (implicit midpoint).
    fn free(&self, step_s: f64, wish_m_s: f64, slope: Slope) -> Option<Plan> {
        let from = self.now.speed_m_s;
        let decay = self.decay(step_s);
        let supply = self.supply(&decay);
        let mean = 0.5 * (from + wish_m_s);
        let mut asked_n = self.felt_kg * (wish_m_s - from) / step_s;
        if mean > 0.0 {
            asked_n += self.drive.load_n(mean, slope);
        }
        let mut plan = Plan {
            step_s,
            speed_m_s: wish_m_s,
            brake_n: 0.0,
            limit: None,
            flow: Flow::default(),
            decay,
            lead_ohm: supply.lead_ohm,
            amid: (0.0, 0.0),
            slope,
        };
        let omega = self.drive.motor_rad_s(mean);
        let iron = self.drive.iron_n_m(omega, &mut Working::off());
        let asked_a =
            if mean > 0.0 || asked_n > 0.0 { self.drive.asked_a(asked_n, iron) } else { 0.0 };
        if asked_a <= 0.0 {
            let brake = self.drive.brake(&supply, mean, slope);
            let current = asked_a.max(-brake.current_a);
            let (amid, drive) = self.amid(step_s, current, mean, iron * omega);
            plan.flow = drive.flow(&supply, mean, current)?;
            plan.amid = amid;
            if current > asked_a {
                plan.brake_n = (plan.flow.force_n - asked_n).max(0.0);
                plan.limit = Some(brake.limit);
            }
            return Some(plan);
        }
        let (amid, drive) = self.amid(step_s, asked_a, mean, iron * omega);
        let (mode, hot) = self.mode(amid.0, |share| {
            let mode = Mode { current_share: share, ..FULL };
            let most = self.drive.push(&supply, &mode, from, slope).motor_current_a;
            self.amid(step_s, asked_a.min(most), mean, iron * omega).0.0
        });
        if let Some(flow) = drive.flow(&supply, mean, asked_a)
            && self.within(&drive, &supply, &mode, slope, omega, iron, &flow)
        {
            plan.flow = flow;
            plan.amid = amid;
            return Some(plan);
        }
        // As much as there is, with windings as warm as the last current makes them amid the step.
        let (_, warm) = self.amid(step_s, self.now.motor_a, mean, iron * omega);
        let push = |v: f64| warm.push(&supply, &mode, v, slope);
        let net = |v: f64| push(v).force_n - self.drive.load_n(v, slope);
        let reached = moved(self.felt_kg, from, step_s, net);
        if reached.speed_m_s >= wish_m_s && wish_m_s > from {
            // It does reach, by a hair: windings amid the step are warmer than at its start.
            plan.flow = drive.flow(&supply, mean, asked_a)?;
            plan.amid = amid;
            return Some(plan);
        }
        let mean = 0.5 * (from + reached.speed_m_s);
        // A hair beyond, as a limit of speed binds only there.
        let most = push(mean + 1e-6);
        plan.limit = Some(match most.limit {
            Limit::ControllerMotorCurrent | Limit::ControllerBatteryCurrent
                if mode.current_share < 1.0 =>
            {
                hot
            }
            limit => limit,
        });
        plan.step_s = reached.time_s;
        plan.speed_m_s = reached.speed_m_s;
        if plan.step_s <= 0.0 {
            // It stands: the push does not move it.
            (plan.step_s, plan.speed_m_s) = (step_s, 0.0);
        }
        if plan.step_s != step_s {
            plan.decay = Decay::new(&self.cell.shape, plan.step_s);
        }
        let omega = self.drive.motor_rad_s(mean);
        let iron = self.drive.iron_n_m(omega, &mut Working::off());
        // What the motion took: at a jump of the push it lies between its ends.
        let taken_n =
            self.felt_kg * (plan.speed_m_s - from) / plan.step_s + self.drive.load_n(mean, slope);
        let current =
            if mean > 0.0 { self.drive.asked_a(taken_n, iron) } else { most.motor_current_a };
        let (amid, drive) = self.amid(plan.step_s, current, mean, iron * omega);
        plan.amid = amid;
        // A hair warmer than thought may be beyond the most that the pack gives.
        plan.flow =
            drive.flow(&supply, mean, current).or_else(|| warm.flow(&supply, mean, current))?;
        Some(plan)
    }

    /// Temperatures of the motors amid a step, and the drive with them.
    fn amid(&self, step_s: f64, motor_a: f64, speed: f64, iron_w: f64) -> ((f64, f64), Drive) {
        let m = &self.drive.build.motor;
        let cold = self.copper * m.resistance_ll_ohm * motor_a * motor_a;
        let outward = 1.0 / Cooling { still: m.case_k_per_w, speed }.value();
        let from = (self.now.winding_c, self.now.case_c);
        let air = self.drive.build.place.air_c;
        let amid = self.motor.amid(from, step_s, cold, iron_w, outward, air);
        let mut drive = self.drive;
        drive.set_winding(amid.0);
        (amid, drive)
    }

    /// Whether a flow is within every limit of the push.
    #[allow(clippy::too_many_arguments, reason = "all of them were worked out before")]
    fn within(
        &self,
        drive: &Drive,
        supply: &Supply,
        mode: &Mode,
        slope: Slope,
        omega: f64,
        iron: f64,
        flow: &Flow,
    ) -> bool {
        let (b, c) = (&drive.build, &drive.build.controller);
        let mut off = Working::off();
        let pull = drive.belt_rated_n;
        let belt = BeltTorque { pull, teeth: b.motor_pulley.teeth, pitch: b.belt.pitch_m }.value();
        let torque = drive.grip_n_m(slope, &mut off).min(belt);
        let most = HeldCurrent { torque, iron, constant: drive.torque_per_amp }
            .value()
            .min(mode.current_share * c.motor_current_a)
            .min(b.motor.max_current_a);
        let turning = gear::ElectricalRpm { omega, pairs: b.motor.pole_pairs }.value();
        let volts = drive.motor_volts(omega, flow.motor_a, &mut off);
        let least = Least::new(None, &mut off);
        flow.motor_a <= most
            && turning <= c.erpm_limit
            && volts <= c.max_duty * flow.bus_v
            && flow.pack_a <= drive.pack_current(supply, mode.current_share, least).0
    }

    /// Takes a step.
    pub(crate) fn take(&mut self, plan: &Plan) {
        let (h, flow) = (plan.step_s, &plan.flow);
        let b = &self.drive.build;
        let (series, parallel) = (b.pack.series, b.pack.parallel);
        let from = self.now.speed_m_s;
        let mean = 0.5 * (from + plan.speed_m_s);
        // The pack.
        let charge = self.state.charge;
        self.state = self.cell.after(&self.state, &plan.decay, flow.pack_a / parallel);
        let open_v = series * self.cell.open.ocv_v(0.5 * (charge + self.state.charge));
        let chemical = open_v * flow.pack_a;
        let wires = flow.pack_a * flow.pack_a * plan.lead_ohm;
        let pack = chemical - flow.bus_v * flow.pack_a - wires;
        // The road.
        let rolling = RollingForce {
            mass: self.drive.mass_kg,
            rolling: self.drive.rolling,
            cos: plan.slope.cos,
        }
        .value()
            * mean;
        let climb = SlopeForce { mass: self.drive.mass_kg, sin: plan.slope.sin }.value() * mean;
        let air = self.drive.air_n(mean, &mut Working::off()) * mean;
        let kinetic = 0.5 * self.felt_kg * (plan.speed_m_s * plan.speed_m_s - from * from) / h;
        let hours = h / 3600.0;
        let l = &mut self.ledger;
        l.stored_wh += chemical * hours;
        l.pack_wh += pack * hours;
        l.wires_wh += wires * hours;
        l.controller_wh += flow.controller_w * hours;
        l.winding_wh += flow.winding_w * hours;
        l.iron_wh += flow.iron_w * hours;
        l.belt_wh += flow.belt_w * hours;
        l.rolling_wh += rolling * hours;
        l.air_wh += air * hours;
        l.climb_wh += climb * hours;
        l.brake_wh += plan.brake_n * mean * hours;
        l.kinetic_wh += kinetic * hours;
        l.passed_wh += abs(chemical) * hours;
        l.returned_wh += (-chemical).max(0.0) * hours;
        // The heat.
        let air_c = b.place.air_c;
        let now = &mut self.now;
        let start = (now.winding_c, now.case_c);
        (now.winding_c, now.case_c) = self.motor.after(start, plan.amid, h);
        now.cell_c = self.pack.after(now.cell_c, h, pack, air_c);
        now.controller_c = self.controller.after(now.controller_c, h, flow.controller_w, air_c);
        now.time_s += h;
        now.distance_m += mean * h;
        now.speed_m_s = plan.speed_m_s;
        now.charge = self.state.charge;
        now.pack_a = flow.pack_a;
        now.bus_v = flow.bus_v;
        now.motor_a = flow.motor_a;
        self.decay = plan.decay;
        self.drive.set_winding(self.now.winding_c);
        if abs(self.now.cell_c - self.cell_c) > CELL_STEP_K {
            self.cell_c = self.now.cell_c;
            let (cell, aged) = (&self.drive.build.cell, self.drive.aged_resistance);
            let rated = cell.resistance_10s_ohm * aged;
            self.cell.resistance_ohm = rated * cell.chemistry.resistance_factor(self.cell_c);
            self.cell.lag_ohm = rated * cell.chemistry.lag_factor(self.cell_c);
        }
    }
}
