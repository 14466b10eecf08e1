//! One of a few, picked from a list.

use super::keyed::keyed;
use leptos::prelude::*;

/// The options: value and words; and the value that is chosen.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Options {
    /// Value and words of each.
    pub list: Vec<(String, String)>,
    /// The chosen value.
    pub chosen: String,
}

/// A label and a list.
#[component]
pub fn Choice(
    id: String,
    #[prop(into)] label: Signal<String>,
    #[prop(into)] options: Signal<Options>,
    /// Told the value that was picked.
    #[prop(into)]
    picked: Callback<String>,
    /// A line below it; empty where the label says it all.
    #[prop(optional)]
    help: &'static str,
) -> impl IntoView {
    let help_id = format!("{id}-help");
    let described = (!help.is_empty()).then(|| help_id.clone());
    let option = move |(value, words): (String, String)| {
        let own = value.clone();
        let chosen = move || options.with(|options| options.chosen == own);
        view! { <option value=value prop:selected=chosen>{words}</option> }.into_any()
    };
    view! {
        <div class="field">
            <label for=id.clone()>{label}</label>
            <select
                id=id
                aria-describedby=described
                on:change=move |e| picked.run(event_target_value(&e))
            >
                {keyed(
                    move || options.with(|options| options.list.clone()),
                    |(value, words)| format!("{value}\n{words}"),
                    option,
                )}
            </select>
            {(!help.is_empty()).then(|| view! { <p class="help" id=help_id>{help}</p> })}
        </div>
    }
}
