//! The macro that turns rows into a typed part and its table of limits.

/// Declares a part: one row an input, one struct field a row.
///
/// `si_name: type = "file_key" Unit, min..max, typical, Need;`
/// A choice writes the names of its options in brackets after the need. A value that is
/// assumed by the cells of the build writes the method of `CellClass` after `=>`.
macro_rules! part {
    (
        $(#[$meta:meta])* $name:ident, tags [$($tag:literal),*];
        $( $(#[doc = $doc:literal])* $field:ident: $type:ty =
            $key:literal $unit:ident, $min:literal..$max:literal, $typical:literal, $need:ident $(=> $by_cell:ident)? $($choices:expr)?; )*
    ) => {
        $(#[$meta])*
        #[derive(Clone, Copy, Debug, PartialEq)]
        pub struct $name { $(
            $(#[doc = $doc])*
            #[doc = part!(@in_files $key $unit $min, $max, $need $($choices)?)]
            pub $field: $type,
        )* }

        impl $name {
            /// Limits of every input, in the order of the struct's fields.
            pub const FIELDS: &'static [$crate::bounds::Field] = &[ $( $crate::bounds::Field {
                key: $key,
                unit: $crate::bounds::Unit::$unit,
                min: $min as f64,
                max: $max as f64,
                typical: $typical as f64,
                need: $crate::bounds::Need::$need,
                by_cell: part!(@by_cell $($by_cell)?),
                choices: part!(@choices $($choices)?),
                #[cfg(feature = "schema")]
                doc: concat!($($doc),*),
            }, )* ];

            /// Names of the compatibility tags that this part may carry.
            pub const TAGS: &'static [&'static str] = &[$($tag),*];

            /// The typed part from a record on its own. Only a build knows the cells by which a
            /// pack's and a controller's voltages are assumed: those of the energy class here.
            ///
            /// # Errors
            /// One for each value that is missing or out of range.
            pub fn from_record(
                record: &$crate::parts::Record,
            ) -> Result<Self, alloc::vec::Vec<$crate::error::Error>> {
                let cell = $crate::parts::CellClass::of(Self::FIELDS, Self::TAGS, record);
                Ok(Self::from_si(record.si(Self::FIELDS, cell)?))
            }

            /// The typed part from checked values in SI.
            #[inline(never)]
            pub(crate) fn from_si(values: alloc::vec::Vec<Option<f64>>) -> Self {
                let mut values = values.into_iter();
                Self { $( $field: <$type as $crate::parts::choice::Value>::read(&mut values), )* }
            }
        }
    };
    (@in_files $key:literal $unit:ident $min:literal, $max:literal, $need:ident) => {
        concat!(
            "\n\nHere in SI, but for degrees Celsius, degrees of angle and Ah. In files `", $key,
            "`, from ", $min, " to ", $max, " ([`", stringify!($unit), "`](crate::Unit::",
            stringify!($unit), ")), ", part!(@need $need),
        )
    };
    (@in_files $key:literal $unit:ident $min:literal, $max:literal, $need:ident $choices:expr) => {
        concat!("\n\nIn files `", $key, "`, by its name.")
    };
    (@need Required) => { "required." };
    (@need Assumed) => { "assumed if left out." };
    (@need Optional) => { "optional." };
    (@by_cell) => { None };
    (@by_cell $by_cell:ident) => { Some($crate::parts::CellClass::$by_cell) };
    (@choices) => { &[] };
    (@choices $choices:expr) => { $choices };
}
