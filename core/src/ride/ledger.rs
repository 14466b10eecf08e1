//! Where the energy of a ride went.

use serde::Serialize;

/// Energy, Wh, by where it went. `stored_wh` is what left the cells' chemistry,
/// less what came back; it equals the sum of every other entry.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Ledger {
    /// Out of the cells' chemistry, Wh, less what braking brought back.
    pub stored_wh: f64,
    /// Heat in the cells, Wh.
    pub pack_wh: f64,
    /// Heat in joints and wires, Wh.
    pub wires_wh: f64,
    /// Heat in the controller, Wh.
    pub controller_wh: f64,
    /// Heat in the windings, Wh.
    pub winding_wh: f64,
    /// Heat in iron and bearings, Wh.
    pub iron_wh: f64,
    /// Heat in the belts, Wh.
    pub belt_wh: f64,
    /// Rolling resistance, Wh.
    pub rolling_wh: f64,
    /// Air resistance, Wh; negative where the wind pushed more than it held.
    pub air_wh: f64,
    /// Height gained, Wh; negative where more was lost.
    pub climb_wh: f64,
    /// Heat in brakes, or the rider's soles, Wh: braking beyond what the motors do.
    pub brake_wh: f64,
    /// Gained in speed, Wh.
    pub kinetic_wh: f64,
    /// All that passed the chemistry, out and back, Wh: what the sums are judged by.
    pub passed_wh: f64,
    /// Of which came back by braking, Wh.
    pub returned_wh: f64,
}

impl Ledger {
    /// Everything that `stored_wh` went into, Wh each, in the order of the fields.
    #[must_use]
    pub fn sinks_wh(&self) -> [f64; 11] {
        [
            self.pack_wh,
            self.wires_wh,
            self.controller_wh,
            self.winding_wh,
            self.iron_wh,
            self.belt_wh,
            self.rolling_wh,
            self.air_wh,
            self.climb_wh,
            self.brake_wh,
            self.kinetic_wh,
        ]
    }
}
