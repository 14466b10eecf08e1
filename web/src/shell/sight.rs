//! The view in sight: only that one is mounted.

use super::attention::{Attention, Waits};
use super::builds::Builds;
use super::kits::Kits;
use super::more::More;
use super::overview::Overview;
use super::tiles::Tiles;
use crate::app::{Landing, use_app};
use crate::component::keyed;
use crate::platform;
use crate::question::catalogue::CatalogueCheck;
use crate::question::registry::{self, Question};
use crate::question::setup::Setup;
use crate::text::{catalogue, page, shell};
use leptos::prelude::*;

/// Id of the heading of the view in sight.
const HEADING: &str = "view-title";

/// What can be in sight.
#[derive(Clone, Copy)]
pub(super) enum View {
    /// Which kit it is, in place of the overview on a first visit.
    Kits,
    Overview,
    Build,
    Share,
    More,
    Catalogue,
    Question(&'static Question),
}

impl View {
    /// The view of that key; the overview for one that is not known. Where the build stands beside
    /// every view it has none of its own.
    pub(super) fn of(key: &str, wide: bool, asks_kit: bool) -> Self {
        match key {
            "build" if !wide => Self::Build,
            "share" => Self::Share,
            "more" => Self::More,
            "catalogue" => Self::Catalogue,
            _ => match registry::find(key) {
                Some(question) => Self::Question(question),
                None if asks_kit => Self::Kits,
                None => Self::Overview,
            },
        }
    }

    /// Its key in the address.
    pub(super) fn key(self) -> &'static str {
        match self {
            Self::Overview => "",
            Self::Kits => "kits",
            Self::Build => "build",
            Self::Share => "share",
            Self::More => "more",
            Self::Catalogue => "catalogue",
            Self::Question(question) => question.id,
        }
    }

    /// Its name.
    pub(super) fn title(self) -> &'static str {
        match self {
            Self::Overview => page::OVERVIEW,
            Self::Kits => shell::WHICH_KIT,
            Self::Build => page::ON_IT,
            Self::Share => page::SHARE,
            Self::More => page::MORE,
            Self::Catalogue => catalogue::TITLE,
            Self::Question(question) => question.title,
        }
    }

    fn view(self) -> AnyView {
        match self {
            Self::Overview => view! { <Overview /> }.into_any(),
            Self::Kits => view! { <Kits /> }.into_any(),
            Self::Build => view! {
                <Tiles />
                <Attention />
                <Setup />
            }
            .into_any(),
            Self::Share => view! { <Builds /> }.into_any(),
            Self::More => view! { <More /> }.into_any(),
            Self::Catalogue => view! { <CatalogueCheck /> }.into_any(),
            // What goes together says itself what does not.
            Self::Question(question) if question.id == "fit" => view! {
                <Waits />
                {(question.view)()}
            }
            .into_any(),
            Self::Question(question) => view! {
                <Attention />
                {(question.view)()}
            }
            .into_any(),
        }
    }
}

impl PartialEq for View {
    fn eq(&self, other: &Self) -> bool {
        self.key() == other.key()
    }
}

/// The view in sight, with its heading.
#[component]
pub(super) fn InSight(wide: RwSignal<bool>) -> impl IntoView {
    let app = use_app();
    let sight = Memo::new(move |_| View::of(&app.see(), wide.get(), app.asks_kit()));
    Effect::new(move |_| {
        platform::set_title(&match sight.get() {
            View::Overview => shell::NAME.into(),
            sight => shell::title(sight.title()),
        });
    });
    Effect::new(move |_| {
        let Landing { count, spot } = app.landing();
        if count > 0 {
            // Once the view is made. A new one begins with its heading, which is read out by that.
            platform::later(0, move || spot.unwrap_or_default().restore(HEADING));
        }
    });
    let one = move |sight: View| {
        // The overview begins with what it shows; its name is for who cannot see that.
        let class = if sight == View::Overview { "aloud" } else { "view-title" };
        view! {
            <section class="view" id=format!("view-{}", sight.key()) aria-labelledby=HEADING>
                // Not a stop of its own, but a place to go on from.
                <h1 id=HEADING class=class tabindex="-1">
                    {sight.title()}
                </h1>
                {sight.view()}
            </section>
        }
        .into_any()
    };
    // Keyed, so that no view takes over the elements of the one before it.
    keyed(move || vec![sight.get()], |sight| sight.key().into(), one)
}
