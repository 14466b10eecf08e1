//! How far what was entered may be from what is.

use crate::build::Build;
use crate::parts::Slot;
use serde::Serialize;

/// An input that is not known exactly.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "snake_case")]
#[allow(missing_docs, reason = "the names say it")]
pub enum Uncertain {
    Mass,
    Rolling,
    DragArea,
    Wind,
    Temperature,
    Capacity,
    Resistance,
    Belt,
    Kv,
}

/// How far an input may be off, up and down, with what was entered the most
/// likely: a triangle.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Spread {
    /// The input.
    pub input: Uncertain,
    /// Where it is entered.
    pub slot: Slot,
    /// Its key there.
    pub key: &'static str,
    /// Half of the width: a share of the value, or in SI where `absolute`.
    pub half: f64,
    /// Whether `half` is added rather than a share.
    pub absolute: bool,
}

const fn spread(
    input: Uncertain,
    slot: Slot,
    key: &'static str,
    half: f64,
    absolute: bool,
) -> Spread {
    Spread { input, slot, key, half, absolute }
}

/// How many inputs are not known exactly.
pub const INPUTS: usize = 9;

/// Every one of them. Common practice, no source.
pub const SPREADS: [Spread; INPUTS] = [
    // Clothes, breakfast and what is in the bag.
    spread(Uncertain::Mass, Slot::Rider, "mass_kg", 4.0, true),
    spread(Uncertain::Rolling, Slot::Wheel, "rolling_smooth", 0.25, false),
    spread(Uncertain::DragArea, Slot::Rider, "drag_area_m2", 0.15, false),
    // 7 km/h.
    spread(Uncertain::Wind, Slot::Place, "headwind_km_h", 7.0 / 3.6, true),
    spread(Uncertain::Temperature, Slot::Place, "air_c", 5.0, true),
    spread(Uncertain::Capacity, Slot::Cell, "capacity_ah", 0.05, false),
    spread(Uncertain::Resistance, Slot::Cell, "resistance_10s_mohm", 0.20, false),
    spread(Uncertain::Belt, Slot::Belt, "efficiency_percent", 0.03, true),
    // Labels can be 10 % off.
    spread(Uncertain::Kv, Slot::Motor, "kv_rpm_per_v", 0.10, false),
];

impl Spread {
    /// The build with this input off by `off`, between -1 and 1 of the half
    /// width; never beyond what may be entered.
    pub(super) fn put(&self, build: &mut Build, off: f64) {
        let fields = self.slot.kind().fields();
        let Some(field) = fields.iter().find(|field| field.key == self.key) else { return };
        let (low, high) = (field.min * field.unit.si(), field.max * field.unit.si());
        let drag_area = build.drag_area_m2();
        let value = match self.input {
            Uncertain::Mass => &mut build.rider.mass_kg,
            Uncertain::Rolling => &mut build.wheel.rolling_smooth,
            Uncertain::DragArea => build.rider.drag_area_m2.insert(drag_area),
            Uncertain::Wind => &mut build.place.headwind_m_s,
            Uncertain::Temperature => &mut build.place.air_c,
            Uncertain::Capacity => &mut build.cell.capacity_ah,
            Uncertain::Resistance => &mut build.cell.resistance_10s_ohm,
            Uncertain::Belt => &mut build.belt.efficiency,
            Uncertain::Kv => &mut build.motor.kv_rpm_per_v,
        };
        let moved = |value: f64| {
            let by = self.half * off;
            let moved = if self.absolute { value + by } else { value * (1.0 + by) };
            moved.max(low).min(high)
        };
        *value = moved(*value);
        // Where it charges it may be off as well.
        if let (Uncertain::Temperature, Some(air_c)) = (self.input, &mut build.place.charge_air_c) {
            *air_c = moved(*air_c);
        }
    }
}
