//! At the workbench: what was measured, and a belt in hand.

use super::belt::teeth;
use super::cure::{Mend, Mending};
use super::view::{Line, entered, mm};
use crate::app::{Fit, use_app};
use crate::chart::plain;
use crate::question::{Input, InputAs};
use crate::text::Style;
use leptos::prelude::*;
use pitchline_core::{BeltChoice, BeltOnBoard, MeasuredCentre, Record, Slot};

/// Measured distance and belt, with the pulleys that they are judged by.
#[component]
pub(super) fn Bench() -> impl IntoView {
    let app = use_app();
    let mend = Memo::new(move |_| app.fit().and_then(|found| take(&found)));
    let take = move || {
        mend.get().map(|mend| {
            view! {
                <p class="cures">
                    <Mending mend />
                </p>
            }
        })
    };
    view! {
        <h4>"At the workbench"</h4>
        <div class="fields">
            <InputAs
                of=Slot::MotorPulley
                key="teeth"
                place="bench"
                label="Teeth of the motor pulley"
            />
            <InputAs
                of=Slot::WheelPulley
                key="teeth"
                place="bench"
                label="Teeth of the wheel pulley"
            />
            <Input of=Slot::Bench key="measured_centre_mm" />
            <Input of=Slot::Bench key="belt_in_hand_teeth" />
        </div>
        <Line say=measured />
        {take}
        <Line say=in_hand />
    }
}

/// What takes the belt for what was measured.
fn take(found: &Fit) -> Option<Mend> {
    let part = found.belt_on_offer(wanted(found)?.offer?)?;
    // What is on the board already need not be taken.
    let on_board = &found.draft.record(Slot::Belt).id;
    (part.id != *on_board).then(|| Mend::take(Slot::Belt, part))
}

/// The belt to take for what was measured.
pub(super) fn wanted(found: &Fit) -> Option<&BeltChoice> {
    let bench = &found.together.belt.bench;
    bench.nearest.iter().find(|belt| belt.in_slot).or(bench.nearest.first())
}

/// The pulleys that what is said here holds for.
fn pulleys(found: &Fit) -> String {
    let [motor, wheel] = found.together.belt.pulleys;
    format!("On pulleys of {} and {}", plain(motor.teeth, 0), teeth(wheel.teeth))
}

/// What the measured centre distance asks for.
pub(super) fn measured(found: &Fit, style: Style) -> String {
    let with = pulleys(found);
    match found.together.belt.bench.measured {
        MeasuredCentre::NotGiven => {
            "Count the teeth of both pulleys, and measure from the middle of the motor's shaft to the middle of the wheel's axle: that finds the belt.".into()
        }
        MeasuredCentre::Overlap => {
            format!("{with} that cannot be: they would overlap. Measure again, between the middles, and count again.")
        }
        MeasuredCentre::Length { length_m, teeth: [fewer, more] } => {
            let wants = format!("{with} that takes a belt {} long", mm(style, length_m));
            let Some(belt) = wanted(found) else {
                let or = if more > fewer { format!(" or {}", plain(more, 0)) } else { String::new() };
                let pitch = entered(style, found.build.belt.pitch_m);
                return format!(
                    "{wants}: {}{or}\u{a0}teeth of {pitch}. None on offer comes near. Measure and count again.",
                    plain(fewer, 0)
                );
            };
            let part = belt.offer.and_then(|place| found.belts.get(place));
            let name = part.map_or_else(String::new, |part| format!("{}: ", part.name));
            let off = belt.off_measured_m.unwrap_or(0.0);
            let way = if off < 0.0 { "closer" } else { "farther apart" };
            let slide = if belt.in_slot { "" } else { ", beyond the mount's travel" };
            format!(
                "{wants}. The nearest is {name}{}, {}. With it shaft and axle stand {} {way} than measured, at {}{slide}.",
                teeth(belt.teeth),
                entered(style, belt.length_m),
                mm(style, off.abs()),
                mm(style, belt.mesh.centre_m),
            )
        }
    }
}

/// What the belt in hand goes with.
fn in_hand(found: &Fit, style: Style) -> String {
    let bench = &found.together.belt.bench;
    let with = pulleys(found);
    let here = match bench.in_hand {
        BeltOnBoard::NoTeeth => return String::new(),
        BeltOnBoard::TooShort => format!("{with} the belt in hand is too short."),
        BeltOnBoard::Taut(belt) => format!(
            "{with} the belt in hand wants {} from shaft to axle: {}.",
            mm(style, belt.mesh.centre_m),
            if belt.in_slot { "it fits" } else { "the mount does not slide there" },
        ),
    };
    let size = |list: &[Record], place: usize, slot: Slot| {
        let index = slot.kind().field_index("teeth");
        let record = list.get(place);
        plain(record.zip(index).and_then(|(r, i)| r.value(i)).unwrap_or(0.0), 0)
    };
    let pairs: Vec<String> = bench
        .pairs
        .iter()
        .take(6)
        .map(|pair| {
            format!(
                "{} with {} ({})",
                size(&found.motor_pulleys, pair.motor_pulley, Slot::MotorPulley),
                size(&found.wheel_pulleys, pair.wheel_pulley, Slot::WheelPulley),
                mm(style, pair.centre_m),
            )
        })
        .collect();
    if pairs.is_empty() {
        format!("{here} No pair of pulleys on offer fits it.")
    } else {
        format!("{here} Motor and wheel pulleys on offer that fit it: {}.", pairs.join(", "))
    }
}
