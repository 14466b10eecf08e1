//! Fitted figures of the chemistry classes.
//!
//! Written by `tests/fit/fit_chemistry.py --write`: change the fit, not this file.

use super::{Activation, Knot, ReferenceCell, Shape};

/// Source: fitted to ORegan2022 (O'Regan et al., Electrochim. Acta 425:140700, 2022), 0.5C at 0, 10, 25
/// and 40 degC; the lag's is twice the resistance's.
pub(super) const ENERGY_COLD: Activation =
    Activation { resistance_j_mol: 23900.0, lag_j_mol: 47800.0 };

/// Source: that of the energy class, assumed; Ecker2015 at 0 degC and 1C agrees within 2 %.
pub(super) const POWER_COLD: Activation =
    Activation { resistance_j_mol: 23900.0, lag_j_mol: 47800.0 };

/// Source: the resistance is fitted to pulses of the LFP set in BPX form (`tests/fixture/cells/SOURCES.md`), -20 to
/// 25 degC. The lag is chosen, between figures that disagree: see `tests/fit/cold.py`.
pub(super) const LFP_COLD: Activation =
    Activation { resistance_j_mol: 23600.0, lag_j_mol: 24000.0 };

/// Source: fitted to Chen2020 discharge, charge and pulse runs at 25 degC.
pub(super) const ENERGY_SHAPE: Shape = Shape {
    r0_share: 0.745803,
    r1_share: 0.249624,
    r2_share: 1.0077,
    tau1_s: 12.0296,
    tau2_s: 587.513,
    lag1_per_v: 0.177405,
    lag2_per_v: 0.0,
    top_from: 1.0,
    top_lag_per_v: 0.0,
};

/// Source: the make-up of the energy class, assumed; its scale from the Ecker2015 totals at 0.2C and 1C.
pub(super) const POWER_SHAPE: Shape = Shape {
    r0_share: 0.810965,
    r1_share: 0.271434,
    r2_share: 1.09575,
    tau1_s: 12.0296,
    tau2_s: 587.513,
    lag1_per_v: 0.192906,
    lag2_per_v: 0.0,
    top_from: 1.0,
    top_lag_per_v: 0.0,
};

/// Source: fitted to Prada2013 at 25 degC: discharges at 0.2C, 1C and 2C to 3.0, 2.8, 2.5 and 2.0 V,
/// a charge at 0.5C, pulses of 10 and 60 s at 1C and 2C.
pub(super) const LFP_SHAPE: Shape = Shape {
    r0_share: 0.975436,
    r1_share: 0.0,
    r2_share: 0.206568,
    tau1_s: 18.9429,
    tau2_s: 534.684,
    lag1_per_v: 0.903352,
    lag2_per_v: 1.88438,
    top_from: 0.94,
    top_lag_per_v: 0.278792,
};

/// Source: Chen2020.
pub(super) const ENERGY_CELL: ReferenceCell =
    ReferenceCell { capacity_ah: 5.1532, resistance_ohm: 0.0241081 };

/// Source: Ecker2015 totals at 0.2C and 1C, with the make-up of the energy class.
pub(super) const POWER_CELL: ReferenceCell =
    ReferenceCell { capacity_ah: 0.171072, resistance_ohm: 0.197466 };

/// Source: Prada2013. Its own ten seconds show 31 mohm at 1C, 24 at 2C and 18 at 4C.
pub(super) const LFP_CELL: ReferenceCell =
    ReferenceCell { capacity_ah: 2.30345, resistance_ohm: 0.0250542 };

/// Source: Chen2020 (Chen et al., J. Electrochem. Soc. 167(8):080534, 2020), computed;
/// worst error against its 401 points 0.08 mV above 3 % charge, 0.07 mV below.
pub(super) const ENERGY_OCV: [Knot; 25] = [
    Knot::new(0.0000, 2.500000, 24.873),
    Knot::new(0.0175, 2.829298, 13.851),
    Knot::new(0.0325, 2.993343, 8.528),
    Knot::new(0.0500, 3.109446, 5.150),
    Knot::new(0.0725, 3.202070, 3.481),
    Knot::new(0.0925, 3.269899, 3.432),
    Knot::new(0.1125, 3.339251, 3.374),
    Knot::new(0.1325, 3.398757, 2.470),
    Knot::new(0.1650, 3.453879, 1.121),
    Knot::new(0.1975, 3.483197, 0.798),
    Knot::new(0.2425, 3.521329, 0.945),
    Knot::new(0.3250, 3.606771, 0.955),
    Knot::new(0.3900, 3.659732, 0.729),
    Knot::new(0.4575, 3.711743, 0.859),
    Knot::new(0.5550, 3.802817, 0.887),
    Knot::new(0.5800, 3.824171, 0.827),
    Knot::new(0.6375, 3.875177, 1.086),
    Knot::new(0.6775, 3.923627, 1.181),
    Knot::new(0.7250, 3.971323, 0.911),
    Knot::new(0.7725, 4.015712, 0.964),
    Knot::new(0.8375, 4.073245, 0.680),
    Knot::new(0.8750, 4.091069, 0.283),
    Knot::new(0.9200, 4.102503, 0.410),
    Knot::new(0.9550, 4.129023, 1.152),
    Knot::new(1.0000, 4.200000, 1.869),
];

/// Source: Ecker2015 (Ecker et al., J. Electrochem. Soc. 162(9):A1836, 2015), computed;
/// worst error against its 401 points 0.11 mV above 3 % charge, 0.09 mV below.
pub(super) const POWER_OCV: [Knot; 25] = [
    Knot::new(0.0000, 2.500000, 75.580),
    Knot::new(0.0025, 2.658747, 51.417),
    Knot::new(0.0050, 2.757086, 33.441),
    Knot::new(0.0075, 2.825954, 24.516),
    Knot::new(0.0100, 2.879668, 19.791),
    Knot::new(0.0125, 2.924911, 17.039),
    Knot::new(0.0175, 3.001074, 13.900),
    Knot::new(0.0275, 3.120497, 10.310),
    Knot::new(0.0475, 3.279255, 6.013),
    Knot::new(0.0725, 3.390772, 3.255),
    Knot::new(0.1025, 3.463143, 1.792),
    Knot::new(0.1425, 3.519073, 1.164),
    Knot::new(0.1925, 3.577282, 1.268),
    Knot::new(0.2350, 3.635890, 1.415),
    Knot::new(0.2775, 3.689090, 1.026),
    Knot::new(0.3375, 3.735011, 0.637),
    Knot::new(0.3825, 3.762467, 0.508),
    Knot::new(0.4300, 3.777563, 0.175),
    Knot::new(0.5000, 3.787250, 0.159),
    Knot::new(0.6300, 3.830009, 0.541),
    Knot::new(0.6975, 3.879663, 1.022),
    Knot::new(0.7425, 3.931695, 1.136),
    Knot::new(0.8125, 3.997564, 0.858),
    Knot::new(0.9100, 4.089483, 1.075),
    Knot::new(1.0000, 4.200000, 1.362),
];

/// Source: Prada2013 (Prada et al., J. Electrochem. Soc. 160(4):A616, 2013), computed;
/// worst error against its 401 points 0.12 mV above 3 % charge, 0.07 mV below.
pub(super) const LFP_OCV: [Knot; 25] = [
    Knot::new(0.0000, 2.000000, 30.833),
    Knot::new(0.0175, 2.416888, 17.949),
    Knot::new(0.0325, 2.632085, 11.297),
    Knot::new(0.0500, 2.785319, 6.671),
    Knot::new(0.0700, 2.887373, 3.887),
    Knot::new(0.0950, 2.964986, 2.651),
    Knot::new(0.1150, 3.017380, 2.668),
    Knot::new(0.1550, 3.118429, 1.972),
    Knot::new(0.1875, 3.160741, 0.752),
    Knot::new(0.2275, 3.178913, 0.306),
    Knot::new(0.2800, 3.196598, 0.421),
    Knot::new(0.3725, 3.242833, 0.417),
    Knot::new(0.4775, 3.264699, 0.071),
    Knot::new(0.6550, 3.270130, 0.037),
    Knot::new(0.7225, 3.279954, 0.361),
    Knot::new(0.7675, 3.300820, 0.413),
    Knot::new(0.8225, 3.311993, 0.066),
    Knot::new(0.9300, 3.314788, 0.034),
    Knot::new(0.9550, 3.317491, 0.283),
    Knot::new(0.9700, 3.327379, 1.310),
    Knot::new(0.9800, 3.350173, 3.715),
    Knot::new(0.9875, 3.392008, 8.145),
    Knot::new(0.9925, 3.444930, 13.756),
    Knot::new(0.9975, 3.534326, 23.240),
    Knot::new(1.0000, 3.600000, 29.300),
];
