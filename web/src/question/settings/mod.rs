//! What do I set? The values for the controller, each with its reason.

mod feel;
mod modes;

use super::registry::Line;
use super::{LeadToWires, hint, lead_to};
use crate::app::{App, Found, use_app};
use crate::component::{Caution, Fold, Lead};
use crate::text::{Answer, Style, settings as words};
use feel::{Feel, GaugeCard};
use leptos::prelude::*;
use modes::Modes;
use pitchline_core::{Build, Recommended, settings, with_settings};
use std::sync::Arc;

/// The recommended settings, and the board that they are for.
struct Set {
    of: Arc<Found>,
    found: Vec<Recommended>,
}

/// Each is worked out once: only it itself is the same.
impl PartialEq for Set {
    fn eq(&self, other: &Self) -> bool {
        std::ptr::eq(self, other)
    }
}

impl Set {
    fn now(app: App) -> Option<Arc<Self>> {
        let of = app.found()?;
        let found = settings(&of.draft, &of.build);
        Some(Arc::new(Self { of, found }))
    }

    fn rows(&self, style: Style) -> Vec<Vec<String>> {
        let board = board(&self.of.build);
        self.found.iter().map(|one| words::row(one, board, style)).collect()
    }

    /// Whether the controller is set otherwise.
    fn differs(&self) -> bool {
        with_settings(&self.of.draft, &self.found) != self.of.draft
    }
}

fn board(build: &Build) -> words::Board {
    words::Board {
        motors: build.truck.motor_count,
        series: build.pack.series,
        convention: build.controller.convention,
    }
}

/// What is set, worked out once for each change of the build.
type Now = Memo<Option<Arc<Set>>>;

/// The answer in one line.
#[must_use]
pub fn line(app: App) -> Line {
    let found = app.found().map(|found| settings(&found.draft, &found.build));
    found.map(|found| Line::plain(words::line(&found, app.style()))).unwrap_or_default()
}

/// The view.
#[must_use]
pub fn view() -> AnyView {
    let app = use_app();
    let now: Now = Memo::new(move |_| Set::now(app));
    let waits = Signal::derive(move || app.waits());
    let lead = Memo::new(move |_| {
        let style = app.style();
        now.with(|now| now.as_ref().map_or_else(Answer::none, |set| words::lead(&set.found, style)))
    });
    view! {
        <Lead waits answer=lead />
        <Card now />
        <Buttons now />
        <LeadToWires />
        <Caution text=words::CAUTION />
        <Modes now />
        <Fold class="evidence" title=words::FEEL hint=hint(feel::hint)>
            <Feel now />
        </Fold>
        <Fold class="evidence" title=words::GAUGE hint=hint(feel::gauge_hint)>
            <GaugeCard />
        </Fold>
    }
    .into_any()
}

/// The settings, each with its reason and the way to what is missing.
#[component]
fn Card(now: Now) -> impl IntoView {
    let app = use_app();
    let each = move || {
        let set = now.get()?;
        let rows = set.rows(app.style()).into_iter().zip(&set.found);
        Some(rows.map(|(row, one)| line_of(row, one)).collect::<Vec<_>>())
    };
    view! { <ul class="settings">{each}</ul> }
}

fn line_of(row: Vec<String>, of: &Recommended) -> AnyView {
    let [name, value, why] = <[String; 3]>::try_from(row).unwrap_or_default();
    let missing = of.missing.first();
    let place = missing.and_then(|(slot, key)| Some((*slot, slot.kind().field_index(key)?)));
    let enter = place.map(enter);
    let why = (!why.is_empty()).then(|| view! { <small>{why} " " {enter}</small> });
    view! {
        <li>
            <span>{name}</span>
            " "
            <strong>{value}</strong>
            " "
            {why}
        </li>
    }
    .into_any()
}

/// The way to an input that is missing.
fn enter(place: crate::app::Place) -> impl IntoView {
    let go = move |_| lead_to(place);
    view! {
        <button type="button" class="lead-to" on:click=go>
            {words::ENTER}
        </button>
    }
}

/// Takes the settings, and copies them.
#[component]
fn Buttons(now: Now) -> impl IntoView {
    let app = use_app();
    let differs = Memo::new(move |_| now.with(|now| now.as_ref().is_some_and(|set| set.differs())));
    let take = move || {
        differs.get().then(|| {
            view! {
                <button type="button" on:click=move |_| app.set_controller(false)>
                    {words::USE}
                </button>
            }
        })
    };
    let stamp = move || untrack(|| vec![app.conditions().replace('\n', "; "), app.made()]);
    let text = move |_| {
        if let Some(set) = now.get_untracked() {
            let style = untrack(|| app.style());
            app.copy(&words::as_text(&set.rows(style), &stamp()));
        }
    };
    let csv = move |_| {
        if let Some(set) = now.get_untracked() {
            app.copy(&words::as_csv(
                &set.found,
                board(&set.of.build),
                &stamp(),
                untrack(|| app.style()),
            ));
        }
    };
    view! {
        <div class="row">
            {take}
            <button type="button" on:click=text>
                {words::COPY}
            </button>
            <button type="button" on:click=csv>
                {words::COPY_CSV}
            </button>
        </div>
    }
}
