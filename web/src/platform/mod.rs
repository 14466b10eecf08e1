//! The only place that touches the browser.

mod fetch;
mod file;
mod locale;
mod panic;
mod place;
mod store;

pub use fetch::{fetch, within};
pub use file::{offer, read};
pub use locale::{decimal_comma, imperial, today};
pub use panic::watch_panics;
pub use place::{
    clear, copy_text, embedded, exists, frame_id, go_to, hash, heard, later, letters, link, mark,
    marked, now, offline_state, offline_why, on_hash, on_media, print, reveal, scroll_to_top,
    set_hash, set_title, spawn, tell, tell_kept, wants_demo,
};
pub use store::Store;
