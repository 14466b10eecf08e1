//! Does it go together?
//!
//! Not part of the four questions' answers: worked out once for each change,
//! when this question is on the page.

mod agree;
mod amiss;
mod belt;
mod bench;
mod deck;
mod found;
mod frame;
mod lean;
mod view;

#[cfg(test)]
mod laws;
#[cfg(test)]
mod told;

use crate::component::caution;
use crate::dom::Node;
use crate::state::App;
use crate::text::page;
use found::{Asked, Found};

pub(super) fn fit(app: App) -> Node {
    let asked = Asked::new(app, Found::now);
    Node::from(vec![
        agree::agree(&asked),
        belt::belt(&asked),
        caution(page::CAUTION_BELT),
        frame::frame(&asked),
        deck::deck(&asked),
        lean::lean(&asked),
    ])
}
