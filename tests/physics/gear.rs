//! Gear train and belt.

use crate::check::{Check, check};
use pitchline_core::physics::gear::{
    BeltPull, ElectricalRpm, GearRatio, MotorSpeed, PushForce, ShaftTorque,
};
use std::f64::consts::PI;

const PITCH: &str = "pitch diameter Z p / pi, tabulated for 5 mm pitch, and pull 2 T / d";
const RIM: &str = "geometry: belt and rim move alike, so force times speed is kept";
const TURNS: &str = "definition: pole pairs times revolutions a minute";

/// Teeth, pitch diameter in mm at 5 mm pitch.
const PULLEYS: [(f64, f64); 10] = [
    (14.0, 22.2817),
    (15.0, 23.8732),
    (16.0, 25.4648),
    (18.0, 28.6479),
    (20.0, 31.8310),
    (32.0, 50.9296),
    (36.0, 57.2958),
    (40.0, 63.6620),
    (44.0, 70.0282),
    (60.0, 95.4930),
];

/// Pole pairs, revolutions a minute, electrical revolutions a minute.
const TURNING: [(f64, f64, f64); 3] =
    [(7.0, 1000.0, 7000.0), (7.0, 8500.0, 59_500.0), (5.0, 12_000.0, 60_000.0)];

pub(crate) fn checks() -> Vec<Check> {
    let mut list = Vec::new();
    for (teeth, diameter_mm) in PULLEYS {
        let want = 2.0 * 1.7 / (1e-3 * diameter_mm);
        let pull = BeltPull { torque: 1.7, teeth, pitch: 0.005 }.value();
        // The diameter is printed to 0.1 µm: 2 to 5 parts in a million.
        list.push(check(format!("pull on {teeth} teeth"), pull, want, 5e-6 * want, PITCH));
    }
    for (pairs, rpm, erpm) in TURNING {
        let got = ElectricalRpm { omega: rpm * PI / 30.0, pairs }.value();
        list.push(check(format!("{pairs} pairs at {rpm} rpm"), got, erpm, 1e-8, TURNS));
    }
    for (motor, wheel, v, r) in
        [(16.0, 40.0, 10.0, 0.048), (15.0, 36.0, 8.0, 0.0435), (14.0, 60.0, 9.0, 0.0735)]
    {
        let omega =
            MotorSpeed { ratio: GearRatio { wheel, motor }.value(), speed: v, radius: r }.value();
        // Belt speed at the wheel pulley and at the motor pulley.
        let at_wheel = v / r * wheel * 0.005 / (2.0 * PI);
        let at_motor = omega * motor * 0.005 / (2.0 * PI);
        let name = format!("belt speed of {motor}/{wheel}");
        list.push(check(name, at_motor, at_wheel, 1e-12, RIM));
        // 80 N of two motors without loss: 40 N times v from each shaft.
        let torque = ShaftTorque {
            force: 80.0,
            radius: r,
            ratio: wheel / motor,
            efficiency: 1.0,
            motors: 2.0,
        }
        .value();
        let name = format!("shaft power of {motor}/{wheel}");
        list.push(check(name, torque * omega, 40.0 * v, 1e-9, RIM));
        let back = PushForce {
            torque: torque / 0.94,
            ratio: wheel / motor,
            efficiency: 0.94,
            motors: 2.0,
            radius: r,
        }
        .value();
        let name = format!("push of {motor}/{wheel} through a lossy belt");
        list.push(check(name, back, 80.0, 1e-11, RIM));
    }
    list
}
