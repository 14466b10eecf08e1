//! The watts of one step, from the road to the chemistry or back.

use crate::answers::{Copper, Drive, Limit, Supply};
use crate::math::{abs, sqrt};
use crate::physics::gear::{BeltTorque, MotorSpeed, PushForce};
use crate::physics::motion::BrakeGrip;
use crate::physics::motor::{CopperLoss, GreatestTorque};
use crate::physics::road_load::Slope;
use crate::working::Working;

/// What the motors do in a step, and what comes of it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Flow {
    /// Current of each motor, A, in the controller's convention; negative when braking.
    pub(crate) motor_a: f64,
    /// Current out of the pack, A.
    pub(crate) pack_a: f64,
    /// Voltage at the controller, V.
    pub(crate) bus_v: f64,
    /// Force of the motors at the road, N.
    pub(crate) force_n: f64,
    /// Heat in belts, iron, windings and controller, all motors together, W.
    pub(crate) belt_w: f64,
    pub(crate) iron_w: f64,
    pub(crate) winding_w: f64,
    pub(crate) controller_w: f64,
}

/// Below the first speed, m/s, motors do not brake; from the second they brake
/// in full. Common practice, no source.
const FADE_M_S: [f64; 2] = [1.5 / 3.6, 5.0 / 3.6];
/// Volts over full at which a pack's protection ends charging, as a share.
/// Common practice, no source.
pub(crate) const OVER_VOLTAGE: f64 = 1.012;

/// The most that the motors brake with.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Brake {
    /// Current of each motor, A; positive.
    pub(crate) current_a: f64,
    /// What sets it.
    pub(crate) limit: Limit,
    /// Whether it is what the pack takes back, crawling or not.
    pub(crate) by_pack: bool,
}

impl Drive {
    pub(crate) fn motor_rad_s(&self, speed_m_s: f64) -> f64 {
        MotorSpeed { ratio: self.ratio, speed: speed_m_s, radius: self.radius_m }.value()
    }

    /// Motor current that a push at the road asks for; negative where it brakes.
    pub(crate) fn asked_a(&self, force_n: f64, iron_n_m: f64) -> f64 {
        let eff = self.build.belt.efficiency;
        let through = if force_n >= 0.0 { force_n / eff } else { force_n * eff };
        let torque = through * self.radius_m / (self.ratio * self.motors);
        (torque + iron_n_m) / self.torque_per_amp
    }

    /// Everything that follows from a motor current at a speed; `None` beyond
    /// what the pack can give.
    pub(crate) fn flow(
        &self,
        copper: Copper,
        supply: &Supply,
        speed_m_s: f64,
        motor_a: f64,
    ) -> Option<Flow> {
        let c = &self.build.controller;
        let omega = self.motor_rad_s(speed_m_s);
        let iron = self.iron_n_m(omega, &mut Working::off());
        let torque =
            GreatestTorque { constant: self.torque_per_amp, current: motor_a, iron }.value();
        let eff = self.build.belt.efficiency;
        let force_n = PushForce {
            torque,
            ratio: self.ratio,
            efficiency: eff,
            motors: self.motors,
            radius: self.radius_m,
        }
        .value();
        let winding = CopperLoss {
            factor: c.convention.copper_factor(),
            current: motor_a,
            resistance: copper.winding_ohm,
        }
        .value();
        let heat = copper.heat_ohm * motor_a * motor_a;
        let turning = self.torque_per_amp * omega * motor_a;
        // The switching loss grows with the bus voltage itself.
        let switching_a = self.motors * c.switching_share * abs(motor_a);
        let fixed_w = self.motors * (turning + heat + c.idle_w);
        let r = supply.resistance_ohm;
        let open = supply.open_v - r * switching_a;
        let square = open * open - 4.0 * r * fixed_w;
        // At the very most, rounding may ask for a hair beyond it.
        if open <= 0.0 || square < -1e-6 * open * open {
            return None;
        }
        let bus_v = 0.5 * (open + sqrt(square.max(0.0)));
        let shaft_w = self.motors * torque * omega;
        Some(Flow {
            motor_a,
            pack_a: fixed_w / bus_v + switching_a,
            bus_v,
            force_n,
            belt_w: shaft_w - force_n * speed_m_s,
            iron_w: self.motors * iron * omega,
            winding_w: self.motors * winding,
            controller_w: self.motors * (heat - winding + c.idle_w) + switching_a * bus_v,
        })
    }

    /// The most that the motors brake with at a speed.
    pub(crate) fn brake(&self, supply: &Supply, speed_m_s: f64, slope: Slope) -> Brake {
        let (b, c) = (&self.build, &self.build.controller);
        let omega = self.motor_rad_s(speed_m_s);
        let iron = self.iron_n_m(omega, &mut Working::off());
        let (current_a, limit) = (c.brake_current_a, Limit::BrakeCurrent);
        let mut least = Brake { current_a, limit, by_pack: false };
        let mut take = |limit: Limit, current: f64| {
            if current < least.current_a {
                let by_pack = matches!(limit, Limit::OverVoltage | Limit::RegenCurrent);
                least = Brake { current_a: current, limit, by_pack };
            }
        };
        take(Limit::MotorCurrent, b.motor.max_current_a);
        // Torque on the belt is what the motor and its drag hold together.
        let belt = BeltTorque {
            pull: self.belt_rated_n,
            teeth: b.motor_pulley.teeth,
            pitch: b.belt.pitch_m,
        }
        .value();
        let (height, base) = (b.rider.centre_height_m, b.deck.wheelbase_m);
        let grip = BrakeGrip {
            grip: b.place.grip,
            motors: self.motors,
            mass: self.mass_kg,
            cos: slope.cos,
            height,
            base,
        }
        .value();
        let grip = grip * self.radius_m * b.belt.efficiency / (self.ratio * self.motors);
        take(Limit::Belt, ((belt - iron) / self.torque_per_amp).max(0.0));
        take(Limit::Grip, ((grip - iron) / self.torque_per_amp).max(0.0));
        // What the pack takes back.
        let full_v = (b.full_pack_v() * OVER_VOLTAGE).min(c.max_bus_v);
        let r = supply.resistance_ohm.max(1e-9);
        let by_volts = (full_v - supply.open_v) / r;
        let by_set = self.motors * c.regen_current_a;
        let (pack_a, limit) = if by_volts < by_set {
            (by_volts.max(0.0), Limit::OverVoltage)
        } else {
            (by_set, Limit::RegenCurrent)
        };
        take(limit, self.returned_a(supply, pack_a, omega));
        let fade = (speed_m_s - FADE_M_S[0]) / (FADE_M_S[1] - FADE_M_S[0]);
        if fade < 1.0 {
            let current_a = least.current_a * fade.max(0.0);
            least = Brake { current_a, limit: Limit::Crawl, ..least };
        }
        least
    }

    /// Force of the motors at the road, N, when each brakes with a current, its own drag
    /// with it; negative.
    pub(crate) fn braked_n(&self, current_a: f64, speed_m_s: f64) -> f64 {
        let omega = self.motor_rad_s(speed_m_s);
        let iron = self.iron_n_m(omega, &mut Working::off());
        let (constant, current) = (self.torque_per_amp, -current_a);
        PushForce {
            torque: GreatestTorque { constant, current, iron }.value(),
            ratio: self.ratio,
            efficiency: self.build.belt.efficiency,
            motors: self.motors,
            radius: self.radius_m,
        }
        .value()
    }

    /// Braking current of each motor at which together they give a pack current back.
    fn returned_a(&self, supply: &Supply, pack_a: f64, omega: f64) -> f64 {
        let c = &self.build.controller;
        let volts = supply.open_v + pack_a * supply.resistance_ohm;
        let turning = self.torque_per_amp * omega - c.switching_share * volts;
        let power = pack_a * volts / self.motors + c.idle_w;
        let square = turning * turning - 4.0 * self.copper.heat_ohm * power;
        // Slow enough, and copper takes so much that the pack never gets that.
        if turning <= 0.0 || square < 0.0 {
            return f64::INFINITY;
        }
        2.0 * power / (turning + sqrt(square))
    }
}
