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
use crate::later::working::list;
use crate::state::{App, Kept};
use crate::text::{Style, page};
use found::Found;
use pitchline_core::{Build, Slot, explain_charge};

/// What a charge ends at, as a share.
type Until = fn(&Build) -> f64;
/// Says something of the charges.
type Say = fn(&Found, Style, &str) -> Headline;

pub(super) fn charge(app: App) -> Node {
    let found = Kept::new(app, Found::new);
    let fields = el("div")
        .class("fields")
        .with(input_of(app, Slot::Ride, "charge_from_percent"))
        .with(input_of(app, Slot::Ride, "charge_to_percent"))
        .with(input_of(app, Slot::Ride, "charge_time_h"))
        .with(input_of(app, Slot::Place, "energy_price_kwh"));
    let (warned, asked) = (found.clone(), found.clone());
    let warnings = move || {
        let warnings = warned.get().map(|found| said::warnings(&found, app.style()));
        warnings.unwrap_or_default().into_iter().map(notice).collect()
    };
    // Made anew only where it may charge, and before it may not.
    let may = move || {
        let may = asked.get().is_some_and(|found| found.charges.is_ok());
        if may { "yes" } else { "no" }.into()
    };
    let charging = found.clone();
    let inside = move || {
        let may = charging.get().is_some_and(|found| found.charges.is_ok());
        if may { charges(&charging) } else { Node::None }
    };
    Node::from(vec![
        fields.into(),
        el("div").attr("role", "status").with(live(move || app.key(), warnings)).into(),
        live(may, inside),
        caution(page::CAUTION_CHARGE),
        offers::offers(&found),
    ])
}

fn charges(found: &Kept<Found>) -> Node {
    let told = found.clone();
    let plug_in =
        move || told.get().map(|found| said::plug_in(&found, told.app.style())).unwrap_or_default();
    let headlines = vec![
        answer(found, said::full, Some(|_| 1.0)),
        answer(found, said::enough, Some(|build| build.ride.charge_to)),
        answer(found, said::leaving, None),
        answer(found, said::wall, None),
    ];
    Node::from(vec![
        side_by_side(found.app, Node::from(headlines)),
        el("p").class("facts").with(follows(plug_in)).into(),
        curve::drawn(found, curve::CHARGE),
        curve::drawn(found, curve::CURRENT),
    ])
}

fn answer(found: &Kept<Found>, say: Say, until: Option<Until>) -> Node {
    let (now, worked, app) = (found.clone(), found.clone(), found.app);
    let now = move || {
        let currency = &app.catalog().currency;
        now.get().map(|found| say(&found, app.style(), currency)).unwrap_or_default()
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
