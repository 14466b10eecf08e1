//! The gear map: every pairing on offer, and a tap to adopt one.

use crate::app::{Found, MapView, use_app};
use crate::chart::{Cell, Drawing, Figure, Map, Sketch, Table};
use crate::component::{Choice, Options};
use crate::question::table;
use crate::text::{Style, percent};
use leptos::prelude::*;
use pitchline_core::catalog::Catalog;
use pitchline_core::{
    Draft, GearCell, MotorPulley, Record, Ride, SLOW_M_S, Slot, Unit, Wheel, WheelPulley, fits,
    gear_map as map,
};
use std::sync::Arc;

const VIEWS: [MapView; 4] = [MapView::Speed, MapView::HillSpeed, MapView::Distance, MapView::Hill];

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
            Self::Speed => "Top speed on the flat".into(),
            Self::HillSpeed => format!("Top speed up your {grade} hill"),
            Self::Distance => format!("Distance at {cruise}"),
            Self::Hill => format!("Steepest hill at {}", style.speed_unit(SLOW_M_S)),
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

/// Parts to put on the board, by id.
type Parts = Vec<(Slot, String)>;

/// What is on offer, and the answers for all of it.
struct Offer {
    motor_pulleys: Vec<Record>,
    wheel_pulleys: Vec<Record>,
    wheels: Vec<Record>,
    motor: Record,
    /// The wishes.
    ride: Ride,
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

    /// The pulleys of a cell of the map; cells count row by row.
    fn pairing(&self, stop: usize) -> Option<Parts> {
        let count = self.motor_pulleys.len().max(1);
        let wheel = self.wheel_pulleys.get(stop / count)?;
        let motor = self.motor_pulleys.get(stop % count)?;
        Some(vec![(Slot::WheelPulley, wheel.id.clone()), (Slot::MotorPulley, motor.id.clone())])
    }

    /// The best pairing with its wheel, where it is not on the board yet.
    fn better(&self) -> Option<Parts> {
        let (best, _, _) = best(self)?;
        let here = (best.motor_pulley, best.wheel_pulley, best.wheel) == self.here;
        let id = |list: &[Record], place: usize| list.get(place).map(|part| part.id.clone());
        let picks = vec![
            (Slot::Wheel, id(&self.wheels, best.wheel)?),
            (Slot::WheelPulley, id(&self.wheel_pulleys, best.wheel_pulley)?),
            (Slot::MotorPulley, id(&self.motor_pulleys, best.motor_pulley)?),
        ];
        (!here).then_some(picks)
    }
}

/// The map, with what it shows of each pairing to choose from.
#[component]
pub(super) fn GearMap() -> impl IntoView {
    let app = use_app();
    let offered = Memo::new_with_compare(
        move |_| Some(Arc::new(offer(app.found()?.as_ref(), &app.catalog()))),
        |_, _| true,
    );
    let sketch = Memo::new_with_compare(
        move |_| {
            let (offer, view, style) = (offered.get()?, app.map_view(), app.style());
            let (said, rowed) = (offer.clone(), offer.clone());
            Some(Sketch::new(
                move || finding(&said, style),
                move |width| draw(&offer, view, style, width),
                move || rows(&rowed, style),
            ))
        },
        |_, _| true,
    );
    let picked = move |stop| {
        if let Some(picks) = offered.get_untracked().and_then(|offer| offer.pairing(stop)) {
            app.pick_all(&picks);
        }
    };
    view! {
        <div class="gear-map">
            <Picks offered />
            <p class="help">"Tap a pairing to put it on the board."</p>
            <Figure
                sketch
                hint="Arrow keys move over the pairings, Enter puts one on the board"
                on_pick=picked
            />
            <AdoptBest offered />
        </div>
    }
}

/// What is shown, and with which wheel.
#[component]
fn Picks(offered: Memo<Option<Arc<Offer>>>) -> impl IntoView {
    let app = use_app();
    let wheels = Memo::new(move |_| {
        offered
            .with(|offer| {
                let Offer { wheels, here, .. } = offer.as_deref()?;
                Some(Options {
                    chosen: wheels.get(here.2).map(|w| w.id.clone()).unwrap_or_default(),
                    list: wheels.iter().map(|w| (w.id.clone(), w.name.clone())).collect(),
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
    let wheel = move |id: String| app.pick(Slot::Wheel, &id);
    view! {
        <div class="fields">
            <Choice id="map-shows".into() label="Show" options=shows picked=show />
            <Choice id="map-wheel".into() label="Wheel on the board" options=wheels picked=wheel />
        </div>
    }
}

/// Puts the pairing that the caption names on the board, where it is not there yet.
#[component]
fn AdoptBest(offered: Memo<Option<Arc<Offer>>>) -> impl IntoView {
    let app = use_app();
    let picks = Memo::new(move |_| offered.with(|offer| offer.as_ref()?.better()));
    let adopt = move |_| {
        if let Some(picks) = picks.get_untracked() {
            app.pick_all(&picks);
        }
    };
    move || {
        picks.with(Option::is_some).then(|| {
            view! {
                <button type="button" on:click=adopt>
                    "Put these on the board"
                </button>
            }
        })
    }
}

/// The parts on offer with the one on the board among them, by size; and its
/// place.
fn with_own(draft: &Draft, catalog: &Catalog, slot: Slot) -> (Vec<Record>, usize) {
    let own = draft.record(slot);
    // What was altered is shown as altered.
    let mut list = vec![own.clone()];
    let mut place = 0;
    let offered = catalog.offered(&draft.kit, slot);
    for part in offered.into_iter().filter(|part| part.id != own.id).take(MOST) {
        let larger = |other: &Record| size(other, slot) > size(part, slot);
        let here = list.iter().position(larger).unwrap_or(list.len());
        place += usize::from(here <= place);
        list.insert(here, part.clone());
    }
    (list, place)
}

/// Most parts of a kind in the map; a catalogue without kits may offer hundreds.
const MOST: usize = 12;

fn offer(found: &Found, catalog: &Catalog) -> Offer {
    let with_own = |slot| with_own(&found.draft, catalog, slot);
    let (motor_pulleys, motor_pulley) = with_own(Slot::MotorPulley);
    let (wheel_pulleys, wheel_pulley) = with_own(Slot::WheelPulley);
    let (wheels, wheel) = with_own(Slot::Wheel);
    // Every record here has been checked: by the catalogue, or as part of the build.
    let motor: Vec<_> =
        motor_pulleys.iter().filter_map(|r| MotorPulley::from_record(r).ok()).collect();
    let driven: Vec<_> =
        wheel_pulleys.iter().filter_map(|r| WheelPulley::from_record(r).ok()).collect();
    let rolling: Vec<_> = wheels.iter().filter_map(|r| Wheel::from_record(r).ok()).collect();
    Offer {
        cells: map(&found.build, &motor, &driven, &rolling),
        motor_pulleys,
        wheel_pulleys,
        wheels,
        motor: found.draft.record(Slot::Motor).clone(),
        ride: found.build.ride,
        here: (motor_pulley, wheel_pulley, wheel),
    }
}

/// Teeth of a pulley, diameter of a wheel.
fn size(record: &Record, slot: Slot) -> f64 {
    let key = if slot == Slot::Wheel { "diameter_mm" } else { "teeth" };
    slot.kind().field_index(key).and_then(|index| record.value(index)).unwrap_or(0.0)
}

fn teeth_said(record: &Record, slot: Slot) -> String {
    Style::default().fixed(size(record, slot), 0)
}

/// Share of the greatest distance that is told apart: no band supports more.
const ALIKE: f64 = 0.97;

/// Of the pairings that meet the wishes, the one that climbs best among those
/// that go farthest; how many meet them, and how many go as far.
fn best(offer: &Offer) -> Option<(GearCell, usize, usize)> {
    let speed = offer.ride.cruise_m_s;
    let meets = |c: &&GearCell| {
        let goes = offer.goes(c.wheel, c.wheel_pulley, c.motor_pulley);
        goes && c.hill_speed_m_s >= speed && c.distance_m > 0.0
    };
    let met = || offer.cells.iter().filter(meets);
    let farthest = met().map(|c| c.distance_m).fold(0.0, f64::max);
    let alike = || met().filter(|c| c.distance_m >= ALIKE * farthest);
    let best = alike().max_by(|a, b| a.grade.total_cmp(&b.grade))?;
    Some((*best, met().count(), alike().count()))
}

/// What the wishes come to: how many pairings meet them, and which is best.
fn finding(offer: &Offer, style: Style) -> String {
    let (cruise, grade) = wishes(&offer.ride, style);
    let fits = |c: &&GearCell| offer.goes(c.wheel, c.wheel_pulley, c.motor_pulley);
    let all = offer.cells.iter().filter(fits).count();
    let Some((best, met, alike)) = best(offer) else {
        return format!("None of the {all} pairings on offer holds {cruise} up your {grade} hill.");
    };
    let far = style.distance_unit(best.distance_m);
    let far = if alike > 1 {
        format!(
            "{alike} of them go about equally far, {far} on the flat; the one that climbs best is"
        )
    } else {
        format!("The farthest, {far} on the flat, is")
    };
    let teeth = |list: &[Record], place: usize, slot| {
        list.get(place).map(|record| teeth_said(record, slot)).unwrap_or_default()
    };
    format!(
        "With a full pack {met} of the {all} pairings on offer hold {cruise} up your {grade} hill. {far} a motor pulley of {} teeth with a wheel pulley of {} on {}.",
        teeth(&offer.motor_pulleys, best.motor_pulley, Slot::MotorPulley),
        teeth(&offer.wheel_pulleys, best.wheel_pulley, Slot::WheelPulley),
        offer.wheels.get(best.wheel).map_or("", |wheel| &wheel.name),
    )
}

fn draw(offer: &Offer, view: MapView, style: Style, width: f64) -> Drawing {
    let wheel = offer.here.2;
    let unit = style.units.shown(view.unit()).symbol;
    let whole = |cell: &GearCell| style.shown_si(view.value(cell), view.unit()).round();
    let cell = |wheel_pulley: usize, motor_pulley: usize| {
        let goes = offer.goes(wheel, wheel_pulley, motor_pulley);
        let found = offer.cell(wheel, wheel_pulley, motor_pulley).filter(|_| goes);
        let Some(found) = found else {
            return Cell { readout: "These parts do not fit together.".into(), ..Cell::default() };
        };
        let teeth = |list: &[Record], place: usize, slot| {
            list.get(place).map(|record| teeth_said(record, slot)).unwrap_or_default()
        };
        Cell {
            // The colour follows the number that is read, not the one behind it.
            value: Some(whole(found)),
            text: style.fixed(whole(found), 0),
            readout: format!(
                "Motor {}, wheel {} teeth: {} flat, {} up your hill, {} far, climbs {}",
                teeth(&offer.motor_pulleys, motor_pulley, Slot::MotorPulley),
                teeth(&offer.wheel_pulleys, wheel_pulley, Slot::WheelPulley),
                style.speed_unit(found.top_speed_m_s),
                style.speed_unit(found.hill_speed_m_s),
                style.distance_unit(found.distance_m),
                percent(found.grade.max(0.0)),
            ),
        }
    };
    let rows = 0..offer.wheel_pulleys.len();
    let cols = 0..offer.motor_pulleys.len();
    Map {
        row_title: "wheel pulley, teeth".into(),
        col_title: "motor pulley, teeth".into(),
        rows: offer.wheel_pulleys.iter().map(|r| teeth_said(r, Slot::WheelPulley)).collect(),
        cols: offer.motor_pulleys.iter().map(|r| teeth_said(r, Slot::MotorPulley)).collect(),
        cells: rows.map(|row| cols.clone().map(|col| cell(row, col)).collect()).collect(),
        selected: Some((offer.here.1, offer.here.0)),
        key: unit.into(),
        not_possible: "does not fit".into(),
        nothing: "No pulleys on offer.".into(),
    }
    .draw(width)
}

/// Every pairing with every wheel on offer.
fn rows(offer: &Offer, style: Style) -> Table {
    let speed = style.units.shown(Unit::KilometrePerHour).symbol;
    let heads = vec![
        "Wheel".into(),
        "Wheel pulley".into(),
        "Motor pulley".into(),
        format!("Top speed, {speed}"),
        format!("Up your hill, {speed}"),
        format!("Distance, {}", style.units.shown(Unit::Kilometre).symbol),
        "Steepest, %".into(),
    ];
    let row = |cell: &GearCell| {
        let wheel = offer.wheels.get(cell.wheel)?;
        let wheel_pulley = offer.wheel_pulleys.get(cell.wheel_pulley)?;
        let motor_pulley = offer.motor_pulleys.get(cell.motor_pulley)?;
        let goes = offer.goes(cell.wheel, cell.wheel_pulley, cell.motor_pulley);
        let mut row = vec![
            wheel.name.clone(),
            teeth_said(wheel_pulley, Slot::WheelPulley),
            teeth_said(motor_pulley, Slot::MotorPulley),
        ];
        row.extend(if goes {
            [
                style.speed(cell.top_speed_m_s),
                style.speed(cell.hill_speed_m_s),
                style.distance(cell.distance_m),
                style.fixed(cell.grade.max(0.0) * 100.0, 0),
            ]
        } else {
            ["does not fit", "–", "–", "–"].map(String::from)
        });
        Some(row)
    };
    table("Every pairing on offer", heads, offer.cells.iter().filter_map(row).collect())
}
