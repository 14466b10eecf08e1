//! Keeping a build: by link, by name on this device, by file.

use super::app;
use crate::browser;
use crate::state::{App, link, saved};
use leptos::html;
use leptos::prelude::*;
use leptos::{ev, prelude::AnyView};
use pitchline_core::Draft;

fn button(words: &'static str, action: impl Fn() + 'static) -> AnyView {
    html::button().r#type("button").on(ev::click, move |_| action()).child(words).into_any()
}

/// The link of a build, as someone else can open it.
fn address(app: App) -> String {
    let catalog = app.loaded.with_untracked(|loaded| loaded.catalog.clone());
    browser::link(&app.draft.with_untracked(|draft| link::write(draft, &catalog)))
}

pub(super) fn builds() -> AnyView {
    let app = app();
    let name = RwSignal::new(app.draft.with_untracked(|draft| draft.name.clone()));
    // Shown when the browser does not let us copy.
    let by_hand = RwSignal::new(None::<String>);
    let copy = move || {
        let address = address(app);
        browser::copy_text(&address.clone(), move |copied| {
            if copied {
                app.say("Link copied. It holds the whole build.");
            } else {
                by_hand.set(Some(address));
            }
        });
    };
    let export = move || {
        let draft = app.draft.get_untracked();
        let text = saved::write_file(&draft, &browser::today());
        browser::offer(&file_name(&draft), &text);
    };
    let shown = move || {
        by_hand.get().map(|address| {
            html::div()
                .class("field")
                .child((
                    html::label().r#for("link").child("Copy this link"),
                    html::input().id("link").r#type("text").attr("readonly", "").value(address),
                ))
                .into_any()
        })
    };
    let save = html::div()
        .class("field save")
        .child((
            html::label().r#for("build-name").child("Name"),
            html::input()
                .id("build-name")
                .r#type("text")
                .attr("maxlength", "80")
                .attr("autocomplete", "off")
                .prop("value", move || name.get())
                .on(ev::input, move |e| name.set(event_target_value(&e))),
            button("Save on this device", move || app.save(&name.get_untracked())),
        ))
        .into_any();
    let import = html::div()
        .class("field")
        .child((
            html::label().r#for("build-file").child("Open a build file"),
            html::input()
                .id("build-file")
                .r#type("file")
                .attr("accept", ".json,application/json")
                .on(ev::change, move |e| browser::read(&e, move |text| app.open_file(&text))),
        ))
        .into_any();
    html::section()
        .class("builds")
        .attr("aria-labelledby", "builds-title")
        .child((
            html::h2().id("builds-title").child("Keep this build"),
            html::div()
                .class("row")
                .child((
                    button("Copy link", copy),
                    button("Save as file", export),
                    button("Undo last pick", move || app.undo()),
                ))
                .into_any(),
            shown,
            save,
            list(app),
            import,
        ))
        .into_any()
}

fn list(app: App) -> AnyView {
    let entry = move |draft: &Draft| {
        let (open, forget) = (draft.clone(), draft.name.clone());
        html::li()
            .child((
                html::span().child(draft.name.clone()),
                button("Open", move || {
                    let said = format!("{} opened.", open.name);
                    app.replace(open.clone(), Some(said));
                }),
                button("Forget", move || app.forget(&forget)),
            ))
            .into_any()
    };
    let entries = move || app.saved.with(|builds| builds.iter().map(entry).collect::<Vec<_>>());
    html::ul().class("saved").child(entries).into_any()
}

/// A file name from the build's own name, in letters that every system takes.
fn file_name(draft: &Draft) -> String {
    let name = if draft.name.is_empty() { &draft.kit } else { &draft.name };
    let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    let name: String = name.chars().map(plain).take(40).collect();
    let name = name.trim_matches('-');
    format!("{}.pitchline.json", if name.is_empty() { "build" } else { name })
}
