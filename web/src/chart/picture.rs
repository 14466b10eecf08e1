//! One small picture, whole, so that a change of layout is seen.

use super::*;

/// The places that matter, worked by hand: the name would take more than a
/// third of the width and goes into a key 22 high; two digits and their gap
/// take 22 at the left. So 10 km/h stands at 22, 30 km/h at 210, 0 km at
/// 162 - 38 = 124, 20 km at 22 + 26 = 48 and 10 km halfway, at 86.
#[test]
fn a_small_chart_of_curves() {
    let chart = Curves {
        x: Axis { title: "km/h".into(), range: Some((10.0, 30.0)), ..Axis::default() },
        y: Axis { title: "km".into(), zero: true, ..Axis::default() },
        series: vec![Series {
            name: "Gannet".into(),
            points: vec![(10.0, Some(20.0)), (30.0, Some(10.0))],
            ..Series::default()
        }],
        height: 140.0,
        ..Curves::default()
    };
    let drawn = svg(&chart.draw(220.0), "Slower goes farther");
    assert_eq!(drawn, DRAWN);
}

const DRAWN: &str = r#"<svg xmlns="http://www.w3.org/2000/svg" class="chart-svg" role="img" width="220" height="162" viewBox="0 0 220 162" aria-label="Slower goes farther">
<path class="c-line s1" d="M2 8L22 8"/>
<text class="c-name" x="26" y="12" text-anchor="start">Gannet</text>
<path class="c-zero" d="M22 124L210 124"/>
<text class="c-tick" x="16" y="128" text-anchor="end">0</text>
<path class="c-grid" d="M22 86L210 86"/>
<text class="c-tick" x="16" y="90" text-anchor="end">10</text>
<path class="c-grid" d="M22 48L210 48"/>
<text class="c-tick" x="16" y="52" text-anchor="end">20</text>
<path class="c-base" d="M22 124L210 124"/>
<path class="c-base" d="M22 124L22 128"/>
<text class="c-tick" x="22" y="141" text-anchor="middle">10</text>
<path class="c-base" d="M69 124L69 128"/>
<text class="c-tick" x="69" y="141" text-anchor="middle">15</text>
<path class="c-base" d="M116 124L116 128"/>
<text class="c-tick" x="116" y="141" text-anchor="middle">20</text>
<path class="c-base" d="M163 124L163 128"/>
<text class="c-tick" x="163" y="141" text-anchor="middle">25</text>
<path class="c-base" d="M210 124L210 128"/>
<text class="c-tick" x="210" y="141" text-anchor="middle">30</text>
<text class="c-title" x="0" y="34" text-anchor="start">km</text>
<text class="c-title" x="210" y="157" text-anchor="end">km/h</text>
<path class="c-line s1" d="M22 48L210 86"/>
</svg>"#;
