//! Frame, deck, lean and box, for every board that may be entered.

use crate::board::{Board, End, any_board, likely_board};
use crate::cases;
use crate::finite::null_in;
use pitchline_core::fit::{
    Between, BoxPlan, DeckFit, FrameHeadline, Lean, Lie, WheelAt, box_plan, clearances, deck_fit,
    frame_working, lean, turn,
};
use pitchline_core::{Draft, Slot, Step};
use proptest::prelude::*;
use serde_json::{Value, to_value};

const HEADLINES: [FrameHeadline; 12] = [
    FrameHeadline::Clearance(Between::MotorMotor),
    FrameHeadline::Sag,
    FrameHeadline::Road,
    FrameHeadline::BumpRoad,
    FrameHeadline::BreakOver,
    FrameHeadline::Turn,
    FrameHeadline::Bite(WheelAt::Front),
    FrameHeadline::Bite(WheelAt::Rear),
    FrameHeadline::FirstBite,
    FrameHeadline::Riser,
    FrameHeadline::Bushing,
    FrameHeadline::BoxRoom,
];

fn deck_of(board: &Board) -> DeckFit {
    deck_fit(&board.0, &board.build())
}

fn lean_of(board: &Board) -> Lean {
    lean(&board.0, &board.build())
}

fn plan_of(board: &Board) -> BoxPlan {
    box_plan(&board.0, &board.build())
}

/// What is not there is left out, so a null is a number that is none.
fn no_null(what: serde_json::Result<Value>) -> Result<(), TestCaseError> {
    prop_assert_eq!(null_in(&what.expect("it has a JSON form"), ""), None);
    Ok(())
}

/// Whether an input is the result of a step before, where it is any step's.
fn hangs_together(steps: &[Step]) -> Result<(), TestCaseError> {
    for (place, step) in steps.iter().enumerate() {
        prop_assert!(step.result.is_finite(), "{step:?}");
        for (symbol, value, _) in &step.inputs {
            prop_assert!(value.is_finite(), "{step:?}");
            let made = |s: &&Step| s.formula.symbol == *symbol;
            let before = steps.iter().take(place).rfind(made);
            prop_assert_eq!(before.is_some(), steps.iter().any(|s| made(&s)), "{}", symbol);
            if let Some(before) = before {
                prop_assert_eq!(before.result, *value, "{}", symbol);
            }
        }
    }
    Ok(())
}

/// Half the deck over the wheels, and the inner flank of a wheel, mm.
fn over(board: &Board, at: WheelAt) -> bool {
    let pulley = if at == WheelAt::Rear { board.value(Slot::Belt, "width_mm") + 3.0 } else { 0.0 };
    let flank = board.value(Slot::Truck, "hanger_width_mm") / 2.0 + 1.0 + pulley;
    board.value(Slot::Deck, "width_mm") / 2.0 > flank + 1e-6
}

/// The leans at which a deck that reaches over the tyres meets them; a right
/// angle where it never does.
fn bites(board: &Board) -> Vec<f64> {
    let found = lean_of(board);
    [(WheelAt::Front, found.bite_front_deg), (WheelAt::Rear, found.bite_rear_deg)]
        .into_iter()
        .filter(|(at, _)| over(board, *at))
        .map(|(_, bite)| bite.unwrap_or(90.0))
        .collect()
}

/// Half the size of a cell each way, m.
fn half_of(plan: &BoxPlan) -> [f64; 3] {
    let (across, axis) = (plan.cell.diameter_m / 2.0, plan.cell.length_m / 2.0);
    match plan.lie {
        Lie::Along => [axis, across, across],
        Lie::Across => [across, axis, across],
        Lie::Standing => [across, across, axis],
    }
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn everything_said_of_the_frame_is_a_number(
        board in any_board(),
        centre in 0.0..=0.5_f64,
        angle in -90.0..=90.0_f64,
    ) {
        let (draft, build) = (&board.0, board.build());
        no_null(to_value(clearances(draft, &build, centre)))?;
        no_null(to_value(deck_of(&board)))?;
        no_null(to_value(lean_of(&board)))?;
        no_null(to_value(turn(&build, angle)))?;
        no_null(to_value(plan_of(&board)))?;
    }

    #[test]
    fn every_working_of_the_frame_hangs_together(board in any_board(), centre in 0.0..=0.5_f64) {
        let (draft, build) = (&board.0, board.build());
        for headline in HEADLINES {
            let steps = frame_working(draft, &build, centre, headline);
            prop_assert!(!steps.is_empty(), "{headline:?}");
            hangs_together(&steps)?;
        }
        let last = |headline| {
            frame_working(draft, &build, centre, headline).last().map_or(f64::NAN, |s| s.result)
        };
        for clearance in clearances(draft, &build, centre) {
            let headline = FrameHeadline::Clearance(clearance.between);
            hangs_together(&frame_working(draft, &build, centre, headline))?;
            prop_assert_eq!(last(headline), clearance.room_m);
        }
        let (deck, lean, plan) = (deck_of(&board), lean_of(&board), plan_of(&board));
        prop_assert_eq!(last(FrameHeadline::Sag), deck.sag_m);
        prop_assert_eq!(last(FrameHeadline::Road), deck.road_m);
        prop_assert_eq!(last(FrameHeadline::BumpRoad), deck.bump_road_m);
        prop_assert_eq!(last(FrameHeadline::BreakOver), deck.break_over_deg.unwrap_or(deck.road_m));
        prop_assert_eq!(last(FrameHeadline::Riser), lean.riser_m);
        prop_assert_eq!(last(FrameHeadline::Bushing), lean.bushing_shore_a);
        prop_assert_eq!(last(FrameHeadline::BoxRoom), plan.left_m[plan.tightest]);
        if let Some(radius) = lean.furthest.radius_m {
            prop_assert_eq!(last(FrameHeadline::Turn), radius);
        }
        if let Some(bite) = lean.bite_front_deg {
            prop_assert_eq!(last(FrameHeadline::Bite(WheelAt::Front)), bite);
        }
        // "The last gives the answer", whichever wheel it is.
        let bites = [lean.bite_front_deg, lean.bite_rear_deg];
        if let Some(first) = bites.into_iter().flatten().reduce(f64::min) {
            prop_assert_eq!(last(FrameHeadline::FirstBite), first);
        }
    }

    /// The road holds a deck that would sag farther, and one that lies on it already.
    #[test]
    fn a_deck_sags_no_lower_than_the_road(board in any_board()) {
        let found = deck_of(&board);
        let (sag, bare) = (found.sag_with_room_m(), found.road_m + found.sag_m);
        prop_assert!((0.0..=found.sag_m).contains(&sag));
        prop_assert!(bare - sag >= bare.min(0.0) - 1e-12);
        prop_assert!(found.road_m < 0.0 || sag == found.sag_m);
    }

    #[test]
    fn a_heavier_rider_never_raises_the_clearance(board in any_board(), share in 0.0..=1.0_f64) {
        let (less, more) =
            (deck_of(&board), deck_of(&board.toward(Slot::Rider, "mass_kg", End::Most, share)));
        prop_assert!(more.sag_m >= less.sag_m);
        prop_assert!(more.road_m <= less.road_m);
        prop_assert!(more.bump_road_m <= less.bump_road_m);
        prop_assert!(less.bump_road_m <= less.road_m);
        let angle = |found: &DeckFit| found.break_over_deg.unwrap_or(0.0);
        prop_assert!(angle(&more) <= angle(&less) + 1e-9);
    }

    #[test]
    fn a_higher_bump_never_raises_the_clearance(board in any_board(), share in 0.0..=1.0_f64) {
        let more = deck_of(&board.toward(Slot::Place, "bump_mm", End::Most, share));
        prop_assert!(more.bump_road_m <= deck_of(&board).bump_road_m);
    }

    /// For a deck that reaches over the tyres: the edge of one between them
    /// swings out further the higher it is.
    #[test]
    fn a_taller_riser_never_lowers_the_bite(board in any_board(), share in 0.0..=1.0_f64) {
        let board = board.with(Slot::Deck, "width_mm", 400.0);
        let taller = board.toward(Slot::Deck, "riser_mm", End::Most, share);
        for (less, more) in bites(&board).into_iter().zip(bites(&taller)) {
            prop_assert!(more >= less - 1e-9, "{less} {more}");
        }
    }

    /// By reason: the tread comes up to the edge, and the outer corner further still.
    #[test]
    fn a_larger_wheel_never_raises_the_bite(board in any_board(), share in 0.0..=1.0_f64) {
        let board = board.with(Slot::Deck, "width_mm", 400.0);
        let larger = board.toward(Slot::Wheel, "diameter_mm", End::Most, share);
        for (less, more) in bites(&board).into_iter().zip(bites(&larger)) {
            prop_assert!(more <= less + 1e-9, "{less} {more}");
        }
    }

    /// The riser named is enough, and over the tyres a millimetre less is not.
    #[test]
    fn the_riser_named_is_enough_and_no_more(board in likely_board(), wide in any::<bool>()) {
        let board = if wide { board.with(Slot::Deck, "width_mm", 300.0) } else { board };
        let riser = lean_of(&board).riser_m * 1000.0;
        let with = |riser: f64| board.with(Slot::Deck, "riser_mm", riser);
        prop_assume!(riser + 1e-6 <= 60.0 && riser - 1.0 >= -60.0);
        prop_assert!(!lean_of(&with(riser + 1e-6)).bites);
        if over(&board, WheelAt::Rear) {
            prop_assert!(lean_of(&with(riser - 1.0)).bites);
        }
    }

    /// With less change of the riser than is left they stay apart, with more
    /// they meet; where none is told, two millimetres make no difference.
    #[test]
    fn what_is_left_of_the_riser_is_what_it_takes(
        board in likely_board(), near in -2.5..=2.5_f64, wide in any::<bool>(),
    ) {
        let board = if wide { board.with(Slot::Deck, "width_mm", 300.0) } else { board };
        let riser = lean_of(&board).riser_m * 1000.0 + near;
        prop_assume!((-57.0..=57.0).contains(&riser));
        let with = |by: f64| lean_of(&board.with(Slot::Deck, "riser_mm", riser + by));
        let found = with(0.0);
        let meets = |by: f64| with(by).bites || with(-by).bites;
        match found.left_m {
            _ if found.bites => prop_assert_eq!(found.left_m, None),
            Some(left) => {
                prop_assert!((0.0..0.002).contains(&left));
                prop_assert!(meets(1000.0 * left + 1e-3), "{:?}", found);
                prop_assert!(left < 1e-6 || !meets(1000.0 * left - 1e-3), "{:?}", found);
            }
            None => prop_assert!(!meets(1.999), "{:?}", found),
        }
    }

    #[test]
    fn leaning_further_turns_tighter(
        board in any_board(), less in 0.1..=60.0_f64, more in 0.1..=60.0_f64,
    ) {
        let (less, more) = (less.min(more), less.max(more));
        let build = board.build();
        let radius = |lean| turn(&build, lean).radius_m.unwrap_or(f64::INFINITY);
        prop_assert!(radius(more) <= radius(less));
        // The other way it is the same turn.
        let (one, other) = (turn(&build, more), turn(&build, -more));
        prop_assert_eq!(one.steer_front_deg, -other.steer_front_deg);
    }
}

const SIDES: [&str; 3] = ["box_length_mm", "box_width_mm", "box_height_mm"];

proptest! {
    #![proptest_config(cases(120))]

    #[test]
    fn a_bigger_box_never_fits_fewer_cells(
        board in likely_board(), way in 0..3_usize, share in 0.0..=1.0_f64,
    ) {
        let less = plan_of(&board);
        let more = plan_of(&board.toward(Slot::Deck, SIDES[way], End::Most, share));
        prop_assert!(more.room_for >= less.room_for);
        prop_assert!(more.fits || !less.fits);
    }

    /// Two ways to the same: all arrangements of so many cells tried, and the
    /// most that go in counted.
    #[test]
    fn so_many_fit_as_there_is_room_for(board in any_board()) {
        let plan = plan_of(&board);
        let cells = board.value(Slot::Pack, "series") * board.value(Slot::Pack, "parallel");
        prop_assert_eq!(plan.cells_m.len() as f64, cells);
        prop_assert_eq!(plan.fits, plan.room_for >= cells, "{:?}", plan);
    }

    /// What fits lies inside, and nothing lies in anything else.
    #[test]
    fn what_fits_is_inside_and_apart(board in likely_board()) {
        let plan = plan_of(&board);
        prop_assume!(plan.fits);
        let half = half_of(&plan);
        let inside = |from: f64, to: f64, way: usize| {
            from >= 0.002 - 1e-7 && to <= plan.inside_m[way] - 0.002 + 1e-7
        };
        let (corner, size) = (plan.controller.corner_m, plan.controller.size_m);
        for way in 0..3 {
            prop_assert!(inside(corner[way], corner[way] + size[way], way), "{:?}", plan);
        }
        for (place, cell) in plan.cells_m.iter().enumerate() {
            for way in 0..3 {
                prop_assert!(inside(cell[way] - half[way], cell[way] + half[way], way));
            }
            let clear = |way: usize| {
                cell[way] + half[way] <= corner[way] + 1e-9
                    || cell[way] - half[way] >= corner[way] + size[way] - 1e-9
            };
            prop_assert!((0..3).any(clear), "a cell in the controller: {plan:?}");
            for other in plan.cells_m.iter().skip(place + 1) {
                let apart = |way: usize| (cell[way] - other[way]).abs() >= 2.0 * half[way] - 1e-9;
                prop_assert!((0..3).any(apart), "two cells in one place: {plan:?}");
            }
        }
    }
}

/// A record without a word of sizes: all that was assumed is named.
#[test]
fn a_bare_board_is_answered_and_says_what_it_assumed() {
    let mut draft = Draft::typical();
    for slot in Slot::ALL {
        for (index, field) in slot.kind().fields().iter().enumerate() {
            if field.need != pitchline_core::Need::Required {
                draft.set_value(*slot, index, None);
            }
        }
    }
    let board = Board(draft);
    let (deck, lean, plan) = (deck_of(&board), lean_of(&board), plan_of(&board));
    let names =
        |rows: &[pitchline_core::fit::Row]| -> Vec<_> { rows.iter().map(|r| r.key).collect() };
    assert!(names(&deck.assumed).contains(&"stiffness_n_m2"));
    assert!(names(&lean.assumed).contains(&"max_lean_deg"));
    assert_eq!(names(&plan.assumed)[..3], SIDES);
    assert!(clearances(&board.0, &board.build(), 0.07).iter().all(|c| !c.assumed.is_empty()));
}
