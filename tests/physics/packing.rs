//! Cells and controller in the box, against counts by hand.

use crate::check::{Check, check, holds};
use pitchline_core::fit::{BoxPlan, Lie, Side, SizeFrom, box_plan};
use pitchline_core::{Build, Draft, Slot};

const BY_HAND: &str = "counted by hand with the allowances named in packing.rs";
const NAMES: &str =
    "IEC 61960 names round cells by diameter in mm and length in tenths, from memory";

/// Inside of the box, mm, cells in series and in parallel.
fn plan(inside: [f64; 3], series: f64, parallel: f64) -> BoxPlan {
    planned(inside, series, parallel, "21700")
}

fn planned(inside: [f64; 3], series: f64, parallel: f64, format: &str) -> BoxPlan {
    let mut draft = Draft::typical();
    let [length, width, height] = inside;
    for (slot, key, value) in [
        (Slot::Deck, "box_length_mm", length),
        (Slot::Deck, "box_width_mm", width),
        (Slot::Deck, "box_height_mm", height),
        (Slot::Controller, "length_mm", 120.0),
        (Slot::Controller, "width_mm", 75.0),
        (Slot::Controller, "height_mm", 25.0),
        (Slot::Pack, "series", series),
        (Slot::Pack, "parallel", parallel),
    ] {
        draft.set(slot, key, value);
    }
    let mut cell = draft.record(Slot::Cell).clone();
    cell.tags = vec![format.into()];
    draft.set_record(Slot::Cell, cell);
    box_plan(&draft, &Build::check(&draft).expect("in range"))
}

/// Room left, mm.
fn left(plan: &BoxPlan, way: usize) -> f64 {
    plan.left_m[way] * 1000.0
}

/// Length of a box that takes 30 cells, mm, with one of another length at hand.
fn length_for(length: f64, width: f64) -> f64 {
    plan([length, width, 29.0], 10.0, 3.0).length_for_m.unwrap_or(0.0) * 1e3
}

/// Thirty cells of 21 x 70 mm in one layer, two end to end across: along 15 of
/// 21 and 14 gaps, 20 for cables, 75 of the controller, 4 of lining; across
/// twice 73 and 4; up the controller's 25 and 4.
fn thirty() -> Vec<Check> {
    let just = plan([428.0, 150.0, 29.0], 10.0, 3.0);
    let [along, across, up] = just.bank_m();
    let mut list = vec![
        holds("30 cells just fit", just.fits, BY_HAND),
        holds("they lie across", just.lie == Lie::Across, BY_HAND),
        holds("the controller is behind, turned", just.controller.turned, BY_HAND),
        holds("and not beside", just.controller.side == Side::Behind, BY_HAND),
        check("15 along", just.counts[0], 15.0, 0.0, BY_HAND),
        check("2 across", just.counts[1], 2.0, 0.0, BY_HAND),
        check("1 up", just.counts[2], 1.0, 0.0, BY_HAND),
        check("30 are placed", just.cells_m.len() as f64, 30.0, 0.0, BY_HAND),
        check("room for 30", just.room_for, 30.0, 0.0, BY_HAND),
        check("that is 3 in parallel", just.parallel_for, 3.0, 0.0, BY_HAND),
        check("taken along", just.used_m[0] * 1e3, 428.0, 1e-9, BY_HAND),
        check("in a box of 300 mm", length_for(300.0, 150.0), 428.0, 1e-9, BY_HAND),
        // No cell and no controller goes into 70 mm across with its padding.
        holds("70 mm across", plan([428.0, 70.0, 29.0], 10.0, 3.0).length_for_m.is_none(), BY_HAND),
        // Lining 2, half a diameter; lining 2, half of 73; lining 2, half a diameter.
        check("first cell along", just.cells_m[0][0], 0.0125, 1e-12, BY_HAND),
        check("first cell across", just.cells_m[0][1], 0.0385, 1e-12, BY_HAND),
        check("first cell up", just.cells_m[0][2], 0.0125, 1e-12, BY_HAND),
        // Fourteen steps of 22 further, and 73 across.
        check("last cell along", just.cells_m[29][0], 0.3205, 1e-12, BY_HAND),
        check("last cell across", just.cells_m[29][1], 0.1115, 1e-12, BY_HAND),
        // From the lining on: 15 of 21 and 14 gaps; half of 3 at each outer end of two of 73.
        check("cells from, along", along[0], 0.002, 1e-12, BY_HAND),
        check("cells to, along", along[1], 0.331, 1e-12, BY_HAND),
        check("cells from, across", across[0], 0.0035, 1e-12, BY_HAND),
        check("cells to, across", across[1], 0.1465, 1e-12, BY_HAND),
        check("cells from, up", up[0], 0.002, 1e-12, BY_HAND),
        check("cells to, up", up[1], 0.023, 1e-12, BY_HAND),
        check("controller along", just.controller.corner_m[0], 0.351, 1e-12, BY_HAND),
    ];
    // A millimetre less one way is a millimetre too little that way.
    for (way, inside) in
        [[427.0, 150.0, 29.0], [428.0, 149.0, 29.0], [428.0, 150.0, 28.0]].into_iter().enumerate()
    {
        let short = plan(inside, 10.0, 3.0);
        assert!(!short.fits, "{inside:?}");
        list.push(check(
            format!("short in way {way}"),
            short.tightest as f64,
            way as f64,
            0.0,
            BY_HAND,
        ));
        list.push(check(format!("by how much, {way}"), left(&short, way), -1.0, 1e-9, BY_HAND));
    }
    list
}

/// Twenty upright: 4 along with the controller turned behind them (87 + 20 + 75
/// + 4 = 186), 5 across (109, less than the controller's 120, and 4), 73 and 4 up.
fn upright() -> Vec<Check> {
    let stood = plan([186.0, 124.0, 77.0], 10.0, 2.0);
    let more = plan([186.0, 124.0, 77.0], 7.0, 3.0);
    vec![
        holds("20 stand", stood.fits && stood.lie == Lie::Standing, BY_HAND),
        check("room for 20 upright", stood.room_for, 20.0, 0.0, BY_HAND),
        check("no room along", left(&stood, 0), 0.0, 1e-9, BY_HAND),
        check("no room across", left(&stood, 1), 0.0, 1e-9, BY_HAND),
        check("no room up", left(&stood, 2), 0.0, 1e-9, BY_HAND),
        holds("21 do not", !more.fits, BY_HAND),
    ]
}

/// Beside: 109 of five rows, less than the controller's 120, and 4 along; twice
/// 73, 20, 75 and 4 across; 43 of two layers and 4 up.
fn beside() -> Vec<Check> {
    let packed = plan([124.0, 245.0, 47.0], 10.0, 2.0);
    let by_name = |format: &str| planned([400.0, 160.0, 60.0], 10.0, 2.0, format).cell;
    let mut list = vec![
        holds("20 and the controller beside", packed.fits, BY_HAND),
        check("two layers of ten", packed.room_for, 20.0, 0.0, BY_HAND),
        holds("is beside", packed.controller.side == Side::Beside, BY_HAND),
    ];
    for (format, diameter, length) in [
        ("18650", 18.0, 65.0),
        ("INR21700", 21.0, 70.0),
        ("26650", 26.0, 65.0),
        ("32700", 32.0, 70.0),
        ("4680", 46.0, 80.0),
    ] {
        let cell = by_name(format);
        assert_eq!(cell.from, SizeFrom::Format, "{format}");
        list.push(check(
            format!("diameter of {format}"),
            cell.diameter_m * 1e3,
            diameter,
            1e-9,
            NAMES,
        ));
        list.push(check(format!("length of {format}"), cell.length_m * 1e3, length, 1e-9, NAMES));
    }
    for format in ["", "round", "217", "217000", "00000", "é21"] {
        assert_eq!(by_name(format).from, SizeFrom::Assumed, "{format}");
    }
    list
}

pub(crate) fn checks() -> Vec<Check> {
    [thirty(), upright(), beside()].concat()
}
