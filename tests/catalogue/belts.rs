//! The demo's belts, pulleys and mounts: what is on offer goes together.

use crate::{build, demo};
use pitchline_core::catalog::Catalog;
use pitchline_core::{
    Belt, BeltFit, BeltList, BeltOffers, BeltOnBoard, Draft, Drive, Slot, belt_fit,
};

/// How the belts that a kit offers fit a draft.
fn fit(catalog: &Catalog, draft: &Draft) -> BeltFit {
    let offered = catalog.offered(&draft.kit, Slot::Belt);
    let belts: Vec<_> =
        offered.iter().map(|belt| Belt::from_record(belt).expect("a belt without fault")).collect();
    let offers = BeltOffers { belts: &belts, motor_pulleys: &[], wheel_pulleys: &[] };
    belt_fit(&Drive::new(&build(draft)), &offers)
}

#[test]
fn each_kit_comes_with_a_belt_that_fits() {
    let demo = demo();
    for kit in &demo.kits {
        let fit = fit(&demo, &demo.draft(&kit.id));
        let BeltOnBoard::Taut(belt) = fit.on_board else { panic!("{}: {fit:?}", kit.id) };
        // A millimetre on either side, to put it on and to tighten it.
        assert!(belt.in_slot && belt.travel_left_m > 1e-3, "{}: {belt:?}", kit.id);
        assert!(belt.mesh.centre_m - fit.slot_m[0] > 1e-3, "{}: {belt:?}", kit.id);
        assert!(belt.used < 1.0 && belt.mesh.whole_teeth >= 6.0, "{}: {belt:?}", kit.id);
        let load = fit.load;
        println!(
            "{}: {:.2} mm, {:.2} teeth, peak {:.0} N of {:.0}, steady {:.0}, hill {:.0}, {:?}",
            kit.id,
            1e3 * belt.mesh.centre_m,
            belt.mesh.teeth,
            load.peak_n,
            load.rated_n,
            load.steady_n,
            load.hill_n,
            load.tensions[1],
        );
    }
}

#[test]
fn every_pair_of_pulleys_on_offer_has_a_belt_on_offer() {
    let demo = demo();
    for kit in &demo.kits {
        for motor in demo.offered(&kit.id, Slot::MotorPulley) {
            for wheel in demo.offered(&kit.id, Slot::WheelPulley) {
                let mut draft = demo.draft(&kit.id);
                draft.set_record(Slot::MotorPulley, motor.clone());
                draft.set_record(Slot::WheelPulley, wheel.clone());
                let fit = fit(&demo, &draft);
                assert_eq!(fit.list, BeltList::Offered);
                assert!(!fit.fitting.is_empty(), "{}: {} {}", kit.id, motor.id, wheel.id);
                assert!(fit.fitting.iter().all(|belt| belt.offer.is_some()));
            }
        }
    }
}

/// Common practice, no source: mounts slide by about 10 to 20 mm, and a belt of
/// a board sings at some hundreds of hertz.
#[test]
fn mounts_and_notes_are_of_the_usual_size() {
    let demo = demo();
    for kit in &demo.kits {
        let fit = fit(&demo, &demo.draft(&kit.id));
        let travel = fit.slot_m[1] - fit.slot_m[0];
        assert!((0.009..=0.021).contains(&travel), "{}: {travel}", kit.id);
        for tension in fit.load.tensions {
            let note = tension.check.expect("the pulleys do not overlap").frequency_hz;
            assert!((100.0..=600.0).contains(&note), "{}: {note} Hz", kit.id);
        }
    }
}
