//! What goes with figures that leave the page: what they rest on, and what made them.

use super::store::App;
use crate::platform;
use crate::text::{self, keep, shell};
use pitchline_core::{Draft, Slot};

impl App {
    /// What of rider, place and ride the answers rest on; tracked.
    #[must_use]
    pub fn conditions(self) -> String {
        let style = self.style();
        let of = |draft: &Draft, slot: Slot| {
            let fields = slot.kind().fields().iter().enumerate();
            let said = |(index, field)| {
                let assumed = || draft.assumed(slot, index);
                let value = draft.record(slot).value(index).or_else(assumed)?;
                Some(text::said(slot.kind(), field, value, style))
            };
            fields.filter_map(said).collect::<Vec<_>>().join("; ")
        };
        self.draft(|draft| {
            let all = [Slot::Rider, Slot::Place, Slot::Ride].map(|slot| of(draft, slot));
            all.join("\n")
        })
    }

    /// Maker, versions of program, model and catalogue, and the date; tracked.
    #[must_use]
    pub fn made(self) -> String {
        let catalog = self.catalog();
        shell::made(&catalog.maker, &catalog.version, &platform::today())
    }

    /// Copies a text, and says so.
    pub fn copy(self, text: &str) {
        platform::copy_text(text, move |copied| {
            self.say(if copied { keep::TEXT_COPIED } else { keep::NOT_COPIED });
        });
    }
}
