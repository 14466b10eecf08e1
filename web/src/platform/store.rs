//! The browser's store. It may be closed, full or absent: a copy, never the truth.

use web_sys::Storage;

/// This page's corner of a store: every key begins with the app and the folder.
#[derive(Clone, Debug)]
pub struct Store {
    area: Area,
    prefix: String,
}

#[derive(Clone, Copy, Debug)]
enum Area {
    Local,
    Session,
}

impl Store {
    /// The store that all tabs share.
    #[must_use]
    pub fn local() -> Self {
        Self::of(Area::Local)
    }

    /// The tab's own.
    #[must_use]
    pub fn session() -> Self {
        Self::of(Area::Session)
    }

    fn of(area: Area) -> Self {
        let path = web_sys::window().and_then(|w| w.location().pathname().ok()).unwrap_or_default();
        let folder = path.rsplit_once('/').map_or("/", |(folder, _)| folder);
        Self { area, prefix: format!("pitchline:{folder}/:") }
    }

    /// The keys of this corner.
    #[must_use]
    pub fn keys(&self) -> Vec<String> {
        let Some(store) = self.storage() else { return Vec::new() };
        let keys = (0..store.length().unwrap_or(0)).filter_map(|n| store.key(n).ok().flatten());
        keys.filter_map(|key| key.strip_prefix(&self.prefix).map(String::from)).collect()
    }

    /// What is kept under a key.
    #[must_use]
    pub fn get(&self, key: &str) -> Option<String> {
        self.storage()?.get_item(&self.key(key)).ok().flatten()
    }

    /// Keeps a text under a key; whether it was kept.
    pub fn set(&self, key: &str, text: &str) -> bool {
        self.storage().is_some_and(|store| store.set_item(&self.key(key), text).is_ok())
    }

    /// Takes a key away.
    pub fn remove(&self, key: &str) {
        if let Some(store) = self.storage() {
            let _ = store.remove_item(&self.key(key));
        }
    }

    fn key(&self, key: &str) -> String {
        format!("{}{key}", self.prefix)
    }

    /// Even asking for it fails where cookies are blocked.
    fn storage(&self) -> Option<Storage> {
        let window = web_sys::window()?;
        match self.area {
            Area::Local => window.local_storage(),
            Area::Session => window.session_storage(),
        }
        .ok()
        .flatten()
    }
}
