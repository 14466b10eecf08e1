//! Does it go together?

mod agree;
mod amiss;
mod belt;
mod bench;
mod cure;
mod deck;
mod frame;
mod lean;
mod view;

#[cfg(test)]
mod laws;
#[cfg(test)]
mod told;

use crate::component::Caution;
use crate::text::page;
use agree::Agree;
use belt::Belts;
use deck::Deck;
use frame::Frame;
use lean::Leaning;
use leptos::prelude::*;

/// The whole question.
#[component]
pub fn Fit() -> impl IntoView {
    view! {
            <Agree />
            <Belts />
            <Caution text=page::CAUTION_BELT />
            <Frame />
            <Deck />
            <Leaning />
    }
}
