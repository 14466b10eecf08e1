//! The build that is worked on, and those to go back to.

use super::link;
use super::rest::Whole;
use super::typed::Place;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Error, Slot};

/// Steps that can be undone.
const UNDO: usize = 100;
/// Id of a part of the reader's own.
pub(super) const OWN: &str = "own";
/// Longest name that can be typed, in characters.
const LONGEST_NAME: usize = 80;

/// The build that is worked on, and those to go back to.
#[derive(Clone, Debug)]
pub(super) struct Document {
    pub(super) build: Whole,
    pub(super) past: Vec<Whole>,
}

/// What came of a link.
pub(super) enum Linked {
    /// It sets nothing: it leads to a place on the page, or nowhere.
    Nothing,
    /// It says what stands there already.
    Same(Vec<Error>),
    /// It was opened.
    Opened(Vec<Error>),
    /// It is too long to be read.
    Refused(Vec<Error>),
}

impl From<Whole> for Document {
    fn from(build: Whole) -> Self {
        Self { build, past: Vec::new() }
    }
}

impl Document {
    /// Puts another build in place; what was there can be brought back.
    pub(super) fn replace(&mut self, build: Whole) {
        self.past.push(std::mem::replace(&mut self.build, build));
        if self.past.len() > UNDO {
            self.past.remove(0);
        }
    }

    /// Brings back the build before; whether there was one.
    pub(super) fn undo(&mut self) -> bool {
        let before = self.past.pop();
        let found = before.is_some();
        if let Some(before) = before {
            self.build = before;
        }
        found
    }

    /// Sets or clears an input, in the file's unit.
    pub(super) fn set(&mut self, (slot, index): Place, value: Option<f64>) {
        if let Some(field) = slot.kind().fields().get(index) {
            self.build.draft.set_value(slot, index, value);
            self.build.rest.forget(slot, field.key);
        }
    }

    /// Names the build.
    pub(super) fn name(&mut self, name: &str) {
        self.build.draft.name = name.chars().take(LONGEST_NAME).collect();
        self.build.rest.forget_key("name");
    }

    /// Picks a part by its id; whether the catalogue has it.
    pub(super) fn pick(&mut self, slot: Slot, id: &str, catalog: &Catalog) -> bool {
        let Some(part) = catalog.part(slot.kind(), id) else { return false };
        let mut build = self.build.clone();
        build.draft.set_record(slot, part.clone());
        build.rest.forget_slot(slot);
        if slot == Slot::Pack {
            let before = build.draft.record(Slot::Cell).clone();
            catalog.follow_pack(&mut build.draft);
            if *build.draft.record(Slot::Cell) != before {
                build.rest.forget_slot(Slot::Cell);
            }
        }
        self.replace(build);
        true
    }

    /// Has a part of the reader's own in a slot, with the figures of the one before it but its price.
    pub(super) fn use_own(&mut self, slot: Slot, name: String) {
        let mut build = self.build.clone();
        let mut own = build.draft.record(slot).clone();
        (own.id, own.name) = (OWN.into(), name);
        (own.source, own.notes) = Default::default();
        if let Some(price) = slot.kind().field_index("price") {
            own.set(price, None);
        }
        build.draft.set_record(slot, own);
        build.rest.forget_slot(slot);
        self.replace(build);
    }

    /// Puts the catalogue's own values back; where it has none of that id, the kit's part.
    pub(super) fn restore(&mut self, slot: Slot, catalog: &Catalog) {
        let mut build = self.build.clone();
        let draft = &mut build.draft;
        let part = catalog.part(slot.kind(), &draft.record(slot).id);
        let kit = catalog.draft(&draft.kit);
        let missing = kit.unfilled().iter().find(|unfilled| unfilled.slot == slot);
        match (part, missing) {
            (None, Some(unfilled)) => draft.unfill(unfilled.clone()),
            _ => draft.set_record(slot, part.unwrap_or_else(|| kit.record(slot)).clone()),
        }
        build.rest.forget_slot(slot);
        self.replace(build);
    }

    /// Starts from a kit; rider, place and wishes stay as they are.
    pub(super) fn start_from(&mut self, kit: &str, catalog: &Catalog) {
        let stays = |slot: Slot| !slot.holds_part();
        let mut build = Whole { draft: catalog.draft(kit), rest: self.build.rest.clone() };
        for slot in Slot::ALL.iter().copied().filter(|slot| stays(*slot)) {
            build.draft.set_record(slot, self.build.draft.record(slot).clone());
        }
        build.rest.keep_slots(stays);
        self.replace(build);
    }

    /// Opens a link. A fragment that sets nothing is no build.
    pub(super) fn open_link(&mut self, text: &str, catalog: &Catalog) -> Linked {
        if !text.contains('=') {
            return Linked::Nothing;
        }
        let (build, faults) = link::read(text, catalog);
        if text.len() > link::LONGEST {
            // Nothing of it was read, so the build stays as it is.
            return Linked::Refused(faults);
        }
        let said = |build: &Whole| {
            let link = link::write(build, catalog);
            let mut pieces: Vec<String> = link.split('&').map(String::from).collect();
            pieces.sort();
            pieces
        };
        if said(&build) == said(&self.build) {
            return Linked::Same(faults);
        }
        self.replace(build);
        Linked::Opened(faults)
    }
}
