//! At the workbench: what was measured, and a belt in hand.

use super::cure::{Mend, Mending};
use super::view::Line;
use crate::app::{Fit, use_app};
use crate::question::{Input, InputAs};
use crate::text::{Style, fit as words};
use leptos::prelude::*;
use pitchline_core::{BeltChoice, Record, Slot};

/// Measured distance and belt, with the pulleys that they are judged by.
#[component]
pub(super) fn Bench() -> impl IntoView {
    let app = use_app();
    let mend = Memo::new(move |_| app.fit().and_then(|found| take(&found)));
    let take = move || mend.get().map(|mend| view! { <p class="cures"><Mending mend /></p> });
    view! {
        <div class="fields">
            <InputAs
                of=Slot::MotorPulley
                key="teeth"
                place="bench"
                label=words::MOTOR_TEETH
            />
            <InputAs
                of=Slot::WheelPulley
                key="teeth"
                place="bench"
                label=words::WHEEL_TEETH
            />
            <Input of=Slot::Bench key="measured_centre_mm" />
            <Input of=Slot::Bench key="belt_in_hand_teeth" />
        </div>
        <Line say=measured />
        {take}
        <Line say=in_hand />
    }
}

/// What takes the belt for what was measured, where the mount reaches it.
pub(super) fn take(found: &Fit) -> Option<Mend> {
    let part = found.belt_on_offer(nearest(found).filter(|belt| belt.in_slot)?.offer?)?;
    // What is on the board already need not be taken.
    let on_board = &found.draft.record(Slot::Belt).id;
    (part.id != *on_board).then(|| Mend::take(Slot::Belt, part, &found.draft))
}

/// The belt nearest to what was measured: of those within the mount's reach, if any is.
pub(super) fn nearest(found: &Fit) -> Option<&BeltChoice> {
    let bench = &found.together.belt.bench;
    bench.nearest.iter().find(|belt| belt.in_slot).or(bench.nearest.first())
}

/// What the measured centre distance asks for.
pub(super) fn measured(found: &Fit, style: Style) -> String {
    let name = |belt: &BeltChoice| {
        belt.offer.and_then(|place| found.belt_on_offer(place)).map(|part| &*part.name)
    };
    let nearest = nearest(found).map(|belt| (belt, name(belt)));
    words::measured(&found.together.belt, found.build.belt.pitch_m, nearest, style)
}

pub(super) fn hint(found: &Fit, style: Style) -> String {
    words::bench(found.build.bench.measured_centre_m, nearest(found), style)
}

/// Pairs of pulleys that are told.
const PAIRS: usize = 6;

/// What the belt in hand goes with.
fn in_hand(found: &Fit, style: Style) -> String {
    let teeth = |list: &[Record], place: usize, slot: Slot| {
        let index = slot.kind().field_index("teeth");
        list.get(place).zip(index).and_then(|(part, index)| part.value(index)).unwrap_or(0.0)
    };
    let pairs = found.together.belt.bench.pairs.iter().take(PAIRS).map(|pair| {
        [
            teeth(&found.motor_pulleys, pair.motor_pulley, Slot::MotorPulley),
            teeth(&found.wheel_pulleys, pair.wheel_pulley, Slot::WheelPulley),
            pair.centre_m,
        ]
    });
    words::in_hand(&found.together.belt, &pairs.collect::<Vec<_>>(), style)
}
