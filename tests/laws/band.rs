//! What holds for every band, and for the same board in the cold and in old age.

use crate::board::{any_board, likely_board};
use crate::cases;
use pitchline_core::band::{
    Band, CURVE_SAMPLES, CurveSampler, INPUTS, P90_PLACE, Quantity, SPREADS, Sampler, Uncertain,
};
use pitchline_core::physics::{Basis, Chemistry};
use pitchline_core::ride::{Style, Until};
use pitchline_core::{
    Build, Caveat, Draft, Drive, Outing, SeasonPoint, Slot, answers, by_age, by_temperature,
    caveats,
};
use proptest::prelude::*;

const QUICK: [Quantity; 4] =
    [Quantity::TopSpeed, Quantity::Hill, Quantity::SteadyDistance, Quantity::ChargeTime];

fn band(build: &Build, quantity: Quantity, samples: usize) -> Option<Band> {
    let mut sampler = Sampler::new(build, quantity);
    // Two for each input tell what moves it.
    sampler.take(2 * INPUTS + samples);
    assert_eq!(sampler.taken(), samples);
    sampler.band()
}

fn typical() -> Build {
    Build::check(&Draft::typical()).expect("in range")
}

fn with(changes: &[(Slot, &str, f64)]) -> Build {
    let mut draft = Draft::typical();
    for (slot, key, value) in changes {
        draft.set(*slot, key, *value);
    }
    Build::check(&draft).expect("in range")
}

#[test]
fn few_samples_say_what_many_do() {
    for quantity in QUICK {
        let few = band(&typical(), quantity, 256).expect("it has an answer");
        let many = band(&typical(), quantity, 4096).expect("it has an answer");
        let width = many.p90 - many.p10;
        for (one, other) in [(few.p10, many.p10), (few.p50, many.p50), (few.p90, many.p90)] {
            assert!((one - other).abs() < 0.06 * width, "{quantity:?} {few:?} {many:?}");
        }
        // Where the answer is nearly a straight line the middle is what was entered.
        assert!((many.p50 / many.nominal - 1.0).abs() < 0.02, "{quantity:?} {many:?}");
        assert_eq!(many.samples, 4096);
    }
}

/// Capacity decides over a charge, and wind has the widest spread of all that a
/// steady ride feels.
#[test]
fn what_moves_an_answer_most_comes_first() {
    let first = |quantity| band(&typical(), quantity, 1).expect("it has an answer").movers[0];
    let charge = first(Quantity::ChargeTime);
    assert_eq!(charge.input, Uncertain::Capacity);
    // 5 % up or down of 3 Ah at the tenth and ninetieth hundredth of a triangle, 1 − √0.2
    // from its middle: asked of the charge itself.
    let time = |off: f64| {
        let build = with(&[(Slot::Cell, "capacity_ah", 3.0 * (1.0 + 0.05 * off))]);
        Drive::new(&build).charge(build.ride.charge_from, 1.0).expect("it charges").time_s
    };
    let place = 1.0 - 0.2_f64.sqrt();
    let ends = [charge.low / time(-place), charge.high / time(place)];
    assert!(ends.iter().all(|end| (end - 1.0).abs() < 1e-6), "{charge:?} {ends:?}");
    let distance = first(Quantity::SteadyDistance);
    assert_eq!(distance.input, Uncertain::Wind);
    assert!(distance.swing() < 0.0);
}

#[test]
fn a_style_has_its_band() {
    let mut build = typical();
    for outing in [Outing::Town, Outing::CycleCut] {
        build.ride.outing = outing;
        let found = band(&build, Quantity::OutingDistance, 48).expect("it rides");
        a_band_of_rides(&found, Drive::new(&build).ride_out(outing, Until::EMPTY).distance_m);
    }
}

/// The board itself lies within, and is cut a little more coarsely than its own ride.
fn a_band_of_rides(found: &Band, ridden_m: f64) {
    assert!((found.nominal / ridden_m - 1.0).abs() < 0.005, "{found:?} {ridden_m}");
    assert!(found.p10 < found.nominal && found.nominal < found.p90, "{found:?}");
    assert!((found.p50 / found.nominal - 1.0).abs() < 0.03, "{found:?}");
}

/// A limit that no input here moves is not crossed by any sample.
#[test]
fn a_band_never_crosses_a_physical_limit() {
    // The electrical speed: 20 000 / 7 rpm of the motor, 36 / 16, 47.5 mm.
    let build = with(&[(Slot::Controller, "erpm_limit", 20_000.0)]);
    let counted = 20_000.0 / 7.0 * std::f64::consts::PI / 30.0 * 16.0 / 36.0 * 0.0475;
    let found = band(&build, Quantity::TopSpeed, 256).expect("it moves");
    assert!(found.p90 <= counted && found.p90 > 0.999 * counted, "{found:?} {counted}");
    // Grip: ½ μ n / (2 − μ n h / L) of the weight, less rolling at its least.
    let build = with(&[(Slot::Place, "grip_percent", 20.0)]);
    let share = 0.4;
    let held = 0.5 * share / (2.0 - share * 0.95 / 0.72);
    let found = band(&build, Quantity::Hill, 256).expect("it climbs");
    // On a slope sin a + Crr cos a = held cos a, whatever the mass: tan a < held.
    assert!(found.p90 < held, "{found:?} {held}");
    // A belt gives back no more than it gets.
    let best = with(&[(Slot::Belt, "efficiency_percent", 100.0)]);
    let found = band(&best, Quantity::Hill, 256).expect("it climbs");
    let kv_low = with(&[
        (Slot::Belt, "efficiency_percent", 100.0),
        (Slot::Motor, "kv_rpm_per_v", 171.0),
        (Slot::Rider, "mass_kg", 74.0),
        (Slot::Wheel, "rolling_smooth", 0.009),
        (Slot::Place, "headwind_km_h", -7.0),
        (Slot::Cell, "resistance_10s_mohm", 20.0),
        (Slot::Place, "air_c", 25.0),
    ]);
    let most = band(&kv_low, Quantity::Hill, 1).expect("it climbs").nominal;
    assert!(found.p90 < most, "{found:?} {most}");
}

/// At the rider's speed the curve is what the band of the distance is, sample by sample; few of
/// them give the shape that many do.
#[test]
fn a_curve_is_the_band_at_every_speed() {
    let build = typical();
    let speeds = [3.0, build.ride.cruise_m_s, 8.0];
    let mut sampler = CurveSampler::new(&build, speeds);
    assert_eq!(sampler.curve(), []);
    while sampler.left() > 0 {
        sampler.take();
    }
    let curve = sampler.curve();
    let one = band(&build, Quantity::SteadyDistance, CURVE_SAMPLES).expect("it has an answer");
    let at = curve[1];
    assert_eq!((at.nominal, at.p10, at.p90), (one.nominal, one.p10, one.p90));
    for (point, speed) in curve.iter().zip(speeds) {
        assert_eq!(point.speed_m_s, speed);
        let mut ride = build;
        ride.ride.cruise_m_s = speed;
        let many = band(&ride, Quantity::SteadyDistance, 4096).expect("it has an answer");
        let width = many.p90 - many.p10;
        for (few, many) in [(point.p10, many.p10), (point.p90, many.p90)] {
            assert!((few - many).abs() < 0.1 * width, "{point:?} {many}");
        }
    }
    // A speed that nothing reaches is ridden as fast as the board goes.
    let (fast, faster) = (20.0, 60.0);
    let drive = Drive::new(&build);
    assert!(drive.reached_m_s(fast) < fast);
    let mut sampler = CurveSampler::new(&build, [fast, faster]);
    sampler.take();
    let [one, other] = sampler.curve()[..] else { panic!("two speeds") };
    assert_eq!((one.nominal, one.p10), (drive.reach(fast).distance_m, one.p90));
    assert!((one.nominal / other.nominal - 1.0).abs() < 1e-3, "{one:?} {other:?}");
}

#[test]
fn no_answer_is_no_band() {
    let wrong = with(&[(Slot::Charger, "full_v", 50.4)]);
    assert_eq!(band(&wrong, Quantity::ChargeTime, 16), None);
    assert_eq!(band(&typical(), Quantity::TopSpeed, 0), None);
}

#[test]
fn every_uncertain_input_is_an_input() {
    for spread in SPREADS {
        let kind = spread.slot.kind();
        assert!(kind.field_index(spread.key).is_some(), "{spread:?}");
        assert!(spread.half > 0.0);
    }
    assert_eq!(SPREADS.len(), INPUTS);
}

/// Cold LFP rests on common practice: it is told, and its resistance is less sure.
#[test]
fn cold_cells_are_told_and_less_sure() {
    let [cold, warm] = [-5.0, 22.0].map(|air_c| {
        let mut draft = Draft::typical();
        draft.set(Slot::Cell, "chemistry", 2.0);
        draft.set(Slot::Place, "air_c", air_c);
        Build::check(&draft).expect("in range")
    });
    let said = caveats(&cold);
    let basis = Basis::CommonPractice;
    assert_eq!(said, [Caveat::ColdCells { chemistry: Chemistry::Lfp, air_c: -5.0, basis }]);
    assert_eq!(caveats(&warm), []);
    let spread = SPREADS.iter().find(|spread| spread.input == Uncertain::Resistance);
    let spread = spread.expect("the resistance is not known exactly");
    assert!(spread.half_in(&cold) > 1.5 * spread.half_in(&warm));
    // That width is what moves the answer: by hand at its ninetieth hundredth.
    let found = band(&cold, Quantity::TopSpeed, 1).expect("a band");
    let mover = found.movers.iter().find(|mover| mover.input == Uncertain::Resistance);
    let mut poor = cold;
    poor.cell.resistance_10s_ohm *= 1.0 + P90_PLACE * 0.44;
    let want = band(&poor, Quantity::TopSpeed, 1).expect("a band").nominal;
    let got = mover.expect("each input moves").high;
    assert!((got / want - 1.0).abs() < 1e-9, "{got} against {want}");
}

/// What is shown is what any portions of it give.
#[test]
fn a_shown_band_is_whole() {
    let whole = Band::of(&typical(), Quantity::Hill);
    assert_eq!(whole, band(&typical(), Quantity::Hill, Quantity::Hill.samples()));
    let mut sampler = Sampler::new(&typical(), Quantity::Hill);
    while sampler.left() > 0 {
        sampler.take(sampler.left().min(8));
    }
    assert_eq!(sampler.taken(), Quantity::Hill.samples());
    assert_eq!(whole, sampler.band());
}

proptest! {
    #![proptest_config(cases(40))]

    /// However a sampler is asked, the samples are the same.
    #[test]
    fn samples_are_the_same_in_any_portions(board in likely_board(), cut in 1..40_usize) {
        let build = board.build();
        let whole = band(&build, Quantity::SteadyDistance, 40);
        let mut parted = Sampler::new(&build, Quantity::SteadyDistance);
        parted.take(cut);
        let _ = parted.band();
        parted.take(40 + 2 * INPUTS - cut);
        prop_assert_eq!(parted.taken(), 40);
        prop_assert_eq!(parted.band(), whole);
    }

    #[test]
    fn any_band_is_numbers_in_order(board in any_board()) {
        let build = board.build();
        for quantity in QUICK {
            let Some(found) = band(&build, quantity, 24) else {
                prop_assert_eq!(quantity, Quantity::ChargeTime);
                continue;
            };
            for value in [found.nominal, found.p10, found.p50, found.p90] {
                prop_assert!(value.is_finite(), "{quantity:?} {found:?}");
            }
            prop_assert!(found.p10 <= found.p50 && found.p50 <= found.p90, "{found:?}");
            let swings = found.movers.map(|mover| mover.swing().abs());
            prop_assert!(swings.iter().all(|swing| swing.is_finite()));
            prop_assert!(swings.is_sorted_by(|one, next| one >= next), "{found:?}");
            let each = SPREADS.map(|spread| found.movers.iter().any(|m| m.input == spread.input));
            prop_assert!(each.iter().all(|there| *there), "{found:?}");
        }
    }

    /// Cold and age only take, at a steady speed in the calm.
    #[test]
    fn cold_and_age_only_take(board in likely_board()) {
        let board = board.with(Slot::Place, "headwind_km_h", 0.0);
        // A speed that it holds in the cold as well: a board that is slower goes farther.
        let cold = board.with(Slot::Place, "air_c", -15.0).with(Slot::Pack, "cycles", 1000.0);
        let top_m_s = answers(&cold.build()).speed.flat_low.speed_m_s;
        let board = board.with(Slot::Ride, "cruise_km_h", (0.6 * 3.6 * top_m_s).min(30.0));
        let build = board.build();
        let points = by_age(&build);
        prop_assert_eq!((points.len(), points[0].cycles), (21, 0.0));
        prop_assert_eq!(points[20].cycles, 1000.0);
        for pair in points.windows(2) {
            prop_assert!(pair[1].distance_m <= pair[0].distance_m * 1.001, "{pair:?}");
        }
        let points = by_temperature(&build);
        prop_assert_eq!((points[0].air_c, points[points.len() - 1].air_c), (-15.0, 40.0));
        // Copper takes 0.4 % more for each kelvin, which may be more than warm cells and thin air
        // give: boards that heat their windings are left out.
        let hot = board.with(Slot::Place, "air_c", 40.0);
        let spent = hot.drive().ride_style(Style::Steady, Until::EMPTY).ledger;
        let cool = spent.winding_wh < 0.06 * spent.stored_wh;
        // Cold cells may sag so far that a full pack holds no speed at all until they have warmed: the
        // ride is then slower, and goes farther for that.
        let held = |pair: &&[SeasonPoint]| pair.iter().all(|point| point.full_wish_m > 0.0);
        let pairs = points.windows(2).filter(|pair| cool && pair[1].air_c <= 25.0);
        for pair in pairs.filter(held) {
            prop_assert!(pair[0].distance_m <= pair[1].distance_m * 1.001, "{pair:?}");
        }
        for point in points {
            let whole = [point.distance_m, point.usable_wh, point.top_m_s, point.grade];
            prop_assert!(whole.iter().all(|value| value.is_finite()), "{point:?}");
        }
    }
}
