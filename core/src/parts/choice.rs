//! Inputs that are one of a few, and how a checked value becomes a typed one.

use crate::physics::Chemistry;

/// Checked values in SI, one after the other.
pub(crate) type Values = alloc::vec::IntoIter<Option<f64>>;

/// A checked value as the type that a part holds.
pub(crate) trait Value {
    /// The next value. `None` only where it is optional.
    fn read(values: &mut Values) -> Self;
}

impl Value for Option<f64> {
    #[inline(never)]
    fn read(values: &mut Values) -> Self {
        values.next().flatten()
    }
}

impl Value for f64 {
    #[inline(never)]
    fn read(values: &mut Values) -> Self {
        values.next().flatten().unwrap_or(0.0)
    }
}

/// The choice of that number; the default for any other.
pub(super) fn chosen<T: Copy + Default>(number: f64, all: &[T]) -> T {
    let mut numbered = all.iter().zip(0_u32..);
    numbered.find(|(_, at)| f64::from(*at) == number).map(|(one, _)| *one).unwrap_or_default()
}

macro_rules! choice {
    ($(#[$meta:meta])* $name:ident { $first:ident = $first_key:literal, $($option:ident = $key:literal),* $(,)? }) => {
        listed! {
            $(#[$meta])*
            #[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
            #[allow(missing_docs, reason = "the names say it")]
            pub enum $name { #[default] $first, $($option),* }
        }

        impl $name {
            /// Names in files, in the order of their numbers.
            pub const NAMES: &'static [&'static str] = &[$first_key, $($key),*];

            /// Its name in files.
            #[must_use]
            pub const fn name(self) -> &'static str {
                match self { Self::$first => $first_key, $(Self::$option => $key),* }
            }
        }

        impl Value for $name {
            fn read(values: &mut Values) -> Self {
                chosen(f64::read(values), &Self::ALL)
            }
        }
    };
}

choice! {
    /// How the rider stands.
    Posture { Upright = "upright", Relaxed = "relaxed", Crouched = "crouched" }
}

choice! {
    /// Road surface, from smooth to rough.
    Surface {
        Smooth = "smooth_asphalt", Street = "street_asphalt", Coarse = "coarse_asphalt",
        Pavers = "pavers", Gravel = "packed_gravel",
    }
}

choice! {
    /// How motor current is counted.
    ///
    /// `PeakPhase` is the amplitude of the sinusoidal phase current, which a
    /// field-oriented controller limits. `Direct` is the current of the
    /// six-step drive and of the textbook direct-current machine.
    Convention { PeakPhase = "peak_phase", Direct = "direct" }
}

choice! {
    /// Riding style: stops, hills and speed.
    ///
    /// `CycleCut` and `CycleSlowed` are the urban cycle of UN Regulation 83, adapted to a board
    /// that doesn't reach the cycle's top speed.
    Outing {
        Steady = "steady_cruise", Easy = "relaxed_loop", Town = "stop_and_go_town",
        Hills = "hill_session", Flatout = "full_send", Own = "my_own",
        CycleCut = "city_cycle_cut", CycleSlowed = "city_cycle_slowed",
    }
}

impl Value for Chemistry {
    fn read(values: &mut Values) -> Self {
        chosen(f64::read(values), &Self::ALL)
    }
}

impl Posture {
    /// Drag area, m². Upright and crouched: a roller-skier in coast-down tests, 5-11 m/s
    /// ("Drag area of a cross-country skier", 1988: 0.65 ± 0.05 and 0.27 ± 0.03);
    /// relaxed, side on: common practice, no source.
    #[must_use]
    pub const fn drag_area_m2(self) -> f64 {
        match self {
            Self::Upright => 0.65,
            Self::Relaxed => 0.50,
            Self::Crouched => 0.27,
        }
    }
}

impl Surface {
    /// Roughness that scales a wheel's sensitivity: 0 on smooth asphalt.
    /// Common practice, no source.
    #[must_use]
    pub const fn roughness(self) -> f64 {
        match self {
            Self::Smooth => 0.0,
            Self::Street => 1.0,
            Self::Coarse => 2.0,
            Self::Pavers => 3.5,
            Self::Gravel => 5.0,
        }
    }
}
