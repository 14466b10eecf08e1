//! What does not fit, all of it in one place, each with what cures it.

use super::cure::{Mend, Mending};
use super::deck::short;
use super::frame::name;
use super::lean::wheel;
use super::view::{at_least, at_most, entered, mm, tenth};
use crate::app::{Fit, use_app};
use crate::component::Notice;
use crate::text::{Style, percent};
use leptos::prelude::*;
use pitchline_core::Slot;
use pitchline_core::fit::{Between, Cure, Misfit, MisfitKind, Severity};

/// The button that cures; none for a belt that is not on offer.
fn cured(found: &Fit, cure: Cure) -> Option<Mend> {
    match cure {
        Cure::Change(slot, key) => Mend::change(slot, key),
        Cure::Pick(slot) => Some(Mend::pick(slot)),
        Cure::Belt(place) => found.belt_on_offer(place).map(|part| Mend::take(Slot::Belt, part)),
    }
}

/// What is said of each, and what cures it.
fn misfits(found: &Fit, style: Style) -> Vec<(String, Vec<Mend>)> {
    let one = |misfit: &Misfit| {
        let cures = misfit.cures.iter().filter_map(|cure| cured(found, *cure));
        (said(found, misfit, style), cures.collect())
    };
    found.together.misfits.iter().map(one).collect()
}

/// The list of them.
#[component]
pub(super) fn Amiss() -> impl IntoView {
    let app = use_app();
    let list = Memo::new(move |_| {
        let style = app.style();
        app.fit().map(|found| misfits(&found, style)).unwrap_or_default()
    });
    let told = move || {
        let one = |(text, cures): (String, Vec<Mend>)| {
            let cure = |mend| view! { <Mending mend /> };
            let cures = cures.into_iter().map(cure).collect_view();
            view! {
                <Notice text />
                <p class="cures">{cures}</p>
            }
        };
        let fits = "Belt, motors, deck, box and tyres clear each other and the road, by the sizes entered or assumed.";
        match list.get() {
            none if none.is_empty() => view! { <p class="facts">{fits}</p> }.into_any(),
            some => some.into_iter().map(one).collect_view().into_any(),
        }
    };
    view! { <div role="status">{told}</div> }
}

/// What is said of a misfit.
pub(super) fn said(found: &Fit, misfit: &Misfit, style: Style) -> String {
    let tight = misfit.severity == Severity::Tight;
    match misfit.kind {
        MisfitKind::BeltTooShort { touching_m } => {
            let wrong = format!(
                "The belt on the board is too short: these pulleys touch at {}.",
                mm(style, touching_m)
            );
            with_belt(found, wrong, style)
        }
        MisfitKind::BeltOutOfSlot { centre_m, slot_m: [near, far], miss_m } => {
            let wrong = format!(
                "The belt on the board wants {} from motor shaft to wheel axle; the mount slides from {} to {}, {} short of it.",
                mm(style, centre_m),
                entered(style, near),
                entered(style, far),
                at_least(style, miss_m),
            );
            with_belt(found, wrong, style)
        }
        MisfitKind::BeltOverload { used, .. } => format!(
            "The belt is asked for {} of what it is rated for and may skip or tear.",
            percent(used)
        ),
        MisfitKind::Clearance { between, room_m } if tight => {
            just(name(between), &at_most(style, room_m))
        }
        MisfitKind::Clearance { between, room_m } => {
            let by = at_least(style, -room_m);
            match between {
                Between::Hanger => {
                    format!("The hanger is {by} too narrow for mounts and motors.")
                }
                Between::Axle => format!("The axle is {by} too short for pulley, wheel and nut."),
                other => format!("{}: {by} too little.", name(other)),
            }
        }
        MisfitKind::BoxDrags { room_m } => {
            let by = at_least(style, -room_m);
            format!("The box drags on the road: {by} too low under the rider.")
        }
        MisfitKind::BoxStrikes { room_m, .. } if tight => {
            just("Box to road, off a bump", &at_most(style, room_m))
        }
        MisfitKind::BoxStrikes { bump_m, room_m } => format!(
            "Off a bump of {} the box strikes the road: {} too low.",
            entered(style, bump_m),
            at_least(style, -room_m)
        ),
        MisfitKind::PackInBox { left_m, tightest, .. } if tight => {
            let left = left_m.get(tightest).copied().unwrap_or(0.0);
            just("Pack and controller in the box", &at_most(style, left))
        }
        MisfitKind::PackInBox { left_m, length_for_m, .. } => {
            let would = length_for_m.map_or_else(String::new, |length| {
                let length = at_least(style, length);
                format!(" A box {length} long inside, as wide and as high, takes it.")
            });
            format!("The pack does not go in the box: {}.{would}", short(left_m, style))
        }
        MisfitKind::NearWheelBite { left_m } => {
            just("Deck to tyre, at full lean", &format!("{} of riser", at_most(style, left_m)))
        }
        MisfitKind::WheelBite { wheel: at, lean_deg, most_deg, riser_m } => format!(
            "Wheel bite: leaning {}° the deck touches a {} wheel, which stops it at once and throws the rider. A riser of {} only just keeps them apart up to the {}° that the trucks lean: take some millimetres more, and lean the board by hand as far as it goes before you ride.",
            tenth(style, lean_deg, false),
            wheel(at),
            at_least(style, riser_m),
            tenth(style, most_deg, true),
        ),
    }
}

/// What clears by so little.
#[inline(never)]
fn just(what: &str, left: &str) -> String {
    format!(
        "{what}: tight, {left} left. Sizes entered or assumed are no surer: measure on the board before you ride."
    )
}

/// What is wrong with the belt, and which on offer would fit.
fn with_belt(found: &Fit, wrong: String, style: Style) -> String {
    let pick = found.together.belt.pick();
    let offer = pick.and_then(|belt| Some((belt, found.belt_on_offer(belt.offer?)?)));
    match offer {
        Some((belt, part)) => {
            let at = mm(style, belt.mesh.centre_m);
            format!("{wrong} On offer, {} fits, at {at}.", part.name)
        }
        None => format!("{wrong} No belt on offer fits these pulleys."),
    }
}
