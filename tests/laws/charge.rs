//! What holds for every charge.

use crate::board::{Board, End, any_board, likely_board};
use crate::cases;
use pitchline_core::{Charge, ChargeEnd, ChargeRefusal, LEAST_CHARGE_C, Slot};
use proptest::prelude::*;

/// Voltage of the full pack. No LFP cell bears more than 3.65 V (common practice, no source), and a
/// random board may say otherwise.
fn full_v(board: &Board) -> f64 {
    let lfp = board.value(Slot::Cell, "chemistry") == 2.0;
    let cell = board.value(Slot::Cell, "full_v").min(if lfp { 3.65 } else { f64::INFINITY });
    cell * board.value(Slot::Pack, "series")
}

/// The board with a charger for its pack, in the warmth.
pub(crate) fn chargeable(board: &Board) -> Board {
    let full = full_v(board);
    let warm = board.value(Slot::Place, "air_c").abs();
    board.with(Slot::Charger, "full_v", full).with(Slot::Place, "charge_air_c", warm)
}

fn share() -> impl Strategy<Value = f64> {
    prop_oneof![Just(0.0), Just(1.0), 0.0..=1.0_f64]
}

fn sane(found: &Charge) -> Result<(), TestCaseError> {
    for value in [found.time_s, found.constant_current_s, found.pack_wh, found.wall_wh] {
        prop_assert!(value.is_finite() && value >= 0.0, "{found:?}");
    }
    prop_assert!(found.wall_wh >= found.pack_wh);
    prop_assert!(found.end_charge >= found.start_charge && found.end_charge <= 1.0);
    for pair in found.curve.windows(2) {
        let (one, two) = (pair[0], pair[1]);
        prop_assert!(two.time_s >= one.time_s && two.charge >= one.charge, "{one:?} {two:?}");
        prop_assert!(two.current_a <= one.current_a * (1.0 + 1e-9), "{one:?} {two:?}");
        prop_assert!(one.volts.is_finite() && two.volts >= one.volts - 1e-6, "{one:?} {two:?}");
    }
    Ok(())
}

proptest! {
    #![proptest_config(cases(150))]

    #[test]
    fn a_charge_is_numbers_in_order(board in any_board(), from in share(), to in share()) {
        let drive = chargeable(&board).drive();
        let found = drive.charge(from, to).expect("the charger is the pack's");
        sane(&found)?;
        prop_assert!(found.end_charge <= to.max(from) + 1e-9);
        prop_assert!(found.end != ChargeEnd::Time);
        if let (Some(first), Some(last)) = (found.curve.first(), found.curve.last()) {
            prop_assert!(first.charge >= from - 1e-9);
            prop_assert!((last.charge - found.end_charge).abs() < 1e-9);
            prop_assert!((last.time_s - found.time_s).abs() <= 1e-6 * found.time_s.max(1.0));
        }
    }

    /// Indoors it charges as on a day as warm, whatever the weather.
    #[test]
    fn it_charges_as_where_it_charges(board in likely_board(), outside in -25.0..=50.0_f64) {
        let indoors = chargeable(&board).with(Slot::Place, "air_c", outside);
        let celsius = indoors.value(Slot::Place, "charge_air_c");
        let outdoors = indoors.with(Slot::Place, "air_c", celsius);
        prop_assert_eq!(indoors.drive().charge(0.2, 0.9), outdoors.drive().charge(0.2, 0.9));
    }

    /// However much the joints resist, the curve ends when the charge does.
    #[test]
    fn poor_joints_only_take_longer(board in likely_board(), by in 0.0..=1.0_f64, parallel in 3.0..=40.0_f64) {
        let few = board.with(Slot::Pack, "series", 3.0).with(Slot::Pack, "parallel", parallel.round());
        let strong = few.with(Slot::Charger, "current_a", 50.0).with(Slot::Cell, "full_v", 3.6);
        let poor = strong.toward(Slot::Pack, "joints_mohm", End::Most, by);
        let poor = chargeable(&poor.with(Slot::Cell, "chemistry", 2.0));
        let found = poor.drive().charge(0.0, 1.0).expect("the charger is the pack's");
        sane(&found)?;
        let last = found.curve.last().expect("there is a curve");
        prop_assert!((last.time_s - found.time_s).abs() <= 1e-6 * found.time_s.max(1.0), "{last:?} {found:?}");
        // It ends at a twentieth of the capacity an hour, so within days; for ever is what must not be.
        prop_assert!(found.time_s < 30.0 * 86_400.0, "{found:?}");
    }

    /// What is in after a time is what a charge to that much takes as long for.
    #[test]
    fn by_time_and_by_charge_agree(board in likely_board(), part in 0.02..=0.98_f64) {
        let drive = chargeable(&board).drive();
        let whole = drive.charge(0.1, 1.0).expect("the charger is the pack's");
        // A cell said to be full at 3.3 V may be so already.
        prop_assume!(whole.time_s > 60.0);
        let seconds = part * whole.time_s;
        let by_then = drive.charge_for(0.1, seconds).expect("as before");
        sane(&by_then)?;
        prop_assert!((by_then.time_s - seconds).abs() < 1e-6 * seconds);
        let back = drive.charge(0.1, by_then.end_charge).expect("as before");
        prop_assert!((back.time_s / seconds - 1.0).abs() < 1e-3, "{} {seconds}", back.time_s);
    }

    /// More current never charges slower.
    #[test]
    fn a_stronger_charger_is_no_slower(board in likely_board(), by in 0.0..=1.0_f64) {
        let board = chargeable(&board);
        let strong = board.toward(Slot::Charger, "current_a", End::Most, by);
        let time = |board: &Board| board.drive().charge(0.0, 0.9).expect("it fits").time_s;
        prop_assert!(time(&strong) <= time(&board) * (1.0 + 1e-3));
    }

    #[test]
    fn a_wrong_charger_is_refused(board in any_board(), off in 0.006..=0.3_f64) {
        let board = chargeable(&board);
        let full = full_v(&board);
        // 3.65 V a cell is as usual for LFP as 3.6 V (common practice, no source).
        let usual_lfp = board.value(Slot::Cell, "chemistry") == 2.0
            && board.value(Slot::Cell, "full_v") == 3.6;
        let most = if usual_lfp { full * 3.65 / 3.6 } else { full };
        for volts in [full * (1.0 - off), full * (1.0 + off)] {
            let wrong = board.with(Slot::Charger, "full_v", volts);
            let charger = wrong.value(Slot::Charger, "full_v");
            // The table's own ends may bring it near again.
            if charger < 0.994 * full || charger > 1.006 * most {
                let refused = wrong.drive().charge(0.0, 1.0);
                let Err(ChargeRefusal::WrongVolts { charger_v, pack_v, fits_v, overcharges }) = refused
                else {
                    return Err(TestCaseError::fail(format!("{refused:?}")));
                };
                prop_assert_eq!((charger_v, pack_v), (charger, full));
                prop_assert!((fits_v[0] / (0.995 * full) - 1.0).abs() < 1e-9, "{fits_v:?}");
                prop_assert!((fits_v[1] / (1.005 * most) - 1.0).abs() < 1e-9, "{fits_v:?}");
                prop_assert_eq!(overcharges, charger > full);
            }
        }
    }

    #[test]
    fn cold_cells_are_refused(board in any_board(), celsius in -25.0..=-0.01_f64) {
        let cold = chargeable(&board).with(Slot::Place, "charge_air_c", celsius);
        let said = ChargeRefusal::TooCold { cell_c: celsius, least_c: LEAST_CHARGE_C };
        prop_assert_eq!(cold.drive().charge(0.0, 1.0), Err(said));
        prop_assert_eq!(cold.drive().charge_for(0.0, 60.0), Err(said));
    }
}
