//! The settings of each ride mode.

use super::{Now, Set};
use crate::app::{Found, use_app};
use crate::chart::{Grid, Table};
use crate::text::settings as words;
use leptos::prelude::*;
use pitchline_core::{ModeSettings, Slot, mode_settings};

/// The order of the core's list; none is the first ride.
const MODES: [Option<Slot>; 4] =
    [Some(Slot::ModeHigh), Some(Slot::ModeMid), Some(Slot::ModeLow), None];

/// Every mode by its name, the gentlest first.
pub(super) fn named(set: &Set) -> Vec<(String, ModeSettings)> {
    let Found { draft, build, .. } = &*set.of;
    let modes = mode_settings(draft, build, &set.found);
    let name = |slot: Option<Slot>| {
        let own = slot.map_or("", |slot| draft.record(slot).name.as_str());
        words::mode_name(slot, own)
    };
    MODES.into_iter().map(name).zip(modes).rev().collect()
}

/// The table of them.
#[component]
pub(super) fn Modes(now: Now) -> impl IntoView {
    let app = use_app();
    let grid = move || {
        now.get().map(|set| {
            let (mut heads, modes): (Vec<_>, Vec<_>) = named(&set).into_iter().unzip();
            heads.insert(0, words::MODES_OF.into());
            let rows = words::mode_rows(&modes, app.style());
            let caption = words::MODES.into();
            view! { <Grid table=Table { label: String::new(), caption, heads, rows } /> }
        })
    };
    view! {
        <div class="chart modes">{grid}</div>
        <p class="help">{words::MODES_HELP}</p>
    }
}
