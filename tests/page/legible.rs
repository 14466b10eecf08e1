//! For weak eyes and screen readers: no rule of axe-core broken, in any state.

use pitchline_tests::browser::{Browser, Outcome, Page, Size, Theme};

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, assert_none, demo, drawn, link, see, views, wait_begun};

/// Opens every fold of the view in sight, and those within.
#[track_caller]
pub(crate) fn open_folds(page: &Page) -> Outcome {
    open_folds_in(page, "body")
}

/// Opens every fold of a part of the page, and those within.
#[track_caller]
pub(crate) fn open_folds_in(page: &Page, part: &str) -> Outcome {
    // What is still worked out may bring further ones.
    page.wait_until(&format!(
        "const part = document.querySelector('{part}');
         const shut = [...part.querySelectorAll('details:not([open])')];
         for (const fold of shut) fold.open = true;
         const all = (of, has) => [...part.querySelectorAll(of)].every(has);
         return !shut.length && all('.busy', (line) => !line.textContent)
           && all('details > .fold', (fold) => fold.childElementCount)
           && all('.steps', (steps) => steps.querySelector('li'))
           && all('.chart-table', (table) => table.querySelector('td'))"
    ))
}

/// A link with slips, a message with an offer, and a field out of range.
#[track_caller]
pub(crate) fn trouble(visit: &Visit) -> Outcome {
    // By way of a plain visit, after which there is nothing left to say of offline use.
    visit.open("")?;
    visit.open(&link("kit=gannet&hat=red&rider.mass_kg=900&motor.pole_pairs=8"))?;
    visit.page.by_text("Build opened from the link.")?;
    visit.page.by_css(".told li")?;
    see(&visit.page, "Build")?;
    visit.page.by_css("#rider-mass_kg")?.fill("1999")?;
    visit.page.by_css(".fault").map(drop)
}

/// What axe-core finds in the view in sight.
#[track_caller]
fn broken(page: &Page, state: &str) -> Outcome<Vec<String>> {
    Ok(page.axe()?.iter().map(|one| format!("{state}: {one}")).collect())
}

/// The same, light and dark.
#[track_caller]
fn broken_in_both(page: &Page, state: &str, size: Size) -> Outcome<Vec<String>> {
    let mut found = Vec::new();
    for theme in [Theme::Light, Theme::Dark] {
        page.set_theme(theme)?;
        let name = format!("page-{state}-{size:?}-{theme:?}");
        page.screenshot_whole(&name.replace([' ', '?', ','], ""))?;
        found.extend(broken(page, &format!("{state}, {theme:?}"))?);
    }
    Ok(found)
}

fn legible(size: Size) -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(size).reduced_motion())?;
    let page = &visit.page;
    // Whoever comes for the first time is asked which kit it is.
    page.goto(&visit.server.url())?;
    wait_begun(page)?;
    page.by_css(".first")?;
    let mut found = broken_in_both(page, "first", size)?;
    visit.open(&link("kit=kittiwake"))?;
    assert_answers(page, &demo().draft("kittiwake"))?;
    for view in views(page)? {
        see(page, &view)?;
        drawn(page)?;
        found.extend(broken_in_both(page, &view, size)?);
    }
    trouble(&visit)?;
    let mut held = [0; 3];
    for view in views(page)? {
        see(page, &view)?;
        // The cursor's readout on a chart.
        if let Some(chart) = page.all_by_css(".view [role=application]")?.first() {
            chart.click()?;
        }
        open_folds(page)?;
        found.extend(broken_in_both(page, &format!("{view} open"), size)?);
        page.set_forced_colors(true)?;
        found.extend(broken(page, &format!("{view}, forced"))?);
        page.set_forced_colors(false)?;
        for (held, kind) in held.iter_mut().zip(["details[open]", ".steps li", ".chart-table td"]) {
            *held += page.all_by_css(kind)?.len();
        }
    }
    // A page without a fold would break no rule either.
    assert!(held[0] > 20 && held[1] > 20 && held[2] > 50, "only {held:?} folds, steps, cells");
    assert_none(&found)?;
    visit.end()
}

#[test]
fn no_rule_is_broken_on_a_phone() -> Outcome {
    legible(Size::Phone)
}

#[test]
fn no_rule_is_broken_on_a_desktop() -> Outcome {
    legible(Size::Desktop)
}

/// Parts that do not go together, and a build that can do nothing.
#[test]
fn no_rule_is_broken_where_nothing_goes() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    let mut found = Vec::new();
    let misfit = "kit=kittiwake&wheel=buoy-210&motor_pulley=m10-17&charger=spring-54";
    let feeble = "kit=kittiwake&controller.motor_current_a=1&motor_pulley.teeth=60&wheel_pulley.teeth=12\
         &rider.mass_kg=180&ride.grade_percent=60&place.headwind_km_h=60";
    for (build, said, where_said) in [
        (misfit, "Don't use it", "Build"),
        (feeble, "can't hold this speed on the flat", "Overview"),
    ] {
        visit.open(&link(build))?;
        for view in views(page)? {
            see(page, &view)?;
            drawn(page)?;
            if view == where_said {
                page.by_text(said)?;
            }
            page.screenshot_whole(
                &format!("page-{said}-{view}-Phone").replace([' ', '?', '\''], ""),
            )?;
            found.extend(broken(page, &format!("{view}, {said}"))?);
        }
    }
    assert_none(&found)?;
    visit.end()
}
