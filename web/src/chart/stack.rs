//! Small charts one above the other over one axis, with one cursor through all of them.

use super::axis::{Axis, Plot, widest};
use super::band::area;
use super::curves::{BANDS, MOST_SERIES, Series, bounds, key, name, strokes};
use super::labels::{Labels, SAMPLE};
use super::line::value_at;
use super::mark::{Anchor, CursorStop, Drawing, Follow, Mark};
use super::measure::{held_width, text_width};
use super::nothing::nothing;
use super::scale::{Linear, extent};
use super::tick::{round_out, ticks};

/// Room for a panel's title, and below its plot.
const TITLE: f64 = 22.0;
const BELOW: f64 = 8.0;
/// Room between a key and its plot, for the topmost marked value.
const KEY: f64 = 2.0;
/// Room for the marked values and the title of the axis.
const AXIS: f64 = 38.0;

/// One of the charts.
#[derive(Clone, Debug)]
pub struct Panel<'a> {
    /// The axis up its side.
    pub y: Axis<'a>,
    /// Its curves; only the first four are drawn.
    pub series: Vec<Series>,
    /// Height of its plot in logical pixels.
    pub height: f64,
}

/// Charts over one axis.
#[derive(Clone, Debug, Default)]
pub struct Stack<'a> {
    /// The axis along the bottom, for all of them.
    pub x: Axis<'a>,
    /// The charts from top to bottom; one without a curve is left out.
    pub panels: Vec<Panel<'a>>,
    /// Where the cursor can stand, rising in x, and what it says there.
    pub readout: Vec<(f64, String)>,
    /// What to say when there is no curve.
    pub nothing: String,
}

/// A panel with its place on the value axis.
struct Laid<'p, 'a> {
    panel: &'p Panel<'a>,
    series: &'p [Series],
    ends: (f64, f64),
    words: Vec<(f64, String)>,
}

impl Stack<'_> {
    /// Lays the charts out for a width in logical pixels (held within 200 and
    /// 2000).
    pub fn draw(&self, width: f64) -> Drawing {
        let width = held_width(width);
        let mut laid = Vec::new();
        let mut x_data: Option<(f64, f64)> = None;
        for panel in &self.panels {
            let series = panel.series.get(..MOST_SERIES).unwrap_or(&panel.series);
            let Some((x, y)) = bounds(series) else { continue };
            let ends = [x_data.map_or(x.0, |d| d.0), x_data.map_or(x.1, |d| d.1), x.0, x.1];
            x_data = extent(ends.into_iter());
            let rows = ((panel.height / 30.0) as usize).clamp(3, 6);
            let mut ends = panel.y.ends(y);
            if panel.y.range.is_none() {
                ends = round_out(ends.0, ends.1, rows);
            }
            let words = panel.y.words(&ticks(ends.0, ends.1, rows), 64.0);
            laid.push(Laid { panel, series, ends, words });
        }
        let Some(x_data) = x_data else { return nothing(width, &self.nothing) };
        let x_ends = self.x.ends(x_data);
        // One left and one right edge for all: the same time is at the same place.
        let left = laid.iter().map(|one| widest(&one.words) + 8.0).fold(14.0, f64::max);
        let names = laid.iter().flat_map(|one| one.series).map(|s| text_width(&s.name));
        let names = names.fold(0.0, f64::max);
        let wide = names + SAMPLE + 8.0;
        // Beside the curves they may take a sixth of the width, else they stand in a key.
        let keyed = wide > width / 6.0;
        let beside = if names > 0.0 && !keyed { wide } else { 10.0 };
        let right = (width - beside).max(left + 80.0);
        let x = Linear::new(x_ends.0, x_ends.1, left, right);

        let (mut marks, mut plots, mut base) = (Vec::new(), Vec::new(), 0.0);
        for one in &laid {
            let named = one.series.iter().any(|series| !series.name.is_empty());
            let title = one.panel.y.title.clone();
            marks.push(Mark::text("c-title", 0.0, base + 12.0, Anchor::Start, title));
            let top = if keyed && named {
                key(one.series, (base + TITLE, width), &mut marks) + KEY
            } else {
                base + TITLE
            };
            let bottom = top + one.panel.height;
            let y = Linear::new(one.ends.0, one.ends.1, bottom, top);
            let plot = Plot { left, top, right, bottom, x, y };
            plot.rows(&one.words, &mut marks);
            let mut labels = Labels::new((left, width), (top - 8.0, bottom + BELOW));
            for (n, series) in one.series.iter().enumerate() {
                let d = area(&series.band, &plot);
                if !d.is_empty() {
                    marks.push(Mark::Path { class: BANDS[n], d });
                }
            }
            let mut ends = Vec::new();
            for (n, series) in one.series.iter().enumerate() {
                let drawn = strokes(series, n, &plot, &mut marks);
                // The plot's own curves stand at its left: names only keep off each other.
                ends.push(drawn.last().map(|piece| piece.1));
            }
            for (n, (series, end)) in one.series.iter().zip(ends).enumerate() {
                if let (Some(end), false) = (end, keyed || series.name.is_empty()) {
                    name(series, n, (right, end.1), &mut labels, &mut marks);
                }
            }
            plots.push(plot);
            base = bottom + BELOW;
        }
        if let Some(last) = plots.last() {
            last.columns(&self.x, width, &mut marks);
            let (title, at) = (self.x.title.clone(), base - BELOW + AXIS - 5.0);
            marks.push(Mark::text("c-title", right, at, Anchor::End, title));
        }
        let points = self.stops(&laid, &plots);
        Drawing {
            width,
            height: base - BELOW + AXIS,
            marks,
            home: points.len() / 2,
            points,
            follow: Follow::Rule {
                top: plots.first().map_or(0.0, |plot| plot.top),
                bottom: plots.last().map_or(0.0, |plot| plot.bottom),
            },
        }
    }

    fn stops(&self, laid: &[Laid<'_, '_>], plots: &[Plot]) -> Vec<CursorStop> {
        let Some(first) = plots.first() else { return Vec::new() };
        let ys = |x: f64| {
            let each = laid.iter().zip(plots);
            let each = each.flat_map(|(one, plot)| one.series.iter().map(move |s| (s, plot)));
            each.filter_map(|(s, plot)| Some(plot.place(x, value_at(&s.points, x)?)?.1)).collect()
        };
        let inside = self.readout.iter().filter(|r| first.x.holds(r.0));
        inside
            .enumerate()
            .map(|(col, (x, text))| CursorStop {
                x: first.x.at(*x),
                ys: ys(*x),
                row: 0,
                col,
                text: text.clone(),
            })
            .collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn panel(title: &str, series: &[(&str, [f64; 3])]) -> Panel<'static> {
        let series = series.iter().map(|(name, values)| Series {
            name: (*name).into(),
            points: [0.0, 10.0, 20.0].into_iter().zip(values.map(Some)).collect(),
            ..Series::default()
        });
        Panel {
            y: Axis { title: title.into(), zero: true, ..Axis::default() },
            series: series.collect(),
            height: 72.0,
        }
    }

    fn stack() -> Stack<'static> {
        Stack {
            x: Axis { title: "minutes".into(), ..Axis::default() },
            panels: vec![
                panel("speed, km/h", &[("", [0.0, 20.0, 10.0])]),
                panel("°C", &[("windings", [20.0, 60.0, 80.0]), ("cells", [20.0, 25.0, 30.0])]),
                panel("nothing", &[]),
            ],
            readout: vec![(0.0, "start".into()), (10.0, "middle".into()), (99.0, "out".into())],
            nothing: "No ride.".into(),
        }
    }

    /// By hand: two panels of 72 with titles of 22, a gap of 8 between, and 38 for the axis.
    #[test]
    fn panels_share_one_axis_and_one_cursor() {
        let drawing = stack().draw(700.0);
        let height = 22.0 + 72.0 + 8.0 + 22.0 + 72.0 + 38.0;
        assert_eq!(drawing.height, height);
        // On a phone names stand in a key over their chart, 22 and a gap of 2, and the curves
        // have the width.
        assert_eq!(stack().draw(340.0).height, height + 24.0);
        assert_eq!(drawing.follow, Follow::Rule { top: 22.0, bottom: 196.0 });
        // What lies outside is left out; a stop has a dot on every curve.
        assert_eq!(drawing.points.len(), 2);
        assert_eq!(drawing.points[1].text, "middle");
        // 20 of 20 km/h at the top; 60 and 25 of 100 degrees of 72 pixels above 196, since 80 in
        // two steps are rounded out to two of 50.
        assert_eq!(drawing.points[1].ys, [22.0, 196.0 - 43.2, 196.0 - 18.0]);
        let text = |mark: &Mark| match mark {
            Mark::Text { text, .. } => Some(text.clone()),
            _ => None,
        };
        let texts: Vec<_> = drawing.marks.iter().filter_map(text).collect();
        for wanted in ["speed, km/h", "windings", "cells", "minutes", "100"] {
            assert!(texts.iter().any(|t| t == wanted), "{texts:?}");
        }
        assert!(!texts.iter().any(|t| t == "nothing"));
    }

    #[test]
    fn without_a_curve_it_says_so() {
        let empty = Stack { panels: Vec::new(), ..stack() };
        assert!(empty.draw(340.0).points.is_empty());
        assert_eq!(empty.draw(340.0), nothing(340.0, "No ride."));
    }

    #[test]
    fn nothing_leaves_the_drawing() {
        for width in [200.0, 340.0, 700.0] {
            let drawing = stack().draw(width);
            for mark in &drawing.marks {
                if let Mark::Text { x, y, text, anchor, .. } = mark {
                    let size = text_width(text);
                    let left = match anchor {
                        Anchor::Start => *x,
                        Anchor::Middle => x - size / 2.0,
                        Anchor::End => x - size,
                    };
                    assert!(
                        left >= -0.5 && left + size <= width + 0.5,
                        "{text} at {left}, {width}"
                    );
                    assert!(*y > 0.0 && *y < drawing.height, "{text}");
                }
            }
        }
    }
}
