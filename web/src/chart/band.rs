//! The area between a low and a high curve.

use super::axis::Plot;
use super::mark::step;
use super::scale::within;

/// One place of a band: where, low, high.
pub type Span = (f64, f64, f64);

/// Path data of the area, held inside the plot. A place that is not finite
/// leaves a gap.
pub(super) fn area(spans: &[Span], plot: &Plot) -> String {
    let mut d = String::new();
    for run in spans.split(|(x, low, high)| !(x + low + high).is_finite()) {
        let mut edge: Vec<Span> = Vec::new();
        for pair in run.windows(2) {
            let (from, to) = (place(pair[0], plot), place(pair[1], plot));
            if to.0 < plot.left || from.0 > plot.right {
                continue;
            }
            for at in [from.0.max(plot.left), to.0.min(plot.right)] {
                let cut = between(from, to, at);
                if edge.last().is_none_or(|last| last.0 < cut.0) {
                    edge.push(cut);
                }
            }
        }
        if edge.len() < 2 {
            continue;
        }
        let y = |v: f64| within(v, plot.top, plot.bottom);
        for (n, (x, _, high)) in edge.iter().enumerate() {
            step(&mut d, if n == 0 { 'M' } else { 'L' }, *x, y(*high));
        }
        for (x, low, _) in edge.iter().rev() {
            step(&mut d, 'L', *x, y(*low));
        }
        d.push('Z');
    }
    d
}

fn place((x, low, high): Span, plot: &Plot) -> Span {
    (plot.x.at(x), plot.y.at(low), plot.y.at(high))
}

/// The span at `at`, straight between two spans.
fn between(from: Span, to: Span, at: f64) -> Span {
    if to.0 <= from.0 || at <= from.0 {
        return (at, from.1, from.2);
    }
    let part = ((at - from.0) / (to.0 - from.0)).min(1.0);
    let mix = |a: f64, b: f64| a + (b - a) * part;
    (at, mix(from.1, to.1), mix(from.2, to.2))
}

#[cfg(test)]
mod tests {
    use super::super::scale::Linear;
    use super::*;

    fn plot() -> Plot {
        Plot {
            left: 0.0,
            top: 0.0,
            right: 100.0,
            bottom: 100.0,
            x: Linear::new(0.0, 100.0, 0.0, 100.0),
            y: Linear::new(0.0, 100.0, 0.0, 100.0),
        }
    }

    #[test]
    fn there_along_the_high_edge_and_back_along_the_low() {
        let spans = [(0.0, 10.0, 20.0), (50.0, 30.0, 60.0)];
        assert_eq!(area(&spans, &plot()), "M0 20L50 60L50 30L0 10Z");
    }

    #[test]
    fn cut_at_the_sides_by_its_own_slope() {
        let spans = [(-50.0, 0.0, 40.0), (50.0, 20.0, 60.0)];
        assert_eq!(area(&spans, &plot()), "M0 50L50 60L50 20L0 10Z");
    }

    #[test]
    fn gaps_and_lone_places_draw_nothing_wrong() {
        assert_eq!(area(&[], &plot()), "");
        assert_eq!(area(&[(5.0, 1.0, 2.0)], &plot()), "");
        let spans = [
            (0.0, 10.0, 20.0),
            (20.0, 10.0, 20.0),
            (30.0, f64::NAN, 1.0),
            (40.0, 10.0, 20.0),
            (60.0, 10.0, 20.0),
        ];
        assert_eq!(area(&spans, &plot()), "M0 20L20 20L20 10L0 10ZM40 20L60 20L60 10L40 10Z");
    }
}
