//! Laws, one subject a file. Each is a [`Law`](crate::Law): a struct of its
//! inputs by name, with its formula, symbols, units, source, and the function
//! that evaluates it. What a symbol stands for is in the glossary,
//! [`symbol::SYMBOLS`].
//!
//! Lengths are in m, currents in A, voltages in V and so on, as each input
//! names its [`Unit`](crate::Unit). Inputs may be any finite number where a law
//! does not say otherwise; a checked [`Build`](crate::Build) keeps to the
//! limits of its parts, for which every result is finite.

/// Declares a [`Law`](crate::Law).
macro_rules! law {
    (
        $(#[$meta:meta])* $name:ident = $words:literal, $symbol:literal = $formula:literal, $unit:ident, $source:ident;
        $( $var:ident: $var_symbol:literal $var_unit:ident ),* => $body:expr
    ) => {
        $(#[$meta])*
        #[doc = concat!(
            "\n\n`", $symbol, " = ", $formula, "`, [`", stringify!($unit), "`](crate::Unit::",
            stringify!($unit), "). Source: [`", stringify!($source), "`](crate::source::",
            stringify!($source), ").",
        )]
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name {
            $(
                #[doc = concat!("`", $var_symbol, "`, [`", stringify!($var_unit), "`](crate::Unit::", stringify!($var_unit), ").")]
                pub $var: f64,
            )*
        }

        impl $name {
            /// The result, in the unit above.
            #[must_use]
            #[inline]
            pub fn value(self) -> f64 {
                let Self { $($var),* } = self;
                $body
            }
        }

        impl $crate::working::Law for $name {
            type Values = [f64; [$($var_symbol),*].len()];

            #[inline]
            fn definition() -> &'static $crate::working::Definition<Self::Values> {
                static DEFINITION: $crate::working::Definition<<$name as $crate::working::Law>::Values> =
                    $crate::working::Definition {
                        formula: $crate::working::Formula {
                            name: $words,
                            symbol: $crate::physics::symbol::known($symbol, $crate::bounds::Unit::$unit).0,
                            text: $formula,
                            unit: $crate::bounds::Unit::$unit,
                            source: &$crate::source::$source,
                            inputs: &[$( $crate::physics::symbol::known($var_symbol, $crate::bounds::Unit::$var_unit) ),*],
                        },
                        eval: |[$($var),*]| $name { $($var),* }.value(),
                    };
                &DEFINITION
            }

            #[inline]
            fn values(self) -> Self::Values {
                [$(self.$var),*]
            }

            #[inline]
            fn result(self) -> f64 {
                self.value()
            }
        }
    };
}

pub mod air;
pub mod battery;
pub mod belt_geometry;
pub mod cell;
pub mod charging;
mod chemistry;
pub mod deck;
pub mod frame;
pub mod gear;
pub mod heat;
mod hold;
pub mod lean;
pub mod motion;
pub mod motor;
pub mod packing;
pub mod road_load;
pub mod symbol;
pub mod wire;

pub use chemistry::{Basis, Chemistry, Evidence, ReferenceCell, Shape};
