//! The nearest known word to a mistyped one.

use alloc::string::String;
use alloc::vec::Vec;

/// The known word with the fewest letters to change; empty if none is near.
pub(super) fn nearest(given: &str, known: &[&str]) -> String {
    let most = given.chars().count() / 2 + 1;
    let best = known.iter().map(|word| (distance(given, word), *word)).min();
    best.filter(|(letters, _)| *letters <= most).map_or(String::new(), |(_, word)| word.into())
}

/// Letters to insert, delete or replace (Levenshtein).
fn distance(a: &str, b: &str) -> usize {
    let mut row: Vec<usize> = (0..=b.chars().count()).collect();
    for (i, x) in a.chars().enumerate() {
        let mut left = i + 1;
        let mut above_left = i;
        for (y, cell) in b.chars().zip(row.iter_mut().skip(1)) {
            let changed = above_left + usize::from(x != y);
            above_left = *cell;
            left = changed.min(left + 1).min(*cell + 1);
            *cell = left;
        }
        if let Some(first) = row.first_mut() {
            *first = i + 1;
        }
    }
    row.last().copied().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn counts_changed_letters() {
        // The textbook pair: three changes.
        assert_eq!(distance("kitten", "sitting"), 3);
        assert_eq!(distance("", "abc"), 3);
        assert_eq!(nearest("kv_rpm_v", &["kv_rpm_per_v", "mass_kg"]), "kv_rpm_per_v");
        assert_eq!(nearest("zzzzzz", &["mass_kg"]), "");
    }
}
