//! How far what was entered may be from what is.

use crate::build::Build;
use crate::parts::Slot;
use serde::Serialize;

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
    /// Half of the width: a share of the value, or in SI where `absolute`. At
    /// least; see [`half_in`](Self::half_in).
    pub half: f64,
    /// Whether `half` is added rather than a share.
    pub absolute: bool,
}

/// Declares what is not known exactly, and how far each of it may be off.
macro_rules! uncertain {
    ($( $input:ident: $slot:ident $key:literal, $half:expr, $absolute:literal; )*) => {
        listed! {
            /// An input that is not known exactly.
            #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
            #[cfg_attr(feature = "schema", derive(ts_rs::TS))]
            #[serde(rename_all = "snake_case")]
            #[allow(missing_docs, reason = "the names say it")]
            pub enum Uncertain { $($input),* }
        }

        /// How many inputs are not known exactly.
        pub const INPUTS: usize = Uncertain::ALL.len();

        /// Every one of them. Common practice, no source.
        pub const SPREADS: [Spread; INPUTS] = [ $( Spread {
            input: Uncertain::$input,
            slot: Slot::$slot,
            key: $key,
            half: $half,
            absolute: $absolute,
        } ),* ];
    };
}

uncertain! {
    // Clothes, breakfast and what is in the bag.
    Mass: Rider "mass_kg", 4.0, true;
    Rolling: Wheel "rolling_smooth", 0.25, false;
    DragArea: Rider "drag_area_m2", 0.15, false;
    // 7 km/h.
    Wind: Place "headwind_km_h", 7.0 / 3.6, true;
    Temperature: Place "air_c", 5.0, true;
    Capacity: Cell "capacity_ah", 0.05, false;
    Resistance: Cell "resistance_10s_mohm", 0.20, false;
    Belt: Belt "efficiency_percent", 0.03, true;
    // Labels can be 10 % off.
    Kv: Motor "kv_rpm_per_v", 0.10, false;
}

impl Spread {
    /// Half of the width in a build: that of the resistance is wider where the
    /// cells are colder than any run of their class.
    #[must_use]
    pub fn half_in(&self, build: &Build) -> f64 {
        match self.input {
            Uncertain::Resistance => build.cell.chemistry.resistance_spread(build.place.air_c),
            _ => self.half,
        }
    }

    /// The build with this input off by `off`, between -1 and 1 of the half
    /// width; never beyond what may be entered.
    pub(super) fn put(&self, build: &mut Build, off: f64) {
        let fields = self.slot.kind().fields();
        let Some(field) = fields.iter().find(|field| field.key == self.key) else { return };
        let (low, high) = (field.min * field.unit.si(), field.max * field.unit.si());
        let drag_area = build.drag_area_m2();
        let half = self.half_in(build);
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
            let by = half * off;
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
