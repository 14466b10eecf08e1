//! Voltages and mass that are usual for a class, where a part does not give its own.

use super::Chemistry;

impl Chemistry {
    /// Voltage of the cell standing for its nameplate energy, V.
    ///
    /// Source: common practice, no source.
    #[must_use]
    pub const fn nominal_v(self) -> f64 {
        match self {
            Self::Energy | Self::Power => 3.6,
            Self::Lfp => 3.2,
        }
    }

    /// Voltages of a cell group at which a controller begins to limit battery current, and at
    /// which nothing is left, V.
    ///
    /// Source: common practice, no source.
    #[must_use]
    pub const fn cutback_v(self) -> (f64, f64) {
        match self {
            Self::Energy | Self::Power => (3.3, 3.0),
            Self::Lfp => (2.8, 2.5),
        }
    }

    /// The highest voltage for each cell group at which chargers for usual cells of the class end,
    /// V. For LFP that is above [`full_v`](Self::full_v): 3.65 V is as usual as 3.6 V.
    ///
    /// Source: common practice, no source.
    #[must_use]
    pub const fn charger_v(self) -> f64 {
        match self {
            Self::Energy | Self::Power => 4.2,
            Self::Lfp => 3.65,
        }
    }

    /// The highest voltage of a full cell that is believed of the class, V: some cells of the
    /// energy class are made for more than 4.2 V, none of LFP for more than 3.65 V.
    ///
    /// Source: common practice, no source.
    #[must_use]
    pub const fn highest_full_v(self) -> f64 {
        match self {
            Self::Energy | Self::Power => 4.4,
            Self::Lfp => 3.65,
        }
    }

    /// Mass of a cylindrical cell for its volume, kg/m³.
    ///
    /// Source: common practice, no source: a cell of 21 by 70 mm weighs about 70 g, one of 18 by
    /// 65 mm about 48 g, and an LFP cell about a seventh less for its size.
    #[must_use]
    pub const fn density_kg_m3(self) -> f64 {
        match self {
            Self::Energy | Self::Power => 2890.0,
            Self::Lfp => 2480.0,
        }
    }
}
