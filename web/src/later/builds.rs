//! Keeping a build: by link, by name on this device, by file.

use crate::browser;
use crate::component::button;
use crate::dom::{Node, el, live};
use crate::state::{App, link, saved};
use pitchline_core::Draft;

pub(super) fn builds(app: App) -> Node {
    let address =
        move || browser::link(&app.read(|model| link::write(&model.draft, &model.loaded.catalog)));
    let copy = move || {
        browser::copy_text(&address(), move |copied| {
            if copied {
                app.say("Link copied. It holds the whole build.");
            } else {
                app.change(|model| model.by_hand = true);
            }
        });
    };
    let export = move || {
        if let Some(missing) = app.peek(|model| model.missing().into_iter().next()) {
            app.say(&missing);
            return;
        }
        let draft = app.peek(|model| model.draft.clone());
        let file = saved::write_file(&draft, &browser::today());
        browser::offer(&file_name(&draft), &browser::json(&file));
    };
    let shown = move || {
        let shown = app.peek(|model| model.by_hand).then(|| {
            let link = el("input").attr("id", "link").attr("type", "text").attr("readonly", "");
            el("div")
                .class("field")
                .with(el("label").attr("for", "link").with("Copy this link"))
                .with(link.value(address))
        });
        shown.into()
    };
    let save = el("div")
        .class("field save")
        .with(el("label").attr("for", "build-name").with("Name"))
        .with(
            el("input")
                .attr("id", "build-name")
                .attr("type", "text")
                .attr("maxlength", "80")
                .attr("autocomplete", "off")
                .value(move || app.read(|model| model.draft.name.clone()))
                .on("input", move |e| app.name(&e.value())),
        )
        .with(button("Save on this device", move || app.save()));
    let import = el("div")
        .class("field")
        .with(el("label").attr("for", "build-file").with("Open a build file"))
        .with(
            el("input")
                .attr("id", "build-file")
                .attr("type", "file")
                .attr("accept", ".json,application/json")
                .on("change", move |e| browser::read(e.raw(), move |text| app.open_file(&text))),
        );
    let keys = move || {
        app.read(|model| model.saved.iter().map(|build| build.name.clone() + "\n").collect())
    };
    let entries =
        move || app.peek(|model| model.saved.iter().map(|build| entry(app, build)).collect());
    el("section")
        .class("builds")
        .attr("aria-labelledby", "builds-title")
        .with(el("h2").attr("id", "builds-title").with("Keep this build"))
        .with(
            el("div")
                .class("row")
                .with(button("Copy link", copy))
                .with(button("Save as file", export))
                .with(button("Undo last pick", move || app.undo())),
        )
        .with(live(
            move || if app.read(|model| model.by_hand) { "shown".into() } else { String::new() },
            shown,
        ))
        .with(save)
        .with(el("ul").class("saved").with(live(keys, entries)))
        .with(import)
        .into()
}

/// A saved build; what it holds is read when it is opened.
fn entry(app: App, build: &Draft) -> Node {
    let (open, forget) = (build.name.clone(), build.name.clone());
    let opened = move || {
        let find = |build: &&Draft| build.name == open;
        if let Some(draft) = app.peek(|model| model.saved.iter().find(find).cloned()) {
            app.open(draft);
        }
    };
    el("li")
        .with(el("span").with(build.name.clone()))
        .with(button("Open", opened).attr("aria-label", format!("Open {}", build.name)))
        .with(
            button("Forget", move || app.forget(&forget))
                .attr("aria-label", format!("Forget {}", build.name)),
        )
        .into()
}

/// A file name from the build's own name, in letters that every system takes.
fn file_name(draft: &Draft) -> String {
    let name = if draft.name.is_empty() { &draft.kit } else { &draft.name };
    let plain = |c: char| if c.is_ascii_alphanumeric() { c.to_ascii_lowercase() } else { '-' };
    let name: String = name.chars().map(plain).take(40).collect();
    let name = name.trim_matches('-');
    format!("{}.pitchline.json", if name.is_empty() { "build" } else { name })
}
