//! Every question of the page, in the order in which they stand.

use super::charge::Charge;
use super::fit::Fit;
use super::hill::Hill;
use super::range::Range;
use super::section::Section;
use super::setup::Setup;
use super::speed::Speed;
use super::trip::Trip;
use crate::text::page;
use leptos::prelude::*;

/// A question of the page.
#[derive(Clone, Copy)]
pub struct Question {
    /// Its place in the page: what leads to it names it so.
    pub id: &'static str,
    /// Its heading.
    pub title: &'static str,
    /// What stands below that.
    pub view: fn() -> AnyView,
}

/// What is on the board, which all others ask about.
pub const SETUP: Question = question("on-it", page::ON_IT, || view! { <Setup /> }.into_any());

/// All that is answered.
pub const ANSWERED: &[Question] = &[
    question("fast", page::FAST, || view! { <Speed /> }.into_any()),
    question("steep", page::STEEP, || view! { <Hill /> }.into_any()),
    question("far", page::FAR, || {
        view! {
            <Range>
                <Trip />
            </Range>
        }
        .into_any()
    }),
    question("charge", page::CHARGE, || view! { <Charge /> }.into_any()),
    question("fit", page::FIT, || view! { <Fit /> }.into_any()),
];

const fn question(id: &'static str, title: &'static str, view: fn() -> AnyView) -> Question {
    Question { id, title, view }
}

impl Question {
    /// The question with its heading.
    #[must_use]
    pub fn whole(self) -> AnyView {
        let Self { id, title, view } = self;
        view! { <Section id title>{view()}</Section> }.into_any()
    }
}
