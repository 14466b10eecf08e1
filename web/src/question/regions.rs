//! Where along a curve which limit binds.

use crate::chart::Region;
use crate::text::words;
use pitchline_core::Limit;

/// Stretches of a curve in which one limit binds, from its points rising in x. Each limit keeps its
/// dash throughout the curve.
#[must_use]
pub fn regions(points: &[(f64, Limit)]) -> Vec<Region> {
    let mut kinds: Vec<Limit> = Vec::new();
    let mut regions: Vec<Region> = Vec::new();
    let mut last = None;
    for (x, limit) in points {
        if last == Some(*limit) {
            if let Some(region) = regions.last_mut() {
                region.to = *x;
            }
            continue;
        }
        // The next stretch begins where the last one ends.
        let from = regions.last().map_or(*x, |region| region.to);
        let kind = kinds.iter().position(|known| known == limit).unwrap_or_else(|| {
            kinds.push(*limit);
            kinds.len() - 1
        });
        let name = words::limit_short(*limit).into();
        regions.push(Region { from, to: *x, kind, name });
        last = Some(*limit);
    }
    regions
}
