//! A board on its way: its state, and what a step makes of it.

use super::ledger::Ledger;
use super::plan::Plan;
use crate::answers::{Drive, Supply};
use crate::build::WHEELS;
use crate::math::abs;
use crate::physics::cell::{CellInTime, CellState, Decay};
use crate::physics::heat::{MotorHeat, Node};
use crate::physics::motion::{EffectiveMass, Moved, RotorInertia};
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
    /// Voltage at the controller over the last step, V.
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
/// A speed is held if the pack pushes enough over so many seconds.
const HOLD_S: f64 = 10.0;
/// The cell's resistance follows its temperature in steps of this, K.
const CELL_STEP_K: f64 = 0.02;

/// A board on its way.
#[derive(Clone, Debug)]
pub(crate) struct Journey {
    /// Its winding resistance follows the windings' temperature.
    pub(crate) drive: Drive,
    pub(super) cell: CellInTime,
    pub(crate) state: CellState,
    pub(crate) now: Moment,
    pub(crate) ledger: Ledger,
    pub(crate) effective_kg: f64,
    pub(super) decay: Decay,
    /// Over the seconds for which a speed is to be held.
    pub(super) hold: Decay,
    pub(super) motor: MotorHeat,
    pack: Node,
    controller: Node,
    pub(super) copper: f64,
    /// Temperature that the cell's resistance was taken at, °C, and how fast it now changes, K/s.
    cell_c: f64,
    cell_k_s: f64,
}

impl Drive {
    /// Mass of rider and board, and what turning wheels and rotors add to it, kg.
    pub(crate) fn effective_kg(&self) -> f64 {
        Journey::new(self, 1.0).effective_kg
    }
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
            effective_kg: EffectiveMass {
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
            hold: Decay::new(&cell.shape, HOLD_S),
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
            cell_k_s: 0.0,
        };
        journey.drive.copper = drive.copper_at(air);
        journey
    }

    /// Starts with windings and cases at a temperature.
    pub(crate) fn set_warm(&mut self, winding_c: f64) {
        (self.now.winding_c, self.now.case_c) = (winding_c, winding_c);
        self.drive.copper = self.drive.copper_at(winding_c);
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
        let amid = self.amid(decay.step_s, motor_a, mean, iron * omega);
        Some(Plan {
            step_s: decay.step_s,
            speed_m_s: moved.speed_m_s,
            brake_n: 0.0,
            limit: None,
            flow: self.drive.flow(self.drive.copper_at(amid.0), supply, mean, motor_a)?,
            decay: *decay,
            lead_ohm: supply.lead_ohm,
            amid,
            slope,
        })
    }

    /// The pack over a step of some length.
    pub(crate) fn supply(&self, decay: &Decay) -> Supply {
        self.supply_of(&self.cell_amid(decay.step_s), &self.state, decay, self.now.pack_a)
    }

    /// The pack over a step from a state, as a line about a pack current, A.
    pub(super) fn supply_of(
        &self,
        cell: &CellInTime,
        state: &CellState,
        decay: &Decay,
        pack_a: f64,
    ) -> Supply {
        let (pack, lead_ohm) = (&self.drive.build.pack, self.drive.lead_ohm);
        let cell = cell.source(state, decay, pack_a / pack.parallel);
        Supply {
            open_v: pack.series * cell.open_v,
            resistance_ohm: pack.series / pack.parallel * cell.resistance_ohm + lead_ohm,
            lead_ohm,
        }
    }

    /// The cell as warm as it will be amid a step.
    fn cell_amid(&self, step_s: f64) -> CellInTime {
        let cell_c = self.now.cell_c + 0.5 * step_s * self.cell_k_s;
        if abs(cell_c - self.cell_c) > CELL_STEP_K { self.cell_at(cell_c) } else { self.cell }
    }

    /// The cell at a temperature, °C.
    fn cell_at(&self, cell_c: f64) -> CellInTime {
        let (cell, aged) = (&self.drive.build.cell, self.drive.aged_resistance);
        let rated = cell.resistance_10s_ohm * aged;
        CellInTime {
            resistance_ohm: rated * cell.chemistry.resistance_factor(cell_c),
            lag_ohm: rated * cell.chemistry.lag_factor(cell_c),
            ..self.cell
        }
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
        let kinetic = 0.5 * self.effective_kg * (plan.speed_m_s * plan.speed_m_s - from * from) / h;
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
        let cell_c = self.pack.after(now.cell_c, h, pack, air_c);
        self.cell_k_s = (cell_c - now.cell_c) / h;
        now.cell_c = cell_c;
        now.controller_c = self.controller.after(now.controller_c, h, flow.controller_w, air_c);
        now.time_s += h;
        now.distance_m += mean * h;
        now.speed_m_s = plan.speed_m_s;
        now.charge = self.state.charge;
        now.pack_a = flow.pack_a;
        now.bus_v = flow.bus_v;
        now.motor_a = flow.motor_a;
        self.decay = plan.decay;
        self.drive.copper = self.drive.copper_at(self.now.winding_c);
        if abs(self.now.cell_c - self.cell_c) > CELL_STEP_K {
            self.cell_c = self.now.cell_c;
            self.cell = self.cell_at(self.cell_c);
        }
    }
}
