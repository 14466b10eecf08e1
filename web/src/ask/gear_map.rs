//! The gear map: every pairing on offer, and a tap to adopt one.

use super::answer::table;
use super::app;
use crate::chart::{Cell, Chart, ChartProps, Drawing, Map, Table, nothing, use_width};
use crate::component::{Choice, Options, choice};
use crate::text::{Style, words};
use leptos::html;
use leptos::prelude::*;
use pitchline_core::{
    Build, Draft, GearCell, MotorPulley, Record, Slot, Unit, Wheel, WheelPulley, fits,
    gear_map as map,
};

/// What is on offer, and the answers for all of it.
#[derive(Clone, Debug, Default, PartialEq)]
struct Offer {
    motor_pulleys: Vec<Record>,
    wheel_pulleys: Vec<Record>,
    wheels: Vec<Record>,
    motor: Record,
    cells: Vec<GearCell>,
    /// Places of what is on the board.
    here: (usize, usize, usize),
}

impl Offer {
    fn cell(&self, wheel: usize, wheel_pulley: usize, motor_pulley: usize) -> Option<&GearCell> {
        let row = wheel * self.wheel_pulleys.len() + wheel_pulley;
        self.cells.get(row * self.motor_pulleys.len() + motor_pulley)
    }

    /// Whether wheel, pulleys and motor go together.
    fn goes(&self, wheel: usize, wheel_pulley: usize, motor_pulley: usize) -> bool {
        let wheels = self.wheels.get(wheel).zip(self.wheel_pulleys.get(wheel_pulley));
        let shaft = self.motor_pulleys.get(motor_pulley);
        wheels.is_some_and(|(w, p)| fits(Slot::Wheel, w, Slot::WheelPulley, p))
            && shaft.is_some_and(|p| fits(Slot::Motor, &self.motor, Slot::MotorPulley, p))
    }
}

pub(super) fn gear_map() -> AnyView {
    let app = app();
    let by_hill = RwSignal::new(false);
    let offer = Memo::new(move |_| {
        let catalog = app.catalog();
        let build = app.build.get()?;
        Some(app.draft.with(|draft| {
            offer(draft, &build, |slot| {
                catalog.offered(&draft.kit, slot).into_iter().cloned().collect()
            })
        }))
    });
    let with = move |read: &dyn Fn(&Offer) -> String| {
        offer.with(|offer| offer.as_ref().map(read)).unwrap_or_default()
    };
    let finding = Signal::derive(move || {
        let style = app.style.get();
        with(&|offer| finding(offer, style))
    });
    let width = use_width(340.0);
    let marks = Signal::derive(move || {
        let (style, hill, width) = (app.style.get(), by_hill.get(), width.get());
        offer.with(|offer| {
            offer
                .as_ref()
                .map_or_else(|| nothing(width, ""), |offer| draw(offer, hill, style, width))
        })
    });
    let numbers = Signal::derive(move || {
        let style = app.style.get();
        offer.with(|offer| offer.as_ref().map_or_else(Table::default, |offer| rows(offer, style)))
    });
    let adopt = Callback::new(move |stop: usize| {
        let picked = offer.with_untracked(|offer| {
            let offer = offer.as_ref()?;
            let count = offer.motor_pulleys.len().max(1);
            let wheel_pulley = offer.wheel_pulleys.get(stop / count)?.id.clone();
            let motor_pulley = offer.motor_pulleys.get(stop % count)?.id.clone();
            Some((wheel_pulley, motor_pulley))
        });
        if let Some((wheel_pulley, motor_pulley)) = picked {
            app.pick_all(&[(Slot::WheelPulley, &wheel_pulley), (Slot::MotorPulley, &motor_pulley)]);
        }
    });
    let wheel = Signal::derive(move || {
        offer.with(|offer| {
            let offer = offer.as_ref();
            offer.map_or_else(Options::default, |offer| Options {
                list: offer.wheels.iter().map(|w| (w.id.clone(), w.name.clone())).collect(),
                chosen: offer.wheels.get(offer.here.2).map(|w| w.id.clone()).unwrap_or_default(),
            })
        })
    });
    let shown = Signal::derive(move || Options {
        list: vec![
            ("speed".into(), "Top speed on the flat".into()),
            ("hill".into(), "Steepest hill at 10 km/h".into()),
        ],
        chosen: if by_hill.get() { "hill".into() } else { "speed".into() },
    });
    html::div()
        .class("gear-map")
        .child((
            html::h3().child("Every pairing of pulleys").into_any(),
            html::div()
                .class("fields")
                .child((
                    choice(Choice {
                        id: "map-shows".into(),
                        label: Signal::stored("Show".to_string()),
                        options: shown,
                        on_pick: Callback::new(move |value: String| by_hill.set(value == "hill")),
                    }),
                    choice(Choice {
                        id: "map-wheel".into(),
                        label: Signal::stored("With wheel".to_string()),
                        options: wheel,
                        on_pick: Callback::new(move |id: String| app.pick(Slot::Wheel, &id)),
                    }),
                ))
                .into_any(),
            html::p().class("help").child("Tap a pairing to put it on the board.").into_any(),
            Chart(
                ChartProps::builder()
                    .finding(finding)
                    .marks(marks)
                    .table(numbers)
                    .hint(Signal::stored(
                        "Arrow keys move over the pairings, Enter puts one on the board"
                            .to_string(),
                    ))
                    .width(width)
                    .on_pick(adopt)
                    .build(),
            )
            .into_any(),
        ))
        .into_any()
}

/// The parts on offer with the one on the board among them, and its place.
fn with_own(mut offered: Vec<Record>, own: &Record) -> (Vec<Record>, usize) {
    let place = offered.iter().position(|part| part.id == own.id);
    match place {
        Some(place) => {
            // What was altered is shown as altered.
            if let Some(part) = offered.get_mut(place) {
                *part = own.clone();
            }
            (offered, place)
        }
        None => {
            offered.push(own.clone());
            let last = offered.len() - 1;
            (offered, last)
        }
    }
}

fn offer(draft: &Draft, build: &Build, offered: impl Fn(Slot) -> Vec<Record>) -> Offer {
    let list = |slot| with_own(offered(slot), draft.record(slot));
    let (motor_pulleys, motor_pulley) = list(Slot::MotorPulley);
    let (wheel_pulleys, wheel_pulley) = list(Slot::WheelPulley);
    let (wheels, wheel) = list(Slot::Wheel);
    // Every record here has been checked: by the catalogue, or as part of the build.
    let motor: Vec<_> =
        motor_pulleys.iter().filter_map(|r| MotorPulley::from_record(r).ok()).collect();
    let driven: Vec<_> =
        wheel_pulleys.iter().filter_map(|r| WheelPulley::from_record(r).ok()).collect();
    let rolling: Vec<_> = wheels.iter().filter_map(|r| Wheel::from_record(r).ok()).collect();
    Offer {
        cells: map(build, &motor, &driven, &rolling),
        motor_pulleys,
        wheel_pulleys,
        wheels,
        motor: draft.record(Slot::Motor).clone(),
        here: (motor_pulley, wheel_pulley, wheel),
    }
}

fn teeth(record: &Record, slot: Slot) -> String {
    let teeth = slot.kind().field_index("teeth").and_then(|index| record.value(index));
    Style::default().fixed(teeth.unwrap_or(0.0), 0)
}

fn finding(offer: &Offer, style: Style) -> String {
    let (motor_pulley, wheel_pulley, wheel) = offer.here;
    let Some(here) = offer.cell(wheel, wheel_pulley, motor_pulley) else { return String::new() };
    let fitting =
        offer.cells.iter().filter(|c| offer.goes(c.wheel, c.wheel_pulley, c.motor_pulley));
    let fastest = fitting.clone().map(|cell| cell.top_speed_m_s).fold(0.0, f64::max);
    let steepest = fitting.map(|cell| cell.grade).fold(0.0, f64::max);
    format!(
        "Yours reaches {} and climbs {}; with the wheels and pulleys on offer the fastest reaches {} and the strongest climbs {}.",
        style.speed_unit(here.top_speed_m_s),
        hill(here.grade, style),
        style.speed_unit(fastest),
        hill(steepest, style),
    )
}

fn hill(grade: f64, style: Style) -> String {
    format!("{}\u{a0}%", style.fixed(grade.max(0.0) * 100.0, 0))
}

fn draw(offer: &Offer, by_hill: bool, style: Style, width: f64) -> Drawing {
    let wheel = offer.here.2;
    let speed = style.units.shown(Unit::KilometrePerHour).symbol;
    let cell = |wheel_pulley: usize, motor_pulley: usize| {
        let goes = offer.goes(wheel, wheel_pulley, motor_pulley);
        let found = offer.cell(wheel, wheel_pulley, motor_pulley).filter(|_| goes);
        let Some(found) = found else {
            return Cell { readout: "These parts do not fit together.".into(), ..Cell::default() };
        };
        let text = if by_hill {
            style.fixed(found.grade.max(0.0) * 100.0, 0)
        } else {
            style.speed(found.top_speed_m_s)
        };
        let teeth = |list: &[Record], place: usize, slot| {
            list.get(place).map(|record| teeth(record, slot)).unwrap_or_default()
        };
        Cell {
            value: Some(if by_hill { found.grade } else { found.top_speed_m_s }),
            text,
            readout: format!(
                "{} to {} teeth: {} ({}), climbs {}",
                teeth(&offer.motor_pulleys, motor_pulley, Slot::MotorPulley),
                teeth(&offer.wheel_pulleys, wheel_pulley, Slot::WheelPulley),
                style.speed_unit(found.top_speed_m_s),
                words::limit(found.limit),
                hill(found.grade, style),
            ),
        }
    };
    let rows = 0..offer.wheel_pulleys.len();
    let cols = 0..offer.motor_pulleys.len();
    Map {
        row_title: "wheel pulley, teeth".into(),
        col_title: "motor pulley, teeth".into(),
        rows: offer.wheel_pulleys.iter().map(|r| teeth(r, Slot::WheelPulley)).collect(),
        cols: offer.motor_pulleys.iter().map(|r| teeth(r, Slot::MotorPulley)).collect(),
        cells: rows.map(|row| cols.clone().map(|col| cell(row, col)).collect()).collect(),
        selected: Some((offer.here.1, offer.here.0)),
        key: if by_hill { "hill, %".into() } else { format!("top speed, {speed}") },
        not_possible: "does not fit".into(),
        nothing: "No pulleys on offer.".into(),
    }
    .draw(width)
}

/// Every pairing with every wheel on offer.
fn rows(offer: &Offer, style: Style) -> Table {
    let heads = vec![
        "Wheel".into(),
        "Wheel pulley".into(),
        "Motor pulley".into(),
        format!("Top speed, {}", style.units.shown(Unit::KilometrePerHour).symbol),
        "Limit".into(),
        "Hill at 10 km/h, %".into(),
    ];
    let row = |cell: &GearCell| {
        let wheel = offer.wheels.get(cell.wheel)?;
        let wheel_pulley = offer.wheel_pulleys.get(cell.wheel_pulley)?;
        let motor_pulley = offer.motor_pulleys.get(cell.motor_pulley)?;
        let goes = offer.goes(cell.wheel, cell.wheel_pulley, cell.motor_pulley);
        let mut row = vec![
            wheel.name.clone(),
            teeth(wheel_pulley, Slot::WheelPulley),
            teeth(motor_pulley, Slot::MotorPulley),
        ];
        row.extend(if goes {
            [
                style.speed(cell.top_speed_m_s),
                words::limit(cell.limit).into(),
                style.fixed(cell.grade.max(0.0) * 100.0, 0),
            ]
        } else {
            ["–".into(), "does not fit".into(), "–".into()]
        });
        Some(row)
    };
    table("Every pairing on offer", heads, offer.cells.iter().filter_map(row).collect())
}
