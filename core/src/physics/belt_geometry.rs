//! Where a belt lies: centre distance, wrap and teeth in mesh of an open belt
//! over two pulleys, and how its free span answers to a finger and to a pluck.

use crate::math::{PI, asin, floor, root, sqrt};

/// Force, N, with which the middle of the free span is pushed to check the
/// tension: about what a finger or one kilogram gives. Common practice, no source.
pub const TEST_FORCE_N: f64 = 10.0;

/// Static tension of each span as a share of the greatest pull: least, aimed
/// at, most.
///
/// At one half the slack span is slack at that pull (both spans together keep
/// twice the static tension). 0.55 leaves it a twentieth; 0.65 is a taut span
/// about eight times as tight as the slack one. Common practice, no source.
pub const TENSION_SHARES: [f64; 3] = [0.55, 0.6, 0.65];

/// Mass of a belt for its volume of width, pitch and length, kg/m³: 4.1 g for
/// each metre and millimetre of a belt of 5 mm pitch. Common practice, no source.
pub const BELT_DENSITY: f64 = 820.0;

/// Teeth of the belts of 5 mm pitch that are often in stock. Common practice,
/// no source: makers differ.
pub const USUAL_TEETH: [f64; 26] = [
    45.0, 50.0, 51.0, 53.0, 54.0, 56.0, 57.0, 59.0, 60.0, 61.0, 62.0, 64.0, 65.0, 66.0, 67.0, 68.0,
    69.0, 70.0, 71.0, 72.0, 73.0, 74.0, 75.0, 80.0, 85.0, 90.0,
];

/// How far the pitch line lies outside the tips of a pulley's teeth, m, for
/// curvilinear belts of 3, 5, 8 and 14 mm pitch; none for others.
///
/// Source: a table of pulleys for 3, 5 and 14 mm; 8 mm from memory, as that
/// table seems misprinted there.
#[must_use]
pub fn pitch_line_m(pitch_m: f64) -> Option<f64> {
    let known = [(0.003, 0.38e-3), (0.005, 0.5715e-3), (0.008, 0.686e-3), (0.014, 1.337e-3)];
    known.iter().find(|(pitch, _)| crate::math::abs(pitch - pitch_m) < 1e-6).map(|known| known.1)
}

law! {
    /// Pitch radius, m, of the pulley with fewer teeth.
    SmallPulleyRadius = "Pitch radius of the smaller pulley", "R_1" = "Z_1 pitch / 2π", Metre, MECHANICS;
    teeth: "Z_1" Teeth, pitch: "pitch" Metre => teeth * pitch / (2.0 * PI)
}

law! {
    /// Pitch radius, m, of the pulley with more teeth.
    LargePulleyRadius = "Pitch radius of the larger pulley", "R_2" = "Z_2 pitch / 2π", Metre, MECHANICS;
    teeth: "Z_2" Teeth, pitch: "pitch" Metre => teeth * pitch / (2.0 * PI)
}

law! {
    /// Diameter over the tips of a pulley's teeth, m. Source: pulley tables.
    ///
    /// ```
    /// // 16 teeth of 5 mm: 25.4648 less 1.143 mm.
    /// use pitchline_core::physics::belt_geometry::PulleyOutside;
    /// let d = PulleyOutside { teeth: 16.0, pitch: 0.005, above: 0.5715e-3 }.value();
    /// assert!((d - 0.024_321_8).abs() < 1e-7);
    /// ```
    PulleyOutside = "Outside diameter of a pulley", "d_out" = "Z pitch / π − 2 a", Metre, PULLEY_TABLE;
    teeth: "Z" Teeth, pitch: "pitch" Metre, above: "a" Metre => teeth * pitch / PI - 2.0 * above
}

law! {
    /// Centre distance, m, at which the pitch circles touch: any less is refused.
    TouchingCentre = "Shaft-to-axle distance at which the pulleys touch", "C_touch" = "R_1 + R_2", Metre, MECHANICS;
    small: "R_1" Metre, large: "R_2" Metre => small + large
}

law! {
    /// Half of what the belt wraps less on the smaller pulley than on half of
    /// it, rad; needs a centre distance of `R_2 − R_1` at least.
    BeltWedge = "Angle of the free spans", "β" = "asin((R_2 − R_1) / C)", Radian, OPEN_BELT;
    small: "R_1" Metre, large: "R_2" Metre, centre: "C" Metre => asin(((large - small) / centre).min(1.0))
}

law! {
    /// Pitch length of an open belt, m, exact. The root stands for `C cos β`: a
    /// cosine would cost the page kilobytes for nothing.
    OpenBeltLength = "Length of an open belt", "L_belt" = "2 √(C² − (R_2 − R_1)²) + π (R_1 + R_2) + 2 β (R_2 − R_1)", Metre, OPEN_BELT;
    centre: "C" Metre, wedge: "β" Radian, small: "R_1" Metre, large: "R_2" Metre =>
        2.0 * BeltSpan { centre, small, large }.value() + PI * (small + large) + 2.0 * wedge * (large - small)
}

law! {
    /// Pitch length of a belt, m, from its teeth.
    BeltLength = "Length of the belt", "L_belt" = "Z_belt pitch", Metre, MECHANICS;
    teeth: "Z_belt" Teeth, pitch: "pitch" Metre => teeth * pitch
}

law! {
    /// Centre distance, m, that a belt wants: the inverse of [`OpenBeltLength`]. For a
    /// belt too short it stops where the pulleys touch; [`centre_m`] refuses that.
    BeltCentre = "Shaft-to-axle distance the belt needs", "C" = "the C at which 2 √(C² − (R_2 − R_1)²) + π (R_1 + R_2) + 2 (R_2 − R_1) asin((R_2 − R_1) / C) = L_belt", Metre, OPEN_BELT;
    length: "L_belt" Metre, small: "R_1" Metre, large: "R_2" Metre => taut(length, small, large)
}

law! {
    /// Centre distance, m, that the belt wants, no further than the mount slides.
    BeltCentreInRun = "Shaft-to-axle distance within the mount's stops", "C" = "the C at which 2 √(C² − (R_2 − R_1)²) + π (R_1 + R_2) + 2 (R_2 − R_1) asin((R_2 − R_1) / C) = L_belt, from C_min to C_max", Metre, OPEN_BELT;
    length: "L_belt" Metre, small: "R_1" Metre, large: "R_2" Metre, least: "C_min" Metre, most: "C_max" Metre =>
        taut(length, small, large).max(least).min(most)
}

law! {
    /// Centre distance, m, as measured.
    CentreAsMeasured = "Shaft-to-axle distance as measured", "C" = "C_measured", Metre, MECHANICS;
    measured: "C_measured" Metre => measured
}

law! {
    /// Centre distance, m, in the middle of the mount's travel.
    SlotCentre = "Shaft-to-axle distance in the middle of the mount", "C" = "½ (C_min + C_max)", Metre, MECHANICS;
    least: "C_min" Metre, most: "C_max" Metre => 0.5 * (least + most)
}

law! {
    /// Teeth in mesh on the smaller pulley.
    TeethInMesh = "Teeth in mesh on the smaller pulley", "Z_mesh" = "Z_1 (π − 2 β) / 2π", Teeth, OPEN_BELT;
    teeth: "Z_1" Teeth, wedge: "β" Radian => teeth * (PI - 2.0 * wedge) / (2.0 * PI)
}

law! {
    /// Share of a belt's rating that so many teeth in mesh leave: the rule ends at two teeth.
    MeshShare = "Share of rating, by teeth in mesh", "k_mesh" = "1 − 0.2 (6 − Z_mesh rounded down), from 0.2 to 1", None, BELT_NOTES;
    mesh: "Z_mesh" Teeth => (1.0 - 0.2 * (6.0 - whole(mesh))).clamp(0.2, 1.0)
}

law! {
    /// Highest pull of a belt, N, with six teeth or more in mesh, or where that is not known.
    RatedPull = "Rated pull of the belt", "F_rated" = "f_rated b", Newton, PRACTICE;
    rating: "f_rated" NewtonPerMillimetre, width: "b" Millimetre => rating * width
}

law! {
    /// Highest pull of a belt, N, with these teeth in mesh.
    RatedPullInMesh = "Rated pull with these teeth in mesh", "F_rated" = "f_rated b k_mesh", Newton, BELT_NOTES;
    rating: "f_rated" NewtonPerMillimetre, width: "b" Millimetre, share: "k_mesh" None => rating * width * share
}

law! {
    /// Length of a free span, m.
    BeltSpan = "Free span", "L_span" = "√(C² − (R_2 − R_1)²)", Metre, OPEN_BELT;
    centre: "C" Metre, small: "R_1" Metre, large: "R_2" Metre =>
        sqrt((centre * centre - (large - small) * (large - small)).max(0.0))
}

law! {
    /// Mass of a belt for each metre, kg/m, as weighed.
    BeltMassPerMetre = "Belt mass per metre", "μ_belt" = "m_belt / L_belt", KilogramPerMetre, MECHANICS;
    mass: "m_belt" Kilogram, length: "L_belt" Metre => mass / length
}

law! {
    /// Mass of a belt for each metre, kg/m, where it was not weighed.
    UsualBeltMassPerMetre = "Typical belt mass per metre", "μ_belt" = "ρ_belt pitch b / 1000", KilogramPerMetre, PRACTICE;
    density: "ρ_belt" KilogramPerCubicMetre, pitch: "pitch" Metre, width: "b" Millimetre => density * pitch * width / 1000.0
}

law! {
    /// Torque on one motor's shaft, N·m, at its greatest current when braking,
    /// and no more than the tyres hold. Iron and bearings of the motor brake
    /// too. The tyres' hold is taken as for a push, which is more than braking
    /// leaves on the rear axle.
    BrakeTorque = "Torque of each motor at full braking", "T_brake" = "k_T (the lesser of I_brake and I_rated) + T_0, not above T_hold", NewtonMetre, DRELA;
    constant: "k_T" NewtonMetrePerAmpere, set: "I_brake" Ampere, rated: "I_rated" Ampere, iron: "T_0" NewtonMetre, hold: "T_hold" NewtonMetre =>
        (constant * set.min(rated) + iron).min(hold)
}

law! {
    /// Pull in the belt at the greatest push, N.
    DrivePull = "Belt pull at full throttle", "F_drive" = "2π T_lim / (Z_motor pitch)", Newton, MECHANICS;
    torque: "T_lim" NewtonMetre, teeth: "Z_motor" Teeth, pitch: "pitch" Metre => 2.0 * PI * torque / (teeth * pitch)
}

law! {
    /// Pull in the belt when braking, N.
    BrakePull = "Belt pull when braking", "F_brake" = "2π T_brake / (Z_motor pitch)", Newton, MECHANICS;
    torque: "T_brake" NewtonMetre, teeth: "Z_motor" Teeth, pitch: "pitch" Metre => 2.0 * PI * torque / (teeth * pitch)
}

law! {
    /// Greatest pull in the belt, N.
    PeakPull = "Peak belt pull", "F_peak" = "the greater of F_drive and F_brake", Newton, MECHANICS;
    drive: "F_drive" Newton, brake: "F_brake" Newton => drive.max(brake)
}

law! {
    /// Static tension of each span, N, as a share of the greatest pull.
    StaticTension = "Belt tension at rest, each span", "F_t" = "k_t F_peak", Newton, PRACTICE;
    share: "k_t" None, peak: "F_peak" Newton => share * peak
}

law! {
    /// How far the middle of a span gives way to a force across it, m; for small
    /// deflections and a belt that bends easily.
    ///
    /// ```
    /// // By hand: 16 N on a span that is pulled with 256 N gives 1/64 of its length.
    /// use pitchline_core::physics::belt_geometry::SpanDeflection;
    /// let q = SpanDeflection { force: 16.0, span: 0.064, tension: 256.0 }.value();
    /// assert!((q - 0.001).abs() < 1e-15);
    /// ```
    SpanDeflection = "Deflection at mid span", "q" = "F_test L_span / (4 F_t)", Metre, STRING;
    force: "F_test" Newton, span: "L_span" Metre, tension: "F_t" Newton => force * span / (4.0 * tension)
}

law! {
    /// Lowest note of a plucked span, Hz; a belt's stiffness makes it a little higher.
    SpanFrequency = "Frequency of the plucked span", "f" = "√(F_t / μ_belt) / (2 L_span)", Hertz, STRING;
    tension: "F_t" Newton, mass: "μ_belt" KilogramPerMetre, span: "L_span" Metre => sqrt(tension / mass) / (2.0 * span)
}

law! {
    /// Shaft torque of one motor, N·m, at which nothing is left in the slack
    /// span and the belt begins to climb its teeth.
    JumpTorque = "Torque at which the belt may skip teeth", "T_jump" = "2 F_t Z_motor pitch / 2π", NewtonMetre, PRACTICE;
    tension: "F_t" Newton, teeth: "Z_motor" Teeth, pitch: "pitch" Metre => tension * teeth * pitch / PI
}

/// A belt too short to go round two pulleys that do not overlap, or a centre
/// distance at which they would.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize)]
pub struct Overlap {
    /// Centre distance at which the pitch circles touch, m.
    pub touching_m: f64,
}

/// Pitch length of an open belt, m, over two pitch radii at a centre distance.
///
/// # Errors
/// [`Overlap`] where the pitch circles would touch or overlap.
pub fn length_m(centre_m: f64, small_m: f64, large_m: f64) -> Result<f64, Overlap> {
    let touching_m = small_m + large_m;
    // Not `<=`: what is not a number is refused too.
    if centre_m > touching_m {
        Ok(around(centre_m, small_m, large_m))
    } else {
        Err(Overlap { touching_m })
    }
}

/// Centre distance, m, that a belt of a pitch length wants.
///
/// # Errors
/// [`Overlap`] where the pitch circles would touch or overlap.
pub fn centre_m(length_m: f64, small_m: f64, large_m: f64) -> Result<f64, Overlap> {
    let touching_m = small_m + large_m;
    if length_m > around(touching_m, small_m, large_m) {
        Ok(taut(length_m, small_m, large_m))
    } else {
        Err(Overlap { touching_m })
    }
}

/// Whole teeth of a real number of them; a hair below a whole number is whole.
#[must_use]
pub fn whole(teeth: f64) -> f64 {
    floor(teeth + 1e-9)
}

fn around(centre: f64, small: f64, large: f64) -> f64 {
    OpenBeltLength { centre, wedge: BeltWedge { small, large, centre }.value(), small, large }
        .value()
}

/// Length grows with the centre distance, and is more than twice of it.
fn taut(length: f64, small: f64, large: f64) -> f64 {
    let touching = small + large;
    root(touching, touching.max(0.5 * length), 1e-14, |c| around(c, small, large) - length)
}
