//! One steady operating point, with where every watt goes.

use super::drive::{Copper, Drive, Supply};
use crate::math::sqrt;
use crate::physics::road_load::{Slope, WheelPower};
use crate::physics::{battery, gear, motor};
use crate::working::Working;
use serde::Serialize;

/// A steady operating point.
///
/// `chemical_w` is what leaves the cells' chemistry; it equals the sum of
/// every other power here.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
pub struct Point {
    /// Current of each motor, A, in the controller's convention.
    pub motor_current_a: f64,
    /// Current out of the pack, A.
    pub pack_current_a: f64,
    /// Voltage at the controller, V.
    pub bus_v: f64,
    /// Line-to-line voltage that each motor asks for, V.
    pub motor_v: f64,
    /// Torque on each motor's shaft, N·m.
    pub shaft_n_m: f64,
    /// Open-circuit voltage times current, W.
    pub chemical_w: f64,
    /// Heat in the cells, W.
    pub cells_w: f64,
    /// Heat in joints and wires, W.
    pub leads_w: f64,
    /// Heat in the controller, W.
    pub controller_w: f64,
    /// Heat in the windings, W.
    pub copper_w: f64,
    /// Heat in iron and bearings, W.
    pub iron_w: f64,
    /// Heat in the belts, W.
    pub belt_w: f64,
    /// Rolling resistance, W.
    pub rolling_w: f64,
    /// Air resistance, W; negative when the wind pushes.
    pub air_w: f64,
    /// Climbing, W; negative downhill.
    pub slope_w: f64,
    /// What the rider's brakes must take, W.
    pub brake_w: f64,
}

impl Point {
    /// Every watt that leaves the chemistry, by where it goes: its losses, then
    /// what the road, the air, the slope and the brakes take.
    #[must_use]
    pub fn sinks_w(&self) -> [f64; 10] {
        [
            self.cells_w,
            self.leads_w,
            self.controller_w,
            self.copper_w,
            self.iron_w,
            self.belt_w,
            self.rolling_w,
            self.air_w,
            self.slope_w,
            self.brake_w,
        ]
    }
}

/// Shaft torque, and what stays at the motor's side of the belt.
struct Shaft {
    torque: f64,
    brake_w: f64,
    belt_w: f64,
}

impl Drive {
    /// The operating point that holds a speed, m/s, of 0 or more, on any slope; `None` where the
    /// pack cannot give the power at all.
    ///
    /// ```
    /// use pitchline_core::physics::road_load::Slope;
    /// use pitchline_core::{Build, Draft, Drive, Sag};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// let slope = Slope::of_grade(0.05);
    /// let held = drive.hold(&drive.supply(0.5, Sag::Sustained), 5.0, slope).unwrap();
    /// // What leaves the chemistry is what goes somewhere, and the hill takes m g sin α v of it.
    /// let sinks: f64 = held.sinks_w().iter().sum();
    /// assert!((sinks / held.chemical_w - 1.0).abs() < 1e-9);
    /// let hill_w = drive.build.mass_kg() * 9.806_65 * slope.sin * 5.0;
    /// assert!((held.slope_w / hill_w - 1.0).abs() < 1e-9);
    /// // No pack gives the power for 60 m/s.
    /// assert!(drive.hold(&drive.supply(0.5, Sag::Sustained), 60.0, slope).is_none());
    /// ```
    #[must_use]
    pub fn hold(&self, supply: &Supply, speed_m_s: f64, slope: Slope) -> Option<Point> {
        self.hold_explained(supply, speed_m_s, slope, &mut Working::off())
    }

    pub(crate) fn hold_explained(
        &self,
        supply: &Supply,
        speed_m_s: f64,
        slope: Slope,
        w: &mut Working,
    ) -> Option<Point> {
        let load = self.load_explained(speed_m_s, slope, w);
        w.apply(WheelPower { force: load, speed: speed_m_s });
        let omega = w.apply(gear::MotorSpeed {
            ratio: self.ratio,
            speed: speed_m_s,
            radius: self.radius_m,
        });
        w.apply(gear::ElectricalRpm { omega, pairs: self.build.motor.pole_pairs });
        let iron = self.iron_n_m(omega, w);
        let shaft = self.shaft(load, speed_m_s, omega, iron, w);
        let current = w.apply(motor::MotorCurrent {
            torque: shaft.torque,
            iron,
            constant: self.torque_per_amp,
        });
        let motor_v = self.motor_volts(self.copper, omega, current, w);
        let c = &self.build.controller;
        let copper = motor::CopperLoss {
            factor: c.convention.copper_factor(),
            current,
            resistance: self.copper.winding_ohm,
        }
        .value();
        let solved_v = self.bus_v(self.copper, supply, current, omega)?;
        // These steps repeat what was solved, now in the words of the laws.
        let bus_w = self.input_w(self.copper, current, omega, solved_v, w);
        let pack_a = w.apply(battery::PackCurrent {
            open: supply.open_v,
            resistance: supply.resistance_ohm,
            power: bus_w,
        });
        let bus_v = w.apply(battery::BusVoltage {
            open: supply.open_v,
            current: pack_a,
            resistance: supply.resistance_ohm,
        });
        let rolling = crate::physics::road_load::RollingForce {
            mass: self.mass_kg,
            rolling: self.rolling,
            cos: slope.cos,
        }
        .value();
        let hill =
            crate::physics::road_load::SlopeForce { mass: self.mass_kg, sin: slope.sin }.value();
        let square = pack_a * pack_a;
        Some(Point {
            motor_current_a: current,
            pack_current_a: pack_a,
            bus_v,
            motor_v,
            shaft_n_m: shaft.torque,
            chemical_w: supply.open_v * pack_a,
            cells_w: square * (supply.resistance_ohm - supply.lead_ohm),
            leads_w: square * supply.lead_ohm,
            controller_w: bus_w - self.motors * (self.torque_per_amp * current * omega + copper),
            copper_w: self.motors * copper,
            iron_w: self.motors * iron * omega,
            belt_w: shaft.belt_w,
            rolling_w: rolling * speed_m_s,
            air_w: (load - rolling - hill) * speed_m_s,
            slope_w: hill * speed_m_s,
            brake_w: shaft.brake_w,
        })
    }

    /// The motor's side of the belt for a force at the road. A force that
    /// pushes the board first turns the motors' own drag, then needs brakes.
    fn shaft(&self, load: f64, speed: f64, omega: f64, iron: f64, w: &mut Working) -> Shaft {
        let eff = self.build.belt.efficiency;
        if load >= 0.0 {
            let torque = w.apply(gear::ShaftTorque {
                force: load,
                radius: self.radius_m,
                ratio: self.ratio,
                efficiency: eff,
                motors: self.motors,
            });
            let belt_w = torque * omega * self.motors * (1.0 - eff);
            return Shaft { torque, brake_w: 0.0, belt_w };
        }
        let torque = w.apply(gear::DrivenTorque {
            force: load,
            radius: self.radius_m,
            efficiency: eff,
            ratio: self.ratio,
            motors: self.motors,
            iron,
        });
        let through_belt = -torque * omega * self.motors / eff;
        Shaft { torque, brake_w: -load * speed - through_belt, belt_w: through_belt * (1.0 - eff) }
    }

    /// Bus voltage when every motor takes `current`; `None` beyond what the pack
    /// can give. The switching loss grows with the bus voltage itself.
    #[inline(always)]
    pub(crate) fn bus_v(
        &self,
        copper: Copper,
        supply: &Supply,
        current: f64,
        omega: f64,
    ) -> Option<f64> {
        let fixed_w = self.input_w(copper, current, omega, 0.0, &mut Working::off());
        let switching_a = self.motors * self.build.controller.switching_share * current;
        let open = supply.open_v - supply.resistance_ohm * switching_a;
        let square = open * open - 4.0 * supply.resistance_ohm * fixed_w;
        if open <= 0.0 || square < 0.0 {
            return None;
        }
        let bus_v = 0.5 * (open + sqrt(square));
        // Below half of the voltage more current gives less power: no push ends there.
        (bus_v >= 0.5 * supply.open_v * (1.0 - 1e-9)).then_some(bus_v)
    }
}
