//! The three answers that everyone asks for first.

use crate::app::{Banded, see, use_app};
use crate::component::AnswerView;
use crate::question::{Say, changed, say};
use crate::text::{answer, page};
use leptos::prelude::*;
use pitchline_core::Headline;

/// Three answers, each leading to its question.
#[component]
pub(super) fn Tiles() -> impl IntoView {
    let app = use_app();
    let tile = |to: &'static str, which: Headline, says: Say| {
        let (answer, change) = (say(app, says), changed(app, which));
        view! {
            <a class="tile" href=see::lead(to)>
                <AnswerView answer change />
            </a>
        }
    };
    let tiles = [
        tile("fast", Headline::TopSpeed, |app, found, style| {
            let band = app.sure(Banded::Speed).about(found.answers.speed.flat_full.speed_m_s);
            answer::top_speed(&found.answers, band, style)
        }),
        tile("steep", Headline::ClimbSlow, |app, found, style| {
            let band = app.sure(Banded::Hill).about(found.answers.climb.slow.grade);
            answer::slow_hill(&found.answers, band, style)
        }),
        tile("far", Headline::Distance, |app, found, style| {
            let reach = &found.answers.distance.cruise;
            let band = app.sure(Banded::Distance).about(reach.distance_m);
            answer::cruise_distance(&found.answers, band, style)
        }),
    ];
    view! {
        <nav class="strip" class:waits=move || app.waits() aria-label=page::ANSWERS>
            {tiles.collect_view()}
        </nav>
    }
}
