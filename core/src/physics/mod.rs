//! Laws, one subject a file. Each is a [`Law`](crate::Law): formula, symbols,
//! units, source, and the function that evaluates it. What a symbol stands for
//! is in the glossary, [`symbol::SYMBOLS`].

/// Declares a [`Law`](crate::Law) as a static.
macro_rules! law {
    (
        $(#[$meta:meta])* $name:ident = $words:literal, $symbol:literal = $formula:literal, $unit:ident, $source:ident;
        $( $var:ident: $var_symbol:literal $var_unit:ident ),* => $body:expr
    ) => {
        $(#[$meta])*
        pub static $name: $crate::working::Law<{ [$($var_symbol),*].len() }> = $crate::working::Law {
            formula: $crate::working::Formula {
                name: $words,
                symbol: $crate::physics::symbol::known($symbol, $crate::bounds::Unit::$unit).0,
                text: $formula,
                unit: $crate::bounds::Unit::$unit,
                source: &$crate::source::$source,
            },
            inputs: [$( $crate::physics::symbol::known($var_symbol, $crate::bounds::Unit::$var_unit) ),*],
            eval: |[$($var),*]| $body,
        };
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
pub mod lean;
pub mod motion;
pub mod motor;
pub mod packing;
pub mod road_load;
pub mod symbol;
pub mod wire;

pub use chemistry::{Chemistry, ReferenceCell, Shape};
