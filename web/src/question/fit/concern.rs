//! What does not fit or is tight, worst first, each with what cures it.

use super::cure::{Mend, Mending};
use crate::app::{App, Fit, Found, use_app};
use crate::component::Notice;
use crate::text::fit::{self as words, Grade};
use crate::text::{self, Answer, Style};
use leptos::prelude::*;
use pitchline_core::fit::{Cure, Misfit, MisfitKind, remedy};
use pitchline_core::{Notice as Mismatch, Record, Slot};

/// Parts that do not match, or a misfit.
enum What<'a> {
    Parts(&'a Mismatch),
    Size(&'a Misfit),
}

impl What<'_> {
    fn short(&self, style: Style) -> String {
        match self {
            Self::Parts(notice) => words::notice_short(notice),
            Self::Size(misfit) => words::misfit_short(misfit, style),
        }
    }
}

/// Something that does not fit or is tight, as it is shown.
#[derive(Clone, PartialEq)]
struct Concern {
    grade: Grade,
    text: String,
    cures: Vec<Mend>,
    /// Where there is no cure: what to look for.
    none: String,
}

/// All of them, the worst first.
fn all<'a>(found: &'a Found, fit: &'a Fit) -> Vec<(Grade, What<'a>)> {
    let parts = found.notices.iter().map(|notice| (Grade::of_notice(notice), What::Parts(notice)));
    let sizes = fit.together.misfits.iter().map(|misfit| (Grade::of(misfit), What::Size(misfit)));
    let mut list: Vec<_> = Vec::new();
    for concern in parts.chain(sizes) {
        // A stable order: of one grade, as the core has them.
        let at = list.iter().position(|(grade, _)| *grade > concern.0).unwrap_or(list.len());
        list.insert(at, concern);
    }
    list
}

/// How many parts that meet do not match. A value to check is none.
pub(super) fn mismatches(found: &Found) -> usize {
    found.notices.iter().filter(|notice| Grade::of_notice(notice) != Grade::Check).count()
}

/// What does not fit, what must be checked, what is tight, and the worst in a few words.
#[derive(Clone, Default, PartialEq)]
pub(super) struct Verdict {
    pub(super) amiss: usize,
    pub(super) check: usize,
    pub(super) tight: usize,
    pub(super) worst: String,
}

impl Verdict {
    /// As it is now; tracked. None where a part is missing.
    pub(super) fn now(app: App) -> Option<Self> {
        let (found, fit) = (app.found()?, app.fit()?);
        let all = all(&found, &fit);
        let worst = all.first().map(|(_, what)| what.short(app.style()));
        let count = |wanted: Grade| all.iter().filter(|(grade, _)| *grade == wanted).count();
        Some(Self {
            amiss: count(Grade::Unsafe) + count(Grade::DoesNotFit),
            check: count(Grade::Check),
            tight: count(Grade::Tight),
            worst: worst.unwrap_or_default(),
        })
    }

    pub(super) fn answer(&self) -> Answer {
        words::verdict(self.amiss, self.check, self.tight, &self.worst)
    }
}

/// All of them in a few words each, the worst first; tracked.
#[must_use]
pub fn concerns(app: App) -> Vec<(Grade, String)> {
    let (Some(found), Some(fit)) = (app.found(), app.fit()) else { return Vec::new() };
    let style = app.style();
    all(&found, &fit).into_iter().map(|(grade, what)| (grade, what.short(style))).collect()
}

/// The list of them.
#[component]
pub(super) fn Concerns() -> impl IntoView {
    let app = use_app();
    let list = Memo::new(move |_| now(app));
    let told = move || {
        let one = |Concern { grade, text, cures, none }: Concern| {
            let none = cures.is_empty().then(|| view! { <p class="facts">{none}</p> });
            let cures = cures.into_iter().map(|mend| view! { <Mending mend /> }).collect_view();
            view! {
                <li class="concern" class:unsafe=grade == Grade::Unsafe class:tight=grade == Grade::Tight>
                    <Notice word=grade.word() text />
                    {none}
                    <p class="cures">{cures}</p>
                </li>
            }
        };
        list.get().into_iter().map(one).collect_view()
    };
    view! {
        <div role="status">
            <ul class="concerns">{told}</ul>
        </div>
    }
}

fn now(app: App) -> Vec<Concern> {
    let (Some(found), Some(fit), style) = (app.found(), app.fit(), app.style()) else {
        return Vec::new();
    };
    let one = |(grade, what): (Grade, What)| match what {
        What::Parts(notice) => {
            let cures = mends(app, &found, notice);
            let none = if notice.slots().contains(&Slot::Charger) {
                let build = &found.build;
                text::charge::none_fits(build.full_pack_v(), build.cells_charge_a(), style)
            } else {
                words::NO_CURE.into()
            };
            Concern { grade, text: text::notice(notice, style), cures, none }
        }
        What::Size(misfit) => {
            let cures = misfit.cures.iter().filter_map(|cure| cured(&fit, *cure)).collect();
            Concern { grade, text: said(&fit, misfit, style), cures, none: words::NO_CURE.into() }
        }
    };
    all(&found, &fit).into_iter().map(one).collect()
}

/// The button that cures; none for a belt that is not on offer.
fn cured(fit: &Fit, cure: Cure) -> Option<Mend> {
    match cure {
        Cure::Change(slot, key) => Mend::change(slot, key),
        Cure::Pick(slot) => Some(Mend::pick(slot)),
        Cure::Belt(place) => {
            fit.belt_on_offer(place).map(|part| Mend::take(Slot::Belt, part, &fit.draft))
        }
    }
}

/// What cures parts that do not match: a value that was entered wrong is corrected, else the
/// nearest part on offer.
fn mends(app: App, found: &Found, notice: &Mismatch) -> Vec<Mend> {
    let correct = match notice {
        Mismatch::FullVoltage { .. } => Mend::change(Slot::Cell, "full_v"),
        Mismatch::PackTooLight { .. } => Mend::change(Slot::Pack, "mass_kg"),
        _ => None,
    };
    let catalog = app.catalog();
    let draft = &found.draft;
    let offered = |slot: Slot| -> Vec<&Record> { catalog.offered(&draft.kit, slot) };
    let nearest =
        || remedy(draft, notice, &offered).map(|found| Mend::take(found.slot, found.part, draft));
    correct.or_else(nearest).into_iter().collect()
}

/// What is said of a misfit.
pub(super) fn said(fit: &Fit, misfit: &Misfit, style: Style) -> String {
    let belt =
        matches!(misfit.kind, MisfitKind::BeltTooShort { .. } | MisfitKind::BeltOutOfSlot { .. });
    let pick = fit.together.belt.pick().filter(|_| belt);
    let offer =
        pick.and_then(|belt| Some((&*fit.belt_on_offer(belt.offer?)?.name, belt.mesh.centre_m)));
    words::misfit(misfit, offer, style)
}
