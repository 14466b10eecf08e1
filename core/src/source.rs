//! Where a number comes from: references as data.

/// How far a reference can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Standing {
    /// Printed in a paper, a textbook or a standard.
    Published,
    /// Follows from published relations by algebra.
    Derived,
    /// What the trade does; nobody measured it for us.
    CommonPractice,
    /// Entered by the maker or the rider.
    Entered,
}

/// A reference that a figure can show.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Source {
    /// The citation, in plain words.
    pub title: &'static str,
    /// How far it can be trusted.
    pub standing: Standing,
}

const fn source(title: &'static str, standing: Standing) -> Source {
    Source { title, standing }
}

/// Road load of a wheeled vehicle.
pub static MARTIN: Source =
    source("Martin et al. 1998, J. Appl. Biomech. 14:276-291", Standing::Published);
/// Standard atmosphere.
pub static ISA: Source = source("ISO 2533 standard atmosphere", Standing::Published);
/// First-order motor model.
pub static DRELA: Source =
    source("Drela 2007, First-order DC electric motor model", Standing::Published);
/// Sinusoidal form of the motor model.
pub static SINUSOIDAL: Source =
    source("First-order motor model in sinusoidal form", Standing::Derived);
/// Resistivity and temperature coefficient of copper.
pub static IEC_60028: Source = source("IEC 60028, annealed copper", Standing::Published);
/// Wire diameters.
pub static ASTM_B258: Source = source("ASTM B258 wire diameters", Standing::Published);
/// Kirchhoff and Ohm.
pub static CIRCUIT: Source = source("Ohm's and Kirchhoff's laws", Standing::Derived);
/// Rigid-body geometry and energy.
pub static MECHANICS: Source = source("Geometry and mechanics", Standing::Derived);
/// Cell behaviour fitted to published parameter sets.
pub static CELL_MODEL: Source =
    source("Cell model fitted to published parameter sets", Standing::Derived);
/// Length and wrap of an open belt.
pub static OPEN_BELT: Source = source(
    "Budynas and Nisbett, Shigley's Mechanical Engineering Design, eq. 17-1 and 17-2",
    Standing::Published,
);
/// Ratings by teeth in mesh.
pub static BELT_NOTES: Source =
    source("Belt makers' application notes of 2012 and 2014", Standing::Published);
/// Pitch line of curvilinear belts.
pub static PULLEY_TABLE: Source =
    source("Pulley tables for curvilinear belts, 5 mm: 1.143 mm", Standing::Published);
/// Deflection and note of a taut string.
pub static STRING: Source =
    source("Law of the taut string, any physics textbook", Standing::Published);
/// How a truck turns the lean of its deck into steer.
pub static HUBBARD: Source =
    source("Hubbard 1979-80, lateral dynamics of the skateboard", Standing::Published);
/// Bending of a beam on two supports.
pub static BEAM: Source = source(
    "Simply supported beam with two equal loads, Euler-Bernoulli beam tables",
    Standing::Published,
);
/// Boundary dimensions of rolling bearings.
pub static ISO_15: Source =
    source("ISO 15, boundary dimensions of bearing 608", Standing::Published);
/// A habit of the trade.
pub static PRACTICE: Source = source("Rule of thumb, no source", Standing::CommonPractice);
