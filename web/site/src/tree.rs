//! Lists files below a folder by their relative path.

use std::fs;
use std::io;
use std::path::Path;

/// Paths of all files below `folder`, relative to it, with forward slashes, sorted.
///
/// Names that begin with a dot are passed over: they are a file manager's or an editor's litter,
/// and a static host commonly refuses to serve them.
///
/// # Errors
/// When a folder cannot be read; the message names it.
pub(crate) fn files(folder: &Path) -> io::Result<Vec<String>> {
    let mut found = Vec::new();
    walk(folder, "", &mut found)?;
    found.sort();
    Ok(found)
}

fn walk(folder: &Path, prefix: &str, found: &mut Vec<String>) -> io::Result<()> {
    for entry in fs::read_dir(folder).map_err(|error| about(folder, &error))? {
        let entry = entry?;
        let name = entry.file_name();
        let Some(name) = name.to_str() else {
            return Err(about(&entry.path(), &io::Error::other("the name is not Unicode")));
        };
        if name.starts_with('.') {
            continue;
        }
        let path = format!("{prefix}{name}");
        if entry.path().is_dir() {
            walk(&entry.path(), &format!("{path}/"), found)?;
        } else {
            found.push(path);
        }
    }
    Ok(())
}

/// Reads a file; unlike the standard call, the error names it.
pub(crate) fn read(path: &Path) -> io::Result<Vec<u8>> {
    fs::read(path).map_err(|error| about(path, &error))
}

/// Reads a text file; unlike the standard call, the error names it.
pub(crate) fn read_text(path: &Path) -> io::Result<String> {
    fs::read_to_string(path).map_err(|error| about(path, &error))
}

/// Writes a file; unlike the standard call, the error names it.
pub(crate) fn write(path: &Path, content: &str) -> io::Result<()> {
    fs::write(path, content).map_err(|error| about(path, &error))
}

fn about(path: &Path, error: &io::Error) -> io::Error {
    io::Error::new(error.kind(), format!("{}: {error}", path.display()))
}
