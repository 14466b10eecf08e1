//! Cells and controller in the box: the arrangement that fits, or that
//! is the least too large.

use super::cell_size::{CellSize, cell_size};
use super::{Row, assumed};
use crate::build::{Build, Draft};
use crate::math::floor;
use crate::parts::Slot;
use crate::physics::packing::{
    BETWEEN_M, CABLE_M, CellsEndToEnd, CellsFlankToFlank, ENDS_M, InARow, LINING_M, RoomLeft,
    SideBySide,
};
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// How the cells lie.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Lie {
    /// Their axes along the board.
    Along,
    /// Their axes across the board.
    Across,
    /// Upright.
    Standing,
}

/// Where the controller is, seen from the cells.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum Side {
    /// Further along the board.
    Behind,
    /// Across the board.
    Beside,
}

/// The controller in the enclosure.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(rename = "ControllerPlace"))]
pub struct Controller {
    /// Its place.
    pub side: Side,
    /// Whether it is turned, its length across the board.
    pub turned: bool,
    /// Its corner nearest the enclosure's: along, across and up, m.
    pub corner_m: [f64; 3],
    /// Its size along, across and up, m.
    pub size_m: [f64; 3],
}

/// An arrangement of cells and controller.
///
/// All places are from one lower corner of the enclosure inside: along the
/// board, across, and up, in m. Where it does not fit it is drawn as if the
/// enclosure were larger.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct BoxPlan {
    /// Size of the enclosure inside, m.
    pub inside_m: [f64; 3],
    /// Size of a cell.
    pub cell: CellSize,
    /// How the cells lie.
    pub lie: Lie,
    /// Cells in a row along, across and up; the last row may not be full.
    pub counts: [f64; 3],
    /// The middle of each cell, m.
    pub cells_m: Vec<[f64; 3]>,
    /// The controller.
    pub controller: Controller,
    /// Room that cells, cables, controller and padding take along, across and up, m.
    pub used_m: [f64; 3],
    /// Room left along, across and up, m; negative is too little.
    pub left_m: [f64; 3],
    /// Whether it fits.
    pub fits: bool,
    /// The direction with the least room left, by its place: 0 along, 1 across, 2 up.
    pub tightest: usize,
    /// Least inside length of an enclosure as wide and as high that takes them, m; none
    /// where it is too narrow or too low for any.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub length_for_m: Option<f64>,
    /// The most cells of this size that would go in, with the controller: a count of 0 or more.
    pub room_for: f64,
    /// The most cells in parallel of which that is enough for those in series: a count of 0 or more.
    pub parallel_for: f64,
    /// Inputs that were assumed.
    pub assumed: Vec<Row>,
}

impl BoxPlan {
    /// Where all cells together lie, m: from and to, along, across and up.
    #[must_use]
    pub fn bank_m(&self) -> [[f64; 2]; 3] {
        let CellSize { diameter_m, length_m, .. } = self.cell;
        let size = self.lie.axes().map(|axial| if axial { length_m } else { diameter_m });
        let reach = |pick: fn(&[f64; 3]) -> f64, size: f64| {
            let middles = self.cells_m.iter().map(pick);
            let (low, high) =
                middles.fold((f64::MAX, 0.0_f64), |(low, high), at| (low.min(at), high.max(at)));
            [low - size / 2.0, high + size / 2.0]
        };
        let [along, across, up] = size;
        [reach(|at| at[0], along), reach(|at| at[1], across), reach(|at| at[2], up)]
    }
}

/// Rounding that is no want of room: a hundredth of a micrometre.
const HAIR_M: f64 = 1e-8;

const INPUTS: [(Slot, &str); 6] = [
    (Slot::Deck, "box_length_mm"),
    (Slot::Deck, "box_width_mm"),
    (Slot::Deck, "box_height_mm"),
    (Slot::Controller, "length_mm"),
    (Slot::Controller, "width_mm"),
    (Slot::Controller, "height_mm"),
];

/// An arrangement, and how well it goes in.
#[derive(Clone, Copy)]
struct Trial {
    lie: Lie,
    counts: [f64; 3],
    side: Side,
    turned: bool,
    left: [f64; 3],
}

/// What is to go in, and into what.
struct Task {
    inside: [f64; 3],
    cell: CellSize,
    controller: [f64; 3],
}

const LIES: [Lie; 3] = [Lie::Across, Lie::Along, Lie::Standing];
const SIDES: [(Side, bool); 4] =
    [(Side::Behind, true), (Side::Behind, false), (Side::Beside, false), (Side::Beside, true)];

impl Lie {
    /// Whether the cells' axes point along, across or up.
    const fn axes(self) -> [bool; 3] {
        [matches!(self, Self::Along), matches!(self, Self::Across), matches!(self, Self::Standing)]
    }
}

/// The three together, one direction after the other.
fn each(a: [f64; 3], b: [f64; 3], f: impl Fn(f64, f64) -> f64) -> [f64; 3] {
    let ([a0, a1, a2], [b0, b1, b2]) = (a, b);
    [f(a0, b0), f(a1, b1), f(a2, b2)]
}

impl Task {
    fn new(draft: &Draft, build: &Build) -> Self {
        let (deck, controller) = (&build.deck, &build.controller);
        Self {
            inside: [deck.box_length_m, deck.box_width_m, deck.box_height_m],
            cell: cell_size(draft, build),
            controller: [controller.length_m, controller.width_m, controller.height_m],
        }
    }

    /// Size of the controller along, across and up.
    fn case(&self, turned: bool) -> [f64; 3] {
        let [length, width, height] = self.controller;
        if turned { [width, length, height] } else { [length, width, height] }
    }

    /// Room of a row of cells one way.
    fn block(&self, count: f64, axial: bool, w: &mut Working) -> f64 {
        if axial {
            w.apply(CellsEndToEnd { count, length: self.cell.length_m })
        } else {
            w.apply(CellsFlankToFlank { count, diameter: self.cell.diameter_m })
        }
    }

    fn blocks(&self, lie: Lie, counts: [f64; 3]) -> [f64; 3] {
        let ([a0, a1, a2], [c0, c1, c2]) = (lie.axes(), counts);
        let w = &mut Working::off();
        [self.block(c0, a0, w), self.block(c1, a1, w), self.block(c2, a2, w)]
    }

    /// Room left one way, with the controller in the row or at its side.
    fn left(inside: f64, block: f64, case: f64, row: bool, w: &mut Working) -> f64 {
        let filled = if row {
            w.apply(InARow { block, controller: case })
        } else {
            w.apply(SideBySide { block, controller: case })
        };
        w.apply(RoomLeft { inside, filled })
    }

    fn trial(&self, lie: Lie, counts: [f64; 3], side: Side, turned: bool) -> Trial {
        let w = &mut Working::off();
        let ([i0, i1, i2], [c0, c1, c2]) = (self.inside, self.case(turned));
        let [b0, b1, b2] = self.blocks(lie, counts);
        let left = [
            Self::left(i0, b0, c0, side == Side::Behind, w),
            Self::left(i1, b1, c1, side == Side::Beside, w),
            Self::left(i2, b2, c2, false, w),
        ];
        Trial { lie, counts, side, turned, left }
    }

    /// Tries every arrangement of so many cells.
    fn each_trial(&self, cells: f64, mut tried: impl FnMut(Trial)) {
        for lie in LIES {
            let mut up = 1.0;
            while up <= cells {
                let most = ceil(cells / up);
                let mut across = 1.0;
                while across <= most {
                    let counts = [ceil(cells / (up * across)), across, up];
                    for (side, turned) in SIDES {
                        tried(self.trial(lie, counts, side, turned));
                    }
                    across += 1.0;
                }
                up += 1.0;
            }
        }
    }

    /// The best arrangement of so many cells, and the least length of an enclosure of
    /// this width and height that takes one.
    fn best(&self, cells: f64) -> (Trial, Option<f64>) {
        let mut best = self.trial(Lie::Across, [cells, 1.0, 1.0], Side::Behind, true);
        let mut length: Option<f64> = None;
        let [inside, _, _] = self.inside;
        self.each_trial(cells, |trial| {
            if trial.better_than(&best) {
                best = trial;
            }
            let [along, across, up] = trial.left;
            if across >= -HAIR_M && up >= -HAIR_M {
                length = Some(length.unwrap_or(f64::INFINITY).min(inside - along));
            }
        });
        (best, length)
    }

    /// The most cells that go in beside the controller.
    fn room_for(&self) -> f64 {
        let mut most = 0.0_f64;
        for lie in LIES {
            for (side, turned) in SIDES {
                let ([i0, i1, i2], [c0, c1, c2]) = (self.inside, self.case(turned));
                // What is left for cells one way, and for the controller if it is not in the row.
                let room = |inside: f64, case: f64, row: bool| {
                    let inside = inside - LINING_M + HAIR_M;
                    if row {
                        inside - CABLE_M - case
                    } else if case <= inside {
                        inside
                    } else {
                        0.0
                    }
                };
                let count = |room: f64, axial: bool| {
                    let count = if axial {
                        room / (self.cell.length_m + ENDS_M)
                    } else {
                        (room + BETWEEN_M) / (self.cell.diameter_m + BETWEEN_M)
                    };
                    floor(count).max(0.0)
                };
                let [a0, a1, a2] = lie.axes();
                let along = count(room(i0, c0, side == Side::Behind), a0);
                let across = count(room(i1, c1, side == Side::Beside), a1);
                most = most.max(along * across * count(room(i2, c2, false), a2));
            }
        }
        most
    }
}

fn ceil(x: f64) -> f64 {
    -floor(-x)
}

impl Trial {
    /// What is wanting in all directions together, and in the worst.
    fn wanting(&self) -> (f64, f64) {
        self.left.iter().fold((0.0, 0.0), |(sum, worst): (f64, f64), left| {
            let short = if *left < -HAIR_M { -left } else { 0.0 };
            (sum + short, worst.max(short))
        })
    }

    /// What fits is better, with fewer layers, and then with more room along
    /// the board; of what does not fit, what wants the least in its worst
    /// direction, and then in all together.
    fn better_than(&self, other: &Self) -> bool {
        let rank = |trial: &Self| {
            let (sum, worst) = trial.wanting();
            let ([_, _, layers], [along, _, _]) = (trial.counts, trial.left);
            [worst, sum, layers, -along]
        };
        rank(self) < rank(other)
    }

    fn tightest(&self) -> usize {
        let [along, across, up] = self.left;
        if up < along && up < across { 2 } else { usize::from(across < along) }
    }
}

/// The arrangement that fits, or that is the least too large.
///
/// ```
/// use pitchline_core::fit::box_plan;
/// use pitchline_core::{Build, Draft, Slot};
///
/// let mut draft = Draft::typical();
/// let build = Build::check(&draft).unwrap();
/// let plan = box_plan(&draft, &build);
/// // 10 in series, 3 in parallel.
/// assert_eq!(plan.cells_m.len(), 30);
/// assert_eq!(plan.fits, plan.room_for >= 30.0);
/// // No more cells go in than their volume allows.
/// let [length, width, height] = plan.inside_m;
/// let cell_m3 = std::f64::consts::FRAC_PI_4 * 0.021 * 0.021 * 0.070;
/// assert!(plan.room_for * cell_m3 < length * width * height);
/// // A shorter enclosure takes fewer.
/// draft.set(Slot::Deck, "box_length_mm", 200.0);
/// let short = box_plan(&draft, &Build::check(&draft).unwrap());
/// assert!(short.room_for < plan.room_for && short.length_for_m == plan.length_for_m);
/// ```
#[must_use]
pub fn box_plan(draft: &Draft, build: &Build) -> BoxPlan {
    let task = Task::new(draft, build);
    let cells = build.pack.series * build.pack.parallel;
    let (best, length_for_m) = task.best(cells);
    let room_for = task.room_for();
    BoxPlan {
        inside_m: task.inside,
        cell: task.cell,
        lie: best.lie,
        counts: best.counts,
        cells_m: places(&task, &best, cells),
        controller: controller(&task, &best),
        used_m: each(task.inside, best.left, |inside, left| inside - left),
        left_m: best.left,
        fits: best.wanting().1 == 0.0,
        tightest: best.tightest(),
        length_for_m,
        room_for,
        parallel_for: floor(room_for / build.pack.series),
        assumed: assumed(draft, &INPUTS),
    }
}

/// The working of the direction with the least room.
pub(super) fn explained(draft: &Draft, build: &Build, w: &mut Working) {
    let task = Task::new(draft, build);
    let (best, _) = task.best(build.pack.series * build.pack.parallel);
    let at = best.tightest();
    let pick = |of: [f64; 3]| of.get(at).copied().unwrap_or(0.0);
    let axial = best.lie.axes().get(at).copied().unwrap_or(false);
    let block = task.block(pick(best.counts), axial, w);
    let row = at == if best.side == Side::Behind { 0 } else { 1 };
    Task::left(pick(task.inside), block, pick(task.case(best.turned)), row, w);
}

fn controller(task: &Task, trial: &Trial) -> Controller {
    let edge = LINING_M / 2.0;
    let [along, across, _] = task.blocks(trial.lie, trial.counts);
    let corner_m = match trial.side {
        Side::Behind => [edge + along + CABLE_M, edge, edge],
        Side::Beside => [edge, edge + across + CABLE_M, edge],
    };
    Controller { side: trial.side, turned: trial.turned, corner_m, size_m: task.case(trial.turned) }
}

/// The middles of the cells, row by row from the corner.
fn places(task: &Task, trial: &Trial, cells: f64) -> Vec<[f64; 3]> {
    let CellSize { diameter_m, length_m, .. } = task.cell;
    let axes = trial.lie.axes().map(|axial| if axial { 1.0 } else { 0.0 });
    let step =
        axes.map(|axial| axial * (length_m + ENDS_M) + (1.0 - axial) * (diameter_m + BETWEEN_M));
    // A cell's ends have half their allowance each; flanks have none at the lining.
    let first = axes.map(|axial| {
        LINING_M / 2.0 + axial * (length_m + ENDS_M) / 2.0 + (1.0 - axial) * diameter_m / 2.0
    });
    let [_, across, up] = trial.counts;
    let (mut list, mut at) = (Vec::new(), [0.0; 3]);
    let mut placed = 0.0;
    while placed < cells {
        list.push(each(first, each(step, at, |s, n| s * n), |a, b| a + b));
        let [x, y, z] = at;
        at = if z + 1.0 < up {
            [x, y, z + 1.0]
        } else if y + 1.0 < across {
            [x, y + 1.0, 0.0]
        } else {
            [x + 1.0, 0.0, 0.0]
        };
        placed += 1.0;
    }
    list
}
