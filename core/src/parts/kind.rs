//! Kinds of part, and the slots of a build that they go into.

use super::{
    Belt, Bench, Cell, Charger, Controller, Deck, Mode, Motor, MotorPulley, Pack, Place, Ride,
    Rider, Truck, Wheel, WheelPulley,
};
use crate::bounds::Field;
use serde::Serialize;

macro_rules! kinds {
    ($($kind:ident = $key:literal, $list:literal;)*) => {
        /// A kind of part, or of setting.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        #[allow(missing_docs, reason = "the names say it")]
        pub enum Kind { $($kind),* }

        impl Kind {
            /// Every kind.
            pub const ALL: &'static [Self] = &[$(Self::$kind),*];

            /// Key of one such part, as in links and error paths.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$kind => $key),* }
            }

            /// Key of the list in the catalogue; empty for settings.
            #[must_use]
            pub const fn list_key(self) -> &'static str {
                match self { $(Self::$kind => $list),* }
            }

            /// Limits of its inputs.
            #[must_use]
            pub const fn fields(self) -> &'static [Field] {
                match self { $(Self::$kind => $kind::FIELDS),* }
            }

            /// Names of its compatibility tags.
            #[must_use]
            pub const fn tags(self) -> &'static [&'static str] {
                match self { $(Self::$kind => $kind::TAGS),* }
            }
        }
    };
}

kinds! {
    Cell = "cell", "cells";
    Pack = "pack", "packs";
    Motor = "motor", "motors";
    Controller = "controller", "controllers";
    MotorPulley = "motor_pulley", "motor_pulleys";
    WheelPulley = "wheel_pulley", "wheel_pulleys";
    Belt = "belt", "belts";
    Wheel = "wheel", "wheels";
    Charger = "charger", "chargers";
    Deck = "deck", "decks";
    Truck = "truck", "trucks";
    Mode = "mode", "modes";
    Rider = "rider", "";
    Place = "place", "";
    Ride = "ride", "";
    Bench = "bench", "";
}

impl Kind {
    /// Position of an input in this kind's table.
    #[must_use]
    pub fn field_index(self, key: &str) -> Option<usize> {
        self.fields().iter().position(|f| f.key == key)
    }
}

macro_rules! slots {
    ($($slot:ident: $kind:ident = $key:literal;)*) => {
        /// A place in a build that one part fills.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize)]
        #[cfg_attr(feature = "schema", derive(ts_rs::TS))]
        #[serde(rename_all = "snake_case")]
        #[allow(missing_docs, reason = "the names say it")]
        pub enum Slot { $($slot),* }

        impl Slot {
            /// Every slot, in the order in which a build is read and shown.
            pub const ALL: &'static [Self] = &[$(Self::$slot),*];

            /// The kind of part that goes in.
            #[must_use]
            pub const fn kind(self) -> Kind {
                match self { $(Self::$slot => Kind::$kind),* }
            }

            /// Key in links, build files and kits.
            #[must_use]
            pub const fn key(self) -> &'static str {
                match self { $(Self::$slot => $key),* }
            }
        }
    };
}

slots! {
    Pack: Pack = "pack";
    Cell: Cell = "cell";
    Motor: Motor = "motor";
    Controller: Controller = "controller";
    MotorPulley: MotorPulley = "motor_pulley";
    WheelPulley: WheelPulley = "wheel_pulley";
    Belt: Belt = "belt";
    Wheel: Wheel = "wheel";
    Truck: Truck = "truck";
    Deck: Deck = "deck";
    Charger: Charger = "charger";
    ModeLow: Mode = "mode_low";
    ModeMid: Mode = "mode_mid";
    ModeHigh: Mode = "mode_high";
    Rider: Rider = "rider";
    Place: Place = "place";
    Ride: Ride = "ride";
    Bench: Bench = "bench";
}

impl Slot {
    /// The slot of that key.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.iter().copied().find(|slot| slot.key() == key)
    }

    /// Whether a catalogue part fills it; otherwise it holds the rider's own settings.
    #[must_use]
    pub const fn holds_part(self) -> bool {
        !self.kind().list_key().is_empty()
    }
}
