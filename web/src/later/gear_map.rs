//! The gear map: every pairing on offer, and a tap to adopt one.

use crate::ask::table;
use crate::chart::{Cell, Chart, Drawing, Map, Table, chart, nothing, use_width};
use crate::component::{Options, button, choice};
use crate::dom::{Node, el, live};
use crate::state::{App, Kept, MapView};
use crate::text::Style;
use pitchline_core::{
    GearCell, MotorPulley, Record, Ride, SLOW_M_S, Slot, Unit, Wheel, WheelPulley, fits,
    gear_map as map,
};

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

    fn words(self, app: App) -> String {
        let (cruise, grade) = wishes(app, app.style());
        match self {
            Self::Speed => "Top speed on the flat".into(),
            Self::HillSpeed => format!("Top speed up your {grade} hill"),
            Self::Distance => format!("Distance at {cruise}"),
            Self::Hill => format!("Steepest hill at {}", app.style().speed_unit(SLOW_M_S)),
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
fn wishes(app: App, style: Style) -> (String, String) {
    let ride = app.found().map(|found| found.build.ride);
    let read = |value: fn(&Ride) -> f64| ride.as_ref().map_or(0.0, value);
    let (cruise, grade) = (read(|r| r.cruise_m_s), read(|r| r.grade));
    (style.speed_unit(cruise), style.si(grade, Unit::Percent, 2))
}

/// What is on offer, and the answers for all of it.
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

pub(super) fn gear_map(app: App) -> Node {
    let view = move || app.read(|model| model.map_view);
    let width = use_width(340.0);
    let offered = Kept::new(app, offer);
    let with = {
        let offered = offered.clone();
        move || offered.get().map(|offer| (offer, app.style()))
    };
    let (told, rowed) = (with.clone(), with.clone());
    let wheels = move || {
        let (wheels, place) = with_own(app, Slot::Wheel);
        Options {
            chosen: wheels.get(place).map(|w| w.id.clone()).unwrap_or_default(),
            list: wheels.into_iter().map(|w| (w.id, w.name)).collect(),
        }
    };
    let shows = move || Options {
        list: VIEWS.iter().map(|v| (v.key().into(), v.words(app))).collect(),
        chosen: view().key().into(),
    };
    let key = move || app.key() + view().key();
    let drawn = chart(Chart {
        key: Box::new(key),
        finding: Box::new(move || told().map_or_else(String::new, |(o, s)| finding(app, &o, s))),
        draw: Box::new(move |width| {
            with().map_or_else(|| nothing(width, ""), |(o, s)| draw(&o, view(), s, width))
        }),
        table: Box::new(move || rowed().map_or_else(Table::default, |(o, s)| rows(&o, s))),
        hint: "Arrow keys move over the pairings, Enter puts one on the board",
        width,
        on_pick: Some(Box::new(move |stop| adopt(app, stop))),
    });
    let show = || "Show".into();
    let wheel = || "Wheel on the board".into();
    let picks = el("div")
        .class("fields")
        .with(choice("map-shows".into(), show, shows, move |pick| {
            let found = VIEWS.into_iter().find(|view| view.key() == pick);
            app.change(|model| model.map_view = found.unwrap_or_default());
        }))
        .with(choice("map-wheel".into(), wheel, wheels, move |id| app.pick(Slot::Wheel, id)));
    el("div")
        .class("gear-map")
        .with(el("h3").with("Every pairing of pulleys"))
        .with(picks)
        .with(el("p").class("help").with("Tap a pairing to put it on the board."))
        .with(drawn)
        .with(live(key, move || adopt_best(&offered)))
        .into()
}

/// Puts the pairing that the caption names on the board, where it is not there yet.
fn adopt_best(offered: &Kept<Offer>) -> Node {
    let app = offered.app;
    let picks = offered.get().and_then(|offer| {
        let (best, _, _) = best(app, &offer)?;
        let here = (best.motor_pulley, best.wheel_pulley, best.wheel) == offer.here;
        let id = |list: &[Record], place: usize| list.get(place).map(|part| part.id.clone());
        let picks = vec![
            (Slot::Wheel, id(&offer.wheels, best.wheel)?),
            (Slot::WheelPulley, id(&offer.wheel_pulleys, best.wheel_pulley)?),
            (Slot::MotorPulley, id(&offer.motor_pulleys, best.motor_pulley)?),
        ];
        (!here).then_some(picks)
    });
    picks.map(|picks| button("Put these on the board", move || app.pick_all(&picks))).into()
}

/// Puts the pairing of a cell on the board; cells count row by row.
fn adopt(app: App, stop: usize) {
    let (motor_pulleys, _) = with_own(app, Slot::MotorPulley);
    let (wheel_pulleys, _) = with_own(app, Slot::WheelPulley);
    let count = motor_pulleys.len().max(1);
    if let (Some(wheel), Some(motor)) =
        (wheel_pulleys.get(stop / count), motor_pulleys.get(stop % count))
    {
        app.pick_all(&[
            (Slot::WheelPulley, wheel.id.clone()),
            (Slot::MotorPulley, motor.id.clone()),
        ]);
    }
}

/// The parts on offer with the one on the board among them, by size; and its
/// place.
#[inline(never)]
fn with_own(app: App, slot: Slot) -> (Vec<Record>, usize) {
    app.read(|model| {
        let own = model.record(slot);
        // What was altered is shown as altered.
        let mut list = vec![own.clone()];
        let mut place = 0;
        let offered = model.loaded.catalog.offered(&model.draft.kit, slot);
        for part in offered.into_iter().filter(|part| part.id != own.id).take(MOST) {
            let larger = |other: &Record| size(other, slot) > size(part, slot);
            let here = list.iter().position(larger).unwrap_or(list.len());
            place += usize::from(here <= place);
            list.insert(here, part.clone());
        }
        (list, place)
    })
}

/// Most parts of a kind in the map; a catalogue without kits may offer hundreds.
const MOST: usize = 12;

#[inline(never)]
fn offer(app: App) -> Option<Offer> {
    let found = app.found()?;
    let (motor_pulleys, motor_pulley) = with_own(app, Slot::MotorPulley);
    let (wheel_pulleys, wheel_pulley) = with_own(app, Slot::WheelPulley);
    let (wheels, wheel) = with_own(app, Slot::Wheel);
    // Every record here has been checked: by the catalogue, or as part of the build.
    let motor: Vec<_> =
        motor_pulleys.iter().filter_map(|r| MotorPulley::from_record(r).ok()).collect();
    let driven: Vec<_> =
        wheel_pulleys.iter().filter_map(|r| WheelPulley::from_record(r).ok()).collect();
    let rolling: Vec<_> = wheels.iter().filter_map(|r| Wheel::from_record(r).ok()).collect();
    Some(Offer {
        cells: map(&found.build, &motor, &driven, &rolling),
        motor_pulleys,
        wheel_pulleys,
        wheels,
        motor: app.read(|model| model.record(Slot::Motor).clone()),
        here: (motor_pulley, wheel_pulley, wheel),
    })
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
#[inline(never)]
fn best(app: App, offer: &Offer) -> Option<(GearCell, usize, usize)> {
    let speed = app.found()?.build.ride.cruise_m_s;
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
fn finding(app: App, offer: &Offer, style: Style) -> String {
    let (cruise, grade) = wishes(app, style);
    let fits = |c: &&GearCell| offer.goes(c.wheel, c.wheel_pulley, c.motor_pulley);
    let all = offer.cells.iter().filter(fits).count();
    let Some((best, met, alike)) = best(app, offer) else {
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

fn hill(grade: f64, style: Style) -> String {
    format!("{}\u{a0}%", style.fixed(grade.max(0.0) * 100.0, 0))
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
                hill(found.grade, style),
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
