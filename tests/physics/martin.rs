//! The worked example in the appendix of Martin et al. 1998: a bicycle, so the
//! bearings and the change of speed, which the core leaves out, are added here.

use crate::check::{Check, check};
use pitchline_core::physics::road_load::{
    AirForce, RoadLoad, RollingForce, Slope, SlopeForce, WheelPower,
};

const PAPER: &str = "Martin et al. 1998, J. Appl. Biomech. 14:276-291, Appendix I \
    (as transcribed by others; its air density, 1.2234, from memory)";

pub(crate) fn checks() -> Vec<Check> {
    let (mass, ground_speed, grade) = (90.0, 8.36, 0.003);
    let (wind, wind_from, heading) = (2.94, 310.0_f64, 340.0_f64);
    // Frontal area times drag coefficient, and the wheels' own.
    let area = 0.285 * 0.9 + 0.0044;
    let headwind = wind * (wind_from - heading).to_radians().cos();
    let slope = Slope::of_grade(grade);

    let air = AirForce { density: 1.2234, area, speed: ground_speed, wind: headwind }.value();
    let roll = RollingForce { mass, rolling: 0.0032, cos: slope.cos }.value();
    let hill = SlopeForce { mass, sin: slope.sin }.value();
    let watt = |force: f64| WheelPower { force, speed: ground_speed }.value();

    let bearings = ground_speed * (91.0 + 8.7 * ground_speed) * 1e-3;
    let (before, after, seconds) = (8.28_f64, 8.45_f64, 100.0 - 43.58);
    let turning = 0.14 / (0.311_f64 * 0.311);
    let kinetic = 0.5 * (mass + turning) * (after * after - before * before) / seconds;

    let total = (watt(RoadLoad { roll, slope: hill, air }.value()) + bearings + kinetic) / 0.976;
    vec![
        // Printed to 0.1 W, with intermediate rounding of its own.
        check("air of the paper", watt(air), 158.8, 0.2, PAPER),
        check("rolling of the paper", watt(roll), 23.6, 0.1, PAPER),
        check("grade of the paper", watt(hill), 22.1, 0.1, PAPER),
        check("total of the paper", total, 213.3, 0.2, PAPER),
        // Not the core's: that the two terms added above are the paper's.
        check("bearings of the paper", bearings, 1.4, 0.1, PAPER),
        check("change of speed of the paper", kinetic, 2.3, 0.1, PAPER),
    ]
}
