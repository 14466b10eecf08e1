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
use pitchline_core::fit::{Between, Clearance};
use pitchline_core::physics::frame::TIGHT_M;
use pitchline_core::{BeltChoice, BeltOnBoard, Slot};

/// A thing that does not fit, or only just.
pub(super) struct Amiss {
    pub(super) said: String,
    cures: Vec<Cure>,
    /// Whether it clears, but by less than sizes are sure to: no misfit, a caution.
    pub(super) tight: bool,
}

impl Amiss {
    fn new(said: String, cures: Vec<Cure>) -> Self {
        Self { said, cures, tight: false }
    }

    /// What clears by so little.
    #[inline(never)]
    fn tight(what: &str, left: String, cures: Vec<Cure>) -> Self {
        let said = format!(
            "{what}: tight, {left} left. Sizes entered or assumed are no surer: measure on the board before you ride."
        );
        Self { said, cures, tight: true }
    }
}

/// What to do about it.
pub(super) enum Cure {
    /// Alter an input.
    Alter(Slot, &'static str),
    /// Pick another part.
    Pick(Slot),
    /// Take this part on offer: its id and its name.
    Take(Slot, String, String),
}

impl Cure {
    pub(super) fn button(self, app: App) -> Node {
        match self {
            Self::Alter(slot, key) => {
                let words = format!("Go to: {}", text::label(slot.kind(), key));
                button(words, move || {
                    if let Some(index) = slot.kind().field_index(key) {
                        lead_to((slot, index));
                    }
                })
            }
            Self::Pick(slot) => {
                button(format!("Go to: {}", words::slot(slot)), move || lead_to_part(slot))
            }
            Self::Take(slot, id, name) => {
                button(format!("Take {name}"), move || app.pick(slot, &id))
            }
        }
        .into()
    }

    /// Taking a belt on offer; none where it is not on offer.
    pub(super) fn take(found: &Found, belt: &BeltChoice) -> Option<(Self, String)> {
        let part = belt.offer.and_then(|place| found.belts.get(place))?;
        let cure = Self::Take(Slot::Belt, part.id.clone(), part.name.clone());
        Some((cure, part.name.clone()))
    }
}

/// The list, and the number of what does not fit for the strip.
pub(super) fn amiss(asked: &Asked) -> Node {
    let (asked, app) = (asked.clone(), asked.app);
    let told = move || {
        let list = asked.get().map_or_else(Vec::new, |found| all(&found, app.style()));
        let count = list.iter().filter(|amiss| !amiss.tight).count();
        // After this run: what runs here may not change what it reads.
        browser::later(0, move || {
            if app.peek(|model| model.amiss) != count {
                app.change(|model| model.amiss = count);
            }
        });
        if list.is_empty() {
            let fits = "Belt, motors, deck, box and tyres clear each other and the road, by the sizes entered or assumed.";
            return el("p").class("facts").with(fits).into();
        }
        let one = |amiss: Amiss| {
            let cures = amiss.cures.into_iter().map(|cure| cure.button(app)).collect::<Node>();
            Node::from(vec![notice(amiss.said), el("p").class("cures").with(cures).into()])
        };
        list.into_iter().map(one).collect()
    };
    el("div").attr("role", "status").with(live(move || app.key(), told)).into()
}

/// Everything that does not fit, or only just, in the order of the question.
pub(super) fn all(found: &Found, style: Style) -> Vec<Amiss> {
    let mut list = Vec::new();
    belt(found, style, &mut list);
    list.extend(found.clearances.iter().filter_map(|c| clearance(c, style)));
    deck(found, style, &mut list);
    list.extend(bite(found, style));
    list
}

fn belt(found: &Found, style: Style, list: &mut Vec<Amiss>) {
    let fit = &found.belt;
    let [near, far] = fit.slot_m;
    let wrong = match fit.on_board {
        BeltOnBoard::TooShort => Some(format!(
            "The belt on the board is too short: these pulleys touch at {}.",
            mm(style, fit.touching_m)
        )),
        BeltOnBoard::Taut(belt) if !belt.in_slot => {
            let centre = belt.mesh.centre_m;
            let by = (near - centre).max(centre - far);
            Some(format!(
                "The belt on the board wants {} from motor shaft to wheel axle; the mount slides from {} to {}, {} short of it.",
                mm(style, centre),
                entered(style, near),
                entered(style, far),
                at_least(style, by),
            ))
        }
        _ => None,
    };
    if let Some(wrong) = wrong {
        let pick = fit.pick();
        list.push(match pick.and_then(|belt| Some((belt, Cure::take(found, belt)?))) {
            Some((belt, (take, name))) => Amiss::new(
                format!("{wrong} On offer, {name} fits, at {}.", mm(style, belt.mesh.centre_m)),
                vec![take, Cure::Pick(Slot::Belt)],
            ),
            None => Amiss::new(
                format!("{wrong} No belt on offer fits these pulleys."),
                vec![
                    Cure::Pick(Slot::WheelPulley),
                    Cure::Pick(Slot::Belt),
                    Cure::Alter(Slot::Truck, "centre_max_mm"),
                ],
            ),
        });
    }
    if fit.load.used > 1.0 {
        let said = format!(
            "The belt is asked for {} of what it is rated for and may skip or tear.",
            percent(fit.load.used, style)
        );
        let braking = fit.load.brake_n > fit.load.drive_n;
        let current = if braking { "brake_current_a" } else { "motor_current_a" };
        let cures = vec![Cure::Pick(Slot::Belt), Cure::Alter(Slot::Controller, current)];
        list.push(Amiss::new(said, cures));
    }
}

fn clearance(c: &Clearance, style: Style) -> Option<Amiss> {
    if c.room_m >= TIGHT_M {
        return None;
    }
    let by = at_least(style, -c.room_m);
    let (said, cures) = match c.between {
        // The flanges reach lower than the belt, and beside two motors and the gap
        // between them the hanger has less room: both are told as those.
        Between::BeltRoad | Between::MotorMotor => return None,
        Between::Hanger => (
            format!("The hanger is {by} too narrow for mounts and motors."),
            vec![Cure::Alter(Slot::Truck, "hanger_width_mm"), Cure::Pick(Slot::Motor)],
        ),
        Between::Axle => (
            format!("The axle is {by} too short for pulley, wheel and nut."),
            vec![Cure::Alter(Slot::Truck, "axle_mm"), Cure::Pick(Slot::Wheel)],
        ),
        other => {
            let cures = match other {
                Between::PulleyRoad => vec![Cure::Pick(Slot::WheelPulley), Cure::Pick(Slot::Wheel)],
                Between::MotorRoad => {
                    vec![Cure::Alter(Slot::Truck, "mount_angle_deg"), Cure::Pick(Slot::Wheel)]
                }
                Between::MotorDeck => vec![
                    Cure::Alter(Slot::Deck, "riser_mm"),
                    Cure::Alter(Slot::Truck, "mount_angle_deg"),
                ],
                Between::MotorBox => vec![
                    Cure::Alter(Slot::Deck, "box_ahead_mm"),
                    Cure::Alter(Slot::Deck, "box_length_mm"),
                ],
                _ => vec![Cure::Pick(Slot::Belt), Cure::Pick(Slot::Motor)],
            };
            (format!("{}: {by} too little.", name(other)), cures)
        }
    };
    Some(if c.room_m < 0.0 {
        Amiss::new(said, cures)
    } else {
        Amiss::tight(name(c.between), at_most(style, c.room_m), cures)
    })
}

fn deck(found: &Found, style: Style, list: &mut Vec<Amiss>) {
    let deck = &found.deck;
    let raise =
        || vec![Cure::Alter(Slot::Deck, "riser_mm"), Cure::Alter(Slot::Deck, "box_height_mm")];
    if deck.road_m < 0.0 {
        let by = at_least(style, -deck.road_m);
        let said = format!("The box drags on the road: {by} too low under the rider.");
        list.push(Amiss::new(said, raise()));
    } else if deck.bump_road_m < 0.0 {
        let said = format!(
            "Off a bump of {} the box strikes the road: {} too low.",
            entered(style, found.build.place.bump_m),
            at_least(style, -deck.bump_road_m)
        );
        list.push(Amiss::new(said, raise()));
    } else if deck.bump_road_m < TIGHT_M {
        let left = at_most(style, deck.bump_road_m);
        list.push(Amiss::tight("Box to road, off a bump", left, raise()));
    }
    let cells = &found.cells;
    if cells.fits {
        let left = cells.left_m.get(cells.tightest).copied().unwrap_or(0.0);
        if left < TIGHT_M {
            let cures = vec![Cure::Pick(Slot::Pack)];
            list.push(Amiss::tight("Pack and controller in the box", at_most(style, left), cures));
        }
        return;
    }
    let keys = ["box_length_mm", "box_width_mm", "box_height_mm"];
    let over = cells.left_m.iter().zip(keys).filter(|(left, _)| **left < 0.0);
    let mut cures: Vec<_> = over.map(|(_, key)| Cure::Alter(Slot::Deck, key)).collect();
    let would = cells.length_for_m.map_or_else(String::new, |length| {
        format!(" A box {} long inside, as wide and as high, takes it.", at_least(style, length))
    });
    cures.push(Cure::Pick(Slot::Pack));
    let said = format!("The pack does not go in the box: {}.{would}", short(found, style));
    list.push(Amiss::new(said, cures));
}

fn bite(found: &Found, style: Style) -> Option<Amiss> {
    let cures = vec![Cure::Alter(Slot::Deck, "riser_mm"), Cure::Pick(Slot::Wheel)];
    if let Some(left) = found.lean.left_m {
        let left = format!("{} of riser", at_most(style, left));
        return Some(Amiss::tight("Deck to tyre, at full lean", left, cures));
    }
    let (at, angle) = found.lean.first_bite().filter(|_| found.lean.bites)?;
    let said = format!(
        "Wheel bite: leaning {}° the deck touches a {} wheel, which stops it at once and throws the rider. A riser of {} only just keeps them apart up to the {}° that the trucks lean: take some millimetres more, and lean the board by hand as far as it goes before you ride.",
        tenth(style, angle, false),
        wheel(at),
        at_least(style, found.lean.riser_m),
        tenth(style, found.build.truck.max_lean_deg, true),
    );
    Some(Amiss::new(said, cures))
}
