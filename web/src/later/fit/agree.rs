//! Parts that do not agree, each with the nearest on offer that would.

use super::amiss::amiss;
use super::found::Asked;
use crate::ask::AMISS;
use crate::component::{button, notice};
use crate::dom::{Node, el, live};
use crate::text;
use pitchline_core::fit::remedy;
use pitchline_core::{Notice, Record, Slot};

pub(super) fn agree(asked: &Asked) -> Node {
    let app = asked.app;
    let told = move || {
        let notices = app.found().map_or_else(Vec::new, |found| found.notices.clone());
        let style = app.style();
        let one = |told: &Notice| {
            let pick = app.read(|model| {
                let offered = |slot: Slot| -> Vec<&Record> {
                    model.loaded.catalog.offered(&model.draft.kit, slot)
                };
                remedy(&model.draft, told, &offered)
                    .map(|found| (found.slot, found.part.id.clone(), found.part.name.clone()))
            });
            let mends = match pick {
                Some((slot, id, name)) => {
                    button(format!("Take {name}"), move || app.pick(slot, &id)).into()
                }
                None => el("p").class("facts").with("Nothing on offer mends it.").into(),
            };
            Node::from(vec![notice(text::notice(told, style)), mends])
        };
        match notices.as_slice() {
            [] => {
                el("p").class("facts").with("Shafts, bores, cores, plugs and volts agree.").into()
            }
            some => some.iter().map(one).collect(),
        }
    };
    // Not a stop of its own; the strip leads here.
    el("div")
        .attr("id", AMISS)
        .attr("tabindex", "-1")
        .with(el("h3").with("Parts that meet"))
        .with(el("div").attr("role", "status").with(live(move || app.key(), told)))
        .with(amiss(asked))
        .into()
}
