//! Answers in words: the three that stay in view, and what they share.

use super::{Style, page, percent, sure, words};
use pitchline_core::ride::{RideEnd, SagCause};
use pitchline_core::{Answers, Limit, Reach, Steepest, TopSpeed, Unit};

/// What an answer says.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// What it is.
    pub name: String,
    /// The number, or the band that it lies in.
    pub figure: String,
    /// Its unit.
    pub unit: &'static str,
    /// What holds it there.
    pub limit: String,
}

impl Answer {
    /// In place of an answer where a part is missing.
    #[must_use]
    pub fn none() -> Self {
        Self { name: page::NO_FIGURES.into(), figure: "–".into(), ..Self::default() }
    }

    /// With the sentence that explains it in place of the few words of its limit.
    #[must_use]
    pub fn explained(mut self, why: &str) -> Self {
        let range = match &*self.figure {
            figure if figure.starts_with("0–") => sure::CALCULATED_UP_TO,
            figure if figure.contains('–') => sure::CALCULATED,
            _ => "",
        };
        self.limit = [why, range].join(" ").trim_end().into();
        self
    }

    /// Figure and unit, as they are spoken: a dash is passed over in speech.
    #[must_use]
    pub fn spoken(&self) -> String {
        let figure = self.figure.replace('–', " to ");
        if self.unit.is_empty() { figure } else { format!("{figure} {}", self.unit) }
    }
}

/// What binds, in words below an answer.
#[must_use]
pub fn bound(limit: Limit) -> String {
    format!("Limit: {}", words::limit_short(limit))
}

/// A top speed, in whole units: no band supports more.
#[must_use]
pub fn speed(name: String, top: TopSpeed, band_m_s: [f64; 2], style: Style) -> Answer {
    let shown = style.units.shown(Unit::KilometrePerHour);
    // What does not move has no range.
    let band_m_s = if top.speed_m_s > 0.0 { band_m_s } else { [0.0; 2] };
    let band = band_m_s.map(|v| style.shown_si(v, Unit::KilometrePerHour));
    Answer { name, figure: style.span(band, 0), unit: shown.symbol, limit: bound(top.limit) }
}

/// A hill, in whole percent: no band supports more.
#[must_use]
pub fn hill(name: String, found: Steepest, band: [f64; 2], style: Style) -> Answer {
    let limit = bound(found.limit);
    if found.grade < 0.0 {
        return Answer { name, figure: page::NOT_FLAT.into(), unit: "", limit };
    }
    // What cannot climb does not climb down.
    let band = band.map(|grade| grade.max(0.0) * 100.0);
    Answer { name, figure: style.span(band, 0), unit: "%", limit }
}

/// What ends the distance at a steady speed, in a few words, and at which charge.
fn ends_at(reach: &Reach) -> String {
    let left = percent(reach.end_charge);
    let why = words::met(reach.limit, reach.sag);
    match (reach.end, reach.sag) {
        (RideEnd::Time, _) => format!("Still going after 24\u{a0}h, with {left} charge left"),
        (_, Some(SagCause::LowCharge)) => format!("Ends at {left} charge"),
        _ => format!("Ends at {left} charge: {why}"),
    }
}

/// The distance at the rider's speed.
#[must_use]
pub fn distance(name: String, answers: &Answers, band_m: [f64; 2], style: Style) -> Answer {
    let reach = answers.distance.cruise;
    let shown = style.units.shown(Unit::Kilometre);
    if reach.distance_m <= 0.0 {
        let limit = format!("It can't get moving: {}", words::met(reach.limit, reach.sag));
        return Answer { name, figure: "0".into(), unit: shown.symbol, limit };
    }
    let limit = if reach.wish_m_s < reach.speed_m_s {
        format!("Can't go that fast: {} at most", style.speed_unit(reach.wish_m_s))
    } else {
        ends_at(&reach)
    };
    let decimals = style.distance_decimals(band_m);
    let figure = style.span(band_m.map(|far| style.shown_si(far, Unit::Kilometre)), decimals);
    Answer { name, figure, unit: shown.symbol, limit }
}

/// From which charge, unless the pack is full.
#[must_use]
pub fn from_charge(answers: &Answers) -> String {
    let start = answers.distance.cruise.start_charge;
    if start < 0.9995 { format!(", from {} charge", percent(start)) } else { String::new() }
}

/// The first answer of the strip.
#[must_use]
pub fn top_speed(answers: &Answers, band_m_s: [f64; 2], style: Style) -> Answer {
    speed(page::TOP_SPEED.into(), answers.speed.flat_full, band_m_s, style)
}

/// The second.
#[must_use]
pub fn slow_hill(answers: &Answers, band: [f64; 2], style: Style) -> Answer {
    let found = answers.climb.slow;
    let name = format!("{} {}", page::HILL, style.speed_unit(found.speed_m_s));
    hill(name, found, band, style)
}

/// The three in a sentence, for who hears them.
#[must_use]
pub fn aloud(speed: &Answer, hill: &Answer, distance: &Answer) -> String {
    let climbs = if hill.figure == page::NOT_FLAT {
        let speed = hill.name.trim_start_matches(page::HILL).trim_start();
        format!("can't hold {speed} on the flat")
    } else {
        format!("steepest hill {}", hill.spoken())
    };
    format!("Top speed {}, {climbs}, distance {}.", speed.spoken(), distance.spoken())
}

/// The third.
#[must_use]
pub fn cruise_distance(answers: &Answers, band_m: [f64; 2], style: Style) -> Answer {
    let speed = style.speed_unit(answers.distance.cruise.speed_m_s);
    let name = format!("{} {speed}{}", page::DISTANCE, from_charge(answers));
    distance(name, answers, band_m, style)
}
