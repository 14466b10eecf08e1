//! What a cell's chemistry fixes: its open-circuit voltage, the shape of its
//! resistance, and how both change with temperature and age.
//!
//! A cell brings its own capacity and its own ten-second resistance; everything
//! else here belongs to the class. The figures are fitted to runs of published
//! parameter sets, which are outputs of a model, not measurements:
//! `tests/fit/fit_chemistry.py` fits, and says what it held out.

mod evidence;
mod tables;
#[cfg(test)]
mod tests;
mod usual;

pub use evidence::{Basis, Evidence};

use crate::math::exp;
use serde::Serialize;

const GAS_J_MOL_K: f64 = 8.314_462_618;
const ZERO_CELSIUS_K: f64 = 273.15;
const REFERENCE_K: f64 = 298.15;

/// Temperatures, °C, between which the factors change; they are held beyond.
const COLDEST_C: f64 = -30.0;
const HOTTEST_C: f64 = 60.0;

listed! {
    /// The class of a lithium cell.
///
/// How far its figures can be trusted, with the energy's worst error at 25 °C:
///
/// | class | rates | stop voltages | error | whole discharges | colder than that |
/// |---|---|---|---|---|---|
/// | energy | 0.2C to 2C | 2.5 to 3.0 V | 1.1 % | 0 to 40 °C, to 0.5C | extrapolated |
/// | power | 0.2C and 1C | 2.5 V | 0.1 %, fitted | 0 and 25 °C, at 1C | extrapolated |
/// | LFP | 0.2C to 2C | 2.0 to 3.0 V | 0.8 % | 25 °C | common practice |
///
/// All of it against runs of published parameter sets, outputs of a model;
/// nothing against a cell. [`Chemistry::evidence`] has the same as data.
    #[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize)]
    #[cfg_attr(feature = "schema", derive(ts_rs::TS))]
    #[serde(rename_all = "snake_case")]
    pub enum Chemistry {
        /// NMC or NCA made for capacity.
        #[default]
        Energy,
        /// NMC or NCA made for current.
        Power,
        /// Lithium iron phosphate.
        Lfp,
    }
}

/// How the resistance of a class is made up, relative to the resistance ten
/// seconds into a pulse at half charge and 25 °C, `R_10s`.
///
/// One cell in time, `I` > 0 on discharge, with filtered currents `j1`, `j2`:
///
/// ```text
/// dj1/dt = (I − j1) / τ1        dj2/dt = (I − j2) / τ2
/// V = OCV(z − r_lag (lag1 j1 + lag2 j2)) − r (s0 I + s1 j1 + s2 j2)
/// r     = R_10s · resistance_factor · growth with age
/// r_lag = R_10s · lag_factor        · growth with age
/// ```
///
/// The open-circuit voltage is read at the charge of the particles' surface,
/// which runs ahead of the mean charge `z` under load. So the resistance grows
/// toward empty, and the sooner the higher the current, as in the reference
/// runs; a growth of `s2` with charge alone cannot follow LFP in time.
///
/// LFP has two surfaces: what its voltage rises above a knee belongs to the
/// iron phosphate, which hardly lags, and all below to the graphite. The part
/// above `top_from` is read at a surface of its own, `z − r_lag top_lag j1`; at
/// rest the two add up to the whole curve. With one surface a charge at 0.5C
/// takes 9 % too long and a full cell sags too late.
///
/// Ten seconds into a pulse at half charge the whole is 1, so that a cell shows
/// the resistance it was given:
/// `s0 + (s1 + lag1 OCV') (1 − exp(−10/τ1)) + (s2 + lag2 OCV') (1 − exp(−10/τ2))`.
///
/// While a charger holds the voltage the current follows from the surface
/// charge: an explicit step of one second is short enough down to −10 °C.
///
/// A linear form has one resistance for all currents. The reference for LFP shows
/// 31 mΩ after ten seconds of 1C, 24 of 2C and 18 of 4C, this 25: a given
/// ten-second resistance is taken as one of about 2C.
///
/// [`Chemistry::evidence`] says against what each class was checked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Shape {
    /// Share `s0` that is there at once.
    pub r0_share: f64,
    /// Share `s1` that builds up with `tau1_s`.
    pub r1_share: f64,
    /// Share `s2` that builds up with `tau2_s`.
    pub r2_share: f64,
    /// Time constant of the quick filter, s.
    pub tau1_s: f64,
    /// Time constant of the slow filter, s.
    pub tau2_s: f64,
    /// Lag of the surface's charge for each volt of `R_10s · j1`, 1/V.
    pub lag1_per_v: f64,
    /// Lag of the surface's charge for each volt of `R_10s · j2`, 1/V.
    pub lag2_per_v: f64,
    /// Charge above which the voltage is read at the second surface; 1 for none.
    pub top_from: f64,
    /// Lag of that surface for each volt of `R_10s · j1`, 1/V.
    pub top_lag_per_v: f64,
}

impl Shape {
    /// Shares of the two branches that a rested cell has built up after some seconds of one
    /// current; `None` for so long that both have settled.
    #[must_use]
    pub fn built_up(&self, seconds: Option<f64>) -> [f64; 2] {
        let on = |tau_s: f64| seconds.map_or(1.0, |seconds| 1.0 - exp(-seconds / tau_s));
        [on(self.tau1_s), on(self.tau2_s)]
    }
}

/// The cell of the published parameter set behind a class.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ReferenceCell {
    /// Charge between the ends of the open-circuit table, Ah: 1 % (LFP 3 %)
    /// more than a discharge at 0.2C delivers.
    pub capacity_ah: f64,
    /// Resistance ten seconds into a pulse at half charge and 25 °C, ohm.
    pub resistance_ohm: f64,
}

/// How strongly cold raises resistance and lag: Arrhenius, J/mol.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Activation {
    resistance_j_mol: f64,
    lag_j_mol: f64,
}

/// One point of an open-circuit table.
#[derive(Clone, Copy, Debug)]
struct Knot {
    charge: f64,
    volts: f64,
    slope: f64,
}

impl Knot {
    const fn new(charge: f64, volts: f64, slope: f64) -> Self {
        Self { charge, volts, slope }
    }
}

/// The two knots around a charge, and the part of the distance between them.
struct Piece {
    a: &'static Knot,
    b: &'static Knot,
    t: f64,
}

impl Piece {
    fn volts(&self) -> f64 {
        let (a, b, t) = (self.a, self.b, self.t);
        let h = b.charge - a.charge;
        let (rise, u) = (b.volts - a.volts, 1.0 - t);
        a.volts + t * t * (3.0 - 2.0 * t) * rise + t * u * h * (u * a.slope - t * b.slope)
    }

    fn slope(&self) -> f64 {
        let (a, b, t) = (self.a, self.b, self.t);
        let chord = (b.volts - a.volts) / (b.charge - a.charge);
        let u = 1.0 - t;
        6.0 * t * u * chord + u * (u - 2.0 * t) * a.slope + t * (t - 2.0 * u) * b.slope
    }
}

/// `x` between two bounds; the lower one if it is not a number.
fn held(x: f64, low: f64, high: f64) -> f64 {
    if x > low { x.min(high) } else { low }
}

/// Growth at a temperature over 25 °C, held beyond the ends.
fn arrhenius(activation_j_mol: f64, cell_c: f64) -> f64 {
    let kelvin = held(cell_c, COLDEST_C, HOTTEST_C) + ZERO_CELSIUS_K;
    exp(activation_j_mol / GAS_J_MOL_K * (1.0 / kelvin - 1.0 / REFERENCE_K))
}

impl Chemistry {
    /// Open-circuit voltage of one cell, V, at a charge between 0 and 1, held
    /// at the ends beyond.
    ///
    /// Monotone and with a continuous derivative: a cubic between 25 points of
    /// a table of 401, whose slopes stay within three times each chord
    /// (Fritsch and Carlson, SIAM J. Numer. Anal. 17 (1980) 238-246, from
    /// memory). Within 0.13 mV of that table, below 3 % charge too. Source: the
    /// published parameter sets named beside the tables.
    ///
    /// ```
    /// use pitchline_core::physics::Chemistry;
    /// assert!((Chemistry::Energy.ocv_v(0.5) - 3.750_874).abs() < 1e-3);
    /// ```
    #[must_use]
    pub fn ocv_v(self, charge: f64) -> f64 {
        self.piece(charge).map_or(0.0, |piece| piece.volts())
    }

    /// Slope of the open-circuit voltage of one cell, V for the whole charge;
    /// beyond 0 and 1 that of the end.
    ///
    /// ```
    /// use pitchline_core::physics::Chemistry;
    /// // From 50 to 55 % charge the reference rises by 47.5 mV.
    /// assert!((Chemistry::Energy.docv_dz(0.525) - 0.0475 / 0.05).abs() < 0.02);
    /// ```
    #[must_use]
    pub fn docv_dz(self, charge: f64) -> f64 {
        self.piece(charge).map_or(0.0, |piece| piece.slope())
    }

    /// Both at once.
    pub(crate) fn ocv_and_slope(self, charge: f64) -> (f64, f64) {
        self.piece(charge).map_or((0.0, 0.0), |piece| (piece.volts(), piece.slope()))
    }

    /// Where a charge lies in the table. It has more than two knots, so it lies somewhere.
    fn piece(self, charge: f64) -> Option<Piece> {
        let table: &'static [Knot] = match self {
            Self::Energy => &tables::ENERGY_OCV,
            Self::Power => &tables::POWER_OCV,
            Self::Lfp => &tables::LFP_OCV,
        };
        let charge = held(charge, 0.0, 1.0);
        // So short a table is sooner read through than halved.
        let after =
            table.iter().take_while(|k| k.charge <= charge).count().clamp(1, table.len() - 1);
        let (a, b) = (table.get(after - 1)?, table.get(after)?);
        Some(Piece { a, b, t: (charge - a.charge) / (b.charge - a.charge) })
    }

    /// The make-up of the resistance.
    ///
    /// Source: fitted, see the tables. The power class has no reference trace:
    /// the make-up of the energy class is assumed for it, with no source. It
    /// gives the four totals that are known (0.2C and 1C, Ah and Wh) within
    /// 0.2 %, with resistance and capacity put to them.
    #[must_use]
    pub fn shape(self) -> Shape {
        match self {
            Self::Energy => tables::ENERGY_SHAPE,
            Self::Power => tables::POWER_SHAPE,
            Self::Lfp => tables::LFP_SHAPE,
        }
    }

    /// The cell that the class was fitted to.
    #[must_use]
    pub fn reference_cell(self) -> ReferenceCell {
        match self {
            Self::Energy => tables::ENERGY_CELL,
            Self::Power => tables::POWER_CELL,
            Self::Lfp => tables::LFP_CELL,
        }
    }

    /// Growth of the resistance with cold: 1 at 25 °C, Arrhenius, never rising
    /// with temperature; held below −30 and above 60 °C.
    ///
    /// Energy: fitted to ORegan2022 at 0 to 40 °C. At 0 °C it is 2.4, where the
    /// first minute of those runs shows 1.8: it was put where the energy comes
    /// right. Power: the same, assumed. LFP: fitted to ten seconds of 0.5C of a
    /// published set at −20 to 25 °C. Extrapolated outside.
    ///
    /// ```
    /// use pitchline_core::physics::Chemistry;
    /// assert!((Chemistry::Energy.resistance_factor(25.0) - 1.0).abs() < 1e-12);
    /// ```
    #[must_use]
    pub fn resistance_factor(self, cell_c: f64) -> f64 {
        arrhenius(self.activation().resistance_j_mol, cell_c)
    }

    /// Growth of the lag with cold, as the resistance's.
    ///
    /// Energy: ORegan2022 as above; of the powers 1, 2 and 3 of the
    /// resistance's factor the second serves both the energy and the first
    /// minute. Power: the same, assumed. LFP: common practice, chosen between
    /// figures that disagree (`tests/fit/cold.py` lists them).
    #[must_use]
    pub fn lag_factor(self, cell_c: f64) -> f64 {
        arrhenius(self.activation().lag_j_mol, cell_c)
    }

    fn activation(self) -> Activation {
        match self {
            Self::Energy => tables::ENERGY_COLD,
            Self::Power => tables::POWER_COLD,
            Self::Lfp => tables::LFP_COLD,
        }
    }

    /// Change of the capacity with temperature: none, for any temperature.
    ///
    /// What a cold cell fails to deliver, the resistance and the lag withhold;
    /// it is there again once the cell is warm. Left free, a loss with cold
    /// fitted to zero (ORegan2022, 0.5C at 0 to 40 °C).
    #[must_use]
    pub fn capacity_factor(self, _cell_c: f64) -> f64 {
        1.0
    }

    /// Capacity and resistance after a number of full cycles, as factors of a
    /// new cell's; held beyond 1000 cycles, new below 0.
    ///
    /// Source: common practice, no source.
    ///
    /// ```
    /// use pitchline_core::physics::Chemistry;
    /// assert_eq!(Chemistry::Energy.fade(0.0), (1.0, 1.0));
    /// ```
    #[must_use]
    pub fn fade(self, cycles: f64) -> (f64, f64) {
        let aged: [(f64, f64, f64); 4] = match self {
            Self::Energy | Self::Power => {
                [(0.0, 1.0, 1.0), (100.0, 0.95, 1.08), (300.0, 0.89, 1.2), (1000.0, 0.75, 1.6)]
            }
            Self::Lfp => {
                [(0.0, 1.0, 1.0), (100.0, 0.98, 1.04), (300.0, 0.95, 1.1), (1000.0, 0.87, 1.3)]
            }
        };
        let cycles = held(cycles, 0.0, 1000.0);
        let mut found = (1.0, 1.0);
        for (from, to) in aged.iter().zip(aged.iter().skip(1)) {
            if cycles >= from.0 {
                let t = (cycles - from.0).min(to.0 - from.0) / (to.0 - from.0);
                found = (from.1 + t * (to.1 - from.1), from.2 + t * (to.2 - from.2));
            }
        }
        found
    }

    /// Volts of a full cell at rest: the upper end of the parameter set.
    ///
    /// A charger set above it never sees its current taper in this model.
    #[must_use]
    pub fn full_v(self) -> f64 {
        match self {
            Self::Energy | Self::Power => 4.2,
            Self::Lfp => 3.6,
        }
    }

    /// Volts of the lowest cell at which a board stops by default, under load.
    ///
    /// Source: common practice, no source.
    #[must_use]
    pub fn cut_off_v(self) -> f64 {
        match self {
            Self::Energy | Self::Power => 3.0,
            Self::Lfp => 2.5,
        }
    }

    /// Volts of an empty cell at rest: the lower end of the parameter set.
    #[must_use]
    pub fn floor_v(self) -> f64 {
        match self {
            Self::Energy | Self::Power => 2.5,
            Self::Lfp => 2.0,
        }
    }
}
