//! Files that are made from others.

use std::fs;

/// Compares a file with what it should be by `same`, or writes it when told to.
pub(crate) fn keep(path: &str, fresh: &str, same: impl Fn(&str, &str) -> bool) {
    let place = pitchline_tests::root().join(path);
    let kept = fs::read_to_string(&place).unwrap_or_default();
    if same(&kept, fresh) {
        return;
    }
    let write = std::env::var_os("PITCHLINE_WRITE").is_some_and(|value| value == "1");
    assert!(
        write,
        "{path} is stale; PITCHLINE_WRITE=1 cargo test -p pitchline-tests --test catalogue"
    );
    fs::write(&place, fresh).unwrap_or_else(|error| panic!("{path}: {error}"));
}
