//! One file a question of the page.

mod about;
mod answer;
mod builds;
mod far;
mod fast;
mod field;
mod gear_map;
mod on_it;
mod part;
mod steep;
mod strip;
mod told;
mod working;

use crate::state::App;
use leptos::html;
use leptos::prelude::*;

/// The whole page.
pub fn page() -> AnyView {
    html::div()
        .class("page")
        .child((
            strip::header(),
            strip::strip(),
            told::told(),
            html::main()
                .child((
                    html::div().class("column").child(on_it::on_it()).into_any(),
                    html::div()
                        .class("column")
                        .child((fast::fast(), steep::steep(), far::far()))
                        .into_any(),
                ))
                .into_any(),
            html::footer().child((builds::builds(), about::about())).into_any(),
            told::message(),
        ))
        .into_any()
}

/// One question with its heading.
fn question(id: &'static str, title: &'static str, inside: AnyView) -> AnyView {
    let heading = format!("{id}-title");
    html::section()
        .class("question")
        .id(id)
        .attr("aria-labelledby", heading.clone())
        .child((html::h2().id(heading).child(title).into_any(), inside))
        .into_any()
}

/// The state of the page.
fn app() -> App {
    App::here()
}
