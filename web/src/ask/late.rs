//! What stands in the place of something later until that has arrived.

use crate::browser;
use crate::component::button;
use crate::dom::{Node, el, live};
use crate::state::{App, Later};
use crate::text::page;

/// What `door` gives, once it may be opened, and nothing until then.
pub(super) fn silent(app: App, door: fn() -> Node) -> Node {
    let ready = move || app.read(|model| model.later == Later::Ready);
    let key = move || if ready() { "ready".into() } else { String::new() };
    let view =
        move || if app.peek(|model| model.later == Later::Ready) { door() } else { Node::None };
    live(key, view)
}

/// What `door`, a function of [`crate::later`], gives, once it may be opened.
pub(super) fn late(app: App, door: impl Fn() -> Node + 'static) -> Node {
    let stands = move || app.read(|model| model.later);
    let key = move || {
        match stands() {
            Later::Loading => "loading",
            Later::Ready => "ready",
            Later::Failed => "failed",
        }
        .into()
    };
    let view = move || match app.peek(|model| model.later) {
        Later::Loading => el("p").class("help").attr("role", "status").with(page::LOADING).into(),
        Later::Ready => door(),
        Later::Failed => {
            let again = button("Try again", || browser::tell("pitchline:later-wanted"));
            el("div")
                .class("late")
                .attr("role", "status")
                .with(el("p").with(page::NOT_ARRIVED))
                .with(again)
                .into()
        }
    };
    live(key, view)
}
