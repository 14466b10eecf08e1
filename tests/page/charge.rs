//! How long on the charger, which one, and what must not be charged; the board
//! in the cold and as it ages.

use std::fs;

use pitchline_core::band::{Band, Quantity};
use pitchline_core::{Build, Charge, Draft, Drive, Slot, by_age, by_temperature};
use pitchline_tests::browser::{Browser, Fault, Outcome, Page, Size};
use pitchline_tests::dist;

use crate::strip::assert_answers;
use crate::visit::{Site, Visit, demo, link, put, see, unfold};

/// The question.
const CHARGER: &str = "How long on the charger?";
/// The folds of its view.
const CHARGERS: &str = "Available chargers";
const GOALS: &str = "To a chosen level, or by a set time";
const COST: &str = "Energy and cost";

/// The words of the question, once they say what is wanted.
#[track_caller]
fn said(page: &Page, wanted: &str) -> Outcome<String> {
    let words = || -> Outcome<String> { page.by_css("main")?.text() };
    page.wait_for(wanted, |_| Ok(words()?.contains(wanted)))?;
    words()
}

/// The headlines of the question: name, figure with unit, what binds.
fn headlines(page: &Page) -> Outcome<Vec<[String; 3]>> {
    let script = "return [...document.querySelectorAll('main .headline')].map((headline) =>
        ['name', 'figure', 'limit'].map((part) =>
            headline.querySelector('.headline-' + part).textContent))";
    Ok(serde_json::from_value(page.eval(script, &[])?).unwrap_or_default())
}

/// Waits until the headline of that name says this.
#[track_caller]
fn answers(page: &Page, name: &str, figure: &str) -> Outcome {
    page.wait_for(&format!("{name}: {figure}"), |page| {
        Ok(headlines(page)?.iter().any(|line| line[0].starts_with(name) && line[1] == figure))
    })
}

/// The cells of a table's row with that head.
fn row(page: &Page, table: &str, head: &str) -> Outcome<Vec<String>> {
    let script = "const rows = [...document.querySelectorAll(arguments[0] + ' tbody tr')];
        const row = rows.find((row) => row.querySelector('th').textContent.startsWith(arguments[1]));
        return row ? [...row.querySelectorAll('td')].map((cell) => cell.textContent) : []";
    Ok(serde_json::from_value(page.eval(script, &[table.into(), head.into()])?).unwrap_or_default())
}

fn build(draft: &Draft) -> Build {
    Build::check(draft).expect("a build of the demo")
}

fn charge(draft: &Draft, from: f64, to: f64) -> Charge {
    Drive::new(&build(draft)).charge(from, to).expect("it may charge")
}

/// A time beyond an hour, as the page says it: to five minutes.
fn time(seconds: f64) -> String {
    assert!(seconds > 3600.0, "{seconds}");
    let minutes = (seconds / 300.0).round() * 5.0;
    match (minutes / 60.0, minutes % 60.0) {
        (hours, 0.0) => format!("{hours} h"),
        (hours, minutes) => {
            format!("{} h\u{a0}{minutes} min", hours.floor()).replacen(" h", "\u{a0}h", 1)
        }
    }
}

/// A band of times, as a headline says it.
fn times(draft: &Draft, quantity: Quantity) -> String {
    let band = Band::of(&build(draft), quantity).expect("it may charge");
    let (low, high) = (time(band.p10), time(band.p90));
    match (low.strip_suffix(" min"), high.ends_with("min")) {
        _ if low == high => high,
        (Some(low), true) => format!("{low} – {high}"),
        _ => format!("{} – {high}", low.replace(' ', "\u{a0}")),
    }
}

/// The time until it is full.
fn to_full(draft: &Draft) -> String {
    times(draft, Quantity::ChargeTime)
}

/// The same in a cell of a table.
fn cell(seconds: f64) -> String {
    time(seconds).replace(' ', "\u{a0}")
}

fn chargers(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    see(page, CHARGER)?;
    let slow = charge(&draft, 0.2, 1.0).time_s;
    answers(page, "From 20\u{a0}% to full", &to_full(&draft))?;
    assert!(to_full(&draft).contains('–'), "a band to be seen: {}", to_full(&draft));
    page.screenshot(&format!("page-charge-{size:?}"))?;
    unfold(page, GOALS)?;
    answers(page, "To 80\u{a0}%", &times(&draft, Quantity::EnoughTime))?;

    // What the table promises is what comes of using it.
    let mut strong = draft.clone();
    put(&mut strong, &catalog, Slot::Charger, "spring-50");
    let fast = charge(&strong, 0.2, 1.0).time_s;
    assert!(fast < 0.7 * slow, "{fast} {slow}");
    unfold(page, CHARGERS)?;
    let promised = row(page, "main", "Springtide 50 V 4.5 A")?;
    assert_eq!(promised.first(), Some(&cell(fast)), "{promised:?}");
    assert_eq!(promised[3..], ["4.5\u{a0}A", "EUR\u{a0}65"].map(String::from));
    assert_eq!(promised[2], "yes");
    page.by_role("button", "Use Springtide 50 V 4.5 A")?.click()?;
    answers(page, "From 20\u{a0}% to full", &to_full(&strong))?;
    draft = strong;
    page.by_role("button", "Use Neap 50 V 2.5 A")?;

    // The rider's own wishes, which a link holds.
    unfold(page, COST)?;
    page.by_css("#ride-charge_from_percent")?.fill("5")?;
    page.by_label("Time available")?.fill("1.5")?;
    page.by_label("Electricity price per kWh")?.fill("0.40")?;
    draft.set(Slot::Place, "energy_price_kwh", 0.4);
    draft.set(Slot::Ride, "charge_from_percent", 5.0);
    let full = charge(&draft, 0.05, 1.0);
    answers(page, "From 5\u{a0}% to full", &to_full(&draft))?;
    let by_then = Drive::new(&build(&draft)).charge_for(0.05, 5400.0).expect("it may charge");
    let percent = format!("{:.0} %", by_then.end_charge * 100.0);
    answers(page, "After 1\u{a0}h\u{a0}30\u{a0}min", &percent)?;
    let cost = format!("Costs EUR\u{a0}{:.2}", full.cost.expect("a price is given"));
    said(page, &cost)?;
    visit.reload()?;
    answers(page, "From 5\u{a0}% to full", &to_full(&draft))?;
    // The list of questions says the same.
    see(page, "Overview")?;
    let line = format!("{} to full", to_full(&draft).replace('–', "to"));
    page.wait_for(&line, |page| {
        Ok(page.by_css("nav.list a[href='#see=charge']")?.text()?.contains(&line))
    })?;
    visit.end()
}

#[test]
fn another_charger_takes_another_time_on_a_phone() -> Outcome {
    chargers(Size::Phone)
}

#[test]
fn another_charger_takes_another_time_on_a_desktop() -> Outcome {
    chargers(Size::Desktop)
}

/// Nothing of the question but the table of what else there is gives a time: the one answer says
/// what not to do.
#[track_caller]
fn no_times(page: &Page, instead: &str) -> Outcome {
    let found = headlines(page)?;
    assert_eq!(found.len(), 1, "{found:?}");
    assert_eq!(found[0][1].trim(), instead);
    let figures = page.eval("return document.querySelectorAll('main figure').length", &[])?;
    assert_eq!(figures, 0);
    Ok(())
}

#[test]
fn a_wrong_charger_is_refused_with_its_reason() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    visit.open(&link("kit=kittiwake&charger=neap-54"))?;
    let refused = "Wrong charger: do not plug it in";
    page.wait_for(refused, |page| {
        Ok(page.by_css("nav.list a[href='#see=charge']")?.text()?.contains(refused))
    })?;
    see(page, CHARGER)?;
    let words = said(
        page,
        "This charger's output is 54.6\u{a0}V, but the full pack is at 50.4\u{a0}V. It would overcharge",
    )?;
    assert!(words.contains("Use a charger with an output of 50.4\u{a0}V."), "{words}");
    no_times(page, "Do not plug it in")?;
    unfold(page, CHARGERS)?;
    let own = row(page, "main", "Neap 54 V 3.5 A")?;
    assert_eq!(own[..3], ["–", "–", "no: 54.6\u{a0}V, not 50.4\u{a0}V"].map(String::from));
    page.assert_accessible()?;
    page.screenshot("page-charge-wrong-Phone")?;
    // The right one is one tap away, where it is said; another pack is none.
    let cures = page.all_by_css("main [role=status] button")?;
    let names: Outcome<Vec<String>> = cures.iter().map(|cure| cure.text()).collect();
    assert_eq!(names?, ["Use Neap 50 V 2.5 A"]);
    cures[0].click()?;
    answers(page, "From 20\u{a0}% to full", &to_full(&demo().draft("kittiwake")))?;
    page.wait_for("nothing is wrong", |page| {
        Ok(!page.by_css("main")?.text()?.contains("Do not plug it in"))
    })?;
    visit.end()
}

#[test]
fn a_charger_with_another_plug_is_refused() -> Outcome {
    let text = fs::read_to_string(dist().join("demo.json"))?;
    let one = "\"charge_port\": \"round 3-pin\", \"mass_kg\": 1.1";
    assert!(text.contains(one), "the demo's stronger charger");
    let text = text.replace(one, "\"charge_port\": \"round 5-pin\", \"mass_kg\": 1.1");
    let visit = Visit::of(Site::with_catalogue(&text)?, Browser::new(Size::Desktop))?;
    let page = &visit.page;
    see(page, CHARGER)?;
    unfold(page, CHARGERS)?;
    said(page, "no: different plug")?;
    let buttons = page
        .eval("return document.querySelectorAll('main td button, main th button').length", &[])?;
    assert_eq!(buttons, 0, "it is not offered");
    visit.open(&link("kit=kittiwake&charger=spring-50"))?;
    see(page, CHARGER)?;
    said(page, "This charger's plug is not the one for this pack.")?;
    no_times(page, "Do not use this charger")?;
    visit.end()
}

#[test]
fn a_charger_too_strong_for_the_cells_is_told() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    // Three cells in parallel that take 1 A each, by hand: 3 A.
    visit.open(&link("kit=kittiwake&charger=spring-50&cell.max_charge_a=1&pack.parallel=3"))?;
    see(page, CHARGER)?;
    said(
        page,
        "This charger gives 4.5\u{a0}A, but the cells together are rated for 3\u{a0}A. Don't use it",
    )?;
    said(page, "Limit: cells, 3\u{a0}A")?;
    unfold(page, CHARGERS)?;
    said(page, "no: the cells only take 3\u{a0}A")?;
    // One that those cells take stands beside the warning.
    page.by_css("main [role=status] button")?.click()?;
    page.wait_for("no more warning", |page| {
        Ok(!page.by_css("main")?.text()?.contains("Don't use it"))
    })?;
    said(page, "Limit: charger, 2.5\u{a0}A")?;
    visit.end()
}

#[test]
fn freezing_cells_are_refused_until_they_are_warm() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    let page = &visit.page;
    visit.open(&link("kit=kittiwake&place.air_c=-5"))?;
    see(page, CHARGER)?;
    let words = said(page, "The pack is at −5\u{a0}°C. Charging below 0\u{a0}°C")?;
    assert!(words.contains("damages lithium cells"), "{words}");
    no_times(page, "Do not charge yet")?;
    unfold(page, CHARGERS)?;
    said(page, "too cold now")?;
    assert_eq!(row(page, "main", "Springtide")?[2], "too cold now");
    page.screenshot("page-charge-cold-Desktop")?;
    // What goes away with the answers may be at work just then.
    let script = "const air = document.getElementById('place-air_c');
        for (let n = 0; n < 12; n++) {
            air.value = n % 2 ? '-5' : '6';
            air.dispatchEvent(new Event('input', { bubbles: true }));
            await new Promise((then) => setTimeout(then, 10 * n));
        }";
    page.eval(script, &[])?;
    let mut draft = demo().draft("kittiwake");
    // Out in the cold it rides, indoors it charges.
    draft.set(Slot::Place, "air_c", -5.0);
    page.by_label("Temperature where you charge")?.fill("18")?;
    draft.set(Slot::Place, "charge_air_c", 18.0);
    answers(page, "From 20\u{a0}% to full", &to_full(&draft))?;
    see(page, "Overview")?;
    assert_answers(page, &draft)?;
    visit.end()
}

#[test]
fn the_working_of_a_charge_ends_at_the_wall() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    see(page, CHARGER)?;
    unfold(page, "Working")?;
    unfold(page, "From 20\u{a0}% to full")?;
    let words = said(page, "Energy from the wall: E_wall = ")?;
    for step in ["Charging current: I_charge = 2.5\u{a0}A", "Time to charge: t_charge = "] {
        assert!(words.contains(step), "{words}");
    }
    visit.end()
}

/// Both curves have their numbers in a table, and say what the core found.
#[test]
fn cold_and_age_have_their_curves_and_tables() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    let build = build(&demo().draft("kittiwake"));
    let cold = by_temperature(&build);
    let old = by_age(&build);
    let km = |distance_m: f64| format!("{:.0}", distance_m / 1000.0);
    let at = |air_c: f64| cold.iter().find(|point| point.air_c == air_c).copied();
    let (freezing, warm) = at(0.0).zip(at(25.0)).ok_or_else(|| Fault::new("no such points"))?;
    let words = format!(
        "At 0\u{a0}°C it goes {}\u{a0}km. At 25\u{a0}°C it goes {}\u{a0}km.",
        km(freezing.distance_m),
        km(warm.distance_m)
    );
    see(page, "How far?")?;
    unfold(page, "In the cold, and with age")?;
    page.wait_for(&words, |page| Ok(page.by_css("#view-far")?.text()?.contains(&words)))?;
    page.eval(
        "for (const fold of document.querySelectorAll('#view-far details.chart-data')) fold.open = true",
        &[],
    )?;
    page.wait_until(
        "return [...document.querySelectorAll('#view-far caption')].some((c) => c.textContent === 'Through the year')",
    )?;
    let found = row(page, "#view-far [aria-label='Through the year']", "0")?;
    assert_eq!(found.first(), Some(&km(freezing.distance_m)), "{found:?}");
    let last = old.last().ok_or_else(|| Fault::new("no such point"))?;
    let found = row(page, "#view-far [aria-label='As the pack ages']", "1000")?;
    assert_eq!(found.first(), Some(&km(last.distance_m)), "{found:?}");
    assert!(last.distance_m < warm.distance_m);
    visit.end()
}

/// What the kit offers, in the kit's order.
#[test]
fn every_charger_on_offer_has_its_row() -> Outcome {
    let visit = Visit::at(Size::Desktop)?;
    let page = &visit.page;
    see(page, CHARGER)?;
    unfold(page, CHARGERS)?;
    let script = "return [...document.querySelectorAll('main tbody th')]
        .map((head) => head.firstChild.textContent)";
    let names: Vec<String> = serde_json::from_value(page.eval(script, &[])?).unwrap_or_default();
    let catalog = demo();
    let offered = catalog.offered("kittiwake", Slot::Charger);
    let wanted: Vec<&str> = offered.iter().map(|part| part.name.as_str()).collect();
    assert_eq!(names, wanted);
    assert!(names.len() > 1);
    visit.end()
}
