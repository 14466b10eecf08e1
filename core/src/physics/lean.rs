//! Lean and steer: how trucks turn a leaning deck, and where it meets a tyre.
//!
//! The deck leans about the middle of the axles, and the wheels stay upright;
//! that they also turn is left out where deck and tyre meet.

use super::frame::WASHER_M;
use crate::math::{angle, sine_cosine, sqrt};

law! {
    /// Steer of the front truck, degrees, at a lean.
    ///
    /// Source: Hubbard 1979-80.
    ///
    /// ```
    /// // Pivots of 45°: the tangent of the steer is the sine of the lean.
    /// let steer = pitchline_core::physics::lean::SteerFront { pivot: 45.0, lean: 30.0 }.value();
    /// assert!((steer - 26.565_051).abs() < 1e-6); // atan 0.5
    /// ```
    SteerFront = "Steering angle of the front truck", "θ_front" = "atan(tan θ_pivot_front sin θ_lean)", Degree, HUBBARD;
    pivot: "θ_pivot_front" Degree, lean: "θ_lean" Degree => steer(pivot, lean)
}

law! {
    /// Steer of the rear truck, degrees, the other way.
    ///
    /// Source: Hubbard 1979-80.
    SteerRear = "Steering angle of the rear truck", "θ_rear" = "atan(tan θ_pivot_rear sin θ_lean)", Degree, HUBBARD;
    pivot: "θ_pivot_rear" Degree, lean: "θ_lean" Degree => steer(pivot, lean)
}

fn steer(pivot: f64, lean: f64) -> f64 {
    let (sine, cosine) = sine_cosine(pivot);
    angle(sine * sine_cosine(lean).0, cosine)
}

law! {
    /// Steer of both trucks together, as the sum of their tangents.
    SteerSum = "Steering of both trucks", "k_steer" = "tan θ_front + tan θ_rear", None, MECHANICS;
    front: "θ_front" Degree, rear: "θ_rear" Degree => {
        let tangent = |of: f64| { let (sine, cosine) = sine_cosine(of); sine / cosine };
        tangent(front) + tangent(rear)
    }
}

law! {
    /// Radius of the turn, m, of the line between the axles. Both axles point
    /// at the turn's middle: `L = R tan θ_front + R tan θ_rear`, so that two
    /// alike give half the wheelbase over the tangent of one.
    TurnRadius = "Radius of the turn", "R_turn" = "L_base / k_steer", Metre, MECHANICS;
    base: "L_base" Metre, steer: "k_steer" None => base / steer
}

law! {
    /// Height of the deck's underside above the axles, m.
    EdgeHeight = "Deck's edge above the axle", "h_edge" = "h_truck + h_riser", Metre, MECHANICS;
    truck: "h_truck" Metre, riser: "h_riser" Metre => truck + riser
}

law! {
    /// From the middle of the board to the inner flank of a front wheel, m.
    FlankFront = "Front wheel's inner face from the middle", "y_flank" = "w_hanger / 2 + 1 mm", Metre, PRACTICE;
    hanger: "w_hanger" Metre => hanger / 2.0 + WASHER_M
}

law! {
    /// From the middle of the board to the inner flank of a rear wheel, m.
    FlankRear = "Rear wheel's inner face from the middle", "y_flank" = "w_hanger / 2 + 1 mm + w_pulley", Metre, PRACTICE;
    hanger: "w_hanger" Metre, pulley: "w_pulley" Metre => hanger / 2.0 + WASHER_M + pulley
}

law! {
    /// From the middle of the board to the outer flank of a wheel, m.
    FlankOuter = "Wheel's outer face from the middle", "y_outer" = "y_flank + w_wheel", Metre, MECHANICS;
    flank: "y_flank" Metre, wheel: "w_wheel" Metre => flank + wheel
}

law! {
    /// Lean, degrees, at which the deck's edge comes down on the tread.
    ///
    /// ```
    /// // By hand: 30 mm above the tread over 100 mm: the edge turns about the axle
    /// // from atan(80/100) to asin(50/√16400).
    /// use pitchline_core::physics::lean::BiteTread;
    /// let lean = BiteTread { deck: 0.200, height: 0.080, wheel: 0.100 }.value();
    /// assert!((lean - (38.659_808 - 22.981_532)).abs() < 1e-5);
    /// ```
    BiteTread = "Lean at which the deck meets the tread", "θ_bite" = "atan(2 h_edge / w_deck) − asin(d_wheel / √(w_deck² + 4 h_edge²)), not below 0", Degree, MECHANICS;
    deck: "w_deck" Metre, height: "h_edge" Metre, wheel: "d_wheel" Metre => {
        let (half, radius) = (deck / 2.0, wheel / 2.0);
        let along = half * half + height * height - radius * radius;
        (angle(height, half) - angle(radius, sqrt(along.max(0.0)))).max(0.0)
    }
}

law! {
    /// How far the deck's edge reaches up from the axles, m; one that hangs
    /// below them reaches down, and its other edge swings out as it rises.
    EdgeReach = "Reach of the deck's edge from the axle", "h_reach" = "the greater of h_edge + t_deck and −h_edge", Metre, MECHANICS;
    height: "h_edge" Metre, thickness: "t_deck" Metre => (height + thickness).max(-height)
}

law! {
    /// Lean, degrees, at which the corner of a deck between the wheels swings
    /// out to the tyre's flank.
    BiteFlank = "Lean at which the deck meets the wheel's face", "θ_bite" = "atan(2 h_reach / w_deck) − acos(2 y_flank / √(w_deck² + 4 h_reach²))", Degree, MECHANICS;
    deck: "w_deck" Metre, reach: "h_reach" Metre, flank: "y_flank" Metre => {
        let half = deck / 2.0;
        let rise = half * half + reach * reach - flank * flank;
        angle(reach, half) - angle(sqrt(rise.max(0.0)), flank)
    }
}

law! {
    /// Lean, degrees, at which the face of the deck's edge comes against the
    /// wheel's inner corner.
    BiteFace = "Lean at which the deck's edge meets the wheel's corner", "θ_bite" = "acos(w_deck / √(d_wheel² + 4 y_flank²)) − atan(d_wheel / 2y_flank)", Degree, MECHANICS;
    deck: "w_deck" Metre, wheel: "d_wheel" Metre, flank: "y_flank" Metre => {
        let (half, radius) = (deck / 2.0, wheel / 2.0);
        let rise = flank * flank + radius * radius - half * half;
        angle(sqrt(rise.max(0.0)), half) - angle(radius, flank)
    }
}

law! {
    /// Lean, degrees, at which the underside of a deck that reaches beyond the
    /// wheel comes down on its outer corner.
    BiteCorner = "Lean at which the deck meets the wheel's corner", "θ_bite" = "asin(2 h_edge / √(d_wheel² + 4 y_outer²)) − atan(d_wheel / 2y_outer)", Degree, MECHANICS;
    height: "h_edge" Metre, wheel: "d_wheel" Metre, outer: "y_outer" Metre => {
        let radius = wheel / 2.0;
        let run = outer * outer + radius * radius - height * height;
        angle(height, sqrt(run.max(0.0))) - angle(radius, outer)
    }
}

law! {
    /// Height of the deck's edge above the axles, m, that clears the tread up
    /// to a lean.
    ClearTread = "Height that clears the tread", "h_clear" = "(d_wheel + w_deck sin θ_max) / (2 cos θ_max)", Metre, MECHANICS;
    wheel: "d_wheel" Metre, deck: "w_deck" Metre, lean: "θ_max" Degree => {
        let (sine, cosine) = sine_cosine(lean);
        (wheel + deck * sine) / (2.0 * cosine)
    }
}

law! {
    /// Height of the deck's underside above the axles, m, that clears the
    /// wheel's outer corner up to a lean: the corner's height along the deck's
    /// normal, which has its most where it points at the corner.
    ClearCorner = "Height that clears the wheel's corner", "h_clear" = "y_outer sin θ_max + ½ d_wheel cos θ_max; √(y_outer² + ¼ d_wheel²) where tan θ_max > 2y_outer / d_wheel", Metre, MECHANICS;
    outer: "y_outer" Metre, wheel: "d_wheel" Metre, lean: "θ_max" Degree => {
        let radius = wheel / 2.0;
        let (sine, cosine) = sine_cosine(lean);
        if sine * radius > cosine * outer {
            sqrt(outer * outer + radius * radius)
        } else {
            outer * sine + radius * cosine
        }
    }
}

law! {
    /// Riser, m, that keeps deck and tyres apart; not more than is needed, and
    /// negative where the deck could hang lower.
    EnoughRiser = "Minimum riser", "h_enough" = "h_clear − h_truck", Metre, MECHANICS;
    clear: "h_clear" Metre, truck: "h_truck" Metre => clear - truck
}

law! {
    /// Hardness of the bushings, Shore A. Common practice, no source.
    BushingHardness = "Hardness of the bushings, Shore A", "H_bushing" = "70 + m_stand / 4 kg, not above 100", None, PRACTICE;
    mass: "m_stand" Kilogram => (70.0 + 0.25 * mass).min(100.0)
}
