//! The only place that touches the browser.

mod fetch;
mod file;
mod history;
mod keys;
mod locale;
mod panic;
mod place;
mod store;

pub use fetch::{Unfetched, fetch, within};
pub use file::{offer, read};
pub use history::{Mark, Spot, keep_spots, on_arrival, on_link};
pub use keys::on_undo_keys;
pub use locale::{decimal_comma, imperial, today};
pub use panic::watch_panics;
pub use place::{
    clear, copy_text, embedded, exists, follow, frame_id, go_to, hash, heard, is_reload, later,
    letters, link, now, offline_state, offline_why, on_media, print, reveal, set_title, spawn,
    tell, tell_kept, tell_theme, theme, wants_demo,
};
pub use store::Store;
