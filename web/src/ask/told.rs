//! What the page has to say: faults in files and links, and short messages.

use crate::browser;
use crate::component::button;
use crate::dom::{Node, el, live};
use crate::state::App;
use crate::text::{Style, fault, page};
use pitchline_core::{Error, Reason};

/// Faults of the catalogue, a link or a file: where each is and what was expected.
pub(super) fn told(app: App) -> Node {
    let key = move || {
        app.read(|model| {
            let loaded = &model.loaded;
            let faults = loaded.faults.iter().chain(&model.unread);
            faults
                .map(ToString::to_string)
                .chain(loaded.refused.clone())
                .collect::<Vec<_>>()
                .join("|")
        })
    };
    el("div").attr("role", "status").with(live(key, move || boxes(app))).into()
}

fn boxes(app: App) -> Node {
    let style = app.style();
    let (loaded, unread) = app.peek(|model| (model.loaded.clone(), model.unread.clone()));
    let mut boxes = Vec::new();
    if let Some(why) = loaded.refused {
        let title = "The maker's parts could not be read. The demo's parts stand in.";
        boxes.push(boxed(title.into(), el("p").with(why).into()));
    }
    match loaded.faults.len() {
        0 => {}
        1 => {
            let title = "1 fault in catalogue.json. The rest works.";
            boxes.push(boxed(title.into(), list(&loaded.faults, style)));
        }
        n => {
            let title = format!("{n} faults in catalogue.json. The rest works.");
            boxes.push(boxed(title, list(&loaded.faults, style)));
        }
    }
    if !unread.is_empty() {
        let close = button("Close", move || app.change(|model| model.unread.clear()));
        let inside = Node::from(vec![list(&unread, style), close.into()]);
        // What is said of a link's model takes nothing away from the link.
        let used = unread.iter().all(|error| matches!(error.reason, Reason::Unused { .. }));
        let title = if used { page::READ } else { page::UNREAD };
        boxes.push(boxed(title.into(), inside));
    }
    Node::from(boxes)
}

fn boxed(title: String, inside: Node) -> Node {
    el("div").class("told").with(el("p").with(el("strong").with(title))).with(inside).into()
}

fn list(faults: &[Error], style: Style) -> Node {
    let item = |error: &Error| Node::from(el("li").with(fault(error, style)));
    el("ul").with(faults.iter().map(item).collect::<Node>()).into()
}

/// Milliseconds for which a message stands.
const SAID_FOR: u32 = 8000;

/// A short message at the foot of the page, and the offer of a new version.
pub(super) fn message(app: App) -> Node {
    let key = move || {
        app.read(|model| {
            let said = model.message.as_ref().map_or("", |message| &message.text);
            format!("{}{said}", if model.update { "!" } else { "" })
        })
    };
    let view = move || {
        let (message, update) = app.peek(|model| (model.message.clone(), model.update));
        let close = move || app.change(|model| model.message = None);
        if let Some(text) = message.as_ref().filter(|m| !m.undo).map(|m| m.text.clone()) {
            // What can be undone stays; the rest has been read by then.
            browser::later(SAID_FOR, move || {
                if app.peek(|model| model.message.as_ref().is_some_and(|m| m.text == text)) {
                    close();
                }
            });
        }
        let said = message.map(|message| {
            el("div")
                .class("message")
                .with(el("span").with(message.text))
                .with(message.undo.then(|| button("Undo", move || app.undo())))
                .with(button("Close", close))
        });
        let update = update.then(|| {
            el("div")
                .class("message")
                .with(el("span").with("A new version is ready."))
                .with(button("Reload", || browser::tell("pitchline:update-now")))
                .with(button("Later", move || app.change(|model| model.update = false)))
        });
        Node::from(vec![said.into(), update.into()])
    };
    el("div").class("messages").attr("role", "status").with(live(key, view)).into()
}
