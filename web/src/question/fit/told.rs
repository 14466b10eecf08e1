//! What the question says of boards that only just fit, or only just do not.

use super::concern::said;
use super::{bench, lean, worked};
use crate::app::Fit;
use crate::text::fit::{self as words, Grade};
use crate::text::{Style, Units};
use pitchline_core::catalog::Catalog;
use pitchline_core::fit::{FrameHeadline, Severity, WheelAt, frame_working};
use pitchline_core::{Build, Record, Slot};

const METRIC: Style = Style { units: Units::Metric, comma: false };
const INCH: Style = Style { units: Units::Imperial, comma: false };

/// A kit of the demo with these parts and figures.
fn board(kit: &str, parts: &[(Slot, &str)], values: &[(Slot, &str, f64)]) -> Fit {
    let demo = include_str!("../../../catalog/catalogue.json");
    let (catalog, _) = Catalog::read(demo).expect("the demo is JSON");
    let mut draft = catalog.draft(kit);
    for (slot, id) in parts {
        draft.set_record(*slot, catalog.part(slot.kind(), id).expect("in the demo").clone());
    }
    for (slot, key, value) in values {
        draft.set(*slot, key, *value);
    }
    let build = Build::check(&draft).expect("in range");
    let offered =
        |slot: Slot| -> Vec<Record> { catalog.offered(kit, slot).into_iter().cloned().collect() };
    Fit::of(draft, build, [Slot::Belt, Slot::MotorPulley, Slot::WheelPulley].map(offered))
}

/// What is said of tight places, and of misfits.
fn told(found: &Fit, style: Style) -> [Vec<String>; 2] {
    [Severity::Tight, Severity::DoesNotFit].map(|severity| {
        let such = found.together.misfits.iter().filter(|misfit| misfit.severity == severity);
        such.map(|misfit| said(found, misfit, style)).collect()
    })
}

#[track_caller]
fn has(text: &str, part: &str) {
    assert!(text.contains(part), "{part:?} is not in {text:?}");
}

/// Height of the deck's edge, mm, that clears the tread of 110 mm up to 18°, by
/// hand: half of 150 mm out, it comes down to 55 mm above the axles.
fn enough_mm() -> f64 {
    let lean = f64::to_radians(18.0);
    (55.0 + 75.0 * lean.sin()) / lean.cos()
}

const LARGE: &[(Slot, &str)] = &[(Slot::Wheel, "shingle-110")];

/// 17 mm on trucks of 66 mm are 0.801 mm more than that.
#[test]
fn a_riser_that_is_just_enough_is_tight_and_no_misfit() {
    let spare = 66.0 + 17.0 - enough_mm();
    assert!((0.80..0.81).contains(&spare));
    let found = board("kittiwake", LARGE, &[(Slot::Deck, "riser_mm", 17.0)]);
    let [tight, amiss] = told(&found, METRIC);
    assert!(amiss.is_empty(), "{amiss:?}");
    let [said] = &tight[..] else { panic!("{tight:?}") };
    has(said, "Deck to wheel, at full lean: 0.8\u{a0}mm of riser to spare.");
    // As they come, with two millimetres more of riser, nothing is said.
    for (kit, parts) in [("kittiwake", &[][..]), ("kittiwake", LARGE), ("gannet", &[])] {
        let found = board(kit, parts, &[]);
        assert_eq!(told(&found, METRIC), [vec![], vec![]] as [Vec<String>; 2]);
    }
}

/// By hand: washers, pulley, wheel and nut take 1 + 15 + 26 + 12 + 1 + 8 = 63 mm.
#[test]
fn any_room_of_less_than_two_millimetres_is_tight() {
    let axle =
        |axle_mm: f64| told(&board("kittiwake", &[], &[(Slot::Truck, "axle_mm", axle_mm)]), METRIC);
    for (axle_mm, left) in [(64.9, "1.9"), (64.25, "1.2"), (63.0, "0")] {
        let [tight, amiss] = axle(axle_mm);
        assert_eq!((tight.len(), amiss.len()), (1, 0), "{axle_mm}: {tight:?} {amiss:?}");
        has(&tight[0], &format!("Axle past its nut: {left}\u{a0}mm to spare."));
    }
    assert_eq!(axle(65.1), [vec![], vec![]] as [Vec<String>; 2]);
    // Never as nothing that is too little.
    let [tight, amiss] = axle(62.96);
    assert_eq!(tight, Vec::<String>::new());
    has(&amiss[0], "The axle is 0.1\u{a0}mm too short");
}

/// By hand: nine cells of 21 mm and their gaps, a controller of 75 mm, cables and
/// lining take 296 mm.
#[test]
fn an_enclosure_without_a_millimetre_to_spare_is_tight() {
    let found = board("kittiwake", &[], &[(Slot::Deck, "box_length_mm", 297.0)]);
    let [tight, amiss] = told(&found, METRIC);
    assert!(amiss.is_empty(), "{amiss:?}");
    has(&tight[0], "Pack and controller in the enclosure: 1\u{a0}mm to spare.");
}

/// What it lacks is told in words, not as a room below nothing.
#[test]
fn an_enclosure_that_drags_has_no_room_under_it() {
    let found = board("kittiwake", &[], &[(Slot::Deck, "box_height_mm", 150.0)]);
    assert!(found.together.deck.road_m < 0.0);
    let said = words::board_finding(&found.together.deck, METRIC);
    has(&said, "Board from the side: the enclosure reaches ");
    has(&said, "\u{a0}mm below the road, with ");
    assert!(!said.contains('−'), "{said}");
}

/// What is needed never reads as what there is, in millimetres or inches.
#[test]
fn a_riser_too_low_never_reads_as_enough() {
    let (need, have) = (enough_mm() - 66.0, 14.5);
    let found = board("kittiwake", LARGE, &[(Slot::Deck, "riser_mm", have)]);
    for (style, steps, unit) in [(METRIC, 10.0, "mm"), (INCH, 100.0 / 25.4, "in")] {
        let each = if unit == "mm" { 10.0 } else { 100.0 };
        let up = (need * steps).ceil() / each;
        let down = (have * steps).floor() / each;
        assert!(down < up);
        let tile = lean::riser(&found, style);
        assert_eq!(tile.figure, format!("{up}"));
        assert_eq!(tile.limit, format!("On the board: {down}\u{a0}{unit}"));
        let [_, amiss] = told(&found, style);
        has(&amiss[0], &format!("A riser of {up}\u{a0}{unit} only just prevents this"));
    }
    // The edge turns about the axle from where it stands down to the tread.
    let (half, up, radius) = (75.0_f64, 66.0 + have, 55.0_f64);
    let angle = up.atan2(half) - (radius / half.hypot(up)).asin();
    let angle = (angle.to_degrees() * 10.0).floor() / 10.0;
    assert!(angle < 18.0);
    let [_, amiss] = told(&found, METRIC);
    has(&amiss[0], &format!("at {angle}° of lean the deck touches a front wheel"));
    has(&amiss[0], "up to the trucks' maximum lean of 18°");
    let tile = lean::bite(&found, METRIC);
    assert_eq!(
        (tile.figure, tile.limit.as_str()),
        (format!("{angle}"), "At a front wheel. The trucks lean to 18°.")
    );
}

/// The last step of a working gives the answer, to the last digit shown, whichever
/// wheel the deck meets first.
#[test]
fn each_working_of_the_lean_ends_at_its_headline() {
    let narrow: &[(Slot, &str, f64)] =
        &[(Slot::Deck, "width_mm", 230.0), (Slot::Deck, "riser_mm", 6.0)];
    let mut first = Vec::new();
    for values in [&[], narrow] {
        let found = board("kittiwake", &[], values);
        first.extend(found.together.lean.first_bite().map(|(at, _)| at));
        let lean = worked::FRAME.iter().filter(|(which, _)| {
            use FrameHeadline::{FirstBite, Riser, Turn};
            matches!(which, Turn | FirstBite | Riser)
        });
        let lean: Vec<_> = lean.collect();
        assert_eq!(lean.len(), 3);
        for (which, say) in lean {
            let steps = frame_working(&found.draft, &found.build, found.together.centre_m, *which);
            let last = steps.last().expect("it has steps").result;
            let last = if *which == FrameHeadline::Riser { 1000.0 * last } else { last };
            let shown: f64 = say(&found, METRIC).figure.parse().expect("a number");
            assert!((shown - last).abs() <= 0.1, "{which:?}: {shown} {last}");
        }
    }
    assert_eq!(first, [WheelAt::Front, WheelAt::Rear]);
}

/// A deck that passes between the wheels is not told to stand higher.
#[test]
fn a_deck_between_the_wheels_is_not_called_too_low() {
    let found = board("gannet", &[], &[]);
    assert!(!found.together.lean.bites && found.together.lean.riser_m > found.build.deck.riser_m);
    let tile = lean::riser(&found, METRIC);
    assert_eq!(tile.name, "Riser to lift the deck over the wheels");
    has(&tile.limit, "The deck passes between the wheels");
}

/// 200 mm between 17 and 38 teeth, by the exact length of an open belt: Shigley
/// and Budynas, eq. 17-2.
#[test]
fn a_measure_far_from_every_belt_is_told_what_it_needs() {
    let bench = |measured: f64| {
        board(
            "kittiwake",
            &[(Slot::WheelPulley, "w38")],
            &[(Slot::Bench, "measured_centre_mm", measured)],
        )
    };
    let (small, large) = (85.0 / std::f64::consts::TAU, 190.0 / std::f64::consts::TAU);
    let slant = ((large - small) / 200.0_f64).asin();
    let length = 400.0 * slant.cos()
        + std::f64::consts::PI * (small + large)
        + 2.0 * slant * (large - small);
    let far = bench(200.0);
    assert!(bench::nearest(&far).is_none() && bench::take(&far).is_none());
    let said = bench::measured(&far, METRIC);
    has(
        &said,
        &format!(
            "takes a belt {length:.1}\u{a0}mm long: 107 or 108\u{a0}teeth at 5\u{a0}mm pitch."
        ),
    );
    assert!((length / 5.0).floor() == 107.0, "{length}");
    has(&said, "No available belt comes close.");
    assert!(!said.contains("The closest"), "{said}");
    // 59 teeth want 76.9 mm, by a second program that halves the exact length.
    let near = bench(76.4);
    assert!(bench::nearest(&near).is_some_and(|belt| belt.teeth == 59.0));
    let said = bench::measured(&near, METRIC);
    has(&said, "long. The closest is \"Towline 12, 295 mm\" (59\u{a0}teeth).");
    assert!(bench::take(&near).is_some());
}

/// The same 59 teeth at 76.9 mm, on a mount that ends at 75 mm: told, and not offered.
#[test]
fn a_belt_beyond_the_mount_is_never_offered() {
    let parts = &[(Slot::WheelPulley, "w38")];
    let values = &[
        (Slot::Bench, "measured_centre_mm", 76.4),
        (Slot::Truck, "centre_min_mm", 60.0),
        (Slot::Truck, "centre_max_mm", 75.0),
    ];
    let found = board("kittiwake", parts, values);
    assert!(bench::nearest(&found).is_some_and(|belt| belt.teeth == 59.0 && !belt.in_slot));
    assert!(bench::take(&found).is_none());
    let said = bench::measured(&found, METRIC);
    has(&said, "The mount adjusts from 60\u{a0}mm to 75\u{a0}mm, so it doesn't fit.");
}

/// Two belts of 64 teeth that differ in width alone.
#[test]
fn belts_of_one_length_are_told_with_one_number_of_teeth() {
    let mut found = board("kittiwake", &[], &[]);
    let fit = &mut found.together.belt;
    let belt = fit.fitting.first().copied().expect("one fits");
    fit.fitting = vec![belt, belt];
    let said = words::which(fit, METRIC);
    has(&said, "2 available belts fit, all with 64\u{a0}teeth.");
}

/// What could hurt someone stands before what is only too large, and that before what is tight.
#[test]
fn the_worst_is_named_first() {
    let found = board(
        "kittiwake",
        LARGE,
        &[(Slot::Deck, "riser_mm", 10.0), (Slot::Deck, "box_length_mm", 280.0)],
    );
    let grades: Vec<Grade> = found.together.misfits.iter().map(Grade::of).collect();
    assert_eq!(grades, [Grade::DoesNotFit, Grade::Unsafe]);
    let [pack, bite] = &found.together.misfits[..] else { panic!("two misfits") };
    assert_eq!(words::misfit_short(pack, METRIC), "pack 16\u{a0}mm too long");
    assert!(words::misfit_short(bite, METRIC).starts_with("wheel bite at "));
    assert!(Grade::Unsafe < Grade::DoesNotFit && Grade::DoesNotFit < Grade::Check);
    assert!(Grade::Check < Grade::Tight);
    assert_eq!(
        words::verdict_line(2, 0, 1, "wheel bite"),
        "No, 2 things don't fit. Worst: wheel bite"
    );
}

/// A weight that was mistyped is nothing that does not fit, and hides nothing else.
#[test]
fn a_value_to_check_is_no_misfit() {
    let worst = "pack lighter than its cells";
    let line = words::verdict_line;
    assert_eq!(line(0, 1, 0, worst), "Yes, but check: pack lighter than its cells");
    assert_eq!(
        line(0, 1, 2, worst),
        "Yes, but check: pack lighter than its cells. Also 2 tight spots"
    );
    assert_eq!(line(1, 1, 0, "wheel bite"), "No: wheel bite. Also 1 value to check");
    let said = words::verdict(0, 1, 1, worst);
    assert_eq!(said.figure, "Check");
    assert_eq!(said.limit, "Pack lighter than its cells. Also 1 tight spot.");
    assert_eq!(words::verdict(0, 1, 0, worst).limit, "Pack lighter than its cells.");
}
