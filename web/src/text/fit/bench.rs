//! At the workbench: a measured centre distance, and a belt in hand.

use super::{entered, mm, teeth};
use crate::chart::plain;
use crate::text::Style;
use pitchline_core::{BeltChoice, BeltFit, BeltOnBoard, MeasuredCentre};

/// Over the motor pulley's teeth there.
pub const MOTOR_TEETH: &str = "Teeth on the motor pulley";
/// Over the wheel pulley's.
pub const WHEEL_TEETH: &str = "Teeth on the wheel pulley";

fn pulleys(fit: &BeltFit) -> String {
    let [motor, wheel] = fit.pulleys;
    format!("pulleys of {} and {}", plain(motor.teeth, 0), teeth(wheel.teeth))
}

/// What the measured centre distance asks for. `nearest` is the belt that comes nearest, with its
/// name where it has one.
#[must_use]
pub fn measured(
    fit: &BeltFit,
    pitch_m: f64,
    nearest: Option<(&BeltChoice, Option<&str>)>,
    style: Style,
) -> String {
    let with = pulleys(fit);
    let (length_m, [fewer, more]) = match fit.bench.measured {
        MeasuredCentre::NotGiven => {
            return "To find the belt, count the teeth on both pulleys and measure from the centre of the motor shaft to the centre of the wheel axle.".into();
        }
        MeasuredCentre::Overlap => {
            return format!(
                "At that distance, {with} would overlap. Measure again from centre to centre, and recount the teeth."
            );
        }
        MeasuredCentre::Length { length_m, teeth } => (length_m, teeth),
    };
    let takes = format!("With {with}, that takes a belt {} long", mm(style, length_m));
    let Some((belt, name)) = nearest else {
        let or = if more > fewer { format!(" or {}", plain(more, 0)) } else { String::new() };
        return format!(
            "{takes}: {}{or}\u{a0}teeth at {} pitch. No available belt comes close. Measure again and recount.",
            plain(fewer, 0),
            entered(style, pitch_m),
        );
    };
    let (centre, count) = (mm(style, belt.mesh.centre_m), teeth(belt.teeth));
    let named = name.map_or_else(|| count.clone(), |name| format!("\"{name}\" ({count})"));
    if !belt.in_slot {
        let [near, far] = fit.slot_m;
        return format!(
            "{takes}. The closest, {named}, needs {centre} from shaft to axle. The mount adjusts from {} to {}, so it doesn't fit.",
            entered(style, near),
            entered(style, far),
        );
    }
    let off = belt.off_measured_m.unwrap_or(0.0);
    let way = if off < 0.0 { "less" } else { "more" };
    format!(
        "{takes}. The closest is {named}. It needs {centre} from shaft to axle, {} {way} than you measured.",
        mm(style, off.abs()),
    )
}

/// The same in a few words. `measured_m` is the distance, m, where there is one.
#[must_use]
pub fn bench(measured_m: Option<f64>, nearest: Option<&BeltChoice>, style: Style) -> String {
    match (measured_m, nearest) {
        (None, _) => "find a belt by measuring".into(),
        (Some(measured), Some(belt)) if belt.in_slot => {
            format!("{} for {}", teeth(belt.teeth), entered(style, measured))
        }
        (Some(measured), _) => format!("no belt for {}", entered(style, measured)),
    }
}

/// What the belt in hand goes with. `pairs` are the pulleys on offer that suit it: teeth on motor
/// and wheel, centre distance in m.
#[must_use]
pub fn in_hand(fit: &BeltFit, pairs: &[[f64; 3]], style: Style) -> String {
    let with = pulleys(fit);
    let here = match fit.bench.in_hand {
        BeltOnBoard::NoTeeth => return String::new(),
        BeltOnBoard::TooShort => format!("The belt you have is too short for {with}."),
        BeltOnBoard::Taut(belt) => format!(
            "On {with}, the belt you have needs {} from shaft to axle: {}.",
            mm(style, belt.mesh.centre_m),
            if belt.in_slot { "it fits" } else { "the mount doesn't reach that" },
        ),
    };
    if pairs.is_empty() {
        return format!("{here} No available pair of pulleys suits it.");
    }
    let pair = |[motor, wheel, centre_m]: &[f64; 3]| {
        format!("{}/{} ({})", plain(*motor, 0), plain(*wheel, 0), mm(style, *centre_m))
    };
    let pairs: Vec<String> = pairs.iter().map(pair).collect();
    format!(
        "{here} Available pulley pairs that suit it, as motor/wheel teeth (shaft to axle): {}.",
        pairs.join(", ")
    )
}
