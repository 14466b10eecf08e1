//! Everything that a person can do to the state.

use super::app::{App, Message, Model};
use super::typed::{Entry, Place, Typed, value};
use super::{link, saved};
use crate::text::{Units, fault};
use pitchline_core::{Draft, Field, Slot};

/// Steps that can be undone.
const UNDO: usize = 100;

fn field((slot, index): Place) -> Option<&'static Field> {
    slot.kind().fields().get(index)
}

impl Model {
    /// Puts another build in place; what was there can be brought back.
    fn replace(&mut self, draft: Draft) {
        let before = std::mem::replace(&mut self.draft, draft);
        self.lost = None;
        self.past.push(before);
        if self.past.len() > UNDO {
            self.past.remove(0);
        }
    }

    /// Opens another build in place of this one.
    fn open(&mut self, draft: Draft, text: String) {
        self.replace(draft);
        self.typed = Typed::default();
        self.message = Some(Message { text, undo: true });
    }

    fn say(&mut self, text: &str) {
        self.message = Some(Message { text: text.into(), undo: false });
    }

    fn pick(&mut self, slot: Slot, id: &str) {
        let catalog = self.loaded.catalog.clone();
        let Some(part) = catalog.part(slot.kind(), id) else { return };
        let mut draft = self.draft.clone();
        draft.set_record(slot, part.clone());
        if slot == Slot::Pack {
            catalog.follow_pack(&mut draft);
        }
        self.typed.keep(|(at, _), _| at != slot && (slot != Slot::Pack || at != Slot::Cell));
        self.replace(draft);
    }
}

impl App {
    /// Takes in what was typed; it becomes part of the build if it is valid.
    pub fn type_in(self, place: Place, text: String) {
        let Some(field) = field(place) else { return };
        self.change(|model| {
            let found = value(place.0.kind(), field, &text, model.style);
            let fault = found.as_ref().err().cloned();
            let now = || model.record(place.0).value(place.1);
            let before = model.typed.get(place).map_or_else(now, |entry| entry.before);
            // Half a number is not meant: 99 on the way to 999.
            model.draft.set_value(place.0, place.1, found.unwrap_or(before));
            model.typed.put(place, Entry { text, fault, before });
        });
    }

    /// A field was left: valid text is written out in full, faulty text stays.
    pub fn leave(self, place: Place) {
        let valid = |model: &Model| model.typed.get(place).is_some_and(|e| e.fault.is_none());
        if self.peek(valid) {
            self.change(|model| model.typed.clear(place));
        }
    }

    /// One step up or down, in the unit that is shown, held within the limits.
    pub fn step(self, place: Place, steps: f64) {
        let Some(field) = field(place) else { return };
        self.change(|model| {
            let shown = model.style.units.shown(field.unit);
            let usual = || model.draft.assumed(place.0, place.1).unwrap_or(field.typical);
            let now = model.record(place.0).value(place.1).unwrap_or_else(usual);
            let size = step_size(field, shown.from_file(field.typical));
            let next = ((shown.from_file(now) / size).round() + steps) * size;
            // Not `clamp`, whose panic would bring the float formatter into the page.
            let value = shown.to_file(next).max(field.min);
            let value = value.min(field.max);
            model.typed.clear(place);
            model.draft.set_value(place.0, place.1, Some(value));
        });
    }

    /// Picks one of a field's choices.
    pub fn choose(self, place: Place, name: &str) {
        if let Some(value) = field(place).and_then(|field| field.choice(name).ok()) {
            self.change(|model| model.draft.set_value(place.0, place.1, Some(value)));
        }
    }

    /// Picks a part by its id.
    pub fn pick(self, slot: Slot, id: &str) {
        self.change(|model| model.pick(slot, id));
    }

    /// Picks several parts at once, such as a pairing of the gear map.
    pub fn pick_all(self, picks: &[(Slot, String)]) {
        self.change(|model| {
            for (slot, id) in picks {
                if model.record(*slot).id != *id {
                    model.pick(*slot, id);
                }
            }
        });
    }

    /// Puts the catalogue's own values back; where it has none of that id, the kit's part.
    pub fn restore(self, slot: Slot) {
        self.change(|model| {
            let catalog = model.loaded.catalog.clone();
            let mut draft = model.draft.clone();
            let part = catalog.part(slot.kind(), &draft.record(slot).id);
            let kit = catalog.draft(&draft.kit);
            let missing = kit.unfilled().iter().find(|unfilled| unfilled.slot == slot);
            match (part, missing) {
                (None, Some(unfilled)) => draft.unfill(unfilled.clone()),
                _ => draft.set_record(slot, part.unwrap_or_else(|| kit.record(slot)).clone()),
            }
            model.typed.keep(|(at, _), _| at != slot);
            model.replace(draft);
        });
    }

    /// Starts from a kit; rider, place and wishes stay as they are.
    pub fn start_from(self, kit: &str) {
        self.change(|model| {
            let mut draft = model.loaded.catalog.draft(kit);
            for slot in Slot::ALL.iter().copied().filter(|slot| !slot.holds_part()) {
                draft.set_record(slot, model.record(slot).clone());
            }
            model.typed.keep(|(at, _), _| !at.holds_part());
            let name = model.loaded.catalog.kit(kit).map_or("", |kit| &kit.name).to_string();
            let text = format!("{name} as it is sold, with your rider and place.");
            model.replace(draft);
            model.message = Some(Message { text, undo: true });
        });
    }

    /// Brings back the build before the last pick, or the one forgotten since.
    pub fn undo(self) {
        self.change(|model| {
            if let Some(build) = model.lost.take() {
                model.say(&format!("{} is kept again.", build.name));
                model.saved.insert(0, build);
            } else if let Some(before) = model.past.pop() {
                model.typed = Typed::default();
                model.draft = before;
                model.say("The build before is back.");
            } else {
                model.say("There is nothing to bring back.");
            }
        });
    }

    /// Says something once.
    pub fn say(self, text: &str) {
        self.change(|model| model.say(text));
    }

    /// Metric or imperial. The build is not touched.
    pub fn set_units(self, units: Units) {
        self.change(|model| {
            // Valid text in the other unit no longer means what it says.
            model.typed.keep(|_, entry| entry.fault.is_some());
            model.style.units = units;
        });
    }

    /// Opens a link; what cannot be read is shown. A fragment that sets nothing
    /// is no build: it leads to a place on the page, or nowhere.
    pub fn open_link(self, text: &str) {
        if !text.contains('=') {
            return;
        }
        let (draft, faults) = link::read(text, &self.peek(|model| model.loaded.catalog.clone()));
        if text.len() > link::LONGEST {
            // Nothing of it was read, so the build stays as it is.
            self.change(|model| model.unread = faults);
            return;
        }
        let same = self.peek(|model| model.draft == draft && model.unread.is_empty());
        if !same || !faults.is_empty() {
            self.change(|model| {
                model.unread = faults;
                if model.draft != draft {
                    model.open(draft, "Build opened from the link.".into());
                }
            });
        }
    }

    /// Opens a saved build.
    pub fn open(self, draft: Draft) {
        let text = format!("{} opened.", draft.name);
        self.change(|model| model.open(draft, text));
    }

    /// Opens a build file.
    pub fn open_file(self, text: &str) {
        let read = saved::read_file(text);
        self.change(|model| match read {
            Ok((draft, ignored)) => {
                model.unread = ignored;
                model.open(draft, "Build opened from the file.".into());
            }
            Err(faults) => {
                let first = faults.first().map(|f| fault(f, model.style)).unwrap_or_default();
                model.say(&format!("The file was not opened. {first}"));
                model.unread = faults;
            }
        });
    }

    /// Names the build.
    pub fn name(self, name: &str) {
        self.change(|model| model.draft.name = name.chars().take(80).collect());
    }

    /// Saves the build under its name; the same name is written over.
    pub fn save(self) {
        self.change(|model| {
            let mut draft = model.draft.clone();
            draft.name = draft.name.trim().into();
            if draft.name.is_empty() {
                model.say("Give the build a name first.");
                return;
            }
            if let Some(missing) = model.missing().first() {
                model.say(missing);
                return;
            }
            model.saved.retain(|build| build.name != draft.name);
            model.saved.insert(0, draft);
            model.saved.truncate(saved::MOST);
            model.say("Saved on this device.");
        });
    }

    /// Forgets a saved build.
    pub fn forget(self, name: &str) {
        self.change(|model| {
            if let Some(place) = model.saved.iter().position(|build| build.name == name) {
                model.lost = Some(model.saved.remove(place));
                model.message = Some(Message { text: format!("{name} forgotten."), undo: true });
            }
        });
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
