//! The known words, the nearest to a mistyped one first.

use alloc::vec::Vec;

/// The known words by how many letters of them are to be changed, and how many of them, at the
/// head, are near enough to be meant.
pub(crate) fn by_nearness<'a>(given: &str, known: &[&'a str]) -> (Vec<&'a str>, usize) {
    let most = given.chars().count() / 2 + 1;
    let mut found: Vec<(usize, &str)> = Vec::new();
    for word in known {
        let next = (distance(given, word), *word);
        found.insert(found.partition_point(|other| *other < next), next);
    }
    let near = found.iter().filter(|(letters, _)| *letters <= most).count();
    (found.into_iter().map(|(_, word)| word).collect(), near)
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
        let known = ["mass_kg", "kv_rpm_per_v"];
        assert_eq!(by_nearness("kv_rpm_v", &known), (["kv_rpm_per_v", "mass_kg"].into(), 1));
        assert_eq!(by_nearness("zzzzzz", &["mass_kg"]), (["mass_kg"].into(), 0));
    }
}
