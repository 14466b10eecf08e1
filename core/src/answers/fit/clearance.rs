//! What is between two parts.

use super::layout::over_teeth;
use super::{Row, assumed};
use crate::build::{Build, Draft};
use crate::parts::Slot;
use crate::physics::frame::{
    AxleRoom, AxleTaken, BeltRoad, DeckHeight, HangerRoom, HubWidth, MotorBox, MotorDeck,
    MotorHeight, MotorMotor, MotorRoad, MotorWheel, PulleyRoad, PulleyWidth, WheelAcross,
    WheelAlong,
};
use crate::source::Standing;
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

listed! {
    /// The two parts that a clearance is between.
    #[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
    #[cfg_attr(feature = "schema", derive(ts_rs::TS))]
    #[serde(rename_all = "snake_case")]
    pub enum Between {
        /// The wheel pulley's flange and the road.
        PulleyRoad,
        /// The belt under the wheel pulley and the road.
        BeltRoad,
        /// The motor's can and the road.
        MotorRoad,
        /// The motor's can and the wheel beside it.
        MotorWheel,
        /// The motor's can and the deck above it.
        MotorDeck,
        /// The motor's can and the enclosure, along the board.
        MotorBox,
        /// The cans of two motors; only where there are two.
        MotorMotor,
        /// The hanger's width, and mounts and motors on it.
        Hanger,
        /// The axle's length, and what is on it.
        Axle,
    }
}

impl Between {
    /// The inputs it rests on that may have been assumed.
    const fn inputs(self) -> &'static [(Slot, &'static str)] {
        const TREAD: (Slot, &str) = (Slot::Wheel, "deflection_mm");
        const CAN: (Slot, &str) = (Slot::Motor, "can_diameter_mm");
        const LONG: (Slot, &str) = (Slot::Motor, "can_length_mm");
        const MOUNT: (Slot, &str) = (Slot::Truck, "mount_angle_deg");
        const HANGER: (Slot, &str) = (Slot::Truck, "hanger_width_mm");
        match self {
            Self::PulleyRoad | Self::BeltRoad => &[TREAD, (Slot::Belt, "pitch_mm")],
            Self::MotorRoad => &[TREAD, CAN, MOUNT],
            Self::MotorWheel => &[CAN],
            Self::MotorDeck => &[CAN, MOUNT, (Slot::Truck, "height_mm"), (Slot::Deck, "riser_mm")],
            Self::MotorBox => &[
                CAN,
                MOUNT,
                (Slot::Deck, "wheelbase_mm"),
                (Slot::Deck, "box_length_mm"),
                (Slot::Deck, "box_wall_mm"),
                (Slot::Deck, "box_ahead_mm"),
            ],
            Self::MotorMotor | Self::Hanger => &[HANGER, LONG],
            Self::Axle => {
                &[(Slot::Truck, "axle_mm"), (Slot::Wheel, "width_mm"), (Slot::Wheel, "spacer_mm")]
            }
        }
    }
}

/// The room between two parts.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Clearance {
    /// Which two.
    pub between: Between,
    /// The room, m; negative is by how much they do not go together.
    pub room_m: f64,
    /// Inputs that were assumed for it.
    pub assumed: Vec<Row>,
    /// Whether an allowance went in that is common practice, such as a flange's height.
    pub practice: bool,
}

/// Every clearance with the motor's axle at a distance from the wheel's, m.
///
/// ```
/// use pitchline_core::fit::{Between, clearances};
/// use pitchline_core::{Build, Draft, Slot};
///
/// let room = |wheel_mm: f64, hanger_mm: f64, between: Between| {
///     let mut draft = Draft::typical();
///     draft.set(Slot::Wheel, "diameter_mm", wheel_mm);
///     draft.set(Slot::Truck, "hanger_width_mm", hanger_mm);
///     let all = clearances(&draft, &Build::check(&draft).unwrap(), 0.072);
///     all.into_iter().find(|found| found.between == between).unwrap().room_m
/// };
/// // A wheel 10 mm larger lifts the wheel pulley by 5 mm; a hanger 10 mm wider parts the motors by
/// // as much.
/// let lifted = room(107.0, 184.0, Between::PulleyRoad) - room(97.0, 184.0, Between::PulleyRoad);
/// let parted = room(97.0, 194.0, Between::MotorMotor) - room(97.0, 184.0, Between::MotorMotor);
/// assert!((lifted - 0.005).abs() < 1e-12 && (parted - 0.010).abs() < 1e-12);
/// ```
#[must_use]
pub fn clearances(draft: &Draft, build: &Build, centre_m: f64) -> Vec<Clearance> {
    let mut found = Vec::new();
    for between in Between::ALL {
        if between == Between::MotorMotor && build.truck.motor_count < 2.0 {
            continue;
        }
        let mut w = Working::on();
        let room_m = room(build, centre_m, between, &mut w);
        found.push(Clearance {
            between,
            room_m,
            assumed: assumed(draft, between.inputs()),
            practice: w
                .steps()
                .iter()
                .any(|step| step.formula.source.standing == Standing::CommonPractice),
        });
    }
    found
}

pub(super) fn room(build: &Build, centre_m: f64, between: Between, w: &mut Working) -> f64 {
    let Build { motor, truck, wheel, deck, belt, .. } = build;
    let outer = |w: &mut Working| w.apply(over_teeth(build, build.wheel_pulley.teeth));
    let pulley_width = |w: &mut Working| w.apply(PulleyWidth { belt: belt.width_m });
    let motor_height = |radius: f64, w: &mut Working| {
        w.apply(MotorHeight { radius, centre: centre_m, angle: truck.mount_angle_deg })
    };
    match between {
        Between::PulleyRoad => {
            let (radius, outer) = (wheel.radius_explained(w), outer(w));
            w.apply(PulleyRoad { radius, outer })
        }
        Between::BeltRoad => {
            let (radius, outer) = (wheel.radius_explained(w), outer(w));
            w.apply(BeltRoad { radius, outer })
        }
        Between::MotorRoad => {
            let radius = wheel.radius_explained(w);
            let height = motor_height(radius, w);
            w.apply(MotorRoad { height, can: motor.can_diameter_m })
        }
        Between::MotorDeck => {
            let radius = wheel.radius_explained(w);
            let under = w.apply(DeckHeight { radius, truck: truck.height_m, riser: deck.riser_m });
            let height = motor_height(radius, w);
            w.apply(MotorDeck { deck: under, height, can: motor.can_diameter_m })
        }
        Between::MotorWheel => {
            let width = pulley_width(w);
            let across = w.apply(WheelAcross {
                centre: centre_m,
                wheel: wheel.diameter_m,
                can: motor.can_diameter_m,
            });
            let along = w.apply(WheelAlong { pulley: width });
            w.apply(MotorWheel { across, along })
        }
        Between::MotorBox => w.apply(MotorBox {
            base: deck.wheelbase_m,
            length: deck.box_length_m,
            ahead: deck.box_ahead_m,
            wall: deck.box_wall_m,
            centre: centre_m,
            angle: truck.mount_angle_deg,
            can: motor.can_diameter_m,
        }),
        Between::MotorMotor => {
            w.apply(MotorMotor { hanger: truck.hanger_width_m, can: motor.can_length_m })
        }
        Between::Hanger => w.apply(HangerRoom {
            hanger: truck.hanger_width_m,
            motors: truck.motor_count,
            can: motor.can_length_m,
        }),
        Between::Axle => {
            let width = pulley_width(w);
            let hub = w.apply(HubWidth { spacer: wheel.spacer_m });
            let taken = w.apply(AxleTaken { pulley: width, wheel: wheel.width_m, hub });
            w.apply(AxleRoom { axle: truck.axle_m, taken })
        }
    }
}
