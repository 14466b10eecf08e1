//! Road load: the table of the reference load, by law and through a whole board.

use crate::board::board;
use crate::check::{Check, check, halve};
use pitchline_core::physics::road_load::{
    AirForce, RoadLoad, RollingForce, Slope, SlopeForce, SteepestGrade, WheelPower,
};

const TABLE: &str = "Martin et al. 1998 equations with m 90, Crr 0.012, CdA 0.55, rho 1.225, \
    g 9.80665, evaluated in Python";
const ROOT: &str = "the same equations, roots by scipy 1.17.1";

/// Speed m/s, force N, power W, Wh/km.
const FLAT: [(f64, f64, f64, f64); 7] = [
    (2.0, 11.938_682, 23.877_364, 3.316_301),
    (4.0, 15.981_182, 63.924_728, 4.439_217),
    (6.0, 22.718_682, 136.312_092, 6.310_745),
    (8.0, 32.151_182, 257.209_456, 8.930_884),
    (10.0, 44.278_682, 442.786_820, 12.299_634),
    (12.0, 59.101_182, 709.214_184, 16.416_995),
    (15.0, 86.388_057, 1_295.820_855, 23.996_683),
];

/// Grade, sine, cosine, rolling and slope N, power W at 5 m/s.
const HILLS: [(f64, f64, f64, f64, f64); 6] = [
    (0.02, 0.019_996_00, 0.999_800_06, 28.237_505, 183.296_900),
    (0.05, 0.049_937_62, 0.998_752_34, 54.652_834, 315.373_543),
    (0.10, 0.099_503_72, 0.995_037_19, 98.360_453, 533.911_641),
    (0.15, 0.148_340_45, 0.988_936_35, 141.399_066, 749.104_706),
    (0.20, 0.196_116_14, 0.980_580_68, 183.477_315, 959.495_951),
    (0.25, 0.242_535_63, 0.970_142_50, 224.336_535, 1_163.792_048),
];

/// Power at the wheel W, speed on the flat m/s.
const STEADY: [(f64, f64); 4] =
    [(200.0, 7.168_216_78), (400.0, 9.602_691_04), (800.0, 12.557_032_70), (1500.0, 15.814_895_09)];

/// Grade, terminal speed m/s.
const DOWNHILL: [(f64, f64); 3] =
    [(-0.03, 6.865_715_16), (-0.06, 11.204_117_55), (-0.10, 15.146_357_17)];

fn ground(grade: f64) -> (f64, f64) {
    let slope = Slope::of_grade(grade);
    (
        RollingForce { mass: 90.0, rolling: 0.012, cos: slope.cos }.value(),
        SlopeForce { mass: 90.0, sin: slope.sin }.value(),
    )
}

fn force(speed: f64, grade: f64) -> f64 {
    let (roll, hill) = ground(grade);
    RoadLoad {
        roll,
        slope: hill,
        air: AirForce { density: 1.225, area: 0.55, speed, wind: 0.0 }.value(),
    }
    .value()
}

pub(crate) fn checks() -> Vec<Check> {
    let drive = board(&[]);
    let mut list = vec![
        check(
            "c0",
            RollingForce { mass: 90.0, rolling: 0.012, cos: 1.0 }.value(),
            10.591_182,
            1e-6,
            TABLE,
        ),
        check(
            "c2",
            AirForce { density: 1.225, area: 0.55, speed: 1.0, wind: 0.0 }.value(),
            0.336_875,
            1e-9,
            TABLE,
        ),
        // A following wind faster than the board pushes with the square of the difference.
        check(
            "wind from behind",
            AirForce { density: 1.225, area: 0.55, speed: 2.0, wind: -5.0 }.value(),
            -3.031_875,
            1e-9,
            TABLE,
        ),
        check(
            "headwind",
            AirForce { density: 1.225, area: 0.55, speed: 6.0, wind: 4.0 }.value(),
            33.687_5,
            1e-9,
            TABLE,
        ),
    ];
    for (v, newton, watt, wh_per_km) in FLAT {
        let power = WheelPower { force: force(v, 0.0), speed: v }.value();
        list.push(check(format!("force at {v} m/s"), force(v, 0.0), newton, 1e-6, TABLE));
        list.push(check(format!("power at {v} m/s"), power, watt, 1e-6, TABLE));
        // One newton over a kilometre is a kilojoule: 1/3.6 Wh.
        list.push(check(format!("Wh/km at {v} m/s"), force(v, 0.0) / 3.6, wh_per_km, 1e-6, TABLE));
        // The board's own air is 1.2 parts in 10^8 denser than 1.225.
        let through = drive.load_n(v, Slope::FLAT);
        list.push(check(format!("force on a board at {v} m/s"), through, newton, 3e-6, TABLE));
    }
    for (grade, sin, cos, newton, watt) in HILLS {
        let (roll, hill) = ground(grade);
        let slope = Slope::of_grade(grade);
        list.push(check(format!("sine of {grade}"), slope.sin, sin, 5e-9, TABLE));
        list.push(check(format!("cosine of {grade}"), slope.cos, cos, 5e-9, TABLE));
        list.push(check(format!("roll and slope on {grade}"), roll + hill, newton, 1e-6, TABLE));
        let power = WheelPower { force: force(5.0, grade), speed: 5.0 }.value();
        list.push(check(format!("power on {grade} at 5 m/s"), power, watt, 1e-6, TABLE));
        let back = SteepestGrade { net: newton, mass: 90.0, rolling: 0.012 }.value();
        list.push(check(format!("grade held by {newton} N"), back, grade, 1e-8, TABLE));
        let through = 5.0 * drive.load_n(5.0, slope);
        list.push(check(format!("power of a board on {grade}"), through, watt, 1e-5, TABLE));
    }
    for (watt, speed) in STEADY {
        let found =
            halve(0.1, 40.0, |v| WheelPower { force: force(v, 0.0), speed: v }.value() - watt);
        list.push(check(format!("steady speed at {watt} W"), found, speed, 1e-6, ROOT));
    }
    for (grade, speed) in DOWNHILL {
        let found = halve(0.1, 60.0, |v| force(v, grade));
        list.push(check(format!("terminal speed on {grade}"), found, speed, 1e-6, ROOT));
        let found = halve(0.1, 60.0, |v| drive.load_n(v, Slope::of_grade(grade)));
        list.push(check(format!("terminal speed of a board on {grade}"), found, speed, 1e-6, ROOT));
    }
    list
}
