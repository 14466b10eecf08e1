//! Enums that know all their values.

/// Declares an enum of plain values, with the list of them all.
macro_rules! listed {
    ($(#[$meta:meta])* pub enum $name:ident { $( $(#[$of:meta])* $value:ident ),* $(,)? }) => {
        $(#[$meta])*
        pub enum $name { $( $(#[$of])* $value ),* }

        impl $name {
            /// Every one, in this order.
            pub const ALL: [Self; [$(stringify!($value)),*].len()] = [$(Self::$value),*];
        }
    };
}
