//! The browser's store. It may be closed, full or absent: a copy, never the truth.

use web_sys::Storage;

/// This page's corner of the store: every key begins with the app and the folder.
#[derive(Clone, Debug)]
pub struct Store {
    prefix: String,
}

impl Default for Store {
    fn default() -> Self {
        let path = web_sys::window().and_then(|w| w.location().pathname().ok()).unwrap_or_default();
        let folder = path.rsplit_once('/').map_or("/", |(folder, _)| folder);
        Self { prefix: format!("pitchline:{folder}/:") }
    }
}

impl Store {
    /// What is kept under a key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<String> {
        storage()?.get_item(&self.key(key)).ok().flatten()
    }

    /// Keeps a text under a key; whether it was kept.
    pub fn set(&self, key: &str, text: &str) -> bool {
        storage().is_some_and(|store| store.set_item(&self.key(key), text).is_ok())
    }

    fn key(&self, key: &str) -> String {
        format!("{}{key}", self.prefix)
    }
}

/// Even asking for it fails where cookies are blocked.
fn storage() -> Option<Storage> {
    web_sys::window()?.local_storage().ok().flatten()
}
