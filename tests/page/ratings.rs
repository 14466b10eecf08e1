//! What gives first? and What do I set?, from the faults of a bad build to its cures, and from the
//! settings to a file and back.

use pitchline_core::{Build, Draft, Level, Slot, margins, settings, wiring, with_settings};
use pitchline_tests::browser::{Outcome, Page, Size};

use crate::visit::{Visit, demo, link, see, unfold};

const GIVES: &str = "What gives first?";
const SET: &str = "What do I set?";

/// Thin wires, small cells, tall gear, a heavy rider and a steep hill.
const BAD: &str = "kit=kittiwake&pack.wire_a=12&cell.max_discharge_a=8&motor_pulley=m8-19\
    &wheel_pulley=w38&rider.mass_kg=110&ride.grade_percent=15";

fn bad() -> Draft {
    let catalog = demo();
    let mut draft = catalog.draft("kittiwake");
    for (slot, id) in [(Slot::MotorPulley, "m8-19"), (Slot::WheelPulley, "w38")] {
        draft.set_record(slot, catalog.part(slot.kind(), id).expect("on offer").clone());
    }
    for (slot, key, value) in [
        (Slot::Pack, "wire_a", 12.0),
        (Slot::Cell, "max_discharge_a", 8.0),
        (Slot::Rider, "mass_kg", 110.0),
        (Slot::Ride, "grade_percent", 15.0),
    ] {
        draft.set(slot, key, value);
    }
    draft
}

/// The table of ratings: part, asked, rated, to spare.
fn rows(page: &Page) -> Outcome<Vec<Vec<String>>> {
    let script = "return [...document.querySelectorAll('main .chart-table tbody tr')]
        .map((row) => [...row.children].map((cell) => cell.textContent))";
    Ok(serde_json::from_value(page.eval(script, &[])?).unwrap_or_default())
}

/// The number that a cell begins with.
fn number(cell: &str) -> f64 {
    let end = cell.find(|c: char| !c.is_ascii_digit() && c != '.' && c != '-');
    cell[..end.unwrap_or(cell.len())].parse().unwrap_or(f64::NAN)
}

/// What is to be changed: what it is for, and the words of the button.
fn cures(page: &Page) -> Outcome<Vec<[String; 2]>> {
    let script = "return [...document.querySelectorAll('main section li')].map((one) =>
        [one.firstElementChild.textContent, one.querySelector('button')?.textContent ?? ''])";
    Ok(serde_json::from_value(page.eval(script, &[])?).unwrap_or_default())
}

/// Waits until all that is on offer was tried.
fn tried(page: &Page) -> Outcome {
    page.wait_until(
        "const help = document.querySelector('main section .help');
         return !help || help.textContent === ''",
    )
}

#[test]
fn faults_come_worst_first_and_cures_cure() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    visit.open(&link(BAD))?;
    see(page, GIVES)?;
    tried(page)?;
    page.by_text("Table of ratings")?.click()?;
    page.wait_until("return !!document.querySelector('main .chart-table tbody tr')")?;
    let rows = rows(page)?;
    // The first by hand: 54 A at full throttle through cells that take 8 A, three in parallel.
    let found = rows.iter().find(|row| row[0] == "Cells, discharging").expect("rated");
    assert_eq!((number(&found[2]).round(), number(&found[3])), (18.0, 8.0), "{found:?}");
    let spare: Vec<f64> = rows.iter().map(|row| 1.0 - number(&row[2]) / number(&row[3])).collect();
    assert!(spare.windows(2).all(|pair| pair[0] <= pair[1] + 0.01), "{rows:?}");
    let over = rows.iter().filter(|row| row[4].contains("over")).count();
    assert!(over >= 3, "{rows:?}");
    let draft = bad();
    let core = margins(&Build::check(&draft).expect("in range"));
    let of_core = core.list.iter().filter(|margin| margin.level == Level::Over).count();
    assert_eq!(over, of_core);

    // Each cure in turn, the worst fault first, until nothing is over or nothing on offer helps.
    for _ in 0..6 {
        tried(page)?;
        let list = cures(page)?;
        let Some([of, button]) = list.iter().find(|cure| !cure[1].is_empty()) else { break };
        page.by_role("button", button)?.click()?;
        page.wait_for("the fault is gone", |page| {
            let now = cures(page)?;
            let parts: Vec<&str> = of.trim_end_matches(". ").split("; ").collect();
            Ok(parts.iter().all(|part| now.iter().all(|one| !one[0].contains(part))))
        })?;
    }
    tried(page)?;
    assert_eq!(cures(page)?.iter().filter(|cure| !cure[1].is_empty()).count(), 0);
    page.assert_accessible()?;
    visit.end()
}

#[test]
fn fuse_and_wire_are_those_of_the_core() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    see(page, GIVES)?;
    unfold(page, "Fuse and wires")?;
    let rows = rows(page)?;
    let draft = demo().draft("kittiwake");
    let found = wiring(&draft, &Build::check(&draft).expect("in range"));
    let of = |name: &str| {
        let row = rows.iter().find(|row| row[0] == name);
        number(&row.unwrap_or_else(|| panic!("{name} is not in {rows:?}"))[1])
    };
    assert_eq!(of("Main fuse"), found.fuse.fuse_a.expect("every rating is given"));
    assert_eq!(of("Fuse voltage, DC"), 50.4);
    // 12 groups of 3.
    assert_eq!((of("Connections between groups"), of("Welds on the cells")), (11.0, 72.0));
    page.assert_accessible()?;
    visit.end()
}

#[test]
fn settings_go_out_and_come_back() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    see(page, SET)?;
    page.permit("clipboard-write", true)?;
    page.permit("clipboard-read", true)?;
    page.by_role("button", "Copy as CSV")?.click()?;
    page.by_text("Copied.")?;
    let text = page.eval("return await navigator.clipboard.readText()", &[])?;
    let text = text.as_str().unwrap_or_default();
    let draft = demo().draft("kittiwake");
    let build = Build::check(&draft).expect("in range");
    let found = settings(&draft, &build);
    let mut read = csv::Reader::from_reader(text.as_bytes());
    let rows: Vec<csv::StringRecord> = read.records().map(|row| row.expect("a row")).collect();
    assert!(rows.len() > found.len(), "what they rest on stands below: {text}");
    // Read back and set, they are the board that the button sets.
    let mut set = draft.clone();
    for (one, row) in found.iter().zip(&rows) {
        let value = row[1].parse::<f64>().ok();
        assert_eq!(value.is_some(), one.value.is_some(), "{row:?}");
        if let (Some((Slot::Controller, key)), Some(value)) = (one.setting.input(), value) {
            set.set(Slot::Controller, key, value);
        }
        if row[0].contains("current") {
            assert_eq!(&row[3], "per motor", "{row:?}");
        }
        if row[0].contains("Motor current") {
            assert_eq!(&row[4], "peak phase", "{row:?}");
        }
    }
    let wanted = with_settings(&draft, &found);
    for field in Slot::Controller.kind().fields() {
        let [set, wanted] = [&set, &wanted].map(|draft| draft.value(Slot::Controller, field.key));
        let near = set.zip(wanted).is_none_or(|(set, wanted)| (set - wanted).abs() < 1e-6);
        assert!(set.is_some() == wanted.is_some() && near, "{}: {set:?}, {wanted:?}", field.key);
    }
    page.by_role("button", "Use the recommended settings")?.click()?;
    page.wait_for("it is set", |_| {
        let kept = visit.stored("current")?["controller"]["motor_current_a"].as_f64();
        Ok(kept == wanted.value(Slot::Controller, "motor_current_a"))
    })?;
    page.by_role("button", "Undo –")?.click()?;
    page.by_role("button", "Use the recommended settings")?;
    page.assert_accessible()?;
    visit.end()
}

#[test]
fn what_would_climb_better_does() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    see(page, "How steep?")?;
    unfold(page, "What would climb better?")?;
    page.wait_for("a change", |page| {
        page.eval("return !!document.querySelector('main .fold .cures button')", &[])
            .map(|there| there == true)
    })?;
    let all = "return [...document.querySelectorAll('main .fold .help')].every((line) => !line.textContent.includes('Working'))";
    page.wait_until(all)?;
    let told = page.by_css("main .fold li span")?.text()?;
    let percent = told.split(' ').nth(1).map(number).unwrap_or(f64::NAN);
    assert!(percent > 0.0, "{told}");
    page.by_css("main .fold li button")?.click()?;
    page.wait_for(&format!("{percent} %"), |page| {
        let lead = page.by_css("main .headline-figure")?.text()?;
        let ends: Vec<f64> = lead.split(['–', ' ', '\u{a0}']).map(number).collect();
        Ok(ends
            .first()
            .zip(ends.get(1))
            .is_some_and(|(low, high)| *low <= percent && percent <= *high))
    })?;
    visit.end()
}
