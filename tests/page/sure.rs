//! How sure an answer is: the band that the core gives natively stands on the page, and follows
//! an edit.

use pitchline_core::band::{Band, Quantity, SPREADS};
use pitchline_core::{Build, Draft, Slot, answers};
use pitchline_tests::browser::{Fault, Outcome, Page, Size};
use pitchline_web::text::{Units, words};

use crate::strip::{assert_answers, expected};
use crate::visit::{Visit, demo, kit_for, open_build, see, unfold};

/// Each question of the strip.
const QUESTIONS: [(&str, Quantity); 3] = [
    ("How fast?", Quantity::TopSpeed),
    ("How steep?", Quantity::Hill),
    ("How far?", Quantity::SteadyDistance),
];

fn native(draft: &Draft, quantity: Quantity) -> Band {
    Band::of(&Build::check(draft).expect("a valid draft"), quantity).expect("it has an answer")
}

/// 10, 50 and 90 of a hundred, as the page gives them to scripts.
fn numbers(text: &str) -> Vec<f64> {
    text.split(' ').map(|number| number.parse().expect("a number")).collect()
}

fn same(page: &[f64], band: &Band) -> bool {
    let native = [band.p10, band.p50, band.p90];
    page.len() == 3
        && page.iter().zip(native).all(|(one, other)| (one - other).abs() <= 1e-9 * other.abs())
}

/// Waits until the fold of the view in sight has this band.
#[track_caller]
fn wait_band(page: &Page, band: &Band) -> Outcome {
    let script = "return document.querySelector('[data-band]')?.dataset.band ?? ''";
    page.wait_for(&format!("{band:?}"), |page| {
        let text = page.eval(script, &[])?;
        let text = text.as_str().filter(|text| !text.is_empty());
        Ok(text.is_some_and(|text| same(&numbers(text), band)))
    })
}

/// The large figure of the view in sight, with its unit.
#[track_caller]
fn lead(page: &Page) -> Outcome<String> {
    page.by_css(".lead .headline-figure")?.text()
}

/// In the page's wasm as in native code, to 1e-9; a question's own figure says what the strip says.
/// It ends in the view of the last question.
#[track_caller]
fn assert_bands(page: &Page, draft: &Draft) -> Outcome {
    let wanted = expected(draft, Units::Metric);
    for ((title, quantity), tile) in QUESTIONS.into_iter().zip(wanted) {
        see(page, title)?;
        unfold(page, "How certain is this?")?;
        wait_band(page, &native(draft, quantity))?;
        let figure = lead(page)?;
        assert!(tile.starts_with(&format!("{figure} |")), "{figure} is not {tile}");
    }
    Ok(())
}

/// Opens a table of the view in sight by what it opens with, and gives its rows.
#[track_caller]
fn table<const CELLS: usize>(page: &Page, label: &str) -> Outcome<Vec<[String; CELLS]>> {
    let script = "const fold = [...document.querySelectorAll('.chart-data')]
          .find((fold) => fold.querySelector('summary').textContent === arguments[0]);
        fold.open = true;
        while (!fold.querySelector('tbody')) await new Promise(requestAnimationFrame);
        return [...fold.querySelectorAll('tbody tr')].map((row) =>
          [...row.children].map((cell) => cell.textContent))";
    let rows = page.eval(script, &[label.into()])?;
    let rows: Vec<Vec<String>> = serde_json::from_value(rows).expect("rows of cells");
    Ok(rows.into_iter().map(|row| row.try_into().expect("so many cells")).collect())
}

fn bands(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    assert_answers(page, &draft)?;
    assert_bands(page, &draft)?;

    let wanted = expected(&draft, Units::Metric);
    assert!(wanted.iter().all(|tile| tile.contains('–')), "bands to be seen: {wanted:?}");

    // In words, and what moves it: the core's order, and all of it in the table.
    let distance = native(&draft, Quantity::SteadyDistance);
    let said = page.by_css("[data-band]")?.text()?;
    let (low, high) = (distance.p10 / 1000.0, distance.p90 / 1000.0);
    let eight = format!(
        "Calculated, not measured: {low:.0} to {high:.0}\u{a0}km at 22\u{a0}km/h without stops for 8 in 10 simulated boards like yours."
    );
    assert!(said.starts_with(&eight), "{said}");
    assert!(
        said.contains(&format!("Half go at least {:.0}\u{a0}km.", distance.p50 / 1000.0)),
        "{said}"
    );
    let [first, second, third, ..] = distance.movers.map(|mover| words::uncertain(mover.input));
    page.by_text(&format!("What changes it most: {first}, {second}, then {third}. Each bar changes one value and leaves the rest alone."))?;
    let rows: Vec<[String; 3]> = table(page, "Table of what changes it most")?;
    assert_eq!(rows.len(), SPREADS.len());
    for ([name, low, high], mover) in rows.iter().zip(distance.movers) {
        assert_eq!(name.to_lowercase(), words::uncertain(mover.input).to_lowercase());
        let [l, h] = [mover.low, mover.high].map(|d| format!("{:.1}", d / 1000.0));
        assert_eq!([low, high], [&l, &h], "{name}");
    }
    // The curve about it: each of its speeds has the distance that the core gives there.
    let rows: Vec<[String; 5]> = table(page, "Table of distance by speed")?;
    assert!((8..=13).contains(&rows.len()), "{rows:?}");
    for [speed, low, entered, high, _] in &rows {
        let km = |text: &String| text.parse::<f64>().expect("a number");
        assert!(km(low) <= km(entered) && km(entered) <= km(high), "{speed}: {rows:?}");
        let mut ride = Build::check(&draft).expect("a valid draft");
        // Speeds are shown in whole km/h, so a rounded one may lie half of that beside.
        let far = [-0.5, 0.5].map(|off| {
            ride.ride.cruise_m_s = (km(speed) + off) / 3.6;
            answers(&ride).distance.cruise.distance_m / 1000.0
        });
        let (most, least) = (far[0].max(far[1]) + 0.5, far[0].min(far[1]) - 0.5);
        assert!((least..=most).contains(&km(entered)), "{speed}: {entered} of {far:?}");
    }
    unfold(page, "Assumed spread of each value")?;
    page.by_text("The spreads are rules of thumb.")?;
    page.assert_accessible()?;
    page.screenshot_whole(&format!("page-sure-{size:?}"))?;

    // Another board has another band, and an edit too.
    open_build(page)?;
    page.by_role("button", "Gannet")?.click()?;
    draft = kit_for(&catalog, "gannet", &draft);
    see(page, "Overview")?;
    assert_answers(page, &draft)?;
    assert_bands(page, &draft)?;
    open_build(page)?;
    page.by_css("#rider-mass_kg")?.fill("104,5")?;
    draft.set(Slot::Rider, "mass_kg", 104.5);
    see(page, "Overview")?;
    assert_answers(page, &draft)?;
    assert_bands(page, &draft)?;
    visit.end()
}

#[test]
fn answers_are_bands_on_a_phone() -> Outcome {
    bands(Size::Phone)
}

#[test]
fn answers_are_bands_on_a_desktop() -> Outcome {
    bands(Size::Desktop)
}

/// Keeps what the distance was told as: the large figure, and its band.
const WATCH: &str = "
    const lead = document.querySelector('.lead strong');
    const band = document.querySelector('[data-band]');
    window.told = [[], []];
    const look = () => [lead.textContent, band.dataset.band].forEach((now, n) => {
      if (window.told[n].at(-1) !== now) window.told[n].push(now);
    });
    look();
    new MutationObserver(look).observe(document.body,
      { subtree: true, childList: true, characterData: true, attributes: true });";

/// What was told since, one after the other.
#[track_caller]
fn told(page: &Page) -> Outcome<[Vec<String>; 2]> {
    Ok(serde_json::from_value(page.eval("return window.told", &[])?).expect("lists of texts"))
}

fn km(low: f64, high: f64) -> String {
    format!("{:.0}–{:.0}", low / 1000.0, high / 1000.0)
}

/// While the band of an edit is worked out the last one goes on, as wide for its middle.
#[test]
fn nothing_flickers_while_a_band_is_worked_out() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let mut draft = demo().draft("kittiwake");
    assert_answers(page, &draft)?;
    assert_bands(page, &draft)?;
    page.eval(WATCH, &[])?;
    let before = native(&draft, Quantity::SteadyDistance);
    // A speed whose band reads otherwise than the last one made as wide for its middle.
    let (km_h, wanted) = (28..=38)
        .map(|km_h| {
            draft.set(Slot::Ride, "cruise_km_h", f64::from(km_h));
            let after = native(&draft, Quantity::SteadyDistance);
            let scale = after.nominal / before.nominal;
            let scaled = km(before.p10 * scale, before.p90 * scale);
            (km_h, [km(before.p10, before.p90), scaled, km(after.p10, after.p90)])
        })
        .find(|(_, texts)| texts[1] != texts[2])
        .ok_or_else(|| Fault::new("no such speed"))?;
    draft.set(Slot::Ride, "cruise_km_h", f64::from(km_h));
    // At once, not key by key: one edit.
    let script = "const speed = document.getElementById('far-ride-cruise_km_h');
        speed.value = arguments[0];
        speed.dispatchEvent(new Event('input', { bubbles: true }))";
    page.eval(script, &[km_h.to_string().into()])?;
    wait_band(page, &native(&draft, Quantity::SteadyDistance))?;
    let [lead, _] = told(page)?;
    assert_eq!(lead, wanted);
    visit.end()
}

/// Work on an edit ends where the next one begins.
#[test]
fn an_edit_is_not_answered_by_older_work() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let mut draft = demo().draft("kittiwake");
    assert_bands(page, &draft)?;
    open_build(page)?;
    let first = native(&draft, Quantity::SteadyDistance);
    page.eval(WATCH, &[])?;
    // A clock by which every piece of work is over after one step, so that it can be met half done.
    let half_done = "
        let time = 0;
        Date.now = () => time += 5;
        const mass = document.getElementById('rider-mass_kg');
        const type = (text) => {
          mass.value = text;
          mass.dispatchEvent(new Event('input', { bubbles: true }));
        };
        type('130');
        const line = document.querySelector('.sure .busy');
        return await new Promise((done) => {
          const seen = new MutationObserver(() => {
            const share = Number(line.textContent.match(/(\\d+)\\D*$/)?.[1] ?? 0);
            if (share < 30 || share > 90) return;
            seen.disconnect();
            type('50');
            done(share);
          });
          seen.observe(line, { subtree: true, childList: true, characterData: true });
        });";
    let share = page.eval(half_done, &[])?;
    assert!(share.as_f64().is_some_and(|share| share >= 30.0), "{share}");
    draft.set(Slot::Rider, "mass_kg", 50.0);
    let last = native(&draft, Quantity::SteadyDistance);
    wait_band(page, &last)?;
    let [_, bands] = told(page)?;
    let bands: Vec<Vec<f64>> = bands.iter().map(|text| numbers(text)).collect();
    assert_eq!(bands.len(), 2, "the first board's and the last one's: {bands:?}");
    assert!(same(&bands[0], &first) && same(&bands[1], &last), "{bands:?}");
    visit.end()
}
