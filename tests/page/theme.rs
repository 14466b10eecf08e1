//! Light or dark: what the device says, until the reader says otherwise.

use pitchline_tests::browser::{Browser, Outcome, Page, Size, Theme};

use crate::visit::{Site, Visit, see};

const LIGHT: &str = "rgb(247, 245, 240)";
const DARK: &str = "rgb(16, 24, 28)";

/// Whether the page, the native controls and the bar of the browser are coloured so.
#[track_caller]
fn assert_paper(page: &Page, paper: &str) -> Outcome {
    let scheme = if paper == DARK { "dark" } else { "light" };
    let script = "const bars = [...document.querySelectorAll('meta[name=theme-color]')];
        return [getComputedStyle(document.body).backgroundColor,
                getComputedStyle(document.documentElement).colorScheme,
                bars.filter((e) => matchMedia(e.media).matches).map((e) => e.content).join()]";
    let bar = if paper == DARK { "#10181c" } else { "#f7f5f0" };
    page.wait_for(&format!("{scheme} paper"), |page| {
        Ok(page.eval(script, &[])? == serde_json::json!([paper, scheme, bar]))
    })
}

fn by_choice(device: Theme, own: &str, paper: &str, other: &str) -> Outcome {
    let browser = Browser::new(Size::Phone).theme(device);
    let visit = Visit::of(Site::new()?, browser)?;
    let page = &visit.page;
    assert_paper(page, paper)?;
    let wanted = if paper == DARK { LIGHT } else { DARK };
    see(page, "More")?;
    page.by_role("button", other)?.click()?;
    assert_paper(page, wanted)?;
    assert_eq!(page.by_role("button", other)?.attribute("aria-pressed")?.as_deref(), Some("true"));
    page.assert_accessible()?;
    // Kept, and there before the calculator is.
    visit.reload()?;
    assert_paper(page, wanted)?;
    see(page, "More")?;
    page.by_role("button", own)?.click()?;
    assert_paper(page, paper)?;
    page.by_role("button", "Same as device")?.click()?;
    assert_paper(page, paper)?;
    visit.end()
}

#[test]
fn a_light_device_can_have_a_dark_page() -> Outcome {
    by_choice(Theme::Light, "Light", LIGHT, "Dark")
}

#[test]
fn a_dark_device_can_have_a_light_page() -> Outcome {
    by_choice(Theme::Dark, "Dark", DARK, "Light")
}
