//! One file a question of the page.

mod about;
mod answer;
mod far;
mod fast;
mod field;
#[cfg(test)]
mod first;
mod on_it;
mod part;
mod steep;
mod strip;
mod told;
mod working;

pub use answer::{ALONG_CURVE, side_by_side, table};
pub use far::SINKS;
pub use field::{input_as, input_of, lead_to, lead_to_part};
pub use strip::AMISS;
pub use working::working;

use crate::dom::{Node, el};
use crate::later;
use crate::state::App;
use crate::text::page;

/// The whole page.
pub fn page(app: App) -> Node {
    // Without a part there is nothing to say.
    let hidden = move || app.found().is_none().then(|| String::from("hidden"));
    let answers = [fast::fast(app), steep::steep(app), far::far(app), charge(app), fit(app)];
    el("div")
        .class("page")
        .with(strip::header(app))
        .with(strip::strip(app))
        .with(told::told(app))
        .with(el("main").with(el("div").class("column").with(on_it::on_it(app))).with(
            el("div").class("column").follow("hidden", hidden).with(Node::from_iter(answers)),
        ))
        .with(el("footer").with(later::builds(app)).with(about::about(app)))
        .with(later::contents())
        .with(told::message(app))
        .with(strip::aloud(app))
        .into()
}

/// How long on the charger?
fn charge(app: App) -> Node {
    question("charge", page::CHARGE, vec![later::charge(app)])
}

/// Does it go together?
fn fit(app: App) -> Node {
    question("fit", page::FIT, vec![later::fit(app)])
}

/// One question with its heading.
fn question(id: &'static str, title: &'static str, inside: Vec<Node>) -> Node {
    let heading = format!("{id}-title");
    el("section")
        .class("question")
        .attr("id", id)
        // Not a stop of its own, but a place to go on from.
        .attr("tabindex", "-1")
        .attr("aria-labelledby", heading.clone())
        .with(el("h2").attr("id", heading).with(title))
        .with(inside)
        .into()
}
