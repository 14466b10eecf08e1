//! Each tab and each frame keeps what it works on; what is saved is in all of them.

use std::cell::RefCell;
use std::fs;

use pitchline_tests::browser::{Browser, Outcome, Size};

use crate::keep::save;
use crate::lost::{FOLLOWED, listed};
use crate::visit::{Site, Visit, link, open_build, wait_living};

/// The last writer's list was the only one.
#[test]
fn what_two_tabs_save_is_in_both() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let first = page.tab()?;
    let second = page.open_tab()?;
    page.goto(&visit.server.url())?;
    wait_living(page)?;
    save(page, "From the second")?;
    page.by_text("Saved on this device.")?;
    page.switch_to(&first)?;
    save(page, "From the first")?;
    page.by_text("Saved on this device.")?;
    for tab in [&first, &second] {
        page.switch_to(tab)?;
        page.wait_for("both are listed", |page| Ok(listed(page)?.len() == 2))?;
    }
    page.by_role("button", "Delete From the first")?.click()?;
    page.switch_to(&first)?;
    page.wait_for("one is left", |page| Ok(listed(page)? == ["From the second"]))?;
    visit.reload()?;
    assert_eq!(listed(page)?, ["From the second"]);
    page.close_tab(&second)?;
    visit.end()
}

/// Reloading three tabs gave each the build of another.
#[test]
fn every_tab_keeps_what_it_works_on() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let masses = ["61", "72", "83"];
    let mut tabs = vec![page.tab()?];
    for _ in 1..masses.len() {
        tabs.push(page.open_tab()?);
        page.goto(&visit.server.url())?;
        wait_living(page)?;
    }
    for (tab, mass) in tabs.iter().zip(masses) {
        page.switch_to(tab)?;
        page.by_css("#rider-mass_kg")?.fill(mass)?;
        page.wait_until(&format!("return location.hash.includes('rider.mass_kg={mass}')"))?;
    }
    // At once after an edit too, before the address follows.
    page.switch_to(&tabs[0])?;
    let edit = "const input = document.getElementById('rider-mass_kg');
        input.value = '64';
        input.dispatchEvent(new Event('input', { bubbles: true }));
        setTimeout(() => location.reload(), 50)";
    page.eval(edit, &[])?;
    page.wait_until("return performance.getEntriesByType('navigation')[0].type === 'reload'")?;
    wait_living(page)?;
    for (tab, mass) in tabs.iter().zip(["64", "72", "83"]) {
        page.switch_to(tab)?;
        page.reload()?;
        wait_living(page)?;
        assert_eq!(page.by_css("#rider-mass_kg")?.value()?, mass);
    }
    // A new tab begins with the last one that was changed.
    page.open_tab()?;
    page.goto(&visit.server.url())?;
    wait_living(page)?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "64");
    visit.end()
}

/// Both frames of a page showed one build, the last one that was changed in either.
#[test]
fn two_frames_have_a_build_each() -> Outcome {
    let site = Site::new()?;
    let server = site.serve("/")?;
    let frame = |id: &str| {
        format!("<iframe id={id} title={id} src='{}' width=400 height=600></iframe>", server.url())
    };
    let text = format!(
        "<!DOCTYPE html><html lang=en><title>Two</title><link rel=icon href='data:,'>{}{}",
        frame("one"),
        frame("two")
    );
    fs::write(site.path().join("two.html"), text)?;
    let page = Browser::open(Size::Desktop)?;
    page.goto(&format!("{}two.html", server.url()))?;
    let within = |id: &str, act: &dyn Fn() -> Outcome| -> Outcome {
        let frame = page.by_css(id)?;
        page.enter_frame(&frame)?;
        wait_living(&page)?;
        open_build(&page)?;
        act()?;
        page.leave_frame()
    };
    let both = |wanted: [&str; 2]| -> Outcome {
        let masses = RefCell::new(Vec::new());
        for id in ["#one", "#two"] {
            within(id, &|| {
                masses.borrow_mut().push(page.by_css("#rider-mass_kg")?.value()?);
                Ok(())
            })?;
        }
        assert_eq!(masses.take(), wanted);
        Ok(())
    };
    for (id, mass) in [("#one", "63"), ("#two", "74")] {
        within(id, &|| page.by_css("#rider-mass_kg")?.fill(mass))?;
    }
    page.eval(FOLLOWED, &[])?;
    // A page that is loaded anew makes its frames anew.
    page.reload()?;
    both(["63", "74"])?;
    // An edit of one is loaded again before its address follows; meanwhile the other one changes.
    let edit = "const input = document.getElementById('rider-mass_kg');
        input.value = arguments[0];
        input.dispatchEvent(new Event('input', { bubbles: true }))";
    let again = format!("{edit}; setTimeout(() => location.reload(), 100)");
    for (id, script, mass) in [("#one", again.as_str(), "65"), ("#two", edit, "76")] {
        page.enter_frame(&page.by_css(id)?)?;
        page.eval(script, &[mass.into()])?;
        page.leave_frame()?;
    }
    page.eval(FOLLOWED, &[])?;
    both(["65", "76"])?;
    page.reload()?;
    both(["65", "76"])
}

/// The link in a frame's address is where it begins, and not where it begins again.
#[test]
fn a_frame_with_a_link_keeps_its_edits() -> Outcome {
    let site = Site::new()?;
    let server = site.serve("/")?;
    let src = format!("{}{}", server.url(), link("kit=kittiwake&rider.mass_kg=95"));
    let text = format!(
        "<!DOCTYPE html><html lang=en><title>One</title><link rel=icon href='data:,'>
        <iframe id=one title=one src='{src}' width=400 height=600></iframe>"
    );
    fs::write(site.path().join("one.html"), text)?;
    let page = Browser::open(Size::Desktop)?;
    page.goto(&format!("{}one.html", server.url()))?;
    for (stands, typed) in [("95", "100"), ("100", "101"), ("101", "102")] {
        page.enter_frame(&page.by_css("#one")?)?;
        wait_living(&page)?;
        open_build(&page)?;
        assert_eq!(page.by_css("#rider-mass_kg")?.value()?, stands);
        page.by_css("#rider-mass_kg")?.fill(typed)?;
        page.leave_frame()?;
        page.eval(FOLLOWED, &[])?;
        page.reload()?;
    }
    Ok(())
}
