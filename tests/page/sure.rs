//! How sure an answer is: the band that the core gives natively stands on the page, and follows
//! an edit.

use pitchline_core::band::{Band, Quantity, SPREADS};
use pitchline_core::{Build, Draft, Slot, answers};
use pitchline_tests::browser::{Fault, Outcome, Page, Size};
use pitchline_web::text::{Units, words};

use crate::strip::{assert_answers, expected};
use crate::visit::{Visit, demo, kit_for};

/// Each question of the strip, and which of its headlines is the strip's.
const QUESTIONS: [(&str, Quantity, usize); 3] = [
    ("fast", Quantity::TopSpeed, 0),
    ("steep", Quantity::Hill, 1),
    ("far", Quantity::SteadyDistance, 0),
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

#[track_caller]
fn band_of(page: &Page, id: &str) -> Outcome<Vec<f64>> {
    let script = "return document.querySelector(`#${arguments[0]} [data-band]`).dataset.band";
    Ok(numbers(page.eval(script, &[id.into()])?.as_str().unwrap_or_default()))
}

/// In the page's wasm as in native code, to 1e-9.
#[track_caller]
fn assert_bands(page: &Page, draft: &Draft) -> Outcome {
    for (id, quantity, _) in QUESTIONS {
        let band = native(draft, quantity);
        page.wait_for(id, |page| Ok(same(&band_of(page, id)?, &band)))?;
    }
    Ok(())
}

/// Opens a table of how sure the distance is, and gives its rows.
#[track_caller]
fn table<const CELLS: usize>(page: &Page, place: usize) -> Outcome<Vec<[String; CELLS]>> {
    let script = "const fold = document.querySelectorAll('#far .sure .chart-data')[arguments[0]];
        fold.open = true;
        while (!fold.querySelector('tbody')) await new Promise(requestAnimationFrame);
        return [...fold.querySelectorAll('tbody tr')].map((row) =>
          [...row.children].map((cell) => cell.textContent))";
    let rows = page.eval(script, &[place.into()])?;
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

    // A question's own headline says what the strip says.
    let wanted = expected(&draft, Units::Metric);
    assert!(wanted.iter().all(|tile| tile.contains('–')), "bands to be seen: {wanted:?}");
    for (n, (id, _, place)) in QUESTIONS.into_iter().enumerate() {
        let script = "const of = document.querySelectorAll(`#${arguments[0]} .answers .headline`)[arguments[1]];
            return of.querySelector('.headline-figure').textContent";
        let figure = page.eval(script, &[id.into(), place.into()])?;
        let figure = figure.as_str().unwrap_or_default();
        assert!(wanted[n].starts_with(&format!("{figure} |")), "{figure} is not {}", wanted[n]);
    }

    // In words, and what moves it: the core's order, and all of it in the table.
    let distance = native(&draft, Quantity::SteadyDistance);
    let said = page.by_css("#far [data-band]")?.text()?;
    let (low, high) = (distance.p10 / 1000.0, distance.p90 / 1000.0);
    let eight = format!(
        "By reckoning, not by measuring, 8 of 10 boards built and ridden like this come {low:.0} to {high:.0}\u{a0}km"
    );
    assert!(said.starts_with(&eight), "{said}");
    assert!(
        said.contains(&format!("Half come {:.0}\u{a0}km or more", distance.p50 / 1000.0)),
        "{said}"
    );
    let [first, second, third, ..] = distance.movers.map(|mover| words::uncertain(mover.input));
    page.by_text(&format!("What moves it most: {first}, then {second} and {third}. Each bar: that alone, off by as much as in 8 of 10 boards."))?;
    let rows: Vec<[String; 3]> = table(page, 1)?;
    assert_eq!(rows.len(), SPREADS.len());
    for ([name, low, high], mover) in rows.iter().zip(distance.movers) {
        assert_eq!(name.to_lowercase(), words::uncertain(mover.input).to_lowercase());
        let [l, h] = [mover.low, mover.high].map(|d| format!("{:.1}", d / 1000.0));
        assert_eq!([low, high], [&l, &h], "{name}");
    }
    // The curve about it: each of its speeds has the distance that the core gives there.
    let rows: Vec<[String; 5]> = table(page, 0)?;
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
    page.by_css("#far .sure details.working > summary")?.click()?;
    page.by_text("The figures are common practice and have no source.")?;
    page.assert_accessible()?;
    page.screenshot_whole(&format!("page-sure-{size:?}"))?;

    // Another board has another band, and an edit too.
    page.by_role("button", "Gannet")?.click()?;
    draft = kit_for(&catalog, "gannet", &draft);
    assert_answers(page, &draft)?;
    assert_bands(page, &draft)?;
    page.by_css("#rider-mass_kg")?.fill("104,5")?;
    draft.set(Slot::Rider, "mass_kg", 104.5);
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

/// Keeps what the distance was told as, in the strip and in its question.
const WATCH: &str = "
    const tile = document.querySelectorAll('a.tile')[2].querySelector('strong');
    const band = document.querySelector('#far [data-band]');
    window.told = [[], []];
    const look = () => [tile.textContent, band.dataset.band].forEach((now, n) => {
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
    let script = "const speed = document.getElementById('ride-cruise_km_h');
        speed.value = arguments[0];
        speed.dispatchEvent(new Event('input', { bubbles: true }))";
    page.eval(script, &[km_h.to_string().into()])?;
    assert_answers(page, &draft)?;
    assert_bands(page, &draft)?;
    let [strip, _] = told(page)?;
    assert_eq!(strip, wanted);
    visit.end()
}

/// Work on an edit ends where the next one begins.
#[test]
fn an_edit_is_not_answered_by_older_work() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    let mut draft = demo().draft("kittiwake");
    assert_bands(page, &draft)?;
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
        const line = document.querySelector('#far .sure .busy');
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
    assert_answers(page, &draft)?;
    assert_bands(page, &draft)?;
    let last = native(&draft, Quantity::SteadyDistance);
    let [_, bands] = told(page)?;
    let bands: Vec<Vec<f64>> = bands.iter().map(|text| numbers(text)).collect();
    assert_eq!(bands.len(), 2, "the first board's and the last one's: {bands:?}");
    assert!(same(&bands[0], &first) && same(&bands[1], &last), "{bands:?}");
    visit.end()
}
