//! The drawing of the whole board in words.

use super::{Style, shell, words};
use crate::chart::plain;
use pitchline_core::{Build, Draft, Slot, Unit, totals};

/// Under the drawing, until a part of it is met.
pub const PICK: &str = "Pick a part";

/// A part of the board and what it is: "Motor pulley: 15 teeth"; and whether a size that it is drawn
/// by is assumed.
#[must_use]
pub fn part(slot: Slot, draft: &Draft, build: &Build, assumed: bool, style: Style) -> String {
    let figure = match slot {
        Slot::Wheel => length(style, build.wheel.diameter_m),
        Slot::Motor => shell::motors(build.truck.motor_count, build.motor.kv_rpm_per_v),
        Slot::MotorPulley => teeth(build.motor_pulley.teeth),
        Slot::WheelPulley => teeth(build.wheel_pulley.teeth),
        Slot::Belt => {
            let width = format!("{} wide", length(style, build.belt.width_m));
            build.belt.teeth.map_or(width.clone(), |n| format!("{}, {width}", teeth(n)))
        }
        Slot::Pack => pack(build),
        Slot::Deck => format!("{} between the axles", length(style, build.deck.wheelbase_m)),
        _ => String::new(),
    };
    let record = draft.record(slot);
    // A pulley is named by its teeth.
    let named = !matches!(slot, Slot::MotorPulley | Slot::WheelPulley);
    let name = if named { record.name.as_str() } else { "" };
    let assumed = if assumed { "sizes assumed" } else { "" };
    let said = [name, &figure, assumed].into_iter().filter(|text| !text.is_empty());
    let said = said.collect::<Vec<_>>().join(", ");
    if said.is_empty() {
        words::slot(slot).into()
    } else {
        [words::slot(slot), ": ", &said].concat()
    }
}

/// What stands under gearing, pack and front wheel, each in full and shorter.
#[must_use]
pub fn under(build: &Build, style: Style) -> [[String; 2]; 3] {
    let [small, large] = [build.motor_pulley.teeth, build.wheel_pulley.teeth];
    let gearing = format!("{}/{}", plain(small, 0), plain(large, 0));
    let belt = format!("{gearing}, {} belt", length(style, build.belt.width_m));
    let energy = format!("{}\u{a0}Wh", style.fixed(totals(build).nameplate_wh, 0));
    let (cells, wheel) = (pack(build), length(style, build.wheel.diameter_m));
    [[belt, gearing], [format!("{cells}, {energy}"), cells], [wheel.clone(), wheel]]
}

/// What is drawn, in a sentence, whether the pack goes in, and of which parts a size is assumed.
#[must_use]
pub fn finding(build: &Build, fits: bool, assumed: &[Slot], style: Style) -> String {
    let [[belt, _], [pack, _], [wheel, _]] = under(build, style);
    let not = if fits { "" } else { " The pack doesn't fit the enclosure." };
    let assumed: Vec<_> =
        assumed.iter().map(|slot| words::slot(*slot).to_ascii_lowercase()).collect();
    let assumed = if assumed.is_empty() {
        String::new()
    } else {
        format!(" Some sizes are assumed: {}.", assumed.join(", "))
    };
    format!(
        "The board to scale from the side, front to the right: {wheel} wheels, {} between the axles, pack {pack}, gearing {belt}.{not}{assumed}",
        length(style, build.deck.wheelbase_m),
    )
}

fn pack(build: &Build) -> String {
    format!("{}S{}P", plain(build.pack.series, 0), plain(build.pack.parallel, 0))
}

fn teeth(count: f64) -> String {
    format!("{}\u{a0}teeth", plain(count, 0))
}

fn length(style: Style, length_m: f64) -> String {
    let symbol = style.units.shown(Unit::Millimetre).symbol;
    format!("{}\u{a0}{symbol}", style.entered_millimetres(length_m))
}
