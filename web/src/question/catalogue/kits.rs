//! Which combinations on offer do not fit, kit by kit.

use crate::app::{App, Job, Task, use_app};
use crate::component::{Fold, PagedTable, Row, SHOWN, keyed};
use crate::text::{Style, catalogue as text};
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
    text::fits(sum(|kit| kit.misfitting), sum(|kit| kit.checked), whole)
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
            view! { <p class="facts">{text::more_kits(more as u64)}</p> }
        })
    };
    let none = Memo::new(move |_| kits.with(Vec::is_empty));
    let table = move || {
        (!none.get()).then(|| {
            let row: Row =
                Box::new(move |at| kits.with(|kits| kits.get(at).map(told)).unwrap_or_default());
            view! {
                <PagedTable
                    caption=text::KITS_CAPTION.into()
                    heads=&text::KITS_HEADS
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
    let offered = text::checked(kit.checked, kit.combinations);
    vec![kit.name.clone(), offered, text::big(kit.misfitting), text::big(kit.tight)]
}

/// What does not fit in a kit, folded away.
#[component]
fn Misfits(kit: Arc<KitReport>) -> impl IntoView {
    let app = use_app();
    let of =
        |severity| kit.groups.iter().filter(move |group| group.severity == severity).count() as u64;
    let title = text::kit(&kit.name, of(Severity::DoesNotFit), of(Severity::Tight));
    let caption = text::kit_caption(&kit.name);
    view! {
        <Fold class="more" title>
            {
                let (found, style) = (kit.clone(), app.style());
                let row: Row = Box::new(move |at| {
                    found.groups.get(at).map(|group| cells(group, style)).unwrap_or_default()
                });
                let more = (kit.ungrouped > 0).then(|| {
                    view! { <p class="facts">{text::more_findings(kit.ungrouped)}</p> }
                });
                view! {
                    <PagedTable
                        caption=caption.clone()
                        heads=&text::GROUPS_HEADS
                        count=Signal::stored(kit.groups.len())
                        row
                    />
                    {more}
                }
            }
        </Fold>
    }
}

fn cells(group: &Group, style: Style) -> Vec<String> {
    vec![text::together(&group.parts), text::group(group, style), text::of_all(group)]
}
