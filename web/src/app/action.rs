//! Everything that a person can do to the state.

use super::store::{App, Document, MapView, Message};
use super::typed::{Entry, Place, Typed, value};
use super::{link, saved};
use crate::text::{Units, fault};
use leptos::prelude::*;
use pitchline_core::{Draft, Field, Slot};

/// Steps that can be undone.
const UNDO: usize = 100;

fn field((slot, index): Place) -> Option<&'static Field> {
    slot.kind().fields().get(index)
}

impl Document {
    /// Puts another build in place; what was there can be brought back.
    fn replace(&mut self, draft: Draft) {
        self.past.push(std::mem::replace(&mut self.draft, draft));
        if self.past.len() > UNDO {
            self.past.remove(0);
        }
    }
}

impl App {
    fn replace(self, draft: Draft) {
        self.lost.set(None);
        self.document.update(|document| document.replace(draft));
    }

    fn edit(self, edit: impl FnOnce(&mut Draft)) {
        self.document.update(|document| edit(&mut document.draft));
    }

    /// Opens another build in place of this one.
    fn open_as(self, draft: Draft, text: String) {
        self.replace(draft);
        self.typed.set(Typed::default());
        self.message.set(Some(Message { text, undo: true }));
    }

    /// Takes in what was typed; it becomes part of the build if it is valid.
    pub fn type_in(self, place: Place, text: String) {
        let Some(field) = field(place) else { return };
        let found = value(place.0.kind(), field, &text, self.style.get_untracked());
        let fault = found.as_ref().err().cloned();
        let now = || self.peek(|draft| draft.record(place.0).value(place.1));
        let before = self.typed.with_untracked(|typed| typed.get(place).map(|entry| entry.before));
        let before = before.unwrap_or_else(now);
        // Half a number is not meant: 99 on the way to 999.
        self.edit(|draft| draft.set_value(place.0, place.1, found.unwrap_or(before)));
        self.typed.update(|typed| typed.put(place, Entry { text, fault, before }));
    }

    /// A field was left: valid text is written out in full, faulty text stays.
    pub fn leave(self, place: Place) {
        let valid = |typed: &Typed| typed.get(place).is_some_and(|entry| entry.fault.is_none());
        if self.typed.with_untracked(valid) {
            self.typed.update(|typed| typed.clear(place));
        }
    }

    /// One step up or down, in the unit that is shown, held within the limits.
    pub fn step(self, place: Place, steps: f64) {
        let Some(field) = field(place) else { return };
        let shown = self.style.get_untracked().units.shown(field.unit);
        self.edit(|draft| {
            let usual = || draft.assumed(place.0, place.1).unwrap_or(field.typical);
            let now = draft.record(place.0).value(place.1).unwrap_or_else(usual);
            let size = step_size(field, shown.from_file(field.typical));
            let next = ((shown.from_file(now) / size).round() + steps) * size;
            let value = shown.to_file(next).max(field.min).min(field.max);
            draft.set_value(place.0, place.1, Some(value));
        });
        self.typed.update(|typed| typed.clear(place));
    }

    /// Picks one of a field's choices.
    pub fn choose(self, place: Place, name: &str) {
        if let Some(value) = field(place).and_then(|field| field.choice(name).ok()) {
            self.edit(|draft| draft.set_value(place.0, place.1, Some(value)));
        }
    }

    /// Picks a part by its id.
    pub fn pick(self, slot: Slot, id: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let Some(part) = catalog.part(slot.kind(), id) else { return };
        let mut draft = self.peek(Draft::clone);
        draft.set_record(slot, part.clone());
        if slot == Slot::Pack {
            catalog.follow_pack(&mut draft);
        }
        let kept = |at: Slot| at != slot && (slot != Slot::Pack || at != Slot::Cell);
        self.typed.update(|typed| typed.keep(|(at, _), _| kept(at)));
        self.replace(draft);
    }

    /// Picks several parts at once, such as a pairing of the gear map.
    pub fn pick_all(self, picks: &[(Slot, String)]) {
        for (slot, id) in picks {
            if self.peek(|draft| draft.record(*slot).id != *id) {
                self.pick(*slot, id);
            }
        }
    }

    /// Puts the catalogue's own values back; where it has none of that id, the kit's part.
    pub fn restore(self, slot: Slot) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let mut draft = self.peek(Draft::clone);
        let part = catalog.part(slot.kind(), &draft.record(slot).id);
        let kit = catalog.draft(&draft.kit);
        let missing = kit.unfilled().iter().find(|unfilled| unfilled.slot == slot);
        match (part, missing) {
            (None, Some(unfilled)) => draft.unfill(unfilled.clone()),
            _ => draft.set_record(slot, part.unwrap_or_else(|| kit.record(slot)).clone()),
        }
        self.typed.update(|typed| typed.keep(|(at, _), _| at != slot));
        self.replace(draft);
    }

    /// Starts from a kit; rider, place and wishes stay as they are.
    pub fn start_from(self, kit: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let mut draft = catalog.draft(kit);
        self.peek(|now| {
            for slot in Slot::ALL.iter().copied().filter(|slot| !slot.holds_part()) {
                draft.set_record(slot, now.record(slot).clone());
            }
        });
        self.typed.update(|typed| typed.keep(|(at, _), _| !at.holds_part()));
        let name = catalog.kit(kit).map_or("", |kit| &kit.name);
        let text = format!("{name} as it is sold, with your rider and place.");
        self.replace(draft);
        self.message.set(Some(Message { text, undo: true }));
    }

    /// Brings back the build before the last pick, or the one forgotten since.
    pub fn undo(self) {
        if let Some(build) = self.lost.try_update(Option::take).flatten() {
            self.say(&format!("{} is kept again.", build.name));
            self.saved.update(|saved| saved.insert(0, build));
        } else if let Some(before) =
            self.document.try_update(|document| document.past.pop()).flatten()
        {
            self.typed.set(Typed::default());
            self.edit(|draft| *draft = before);
            self.say("The build before is back.");
        } else {
            self.say("There is nothing to bring back.");
        }
    }

    /// Says something once.
    pub fn say(self, text: &str) {
        self.message.set(Some(Message { text: text.into(), undo: false }));
    }

    /// Takes the message away.
    pub fn hush(self) {
        self.message.set(None);
    }

    /// Metric or imperial. The build is not touched.
    pub fn set_units(self, units: Units) {
        // Valid text in the other unit no longer means what it says.
        self.typed.update(|typed| typed.keep(|_, entry| entry.fault.is_some()));
        self.style.update(|style| style.units = units);
    }

    /// Opens a link; what cannot be read is shown. A fragment that sets nothing
    /// is no build: it leads to a place on the page, or nowhere.
    pub fn open_link(self, text: &str) {
        if !text.contains('=') {
            return;
        }
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let (draft, faults) = link::read(text, &catalog);
        if text.len() > link::LONGEST {
            // Nothing of it was read, so the build stays as it is.
            self.unread.set(faults);
            return;
        }
        let other = self.peek(|now| *now != draft);
        if other || !faults.is_empty() || !self.unread.with_untracked(Vec::is_empty) {
            self.unread.set(faults);
            if other {
                self.open_as(draft, "Build opened from the link.".into());
            }
        }
    }

    fn open(self, draft: Draft) {
        let text = format!("{} opened.", draft.name);
        self.open_as(draft, text);
    }

    /// Opens a saved build by its name.
    pub fn open_saved(self, name: &str) {
        let found = self
            .saved
            .with_untracked(|saved| saved.iter().find(|build| build.name == name).cloned());
        if let Some(draft) = found {
            self.open(draft);
        }
    }

    /// Opens a build file.
    pub fn open_file(self, text: &str) {
        match saved::read_file(text) {
            Ok((draft, ignored)) => {
                self.unread.set(ignored);
                self.open_as(draft, "Build opened from the file.".into());
            }
            Err(faults) => {
                let style = self.style.get_untracked();
                let first = faults.first().map(|f| fault(f, style)).unwrap_or_default();
                self.say(&format!("The file was not opened. {first}"));
                self.unread.set(faults);
            }
        }
    }

    /// What could not be read has been seen.
    pub fn dismiss_unread(self) {
        self.unread.update(Vec::clear);
    }

    /// Names the build.
    pub fn name(self, name: &str) {
        self.edit(|draft| draft.name = name.chars().take(80).collect());
    }

    /// Saves the build under its name; the same name is written over.
    pub fn save(self) {
        let mut draft = self.peek(Draft::clone);
        draft.name = draft.name.trim().into();
        if draft.name.is_empty() {
            self.say("Give the build a name first.");
            return;
        }
        if let Some(missing) = untrack(|| self.missing()).first() {
            self.say(missing);
            return;
        }
        self.saved.update(|saved| {
            saved.retain(|build| build.name != draft.name);
            saved.insert(0, draft);
            saved.truncate(saved::MOST);
        });
        self.say("Saved on this device.");
    }

    /// Forgets a saved build.
    pub fn forget(self, name: &str) {
        let taken = self.saved.try_update(|saved| {
            let place = saved.iter().position(|build| build.name == name)?;
            Some(saved.remove(place))
        });
        if let Some(build) = taken.flatten() {
            self.lost.set(Some(build));
            self.message.set(Some(Message { text: format!("{name} forgotten."), undo: true }));
        }
    }

    /// Puts the named builds of the last visit in place.
    pub fn restore_saved(self, saved: Vec<Draft>) {
        self.saved.set(saved);
    }

    /// Chooses what the gear map shows.
    pub fn show_map(self, view: MapView) {
        self.map_view.set(view);
    }

    /// Shows the link to copy by hand.
    pub fn show_link(self) {
        self.by_hand.set(true);
    }

    /// How the offline copy stands, and whether a newer version waits.
    pub fn tell_offline(self, state: String, update: bool) {
        self.offline.set(state);
        self.update.set(update);
    }

    /// Puts off the newer version.
    pub fn put_off_update(self) {
        self.update.set(false);
    }
}

/// A step: one for whole numbers and figures up to a thousand, ten beyond, and
/// about a tenth of small ones.
fn step_size(field: &Field, typical: f64) -> f64 {
    let typical = typical.abs().max(1e-3);
    if field.must_be_whole() {
        return 1.0;
    }
    let mut size = 1.0;
    while size * 1000.0 <= typical {
        size *= 10.0;
    }
    while size > typical / 5.0 {
        size /= 10.0;
    }
    size
}
