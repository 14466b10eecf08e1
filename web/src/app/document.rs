//! The build that is worked on, and its edits, which can be undone and done again.

use super::edits::{Act, Edits, patch};
use super::link;
use super::rest::Whole;
use super::saved::{understood, write_file};
use super::typed::Place;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Error, Kind, Slot};
use serde_json::Value;
use std::sync::Arc;

/// Id of a part of the reader's own.
const OWN: &str = "own";
/// Longest name that can be typed, in characters.
const LONGEST_NAME: usize = 80;

/// The build that is worked on, and its edits.
#[derive(Clone, Debug)]
pub(super) struct Document {
    pub(super) build: Whole,
    /// The same as a file, of which edits are the differences.
    file: Value,
    edits: Edits,
    /// What was done last, while it may go on.
    last: Act,
    /// The build before the last edit.
    before: Option<Arc<Whole>>,
    /// The build after the next edit that can be done again.
    after: Option<Arc<Whole>>,
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

/// Whether every part is one of the reader's own.
pub fn is_own(draft: &Draft) -> bool {
    Slot::ALL.iter().filter(|slot| is_part(slot)).all(|slot| draft.record(*slot).id == OWN)
}

fn is_part(slot: &Slot) -> bool {
    slot.holds_part() && slot.kind() != Kind::Mode
}

impl From<Whole> for Document {
    fn from(build: Whole) -> Self {
        let file = write_file(&build, "");
        let (edits, last) = (Edits::default(), Act::One);
        Self { build, file, edits, last, before: None, after: None }
    }
}

impl Document {
    /// A build with the edits that were kept with it.
    pub(super) fn kept(build: Whole, edits: Edits, catalog: &Catalog) -> Self {
        let mut document = Self { edits, ..build.into() };
        document.look_back(catalog);
        document.look_ahead(catalog);
        document
    }

    /// The text of the build's file.
    pub(super) fn text(&self) -> String {
        self.file.to_string()
    }

    pub(super) fn edits(&self) -> &Edits {
        &self.edits
    }

    /// The build before the last edit; none where nothing can be undone.
    pub(super) fn before(&self) -> Option<&Arc<Whole>> {
        self.before.as_ref()
    }

    /// The build after the next edit; none where nothing can be done again.
    pub(super) fn after(&self) -> Option<&Arc<Whole>> {
        self.after.as_ref()
    }

    /// Every edit passes here. One that leaves the build as it was is none.
    fn edit(&mut self, act: Act, catalog: &Catalog, change: impl FnOnce(&mut Whole)) {
        let goes_on = self.before.clone().filter(|_| self.last.goes_on(act));
        let before = goes_on.clone().unwrap_or_else(|| Arc::new(self.build.clone()));
        change(&mut self.build);
        let file = write_file(&self.build, "");
        if goes_on.is_some() {
            self.last = act;
        }
        if file == self.file {
            return;
        }
        if goes_on.is_some() {
            self.edits.pop();
            self.file = write_file(&before, "");
        }
        let patch = patch(&self.file, &file);
        self.file = file;
        self.after = None;
        if patch.as_object().is_some_and(|patch| !patch.is_empty()) {
            self.edits.push(&patch);
            (self.before, self.last) = (Some(before), act);
        } else {
            // What was typed is what stood there before.
            self.last = Act::One;
            self.look_back(catalog);
        }
    }

    fn look_back(&mut self, catalog: &Catalog) {
        self.before = self.edits.before(&self.file).and_then(|file| read(file, catalog));
    }

    fn look_ahead(&mut self, catalog: &Catalog) {
        self.after = self.edits.after(&self.file).and_then(|file| read(file, catalog));
    }

    /// Whatever comes is an edit of its own.
    pub(super) fn rest(&mut self) {
        self.last = Act::One;
    }

    /// Brings back the build before the last edit; whether there was one.
    pub(super) fn undo(&mut self, catalog: &Catalog) -> bool {
        let Some(before) = self.before.take() else { return false };
        self.edits.back();
        self.after = Some(self.turn_to(before));
        self.look_back(catalog);
        true
    }

    /// Does again what was undone last; whether there was something.
    pub(super) fn redo(&mut self, catalog: &Catalog) -> bool {
        let Some(after) = self.after.take() else { return false };
        self.edits.forward();
        self.before = Some(self.turn_to(after));
        self.look_ahead(catalog);
        true
    }

    /// Puts another build in place; what was there.
    fn turn_to(&mut self, build: Arc<Whole>) -> Arc<Whole> {
        self.rest();
        self.file = write_file(&build, "");
        Arc::new(std::mem::replace(&mut self.build, Arc::unwrap_or_clone(build)))
    }

    /// Puts another build in place.
    pub(super) fn replace(&mut self, build: Whole, catalog: &Catalog) {
        self.edit(Act::One, catalog, |now| *now = build);
    }

    /// Sets or clears an input, in the file's unit.
    pub(super) fn set(&mut self, at: Place, value: Option<f64>, act: Act, catalog: &Catalog) {
        let (slot, index) = at;
        let Some(field) = slot.kind().fields().get(index) else { return };
        self.edit(act, catalog, |build| {
            build.draft.set_value(slot, index, value);
            build.rest.forget(slot, field.key);
        });
    }

    /// Sets several inputs in one edit, each in the file's unit.
    pub(super) fn set_all(&mut self, values: &[(Slot, &'static str, f64)], catalog: &Catalog) {
        let mut build = self.build.clone();
        for (slot, key, value) in values {
            build.draft.set(*slot, key, *value);
            build.rest.forget(*slot, key);
        }
        self.replace(build, catalog);
    }

    /// Names the build.
    pub(super) fn name(&mut self, name: &str, catalog: &Catalog) {
        self.edit(Act::Name, catalog, |build| {
            build.draft.name = name.chars().take(LONGEST_NAME).collect();
            build.rest.forget_key("name");
        });
    }

    /// Picks parts by their ids, in one edit; whether the catalogue has one of them.
    pub(super) fn pick(&mut self, picks: &[(Slot, &str)], catalog: &Catalog) -> bool {
        let mut build = self.build.clone();
        let mut found = false;
        for (slot, id) in picks {
            found |= picked(&mut build, *slot, id, catalog);
        }
        if found {
            self.replace(build, catalog);
        }
        found
    }

    /// Has parts of the reader's own in some slots, each with the figures of the one before it but its
    /// price. Ride modes are nobody's parts.
    pub(super) fn use_own(
        &mut self,
        slots: &[Slot],
        name: impl Fn(Slot) -> String,
        catalog: &Catalog,
    ) {
        let mut build = self.build.clone();
        for slot in slots.iter().copied().filter(is_part) {
            let mut own = build.draft.record(slot).clone();
            (own.id, own.name) = (OWN.into(), name(slot));
            (own.source, own.notes) = Default::default();
            if let Some(price) = slot.kind().field_index("price") {
                own.set(price, None);
            }
            build.draft.set_record(slot, own);
            build.rest.forget_slot(slot);
        }
        self.replace(build, catalog);
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
        self.replace(build, catalog);
    }

    /// Starts from a kit; rider, place and wishes stay as they are.
    pub(super) fn start_from(&mut self, kit: &str, catalog: &Catalog) {
        let stays = |slot: Slot| !slot.holds_part();
        let mut build = Whole { draft: catalog.draft(kit), rest: self.build.rest.clone() };
        for slot in Slot::ALL.iter().copied().filter(|slot| stays(*slot)) {
            build.draft.set_record(slot, self.build.draft.record(slot).clone());
        }
        build.rest.keep_slots(stays);
        self.replace(build, catalog);
    }

    /// Begins with a kit and what its maker rides it with: nothing is before it.
    pub(super) fn begin_with(&mut self, kit: &str, catalog: &Catalog) {
        *self = Whole::from(catalog.draft(kit)).into();
    }

    /// Begins with the build as it stands: nothing that led to it can be undone.
    pub(super) fn begin(&mut self) {
        *self = self.build.clone().into();
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
        if link::alike(&link::write(&build, catalog), &link::write(&self.build, catalog)) {
            return Linked::Same(faults);
        }
        self.replace(build, catalog);
        Linked::Opened(faults)
    }
}

/// A build from its file; none where nobody can read it.
fn read(file: Value, catalog: &Catalog) -> Option<Arc<Whole>> {
    understood(file, catalog).ok().map(|(build, _)| Arc::new(build))
}

/// Puts the part with that id into a build; whether the catalogue has it.
fn picked(build: &mut Whole, slot: Slot, id: &str, catalog: &Catalog) -> bool {
    let Some(part) = catalog.part(slot.kind(), id) else { return false };
    build.draft.set_record(slot, part.clone());
    build.rest.forget_slot(slot);
    if slot == Slot::Pack {
        let before = build.draft.record(Slot::Cell).clone();
        catalog.follow_pack(&mut build.draft);
        if *build.draft.record(Slot::Cell) != before {
            build.rest.forget_slot(Slot::Cell);
        }
    }
    true
}
