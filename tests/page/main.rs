//! The page as a person meets it, in a real browser.
//!
//! Every answer that a test expects was worked out by the core on this machine
//! and rounded here; the page under test is the built one, in `dist`.

mod aloud;
mod catalogue;
mod charge;
mod check;
mod choice;
mod first;
mod fit;
mod history;
mod inventory;
mod keep;
mod keyboard;
mod legible;
mod link;
mod lost;
mod mend;
mod module;
mod offline;
mod pick;
mod picture;
mod place;
mod random;
mod ratings;
mod recovery;
mod reflow;
mod ride;
mod sight;
mod size;
mod store;
mod strip;
mod sure;
mod tabs;
mod theme;
mod two_histories;
mod typing;
mod units;
mod visit;
