//! What pulleys do to speed and push, over everything that the demo offers.

use crate::{build, demo};
use pitchline_core::catalog::Catalog;
use pitchline_core::physics::road_load::Slope;
use pitchline_core::{Draft, Drive, Limit, Mode, Push, Record, Sag, Slot};

/// All that the parts give.
const OPEN: Mode = Mode { current_share: 1.0, speed_cap_m_s: None };

/// Top speed on the flat with a full pack, km/h.
pub(crate) fn top_km_h(draft: &Draft) -> f64 {
    let drive = Drive::new(&build(draft));
    drive.top_speed(&drive.supply(1.0, Sag::Burst), &OPEN, Slope::FLAT).speed_m_s * 3.6
}

/// Push of a full pack at 10 km/h.
fn push(draft: &Draft) -> Push {
    let drive = Drive::new(&build(draft));
    drive.push(&drive.supply(1.0, Sag::Burst), &OPEN, 10.0 / 3.6, Slope::FLAT)
}

fn teeth(part: &Record, slot: Slot) -> f64 {
    part.value(slot.kind().field_index("teeth").unwrap()).unwrap()
}

/// For every offered pack, motor, wheel and motor pulley: drafts with the
/// offered wheel pulleys, smallest first.
fn rows(catalog: &Catalog, kit: &str) -> Vec<Vec<Draft>> {
    let mut wheel_pulleys = catalog.offered(kit, Slot::WheelPulley);
    wheel_pulleys
        .sort_by(|a, b| teeth(a, Slot::WheelPulley).total_cmp(&teeth(b, Slot::WheelPulley)));
    let mut drafts = vec![catalog.draft(kit)];
    for slot in [Slot::Pack, Slot::Motor, Slot::Wheel, Slot::MotorPulley] {
        let with = |draft: &Draft, part: &Record| {
            let mut draft = draft.clone();
            draft.set_record(slot, part.clone());
            catalog.follow_pack(&mut draft);
            draft
        };
        let offered = catalog.offered(kit, slot);
        drafts = drafts.iter().flat_map(|d| offered.iter().map(|p| with(d, p))).collect();
    }
    let row = |draft: &Draft| {
        let with = |part: &&Record| {
            let mut draft = draft.clone();
            draft.set_record(Slot::WheelPulley, (*part).clone());
            draft
        };
        wheel_pulleys.iter().map(with).collect()
    };
    drafts.iter().map(row).collect()
}

/// Common practice, no source: a larger wheel pulley pushes harder and tops out
/// lower. Where torque binds the push grows as the teeth do (gear ratio; the
/// motor's own drag takes a little of it back).
#[test]
fn a_larger_wheel_pulley_gives_more_push_and_less_speed() {
    let demo = demo();
    for kit in &demo.kits {
        let mut torque_bound = 0;
        let rows = rows(&demo, &kit.id);
        for pair in rows.iter().flat_map(|row| row.windows(2)) {
            let (small, large) = (&pair[0], &pair[1]);
            let name = |d: &Draft| {
                [Slot::Pack, Slot::Motor, Slot::Wheel, Slot::MotorPulley, Slot::WheelPulley]
                    .map(|slot| d.record(slot).id.clone())
            };
            assert!(top_km_h(large) < top_km_h(small), "{:?}", name(large));
            let (less, more) = (push(small), push(large));
            let by_torque = |p: &Push| {
                matches!(p.limit, Limit::ControllerMotorCurrent | Limit::MotorCurrent | Limit::Belt)
            };
            if by_torque(&less) && by_torque(&more) {
                torque_bound += 1;
                let slot = Slot::WheelPulley;
                let ratio = teeth(large.record(slot), slot) / teeth(small.record(slot), slot);
                let grown = more.force_n / less.force_n;
                assert!(grown > 1.0, "{:?}", name(large));
                assert!((grown / ratio - 1.0).abs() < 0.01, "{:?}: {grown}", name(large));
            } else {
                assert!(more.force_n >= less.force_n, "{:?}", name(large));
            }
        }
        let pairs: usize = rows.iter().map(|row| row.len() - 1).sum();
        assert!(2 * torque_bound > pairs, "{}: {torque_bound} of {pairs}", kit.id);
    }
}

/// Common practice, no source: teeth and belts of street and rough-road kits.
#[test]
fn pulleys_and_belts_are_of_the_usual_size() {
    let demo = demo();
    for (kit, wheel_pulleys) in [("kittiwake", 32.0..=46.0), ("gannet", 60.0..=74.0)] {
        for part in demo.offered(kit, Slot::WheelPulley) {
            assert!(wheel_pulleys.contains(&teeth(part, Slot::WheelPulley)), "{}", part.id);
        }
        for part in demo.offered(kit, Slot::MotorPulley) {
            assert!((13.0..=21.0).contains(&teeth(part, Slot::MotorPulley)), "{}", part.id);
        }
        let usual = demo.draft(kit).value(Slot::MotorPulley, "teeth").unwrap();
        assert!((14.0..=19.0).contains(&usual));
        for draft in rows(&demo, kit).into_iter().flatten() {
            let width = build(&draft).belt.width_m;
            assert!([0.012, 0.015, 0.020].contains(&width));
        }
    }
}
