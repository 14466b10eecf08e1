//! Everything that a person can do to the state.

use super::app::{App, Loaded, Message};
use super::typed::{Entry, Place, value};
use super::{link, saved};
use crate::text::{Units, fault};
use leptos::prelude::*;
use pitchline_core::{Draft, Field, Slot};

/// Steps that can be undone.
const UNDO: usize = 100;

fn field((slot, index): Place) -> Option<&'static Field> {
    slot.kind().fields().get(index)
}

impl App {
    /// Takes in what was typed; it becomes part of the build if it is valid.
    pub fn type_in(self, place: Place, text: String) {
        let Some(field) = field(place) else { return };
        let found = value(field, &text, self.style.get_untracked());
        let fault = found.as_ref().err().cloned();
        self.typed.update(|typed| {
            typed.insert(place, Entry { text, fault });
        });
        if let Ok(value) = found {
            self.set(place, value);
        }
    }

    /// A field was left: valid text is written out in full, faulty text stays.
    pub fn leave(self, place: Place) {
        let valid = |typed: &super::Typed| typed.get(&place).is_some_and(|e| e.fault.is_none());
        if self.typed.with_untracked(valid) {
            self.typed.update(|typed| {
                typed.remove(&place);
            });
        }
    }

    /// One step up or down, in the unit that is shown, held within the limits.
    pub fn step(self, place: Place, steps: f64) {
        let Some(field) = field(place) else { return };
        let shown = self.style.get_untracked().units.shown(field.unit);
        let now = self.draft.with_untracked(|draft| draft.record(place.0).value(place.1));
        let size = step_size(field, shown.from_file(field.typical));
        let next = (shown.from_file(now.unwrap_or(field.typical)) / size).round() + steps;
        let value = shown.to_file(next * size).clamp(field.min, field.max);
        self.typed.update(|typed| {
            typed.remove(&place);
        });
        self.set(place, Some(value));
    }

    /// Picks one of a field's choices.
    pub fn choose(self, place: Place, name: &str) {
        let found = field(place).and_then(|field| field.choice(name).ok());
        if let Some(value) = found {
            self.set(place, Some(value));
        }
    }

    fn set(self, (slot, index): Place, value: Option<f64>) {
        if self.draft.with_untracked(|draft| draft.record(slot).value(index)) != value {
            self.draft.update(|draft| draft.set_value(slot, index, value));
        }
    }

    /// Picks a part by its id.
    pub fn pick(self, slot: Slot, id: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let Some(part) = catalog.part(slot.kind(), id) else { return };
        let mut draft = self.draft.get_untracked();
        draft.set_record(slot, part.clone());
        if slot == Slot::Pack {
            catalog.follow_pack(&mut draft);
        }
        self.replace(draft, None);
    }

    /// Puts the catalogue's own values back; where it has none of that id, the kit's part.
    pub fn restore(self, slot: Slot) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let mut draft = self.draft.get_untracked();
        let part = catalog.part(slot.kind(), &draft.record(slot).id);
        let kit = catalog.draft(&draft.kit);
        draft.set_record(slot, part.unwrap_or_else(|| kit.record(slot)).clone());
        self.replace(draft, None);
    }

    /// Picks several parts at once, such as a pairing of the gear map.
    pub fn pick_all(self, picks: &[(Slot, &str)]) {
        for (slot, id) in picks {
            if self.draft.with_untracked(|draft| draft.record(*slot).id != *id) {
                self.pick(*slot, id);
            }
        }
    }

    /// Starts from a kit; rider, place and wishes stay as they are.
    pub fn start_from(self, kit: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let name = catalog.kit(kit).map_or("", |kit| &kit.name).to_string();
        let mut next = catalog.draft(kit);
        self.draft.with_untracked(|draft| {
            for slot in Slot::ALL.iter().copied().filter(|slot| !slot.holds_part()) {
                next.set_record(slot, draft.record(slot).clone());
            }
        });
        self.replace(next, Some(format!("{name} as it is sold, with your rider and place.")));
    }

    /// Puts another build in place; what was there can be brought back.
    pub fn replace(self, draft: Draft, say: Option<String>) {
        let before = self.draft.get_untracked();
        self.past.update(|past| {
            past.push(before);
            if past.len() > UNDO {
                past.remove(0);
            }
        });
        self.typed.update(|typed| {
            typed.retain(|(slot, _), _| !slot.holds_part() && say.is_none());
        });
        self.draft.set(draft);
        if let Some(text) = say {
            self.message.set(Some(Message { text, undo: true }));
        }
    }

    /// Brings back the build before the last pick.
    pub fn undo(self) {
        let before = self.past.try_update(Vec::pop).flatten();
        if let Some(before) = before {
            self.typed.set(super::Typed::new());
            self.draft.set(before);
            self.say("Brought back.");
        }
    }

    /// Says something once.
    pub fn say(self, text: &str) {
        self.message.set(Some(Message { text: text.to_string(), undo: false }));
    }

    /// Metric or imperial. The build is not touched.
    pub fn set_units(self, units: Units) {
        // Text typed in the other unit no longer means what it says.
        self.typed.update(|typed| typed.retain(|_, entry| entry.fault.is_some()));
        self.style.update(|style| style.units = units);
    }

    /// Takes in a catalogue that arrived later, keeping the build by its link.
    pub fn load(self, loaded: Loaded) {
        self.loaded.set(loaded);
    }

    /// Opens a link; what cannot be read is shown.
    pub fn open_link(self, text: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let (draft, faults) = link::read(text, &catalog);
        self.unread.set(faults);
        if self.draft.with_untracked(|now| *now != draft) {
            self.replace(draft, Some("Build opened from the link.".to_string()));
        }
    }

    /// Opens a build file.
    pub fn open_file(self, text: &str) {
        match saved::read_file(text) {
            Ok(draft) => {
                self.unread.set(Vec::new());
                self.replace(draft, Some("Build opened from the file.".to_string()));
            }
            Err(faults) => {
                let first = faults.first().map(|f| fault(f, self.style.get_untracked()));
                self.unread.set(faults);
                self.say(&format!("The file was not opened. {}", first.unwrap_or_default()));
            }
        }
    }

    /// Saves the build under a name; the same name is written over.
    pub fn save(self, name: &str) {
        let name = name.trim();
        if name.is_empty() {
            self.say("Give the build a name first.");
            return;
        }
        self.draft.update(|draft| draft.name = name.chars().take(80).collect());
        let draft = self.draft.get_untracked();
        self.saved.update(|builds| {
            builds.retain(|build| build.name != draft.name);
            builds.insert(0, draft);
            builds.truncate(saved::MOST);
        });
        self.say("Saved on this device.");
    }

    /// Forgets a saved build.
    pub fn forget(self, name: &str) {
        self.saved.update(|builds| builds.retain(|build| build.name != name));
    }
}

/// A step: one for whole numbers, else one significant digit of the typical
/// value, a tenth of it at most.
fn step_size(field: &Field, typical: f64) -> f64 {
    if field.must_be_whole() {
        return 1.0;
    }
    let mut size = 1.0;
    let typical = typical.abs().max(1e-3);
    while size * 10.0 > typical {
        size /= 10.0;
    }
    while size * 100.0 <= typical {
        size *= 10.0;
    }
    // The rider's own figures move by ones, whatever their size.
    if size < 1.0 && typical >= 5.0 { 1.0 } else { size }
}
