//! Charts: numbers in, a drawing out, and one component that shows any
//! drawing.
//!
//! A chart is a plain value ([`Curves`], [`Map`], [`Bars`]) whose `draw`
//! lays it out for a width and gives a [`Drawing`]: a list of [`Mark`]s and the
//! stops of its cursor. Nothing here knows what the numbers mean; the
//! words, the units and the way a number is written come from the caller, the
//! look from `style/chart.css`.
//!
//! ```
//! use pitchline_web::chart::{Axis, Curves, Series, svg};
//! let chart = Curves {
//!     x: Axis { title: "km/h".into(), ..Axis::default() },
//!     y: Axis { title: "km".into(), zero: true, ..Axis::default() },
//!     series: vec![Series {
//!         name: "Kittiwake".into(),
//!         points: vec![(15.0, Some(31.0)), (25.0, Some(22.0)), (35.0, Some(14.0))],
//!         ..Series::default()
//!     }],
//!     readout: vec![(25.0, "25 km/h: 22 km".into())],
//!     ..Curves::default()
//! };
//! let drawing = chart.draw(360.0);
//! assert!(svg(&drawing, "Slower goes farther").contains("Kittiwake"));
//! ```

mod axis;
mod band;
mod bar;
mod cursor;
mod curves;
mod figure;
mod flow;
mod labels;
mod line;
mod map;
mod mark;
mod measure;
mod nothing;
mod number;
mod scale;
mod stack;
mod svg;
mod table;
mod tick;
mod width;

pub use axis::{Axis, Label};
pub use band::Span;
pub use bar::{Bar, Bars, Limit};
pub use cursor::{moved, nearest, shown};
pub use curves::{Curves, MOST_SERIES, Note, Region, Series};
pub(crate) use figure::drawn;
pub use figure::{Figure, Sketch};
pub use line::{Point, value_at};
pub use map::{Cell, Map};
pub(crate) use mark::capsule;
pub use mark::{Anchor, CursorStop, Drawing, Follow, Mark, path};
pub(crate) use measure::held_width;
pub use measure::text_width;
pub use nothing::nothing;
pub use number::plain;
pub(crate) use number::tenths;
pub use scale::{Band, Linear, extent};
pub(crate) use scale::{held, within};
pub use stack::{Panel, Stack};
pub use svg::svg;
pub use table::{Grid, Table};
pub use tick::{Ticks, round_out, ticks};
pub(crate) use width::{STEP, Seen};

#[cfg(test)]
mod laws;
#[cfg(test)]
mod picture;
