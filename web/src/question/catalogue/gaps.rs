//! What parts leave out: prices, masses, and values that are assumed instead.

use crate::app::use_app;
use crate::component::{Fold, PagedTable, Row};
use crate::text::{Style, catalogue as text, words};
use leptos::prelude::*;
use pitchline_core::catalog::{Catalog, PartCheck};

/// How many parts have no price and no mass, in a sentence or two.
pub(super) fn missing(catalog: &Catalog) -> String {
    let parts = catalog.check_parts();
    let count = |of: fn(&PartCheck) -> bool| parts.iter().filter(|part| of(part)).count() as u64;
    let price = match count(|part| part.no_price) {
        0 => "Every part has a price.".into(),
        n => format!("{} without a price.", text::count(n, "part", "parts")),
    };
    let assumed = match parts.iter().map(|part| part.assumed.len() as u64).sum() {
        0 => "Nothing is assumed.".into(),
        n => format!("{} assumed.", text::count(n, "value", "values")),
    };
    [price, assumed].join(" ")
}

#[component]
pub(super) fn Gaps() -> impl IntoView {
    let app = use_app();
    let unpriced = Memo::new(move |_| unpriced(&app.catalog()));
    let assumed = Memo::new(move |_| assumed(&app.catalog(), app.style()));
    let none = move || unpriced.with(Vec::is_empty) && assumed.with(Vec::is_empty);
    let parts = |number: usize| text::count(number as u64, "part", "parts");
    let priced = move || format!("Prices and weights: {}", parts(unpriced.with(Vec::len)));
    let taken = move || format!("Assumed values: {}", parts(assumed.with(Vec::len)));
    let folds = move || {
        if none() {
            return view! { <p class="facts">{text::NO_GAPS}</p> }.into_any();
        }
        view! {
            <p class="facts">{text::GAPS_WHY}</p>
            <Fold class="more" title=Signal::derive(priced)>
                <PagedTable
                    caption="Parts without a price or a weight".into()
                    heads=&["Part", "Left out"]
                    count=Signal::derive(move || unpriced.with(Vec::len))
                    row=rows(unpriced)
                />
            </Fold>
            <Fold class="more" title=Signal::derive(taken)>
                <PagedTable
                    caption="Keys that parts leave out, and the value assumed for each".into()
                    heads=&["Part", "Key and value"]
                    count=Signal::derive(move || assumed.with(Vec::len))
                    row=rows(assumed)
                />
            </Fold>
        }
        .into_any()
    };
    view! {
        <h2>{text::GAPS}</h2>
        {folds}
    }
}

fn rows(list: Memo<Vec<Vec<String>>>) -> Row {
    Box::new(move |at| list.with(|list| list.get(at).cloned()).unwrap_or_default())
}

fn name(part: &PartCheck) -> String {
    format!("{} ({})", part.part.name, words::kind(part.kind).to_ascii_lowercase())
}

fn unpriced(catalog: &Catalog) -> Vec<Vec<String>> {
    let row = |part: &PartCheck| {
        let left_out = match (part.no_price, part.no_mass) {
            (true, true) => "price, weight",
            (true, false) => "price",
            (false, true) => "mass",
            (false, false) => return None,
        };
        Some(vec![name(part), left_out.into()])
    };
    catalog.check_parts().iter().filter_map(row).collect()
}

fn assumed(catalog: &Catalog, style: Style) -> Vec<Vec<String>> {
    let row = |part: &PartCheck| {
        (!part.assumed.is_empty()).then(|| vec![name(part), text::assumed(&part.assumed, style)])
    };
    catalog.check_parts().iter().filter_map(row).collect()
}
