//! How long on the charger?
//!
//! Worked out when this question is on the page; where a charger is not to be used, it says why,
//! and no time.

mod curve;
mod found;
mod offers;
mod said;

#[cfg(test)]
mod laws;

use crate::ask::{input_of, side_by_side};
use crate::component::{Headline, caution, fold, headline, notice};
use crate::dom::{Node, el, live, said as follows};
use crate::later::sure::sure;
use crate::later::working::list;
use crate::state::{App, Kept};
use crate::text::{Style, page};
use found::Found;
use pitchline_core::band::Quantity;
use pitchline_core::{Build, Slot, explain_charge};
use said::With;

/// What a charge ends at, as a share.
type Until = fn(&Build) -> f64;
/// Says something of the charges.
type Say = fn(&Found, &With, Style) -> Headline;

pub(super) fn charge(app: App) -> Node {
    let found = Kept::new(app, Found::new);
    let fields = el("div")
        .class("fields")
        .with(input_of(app, Slot::Ride, "charge_from_percent"))
        .with(input_of(app, Slot::Ride, "charge_to_percent"))
        .with(input_of(app, Slot::Ride, "charge_time_h"))
        .with(input_of(app, Slot::Place, "charge_air_c"))
        .with(input_of(app, Slot::Place, "energy_price_kwh"));
    let warned = found.clone();
    let warnings = move || {
        let warnings = warned.get().map(|found| said::warnings(&found, app.style()));
        warnings.unwrap_or_default().into_iter().map(notice).collect()
    };
    Node::from(vec![
        el("div").attr("role", "status").with(live(move || app.key(), warnings)).into(),
        where_allowed(&found, times),
        fields.into(),
        caution(page::CAUTION_CHARGE),
        where_allowed(&found, |found| {
            Node::from(vec![
                curve::drawn(found, &curve::CHARGE),
                curve::drawn(found, &curve::CURRENT),
                sure(found.app, Quantity::ChargeTime),
            ])
        }),
        offers::offers(&found),
    ])
}

/// What is there only while the board's charger may be used.
fn where_allowed(found: &Kept<Found>, view: fn(&Kept<Found>) -> Node) -> Node {
    let (asked, found) = (found.clone(), found.clone());
    let may = move || asked.get().is_some_and(|found| found.charges.is_ok());
    let key = move || if may() { "yes".into() } else { String::new() };
    live(key, move || {
        let may = found.get().is_some_and(|found| found.charges.is_ok());
        if may { view(&found) } else { Node::None }
    })
}

/// How long, how much, and when to plug in.
fn times(found: &Kept<Found>) -> Node {
    let told = found.clone();
    let plug_in = move || {
        told.get().map(|found| said::plug_in(&found, &With::now(told.app))).unwrap_or_default()
    };
    let headlines = vec![
        answer(found, said::full, Some(|_| 1.0)),
        answer(found, said::enough, Some(|build| build.ride.charge_to)),
        answer(found, said::leaving, None),
        answer(found, said::wall, None),
    ];
    Node::from(vec![
        side_by_side(found.app, Node::from(headlines)),
        el("p").class("facts").with(follows(plug_in)).into(),
    ])
}

fn answer(found: &Kept<Found>, say: Say, until: Option<Until>) -> Node {
    let (now, worked, app) = (found.clone(), found.clone(), found.app);
    let now = move || {
        now.get().map(|found| say(&found, &With::now(app), app.style())).unwrap_or_default()
    };
    let working = until.map(|until| {
        let inside = move || {
            let worked = worked.clone();
            let steps = move || {
                let build = worked.get().map(|found| found.build);
                let steps = build.map(|b| explain_charge(&b, b.ride.charge_from, until(&b)));
                steps.and_then(Result::ok).unwrap_or_default()
            };
            list(app, page::CHARGED, steps)
        };
        fold("working", "Working", inside)
    });
    el("div").class("answer").with(headline(now)).with(working).into()
}
