//! Builds, checks and serves the folder of static files that is Pitchline.
//!
//! ```text
//! sources --trunk--> dist --finish--> dist + sw.js + pitchline.js + build.json --serve--> browser
//! ```
//!
//! | question | answer |
//! |---|---|
//! | what may a browser keep for offline use? | [`offline::list`] |
//! | was `dist` built from these sources, and left alone since? | [`freshness`] |
//! | what must arrive before the page is usable? | [`size`] |
//! | how does it behave on a plain static host? | [`serve`] |
//!
//! The server is written on the standard library: tests stop it in the middle of a visit to
//! find out what works offline, so it must be able to close connections that are kept alive,
//! which small server crates do not offer.

mod answer;
mod build;
mod digest;
mod fingerprint;
mod finish;
mod freshness;
mod guard;
mod kind;
mod names;
pub mod offline;
mod request;
mod server;
mod size;
mod tool;
mod tree;

pub use build::build;
pub use fingerprint::{Fingerprint, SOURCES, fingerprint};
pub use finish::{Finished, finish};
pub use freshness::freshness;
pub use kind::{cache_control, media_type};
pub use server::{Fault, Options, Server, serve};
pub use size::{FileSize, Size, Sizes, size};
