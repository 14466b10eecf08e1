//! One curve with marks on it, as a figure: what the charger and the seasons share.

use crate::ask::ALONG_CURVE;
use crate::chart::{
    Axis, Chart, Curves, Drawing, Note, Point, Region, Series, Table, chart, nothing, use_width,
};
use crate::dom::Node;
use crate::state::App;
use crate::text::Style;

/// Values on both axes, and words.
pub(super) type Mark = (f64, f64, String);

/// One curve, in the units that are shown.
#[derive(Debug, Default)]
pub(super) struct Plot {
    pub(super) x: String,
    pub(super) y: String,
    /// Where the upright axis ends; taken from the data if not given. It begins at 0.
    pub(super) most: Option<f64>,
    pub(super) points: Vec<Point>,
    pub(super) regions: Vec<Region>,
    pub(super) marks: Vec<Mark>,
    pub(super) readout: Vec<(f64, String)>,
    pub(super) nothing: &'static str,
}

impl Plot {
    pub(super) fn draw(self, style: Style, width: f64) -> Drawing {
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

/// What is asked of a figure; nothing where there is no answer.
pub(super) type Asked<T> = Box<dyn Fn(Style) -> Option<T>>;

/// Draws it, with its finding and its table.
pub(super) fn plot(
    app: App,
    finding: Asked<String>,
    plot: Asked<Plot>,
    table: Asked<Table>,
) -> Node {
    chart(Chart {
        key: Box::new(move || app.key()),
        finding: Box::new(move || finding(app.style()).unwrap_or_default()),
        draw: Box::new(move |width| {
            let style = app.style();
            plot(style).map_or_else(|| nothing(width, ""), |plot| plot.draw(style, width))
        }),
        table: Box::new(move || table(app.style()).unwrap_or_default()),
        hint: ALONG_CURVE,
        width: use_width(340.0),
        on_pick: None,
    })
}
