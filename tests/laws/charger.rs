//! Whether a charger is to be used is decided once, as data, and every question follows it.

use crate::board::{Board, any_board};
use crate::cases;
use crate::charge::chargeable;
use crate::finite::null_in;
use pitchline_core::{
    Build, ChargeLimit, ChargeRefusal, ChargerFit, Draft, Drive, Slot, TooStrong, charger_offer,
    charging,
};
use proptest::prelude::*;
use serde_json::to_value;

/// Changes one thing about a board's charger.
type Change = fn(Board) -> Board;

fn keep(board: Board) -> Board {
    board
}

fn too_many_volts(board: Board) -> Board {
    let volts = board.value(Slot::Charger, "full_v");
    board.with(Slot::Charger, "full_v", volts + 4.2)
}

fn too_few_volts(board: Board) -> Board {
    let volts = board.value(Slot::Charger, "full_v");
    board.with(Slot::Charger, "full_v", volts - 4.2)
}

fn another_plug(mut board: Board) -> Board {
    for (slot, tags) in [(Slot::Pack, ["", "round", ""].as_slice()), (Slot::Charger, &["flat"])] {
        let mut record = board.0.record(slot).clone();
        record.tags = tags.iter().map(ToString::to_string).collect();
        board.0.set_record(slot, record);
    }
    board
}

fn freezing(board: Board) -> Board {
    board.with(Slot::Place, "charge_air_c", -3.0)
}

/// More than three cells of 1.5 A each take together: 4.5 A.
fn strong(board: Board) -> Board {
    let board = board.with(Slot::Pack, "parallel", 3.0).with(Slot::Cell, "max_charge_a", 1.5);
    board.with(Slot::Charger, "current_a", 5.0)
}

fn fit(board: &Board) -> ChargerFit {
    let (draft, build) = (&board.0, board.build());
    let own = charger_offer(draft, &build, draft.record(Slot::Charger));
    own.expect("every value is within its limits").fit
}

fn word(refusal: Option<ChargeRefusal>) -> &'static str {
    match refusal {
        Some(ChargeRefusal::WrongVolts { overcharges: true, .. }) => "overcharges",
        Some(ChargeRefusal::WrongVolts { .. }) => "never full",
        Some(ChargeRefusal::WrongPlug) => "plug",
        Some(ChargeRefusal::TooCold { .. }) => "cold",
        None => "",
    }
}

/// One reason is given, the gravest: what can burn before what does not go in, before what only
/// has to wait. A charger that is too strong is so whatever else.
#[test]
fn the_gravest_reason_is_given() {
    let typical = chargeable(&Board(Draft::typical()));
    let cases: [(&[Change], &str, bool); 8] = [
        (&[keep], "", true),
        (&[too_many_volts], "overcharges", false),
        (&[too_few_volts], "never full", false),
        (&[another_plug], "plug", false),
        (&[freezing], "cold", true),
        (&[freezing, another_plug], "plug", false),
        (&[freezing, another_plug, too_many_volts], "overcharges", false),
        (&[strong], "", false),
    ];
    for (index, (changes, reason, for_the_pack)) in cases.into_iter().enumerate() {
        let board = changes.iter().fold(typical.clone(), |board, change| change(board));
        let found = fit(&board);
        assert_eq!(word(found.refusal), reason, "{index}: {found:?}");
        assert_eq!(found.is_for_the_pack(), for_the_pack, "{index}: {found:?}");
        let asked = charging(&board.0, &board.build()).err();
        assert_eq!(asked, found.refusal, "{index}");
        let strong = strong(board);
        let too_strong = Some(TooStrong { charger_a: 5.0, cells_a: 4.5 });
        assert_eq!(fit(&strong), ChargerFit { too_strong, ..found }, "{index}");
    }
}

/// A board whose cells say nothing of how they may be charged.
fn unrated(capacity_ah: f64, parallel: f64, charger_a: f64) -> Board {
    let mut board = chargeable(&Board(Draft::typical()))
        .with(Slot::Cell, "capacity_ah", capacity_ah)
        .with(Slot::Pack, "parallel", parallel)
        .with(Slot::Charger, "current_a", charger_a);
    let rating = Slot::Cell.kind().field_index("max_charge_a").expect("cells have a rating");
    board.0.set_value(Slot::Cell, rating, None);
    board
}

/// Cells without a rating are taken to bear 1C, which fills them in an hour (common practice, no
/// source): one cell of 1.5 Ah bears 1.5 A, so that 4 A is too strong for it.
#[test]
fn a_small_cell_without_a_rating_is_not_taken_for_a_large_one() {
    let found = fit(&unrated(1.5, 1.0, 4.0));
    assert_eq!(found.too_strong, Some(TooStrong { charger_a: 4.0, cells_a: 1.5 }));
    // Eight of 5 Ah bear 40 A.
    assert_eq!(fit(&unrated(5.0, 8.0, 40.0)).too_strong, None);
    assert!(fit(&unrated(5.0, 8.0, 40.5)).too_strong.is_some());
    // A maker's own figure goes before it.
    let rated = unrated(1.5, 1.0, 4.0).with(Slot::Cell, "max_charge_a", 4.0);
    assert_eq!(fit(&rated).too_strong, None);
}

proptest! {
    #![proptest_config(cases(60))]

    /// Unrated cells take too strong a charger exactly where it would fill the pack in less than an
    /// hour by its rated capacity.
    #[test]
    fn unrated_cells_are_charged_in_an_hour_at_the_least(
        capacity_ah in 0.2..40.0, parallel in 1_u32..12, charger_a in 0.2..50.0
    ) {
        let parallel = f64::from(parallel);
        let hours = capacity_ah * parallel / charger_a;
        let too_strong = fit(&unrated(capacity_ah, parallel, charger_a)).too_strong;
        prop_assert_eq!(too_strong.is_some(), hours < 1.0, "{} h: {:?}", hours, too_strong);
    }

    /// The question, the offers and the charges themselves say the same, to the last digit.
    #[test]
    fn question_offer_and_charge_agree(board in any_board(), other in any_board(), warm in any::<bool>()) {
        let (board, other) = if warm { (chargeable(&board), chargeable(&other)) } else { (board, other) };
        let (draft, build) = (&board.0, board.build());
        let (drive, ride) = (Drive::new(&build), build.ride);
        let alone = drive.charge(ride.charge_from, 1.0);
        let asked = charging(draft, &build);
        let own = charger_offer(draft, &build, draft.record(Slot::Charger)).expect("within limits");
        match &asked {
            Ok(found) => {
                prop_assert_eq!(Ok(&found.full), alone.as_ref());
                let enough = drive.charge(ride.charge_from, ride.charge_to);
                prop_assert_eq!(Ok(&found.enough), enough.as_ref());
                prop_assert_eq!(own.full_s, Some(found.full.time_s));
                prop_assert_eq!(own.enough_s, Some(found.enough.time_s));
                prop_assert_eq!(own.fit, ChargerFit { refusal: None, too_strong: found.too_strong });
                let cells = build.pack.parallel * build.cell.max_charge_a;
                let least = build.charger.current_a.min(cells);
                prop_assert!((found.full.current_a / least - 1.0).abs() < 1e-12);
                let by_cells = found.full.limit == ChargeLimit::Cells;
                prop_assert_eq!(by_cells, build.charger.current_a > cells);
                prop_assert_eq!(by_cells, found.too_strong.is_some());
            }
            // No plug is given here, so the volts or the cold.
            Err(refusal) => {
                prop_assert_eq!(Err(refusal), alone.as_ref());
                prop_assert_eq!(own.fit.refusal, Some(*refusal));
                prop_assert_eq!((own.full_s, own.enough_s), (None, None));
            }
        }
        // JSON says null for what is not a number; what is not there is left out.
        if let Ok(found) = &asked {
            prop_assert_eq!(null_in(&to_value(found).expect("it has a JSON form"), ""), None);
        }
        prop_assert_eq!(null_in(&to_value(own).expect("it has a JSON form"), ""), None);
        // Another charger is what it is once it is on the board.
        let record = other.0.record(Slot::Charger);
        let offer = charger_offer(draft, &build, record).expect("within limits");
        let mut taken = draft.clone();
        taken.set_record(Slot::Charger, record.clone());
        let taken_build = Build::check(&taken).expect("within limits");
        let then = charging(&taken, &taken_build);
        prop_assert_eq!(offer.fit.refusal, then.as_ref().err().copied());
        prop_assert_eq!(offer.full_s, then.as_ref().ok().map(|found| found.full.time_s));
    }
}
