//! How long does it charge, what does it cost, and how full is it by then?

use super::charger::ChargeRefusal;
use super::drive::Drive;
use crate::build::Build;
use crate::math::share;
use crate::physics::cell::CellInTime;
use crate::physics::charging::{
    CellCharge, CellCharger, ChargeCost, ChargeCurrent, ChargeEnergy, ChargeMoment, ChargeTime,
    ConstantCurrentTime, ConstantVoltageTime, TaperCurrent, WallEnergy, charge_cell,
};
use crate::working::{Step, Working};
use alloc::vec::Vec;
use serde::Serialize;

/// What ends a charge.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ChargeEnd {
    /// The charge asked for is reached.
    Target,
    /// The charger has ended by itself: the current has tapered off.
    Taper,
    /// The time is up.
    Time,
}

/// What sets the charging current.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ChargeLimit {
    /// What the charger gives.
    Charger,
    /// What the cells take.
    Cells,
}

/// A moment of a charge, for the whole pack.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct ChargePoint {
    /// Time since the start, s.
    pub time_s: f64,
    /// Charge, as a share.
    pub charge: f64,
    /// Current into the pack, A.
    pub current_a: f64,
    /// Voltage of the pack, V.
    pub volts: f64,
}

/// A charge.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Charge {
    /// Charge at the start, as a share.
    pub start_charge: f64,
    /// Charge at the end, as a share.
    pub end_charge: f64,
    /// Time, s.
    pub time_s: f64,
    /// Of which at constant current, s.
    pub constant_current_s: f64,
    /// Energy into the pack, Wh.
    pub pack_wh: f64,
    /// Energy from the wall, Wh.
    pub wall_wh: f64,
    /// What it costs, in the catalogue's currency; none without a price.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
    /// Current into the pack until the voltage is held, A.
    pub current_a: f64,
    /// What ends it.
    pub end: ChargeEnd,
    /// What sets the current.
    pub limit: ChargeLimit,
    /// Time, charge, current and volts on the way.
    pub curve: Vec<ChargePoint>,
}

impl Drive {
    /// A charge with the build's charger, from one charge to another (shares
    /// between 0 and 1), at the temperature where it charges.
    ///
    /// # Errors
    /// [`ChargeRefusal`] where charger and pack have other volts, and for cells
    /// below 0 °C. A build knows no plugs: [`charging`](super::charging) does.
    ///
    /// ```
    /// use pitchline_core::{Build, Draft, Drive};
    ///
    /// let drive = Drive::new(&Build::check(&Draft::typical()).unwrap());
    /// // 3 A into 9 Ah: 60 % takes 1.8 h at least, and little more, as its voltage is held late.
    /// let found = drive.charge(0.2, 0.8).unwrap();
    /// let least_s = 0.6 * 9.0 / 3.0 * 3600.0;
    /// assert!(found.time_s >= least_s * 0.999 && found.time_s < 1.1 * least_s);
    /// // The charger loses 12 % on the way.
    /// assert!((found.pack_wh / found.wall_wh - 0.88).abs() < 1e-9);
    /// // What is in after that time is what was asked for.
    /// let by_time = drive.charge_for(0.2, found.time_s).unwrap();
    /// assert!((by_time.end_charge - 0.8).abs() < 1e-3);
    /// ```
    pub fn charge(&self, from: f64, to: f64) -> Result<Charge, ChargeRefusal> {
        self.charge_explained(from, to, f64::INFINITY, &mut Working::off())
    }

    /// A charge that is taken off after a time, s; its `end_charge` is how much
    /// is in by then.
    ///
    /// # Errors
    /// As [`Drive::charge`].
    pub fn charge_for(&self, from: f64, seconds: f64) -> Result<Charge, ChargeRefusal> {
        self.charge_explained(from, 1.0, seconds.max(0.0), &mut Working::off())
    }

    fn charge_explained(
        &self,
        from: f64,
        to: f64,
        until_s: f64,
        w: &mut Working,
    ) -> Result<Charge, ChargeRefusal> {
        let mut curve = Vec::new();
        let indoors = self.where_it_charges();
        let (series, parallel) = (self.build.pack.series, self.build.pack.parallel);
        let tell = |m: ChargeMoment| {
            let (current_a, volts) = (m.current_a * parallel, m.volts * series);
            curve.push(ChargePoint { time_s: m.time_s, charge: m.charge, current_a, volts });
        };
        let (current, found) = indoors.cell_charge(from, to, until_s, tell, w)?;
        let end = if found.tapered {
            ChargeEnd::Taper
        } else if found.end.time_s >= until_s {
            ChargeEnd::Time
        } else {
            ChargeEnd::Target
        };
        let start = share(from);
        let (hold, last) = (found.hold, found.end);
        let capacity = indoors.capacity_ah;
        let first = w.apply(ConstantCurrentTime { capacity, hold: hold.charge, start, current });
        let spent = last.time_s - hold.time_s;
        let mean =
            if spent > 0.0 { 3600.0 * capacity * (last.charge - hold.charge) / spent } else { 0.0 };
        let then =
            w.apply(ConstantVoltageTime { capacity, end: last.charge, hold: hold.charge, mean });
        let time_s = w.apply(ChargeTime { current: first, voltage: then });
        let passed = capacity * (last.charge - start);
        let energy = found.energy_wh * series * parallel;
        let mean_v = if passed > 0.0 { energy / passed } else { 0.0 };
        let pack_wh = w.apply(ChargeEnergy { mean: mean_v, capacity, end: last.charge, start });
        let wall_wh =
            w.apply(WallEnergy { pack: pack_wh, efficiency: self.build.charger.efficiency });
        let price = self.build.place.energy_price;
        Ok(Charge {
            start_charge: start,
            end_charge: last.charge,
            time_s,
            constant_current_s: first,
            pack_wh,
            wall_wh,
            cost: price.map(|price| w.apply(ChargeCost { price, wall: wall_wh })),
            end,
            current_a: current,
            limit: match self.build.charger_too_strong() {
                Some(_) => ChargeLimit::Cells,
                None => ChargeLimit::Charger,
            },
            curve,
        })
    }

    /// The board as warm as where it charges.
    fn where_it_charges(&self) -> Self {
        let air_c = self.build.charge_air_c();
        if air_c == self.build.place.air_c {
            return *self;
        }
        let mut build = self.build;
        build.place.air_c = air_c;
        Self::new(&build)
    }

    /// The current into the pack, A, until the voltage is held, and the charge of one of its cells.
    fn cell_charge(
        &self,
        from: f64,
        to: f64,
        until_s: f64,
        tell: impl FnMut(ChargeMoment),
        w: &mut Working,
    ) -> Result<(f64, CellCharge), ChargeRefusal> {
        let b = &self.build;
        if let Some(refusal) = b.charge_refusal() {
            return Err(refusal);
        }
        let parallel = b.pack.parallel;
        let current = w.apply(ChargeCurrent {
            charger: b.charger.current_a,
            parallel,
            cell: b.cell.max_charge_a,
        });
        let taper = w.apply(TaperCurrent { capacity: self.capacity_ah });
        let start = share(from);
        let charger = CellCharger {
            current_a: current / parallel,
            // The open-circuit table ends at the class's own full voltage.
            hold_v: (b.charger.full_v / b.pack.series).min(b.cell.chemistry.full_v()),
            taper_a: taper / parallel,
            target: share(to),
            until_s,
        };
        Ok((current, charge_cell(&self.cell_in_time(b.pack.joints_ohm), start, &charger, tell)))
    }

    /// Time of a charge, s, without its curve.
    pub(crate) fn charge_time_s(&self, from: f64, to: f64) -> Result<f64, ChargeRefusal> {
        let indoors = self.where_it_charges();
        let off = &mut Working::off();
        let (_, found) = indoors.cell_charge(from, to, f64::INFINITY, |_| {}, off)?;
        Ok(found.end.time_s)
    }

    /// One cell of the pack in time, with its share of a resistance, ohm, that
    /// the whole pack's current passes.
    pub(crate) fn cell_in_time(&self, joints_ohm: f64) -> CellInTime {
        let (pack, cell) = (&self.build.pack, &self.build.cell);
        let rated = cell.resistance_10s_ohm * self.aged_resistance;
        CellInTime {
            open: cell.chemistry,
            shape: cell.chemistry.shape(),
            resistance_ohm: rated * self.cold_resistance,
            lag_ohm: rated * self.cold_lag,
            joint_ohm: joints_ohm * pack.parallel / pack.series,
            capacity_ah: self.capacity_ah / pack.parallel,
        }
    }
}

/// The working of a charge.
///
/// # Errors
/// As [`Drive::charge`].
pub fn explain_charge(build: &Build, from: f64, to: f64) -> Result<Vec<Step>, ChargeRefusal> {
    let mut w = Working::on();
    let drive = Drive::explained(build, &mut Working::off());
    w.apply(crate::physics::battery::PackCapacity {
        parallel: build.pack.parallel,
        cell: build.cell.capacity_ah,
        cold: build.cell.chemistry.capacity_factor(build.charge_air_c()),
        age: build.cell.chemistry.fade(build.pack.cycles).0,
    });
    drive.charge_explained(from, to, f64::INFINITY, &mut w)?;
    Ok(w.into_steps())
}
