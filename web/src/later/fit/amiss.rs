//! What does not fit, all of it in one place, each with what cures it.

use super::deck::short;
use super::found::{Asked, Found};
use super::frame::name;
use super::lean::wheel;
use super::view::{at_least, at_most, entered, mm, percent, tenth};
use crate::ask::{lead_to, lead_to_part};
use crate::browser;
use crate::component::{button, notice};
use crate::dom::{Node, el, live};
use crate::state::App;
use crate::text::{self, Style, words};
use pitchline_core::fit::{Between, Cure, Misfit, MisfitKind, Severity};
use pitchline_core::{Record, Slot};

/// The button that cures; none for a belt that is not on offer.
fn cured(found: &Found, cure: Cure, app: App) -> Node {
    match cure {
        Cure::Change(slot, key) => {
            let words = format!("Go to: {}", text::label(slot.kind(), key));
            let lead = move || {
                if let Some(index) = slot.kind().field_index(key) {
                    lead_to((slot, index));
                }
            };
            button(words, lead).into()
        }
        Cure::Pick(slot) => {
            button(format!("Go to: {}", words::slot(slot)), move || lead_to_part(slot)).into()
        }
        Cure::Belt(place) => found.belt_on_offer(place).map_or(Node::None, |part| take(part, app)),
    }
}

/// The button that puts a belt on the board.
pub(super) fn take(belt: &Record, app: App) -> Node {
    let id = belt.id.clone();
    button(format!("Take {}", belt.name), move || app.pick(Slot::Belt, &id)).into()
}

/// The list, and the number of what does not fit for the strip.
pub(super) fn amiss(asked: &Asked) -> Node {
    let (asked, app) = (asked.clone(), asked.app);
    let told = move || {
        let found = asked.get();
        let list = found.as_ref().map_or(&[][..], |found| &found.misfits);
        let count = list.iter().filter(|one| one.severity == Severity::DoesNotFit).count();
        // After this run: what runs here may not change what it reads.
        browser::later(0, move || {
            if app.peek(|model| model.amiss) != count {
                app.change(|model| model.amiss = count);
            }
        });
        let Some(found) = found.as_ref().filter(|_| !list.is_empty()) else {
            let fits = "Belt, motors, deck, box and tyres clear each other and the road, by the sizes entered or assumed.";
            return el("p").class("facts").with(fits).into();
        };
        let one = |misfit: &Misfit| {
            let cures = misfit.cures.iter().map(|cure| cured(found, *cure, app)).collect::<Node>();
            let told = notice(said(found, misfit, app.style()));
            Node::from(vec![told, el("p").class("cures").with(cures).into()])
        };
        list.iter().map(one).collect()
    };
    el("div").attr("role", "status").with(live(move || app.key(), told)).into()
}

/// What is said of a misfit.
pub(super) fn said(found: &Found, misfit: &Misfit, style: Style) -> String {
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
            percent(used, style)
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
fn with_belt(found: &Found, wrong: String, style: Style) -> String {
    let pick = found.belt.pick();
    let offer = pick.and_then(|belt| Some((belt, found.belt_on_offer(belt.offer?)?)));
    match offer {
        Some((belt, part)) => {
            let at = mm(style, belt.mesh.centre_m);
            format!("{wrong} On offer, {} fits, at {at}.", part.name)
        }
        None => format!("{wrong} No belt on offer fits these pulleys."),
    }
}
