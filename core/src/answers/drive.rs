//! The build reduced to the numbers that every law needs.

use crate::build::Build;
use crate::math::PI;
use crate::parts::Convention;
use crate::physics::road_load::{AirForce, RoadLoad, RollingForce, Slope, SlopeForce};
use crate::physics::{air, battery, gear, motor, wire};
use crate::working::Working;

/// What the pack has carried before it is asked for more.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Sag {
    /// Ten seconds of full throttle from rest, at 4C: the charge that a rested cell holds at the
    /// surface of its particles is gone.
    Burst,
    /// A steady ride at half of 1C, so long that the cells have settled.
    Sustained,
}

/// Seconds of full throttle that [`Sag::Burst`] stands for.
const BURST_S: f64 = 10.0;
/// Currents, in capacities an hour. Common practice, no source: at full throttle a board draws 2C
/// to 6C, on a steady ride about half of 1C.
const BURST_RATE: f64 = 4.0;
const SUSTAINED_RATE: f64 = 0.5;

/// The pack at one charge: an open-circuit voltage behind a resistance.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Supply {
    /// Open-circuit voltage of the pack, V.
    pub open_v: f64,
    /// Resistance of cells, joints and wires, ohm.
    pub resistance_ohm: f64,
    /// Of which joints and wires, ohm.
    pub lead_ohm: f64,
}

/// The windings at one temperature.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Copper {
    /// Resistance between two wires, ohm.
    pub(crate) winding_ohm: f64,
    /// What turns squared motor current into heat, switches with it, ohm.
    pub(crate) heat_ohm: f64,
}

/// A build with everything worked out that does not change with speed or charge.
#[derive(Clone, Copy, Debug)]
pub struct Drive {
    /// The build.
    pub build: Build,
    pub(crate) mass_kg: f64,
    pub(crate) rolling: f64,
    pub(crate) density: f64,
    pub(crate) drag_area_m2: f64,
    pub(crate) ratio: f64,
    pub(crate) radius_m: f64,
    pub(crate) motors: f64,
    pub(crate) torque_per_amp: f64,
    pub(crate) copper: Copper,
    pub(crate) no_load_rad_s: f64,
    pub(crate) lead_ohm: f64,
    pub(crate) capacity_ah: f64,
    pub(crate) belt_rated_n: f64,
    pub(crate) cold_resistance: f64,
    pub(crate) cold_lag: f64,
    pub(crate) aged_resistance: f64,
}

impl Drive {
    /// From a checked build.
    #[must_use]
    pub fn new(build: &Build) -> Self {
        Self::explained(build, &mut Working::off())
    }

    pub(crate) fn explained(build: &Build, w: &mut Working) -> Self {
        let b = build;
        let pressure = w.apply(air::AirPressure { altitude: b.place.altitude_m });
        let density = w.apply(air::AirDensity { pressure, celsius: b.place.air_c });
        let convention = b.controller.convention;
        let torque_per_amp = convention.torque_per_amp(b.motor.kv_rpm_per_v, w);
        let winding_ohm = w.apply(motor::WarmResistance {
            cold: b.motor.resistance_ll_ohm,
            celsius: b.ride.winding_c,
        });
        let copper = convention.copper_factor();
        let (on, switch_ohm) = (convention.switch_factor(), b.controller.switch_ohm);
        let heat_ohm =
            w.apply(motor::HeatResistance { copper, winding: winding_ohm, on, switch: switch_ohm });
        let diameter = w.apply(wire::WireDiameter { gauge: b.pack.wire_awg });
        let wire_ohm = w.apply(wire::WireResistance {
            length: b.pack.wire_m,
            diameter,
            celsius: b.place.air_c,
        });
        let lead_ohm =
            w.apply(battery::LeadResistance { joints: b.pack.joints_ohm, wire: wire_ohm });
        let (fade, growth) = b.cell.chemistry.fade(b.pack.cycles);
        let cold = b.cell.chemistry.capacity_factor(b.place.air_c);
        let capacity_ah = w.apply(battery::PackCapacity {
            parallel: b.pack.parallel,
            cell: b.cell.capacity_ah,
            cold,
            age: fade,
        });
        let mut drive = Self {
            build: *b,
            mass_kg: 0.0,
            rolling: 0.0,
            density,
            drag_area_m2: b.drag_area_m2(),
            ratio: 1.0,
            radius_m: 1.0,
            motors: b.truck.motor_count,
            torque_per_amp,
            copper: Copper { winding_ohm, heat_ohm },
            no_load_rad_s: b.motor.no_load_rpm * PI / 30.0,
            lead_ohm,
            capacity_ah,
            belt_rated_n: 0.0,
            cold_resistance: b.cell.chemistry.resistance_factor(b.place.air_c),
            cold_lag: b.cell.chemistry.lag_factor(b.place.air_c),
            aged_resistance: growth,
        };
        drive.set_gear(w);
        drive
    }

    /// The same drive with other pulleys and wheel.
    #[must_use]
    pub fn with_gear(&self, build: &Build) -> Self {
        let mut drive = Self { build: *build, ..*self };
        drive.set_gear(&mut Working::off());
        drive
    }

    /// The windings at a temperature, °C.
    pub(crate) fn copper_at(&self, winding_c: f64) -> Copper {
        let (m, c) = (&self.build.motor, &self.build.controller);
        // Far below freezing copper is still copper.
        let winding = motor::WarmResistance { cold: m.resistance_ll_ohm, celsius: winding_c }
            .value()
            .max(1e-9);
        let copper = c.convention.copper_factor();
        let on = c.convention.switch_factor();
        let heat = motor::HeatResistance { copper, winding, on, switch: c.switch_ohm };
        Copper { winding_ohm: winding, heat_ohm: heat.value() }
    }

    /// The drive with its cells at another temperature, °C.
    pub(crate) fn set_cells(&mut self, cell_c: f64) {
        let chemistry = self.build.cell.chemistry;
        self.cold_resistance = chemistry.resistance_factor(cell_c);
        self.cold_lag = chemistry.lag_factor(cell_c);
    }

    /// What pulleys and wheel decide.
    fn set_gear(&mut self, w: &mut Working) {
        let b = &self.build;
        self.mass_kg = b.mass_explained(w);
        self.rolling = b.wheel.rolling_explained(b.place.surface, w);
        self.radius_m = b.wheel.radius_explained(w);
        self.ratio =
            w.apply(gear::GearRatio { wheel: b.wheel_pulley.teeth, motor: b.motor_pulley.teeth });
        self.belt_rated_n = self.belt_rated_explained(&mut Working::off());
    }

    /// The pack at a charge, a share from 0 to 1. Source: [`CELL_MODEL`](crate::source::CELL_MODEL).
    #[must_use]
    pub fn supply(&self, charge: f64, sag: Sag) -> Supply {
        self.supply_explained(charge, sag, &mut Working::off())
    }

    pub(crate) fn supply_explained(&self, charge: f64, sag: Sag, w: &mut Working) -> Supply {
        let (pack, cell) = (&self.build.pack, &self.build.cell);
        let (rate, seconds) = match sag {
            Sag::Burst => (BURST_RATE, Some(BURST_S)),
            Sag::Sustained => (SUSTAINED_RATE, None),
        };
        let shape = cell.chemistry.shape();
        let [on_1, on_2] = shape.built_up(seconds);
        let (rated, aged) = (cell.resistance_10s_ohm, self.aged_resistance);
        let (capacity, parallel) = (self.capacity_ah, pack.parallel);
        let time = seconds.unwrap_or(0.0);
        let current = w.apply(battery::CarriedCurrent { rate, capacity, parallel });
        let behind = w.apply(battery::SurfaceLag {
            rated,
            cold: self.cold_lag,
            age: aged,
            lag_1: shape.lag1_per_v,
            on_1,
            lag_2: shape.lag2_per_v,
            on_2,
            time,
            parallel,
            capacity,
        });
        let surface = w.apply(battery::SurfaceCharge { charge, behind, current });
        let mut top = surface;
        if shape.top_from < 1.0 {
            let behind = w.apply(battery::TopLag {
                rated,
                cold: self.cold_lag,
                age: aged,
                lag: shape.top_lag_per_v,
                on: on_1,
                time,
                parallel,
                capacity,
            });
            top = w.apply(battery::TopCharge { charge, behind, current });
        }
        let cell_v = shape.surface_v(&cell.chemistry, surface, top);
        let open_v = w.apply(battery::OpenCircuitVoltage { series: pack.series, cell: cell_v });
        let cell_ohm = w.apply(battery::CellResistance {
            rated,
            cold: self.cold_resistance,
            age: aged,
            ohmic: shape.r0_share,
            quick: shape.r1_share,
            on_1,
            slow: shape.r2_share,
            on_2,
        });
        let lead = self.lead_ohm;
        let resistance_ohm = w.apply(battery::PackResistance {
            series: pack.series,
            parallel: pack.parallel,
            cell: cell_ohm,
            leads: lead,
        });
        Supply { open_v, resistance_ohm, lead_ohm: lead }
    }

    /// Road load, N, at a speed, m/s, on any slope; negative where the board rolls by itself.
    #[must_use]
    pub fn load_n(&self, speed_m_s: f64, slope: Slope) -> f64 {
        self.load_explained(speed_m_s, slope, &mut Working::off())
    }

    pub(crate) fn load_explained(&self, speed_m_s: f64, slope: Slope, w: &mut Working) -> f64 {
        let roll =
            w.apply(RollingForce { mass: self.mass_kg, rolling: self.rolling, cos: slope.cos });
        let hill = w.apply(SlopeForce { mass: self.mass_kg, sin: slope.sin });
        let air = self.air_n(speed_m_s, w);
        w.apply(RoadLoad { roll, slope: hill, air })
    }

    pub(crate) fn air_n(&self, speed_m_s: f64, w: &mut Working) -> f64 {
        let wind = self.build.place.headwind_m_s;
        w.apply(AirForce { density: self.density, area: self.drag_area_m2, speed: speed_m_s, wind })
    }

    /// Torque that iron and bearings of one motor take, N·m.
    pub(crate) fn iron_n_m(&self, motor_rad_s: f64, w: &mut Working) -> f64 {
        let m = &self.build.motor;
        w.apply(motor::IronTorque {
            kv: m.kv_rpm_per_v,
            no_load: m.no_load_a,
            share: m.hysteresis_share,
            omega: motor_rad_s,
            at: self.no_load_rad_s,
        })
    }

    /// Line-to-line volts that one motor asks for.
    #[inline(always)]
    pub(crate) fn motor_volts(
        &self,
        copper: Copper,
        motor_rad_s: f64,
        current_a: f64,
        w: &mut Working,
    ) -> f64 {
        let m = &self.build.motor;
        let (omega, kv, current, resistance) =
            (motor_rad_s, m.kv_rpm_per_v, current_a, copper.winding_ohm);
        match self.build.controller.convention {
            Convention::Direct => {
                w.apply(motor::MotorVoltageDirect { omega, kv, current, resistance })
            }
            Convention::PeakPhase => w.apply(motor::MotorVoltagePeak {
                omega,
                kv,
                current,
                resistance,
                pairs: m.pole_pairs,
                inductance: m.inductance_h,
            }),
        }
    }

    /// Watts into the controllers at a motor current and a bus voltage.
    #[inline(always)]
    pub(crate) fn input_w(
        &self,
        copper: Copper,
        current_a: f64,
        omega: f64,
        bus_v: f64,
        w: &mut Working,
    ) -> f64 {
        let c = &self.build.controller;
        w.apply(battery::InputPower {
            motors: self.motors,
            constant: self.torque_per_amp,
            current: current_a,
            omega,
            heat: copper.heat_ohm,
            switching: c.switching_share,
            bus: bus_v,
            idle: c.idle_w,
        })
    }
}
