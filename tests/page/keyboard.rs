//! The whole task by keyboard alone, with the focus always in sight.

use pitchline_core::Slot;
use pitchline_tests::browser::{Fault, Key, Outcome, Page, Size};
use serde_json::Value;

use crate::legible::{open_folds, trouble};
use crate::pick::{MAP, paired, picked_teeth};
use crate::strip::assert_answers;
use crate::visit::{Visit, demo, kit_for, put};

/// Name of what has the focus, and what is wrong with how it is seen.
const LOOK: &str = "
    const e = document.activeElement, r = e.getBoundingClientRect();
    if (e === document.body) return ['', ''];
    const strip = document.querySelector('.strip').getBoundingClientRect();
    const name = e.computedName || e.localName;
    const wrong = [];
    const inStrip = !!e.closest('.strip');
    const top = inStrip || strip.top > 0 ? 0 : strip.bottom;
    if (r.height < (innerHeight - top) / 2 && !e.closest('.messages') && (r.top < top - 1 || r.bottom > innerHeight + 1)) {
      wrong.push(`from ${r.top} to ${r.bottom}, seen from ${top} to ${innerHeight}`);
    }
    const [x, y] = [r.x + r.width / 2, Math.min(Math.max(r.y + r.height / 2, top + 4), innerHeight - 4)];
    const over = document.elementFromPoint(x, y);
    if (!over || !(e.contains(over) || over.contains(e))) wrong.push(`covered by ${over?.className || over?.localName}`);
    const ringed = [e, e.closest('.field-box')].some((at) => {
      const style = at && getComputedStyle(at);
      return style && style.outlineStyle !== 'none' && parseFloat(style.outlineWidth) >= 2;
    });
    if (!ringed) wrong.push('no ring');
    return [name, wrong.join('; ')]";

/// What has the focus now; fails when it is out of sight.
#[track_caller]
fn look(page: &Page) -> Outcome<String> {
    let found = page.eval(LOOK, &[])?;
    let part = |index: usize| found[index].as_str().unwrap_or_default().to_owned();
    match part(1) {
        wrong if wrong.is_empty() => Ok(part(0)),
        wrong => Err(Fault::new(format!("{}: {wrong}", part(0)))),
    }
}

/// Tabs until what has the focus is called so.
#[track_caller]
fn tab_to(page: &Page, name: &str) -> Outcome {
    for _ in 0..150 {
        page.press(Key::Tab)?;
        let here = look(page)?;
        if here == name || here.starts_with(&format!("{name} ")) {
            return Ok(());
        }
    }
    Err(Fault::new(format!("no way to {name:?} by Tab")))
}

fn write(page: &Page, text: &str) -> Outcome {
    page.chord(&[Key::Control, Key::Char('a')])?;
    text.chars().try_for_each(|letter| page.press(Key::Char(letter)))
}

fn whole_task(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    tab_to(page, "Gannet")?;
    page.press(Key::Enter)?;
    let mut draft = kit_for(&catalog, "gannet", &catalog.draft("kittiwake"));
    assert_answers(page, &draft)?;
    assert!(look(page)?.starts_with("Gannet"), "the focus moved");

    tab_to(page, "Your weight")?;
    write(page, "96,5")?;
    draft.set(Slot::Rider, "mass_kg", 96.5);
    assert_answers(page, &draft)?;
    page.press(Key::Up)?;
    draft.set(Slot::Rider, "mass_kg", 97.0);
    let kept = visit.stored("current")?["rider"]["mass_kg"].as_f64();
    draft.set(Slot::Rider, "mass_kg", kept.unwrap_or(f64::NAN));
    assert!(kept > Some(96.5), "arrow up steps up: {kept:?}");
    assert_answers(page, &draft)?;

    tab_to(page, "Wheel ×4")?;
    page.press(Key::Down)?;
    put(&mut draft, &catalog, Slot::Wheel, "buoy-185");
    assert_answers(page, &draft)?;
    assert!(look(page)?.starts_with("Wheel"), "the focus moved");

    tab_to(page, MAP)?;
    let before = picked_teeth(page)?;
    // The first key shows where the board stands; then one column and one row on.
    for key in [Key::Right, Key::Right, Key::Down] {
        page.press(key)?;
    }
    if picked_teeth(page)? != before {
        return Err(Fault::new("moving over the map already picks"));
    }
    page.press(Key::Enter)?;
    page.wait_for("another pairing", |page| Ok(picked_teeth(page)? != before))?;
    let teeth = picked_teeth(page)?;
    let more = |slot: Slot| {
        let now = draft.value(slot, "teeth");
        let at = slot.kind().field_index("teeth").expect("pulleys have teeth");
        let offered =
            catalog.offered(&draft.kit, slot).into_iter().filter_map(|part| part.value(at));
        offered.filter(|teeth| Some(*teeth) > now).min_by(f64::total_cmp)
    };
    let wanted = [more(Slot::MotorPulley), more(Slot::WheelPulley)];
    assert_eq!([&teeth.0, &teeth.1].map(|teeth| teeth.parse().ok()), wanted);
    assert_answers(page, &paired(&draft, &teeth))?;
    assert!(look(page)?.starts_with(MAP), "the focus moved");
    let readout = page.by_css(".gear-map .chart-readout")?.text()?;
    let pairing = format!("Motor {}, wheel {} teeth", teeth.0, teeth.1);
    assert!(readout.starts_with(&pairing), "{readout}");
    page.screenshot(&format!("page-keyboard-{size:?}"))?;
    page.press(Key::Escape)?;
    page.wait_until("return !document.querySelector('.gear-map .c-cursor')")?;
    // A curve answers to the arrows too.
    tab_to(page, "Arrow keys move along the curve")?;
    page.press(Key::End)?;
    page.press(Key::Left)?;
    page.wait_until("return document.activeElement.closest('figure').querySelector('.chart-readout').textContent.includes('push')")?;
    visit.end()
}

#[test]
fn the_whole_task_by_keyboard_on_a_phone() -> Outcome {
    whole_task(Size::Phone)
}

#[test]
fn the_whole_task_by_keyboard_on_a_desktop() -> Outcome {
    whole_task(Size::Desktop)
}

/// A tile of the strip leads to its question, and the next Tab goes on there.
#[test]
fn the_strip_leads_on() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    for (tile, id) in [(0, "fast"), (1, "steep"), (2, "far")] {
        visit.reload()?;
        let script = "document.querySelectorAll('a.tile')[arguments[0]].focus()";
        page.eval(script, &[tile.into()])?;
        page.press(Key::Enter)?;
        page.wait_until(&format!(
            "const head = document.getElementById('{id}-title').getBoundingClientRect();
             const strip = document.querySelector('.strip').getBoundingClientRect();
             return strip.top === 0 && head.top >= strip.bottom && head.bottom < innerHeight"
        ))?;
        page.press(Key::Tab)?;
        look(page)?;
        let within = page.eval("return document.activeElement.closest('section')?.id", &[])?;
        assert_eq!(within, Value::from(id), "Tab after the tile goes on in its question");
    }
    visit.end()
}

/// Through every stop of the page and back, with all folds open, a field at
/// fault and messages shown: nothing that has the focus is out of sight.
fn walk(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    trouble(&visit)?;
    open_folds(page)?;
    page.eval("document.activeElement.blur(); scrollTo(0, 0)", &[])?;
    let mut faults = Vec::new();
    for keys in [[Key::Tab].as_slice(), &[Key::Shift, Key::Tab]] {
        let mut stops = 0;
        loop {
            page.chord(keys)?;
            match look(page) {
                Ok(name) if name.is_empty() => break,
                Ok(_) => {}
                Err(fault) => faults.push(format!("{keys:?} {fault}")),
            }
            stops += 1;
            if stops > 1500 {
                return Err(Fault::new("the keyboard is trapped"));
            }
        }
        assert!(stops > 200, "only {stops} stops");
    }
    if faults.is_empty() {
        return visit.end();
    }
    let count = faults.len();
    faults.truncate(12);
    Err(Fault::new(format!("{count} stops out of sight:\n  {}", faults.join("\n  "))))
}

#[test]
fn the_focus_is_always_seen_on_a_phone() -> Outcome {
    walk(Size::Phone)
}

#[test]
fn the_focus_is_always_seen_on_a_desktop() -> Outcome {
    walk(Size::Desktop)
}
