//! Every fault of the file: whose it is, what is wrong, what would be right.

use crate::app::use_app;
use crate::component::{PagedTable, Row};
use crate::text::catalogue as text;
use leptos::prelude::*;
use pitchline_core::Error;

#[component]
pub(super) fn Faults() -> impl IntoView {
    let app = use_app();
    let faults = Memo::new(move |_| app.loaded().faults);
    let cells = move |fault: &Error| {
        let (place, style) = (app.catalog().place(fault), app.style());
        vec![
            text::whose(&place),
            text::wrong(&place, &fault.reason, style),
            text::right(&fault.reason, style),
        ]
    };
    let list = move || {
        if faults.with(Vec::is_empty) {
            return view! { <p class="facts">{text::NO_FAULTS}</p> }.into_any();
        }
        let row: Row =
            Box::new(move |at| faults.with(|all| all.get(at).map(cells)).unwrap_or_default());
        view! {
            <PagedTable
                caption=text::FAULTS_CAPTION.into()
                heads=&text::FAULTS_HEADS
                count=Signal::derive(move || faults.with(Vec::len))
                row
            />
        }
        .into_any()
    };
    view! {
        <h2>{text::FAULTS}</h2>
        {list}
    }
}
