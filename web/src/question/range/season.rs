//! The board in the cold, and as it grows old.

use crate::app::use_app;
use crate::chart::{Figure, Table};
use crate::question::draws::{Draws, sketch};
use crate::question::plot::Plot;
use crate::text::range as said;
use crate::text::{Style, page};
use leptos::prelude::*;
use pitchline_core::{Build, Drive, SLOW_M_S, SeasonPoint, Unit, by_age, by_temperature};
use std::sync::{Arc, OnceLock};

/// The board through the year and through its years.
struct Found {
    temperature: Vec<SeasonPoint>,
    age: Vec<SeasonPoint>,
    /// As it is now: temperature, °C, cycles, distance, m, and speed, m/s.
    air_c: f64,
    cycles: f64,
    distance_m: f64,
    cruise_m_s: f64,
}

impl Found {
    fn of(build: &Build) -> Self {
        let cruise_m_s = build.ride.cruise_m_s;
        Self {
            temperature: by_temperature(build),
            age: by_age(build),
            air_c: build.place.air_c,
            cycles: build.pack.cycles,
            distance_m: Drive::new(build).reach(cruise_m_s).distance_m,
            cruise_m_s,
        }
    }
}

/// One of the two curves.
struct Curve {
    points: fn(&Found) -> &[SeasonPoint],
    /// Along the bottom.
    of: fn(&SeasonPoint) -> f64,
    unit: Unit,
    /// Name of that in the table.
    head: &'static str,
    /// Where the board stands now.
    here: fn(&Found) -> f64,
    /// Words for it.
    yours: &'static str,
    /// What its table opens with, and its caption.
    table: [&'static str; 2],
    /// One in so many points is a row of the table.
    each: usize,
    /// Two of the points, and how they are told.
    ends: [f64; 2],
    finding: fn([String; 2], [String; 2]) -> String,
}

static TEMPERATURE: Curve = Curve {
    points: |found| &found.temperature,
    of: |point| point.air_c,
    unit: Unit::Celsius,
    head: said::COLD_HEAD,
    here: |found| found.air_c,
    yours: said::YOUR_AIR,
    table: said::COLD_TABLE,
    each: 1,
    ends: [0.0, 25.0],
    finding: said::by_temperature,
};

static AGE: Curve = Curve {
    points: |found| &found.age,
    of: |point| point.cycles,
    unit: Unit::Cycles,
    head: said::OLD_HEAD,
    here: |found| found.cycles,
    yours: said::YOUR_PACK,
    table: said::OLD_TABLE,
    each: 2,
    ends: [500.0, 0.0],
    finding: said::by_age,
};

/// The board in the cold, and as it grows old.
#[component]
pub(super) fn Seasons() -> impl IntoView {
    let app = use_app();
    let seasons = Memo::new_with_compare(
        move |_| {
            let build = app.found()?.build;
            Some(Arc::new(Unseen { build, found: OnceLock::new() }))
        },
        |_, _| true,
    );
    let drawn = |draws| {
        let sketch = sketch(move || seasons.get(), draws);
        view! { <Figure sketch hint=page::ALONG_CURVE /> }
    };
    view! {
        {drawn(&BY_TEMPERATURE)}
        <p class="help">{said::COLD}</p>
        {drawn(&BY_AGE)}
        <p class="help">{said::OLD}</p>
    }
}

/// The temperature that riders ask of first, °C.
const FREEZING_C: f64 = 0.0;

/// How far it goes in the cold, in a few words.
pub(super) fn hint(found: &crate::app::Found, style: Style) -> String {
    let mut build = found.build;
    build.place.air_c = FREEZING_C;
    let reach = Drive::new(&build).reach(build.ride.cruise_m_s);
    said::cold_hint(reach.distance_m, FREEZING_C, style)
}

/// Worked out once one of the curves is seen: it takes half as long as all answers together.
struct Unseen {
    build: Build,
    found: OnceLock<Found>,
}

impl Unseen {
    fn see(&self) -> &Found {
        self.found.get_or_init(|| Found::of(&self.build))
    }
}

static BY_TEMPERATURE: Draws<Unseen> = Draws {
    finding: |seasons, style| TEMPERATURE.finding(seasons.see(), style),
    draw: |seasons, style, width| TEMPERATURE.plot(seasons.see(), style).draw(style, width),
    table: |seasons, style| TEMPERATURE.table(seasons.see(), style),
};

static BY_AGE: Draws<Unseen> = Draws {
    finding: |seasons, style| AGE.finding(seasons.see(), style),
    draw: |seasons, style, width| AGE.plot(seasons.see(), style).draw(style, width),
    table: |seasons, style| AGE.table(seasons.see(), style),
};

impl Curve {
    fn finding(&self, found: &Found, style: Style) -> String {
        let near = |value: f64| {
            let points = (self.points)(found).iter();
            points.min_by(|a, b| {
                ((self.of)(a) - value).abs().total_cmp(&((self.of)(b) - value).abs())
            })
        };
        let goes = |value: f64| match near(value) {
            Some(point) if point.full_wish_m > 0.0 => {
                said::goes(Some(point.distance_m), found.cruise_m_s, style)
            }
            _ => said::goes(None, found.cruise_m_s, style),
        };
        let at = |value: f64| style.quantity(value, self.unit, 3);
        (self.finding)(self.ends.map(at), self.ends.map(goes))
    }

    fn plot(&self, found: &Found, style: Style) -> Plot {
        let shown = style.units.shown(self.unit);
        let km = |distance_m: f64| style.shown_si(distance_m, Unit::Kilometre);
        let points = (self.points)(found);
        let stop = |point: &SeasonPoint| {
            let x = (self.of)(point);
            let place = style.quantity(x, self.unit, 3);
            let text = said::season_at(&place, point.distance_m, point.top_m_s, style);
            (shown.from_file(x), text)
        };
        let point = |p: &SeasonPoint| (shown.from_file((self.of)(p)), Some(km(p.distance_m)));
        let here = (shown.from_file((self.here)(found)), km(found.distance_m), self.yours.into());
        Plot {
            x: shown.symbol.into(),
            y: said::distance_axis(style.units.shown(Unit::Kilometre).symbol),
            points: points.iter().map(point).collect(),
            marks: vec![here],
            readout: points.iter().map(stop).collect(),
            ..Plot::default()
        }
    }

    fn table(&self, found: &Found, style: Style) -> Table {
        let row = |point: &SeasonPoint| {
            vec![
                style.value((self.of)(point), self.unit, 3),
                style.distance(point.distance_m),
                style.significant(point.usable_wh, 2),
                style.speed(point.top_m_s),
                style.fixed(point.grade * 100.0, 0),
            ]
        };
        let [label, caption] = self.table.map(String::from);
        Table {
            label,
            caption,
            heads: said::season_heads(
                format!("{}, {}", self.head, style.units.shown(self.unit).symbol),
                SLOW_M_S,
                style,
            ),
            rows: (self.points)(found).iter().step_by(self.each).map(row).collect(),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::text::Units;
    use pitchline_core::{Build, Draft, Slot};

    fn of(draft: &Draft) -> Found {
        Found::of(&Build::check(draft).expect("in range"))
    }

    #[test]
    fn both_ends_are_told() {
        let mut draft = Draft::typical();
        let found = of(&draft);
        let style = Style::default();
        assert!(found.temperature.iter().any(|p| p.air_c == 0.0), "a point to tell");
        assert!(found.age.iter().any(|p| p.cycles == 500.0), "a point to tell");
        let cold = TEMPERATURE.finding(&found, style).replace('\u{a0}', " ");
        assert!(
            cold.starts_with("At 0 °C it goes ") && cold.contains(". At 25 °C it goes "),
            "{cold}"
        );
        let old = AGE.finding(&found, style).replace('\u{a0}', " ");
        assert!(
            old.starts_with("With a new pack it goes ")
                && old.contains(". After 500 cycles it goes "),
            "{old}"
        );
        let miles = Style { units: Units::Imperial, comma: false };
        let cold = TEMPERATURE.finding(&found, miles).replace('\u{a0}', " ");
        assert!(cold.starts_with("At 32 °F ") && cold.contains(". At 77 °F "), "{cold}");
        // Far beyond the typical board.
        draft.set(Slot::Ride, "cruise_km_h", 100.0);
        let fast = TEMPERATURE.finding(&of(&draft), style);
        assert!(fast.contains("it doesn't reach 100\u{a0}km/h"), "{fast}");
    }

    /// Your own board is marked on the curve, wherever it stands.
    #[test]
    fn your_board_stands_on_its_curve() {
        let mut draft = Draft::typical();
        draft.set(Slot::Place, "air_c", 5.0);
        draft.set(Slot::Pack, "cycles", 150.0);
        let found = of(&draft);
        for curve in [&TEMPERATURE, &AGE] {
            let here = (curve.here)(&found);
            let point = (curve.points)(&found).iter().find(|p| (curve.of)(p) == here);
            let distance_m = point.expect("a point there").distance_m;
            assert!((distance_m - found.distance_m).abs() < 1e-6 * distance_m);
        }
    }
}
