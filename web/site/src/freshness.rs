//! Whether `dist` is what the sources give.

use std::collections::BTreeMap;
use std::path::Path;

use crate::finish::{self, RECORD, Record};
use crate::{fingerprint, tree};

/// Compares `dist`, below `root`, with the record its build left in it.
///
/// # Errors
/// One sentence for each source that changed since, and for each file of `dist` that the build
/// did not leave that way.
pub fn freshness(root: &Path) -> Result<(), Vec<String>> {
    let dist = root.join("dist");
    let failed = |error: &dyn std::fmt::Display| vec![error.to_string()];
    let text = tree::read_text(&dist.join(RECORD)).map_err(|error| failed(&error))?;
    let record: Record = serde_json::from_str(&text)
        .map_err(|error| vec![format!("dist/{RECORD} is not a build's record: {error}")])?;
    let sources = fingerprint(root).map_err(|error| failed(&error))?;
    let files = finish::digests(&dist).map_err(|error| failed(&error))?;

    let mut faults = Vec::new();
    compare(&record.sources, &sources.files, |path, change| {
        faults.push(match change {
            Change::Altered => format!("{path} changed since dist was built"),
            Change::Added => format!("{path} is new since dist was built"),
            Change::Gone => format!("{path} is gone since dist was built"),
        });
    });
    compare(&record.files, &files, |path, change| {
        faults.push(match change {
            Change::Altered => format!("dist/{path} was edited by hand"),
            Change::Added => format!("dist/{path} was not put there by the build"),
            Change::Gone => format!("dist/{path} is missing"),
        });
    });
    if faults.is_empty() && record.fingerprint != sources.total {
        faults.push(format!("dist/{RECORD} was edited by hand"));
    }
    if faults.is_empty() { Ok(()) } else { Err(faults) }
}

enum Change {
    Altered,
    Added,
    Gone,
}

fn compare(
    then: &BTreeMap<String, String>,
    now: &BTreeMap<String, String>,
    mut tell: impl FnMut(&str, Change),
) {
    for (path, digest) in then {
        match now.get(path) {
            Some(same) if same == digest => {}
            Some(_) => tell(path, Change::Altered),
            None => tell(path, Change::Gone),
        }
    }
    for path in now.keys().filter(|path| !then.contains_key(*path)) {
        tell(path, Change::Added);
    }
}
