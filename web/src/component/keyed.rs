//! A list that keeps its elements while it changes.

use leptos::prelude::*;

/// Makes what one of a list shows.
type Make = Box<dyn FnOnce() -> AnyView + Send>;

/// Follows a list: what stays in it, by its key, keeps its elements and what is going on in them.
pub fn keyed<T: Send + 'static>(
    list: impl Fn() -> Vec<T> + Send + Sync + 'static,
    key: fn(&T) -> String,
    view: impl Fn(T) -> AnyView + Copy + Send + Sync + 'static,
) -> AnyView {
    let one = move |of: T| (key(&of), Box::new(move || view(of)) as Make);
    follow(Box::new(move || list().into_iter().map(one).collect()))
}

/// The same for any list, so that the page holds it only once.
fn follow(list: Box<dyn Fn() -> Vec<(String, Make)> + Send + Sync>) -> AnyView {
    view! { <For each=list key=|(key, _)| key.clone() children=|(_, make)| make() /> }.into_any()
}
