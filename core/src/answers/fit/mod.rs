//! Does it go together?

mod belt;
mod belt_bench;
mod belt_load;

pub(crate) use belt_load::explain as explain_belt;

pub use belt::{
    BeltChoice, BeltFit, BeltList, BeltMiss, BeltOffers, BeltOnBoard, PulleySize, belt_fit,
};
pub use belt_bench::{BenchFit, MeasuredCentre, PulleyPair};
pub use belt_load::{BeltCheck, BeltLoad, BeltMesh, BeltTension, CentreFrom};
