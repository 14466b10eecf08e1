//! What a tab works on belongs to the tab: its place in the history holds an id, and the tab's own
//! store the build under that id. A copied tab has a copy of that store. The store that all tabs
//! share holds the last build of any of them, for new tabs alone.

use super::edits::Edits;
use super::rest::Whole;
use super::saved;
use super::shelf::{self, Keep};
use super::trail::Trail;
use pitchline_core::Error;
use pitchline_core::catalog::Catalog;

/// Key of the last build of any tab.
const COMMON: &str = "current";

/// How the page was come to.
#[derive(Clone, Debug, Default)]
pub struct Arrival {
    /// The id that this place in the history holds, or that a frame has on its page.
    pub id: Option<String>,
    /// Whether the tab was at this place before.
    pub ours: bool,
    /// The build of the address, as the text of a link.
    pub address: String,
    /// Whether the address asks for the demo.
    pub demo: bool,
    /// Milliseconds since 1970.
    pub now: u64,
    /// Some letters by chance.
    pub letters: String,
}

/// What the page begins with.
#[derive(Clone, Debug)]
pub struct Start {
    /// The tab.
    pub tab: Tab,
    /// Its build.
    pub build: Whole,
    /// The edits that led to it.
    pub edits: Edits,
    /// What of that build is not understood.
    pub told: Vec<Error>,
    /// A link that stands in the address and is new to the tab.
    pub link: Option<String>,
    /// Whether what is kept is left alone until something is changed.
    pub fresh: bool,
    /// Whether nothing says which build it is: nobody has been here, and no link led here.
    pub first: bool,
}

/// Key of a tab's build.
fn key(id: &str) -> String {
    format!("tab:{id}")
}

/// A tab's own corner of its store.
#[derive(Clone, Debug)]
pub struct Tab {
    id: String,
    /// Whether what was handed over last is in the tab's own store; none where nothing was yet.
    kept: Option<bool>,
    /// What this tab put into the common place last.
    common: Option<String>,
    trail: Trail,
}

/// Finds what this tab worked on. At a place where it was before, its store says more than the address,
/// which may be many edits behind. Any other link is to be opened over it; so is every one where the
/// store had no room for the last build.
pub fn begin(
    local: &impl Keep,
    session: &impl Keep,
    arrival: &Arrival,
    catalog: &Catalog,
) -> Start {
    let Arrival { address, demo, now, letters, .. } = arrival;
    let of =
        |id: &str| Tab { id: id.into(), kept: None, common: None, trail: Trail::new(&key(id)) };
    let before = arrival.id.as_deref().map(of);
    let text = before.as_ref().and_then(|tab| session.get(&tab.key()));
    let own = text.as_ref().and_then(|text| saved::read_kept(text, catalog).ok());
    let mut tab = match (before, &text, &own) {
        // What cannot be read is not written over.
        (Some(tab), Some(_), Some(_)) | (Some(tab), None, _) => tab,
        _ => of(letters),
    };
    let ours = arrival.ours && own.is_some() && session.get(&tab.newest()).is_some();
    let fresh = *demo && own.is_none();
    let common = || {
        let text = local.get(COMMON).filter(|_| !fresh)?;
        let read = saved::read_kept(&text, catalog).ok();
        if read.is_none() {
            shelf::put_aside(local, &text, *now, letters);
        }
        read
    };
    let first = || {
        let kit = catalog.kits.first().map_or("", |kit| &kit.id);
        (catalog.draft(kit).into(), Vec::new())
    };
    let mut edits = Edits::default();
    if own.is_some() {
        (tab.trail, edits) = Trail::read(&tab.key(), session);
    }
    let known = own.or_else(common);
    let unknown = known.is_none() && !fresh;
    let (build, told) = known.unwrap_or_else(first);
    let link = (!ours && !address.is_empty()).then(|| address.clone());
    let first = unknown && link.is_none();
    Start { tab, build, edits, told, link, fresh, first }
}

impl Tab {
    /// What this place in the history is to hold.
    #[must_use]
    pub fn id(&self) -> &str {
        &self.id
    }

    /// Whether nothing that was handed over is missing in the tab's own store.
    #[must_use]
    pub fn is_kept(&self) -> bool {
        self.kept != Some(false)
    }

    fn key(&self) -> String {
        key(&self.id)
    }

    /// Stands while the build that is kept is the last one.
    fn newest(&self) -> String {
        self.key() + ":newest"
    }

    /// Keeps the build as it is now, as the text of a file, and the edits that led to it; whether the
    /// build is what comes back. Of more than there is room for the oldest edits go.
    pub fn keep(&mut self, session: &impl Keep, text: &str, edits: &Edits) -> bool {
        let (key, newest) = (self.key(), self.newest());
        let write = || session.set(&key, text) && session.set(&newest, "yes");
        let mut kept = write();
        while !kept && self.trail.drop_oldest(session) {
            kept = write();
        }
        if !kept {
            session.remove(&newest);
        }
        self.trail.keep(session, edits, kept);
        self.kept = Some(kept);
        kept
    }

    /// Makes it the one that new tabs begin with; whether that was kept.
    pub fn share(&mut self, local: &impl Keep, text: &str, now: u64, letters: &str) -> bool {
        let there = local.get(COMMON).filter(|there| self.common.as_ref() != Some(there));
        let strange = there.filter(|there| saved::look(there).is_none());
        // What another version wrote there is not ours to throw away.
        let free = strange.is_none_or(|there| shelf::put_aside(local, &there, now, letters));
        let kept = free && local.set(COMMON, text);
        if kept {
            self.common = Some(text.into());
        }
        kept
    }
}
