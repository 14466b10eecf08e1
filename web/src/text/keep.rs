//! Words of keeping a build: by link, by name on this device, by file.

/// Over all of it.
pub const TITLE: &str = "Keep this build";
/// Copies a link that holds the build.
pub const COPY_LINK: &str = "Copy link";
/// Once it is copied.
pub const COPIED: &str = "Link copied. It holds the whole build.";
/// Over the link, where the browser copies nothing.
pub const BY_HAND: &str = "Copy this link";
/// Of a build that is too long for a link.
pub const LINK_TOO_LONG: &str = "This build is too long for a link. Save it as a file instead.";
/// Saves the build as a file.
pub const SAVE_FILE: &str = "Save as file";
/// Over the field of files.
pub const OPEN_FILE: &str = "Open a build file";
/// Over the build's name.
pub const NAME: &str = "Name";
/// Saves the build under it.
pub const SAVE: &str = "Save on this device";
/// Once it is saved.
pub const SAVED: &str = "Saved on this device.";
/// Where it has no name.
pub const NAME_FIRST: &str = "Give the build a name first.";
/// Where the browser's store is closed or full.
pub const NOT_KEPT: &str = "This browser can't save anything here: its storage is blocked or full. Keep a link or a file instead.";
/// Opens a saved build.
pub const OPEN: &str = "Open";
/// Deletes one.
pub const DELETE: &str = "Delete";

/// The name of [`OPEN`], by the build's.
#[must_use]
pub fn open(name: &str) -> String {
    format!("{OPEN} {name}")
}

/// The name of [`SAVE_FILE`] beside a saved build.
#[must_use]
pub fn save_file(name: &str) -> String {
    format!("{SAVE_FILE}: {name}")
}

/// The name of [`DELETE`].
#[must_use]
pub fn delete(name: &str) -> String {
    format!("{DELETE} {name}")
}

/// Of a saved build of which some is not understood.
#[must_use]
pub fn in_part(name: &str) -> String {
    format!("{name} (only partly readable here)")
}

/// Of one that is no build to this page, by its key.
#[must_use]
pub fn unreadable(key: &str) -> String {
    format!("{key} (can't be read here, kept unchanged)")
}

/// Once a saved build is open.
#[must_use]
pub fn opened(name: &str) -> String {
    format!("{name} opened.")
}

/// Said of a build that replaced one of the same name.
#[must_use]
pub fn replaced(name: &str) -> String {
    format!("Saved on this device. It replaced the earlier \"{name}\".")
}

/// Once it is deleted.
#[must_use]
pub fn deleted(name: &str) -> String {
    format!("{name} deleted.")
}

/// Once that is undone.
#[must_use]
pub fn restored(name: &str) -> String {
    format!("{name} restored.")
}

/// Once a link's build is open.
pub const FROM_LINK: &str = "Build opened from the link.";
/// Once a file's build is.
pub const FROM_FILE: &str = "Build opened from the file.";

/// Of a file that is no build, by the first thing that is wrong with it.
#[must_use]
pub fn not_opened(why: &str) -> String {
    format!("The file couldn't be opened. {why}")
}

/// Over what could not be read.
pub const UNREAD: &str = "Part of the link or file couldn't be used.";
/// In its place where all of it could.
pub const READ: &str = "The whole link was read.";
/// Of a link with a lower version of the model.
pub const OLDER_MODEL: &str = "the link's figures came from an older version of the calculation, so the figures here may differ";
/// Of a link with a higher one.
pub const NEWER_MODEL: &str = "the link's figures came from a newer version of the calculation, so the figures here may differ";
/// What the version of a link or a file has to be.
pub const VERSION: &str = "version 1";
/// What the model's version has to be.
pub const WHOLE_NUMBER: &str = "a whole number";
/// What a key that stands there twice has to be.
pub const ONCE: &str = "this key only once; the first one is used";
/// What a link is counted in.
pub const CHARACTERS: &str = "characters";
/// What a file is counted in.
pub const BYTES: &str = "bytes";

/// What a piece of a link has to be.
#[must_use]
pub fn piece(piece: &str) -> String {
    format!("key=value instead of \"{piece}\"")
}

/// What a key of a link has to be that holds no part.
#[must_use]
pub fn dotted(key: &str) -> String {
    format!("{key}.…=value")
}

/// After a text was copied.
pub const TEXT_COPIED: &str = "Copied.";
/// Where the browser copies nothing.
pub const NOT_COPIED: &str = "Your browser doesn't allow copying here. Print the page instead.";
