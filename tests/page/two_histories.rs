//! Two hundred random edits with Undo, Redo, Back, Forward and reloads between: the build is what the
//! edits say, the view what the addresses say.

use pitchline_core::catalog::Catalog;
use pitchline_core::{Draft, Slot};
use pitchline_tests::browser::{Key, Outcome, Page, Size};

use crate::history::{assert_build, assert_view, fill, forward, offered, turn};
use crate::random::Draws;
use crate::visit::{Visit, demo, kit_for, open_build, put, see, wait_living};

/// What a person beside would have noted.
struct Record {
    now: Draft,
    past: Vec<Draft>,
    future: Vec<Draft>,
    views: Vec<&'static str>,
    at: usize,
}

impl Record {
    fn edit(&mut self, next: Draft) {
        if next != self.now {
            self.past.push(std::mem::replace(&mut self.now, next));
            self.future.clear();
        }
    }

    fn undo(&mut self) {
        if let Some(before) = self.past.pop() {
            self.future.push(std::mem::replace(&mut self.now, before));
        }
    }

    fn redo(&mut self) {
        if let Some(after) = self.future.pop() {
            self.past.push(std::mem::replace(&mut self.now, after));
        }
    }

    fn go(&mut self, view: &'static str) {
        if self.views[self.at] != view {
            self.views.truncate(self.at + 1);
            self.views.push(view);
            self.at += 1;
        }
    }

    #[track_caller]
    fn check(&self, page: &Page, what: &str) -> Outcome {
        assert_build(page, &self.now, what)?;
        assert_view(page, self.views[self.at])?;
        for (word, list) in [("Undo", &self.past), ("Redo", &self.future)] {
            page.wait_for(&format!("{what}: {word} is offered or not"), |page| {
                Ok(offered(page, word)?.is_empty() == list.is_empty())
            })?;
        }
        Ok(())
    }
}

const VIEWS: [&str; 5] = ["Overview", "How fast?", "How far?", "Share", "More"];
const EDITS: usize = 200;

/// An edit of the page and of the record. Steps and choices in the same field within a second are one
/// edit, so that none follows another of its kind.
fn edit(
    page: &Page,
    record: &mut Record,
    catalog: &Catalog,
    draws: &mut Draws,
    kind: usize,
) -> Outcome {
    let mut next = record.now.clone();
    match kind {
        0 | 1 => {
            let mass = (600 + draws.below(500)) as f64 / 10.0;
            fill(page, "#rider-mass_kg", &format!("{mass}"))?;
            next.set(Slot::Rider, "mass_kg", mass);
        }
        2 => {
            page.by_css("button[aria-label='Your weight: more']")?.click()?;
            let mass = next.value(Slot::Rider, "mass_kg").unwrap_or_default();
            next.set(Slot::Rider, "mass_kg", mass.round() + 1.0);
        }
        3 => {
            let list = ["Upright", "Relaxed, side on", "Crouched"];
            let now = next.value(Slot::Rider, "posture").unwrap_or_default() as usize;
            let other = (now + 1 + draws.below(2)) % 3;
            page.by_css("#rider-posture")?.choose(list[other])?;
            next.set(Slot::Rider, "posture", other as f64);
        }
        4 | 5 => {
            let offered = catalog.offered(&next.kit, Slot::Wheel);
            let wheel = offered[draws.below(offered.len())];
            page.by_css("#pick-wheel")?.choose(&wheel.name)?;
            put(&mut next, catalog, Slot::Wheel, &wheel.id);
        }
        _ => {
            let at = draws.below(catalog.kits.len());
            page.all_by_css("button.kit")?[at].click()?;
            next = kit_for(catalog, &catalog.kits[at].id, &next);
        }
    }
    record.edit(next);
    Ok(())
}

#[test]
fn views_and_edits_are_two_histories() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    let mut draws = Draws(14);
    let mut record = Record {
        now: catalog.draft("kittiwake"),
        past: Vec::new(),
        future: Vec::new(),
        views: vec!["Overview"],
        at: 0,
    };
    let (mut edits, mut last) = (0, 9);
    for step in 0.. {
        if edits == EDITS {
            break;
        }
        let what = match draws.below(20) {
            0..11 => {
                let kind = Some(draws.below(7)).filter(|kind| *kind != last).unwrap_or(0);
                edit(page, &mut record, &catalog, &mut draws, kind)?;
                (edits, last) = (edits + 1, kind);
                "an edit"
            }
            11 | 12 => {
                turn(page, "Undo")?;
                record.undo();
                "Undo"
            }
            13 => {
                turn(page, "Redo")?;
                record.redo();
                "Redo"
            }
            14 => {
                page.eval("document.activeElement.blur()", &[])?;
                let again = draws.below(2) == 0;
                if again {
                    page.chord(&[Key::Control, Key::Shift, Key::Char('z')])?;
                    record.redo();
                } else {
                    page.chord(&[Key::Control, Key::Char('z')])?;
                    record.undo();
                }
                "keys"
            }
            15 | 16 => {
                let view = VIEWS[draws.below(VIEWS.len())];
                see(page, view)?;
                record.go(view);
                "a link to a view"
            }
            17 if record.at > 0 => {
                page.back()?;
                record.at -= 1;
                "Back"
            }
            18 if record.at + 1 < record.views.len() => {
                forward(page)?;
                record.at += 1;
                "Forward"
            }
            19 if draws.below(3) == 0 => {
                page.reload()?;
                wait_living(page)?;
                open_build(page)?;
                last = 9;
                "a reload"
            }
            _ => continue,
        };
        record.check(page, &format!("step {step}, after {what}"))?;
    }
    // All the way back and forth, and no view has changed.
    while !record.past.is_empty() {
        turn(page, "Undo")?;
        record.undo();
    }
    record.check(page, "all undone")?;
    visit.reload()?;
    while !record.future.is_empty() {
        turn(page, "Redo")?;
        record.redo();
    }
    record.check(page, "all done again")?;
    visit.end()
}
