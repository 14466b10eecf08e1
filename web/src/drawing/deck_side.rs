//! The board from the side: deck with its sag, enclosure, wheels and road.

use super::{Dim, Place, Plan, Shape};
use crate::text::{Style, drawing as said};

/// What the view shows; lengths in metres.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct DeckSide {
    /// Between the axles.
    pub wheelbase_m: f64,
    /// Free diameter of the wheels.
    pub wheel_m: f64,
    /// Height of the axles over the road.
    pub axle_m: f64,
    /// Underside of the deck over the road at the axles.
    pub deck_m: f64,
    /// Thickness of the deck.
    pub thick_m: f64,
    /// How far the middle sags under the rider.
    pub sag_m: f64,
    /// Length of the enclosure, outside.
    pub box_length_m: f64,
    /// Depth of the enclosure below the deck.
    pub box_depth_m: f64,
    /// How far its middle stands ahead of the deck's.
    pub box_ahead_m: f64,
    /// Under the enclosure, rider standing still.
    pub clear_m: f64,
    /// The same at the bottom of the bump.
    pub bump_clear_m: f64,
    /// Whether sizes of deck and enclosure are assumed.
    pub assumed: bool,
    /// Whether the wheelbase is.
    pub wheelbase_assumed: bool,
}

impl DeckSide {
    /// The drawing, in the reader's units.
    #[must_use]
    pub fn plan(&self, style: Style) -> Plan {
        let mm = |m: f64| m * 1e3;
        let half = mm(self.wheelbase_m) / 2.0;
        let (deck, thick, sag) = (mm(self.deck_m), mm(self.thick_m), mm(self.sag_m));
        // A sagging beam, near enough for the eye: a parabola between the axles.
        let under = |x: f64| deck - sag * (1.0 - (x / half) * (x / half)).max(0.0);
        let steps = || (-12..=12).map(f64::from).map(|n| n / 12.0);
        let reach = half * 1.12;
        let mut board: Vec<Place> = steps().map(|s| (s * reach, under(s * reach))).collect();
        board.extend(steps().map(|s| (-s * reach, under(s * reach) + thick)));
        let span = mm(self.box_length_m) / 2.0;
        let mid = mm(self.box_ahead_m);
        let along = |s: f64| mid + s * span;
        let mut under_box: Vec<Place> = steps().map(|s| (along(s), under(along(s)))).collect();
        // An enclosure is stiff: its floor is level.
        let floor = deck - sag - mm(self.box_depth_m);
        under_box.push((along(1.0), floor));
        under_box.push((along(-1.0), floor));
        let axle = mm(self.axle_m);
        let wheel = mm(self.wheel_m) / 2.0;
        let mut shapes =
            vec![Shape::outline("d-motor", under_box), Shape::outline("d-part", board)];
        for x in [-half, half] {
            shapes.push(Shape::line("d-stem", (x, axle), (x, deck)));
            shapes.push(Shape::circle("d-wheel", (x, axle), wheel));
            shapes.push(Shape::circle("d-axle", (x, axle), 5.0));
        }
        let ends = half + wheel + 10.0;
        shapes.push(Shape::line("d-road", (-ends, 0.0), (ends, 0.0)));
        // Where the deck would be with nobody on it, and where a bump brings the enclosure.
        let top = deck + thick;
        shapes.push(Shape::line("d-far", (-half, top), (half, top)));
        let (low, bump_low) = (mm(self.clear_m), mm(self.bump_clear_m));
        shapes.push(Shape::line("d-far", (along(-1.0), bump_low), (along(1.0), bump_low)));
        let dim = |name: &str, value: f64, ends| Dim {
            assumed: self.assumed,
            ..Dim::new(style, name, value, ends)
        };
        let down = |s: f64, from: f64| ((along(s), from), (along(s), 0.0));
        let dims = vec![
            dim(said::ENCLOSURE_TO_ROAD, self.clear_m, down(0.8, low)),
            Dim {
                word: said::OFF_BUMP,
                ..dim(said::ENCLOSURE_OFF_BUMP, self.bump_clear_m, down(-0.9, bump_low))
            },
            Dim {
                word: said::SAG,
                ..dim(said::DECK_SAG, self.sag_m, ((0.0, top), (0.0, top - sag)))
            },
            Dim {
                aside: 32.0,
                ..Dim::size(
                    style,
                    said::WHEELBASE,
                    self.wheelbase_m,
                    ((-half, top), (half, top)),
                    self.wheelbase_assumed,
                )
            },
        ];
        let mut plan = Plan { shapes, dims, height: 260.0, ..Plan::new(style) }
            .note((mid, floor + mm(self.box_depth_m) * 0.4), said::ENCLOSURE)
            .note((-0.7 * half, under(0.7 * half) + thick / 2.0), said::DECK)
            .note((half, axle + wheel * 0.5), said::WHEEL);
        // Behind large wheels nothing of it is seen.
        let over = axle + wheel;
        if deck > over + 4.0 {
            plan = plan.note((-half, (over + deck) / 2.0), said::TRUCK);
        }
        plan
    }
}
