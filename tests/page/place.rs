//! Where the folder may stand: below another, and in the frame of a shop's page.

use std::fs;

use pitchline_core::Slot;
use pitchline_site::{Options, serve};
use pitchline_tests::browser::{Browser, Outcome, Size, foreign};

use crate::keep::save;
use crate::strip::assert_answers;
use crate::visit::{Site, demo, link, open_build, pick, see, wait_living};

const READY: &str = "return document.documentElement.dataset.offline === 'ready'";

#[test]
fn it_works_in_a_folder_and_in_a_frame() -> Outcome {
    let site = Site::new()?;
    let server = site.serve("/tools/calc/")?;
    let shop = tempfile::Builder::new().prefix("pitchline-page-").tempdir()?;
    let address = format!("{}{}", server.url(), link("kit=gannet"));
    let frame = format!(
        "<!DOCTYPE html><html lang=en><meta name=viewport content='width=device-width'><title>Shop</title><link rel=icon href='data:,'><h1>Shop</h1>
         <iframe title=Calculator src='{address}' width=380 height=700></iframe>"
    );
    fs::write(shop.path().join("index.html"), frame)?;
    let shop_server = serve(Options::new(shop.path()))?;
    // Another name for this machine, so that the browser takes it for another site.
    let shop_url = format!("http://localhost:{}/", shop_server.port());

    let catalog = demo();
    let mut draft = catalog.draft("gannet");
    let page = Browser::open(Size::Phone)?;
    page.goto(&address)?;
    wait_living(&page)?;
    page.wait_until(READY)?;
    assert_answers(&page, &draft)?;
    save(&page, "Outside")?;
    page.by_text("Saved on this device.")?;
    let keys = page.eval("return Object.keys(localStorage)", &[])?;
    let keys: Vec<String> = serde_json::from_value(keys).unwrap_or_default();
    assert!(!keys.is_empty() && keys.iter().all(|k| k.starts_with("pitchline:/tools/calc/:")));

    page.goto(&shop_url)?;
    let within = page.by_css("iframe")?;
    page.enter_frame(&within)?;
    wait_living(&page)?;
    page.wait_until(READY)?;
    assert_answers(&page, &draft)?;
    see(&page, "More")?;
    page.by_text("builds saved inside another page are separate")?;
    open_build(&page)?;
    pick(&page, &catalog, &mut draft, Slot::Wheel, 2)?;
    assert_answers(&page, &draft)?;
    save(&page, "Inside")?;
    page.by_text("Saved on this device.")?;
    // No permission to write to the clipboard is handed down to a frame.
    page.by_role("button", "Copy link")?.click()?;
    let link = page.by_label("Copy this link")?.value()?;
    assert!(link.starts_with(&server.url()) && link.contains("wheel=buoy-210"), "{link}");
    page.leave_frame()?;
    page.screenshot("page-framed-Phone")?;

    // The clipboard's refusal is the browser's own line.
    page.assert_quiet_but(&["lipboard", "Permissions policy"])?;
    let asked = page.close()?;
    let shops = format!("http://localhost:{}", shop_server.port());
    let strangers: Vec<_> =
        foreign(&asked, &server.url()).into_iter().filter(|url| !url.starts_with(&shops)).collect();
    assert!(strangers.is_empty(), "{strangers:?}");
    Ok(())
}
