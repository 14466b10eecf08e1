//! The working of what is said about frame, deck and enclosure.

use super::box_plan;
use super::clearance::{Between, room};
use super::deck;
use super::lean::{self, WheelAt};
use crate::build::{Build, Draft};
use crate::physics::deck::BumpSag;
use crate::working::{Step, Working};
use alloc::vec::Vec;

/// What can show its working.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FrameHeadline {
    /// The room between two parts.
    Clearance(Between),
    /// Sag of the deck in the middle.
    Sag,
    /// Enclosure to the road, standing still.
    Road,
    /// Enclosure to the road at the bottom of a bump.
    BumpRoad,
    /// Break-over angle; its clearance where the enclosure drags.
    BreakOver,
    /// Radius of the turn at the furthest lean.
    Turn,
    /// Lean at which deck and tyre meet.
    Bite(WheelAt),
    /// The same for the wheel that it meets first.
    FirstBite,
    /// Riser that is enough.
    Riser,
    /// Hardness of the bushings.
    Bushing,
    /// Room left in the enclosure, in the direction where it is least.
    BoxRoom,
}

/// The steps that lead there, kept by the same calls that give the answer.
///
/// `centre_m` is the distance between the axles of motor and wheel.
#[must_use]
pub fn frame_working(
    draft: &Draft,
    build: &Build,
    centre_m: f64,
    headline: FrameHeadline,
) -> Vec<Step> {
    let w = &mut Working::on();
    match headline {
        FrameHeadline::Clearance(between) => {
            room(build, centre_m, between, w);
        }
        FrameHeadline::Sag => {
            deck::sag(build, w);
        }
        FrameHeadline::Road => {
            let sag = deck::sag(build, w);
            deck::road(build, sag, w);
        }
        FrameHeadline::BumpRoad => {
            let sag = deck::sag(build, w);
            let sag = w.apply(BumpSag { sag, bump: build.place.bump_m });
            deck::bump_road(build, sag, w);
        }
        FrameHeadline::BreakOver => {
            let sag = deck::sag(build, w);
            let road = deck::road(build, sag, w);
            if road > 0.0 {
                deck::break_over(build, road, w);
            }
        }
        FrameHeadline::Turn => {
            lean::turn_explained(build, build.truck.max_lean_deg, w);
        }
        FrameHeadline::Bite(at) => {
            lean::bite(build, at, w);
        }
        FrameHeadline::FirstBite => {
            let first = lean::lean(draft, build).first_bite();
            lean::bite(build, first.map_or(WheelAt::Rear, |first| first.0), w);
        }
        FrameHeadline::Riser => {
            lean::riser(build, w);
        }
        FrameHeadline::Bushing => {
            lean::bushing(build, w);
        }
        FrameHeadline::BoxRoom => box_plan::explained(draft, build, w),
    }
    core::mem::take(w).into_steps()
}
