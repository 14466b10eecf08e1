//! For weak eyes and screen readers: no rule of axe-core broken, in any state.

use pitchline_tests::browser::{Browser, Outcome, Page, Size, Theme};

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, link};

/// Opens every fold, and those within.
#[track_caller]
pub(crate) fn open_folds(page: &Page) -> Outcome {
    // What is still worked out may bring further ones.
    page.wait_until(
        "const shut = [...document.querySelectorAll('details:not([open])')];
         for (const fold of shut) fold.open = true;
         return !shut.length
           && [...document.querySelectorAll('.busy')].every((line) => !line.textContent)
           && document.querySelector('.steps li') && document.querySelector('.chart-table td')",
    )
}

/// A link with slips, a message with an offer, and a field out of range.
#[track_caller]
pub(crate) fn trouble(visit: &Visit) -> Outcome {
    // By way of a plain visit, after which there is nothing left to say of offline use.
    visit.open("")?;
    visit.open(&link("kit=gannet&hat=red&rider.mass_kg=900&motor.pole_pairs=8"))?;
    visit.page.by_text("Build opened from the link.")?;
    visit.page.by_css(".told li")?;
    visit.page.by_css("#rider-mass_kg")?.fill("1999")?;
    visit.page.by_css(".fault").map(drop)
}

fn legible(size: Size) -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(size).reduced_motion())?;
    let page = &visit.page;
    for theme in [Theme::Light, Theme::Dark] {
        page.set_theme(theme)?;
        visit.open(&link("kit=kittiwake"))?;
        assert_answers(page, &demo().draft("kittiwake"))?;
        page.screenshot_whole(&format!("page-whole-{size:?}-{theme:?}"))?;
        page.assert_accessible()?;
        // The cursor's readout on a chart.
        page.by_role("application", "Arrow keys move along the bars")?.click()?;
        trouble(&visit)?;
        page.screenshot(&format!("page-trouble-{size:?}-{theme:?}"))?;
        open_folds(page)?;
        for (part, selector) in [
            ("figures", "#pick-motor"),
            ("working", ".steps"),
            ("table", ".chart-table"),
            ("steep", "#steep-title"),
            ("far", "#far-title"),
        ] {
            let script = "document.querySelector(arguments[0]).scrollIntoView()";
            page.eval(script, &[selector.into()])?;
            page.screenshot(&format!("page-open-{part}-{size:?}-{theme:?}"))?;
        }
        page.assert_accessible()?;
        page.by_role("button", "mi, lb")?.click()?;
        page.by_role("button", "km, kg")?.click()?;
    }
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
    visit.open(&link("kit=kittiwake&wheel=buoy-210&motor_pulley=m10-17&charger=spring-54"))?;
    page.by_text("Do not use it")?;
    page.screenshot("page-misfit-Phone")?;
    page.assert_accessible()?;
    visit.open(&link(
        "kit=kittiwake&controller.motor_current_a=1&motor_pulley.teeth=60&wheel_pulley.teeth=12\
         &rider.mass_kg=180&ride.grade_percent=60&place.headwind_km_h=60",
    ))?;
    page.by_text("can't hold this speed on the flat")?;
    page.screenshot_whole("page-nothing-goes-Phone")?;
    page.assert_accessible()?;
    visit.end()
}
