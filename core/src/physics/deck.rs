//! The deck as a beam between the trucks, and the enclosure under it.

use super::air::G;
use crate::math::{angle, sqrt};

law! {
    /// Mass that bends the deck, kg.
    StandingMass = "Mass on the deck", "m_stand" = "m_rider + m_load", Kilogram, MECHANICS;
    rider: "m_rider" Kilogram, load: "m_load" Kilogram => rider + load
}

law! {
    /// From an axle to the nearer foot, m; feet beyond the axles do not bend the deck.
    FootDistance = "From axle to foot", "l_foot" = "(L_base − l_stance) / 2, not below 0", Metre, MECHANICS;
    base: "L_base" Metre, stance: "l_stance" Metre => ((base - stance) / 2.0).max(0.0)
}

law! {
    /// Sag in the middle, m: two equal loads, at the same distance from both ends.
    ///
    /// The board's own mass is left out: it sags before the rider steps on.
    ///
    /// Source: beam tables; `P a (3 L² − 4 a²) / (24 E I)` with half the weight for `P`.
    ///
    /// ```
    /// // Both feet in the middle is one load there: W L³ / (48 E I), by the same tables.
    /// use pitchline_core::physics::{air::G, deck::DeckSag};
    /// let sag = DeckSag { mass: 80.0, foot: 0.35, base: 0.70, stiffness: 400.0 }.value();
    /// assert!((sag - 80.0 * G * 0.343 / (48.0 * 400.0)).abs() < 1e-15);
    /// ```
    DeckSag = "Sag under the rider", "f_sag" = "g m_stand l_foot (3 L_base² − 4 l_foot²) / (48 EI)", Metre, BEAM;
    mass: "m_stand" Kilogram, foot: "l_foot" Metre, base: "L_base" Metre, stiffness: "EI" NewtonSquareMetre =>
        G * mass * foot * (3.0 * base * base - 4.0 * foot * foot) / (48.0 * stiffness)
}

law! {
    /// Sag in the middle, m, from one that was measured in the same stance.
    ScaledSag = "Sag under the rider", "f_sag" = "f_measured m_stand / m_measured", Metre, BEAM;
    measured: "f_measured" Metre, mass: "m_stand" Kilogram, under: "m_measured" Kilogram => measured * mass / under
}

law! {
    /// Sag at the bottom of a bump, m: board and rider fall its height as they
    /// stand, and swing about that sag. Legs are taken as stiff, so it is the most.
    ///
    /// Source: energy, `½ k x² = m g h` with `k = m g / f_sag`.
    ///
    /// ```
    /// // By hand: √(2 · 8 · 16) = 16.
    /// let sag = pitchline_core::physics::deck::BumpSag { sag: 0.008, bump: 0.016 }.value();
    /// assert!((sag - 0.024).abs() < 1e-15);
    /// ```
    BumpSag = "Sag off a bump", "f_bump" = "f_sag + √(2 f_sag h_bump)", Metre, MECHANICS;
    sag: "f_sag" Metre, bump: "h_bump" Metre => sag + sqrt(2.0 * sag * bump)
}

law! {
    /// Enclosure to road, standing, m. The middle's sag counts for all of it.
    BoxRoad = "Enclosure to road", "c" = "h_deck − h_box − t_wall − f_sag", Metre, MECHANICS;
    deck: "h_deck" Metre, height: "h_box" Metre, wall: "t_wall" Metre, sag: "f_sag" Metre => deck - height - wall - sag
}

law! {
    /// Enclosure to road at the bottom of a bump, m.
    BoxRoadBump = "Enclosure to road, off a bump", "c" = "h_deck − h_box − t_wall − f_bump", Metre, MECHANICS;
    deck: "h_deck" Metre, height: "h_box" Metre, wall: "t_wall" Metre, sag: "f_bump" Metre => deck - height - wall - sag
}

law! {
    /// Break-over angle, degrees: the sharpest crest between two slopes that
    /// rolls through below the enclosure.
    ///
    /// At that crest the line from it to the foot of each wheel touches both.
    /// With `x` from crest to axle and `u` from its height to the axle's, the
    /// wheel's middle is seen at `atan(u / x)`, and the line to its foot
    /// `asin(r / √(x² + u²))` lower. A flat bottom is sharpest where it is
    /// nearest the middle between the axles, so the crest is put there.
    ///
    /// ```
    /// use pitchline_core::physics::deck::BreakOver;
    /// // Wheels as points on the road: 60 mm high over 300 mm each way, 2 atan(0.2).
    /// let angle = BreakOver { radius: 1e-9, base: 0.6, height: 0.060, crest: 0.0 };
    /// assert!((angle.value() - 22.619_865).abs() < 1e-5);
    /// ```
    BreakOver = "Break-over angle", "θ_over" = "Σ asin(r / √(x² + u²)) − atan(u / x), each at most 90°, with x = L_base / 2 ± l_crest and u = r − c", Degree, MECHANICS;
    radius: "r" Metre, base: "L_base" Metre, height: "c" Metre, crest: "l_crest" Metre => {
        let up = radius - height;
        let one = |x: f64| {
            let x = x.max(0.0);
            let apart = x * x + up * up;
            // A crest inside the wheel's circle is seen as one at its rim; one
            // that is level with its top or higher may be a wall.
            let seen = angle(radius, sqrt((apart - radius * radius).max(0.0)));
            (seen - angle(up, x)).min(90.0)
        };
        (one(base / 2.0 + crest) + one(base / 2.0 - crest)).max(0.0)
    }
}
