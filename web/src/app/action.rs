//! Everything that a person can do to the state.

use super::document::{Document, Linked};
use super::rest::Whole;
use super::shelf::Entry;
use super::store::{App, Lost, MapView, Message};
use super::typed::{self, Place, Typed, value};
use super::{saved, shelf};
use crate::platform::{self, Store};
use crate::text::{Units, fault, page};
use leptos::prelude::*;
use pitchline_core::{Field, Slot};

fn field((slot, index): Place) -> Option<&'static Field> {
    slot.kind().fields().get(index)
}

impl App {
    /// Every change of the build passes here. It is not kept until it has been answered.
    fn change<T>(self, change: impl FnOnce(&mut Document) -> T) -> Option<T> {
        if self.keeper.with_value(Option::is_some) {
            platform::tell_kept(false);
        }
        self.document.try_update(change)
    }

    /// Another build or part is in place of the one before; what was forgotten is gone.
    fn replaced(self) {
        self.lost.set(None);
    }

    /// Opens another build in place of this one.
    fn open_as(self, build: Whole, text: String) {
        self.change(|document| document.replace(build));
        self.opened(text);
    }

    fn opened(self, text: String) {
        self.replaced();
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
        self.change(|document| document.set(place, found.unwrap_or(before)));
        self.typed.update(|typed| typed.put(place, typed::Entry { text, fault, before }));
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
        self.change(|document| {
            let draft = &document.build.draft;
            let usual = || draft.assumed(place.0, place.1).unwrap_or(field.typical);
            let now = draft.record(place.0).value(place.1).unwrap_or_else(usual);
            let size = step_size(field, shown.from_file(field.typical));
            let next = ((shown.from_file(now) / size).round() + steps) * size;
            let value = shown.to_file(next).max(field.min).min(field.max);
            document.set(place, Some(value));
        });
        self.typed.update(|typed| typed.clear(place));
    }

    /// Picks one of a field's choices.
    pub fn choose(self, place: Place, name: &str) {
        if let Some(value) = field(place).and_then(|field| field.choice(name).ok()) {
            self.change(|document| document.set(place, Some(value)));
        }
    }

    /// Picks a part by its id.
    pub fn pick(self, slot: Slot, id: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        if self.change(|document| document.pick(slot, id, &catalog)) != Some(true) {
            return;
        }
        let kept = |at: Slot| at != slot && (slot != Slot::Pack || at != Slot::Cell);
        self.typed.update(|typed| typed.keep(|(at, _), _| kept(at)));
        self.replaced();
    }

    /// Has a part of the reader's own in a slot, beginning with the figures of the one before it.
    pub fn use_own(self, slot: Slot, name: String) {
        self.change(|document| document.use_own(slot, name));
        self.typed.update(|typed| typed.keep(|(at, _), _| at != slot));
        self.replaced();
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
        self.typed.update(|typed| typed.keep(|(at, _), _| at != slot));
        self.change(|document| document.restore(slot, &catalog));
        self.replaced();
    }

    /// Starts from a kit; rider, place and wishes stay as they are.
    pub fn start_from(self, kit: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        self.typed.update(|typed| typed.keep(|(at, _), _| !at.holds_part()));
        let name = catalog.kit(kit).map_or("", |kit| &kit.name);
        let text = format!("{name} as it is sold, with your rider and place.");
        self.change(|document| document.start_from(kit, &catalog));
        self.replaced();
        self.message.set(Some(Message { text, undo: true }));
    }

    /// Brings back the build before the last pick, or the one forgotten since.
    pub fn undo(self) {
        if let Some(lost) = self.lost.try_update(Option::take).flatten() {
            if self.with_shelf(|store| store.set(&lost.entry.key, &lost.text)) == Some(true) {
                self.say(&format!("{} is kept again.", lost.entry.name));
            } else {
                self.lost.set(Some(lost));
                self.say(page::NOT_KEPT);
            }
            self.look_at_shelf();
        } else if self.change(Document::undo) == Some(true) {
            self.typed.set(Typed::default());
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

    /// Opens a link; what cannot be read is shown. Whether it brought another build.
    pub fn open_link(self, text: &str) -> bool {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        match self.change(|document| document.open_link(text, &catalog)) {
            Some(Linked::Opened(faults)) => {
                self.unread.set(faults);
                self.opened("Build opened from the link.".into());
                return true;
            }
            Some(Linked::Same(faults)) => {
                if !faults.is_empty() || !self.unread.with_untracked(Vec::is_empty) {
                    self.unread.set(faults);
                }
            }
            Some(Linked::Refused(faults)) => self.unread.set(faults),
            Some(Linked::Nothing) | None => {}
        }
        false
    }

    fn with_shelf<T>(self, act: impl FnOnce(&Store) -> T) -> Option<T> {
        self.keeper.with_value(|keeper| keeper.as_ref().map(|keeper| act(&keeper.local)))
    }

    /// The text of a saved build, as it is kept.
    #[must_use]
    pub fn saved_text(self, entry: &Entry) -> Option<String> {
        self.with_shelf(|store| store.get(&entry.key)).flatten()
    }

    /// Opens a saved build, as far as it is understood.
    pub fn open_saved(self, entry: &Entry) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        let Some(text) = self.saved_text(entry) else { return self.look_at_shelf() };
        if let Ok((build, faults)) = saved::read_kept(&text, &catalog) {
            self.unread.set(faults);
            self.open_as(build, format!("{} opened.", entry.name));
        }
    }

    /// Opens a build file.
    pub fn open_file(self, text: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        match saved::read_file(text, &catalog) {
            Ok((build, ignored)) => {
                self.unread.set(ignored);
                self.open_as(build, "Build opened from the file.".into());
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
        self.change(|document| document.name(name));
    }

    /// Saves the build under its name; the same name is written over.
    pub fn save(self) {
        let mut build = self.document.with_untracked(|document| document.build.clone());
        build.draft.name = build.draft.name.trim().into();
        if build.draft.name.is_empty() {
            self.say("Give the build a name first.");
            return;
        }
        if let Some(missing) = untrack(|| self.missing()).first() {
            self.say(missing);
            return;
        }
        let (now, letters) = (platform::now() as u64, platform::letters());
        let kept = self.with_shelf(|store| shelf::save(store, &build, now, &letters));
        self.look_at_shelf();
        self.say(if kept == Some(true) { "Saved on this device." } else { page::NOT_KEPT });
    }

    /// Forgets a saved build.
    pub fn forget(self, entry: &Entry) {
        if let Some(text) = self.saved_text(entry) {
            self.with_shelf(|store| store.remove(&entry.key));
            self.lost.set(Some(Lost { entry: entry.clone(), text }));
            let text = format!("{} forgotten.", entry.name);
            self.message.set(Some(Message { text, undo: true }));
        }
        self.look_at_shelf();
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
