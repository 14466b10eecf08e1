//! Clearances around the drive.

use super::{between, room, sizes, unit};
use crate::text::Style;
use pitchline_core::fit::Clearance;

/// Over the clearances.
pub const ROOMS_CAPTION: &str = "Clearances with you standing on a level board";

/// Heads of their table.
#[must_use]
pub fn rooms_heads() -> Vec<String> {
    ["Between", "Clearance", "Assumed"].map(String::from).into()
}

/// A clearance.
#[must_use]
pub fn rooms_row(c: &Clearance, style: Style) -> Vec<String> {
    let note = match (sizes(&c.assumed), c.practice) {
        (sizes, _) if !sizes.is_empty() => sizes,
        (_, true) => "only typical mount and washer sizes".into(),
        _ => "nothing".into(),
    };
    vec![between(c.between).into(), clearance(c, style), note]
}

fn clearance(c: &Clearance, style: Style) -> String {
    let room = unit(style, &room(style, c.room_m));
    if c.room_m < 0.0 { format!("{room} short") } else { room }
}

fn tightest(clearances: &[Clearance]) -> Option<&Clearance> {
    clearances.iter().min_by(|a, b| a.room_m.total_cmp(&b.room_m))
}

/// The smallest clearance, in a few words.
#[must_use]
pub fn rooms(clearances: &[Clearance], style: Style) -> String {
    tightest(clearances).map_or_else(String::new, |c| {
        format!("{}, {}", between(c.between).to_ascii_lowercase(), clearance(c, style))
    })
}

/// What the rear hanger from behind shows.
#[must_use]
pub fn hanger_finding(clearances: &[Clearance], style: Style) -> String {
    tightest(clearances).map_or_else(String::new, |_| {
        format!("Rear hanger from behind. Smallest clearance: {}.", rooms(clearances, style))
    })
}
