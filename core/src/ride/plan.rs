//! One step of a board on its way, thought through before it is taken.

use super::flow::Flow;
use super::journey::Journey;
use crate::answers::{Copper, Drive, FULL, Least, Limit, Supply};
use crate::parts::Mode;
use crate::physics::cell::{CellState, Decay};
use crate::physics::gear::{BeltTorque, CountedSpeed, ElectricalRpm};
use crate::physics::heat::Cooling;
use crate::physics::motion::moved;
use crate::physics::motor::HeldCurrent;
use crate::physics::road_load::Slope;
use crate::working::Working;

/// So many times the fall of a long step's volts leads far beyond its end.
const FAR_TIMES: f64 = 3.0;

/// A step that was thought through but not taken.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Plan {
    pub(crate) step_s: f64,
    pub(crate) speed_m_s: f64,
    /// Braking beyond the motors', N; positive.
    pub(crate) brake_n: f64,
    /// What held it back, if anything.
    pub(crate) limit: Option<Limit>,
    pub(super) flow: Flow,
    pub(super) decay: Decay,
    pub(super) lead_ohm: f64,
    /// Windings and cases amid the step, °C.
    pub(crate) amid: (f64, f64),
    pub(crate) slope: Slope,
}

/// What a step asks of the motors, and the pack over it.
struct Ask {
    wish_m_s: f64,
    slope: Slope,
    decay: Decay,
    supply: Supply,
    mean_m_s: f64,
    /// Force at the road, N.
    force_n: f64,
    omega: f64,
    iron_n_m: f64,
    /// Current of each motor, A; negative where it brakes.
    current_a: f64,
}

/// What heat leaves of the push, should the step take the current that is asked for.
struct Heat {
    /// Windings and cases amid the step, °C.
    amid: (f64, f64),
    /// The windings so warm.
    copper: Copper,
    mode: Mode,
    /// What holds it back if the mode does.
    hot: Limit,
}

impl Ask {
    /// Heat in iron and bearings of one motor, W.
    fn iron_w(&self) -> f64 {
        self.iron_n_m * self.omega
    }

    /// The step as it was asked for.
    fn plan(&self, flow: Flow, amid: (f64, f64)) -> Plan {
        Plan {
            step_s: self.decay.step_s,
            speed_m_s: self.wish_m_s,
            brake_n: 0.0,
            limit: None,
            flow,
            decay: self.decay,
            lead_ohm: self.supply.lead_ohm,
            amid,
            slope: self.slope,
        }
    }

    /// Whether a flow is within every limit of the push.
    fn within(&self, drive: &Drive, heat: &Heat, flow: &Flow) -> bool {
        let mode = &heat.mode;
        let (b, c) = (&drive.build, &drive.build.controller);
        let mut off = Working::off();
        let pull = drive.belt_rated_n;
        let belt = BeltTorque { pull, teeth: b.motor_pulley.teeth, pitch: b.belt.pitch_m }.value();
        let torque = drive.grip_n_m(self.slope, &mut off).min(belt);
        let most = HeldCurrent { torque, iron: self.iron_n_m, constant: drive.torque_per_amp }
            .value()
            .min(mode.current_share * c.motor_current_a)
            .min(b.motor.max_current_a);
        let turning = ElectricalRpm { omega: self.omega, pairs: b.motor.pole_pairs }.value();
        let volts = drive.motor_volts(heat.copper, self.omega, flow.motor_a, &mut off);
        let least = Least::new(None, &mut off);
        flow.motor_a <= most
            && turning <= c.erpm_limit
            && volts <= c.max_duty * flow.bus_v
            && flow.pack_a <= drive.pack_current(&self.supply, mode.current_share, least).0
    }
}

impl Journey {
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

    /// A long step at the speed that the board has; `None` if a limit would be met on the way or
    /// right after it.
    pub(crate) fn steady(&self, step_s: f64, slope: Slope) -> Option<Plan> {
        let ask = self.ask(step_s, self.now.speed_m_s, slope);
        let b = &self.drive.build;
        let erpm = ElectricalRpm { omega: ask.omega, pairs: b.motor.pole_pairs }.value();
        if erpm > b.controller.erpm_limit {
            return None;
        }
        if ask.current_a <= 0.0 {
            return self.braked(&ask).filter(|plan| plan.limit.is_none());
        }
        let heat = self.heat(&ask);
        let plan = self.held(&ask, &heat)?;
        let holds = self.far(&heat, &ask, &plan.flow)
            || self.spare_after_n(&plan, plan.speed_m_s, slope) >= 0.0;
        holds.then_some(plan)
    }

    /// Whether the pack's volts stay far from every limit right after a long step, too.
    fn far(&self, heat: &Heat, ask: &Ask, flow: &Flow) -> bool {
        let (pack, c) = (&self.drive.build.pack, &self.drive.build.controller);
        let held_v = pack.series * c.cutback_start_v.max(c.cutback_end_v).max(pack.cut_off_v);
        let fall_v = (self.now.bus_v - flow.bus_v).max(0.0);
        let volts =
            self.drive.motor_volts(heat.copper, ask.omega, flow.motor_a, &mut Working::off());
        flow.bus_v - FAR_TIMES * fall_v > held_v
            && volts <= c.max_duty * (flow.bus_v - FAR_TIMES * fall_v)
            && self.now.pack_a > 0.9 * flow.pack_a
    }

    /// A step that knows of no such limit until it is beyond it.
    fn free(&self, step_s: f64, wish_m_s: f64, slope: Slope) -> Option<Plan> {
        let ask = self.ask(step_s, wish_m_s, slope);
        if ask.current_a <= 0.0 {
            return self.braked(&ask);
        }
        let heat = self.heat(&ask);
        self.held(&ask, &heat).or_else(|| self.limited(&ask, &heat))
    }

    /// What a step to a speed asks of the motors, and the pack over it. Speed changes evenly.
    fn ask(&self, step_s: f64, wish_m_s: f64, slope: Slope) -> Ask {
        let from = self.now.speed_m_s;
        let decay = self.decay(step_s);
        let supply = self.supply(&decay);
        let mean_m_s = 0.5 * (from + wish_m_s);
        let mut force_n = self.effective_kg * (wish_m_s - from) / step_s;
        if mean_m_s > 0.0 {
            force_n += self.drive.load_n(mean_m_s, slope);
        }
        let omega = self.drive.motor_rad_s(mean_m_s);
        let iron_n_m = self.drive.iron_n_m(omega, &mut Working::off());
        let pushes = mean_m_s > 0.0 || force_n > 0.0;
        let current_a = if pushes { self.drive.asked_a(force_n, iron_n_m) } else { 0.0 };
        Ask { wish_m_s, slope, decay, supply, mean_m_s, force_n, omega, iron_n_m, current_a }
    }

    /// A step in which the motors brake, or turn along; what they do not brake is left to the rider.
    fn braked(&self, ask: &Ask) -> Option<Plan> {
        let brake = self.drive.brake(&ask.supply, ask.mean_m_s, ask.slope);
        let current = ask.current_a.max(-brake.current_a);
        let amid = self.amid(ask.decay.step_s, current, ask.mean_m_s, ask.iron_w());
        let copper = self.drive.copper_at(amid.0);
        let mut plan = ask.plan(self.drive.flow(copper, &ask.supply, ask.mean_m_s, current)?, amid);
        if current > ask.current_a {
            plan.brake_n = (plan.flow.force_n - ask.force_n).max(0.0);
            plan.limit = Some(brake.limit);
        }
        Some(plan)
    }

    /// What the heat of the current that is asked for leaves of the push.
    fn heat(&self, ask: &Ask) -> Heat {
        let (step_s, iron_w) = (ask.decay.step_s, ask.iron_w());
        let amid = self.amid(step_s, ask.current_a, ask.mean_m_s, iron_w);
        let (mode, hot) = self.mode(amid.0, |share| {
            let mode = Mode { current_share: share, ..FULL };
            let most = self.drive.push(&ask.supply, &mode, self.now.speed_m_s, ask.slope);
            let current_a = ask.current_a.min(most.motor_current_a);
            self.amid(step_s, current_a, ask.mean_m_s, iron_w).0
        });
        Heat { amid, copper: self.drive.copper_at(amid.0), mode, hot }
    }

    /// The step that was asked for, if it is within every limit.
    fn held(&self, ask: &Ask, heat: &Heat) -> Option<Plan> {
        let flow = self.drive.flow(heat.copper, &ask.supply, ask.mean_m_s, ask.current_a)?;
        ask.within(&self.drive, heat, &flow).then(|| ask.plan(flow, heat.amid))
    }

    /// A step in which the push does not reach: the speed changes by what it allows (implicit
    /// midpoint), with windings as warm as the last current makes them amid the step.
    fn limited(&self, ask: &Ask, heat: &Heat) -> Option<Plan> {
        let (from, step_s, slope) = (self.now.speed_m_s, ask.decay.step_s, ask.slope);
        let (supply, mode) = (&ask.supply, &heat.mode);
        let last = self.amid(step_s, self.now.motor_a, ask.mean_m_s, ask.iron_w());
        let warm = self.drive.copper_at(last.0);
        let push = |v: f64| self.drive.push_at(warm, supply, mode, v, slope, &mut Working::off());
        let net = |v: f64| push(v).force_n - self.drive.load_n(v, slope);
        let reached = moved(self.effective_kg, from, step_s, net);
        if reached.speed_m_s >= ask.wish_m_s && ask.wish_m_s > from {
            // It does reach, by a hair: windings amid the step are warmer than at its start.
            let flow = self.drive.flow(heat.copper, supply, ask.mean_m_s, ask.current_a)?;
            return Some(ask.plan(flow, heat.amid));
        }
        let mean = 0.5 * (from + reached.speed_m_s);
        // A hair beyond, as a limit of speed binds only there.
        let most = push(mean + 1e-6);
        let mut plan = ask.plan(Flow::default(), heat.amid);
        plan.limit = Some(match most.limit {
            Limit::ControllerMotorCurrent | Limit::ControllerBatteryCurrent
                if mode.current_share < 1.0 =>
            {
                heat.hot
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
        let taken_n = self.effective_kg * (plan.speed_m_s - from) / plan.step_s
            + self.drive.load_n(mean, slope);
        let current =
            if mean > 0.0 { self.drive.asked_a(taken_n, iron) } else { most.motor_current_a };
        plan.amid = self.amid(plan.step_s, current, mean, iron * omega);
        // A hair warmer than thought may be beyond the most that the pack gives.
        let flow = |copper| self.drive.flow(copper, supply, mean, current);
        plan.flow = flow(self.drive.copper_at(plan.amid.0)).or_else(|| flow(warm))?;
        Some(plan)
    }

    /// The push that the pack has left over at a speed on the flat for the next seconds, N.
    pub(super) fn spare_n(&self, speed_m_s: f64) -> f64 {
        self.spare_from(&self.state, self.now.pack_a, speed_m_s, Slope::FLAT)
    }

    /// The same after a step, on a slope.
    pub(super) fn spare_after_n(&self, plan: &Plan, speed_m_s: f64, slope: Slope) -> f64 {
        let pack_a = plan.flow.pack_a;
        let cell_a = pack_a / self.drive.build.pack.parallel;
        let after = self.cell.after(&self.state, &plan.decay, cell_a);
        self.spare_from(&after, pack_a, speed_m_s, slope)
    }

    fn spare_from(&self, state: &CellState, pack_a: f64, speed_m_s: f64, slope: Slope) -> f64 {
        let supply = self.supply_of(&self.cell, state, &self.hold, pack_a);
        let push = self.drive.push(&supply, &FULL, speed_m_s, slope);
        push.force_n - self.drive.load_n(speed_m_s, slope)
    }

    /// Temperatures of windings and cases amid a step, °C.
    pub(super) fn amid(&self, step_s: f64, motor_a: f64, speed: f64, iron_w: f64) -> (f64, f64) {
        let m = &self.drive.build.motor;
        let cold = self.copper * m.resistance_ll_ohm * motor_a * motor_a;
        let outward = 1.0 / Cooling { still: m.case_k_per_w, speed }.value();
        let from = (self.now.winding_c, self.now.case_c);
        let air = self.drive.build.place.air_c;
        self.motor.amid(from, step_s, cold, iron_w, outward, air)
    }
}
