//! Metric and imperial: what is shown changes, the build does not.

use pitchline_core::Slot;
use pitchline_tests::browser::{Browser, Outcome, Page, Size};
use pitchline_web::text::Units;
use serde_json::json;

use crate::strip::{assert_answers, assert_answers_in, number};
use crate::visit::{Site, Visit, demo, open_build, see};

/// Opens the fold of one part's figures.
#[track_caller]
pub(crate) fn open_figures(page: &Page, slot: Slot) -> Outcome {
    let script =
        "const fold = document.getElementById(arguments[0]).closest('.card').querySelector('details');
         if (!fold.open) fold.querySelector('summary').click()";
    page.eval(script, &[format!("pick-{}", slot.key()).into()])?;
    page.by_css(&format!("#{}-mass_kg", slot.key())).map(drop)
}

/// The unit that stands behind a field's number.
#[track_caller]
fn unit(page: &Page, id: &str) -> Outcome<String> {
    let script = "return document.getElementById(arguments[0]).nextElementSibling.textContent";
    Ok(page.eval(script, &[id.into()])?.as_str().unwrap_or_default().to_owned())
}

fn switches(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    open_build(page)?;
    open_figures(page, Slot::Wheel)?;
    open_figures(page, Slot::Deck)?;
    for (id, symbol) in [
        ("rider-mass_kg", "kg"),
        ("ride-cruise_km_h", "km/h"),
        ("place-air_c", "°C"),
        ("wheel-diameter_mm", "mm"),
        ("deck-riser_mm", "mm"),
    ] {
        assert_eq!(unit(page, id)?, symbol);
    }
    see(page, "More")?;
    page.by_role("button", "mi, lb")?.click()?;
    open_build(page)?;
    open_figures(page, Slot::Wheel)?;
    open_figures(page, Slot::Deck)?;
    // 22 km/h are 13.6702 mph: as many digits as anyone would type.
    assert_eq!(page.by_css("#ride-cruise_km_h")?.value()?, "13.7");
    let typed = [
        ("rider-mass_kg", "lb", "187.3"),
        ("ride-cruise_km_h", "mph", "13,7"),
        ("place-air_c", "°F", "41.9"),
        // Wheels are sold in millimetres everywhere (common practice, no source).
        ("wheel-diameter_mm", "mm", "97.3"),
        ("deck-riser_mm", "in", "0.61"),
    ];
    for (id, symbol, text) in typed {
        assert_eq!(unit(page, id)?, symbol);
        page.by_css(&format!("#{id}"))?.fill(text)?;
    }
    see(page, "More")?;
    let kept = visit.stored("current")?;
    // NIST SP 811, appendix B: 1 lb = 0.45359237 kg, 1 mi = 1.609344 km,
    // 1 in = 25.4 mm, degrees Celsius = (degrees Fahrenheit - 32) / 1.8.
    let wanted = [
        ("/rider/mass_kg", 187.3 * 0.453_592_37),
        ("/ride/cruise_km_h", 13.7 * 1.609_344),
        ("/place/air_c", (41.9 - 32.0) / 1.8),
        ("/wheel/diameter_mm", 97.3),
        ("/deck/riser_mm", 0.61 * 25.4),
    ];
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    let places = [
        (Slot::Rider, "mass_kg"),
        (Slot::Ride, "cruise_km_h"),
        (Slot::Place, "air_c"),
        (Slot::Wheel, "diameter_mm"),
        (Slot::Deck, "riser_mm"),
    ];
    for ((pointer, value), (slot, key)) in wanted.into_iter().zip(places) {
        let found = number(&kept, pointer);
        assert!((found - value).abs() <= 1e-12 * value.abs(), "{pointer}: {found}, not {value}");
        draft.set(slot, key, found);
    }
    see(page, "Overview")?;
    assert_answers_in(page, &draft, Units::Imperial)?;
    page.screenshot(&format!("page-imperial-{size:?}"))?;

    // A hundred times there and back, through the fields with the focus where there are any.
    see(page, "More")?;
    let script = "
        const key = 'pitchline:' + new URL('.', location).pathname + ':current';
        const before = localStorage.getItem(key);
        const buttons = [...document.querySelectorAll('main [role=group] button')];
        const fields = [...document.querySelectorAll('.field-box input')];
        const frame = () => new Promise((done) => requestAnimationFrame(done));
        const units = new Set(), kept = new Set();
        for (let turn = 0; turn < 100; turn++) {
          buttons[turn % 2].click();
          await frame();
          fields[turn % fields.length]?.focus();
          fields[turn % fields.length]?.blur();
          if (fields.length) units.add(document.querySelector('.unit').textContent);
          kept.add(localStorage.getItem(key));
        }
        await new Promise((done) => setTimeout(done, 500));
        kept.add(localStorage.getItem(key));
        return [[...units].sort(), [...kept].map((text) => text === before)]";
    // Compared as text, which writes every bit of a number.
    let units = if size == Size::Desktop { vec!["kg", "lb"] } else { Vec::new() };
    assert_eq!(page.eval(script, &[])?, json!([units, [true]]));
    see(page, "Overview")?;
    assert_answers_in(page, &draft, Units::Imperial)?;
    page.wait_until("return location.hash.includes('rider.mass_kg=')")?;
    let hash = page.eval("return location.hash", &[])?;

    // The choice of units is kept, and the build with it.
    visit.reload()?;
    assert_answers_in(&visit.page, &draft, Units::Imperial)?;
    visit.page.wait_until("return location.hash.includes('rider.mass_kg=')")?;
    assert_eq!(visit.page.eval("return location.hash", &[])?, hash);
    assert_eq!(visit.stored("current")?, kept);
    see(&visit.page, "More")?;
    visit.page.by_role("button", "km, kg")?.click()?;
    see(&visit.page, "Overview")?;
    assert_answers(&visit.page, &draft)?;
    visit.end()
}

#[test]
fn switching_units_changes_no_value_on_a_phone() -> Outcome {
    switches(Size::Phone)
}

#[test]
fn switching_units_changes_no_value_on_a_desktop() -> Outcome {
    switches(Size::Desktop)
}

/// The first visit takes the reader's own units and decimal mark.
#[test]
fn units_and_marks_follow_the_reader() -> Outcome {
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    let american = Visit::of(Site::new()?, Browser::new(Size::Desktop).locale("en-US"))?;
    assert_answers_in(&american.page, &draft, Units::Imperial)?;
    american.end()?;

    let german = Visit::of(Site::new()?, Browser::new(Size::Phone).locale("de-DE"))?;
    let page = &german.page;
    open_build(page)?;
    page.by_css("#rider-mass_kg")?.fill("82,5")?;
    page.by_css("#ride-cruise_km_h")?.fill("20.5")?;
    page.by_css("#place-air_c")?.fill("-3,5")?;
    page.by_css("#rider-mass_kg")?.focus()?;
    draft.set(Slot::Rider, "mass_kg", 82.5);
    draft.set(Slot::Ride, "cruise_km_h", 20.5);
    draft.set(Slot::Place, "air_c", -3.5);
    assert_answers(page, &draft)?;
    for (id, text) in
        [("#rider-mass_kg", "82,5"), ("#ride-cruise_km_h", "20,5"), ("#place-air_c", "-3,5")]
    {
        assert_eq!(page.by_css(id)?.value()?, text);
    }
    // Files and links keep the point.
    let kept = german.stored("current")?;
    assert_eq!(number(&kept, "/rider/mass_kg"), 82.5);
    page.wait_until("return location.hash.includes('rider.mass_kg=82.5')")?;
    german.end()
}

/// 260 is no mass in kg, and one in lb.
#[test]
fn what_one_unit_refused_is_read_in_the_other() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let mass = "#rider-mass_kg";
    page.by_css(mass)?.fill("260")?;
    page.wait_until(
        "return document.getElementById('rider-mass_kg').matches('[aria-invalid=true]')",
    )?;
    see(page, "More")?;
    page.by_role("button", "mi, lb")?.click()?;
    assert_eq!(page.by_css(mass)?.value()?, "260");
    assert_ne!(page.by_css(mass)?.attribute("aria-invalid")?.as_deref(), Some("true"));
    let kept = number(&visit.stored("current")?, "/rider/mass_kg");
    // NIST SP 811, appendix B: 1 lb = 0.45359237 kg.
    assert!((kept - 260.0 * 0.453_592_37).abs() < 1e-9, "{kept}");
    visit.end()
}
