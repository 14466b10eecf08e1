//! The distance at every speed, with its band.

use super::curve;
use super::measure::Measure;
use crate::app::{BandCurve, Banded, Found, Sure, use_app};
use crate::chart::{Figure, value_at};
use crate::question::draws::{Draws, sketch};
use crate::text::page;
use leptos::prelude::*;
use pitchline_core::band::CurvePoint;
use std::sync::Arc;

/// The distance over speed, drawn at once; its band follows when it has been worked out.
#[component]
pub fn OverSpeed() -> impl IntoView {
    let app = use_app();
    // The band of any other answer is no reason to draw anew.
    let sure = Memo::new(move |_| app.sure(Banded::Distance));
    let speeds = Memo::new_with_compare(
        move |_| {
            let found = app.found()?;
            let points = about(&found, app.band_curve());
            Some(Arc::new(Speeds { sure: sure.get(), points, found }))
        },
        |_, _| true,
    );
    view! { <Figure sketch=sketch(move || speeds.get(), &OVER_SPEED) hint=page::ALONG_CURVE /> }
}

/// The distance at every speed.
struct Speeds {
    /// At the rider's own.
    sure: Sure,
    points: Vec<CurvePoint>,
    found: Arc<Found>,
}

impl Speeds {
    fn here(&self) -> [f64; 2] {
        self.sure.about(self.found.answers.distance.cruise.distance_m)
    }
}

/// The band at some speeds. While that of an edit is on its way the last one stands in, as wide
/// for its middle.
fn about(found: &Found, curve: BandCurve) -> Vec<CurvePoint> {
    if curve.found.is_none_or(|of| of.count == found.count) {
        return curve.points;
    }
    let along = &found.answers.distance.curve;
    let along: Vec<_> = along.iter().map(|p| (p.speed_m_s, Some(p.distance_m))).collect();
    let scaled = |point: &CurvePoint| {
        let nominal = value_at(&along, point.speed_m_s)?;
        let last = Sure { nominal: point.nominal, low: point.p10, high: point.p90, of: Some(0) };
        let [p10, p90] = last.about(nominal);
        Some(CurvePoint { nominal, p10, p90, ..*point })
    };
    curve.points.iter().filter_map(scaled).collect()
}

static OVER_SPEED: Draws<Speeds> = Draws {
    finding: |speeds, style| {
        let found = &speeds.found;
        let cruise = (found.answers.distance.cruise.speed_m_s, speeds.here());
        curve::finding(
            Measure::of(Banded::Distance, style),
            &found.answers.distance,
            &speeds.points,
            cruise,
        )
    },
    draw: |speeds, style, width| {
        let measure = Measure::of(Banded::Distance, style);
        curve::draw(measure, &speeds.points, &speeds.found.answers.distance, speeds.here(), width)
    },
    table: |speeds, style| {
        let measure = Measure::of(Banded::Distance, style);
        curve::rows(measure, style, &speeds.points, &speeds.found.answers.distance)
    },
};
