//! What is said of the charges of now.

use super::Now;
use super::found::{Found, With};
use crate::app::use_app;
use crate::text::{Answer, Style, charge as words};
use leptos::prelude::*;

/// Says something of the charges.
pub(super) type Say<T> = fn(&Found, &With, Style) -> T;

/// What is said now; empty where there is nothing to say.
pub(super) fn said<T: Default + PartialEq + Send + Sync + 'static>(
    found: Now,
    say: Say<T>,
) -> Memo<T> {
    let app = use_app();
    Memo::new(move |_| {
        let (with, style) = (With::now(app), app.style());
        found.get().map(|found| say(&found, &with, style)).unwrap_or_default()
    })
}

/// The largest: how long, or that the pack is not to be charged.
pub(super) fn lead(found: &Found, with: &With, style: Style) -> Answer {
    match &found.charges {
        Ok(charges) => words::full(&charges.full, with.full.about(charges.full.time_s), style),
        Err(refusal) => words::refused(*refusal),
    }
}

/// What must not be done, and why; empty where nothing is wrong.
pub(super) fn warning(found: &Found, _: &With, style: Style) -> String {
    match &found.charges {
        Err(refusal) => words::why_refused(*refusal, style),
        Ok(charges) => {
            charges.too_strong.map_or_else(String::new, |strong| words::too_strong(strong, style))
        }
    }
}

/// What to look for where no charger on offer is for the pack; empty where one is.
pub(super) fn none_fits(found: &Found, _: &With, style: Style) -> String {
    let build = &found.build;
    if found.is_wrong() && found.instead.is_none() {
        words::none_fits(build.full_pack_v(), build.cells_charge_a(), style)
    } else {
        String::new()
    }
}

pub(super) fn plug_in(found: &Found, with: &With, _: Style) -> String {
    let full = found.charges().map(|charges| with.full.about(charges.full.time_s));
    full.map_or_else(String::new, words::plug_in)
}

pub(super) fn enough(found: &Found, with: &With, _: Style) -> Answer {
    let target = found.build.ride.charge_to;
    let answer = |enough: &_, band| words::enough(enough, target, band);
    found.charges().map_or_else(Answer::default, |charges| {
        answer(&charges.enough, with.enough.about(charges.enough.time_s))
    })
}

pub(super) fn plug_in_for(found: &Found, with: &With, _: Style) -> String {
    let target = found.build.ride.charge_to;
    found.charges().map_or_else(String::new, |charges| {
        let enough = &charges.enough;
        words::plug_in_for(enough, target, with.enough.about(enough.time_s))
    })
}

pub(super) fn leaving(found: &Found, _: &With, style: Style) -> Answer {
    let wait_s = found.build.ride.charge_time_s;
    found.charges().map_or_else(Answer::default, |charges| words::leaving(charges, wait_s, style))
}

pub(super) fn wall(found: &Found, with: &With, style: Style) -> Answer {
    let wall =
        |charges: &pitchline_core::Charging| words::wall(&charges.full, &with.currency, style);
    found.charges().map_or_else(Answer::default, wall)
}

/// What each fold holds, in a few words.
pub(super) mod hint {
    use super::*;

    pub(in super::super) fn goals(found: &Found, with: &With, _: Style) -> String {
        let target = found.build.ride.charge_to;
        found.charges().map_or_else(String::new, |charges| {
            words::goals(charges, target, with.enough.about(charges.enough.time_s))
        })
    }

    pub(in super::super) fn chargers(found: &Found, _: &With, _: Style) -> String {
        let offers: Vec<_> = found.offers.iter().map(|offer| offer.does).collect();
        words::chargers(&offers)
    }

    pub(in super::super) fn current(found: &Found, _: &With, style: Style) -> String {
        found.charges().map_or_else(String::new, |charges| words::current(&charges.full, style))
    }

    pub(in super::super) fn sure(found: &Found, with: &With, _: Style) -> String {
        let full = found.charges().map(|charges| with.full.about(charges.full.time_s));
        full.map_or_else(String::new, words::band)
    }

    pub(in super::super) fn cost(found: &Found, with: &With, style: Style) -> String {
        found
            .charges()
            .map_or_else(String::new, |charges| words::cost(&charges.full, &with.currency, style))
    }
}
