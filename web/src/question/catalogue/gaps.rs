//! What parts leave out: prices, masses, and values that are assumed instead.

use crate::app::use_app;
use crate::component::{Fold, PagedTable, Row};
use crate::text::{Style, catalogue as text};
use leptos::prelude::*;
use pitchline_core::catalog::{Catalog, PartCheck};

/// How many parts have no price and no mass, in a sentence or two.
pub(super) fn missing(catalog: &Catalog) -> String {
    let parts = catalog.check_parts();
    let unpriced = parts.iter().filter(|part| part.no_price).count() as u64;
    let assumed = parts.iter().map(|part| part.assumed.len() as u64).sum();
    text::gaps(unpriced, assumed)
}

#[component]
pub(super) fn Gaps() -> impl IntoView {
    let app = use_app();
    let unpriced = Memo::new(move |_| unpriced(&app.catalog()));
    let assumed = Memo::new(move |_| assumed(&app.catalog(), app.style()));
    let none = move || unpriced.with(Vec::is_empty) && assumed.with(Vec::is_empty);
    let priced = move || text::unpriced_fold(unpriced.with(Vec::len) as u64);
    let taken = move || text::assumed_fold(assumed.with(Vec::len) as u64);
    let folds = move || {
        if none() {
            return view! { <p class="facts">{text::NO_GAPS}</p> }.into_any();
        }
        view! {
            <p class="facts">{text::GAPS_WHY}</p>
            <Fold class="more" title=Signal::derive(priced)>
                <PagedTable
                    caption=text::UNPRICED_CAPTION.into()
                    heads=&text::UNPRICED_HEADS
                    count=Signal::derive(move || unpriced.with(Vec::len))
                    row=rows(unpriced)
                />
            </Fold>
            <Fold class="more" title=Signal::derive(taken)>
                <PagedTable
                    caption=text::ASSUMED_CAPTION.into()
                    heads=&text::ASSUMED_HEADS
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
    text::part(&part.part.name, part.kind)
}

fn unpriced(catalog: &Catalog) -> Vec<Vec<String>> {
    let row = |part: &PartCheck| {
        text::left_out(part.no_price, part.no_mass).map(|what| vec![name(part), what.into()])
    };
    catalog.check_parts().iter().filter_map(row).collect()
}

fn assumed(catalog: &Catalog, style: Style) -> Vec<Vec<String>> {
    let row = |part: &PartCheck| {
        (!part.assumed.is_empty()).then(|| vec![name(part), text::assumed(&part.assumed, style)])
    };
    catalog.check_parts().iter().filter_map(row).collect()
}
