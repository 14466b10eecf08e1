//! The workings of this question, each folded away within one fold.

use super::view::{Say, told};
use super::{belt, deck, lean};
use crate::app::{Fit, use_app};
use crate::component::Fold;
use crate::question::{Working, WorkingSteps};
use crate::text::{Answer, fit as words, page};
use leptos::prelude::*;
use pitchline_core::fit::{Clearance, FrameHeadline, frame_working};
use pitchline_core::{Headline, Step};

const BELT: [(Headline, Say<Answer>); 3] = [
    (Headline::BeltCentre, belt::centre),
    (Headline::BeltPull, belt::pull),
    (Headline::BeltTension, belt::tension),
];

/// Of deck and enclosure; then of the lean, each with the answer that its last step gives.
pub(super) const FRAME: [(FrameHeadline, Say<Answer>); 7] = [
    (FrameHeadline::Road, deck::road),
    (FrameHeadline::BumpRoad, deck::bump),
    (FrameHeadline::Sag, deck::sag),
    (FrameHeadline::BoxRoom, deck::inside),
    (FrameHeadline::Turn, lean::turn),
    (FrameHeadline::FirstBite, lean::bite),
    (FrameHeadline::Riser, lean::riser),
];

/// All of them.
#[component]
pub(super) fn Workings() -> impl IntoView {
    let name = |say: Say<Answer>| {
        let answer = told(say);
        Signal::derive(move || answer.with(|answer| answer.name.clone()))
    };
    let belt = move |(which, say): (Headline, Say<Answer>)| {
        view! { <Working which title=name(say) /> }
    };
    let frame = move |(which, say): (FrameHeadline, Say<Answer>)| {
        view! { <FrameWorking title=name(say) steps=move |found| working(found, which) /> }
    };
    view! {
        <Fold class="evidence" title=page::WORKING_FOLD hint=page::WORKING_HINT>
            {BELT.map(belt).collect_view()}
            <FrameWorking title=words::CLEARANCES steps=clearances />
            {FRAME.map(frame).collect_view()}
        </Fold>
    }
}

/// A working about frame, deck and enclosure.
#[component]
fn FrameWorking(
    #[prop(into)] title: Signal<String>,
    steps: impl Fn(&Fit) -> Vec<Step> + Clone + Send + Sync + 'static,
) -> impl IntoView {
    let app = use_app();
    let steps = move || app.fit().map(|found| steps(&found)).unwrap_or_default();
    view! { <WorkingSteps title first=page::STEPPED steps /> }
}

/// The working of a headline.
fn working(found: &Fit, which: FrameHeadline) -> Vec<Step> {
    frame_working(&found.draft, &found.build, found.together.centre_m, which)
}

/// The workings of all clearances, one after the other.
fn clearances(found: &Fit) -> Vec<Step> {
    let one = |c: &Clearance| working(found, FrameHeadline::Clearance(c.between));
    found.together.clearances.iter().flat_map(one).collect()
}
