//! Fitted figures of the chemistry classes.
//!
//! Written by `tests/fit/fit_chemistry.py --write`: change the fit, not this file.

use super::{Knot, ReferenceCell, Shape};

/// Activation energy of the resistance, J/mol. Source: fitted to ORegan2022 (O'Regan et al.,
/// Electrochim. Acta 425:140700, 2022), 0.5C at 0, 10, 25 and 40 degC.
pub(super) const ACTIVATION_J_MOL: f64 = 23900.0;

/// Source: fitted to Chen2020 discharge, charge and pulse runs at 25 degC.
pub(super) const ENERGY_SHAPE: Shape = Shape {
    r0_share: 0.745754,
    r1_share: 0.249606,
    r2_share: 1.00767,
    tau1_s: 12.0295,
    tau2_s: 587.227,
    lag1_per_v: 0.177395,
    lag2_per_v: 0.0,
    empty_gain: 3.99774,
    empty_scale: 0.0400631,
};

/// Source: the make-up of the energy class, assumed; its scale from the Ecker2015 totals at 0.2C and 1C.
pub(super) const POWER_SHAPE: Shape = Shape {
    r0_share: 0.810957,
    r1_share: 0.27143,
    r2_share: 1.09577,
    tau1_s: 12.0295,
    tau2_s: 587.227,
    lag1_per_v: 0.192906,
    lag2_per_v: 0.0,
    empty_gain: 6.94392,
    empty_scale: 0.0416974,
};

/// Source: fitted to Prada2013 discharge runs at 0.2C, 1C and 2C, 25 degC; its 10 s figure
/// is the model's own: no pulse was there to fit, hence no quick branch.
pub(super) const LFP_SHAPE: Shape = Shape {
    r0_share: 0.992676,
    r1_share: 0.0,
    r2_share: 0.20059,
    tau1_s: 12.0295,
    tau2_s: 444.726,
    lag1_per_v: 0.0,
    lag2_per_v: 2.50772,
    empty_gain: 157.138,
    empty_scale: 0.194349,
};

/// Source: Chen2020.
pub(super) const ENERGY_CELL: ReferenceCell =
    ReferenceCell { capacity_ah: 5.1532, resistance_ohm: 0.0241094 };

/// Source: Ecker2015 totals at 0.2C and 1C, with the make-up of the energy class.
pub(super) const POWER_CELL: ReferenceCell =
    ReferenceCell { capacity_ah: 0.171072, resistance_ohm: 0.19746 };

/// Source: Prada2013.
pub(super) const LFP_CELL: ReferenceCell =
    ReferenceCell { capacity_ah: 2.30345, resistance_ohm: 0.0273117 };

/// Source: Chen2020 (Chen et al., J. Electrochem. Soc. 167(8):080534, 2020), computed;
/// worst error against its 401 points 0.08 mV above 3 % charge, 0.07 mV below.
pub(super) const ENERGY_OCV: [Knot; 25] = [
    Knot::new(0.0000, 2.500000, 24.87280),
    Knot::new(0.0175, 2.829298, 13.85080),
    Knot::new(0.0325, 2.993343, 8.52780),
    Knot::new(0.0500, 3.109446, 5.15040),
    Knot::new(0.0725, 3.202070, 3.48140),
    Knot::new(0.0925, 3.269899, 3.43220),
    Knot::new(0.1125, 3.339251, 3.37420),
    Knot::new(0.1325, 3.398757, 2.46980),
    Knot::new(0.1650, 3.453879, 1.12080),
    Knot::new(0.1975, 3.483197, 0.79820),
    Knot::new(0.2425, 3.521329, 0.94480),
    Knot::new(0.3250, 3.606771, 0.95480),
    Knot::new(0.3900, 3.659732, 0.72900),
    Knot::new(0.4575, 3.711743, 0.85880),
    Knot::new(0.5525, 3.800591, 0.89380),
    Knot::new(0.5825, 3.826233, 0.82340),
    Knot::new(0.6375, 3.875177, 1.08600),
    Knot::new(0.6775, 3.923627, 1.18060),
    Knot::new(0.7250, 3.971323, 0.91140),
    Knot::new(0.7725, 4.015712, 0.96420),
    Knot::new(0.8375, 4.073245, 0.68040),
    Knot::new(0.8750, 4.091069, 0.28280),
    Knot::new(0.9200, 4.102503, 0.40980),
    Knot::new(0.9550, 4.129023, 1.15220),
    Knot::new(1.0000, 4.200000, 1.86920),
];

/// Source: Ecker2015 (Ecker et al., J. Electrochem. Soc. 162(9):A1836, 2015), computed;
/// worst error against its 401 points 0.11 mV above 3 % charge, 0.09 mV below.
pub(super) const POWER_OCV: [Knot; 25] = [
    Knot::new(0.0000, 2.500000, 75.58040),
    Knot::new(0.0025, 2.658747, 51.41720),
    Knot::new(0.0050, 2.757086, 33.44140),
    Knot::new(0.0075, 2.825954, 24.51640),
    Knot::new(0.0100, 2.879668, 19.79140),
    Knot::new(0.0125, 2.924911, 17.03860),
    Knot::new(0.0175, 3.001074, 13.90000),
    Knot::new(0.0275, 3.120497, 10.30980),
    Knot::new(0.0475, 3.279255, 6.01280),
    Knot::new(0.0725, 3.390772, 3.25540),
    Knot::new(0.1025, 3.463143, 1.79220),
    Knot::new(0.1425, 3.519073, 1.16400),
    Knot::new(0.1925, 3.577282, 1.26840),
    Knot::new(0.2350, 3.635890, 1.41500),
    Knot::new(0.2775, 3.689090, 1.02620),
    Knot::new(0.3375, 3.735011, 0.63660),
    Knot::new(0.3825, 3.762467, 0.50800),
    Knot::new(0.4300, 3.777563, 0.17460),
    Knot::new(0.5000, 3.787250, 0.15900),
    Knot::new(0.6300, 3.830009, 0.54080),
    Knot::new(0.6975, 3.879663, 1.02180),
    Knot::new(0.7425, 3.931695, 1.13640),
    Knot::new(0.8125, 3.997564, 0.85780),
    Knot::new(0.9100, 4.089483, 1.07540),
    Knot::new(1.0000, 4.200000, 1.36200),
];

/// Source: Prada2013 (Prada et al., J. Electrochem. Soc. 160(4):A616, 2013), computed;
/// worst error against its 401 points 0.12 mV above 3 % charge, 0.07 mV below.
pub(super) const LFP_OCV: [Knot; 25] = [
    Knot::new(0.0000, 2.000000, 30.83300),
    Knot::new(0.0175, 2.416888, 17.94860),
    Knot::new(0.0325, 2.632085, 11.29740),
    Knot::new(0.0500, 2.785319, 6.67140),
    Knot::new(0.0700, 2.887373, 3.88720),
    Knot::new(0.0950, 2.964986, 2.65060),
    Knot::new(0.1150, 3.017380, 2.66840),
    Knot::new(0.1550, 3.118429, 1.97160),
    Knot::new(0.1875, 3.160741, 0.75180),
    Knot::new(0.2250, 3.178142, 0.31180),
    Knot::new(0.2775, 3.195558, 0.41080),
    Knot::new(0.3800, 3.245828, 0.38120),
    Knot::new(0.4775, 3.264699, 0.07140),
    Knot::new(0.6550, 3.270130, 0.03700),
    Knot::new(0.7225, 3.279954, 0.36100),
    Knot::new(0.7675, 3.300820, 0.41300),
    Knot::new(0.8225, 3.311993, 0.06560),
    Knot::new(0.9300, 3.314788, 0.03400),
    Knot::new(0.9550, 3.317491, 0.28260),
    Knot::new(0.9700, 3.327379, 1.30960),
    Knot::new(0.9800, 3.350173, 3.71460),
    Knot::new(0.9875, 3.392008, 8.14480),
    Knot::new(0.9925, 3.444930, 13.75620),
    Knot::new(0.9975, 3.534326, 23.23960),
    Knot::new(1.0000, 3.600000, 29.29960),
];
