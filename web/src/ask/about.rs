//! How far to trust it, where data stay, and what version this is.

use crate::browser;
use crate::component::caution;
use crate::dom::{Node, el, said};
use crate::state::App;
use crate::text::page;

pub(super) fn about(app: App) -> Node {
    let offline = move || {
        let state = app.read(|model| model.offline.clone());
        match state.as_str() {
            "ready" => "Ready offline: it works without a signal from now on.",
            "installing" => "Getting ready for offline use…",
            "incomplete" => "Not complete offline: open it once more with a signal.",
            _ => "Not kept for offline use in this browser or frame.",
        }
        .into()
    };
    let catalogue = move || {
        let catalog = app.catalog();
        let version =
            if catalog.version.is_empty() { "no version given" } else { &catalog.version };
        format!("Parts: {}, {version}. {}", catalog.maker, catalog.notes)
    };
    let framed = browser::embedded().then(|| el("p").with(page::FRAMED));
    el("section")
        .class("about")
        .attr("aria-labelledby", "about-title")
        .with(el("h2").attr("id", "about-title").with("How far to trust it"))
        .with(caution(page::TRUST))
        .with(el("p").with(page::PRIVATE))
        .with(framed)
        .with(el("p").attr("id", "offline-state").with(said(offline)))
        .with(el("p").with(said(catalogue)))
        .with(el("p").with(concat!("Pitchline ", env!("CARGO_PKG_VERSION"))))
        .into()
}
