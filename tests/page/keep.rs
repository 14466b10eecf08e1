//! Keeping builds: by name on this device, and as a file.

use std::fs;
use std::path::{Path, PathBuf};

use pitchline_core::{Draft, Slot};
use pitchline_tests::browser::{Browser, Fault, Outcome, Page, Size};
use serde_json::Value;
use tempfile::TempDir;

use crate::strip::{assert_answers, number};
use crate::visit::{Site, Visit, demo, kit_for, open_build, pick, see};

/// Saves the build under this name.
#[track_caller]
pub(crate) fn save(page: &Page, name: &str) -> Outcome {
    see(page, "Share")?;
    page.by_label("Name")?.fill(name)?;
    page.by_role("button", "Save on this device")?.click()
}

/// What the overview answers.
#[track_caller]
fn answers(page: &Page, draft: &Draft) -> Outcome {
    see(page, "Overview")?;
    assert_answers(page, draft)
}

fn folder() -> Outcome<TempDir> {
    Ok(tempfile::Builder::new().prefix("pitchline-page-").tempdir()?)
}

/// The file that the page offered, once it is whole.
#[track_caller]
fn downloaded(page: &Page, folder: &Path) -> Outcome<PathBuf> {
    let find = || {
        let files = fs::read_dir(folder).into_iter().flatten().flatten();
        files.map(|f| f.path()).find(|f| f.extension().is_some_and(|e| e == "json"))
    };
    page.wait_for("the file arrives", |_| Ok(find().is_some()))?;
    find().ok_or_else(|| Fault::new("no file"))
}

fn keeps(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    see(page, "Share")?;
    page.by_role("button", "Save on this device")?.click()?;
    page.by_text("Give the build a name first.")?;
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    page.by_css("#rider-mass_kg")?.fill("88.25")?;
    let mut saved = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    pick(page, &catalog, &mut saved, Slot::Wheel, 1)?;
    saved.set(Slot::Rider, "mass_kg", 88.25);
    answers(page, &saved)?;
    save(page, "Sunday & hills")?;
    page.by_text("Saved on this device.")?;

    open_build(page)?;
    page.by_css("#rider-mass_kg")?.fill("60")?;
    let mut other = saved.clone();
    pick(page, &catalog, &mut other, Slot::Wheel, 2)?;
    other.set(Slot::Rider, "mass_kg", 60.0);
    answers(page, &other)?;
    save(page, "Light")?;
    page.by_role("button", "Open Sunday & hills")?.click()?;
    answers(page, &saved)?;
    open_build(page)?;
    assert_eq!(page.by_css("#rider-mass_kg")?.value()?, "88.25");

    visit.reload()?;
    let page = &visit.page;
    answers(page, &saved)?;
    see(page, "Share")?;
    page.by_role("button", "Open Light")?.click()?;
    answers(page, &other)?;
    see(page, "Share")?;
    page.by_role("button", "Delete Sunday & hills")?.click()?;
    page.by_text("Sunday & hills deleted.")?;
    page.by_role("button", "Undo")?.click()?;
    page.by_role("button", "Open Sunday & hills")?;
    page.by_role("button", "Delete Sunday & hills")?.click()?;
    visit.reload()?;
    let page = &visit.page;
    page.wait_for("one is left", |page| Ok(page.all_by_css(".saved li")?.len() == 1))?;
    answers(page, &other)?;
    page.screenshot(&format!("page-saved-{size:?}"))?;

    // Out into a file, and into the browser of somebody else.
    let folder = folder()?;
    page.download_into(folder.path())?;
    see(page, "Share")?;
    page.by_role("button", "Save as file")?.click()?;
    let file = downloaded(page, folder.path())?;
    let value: Value = serde_json::from_str(&fs::read_to_string(&file)?)
        .map_err(|error| Fault::new(error.to_string()))?;
    assert_eq!(value["format"], "pitchline-build");
    assert_eq!(value["wheel"]["id"], "buoy-210");
    assert_eq!(number(&value, "/rider/mass_kg"), 60.0);
    assert_eq!(value["created"].as_str().map(str::len), Some("2026-11-25".len()));
    assert_eq!(file.file_name(), Some("light.pitchline.json".as_ref()));

    let fresh = Visit::of(Site::new()?, Browser::new(size))?;
    see(&fresh.page, "Share")?;
    let input = fresh.page.by_label("Open a build file")?;
    input.type_text(&file.display().to_string())?;
    fresh.page.by_text("Build opened from the file.")?;
    fresh.page.by_role("button", "Undo")?;
    answers(&fresh.page, &other)?;
    fresh.end()?;
    visit.end()
}

#[test]
fn builds_are_kept_on_a_phone() -> Outcome {
    keeps(Size::Phone)
}

#[test]
fn builds_are_kept_on_a_desktop() -> Outcome {
    keeps(Size::Desktop)
}

/// Files with faults: told where, and the build in hand stays.
#[test]
fn a_broken_file_does_no_harm() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let catalog = demo();
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    let gannet = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_answers(page, &gannet)?;
    save(page, "Mine")?;
    let folder = folder()?;
    let build =
        |inside: &str| format!("{{\n\"format\": \"pitchline-build\",\n\"version\": 1{inside}}}");
    let long = build(&format!(", \"name\": \"{}\"", "x".repeat(300_000)));
    let files = [
        (
            "cut.json",
            "{\n  \"format\": \"pitchline-build\",\n  \"wheel\": {".to_owned(),
            vec!["line 3"],
        ),
        ("other.json", "[1, 2]".to_owned(), vec!["object"]),
        ("parts.json", r#"{ "motors": [], "kits": [] }"#.to_owned(), vec!["/format"]),
        ("empty.json", String::new(), vec!["line 1"]),
        (
            "slips.json",
            build(", \"wheel\": { \"diameter_mm\": 5 }, \"motr\": {}"),
            vec!["/wheel/diameter_mm", "/wheel/rolling_smooth", "/motr"],
        ),
        ("long.json", long, vec!["262144"]),
    ];
    for (name, text, places) in files {
        let file = folder.path().join(name);
        fs::write(&file, text)?;
        page.by_css("#build-file")?.type_text(&file.display().to_string())?;
        page.wait_for(&format!("the faults of {name} are told"), |page| {
            let told = page.by_css(".told")?.text()?;
            Ok(places.iter().all(|place| told.contains(place)))
        })?;
        assert!(
            page.by_css(".messages")?.text()?.contains("The file couldn't be opened."),
            "{name}"
        );
        if name == "slips.json" {
            page.assert_accessible()?;
        }
        page.by_css(".told button")?.click()?;
        page.wait_until("return !document.querySelector('.told')")?;
    }
    page.by_role("button", "Open Mine")?;
    answers(page, &gannet)?;
    visit.end()
}

/// A build of parts that this catalogue does not have, from another maker's page.
#[test]
fn foreign_parts_survive_a_reload() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let folder = folder()?;
    let file = folder.path().join("guest.json");
    let text = "{\"format\": \"pitchline-build\", \"version\": 1, \"kit\": \"dunlin\",
        \"wheel\": {\"id\": \"bulrush\", \"name\": \"Bulrush 100\", \"core\": \"reed core\",
          \"diameter_mm\": 100, \"rolling_smooth\": 0.013}}";
    fs::write(&file, text)?;
    see(page, "Share")?;
    page.by_css("#build-file")?.type_text(&file.display().to_string())?;
    page.by_text("Build opened from the file.")?;
    open_build(page)?;
    let picked = "return document.getElementById('pick-wheel').selectedOptions[0].text";
    page.wait_until(&format!("{picked} === 'Bulrush 100'"))?;
    let before = visit.stored("current")?;
    // The address follows; then the page is loaded anew, and is its own link.
    page.wait_until("return location.hash.includes('wheel.id=bulrush')")?;
    visit.reload()?;
    open_build(page)?;
    assert_eq!(visit.page.eval(picked, &[])?, "Bulrush 100");
    assert_eq!(visit.stored("current")?, before);
    assert_eq!(crate::link::told(&visit.page)?, Vec::<String>::new());
    visit.end()
}
