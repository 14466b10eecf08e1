//! Everything that a person can do to the state.

use super::difference::Difference;
use super::document::{Document, Linked};
use super::edits::Act;
use super::rest::Whole;
use super::shelf::Entry;
use super::store::{App, MapView, Message, Undo};
use super::typed::{self, Place, Typed, value};
use super::{saved, shelf};
use crate::platform::{self, Store};
use crate::text::{self, Units, fault, keep};
use leptos::prelude::*;
use pitchline_core::catalog::Catalog;
use pitchline_core::{Field, Slot, settings, with_highest, with_settings};

fn field((slot, index): Place) -> Option<&'static Field> {
    slot.kind().fields().get(index)
}

impl App {
    /// Every change of the build passes here. It is not kept until it has been answered.
    fn change<T>(self, change: impl FnOnce(&mut Document, &Catalog) -> T) -> Option<T> {
        if self.keeper.with_value(Option::is_some) {
            platform::tell_kept(false);
        }
        // Whoever changes it knows which it is.
        if self.asks_kit.get_untracked() {
            self.asks_kit.set(false);
        }
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        self.document.try_update(|document| change(document, &catalog))
    }

    /// Opens another build in place of this one.
    fn open_as(self, build: Whole, text: String) {
        self.change(|document, catalog| document.replace(build, catalog));
        self.opened(text);
    }

    fn opened(self, text: String) {
        self.typed.set(Typed::default());
        self.edited(text);
    }

    /// Names the edit that has just been made, and offers to undo it.
    fn edited(self, text: String) {
        let undo = Some(Undo::Edit(untrack(|| self.state())));
        self.message.set(Some(Message { text, undo }));
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
        let value = found.unwrap_or(before);
        self.change(|document, catalog| document.set(place, value, Act::Type(place), catalog));
        self.typed.update(|typed| typed.put(place, typed::Entry { text, fault, before }));
    }

    /// A field was left: valid text is written out in full, faulty text stays.
    pub fn leave(self, place: Place) {
        self.rest();
        let valid = |typed: &Typed| typed.get(place).is_some_and(|entry| entry.fault.is_none());
        if self.typed.with_untracked(valid) {
            self.typed.update(|typed| typed.clear(place));
        }
    }

    /// What was done last is done: what comes is another edit.
    fn rest(self) {
        self.document.update_untracked(Document::rest);
    }

    /// One step up or down, in the unit that is shown, held within the limits.
    pub fn step(self, place: Place, steps: f64) {
        let Some(field) = field(place) else { return };
        let shown = self.style.get_untracked().units.field(place.0.kind(), field);
        let act = Act::Step(place, platform::now());
        self.change(|document, catalog| {
            let draft = &document.build.draft;
            let usual = || draft.assumed(place.0, place.1).unwrap_or(field.typical);
            let now = draft.record(place.0).value(place.1).unwrap_or_else(usual);
            let size = step_size(field, shown.from_file(field.typical));
            let next = ((shown.from_file(now) / size).round() + steps) * size;
            let value = shown.to_file(next).max(field.min).min(field.max);
            document.set(place, Some(value), act, catalog);
        });
        self.typed.update(|typed| typed.clear(place));
    }

    /// Picks one of a field's choices.
    pub fn choose(self, place: Place, name: &str) {
        if let Some(value) = field(place).and_then(|field| field.choice(name).ok()) {
            let act = Act::Step(place, platform::now());
            self.change(|document, catalog| document.set(place, Some(value), act, catalog));
        }
    }

    /// Sets the controller as recommended, or to the highest that the ratings allow, in one edit.
    pub fn set_controller(self, highest: bool) {
        let Some(found) = untrack(|| self.found()) else { return };
        let with = if highest { with_highest } else { with_settings };
        let set = with(&found.draft, &settings(&found.draft, &found.build));
        let inputs = Slot::Controller.kind().fields().iter();
        let changed = inputs.filter_map(|field| {
            let value = set.value(Slot::Controller, field.key)?;
            let now = found.draft.value(Slot::Controller, field.key);
            (now != Some(value)).then_some((Slot::Controller, field.key, value))
        });
        let changed: Vec<_> = changed.collect();
        self.typed.update(|typed| typed.keep(|(at, _), _| at != Slot::Controller));
        self.change(|document, catalog| document.set_all(&changed, catalog));
        self.edited(text::settings::set(highest).into());
    }

    /// Picks a part by its id.
    pub fn pick(self, slot: Slot, id: &str) {
        self.pick_all(&[(slot, id.into())]);
    }

    /// Has a part of the reader's own in a slot, beginning with the figures of the one before it.
    pub fn use_own(self, slot: Slot, name: String) {
        self.typed.update(|typed| typed.keep(|(at, _), _| at != slot));
        self.change(|document, catalog| document.use_own(&[slot], |_| name.clone(), catalog));
    }

    /// Picks several parts at once, such as a pairing of the gear map.
    pub fn pick_all(self, picks: &[(Slot, String)]) {
        let picks: Vec<(Slot, &str)> = picks.iter().map(|(slot, id)| (*slot, &**id)).collect();
        if self.change(|document, catalog| document.pick(&picks, catalog)) == Some(true) {
            let with_pack = picks.iter().any(|(slot, _)| *slot == Slot::Pack);
            let picked = |at: Slot| picks.iter().any(|(slot, _)| *slot == at);
            let gone = |at: Slot| picked(at) || with_pack && at == Slot::Cell;
            self.typed.update(|typed| typed.keep(|(at, _), _| !gone(at)));
        }
    }

    /// Puts the catalogue's own values back; where it has none of that id, the kit's part.
    pub fn restore(self, slot: Slot) {
        self.typed.update(|typed| typed.keep(|(at, _), _| at != slot));
        self.change(|document, catalog| document.restore(slot, catalog));
    }

    /// Starts from a kit; rider, place and wishes stay as they are.
    pub fn start_from(self, kit: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        self.typed.update(|typed| typed.keep(|(at, _), _| !at.holds_part()));
        let name = catalog.kit(kit).map_or("", |kit| &kit.name);
        self.change(|document, catalog| document.start_from(kit, catalog));
        self.edited(text::difference::switched(name));
    }

    /// The kit on a first visit.
    pub fn choose_kit(self, kit: &str) {
        self.change(|document, catalog| document.begin_with(kit, catalog));
        // The view asked for comes in the place of the kits, without a change of address.
        self.land(None);
    }

    /// A board of the reader's own on a first visit, by its name: every part one of their own, by
    /// these names.
    pub fn choose_own(self, board: &str, part: impl Fn(Slot) -> String) {
        self.change(|document, catalog| {
            document.use_own(Slot::ALL, part, catalog);
            document.name(board, catalog);
            document.begin();
        });
        self.say(text::setup::OWN_BEGINS);
    }

    /// Undoes the last edit.
    pub fn undo(self) {
        let edit = untrack(|| self.undoing());
        self.turn(edit, Document::undo, text::difference::UNDONE);
    }

    /// Does again what was undone last.
    pub fn redo(self) {
        let edit = untrack(|| self.undone());
        self.turn(edit, Document::redo, text::difference::REDONE);
    }

    /// Undoes an edit or does it again, and says what that changes.
    fn turn(self, edit: Option<Difference>, step: fn(&mut Document, &Catalog) -> bool, how: &str) {
        let Some(edit) = edit else { return self.say(text::difference::NO_MORE) };
        self.change(step);
        self.typed.update(|typed| typed.keep(|place, _| !edit.sets(place)));
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        self.say(&format!("{how} – {}.", edit.named(&catalog, self.style.get_untracked())));
    }

    /// Undoes what a message names.
    pub fn undo_this(self, undo: &Undo) {
        match undo {
            Undo::Edit(_) if untrack(|| self.can_undo(undo)) => self.undo(),
            Undo::Edit(_) => self.hush(),
            Undo::Forget(entry, text) => {
                let kept = self.with_shelf(|store| store.set(&entry.key, text)) == Some(true);
                if kept {
                    self.say(&keep::restored(&entry.name));
                } else {
                    let undo = Some(undo.clone());
                    self.message.set(Some(Message { text: keep::NOT_KEPT.into(), undo }));
                }
                self.look_at_shelf();
            }
        }
    }

    /// Says something once.
    pub fn say(self, text: &str) {
        self.message.set(Some(Message { text: text.into(), undo: None }));
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
        // What was refused in the one unit is read in the other.
        for (place, text) in self.typed.with_untracked(Typed::texts) {
            self.type_in(place, text);
        }
    }

    /// Opens a link; what cannot be read is shown. Whether it brought another build.
    pub fn open_link(self, text: &str) -> bool {
        match self.change(|document, catalog| document.open_link(text, catalog)) {
            Some(Linked::Opened(faults)) => {
                self.unread.set(faults);
                self.opened(keep::FROM_LINK.into());
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
            self.open_as(build, keep::opened(&entry.name));
        }
    }

    /// Opens a build file.
    pub fn open_file(self, text: &str) {
        let catalog = self.loaded.with_untracked(|loaded| loaded.catalog.clone());
        match saved::read_file(text, &catalog) {
            Ok((build, ignored)) => {
                self.unread.set(ignored);
                self.open_as(build, keep::FROM_FILE.into());
            }
            Err(faults) => {
                let style = self.style.get_untracked();
                let first = faults.first().map(|f| fault(f, style)).unwrap_or_default();
                self.say(&keep::not_opened(&first));
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
        self.change(|document, catalog| document.name(name, catalog));
    }

    /// The name was left.
    pub fn leave_name(self) {
        self.rest();
    }

    /// Saves the build under its name; the same name is written over.
    pub fn save(self) {
        let mut build = self.document.with_untracked(|document| document.build.clone());
        build.draft.name = build.draft.name.trim().into();
        if build.draft.name.is_empty() {
            self.say(keep::NAME_FIRST);
            return;
        }
        if let Some(missing) = untrack(|| self.missing()).first() {
            self.say(missing);
            return;
        }
        let (now, letters) = (platform::now() as u64, platform::letters());
        // Of another board perhaps, whose name came with a link.
        let before = self.with_shelf(|store| shelf::named(store, &build.draft.name)).flatten();
        let kept = self.with_shelf(|store| shelf::save(store, &build, now, &letters));
        self.look_at_shelf();
        match before {
            _ if kept != Some(true) => self.say(keep::NOT_KEPT),
            None => self.say(keep::SAVED),
            Some((entry, text)) => {
                let said = keep::replaced(&entry.name);
                self.message
                    .set(Some(Message { text: said, undo: Some(Undo::Forget(entry, text)) }));
            }
        }
    }

    /// Deletes a saved build.
    pub fn forget(self, entry: &Entry) {
        if let Some(text) = self.saved_text(entry) {
            self.with_shelf(|store| store.remove(&entry.key));
            let said = keep::deleted(&entry.name);
            let undo = Some(Undo::Forget(entry.clone(), text));
            self.message.set(Some(Message { text: said, undo }));
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
