//! One curve with marks on it: what the charger and the seasons share.

use crate::chart::{Axis, Curves, Drawing, Note, Point, Region, Series};
use crate::text::Style;

/// Values on both axes, and words.
pub type Mark = (f64, f64, String);

/// One curve, in the units that are shown.
#[derive(Debug, Default)]
pub struct Plot {
    /// Title of the axis along the bottom.
    pub x: String,
    /// Title of the axis up the side.
    pub y: String,
    /// Where the upright axis ends; taken from the data if not given. It begins at 0.
    pub most: Option<f64>,
    /// The curve's points, rising in x.
    pub points: Vec<Point>,
    /// What binds where along it.
    pub regions: Vec<Region>,
    /// Marked points.
    pub marks: Vec<Mark>,
    /// Where the cursor can stand, and what it says there.
    pub readout: Vec<(f64, String)>,
    /// What to say when there is no curve.
    pub nothing: &'static str,
}

impl Plot {
    /// Lays it out for a width.
    #[must_use]
    pub fn draw(self, style: Style, width: f64) -> Drawing {
        let label = |value: f64, decimals: u8| style.fixed(value, decimals);
        let note = |(x, y, text): Mark| Note { x, y: Some(y), text };
        Curves {
            x: Axis { title: self.x, label: &label, ..Axis::default() },
            y: Axis {
                title: self.y,
                range: self.most.map(|most| (0.0, most)),
                zero: true,
                label: &label,
            },
            series: vec![Series {
                points: self.points,
                regions: self.regions,
                ..Series::default()
            }],
            notes: self.marks.into_iter().map(note).collect(),
            readout: self.readout,
            nothing: self.nothing.into(),
            ..Curves::default()
        }
        .draw(width)
    }
}
