//! The gear map: every pairing on offer, and a tap to adopt one.

use super::offer::{Offer, Suggestion, job, teeth, wheel};
use crate::app::{MapView, Task, use_app};
use crate::chart::{Cell, Drawing, Figure, Map, Sketch, Table};
use crate::component::{Choice, Options};
use crate::question::{InputAs, SUGGESTED, TaskLine, kept};
use crate::text::speed::{self as said, Pairing};
use crate::text::{Style, percent, words};
use leptos::prelude::*;
use pitchline_core::fit::Severity;
use pitchline_core::{GearCell, Record, Ride, SLOW_M_S, Slot, Unit};
use std::sync::Arc;

const VIEWS: [MapView; 4] = [MapView::Speed, MapView::HillSpeed, MapView::Distance, MapView::Hill];

/// Rows of a table that holds every pairing; of more it holds those with the wheel on the board.
const ROWS: usize = 200;

impl MapView {
    fn key(self) -> &'static str {
        match self {
            Self::Speed => "speed",
            Self::HillSpeed => "hill-speed",
            Self::Distance => "distance",
            Self::Hill => "hill",
        }
    }

    fn words(self, ride: &Ride, style: Style) -> String {
        let (cruise, grade) = wishes(ride, style);
        match self {
            Self::Speed => said::MAP_SPEED.into(),
            Self::HillSpeed => said::map_hill_speed(&grade),
            Self::Distance => said::map_distance(&cruise),
            Self::Hill => said::map_hill(SLOW_M_S, style),
        }
    }

    fn unit(self) -> Unit {
        match self {
            Self::Speed | Self::HillSpeed => Unit::KilometrePerHour,
            Self::Distance => Unit::Kilometre,
            Self::Hill => Unit::Percent,
        }
    }

    fn value(self, cell: &GearCell) -> f64 {
        match self {
            Self::Speed => cell.top_speed_m_s,
            Self::HillSpeed => cell.hill_speed_m_s,
            Self::Distance => cell.distance_m,
            Self::Hill => cell.grade.max(0.0),
        }
    }
}

/// The rider's cruising speed and hill, in words.
fn wishes(ride: &Ride, style: Style) -> (String, String) {
    (style.speed_unit(ride.cruise_m_s), style.entered_percent(ride.grade))
}

/// What was worked out last; none until then.
type Last = RwSignal<Option<Arc<Offer>>>;

/// The map, with what it shows of each pairing to choose from.
#[component]
pub(super) fn GearMap() -> impl IntoView {
    let (app, last) = (use_app(), Last::default());
    let task = Task::new(
        move || _ = app.found(),
        move || {
            let done = move |offer| last.set(Some(Arc::new(offer)));
            Some(job(app.found()?, app.fit()?, &app.catalog(), done))
        },
    );
    let sketch = kept(Box::new(move || {
        let (offer, view, style) = (last.get()?, app.map_view(), app.style());
        let (told, rowed) = (offer.clone(), offer.clone());
        Some(Sketch::new(
            move || finding(&told, style),
            move |width| draw(&offer, view, style, width),
            move || rows(&rowed, style),
        ))
    }));
    let picked = move |stop| {
        if let Some(picks) = last.get_untracked().and_then(|offer| offer.pairing(stop)) {
            app.pick_all(&picks);
        }
    };
    let left = move || last.with(|offer| offer.as_ref().map(|offer| left_out(offer)));
    view! {
        <div class="gear-map">
            <div class="suggested" id=SUGGESTED tabindex="-1">
                <Suggested last />
            </div>
            // What it is suggested for.
            <div class="fields wishes">
                <InputAs of=Slot::Rider key="mass_kg" place="gears" label=said::WISHES[0] />
                <InputAs of=Slot::Ride key="cruise_km_h" place="gears" label=said::WISHES[1] />
                <InputAs of=Slot::Ride key="grade_percent" place="gears" label=said::WISHES[2] />
            </div>
            <Picks last />
            <p class="help">{said::TAP} " " {left}</p>
            <TaskLine task />
            <Figure sketch hint=said::ALONG_MAP on_pick=picked />
        </div>
    }
}

/// Which parts the map leaves out; nothing where it has all.
pub(super) fn left_out(offer: &Offer) -> String {
    let kinds = [
        (Slot::Wheel, &offer.wheels),
        (Slot::WheelPulley, &offer.wheel_pulleys),
        (Slot::MotorPulley, &offer.motor_pulleys),
    ];
    let some = kinds.into_iter().filter(|(_, kind)| kind.all > kind.list.len());
    let said = some.map(|(slot, kind)| {
        let name = words::slot(slot).to_ascii_lowercase();
        said::left_out(&name, kind.list.len(), kind.all)
    });
    said.collect::<Vec<_>>().join(" ")
}

/// What is shown, and with which wheel.
#[component]
fn Picks(last: Last) -> impl IntoView {
    let app = use_app();
    let wheels = Memo::new(move |_| {
        let style = app.style();
        last.with(|offer| {
            let wheels = &offer.as_ref()?.wheels;
            Some(Options {
                chosen: wheels.list.get(wheels.here).map(|w| w.id.clone()).unwrap_or_default(),
                list: wheels.list.iter().map(|w| (w.id.clone(), wheel(w, style))).collect(),
            })
        })
        .unwrap_or_default()
    });
    let shows = Memo::new(move |_| {
        let (view, style) = (app.map_view(), app.style());
        let words = |ride: &Ride| {
            VIEWS.iter().map(|view| (view.key().into(), view.words(ride, style))).collect()
        };
        Options {
            list: app.found().map(|found| words(&found.build.ride)).unwrap_or_default(),
            chosen: view.key().into(),
        }
    });
    let show = move |pick: String| {
        let found = VIEWS.into_iter().find(|view| view.key() == pick);
        app.show_map(found.unwrap_or_default());
    };
    let pick = move |id: String| app.pick(Slot::Wheel, &id);
    let [shown, on_board] = said::MAP_LABELS;
    view! {
        <div class="fields">
            <Choice id="map-shows".into() label=shown options=shows picked=show />
            <Choice id="map-wheel".into() label=on_board options=wheels picked=pick />
        </div>
    }
}

/// The best pairing, what it would break, and a button that puts it on the board.
#[component]
fn Suggested(last: Last) -> impl IntoView {
    let app = use_app();
    let adopt = move |_| {
        if let Some(picks) = last.get_untracked().and_then(|offer| offer.better()) {
            app.pick_all(&picks);
        }
    };
    move || {
        let (offer, style) = (last.get()?, app.style());
        let best = offer.best.as_ref()?;
        let button = (!offer.is_here(&best.cell)).then(|| {
            view! {
                <button type="button" on:click=adopt>
                    {said::USE}
                </button>
            }
        });
        Some(view! {
            <p>{suggestion(&offer, best, style)}</p>
            {button}
        })
    }
}

fn at(list: &[Record], place: usize, slot: Slot) -> String {
    list.get(place).map(|record| teeth(record, slot)).unwrap_or_default()
}

/// The teeth of a pairing: motor pulley, wheel pulley.
fn pulleys(offer: &Offer, cell: &GearCell) -> [String; 2] {
    [
        at(&offer.motor_pulleys.list, cell.motor_pulley, Slot::MotorPulley),
        at(&offer.wheel_pulleys.list, cell.wheel_pulley, Slot::WheelPulley),
    ]
}

/// What is suggested and why, what it needs, and what it would break.
pub(super) fn suggestion(offer: &Offer, best: &Suggestion, style: Style) -> String {
    let [motor, wheel_pulley] = pulleys(offer, &best.cell);
    let of = |severity| {
        let such = best.breaks.iter().filter(move |misfit| misfit.severity == severity);
        such.map(|misfit| said::misfit(&misfit.kind)).collect::<Vec<_>>()
    };
    let (unfit, tight) = (of(Severity::DoesNotFit), of(Severity::Tight));
    let wheel = offer.wheels.list.get(best.cell.wheel).map(|record| wheel(record, style));
    let (here, holds) = (offer.is_here(&best.cell), offer.meets(&best.cell));
    let on_board = offer.cells.iter().find(|cell| offer.is_here(cell)).filter(|_| holds && !here);
    let yours = on_board
        .map(|cell| said::yours(offer.meets(cell).then(|| style.distance_unit(cell.distance_m))));
    let pairing = Pairing {
        motor,
        wheel_pulley,
        wheel: wheel.unwrap_or_default(),
        far: style.distance_unit(best.cell.distance_m),
        climbs: percent(best.cell.grade.max(0.0)),
        holds: holds.then(|| wishes(&offer.ride, style)),
        here,
        alike: best.alike,
        breaks: !best.breaks.is_empty(),
    };
    let mut text = pairing.said();
    if let Some(belt) = &best.belt {
        text.push(' ');
        text.push_str(&said::needs_belt(&belt.name));
    }
    for (names, unfit) in [(unfit, true), (tight, false)] {
        if !names.is_empty() {
            text.push(' ');
            text.push_str(&said::would_break(&names, unfit));
        }
    }
    if let Some(yours) = yours {
        text.push(' ');
        text.push_str(&yours);
    }
    text
}

/// What the wishes come to: how many pairings meet them.
pub(super) fn finding(offer: &Offer, style: Style) -> String {
    let (cruise, grade) = wishes(&offer.ride, style);
    let all = offer.cells.iter().filter(|cell| offer.goes(cell)).count();
    said::met(offer.met().count(), all, &cruise, &grade)
}

fn draw(offer: &Offer, view: MapView, style: Style, width: f64) -> Drawing {
    let on_board = offer.wheels.here;
    let whole = |cell: &GearCell| style.shown_si(view.value(cell), view.unit()).round();
    let cell = |wheel_pulley: usize, motor_pulley: usize| {
        let found = offer.cell(on_board, wheel_pulley, motor_pulley);
        let Some(found) = found.filter(|cell| offer.goes(cell)) else {
            return Cell { readout: said::NO_MATCH.into(), ..Cell::default() };
        };
        let [motor, wheel] = pulleys(offer, found);
        Cell {
            // The colour follows the number that is read, not the one behind it.
            value: Some(whole(found)),
            text: style.fixed(whole(found), 0),
            readout: said::map_at(
                &motor,
                &wheel,
                &style.speed_unit(found.top_speed_m_s),
                &style.speed_unit(found.hill_speed_m_s),
                &style.distance_unit(found.distance_m),
                &percent(found.grade.max(0.0)),
            ),
        }
    };
    let (down, across) = (&offer.wheel_pulleys, &offer.motor_pulleys);
    let [row_title, col_title] = said::MAP_AXES.map(String::from);
    let row = |row: usize| (0..across.list.len()).map(|col| cell(row, col)).collect();
    Map {
        row_title,
        col_title,
        rows: down.list.iter().map(|r| teeth(r, Slot::WheelPulley)).collect(),
        cols: across.list.iter().map(|r| teeth(r, Slot::MotorPulley)).collect(),
        cells: (0..down.list.len()).map(row).collect(),
        selected: Some((down.here, across.here)),
        key: style.units.shown(view.unit()).symbol.into(),
        not_possible: said::NO_MATCH_KEY.into(),
        nothing: said::NO_PULLEYS.into(),
    }
    .draw(width)
}

/// Every pairing with every wheel on offer, or with the one on the board where they are too many.
fn rows(offer: &Offer, style: Style) -> Table {
    let all = offer.cells.len() <= ROWS;
    let row = |cell: &GearCell| {
        let [motor, wheel_pulley] = pulleys(offer, cell);
        let mut row = vec![wheel(offer.wheels.list.get(cell.wheel)?, style), wheel_pulley, motor];
        row.extend(if offer.goes(cell) {
            [
                style.speed(cell.top_speed_m_s),
                style.speed(cell.hill_speed_m_s),
                style.distance(cell.distance_m),
                style.fixed(cell.grade.max(0.0) * 100.0, 0),
            ]
        } else {
            [said::NO_MATCH_KEY, "–", "–", "–"].map(String::from)
        });
        Some(row)
    };
    let shown = offer.cells.iter().filter(|cell| all || cell.wheel == offer.wheels.here);
    Table {
        label: said::MAP_TABLE.into(),
        caption: said::map_caption(all).into(),
        heads: said::map_heads(style),
        rows: shown.filter_map(row).collect(),
    }
}
