//! Ratings against what is asked: three builds worked by hand (`fixture/margins.json`, with the
//! working of each line), and the current on a hill from the raw equations.

use pitchline_core::{
    Build, Convention, Draft, Drive, Margin, Margins, Rating, Sag, Slot, answers, margins,
};
use serde_json::Value;
use std::f64::consts::PI;

fn fixture() -> Vec<Value> {
    let text = include_str!("../fixture/margins.json");
    let file: Value = serde_json::from_str(text).expect("the fixture is JSON");
    file["builds"].as_array().cloned().expect("it has builds")
}

fn build_of(case: &Value) -> Build {
    let mut draft = Draft::typical();
    for (slot, values) in case["set"].as_object().expect("slots") {
        for (key, value) in values.as_object().expect("values") {
            let slot = Slot::from_key(slot).expect("a slot");
            assert!(slot.kind().field_index(key).is_some(), "{key}");
            draft.set(slot, key, value.as_f64().expect("a number"));
        }
    }
    Build::check(&draft).expect("in range")
}

fn name(rating: Rating) -> String {
    serde_json::to_value(rating).expect("a name").as_str().unwrap_or_default().to_owned()
}

fn one(found: &Margins, rating: &str) -> Margin {
    let at = found.list.iter().find(|margin| name(margin.rating) == rating);
    *at.unwrap_or_else(|| panic!("{rating} is not in {found:#?}"))
}

fn close(what: &str, found: f64, wanted: f64, within: f64) {
    assert!((found - wanted).abs() <= within * wanted.abs(), "{what}: {found}, not {wanted}");
}

/// Motor and pack current that hold the cruising speed on the rider's hill: the equations of the
/// model (Martin et al. 1998; the sinusoidal and the direct motor; ISO 2533), solved step by step.
fn on_hill(b: &Build) -> [f64; 2] {
    let g = 9.806_65;
    let (v, alpha) = (b.ride.cruise_m_s, b.ride.grade.atan());
    let pressure: f64 = 101_325.0 * (1.0 - 2.255_77e-5 * b.place.altitude_m).powf(5.255_88);
    let density = pressure / (287.052_87 * (b.place.air_c + 273.15));
    let rolling = b.wheel.rolling(b.place.surface);
    let wind = v + b.place.headwind_m_s;
    let force = b.mass_kg() * g * (rolling * alpha.cos() + alpha.sin())
        + 0.5 * density * b.drag_area_m2() * wind * wind.abs();
    let ratio = b.wheel_pulley.teeth / b.motor_pulley.teeth;
    let radius = 0.5 * b.wheel.diameter_m - b.wheel.deflection_m;
    let n = b.truck.motor_count;
    let torque = force * radius / (ratio * b.belt.efficiency * n);
    let omega = ratio * v / radius;
    let direct = 60.0 / (2.0 * PI * b.motor.kv_rpm_per_v);
    let share = b.motor.hysteresis_share;
    let slowed = omega / (b.motor.no_load_rpm * PI / 30.0);
    let iron = direct * b.motor.no_load_a * (share + (1.0 - share) * slowed);
    let (constant, copper, on) = match b.controller.convention {
        Convention::PeakPhase => (0.75_f64.sqrt() * direct, 0.75, 1.5),
        Convention::Direct => (direct, 1.0, 2.0),
    };
    let current = (torque + iron) / constant;
    let warm = b.motor.resistance_ll_ohm * (1.0 + 0.003_93 * (b.ride.winding_c - 20.0));
    let heat = copper * warm + on * b.controller.switch_ohm;
    let supply = Drive::new(b).supply(0.5, Sag::Sustained);
    let mut pack = 0.0;
    for _ in 0..200 {
        let bus = supply.open_v - supply.resistance_ohm * pack;
        let each = constant * current * omega
            + heat * current * current
            + b.controller.switching_share * bus * current
            + b.controller.idle_w;
        pack = n * each / bus;
    }
    [current, pack]
}

#[test]
fn ratings_are_what_was_worked_by_hand() {
    for case in fixture() {
        let build = build_of(&case);
        let found = margins(&build);
        let [motor_a, pack_a] = on_hill(&build);
        let rms = match build.controller.convention {
            Convention::PeakPhase => 0.5_f64.sqrt(),
            Convention::Direct => (2.0_f64 / 3.0).sqrt(),
        };
        for line in case["ratings"].as_array().expect("ratings") {
            let rating = line["rating"].as_str().expect("a name");
            let margin = one(&found, rating);
            let raw = match rating {
                "motor_continuous" => motor_a,
                "motor_connector" => rms * motor_a,
                _ => pack_a,
            };
            let (asked, within) = line["asked"].as_f64().map_or((raw, 1e-4), |asked| (asked, 1e-9));
            close(rating, margin.asked, asked, within);
            close(rating, margin.bears, line["bears"].as_f64().expect("a number"), 1e-9);
            close(rating, margin.left, 1.0 - asked / margin.bears, 1e-3);
            assert_eq!(
                serde_json::to_value(margin.occasion).ok().as_ref(),
                Some(&line["occasion"])
            );
            match line["briefly"].as_f64() {
                Some(briefly) => close(rating, margin.briefly.expect("more"), briefly, 1e-9),
                None => assert_eq!(margin.briefly, None, "{rating}"),
            }
        }
        let missing: Vec<String> = found.missing.iter().map(|rating| name(*rating)).collect();
        let mut wanted: Vec<&str> =
            case["missing"].as_array().expect("a list").iter().filter_map(Value::as_str).collect();
        let mut missing: Vec<&str> = missing.iter().map(String::as_str).collect();
        missing.sort_unstable();
        wanted.sort_unstable();
        assert_eq!(missing, wanted, "{}", case["name"]);
    }
}

/// Turns of motor and wheel at the top speed that the board is answered to have, by its teeth and its
/// loaded radius: 36 to 16, 47.5 mm, 7 pole pairs.
#[test]
fn speeds_are_those_of_the_top_speed() {
    let mut draft = Draft::typical();
    draft.set(Slot::Wheel, "bearing_rpm", 9000.0);
    draft.set(Slot::Controller, "rated_erpm", 90_000.0);
    let build = Build::check(&draft).expect("in range");
    let top = answers(&build).speed.flat_full.speed_m_s;
    let found = margins(&build);
    let wheel_rpm = 60.0 * top / (2.0 * PI * 0.0475);
    close("bearings", one(&found, "bearings").asked, wheel_rpm, 1e-9);
    let erpm = 7.0 * 2.25 * wheel_rpm;
    close("erpm", one(&found, "controller_speed").asked, erpm, 1e-9);
    // What the controller is told, it keeps to.
    draft.set(Slot::Controller, "erpm_limit", 30_000.0);
    let found = margins(&Build::check(&draft).expect("in range"));
    close("erpm", one(&found, "controller_speed").asked, 30_000.0, 1e-6);
}

/// Regen into a full pack: the current through what the pack resists, on top of its full voltage.
#[test]
fn a_full_pack_is_pushed_above_its_voltage() {
    let build = Build::check(&Draft::typical()).expect("in range");
    let ohm = Drive::new(&build).supply(1.0, Sag::Burst).resistance_ohm;
    let margin = one(&margins(&build), "full_pack_regen");
    close("full pack", margin.asked, 42.0 + 2.0 * 8.0 * ohm, 1e-9);
    // 1.2 % over full: common practice, no source.
    close("full pack", margin.bears, 42.0 * 1.012, 1e-12);
}
