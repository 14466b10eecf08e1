//! Which combinations on offer do not fit, kit by kit.

use crate::app::{App, Job, Task, use_app};
use crate::component::{Fold, PagedTable, Row, SHOWN, keyed};
use crate::text::catalogue as text;
use leptos::prelude::*;
use pitchline_core::catalog::{Group, KitCheck, KitReport};
use pitchline_core::fit::Severity;
use std::sync::Arc;

/// What was found of each kit so far.
pub(super) type Reports = RwSignal<Vec<Arc<KitReport>>>;

/// The kits of the catalogue, checked one after the other in small pieces.
pub(super) fn checked() -> (Reports, Task) {
    let (app, kits) = (use_app(), Reports::default());
    (kits, Task::new(move || _ = app.catalog(), move || Some(job(app, kits))))
}

fn job(app: App, kits: Reports) -> Job {
    let catalog = app.catalog();
    kits.set(Vec::new());
    let mut next = 0;
    let mut check: Option<KitCheck> = None;
    Box::new(move || {
        let Some(now) = check.as_mut() else {
            check = catalog.kits.get(next).map(|kit| KitCheck::new(&catalog, kit));
            return if check.is_some() { share(next, 0.0, catalog.kits.len()) } else { 1.0 };
        };
        if now.step() {
            return share(next, now.share(), catalog.kits.len());
        }
        let report = Arc::new(now.report());
        kits.update(|kits| kits.push(report));
        check = None;
        next += 1;
        share(next, 0.0, catalog.kits.len())
    })
}

/// The share that is done, with so many kits done and so much of the next.
fn share(done: usize, part: f64, of: usize) -> f64 {
    (done as f64 + part) / of.max(1) as f64
}

/// Whether all of it fits, in a sentence.
pub(super) fn fits(kits: &[Arc<KitReport>], busy: bool) -> String {
    if busy {
        return String::new();
    }
    if kits.is_empty() {
        return text::NO_KITS.into();
    }
    let sum = |of: fn(&KitReport) -> u64| kits.iter().map(|kit| of(kit)).sum::<u64>();
    let whole = kits.iter().all(|kit| kit.checked == kit.combinations);
    match (sum(|kit| kit.misfitting), whole) {
        (0, true) => text::ALL_FIT.into(),
        (0, false) => "Every combination checked fits.".into(),
        (n, _) => {
            let checked = if whole { "" } else { " checked" };
            let all = text::count(sum(|kit| kit.checked), "combination", "combinations");
            format!("{} of {all}{checked} don't fit.", text::big(n))
        }
    }
}

#[component]
pub(super) fn Kits(kits: Reports) -> impl IntoView {
    let troubled = Memo::new(move |_| {
        let mut kits = kits.get();
        kits.retain(|kit| !kit.groups.is_empty());
        kits
    });
    let first = move || troubled.get().into_iter().take(SHOWN).collect();
    let more = move || {
        let more = troubled.with(Vec::len).saturating_sub(SHOWN);
        (more > 0).then(|| {
            let more = text::count(more as u64, "more kit has", "more kits have");
            view! { <p class="facts">{format!("{more} misfits. Correct these first.")}</p> }
        })
    };
    let none = Memo::new(move |_| kits.with(Vec::is_empty));
    let table = move || {
        (!none.get()).then(|| {
            let row: Row =
                Box::new(move |at| kits.with(|kits| kits.get(at).map(told)).unwrap_or_default());
            view! {
                <PagedTable
                    caption="Combinations of each kit".into()
                    heads=&["Kit", "Combinations", "Don't fit", "Tight"]
                    count=Signal::derive(move || kits.with(Vec::len))
                    row
                />
            }
        })
    };
    view! {
        <h2>{text::KITS}</h2>
        <p class="facts">{text::KITS_WHY}</p>
        {table}
        // By the report itself, so that what was opened stays open while others come in.
        {keyed(first, |kit| Arc::as_ptr(kit).addr().to_string(), |kit| view! { <Misfits kit /> }.into_any())}
        {more}
    }
}

fn told(kit: &Arc<KitReport>) -> Vec<String> {
    let offered = if kit.checked == kit.combinations {
        text::big(kit.combinations)
    } else {
        format!(
            "checked {} of {}, spread evenly",
            text::big(kit.checked),
            text::big(kit.combinations)
        )
    };
    vec![kit.name.clone(), offered, text::big(kit.misfitting), text::big(kit.tight)]
}

/// What does not fit in a kit, folded away.
#[component]
fn Misfits(kit: Arc<KitReport>) -> impl IntoView {
    let app = use_app();
    let of = |severity| kit.groups.iter().filter(move |group| group.severity == severity).count();
    let (misfits, tight) = (of(Severity::DoesNotFit), of(Severity::Tight));
    let some = [(misfits, "misfit", "misfits"), (tight, "tight fit", "tight fits")]
        .into_iter()
        .filter(|(number, ..)| *number > 0)
        .map(|(number, one, more)| text::count(number as u64, one, more));
    let title = format!("{}: {}", kit.name, some.collect::<Vec<_>>().join(", "));
    let caption = format!("{}: what doesn't fit, worst cases", kit.name);
    view! {
        <Fold class="more" title>
            {
                let (found, style) = (kit.clone(), app.style());
                let row: Row = Box::new(move |at| {
                    found.groups.get(at).map(|group| cells(group, style)).unwrap_or_default()
                });
                let more = (kit.ungrouped > 0).then(|| {
                    let more = text::count(kit.ungrouped, "finding", "findings");
                    view! { <p class="facts">{format!("{more} more of other parts are not listed. Correct these first.")}</p> }
                });
                view! {
                    <PagedTable
                        caption=caption.clone()
                        heads=&["Parts", "What's wrong", "Combinations"]
                        count=Signal::stored(kit.groups.len())
                        row
                    />
                    {more}
                }
            }
        </Fold>
    }
}

fn cells(group: &Group, style: crate::text::Style) -> Vec<String> {
    let tight = if group.severity == Severity::Tight { "Tight. " } else { "" };
    let wrong =
        format!("{tight}{}: {}", text::cause(group.cause), text::finding(&group.worst, style));
    let count = match group.with_parts {
        Some(all) if all == group.combinations => format!("all {}", text::big(all)),
        Some(all) => format!("{} of {}", text::big(group.combinations), text::big(all)),
        None => text::big(group.combinations),
    };
    vec![text::together(&group.parts), wrong, count]
}
