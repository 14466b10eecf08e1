//! What the page has to say: faults in files and links, and short messages.

use super::app;
use crate::browser;
use crate::text::fault;
use leptos::html;
use leptos::prelude::*;
use leptos::{ev, prelude::AnyView};
use pitchline_core::Error;

/// Faults of the catalogue, a link or a file: where each is and what was expected.
pub(super) fn told() -> AnyView {
    let app = app();
    let list = move |faults: Vec<Error>| {
        let style = app.style.get();
        let item = |error: &Error| html::li().child(fault(error, style)).into_any();
        html::ul().child(faults.iter().map(item).collect::<Vec<_>>()).into_any()
    };
    let boxed = |title: String, list: AnyView| {
        html::div()
            .class("told")
            .child((html::p().child(html::strong().child(title)), list))
            .into_any()
    };
    let catalogue = move || {
        let loaded = app.loaded.get();
        if let Some(why) = loaded.refused {
            let text = "The maker's parts could not be read. The demo's parts stand in.";
            return Some(boxed(text.into(), html::p().child(why).into_any()));
        }
        let title = match loaded.faults.len() {
            0 => return None,
            1 => "1 fault in catalogue.json. The rest works.".to_string(),
            n => format!("{n} faults in catalogue.json. The rest works."),
        };
        Some(boxed(title, list(loaded.faults)))
    };
    let unread = move || {
        let faults = app.unread.get();
        (!faults.is_empty()).then(|| {
            let close = html::button()
                .r#type("button")
                .on(ev::click, move |_| app.unread.set(Vec::new()))
                .child("Close");
            let inside = html::div().child((list(faults), close)).into_any();
            boxed("Part of the link or file could not be used.".into(), inside)
        })
    };
    html::div().attr("role", "status").child((catalogue, unread)).into_any()
}

/// A short message at the foot of the page, and the offer of a new version.
pub(super) fn message() -> AnyView {
    let app = app();
    let said = move || {
        app.message.get().map(|message| {
            let undo = message.undo.then(|| {
                html::button()
                    .r#type("button")
                    .on(ev::click, move |_| app.undo())
                    .child("Undo")
                    .into_any()
            });
            html::div()
                .class("message")
                .child((
                    html::span().child(message.text),
                    undo,
                    html::button()
                        .r#type("button")
                        .on(ev::click, move |_| app.message.set(None))
                        .child("Close"),
                ))
                .into_any()
        })
    };
    let update = move || {
        let later = move |_| app.update.set(false);
        app.update.get().then(|| {
            html::div()
                .class("message")
                .child((
                    html::span().child("A new version is ready."),
                    html::button()
                        .r#type("button")
                        .on(ev::click, |_| browser::tell("pitchline:update-now"))
                        .child("Reload"),
                    html::button().r#type("button").on(ev::click, later).child("Later"),
                ))
                .into_any()
        })
    };
    html::div().class("messages").attr("role", "status").child((said, update)).into_any()
}
