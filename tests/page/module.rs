//! The calculator as a module in somebody else's page: answers without the page.

use std::fs;

use pitchline_core::catalog::{Outcome as Answered, write_build};
use pitchline_core::{Build, Draft, MODEL, answer_set, answers};
use pitchline_tests::browser::{Browser, Fault, Outcome, Page, Size};
use serde_json::{Value, json};

use crate::random::Draws;
use crate::visit::{Site, Visit, demo};

/// A page that has nothing to do with the calculator, beside its files.
fn host(body: &str) -> Outcome<Visit> {
    let site = Site::new()?;
    let html = format!(
        "<!DOCTYPE html><html lang=en><title>Plain</title><link rel=icon href='data:,'><body>{body}"
    );
    fs::write(site.path().join("plain.html"), html)?;
    let visit = Visit::before(site, Browser::new(Size::Desktop))?;
    visit.page.goto(&format!("{}plain.html", visit.server.url()))?;
    Ok(visit)
}

/// Runs a script with the started module as `pitchline`.
#[track_caller]
fn with_module(page: &Page, script: &str, args: &[Value]) -> Outcome<Value> {
    let start = "const pitchline = await import(new URL('./pitchline.js', location));
        await pitchline.default();";
    page.eval(&format!("{start}\n{script}"), args)
}

/// Every place where two answers differ by more than a part in a thousand million; for what a ride
/// in time gives a part in a million, as its speeds at a limit are searched for to 1e-8 m/s in each
/// of its steps, and the two machines round differently on the way.
fn differences(path: &str, ours: &Value, theirs: &Value, found: &mut Vec<String>) {
    match (ours, theirs) {
        (Value::Object(a), Value::Object(b)) if a.len() == b.len() => {
            for (key, one) in a {
                let other = b.get(key).unwrap_or(&Value::Null);
                differences(&format!("{path}/{key}"), one, other, found);
            }
        }
        (Value::Array(a), Value::Array(b)) if a.len() == b.len() => {
            for (index, (one, other)) in a.iter().zip(b).enumerate() {
                differences(&format!("{path}/{index}"), one, other, found);
            }
        }
        (Value::Number(a), Value::Number(b)) => {
            let (a, b) = (a.as_f64().unwrap_or(f64::NAN), b.as_f64().unwrap_or(f64::NAN));
            let rides = ["/answers/distance", "/answers/rides", "/answers/bands"];
            let in_time = rides.iter().any(|rides| path.starts_with(rides));
            let part = if in_time { 1e-6 } else { 1e-9 };
            let close = (a - b).abs() <= part * a.abs().max(b.abs());
            if !close {
                found.push(format!("{path}: {a}, in the page {b}"));
            }
        }
        (a, b) if a == b => {}
        (a, b) => found.push(format!("{path}: {a}, in the page {b}")),
    }
}

fn boards() -> Vec<Draft> {
    let catalog = demo();
    let mut list = vec![Draft::typical(), catalog.draft("kittiwake"), catalog.draft("gannet")];
    let mut draws = Draws(20_261_125);
    for number in 0..64 {
        list.push(draws.draft(number % 2 == 0));
    }
    list
}

#[test]
fn the_module_answers_as_the_core_does() -> Outcome {
    let visit = host("<p>Nothing to see</p>")?;
    let boards = boards();
    let builds: Vec<Value> = boards.iter().map(write_build).collect();
    let script = "return arguments[0].map((build) => pitchline.answers(build))";
    let given = with_module(&visit.page, script, &[Value::from(builds)])?;
    let given = given.as_array().cloned().unwrap_or_default();
    assert_eq!(given.len(), boards.len());
    let mut seen = Vec::new();
    let mut moving = 0;
    for (number, (board, given)) in boards.iter().zip(&given).enumerate() {
        let found = answer_set(board, &Build::check(board).expect("within the limits"));
        moving += usize::from(found.distance.cruise.distance_m > 0.0);
        let wanted = serde_json::to_value(&found).expect("plain data");
        seen.push(wanted["speed"].to_string());
        let mut found = Vec::new();
        let ignored = given["ignored"].as_array().map_or(usize::MAX, Vec::len);
        // A kit is no part: answers reads no catalogue, and says so.
        assert_eq!(ignored, usize::from(!board.kit.is_empty()), "{given}");
        let given = json!({ "answers": given["answers"] });
        differences("", &json!({ "answers": wanted }), &given, &mut found);
        if !found.is_empty() {
            found.truncate(8);
            return Err(Fault::new(format!("board {number}:\n  {}", found.join("\n  "))));
        }
    }
    // The draws are no thirty copies of one board, nor all too feeble to move.
    seen.sort();
    seen.dedup();
    assert!(seen.len() > 30 && moving > 15, "{} kinds, {moving} moving", seen.len());
    visit.end()
}

#[test]
fn the_module_says_what_is_wrong_and_never_throws() -> Outcome {
    let visit = host("")?;
    let script = "const round = {}; round.self = round;
        const inputs = {
          null: [null], number: [42], text: ['kittiwake'], list: [[]],
          function: [() => 1], symbol: [Symbol('a')], big: [{ wheel: { diameter_mm: 10n } }],
          round: [round], throws: [{ toJSON() { throw new Error('no') } }],
          getter: [{ get wheel() { throw new Error('no') } }],
          small: [{ wheel: { id: 'a', diameter_mm: 5, rolling_smooth: 0.012 } }],
          half: [{ motor_pulley: { teeth: 15.5 } }],
          nan: [{ motor_pulley: { teeth: NaN } }], endless: [{ motor_pulley: { teeth: Infinity } }],
          assumed: [{ rider: { mass_kg: NaN } }],
          string: [{ motor_pulley: { teeth: '16' } }],
          choice: [{ rider: { posture: 'asleep' } }],
          missing: [{ wheel: {} }], slip: [{ wheel: { diametre_mm: 100, rolling_smooth: 0.012 } }],
          two: [{ motor_pulley: { teeth: 7 }, rider: { mass_kg: 500 } }],
          format: [{ format: 'another' }],
        };
        const found = {};
        for (const [name, input] of Object.entries(inputs)) {
          try { found[name] = pitchline.answers(...input) } catch (error) { found[name] = 'threw ' + error }
        }
        return found";
    let found = with_module(&visit.page, script, &[])?;
    let all = found.as_object().cloned().unwrap_or_default();
    assert_eq!(all.len(), 21);
    for (name, given) in &all {
        let errors = given["errors"].as_array().cloned().unwrap_or_default();
        assert!(!errors.is_empty() && given.get("answers").is_none(), "{name} is answered");
        for error in errors {
            let text = |key: &str| error[key].as_str().map(str::len);
            assert!(text("field").is_some() && text("reason") > Some(5), "{name}: {error}");
        }
    }
    // Each names the field, what was given, what is allowed and the unit.
    for (name, number, field, words) in [
        ("small", 0, "/wheel/diameter_mm", ["5 mm", "50 to 400 mm"]),
        ("half", 0, "/motor_pulley/teeth", ["15.5", "8 to 60 teeth"]),
        ("two", 0, "/motor_pulley/teeth", ["7 teeth", "8 to 60 teeth"]),
        ("two", 1, "/rider/mass_kg", ["500 kg", "20 to 180 kg"]),
        ("choice", 0, "/rider/posture", ["asleep", "upright, relaxed, crouched"]),
        ("slip", 0, "/wheel/diametre_mm", ["diametre_mm", "did you mean \"diameter_mm\"?"]),
    ] {
        let error = &found[name]["errors"][number];
        assert_eq!(error["field"], field, "{name}: {error}");
        let reason = error["reason"].as_str().unwrap_or_default();
        assert!(words.iter().all(|words| reason.contains(words)), "{name}: {reason}");
    }
    // It still answers after all that.
    let well = with_module(
        &visit.page,
        "return [pitchline.answers().answers.speed.flat_full.speed_m_s, pitchline.version()]",
        &[],
    )?;
    let typical = answers(&Build::check(&Draft::typical()).expect("typical"));
    let speed = well[0].as_f64().unwrap_or(f64::NAN);
    assert!((speed / typical.speed.flat_full.speed_m_s - 1.0).abs() < 1e-9);
    let record = fs::read_to_string(visit.site.path().join("build.json"))?;
    let record: Value = serde_json::from_str(&record).expect("build.json is JSON");
    assert_eq!(well[1], record["version"]);
    visit.end()
}

/// They take long, so they are there on request alone.
#[test]
fn the_module_gives_bands_when_asked() -> Outcome {
    let visit = host("")?;
    let build = json!({ "rider": { "mass_kg": 95 } });
    let options = json!({ "bands": true, "catalogue": "2026-11" });
    let script = "const [build, options] = arguments;
        const said = (options) => pitchline.answers(build, options);
        return [said(), said(options), said({ band: 1 }), said(5), said(null)]";
    let given = with_module(&visit.page, script, &[build.clone(), options.clone()])?;
    let wanted = json!(Answered::of(Some(&build), Some(&options)));
    let mut found = Vec::new();
    differences("", &wanted, &given[1], &mut found);
    assert_eq!(found, Vec::<String>::new());
    assert_eq!(given[1]["answers"]["made_by"]["model"], MODEL);
    let options = || json!(["options"]);
    for (at, named) in [(0, json!([])), (2, options()), (3, options()), (4, options())] {
        let ignored = given[at]["ignored"].as_array().cloned().unwrap_or_default();
        let fields: Vec<_> = ignored.iter().map(|fault| fault["field"].clone()).collect();
        assert_eq!(Value::from(fields), named, "{at}");
        assert!(given[at]["answers"].get("bands").is_none(), "{at}");
    }
    visit.end()
}

/// What is not understood, or has no effect, is told by name and refuses nothing.
#[test]
fn the_module_tells_what_it_ignores() -> Outcome {
    let visit = host("")?;
    let script = "return arguments[0].map((build) => pitchline.answers(build))";
    let asked = json!([
        { "kit": "moor" }, { "whel": {}, "rider": { "mass_kg": 95 } },
        { "rider": { "mas_kg": 95 } }, { "version": 2 }, {},
    ]);
    let given = with_module(&visit.page, script, &[asked])?;
    let plain = |given: &Value| given["answers"]["speed"]["flat_full"]["speed_m_s"].as_f64();
    for (at, field, words) in [
        (0, "/kit", "is ignored"),
        (1, "/whel", "did you mean \"wheel\"?"),
        (2, "/rider/mas_kg", "did you mean \"mass_kg\"?"),
        (3, "/version", "version 1"),
    ] {
        let ignored = given[at]["ignored"].as_array().cloned().unwrap_or_default();
        let [only] = ignored.as_slice() else { panic!("{field}: {ignored:?}") };
        assert_eq!(only["field"], field);
        assert!(only["reason"].as_str().is_some_and(|said| said.contains(words)), "{only}");
        // The rest is answered.
        assert!(plain(&given[at]).is_some(), "{field}");
    }
    assert_eq!(plain(&given[0]), plain(&given[4]));
    assert!(plain(&given[1]) < plain(&given[4]));
    assert_eq!(given[4]["ignored"], json!([]));
    visit.end()
}

/// Many pages have an element that is called `app`; it is theirs.
#[test]
fn the_module_leaves_the_hosts_page_alone() -> Outcome {
    let visit = host("<div id=app>The shop</div>")?;
    with_module(&visit.page, "pitchline.answers({})", &[])?;
    std::thread::sleep(std::time::Duration::from_millis(700));
    assert!(visit.page.text()?.trim() == "The shop", "the host's own element is gone");
    let kept = visit.page.eval("return [location.hash, localStorage.length]", &[])?;
    assert_eq!(kept, json!(["", 0]));
    visit.end()
}

/// Even when it breaks, it says so and does not throw; nothing enters it afterwards.
#[test]
fn a_broken_module_says_so() -> Outcome {
    let visit = host("")?;
    let script = "const wasm = await pitchline.default();
        let trap = '';
        try { wasm.__wbindgen_malloc(0xffffffff, 1) } catch (error) { trap = error.name }
        return [trap, pitchline.answers({})]";
    let given = with_module(&visit.page, script, &[])?;
    let reason = "Error: The calculator broke. Load the page again.";
    let refused = json!({ "errors": [{ "field": "", "reason": reason }], "ignored": [] });
    assert_eq!(given, json!(["RuntimeError", refused]));
    visit.end()
}
