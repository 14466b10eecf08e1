//! Words of what stands around the questions.

/// Takes back the last edit of the build.
pub const UNDO: &str = "Undo";
/// Makes again what was taken back.
pub const REDO: &str = "Redo";
/// Takes a message away.
pub const CLOSE: &str = "Close";

/// A button that undoes or redoes, by its word and the edit's name.
#[must_use]
pub fn button(word: &str, edit: Option<&str>) -> String {
    match edit {
        Some(edit) if !edit.is_empty() => format!("{word}: {edit}"),
        _ => word.into(),
    }
}
