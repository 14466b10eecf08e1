//! Where the parts stand, for drawings to scale.

use crate::build::Build;
use crate::math::sine_cosine;
use crate::physics::belt_geometry::{PulleyOutside, pitch_line_m};
use crate::physics::frame::{
    CORE_SHARE, DECK_END_SHARE, DeckHeight, FLANGE_HEIGHT_M, MOUNT_M, MotorHeight, PulleyWidth,
    TOOTH_SHARE, WASHER_M,
};
use crate::physics::lean::{FlankOuter, FlankRear};
use serde::Serialize;

/// Places and sizes of what is on the board, with the board upright and level.
///
/// Heights are above the road. Across, places are from the middle of the board,
/// along it from the rear axle.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct Layout {
    /// Height of the axles, m.
    pub axle_up_m: f64,
    /// Height of the motor's shaft, m.
    pub motor_up_m: f64,
    /// How far the motor's shaft stands ahead of the rear axle, m.
    pub motor_ahead_m: f64,
    /// Diameter over the teeth: motor pulley, wheel pulley, m.
    pub pulleys_m: [f64; 2],
    /// Height of their teeth, by the belt's pitch alone, m.
    pub tooth_m: f64,
    /// Diameter over the wheel pulley's flanges, which stand out beyond the belt, m.
    pub flanges_m: f64,
    /// The wheel pulley across, with its flanges: from and to, m.
    pub pulley_across_m: [f64; 2],
    /// A rear wheel across: inner and outer flank, m.
    pub wheel_across_m: [f64; 2],
    /// Diameter of a wheel's core, a usual share of the wheel's; it never meets the road, m.
    pub core_m: f64,
    /// An axle end across: from the hanger's shoulder to the tip, m.
    pub axle_across_m: [f64; 2],
    /// A mount's plate across, m.
    pub mount_across_m: [f64; 2],
    /// A motor's can across, m; below 0 beyond the middle.
    pub can_across_m: [f64; 2],
    /// Height of the deck's underside at the axles, m.
    pub deck_up_m: f64,
    /// How far the deck reaches beyond each axle, a usual share of the wheelbase, m.
    pub deck_end_m: f64,
    /// Outside of the enclosure: length, width, and depth below the deck, m.
    pub box_m: [f64; 3],
    /// How much wider that is than the deck over the wheels, m; negative where it is narrower.
    pub box_beyond_deck_m: f64,
}

/// The teeth of a pulley for the board's belt, and what is over them. Where no table
/// has the pitch, the pitch line stands off in the same share as at 5 mm.
pub(super) fn over_teeth(build: &Build, teeth: f64) -> PulleyOutside {
    let pitch = build.belt.pitch_m;
    PulleyOutside { teeth, pitch, above: pitch_line_m(pitch).unwrap_or(0.114_3 * pitch) }
}

/// Where the parts stand, with the motor's shaft at a distance from the wheel's axle, m.
#[must_use]
pub fn layout(build: &Build, centre_m: f64) -> Layout {
    let Build { truck, deck, wheel, motor, .. } = build;
    let axle_up_m = wheel.radius_m();
    let outside = |teeth: f64| over_teeth(build, teeth).value();
    let [small, large] = [build.motor_pulley.teeth, build.wheel_pulley.teeth].map(outside);
    let pulley = PulleyWidth { belt: build.belt.width_m }.value();
    let shoulder = truck.hanger_width_m / 2.0;
    let flank = FlankRear { hanger: truck.hanger_width_m, pulley }.value();
    let plate = shoulder - MOUNT_M;
    let walls = 2.0 * deck.box_wall_m;
    let wide = deck.box_width_m + walls;
    Layout {
        axle_up_m,
        motor_up_m: MotorHeight {
            radius: axle_up_m,
            centre: centre_m,
            angle: truck.mount_angle_deg,
        }
        .value(),
        motor_ahead_m: centre_m * sine_cosine(truck.mount_angle_deg).1,
        pulleys_m: [small, large],
        tooth_m: TOOTH_SHARE * build.belt.pitch_m,
        flanges_m: large + 2.0 * FLANGE_HEIGHT_M,
        pulley_across_m: [shoulder + WASHER_M, flank],
        wheel_across_m: [flank, FlankOuter { flank, wheel: wheel.width_m }.value()],
        core_m: (CORE_SHARE * wheel.diameter_m).min(2.0 * axle_up_m),
        axle_across_m: [shoulder, shoulder + truck.axle_m],
        mount_across_m: [plate, shoulder],
        can_across_m: [plate - motor.can_length_m, plate],
        deck_up_m: DeckHeight { radius: axle_up_m, truck: truck.height_m, riser: deck.riser_m }
            .value(),
        deck_end_m: DECK_END_SHARE * deck.wheelbase_m,
        box_m: [deck.box_length_m + walls, wide, deck.box_height_m + deck.box_wall_m],
        box_beyond_deck_m: wide - deck.width_m,
    }
}
