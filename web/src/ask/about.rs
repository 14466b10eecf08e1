//! How far to trust it, where data stay, and what version this is.

use super::app;
use crate::browser;
use crate::component::caution;
use crate::text::page;
use leptos::html;
use leptos::prelude::*;

pub(super) fn about() -> AnyView {
    let app = app();
    let offline = move || match app.offline.get().as_str() {
        "ready" => "Ready offline: it works without a signal from now on.",
        "installing" => "Getting ready for offline use…",
        "incomplete" => "Not complete offline: open it once more with a signal.",
        _ => "Not kept for offline use in this browser or frame.",
    };
    let catalogue = move || {
        let catalog = app.catalog();
        let version =
            if catalog.version.is_empty() { "without a version" } else { &catalog.version };
        format!("Parts: {}, {version}. {}", catalog.maker, catalog.notes)
    };
    html::section()
        .class("about")
        .attr("aria-labelledby", "about-title")
        .child((
            html::h2().id("about-title").child("How far to trust it"),
            caution(page::TRUST),
            html::p().child(page::PRIVATE),
            browser::embedded().then(|| html::p().child(page::FRAMED)),
            html::p().id("offline-state").child(offline),
            html::p().child(catalogue),
            html::p().child(concat!("Pitchline ", env!("CARGO_PKG_VERSION"))),
        ))
        .into_any()
}
