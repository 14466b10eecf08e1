//! The whole task by keyboard alone, with the focus always in sight.

use pitchline_core::Slot;
use pitchline_tests::browser::{Fault, Key, Outcome, Page, Size};

use crate::legible::{open_folds_in, trouble};
use crate::pick::MAP;
use crate::strip::assert_answers;
use crate::visit::{Visit, assert_none, demo, drawn, kit_for, put, see, views};

/// Name of what has the focus, and what is wrong with how it is seen. The foot of the page, with
/// its bar and messages, takes its part where it holds on to the screen.
const LOOK: &str = "
    const e = document.activeElement, r = e.getBoundingClientRect();
    if (e === document.body) return ['', ''];
    const name = e.computedName || e.localName;
    const wrong = [];
    const foot = document.querySelector('.foot'), its = foot.getBoundingClientRect();
    const above = its.left < r.right && its.right > r.left && !foot.contains(e);
    const held = above && getComputedStyle(foot).position !== 'static';
    const bottom = held ? Math.min(innerHeight, its.top) : innerHeight;
    if (r.height < bottom / 2 && !e.closest('.messages') && (r.top < -1 || r.bottom > bottom + 1)) {
      wrong.push(`from ${r.top} to ${r.bottom}, seen from 0 to ${bottom}`);
    }
    const [x, y] = [r.x + r.width / 2, Math.min(Math.max(r.y + r.height / 2, 4), bottom - 4)];
    const over = document.elementFromPoint(x, y);
    if (!over || !(e.contains(over) || over.contains(e))) wrong.push(`covered by ${over?.className || over?.localName}`);
    const ringed = [e, e.closest('.field-row')].some((at) => {
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

/// Goes to a view by the keys alone; from the overview where the way to a question is there.
#[track_caller]
fn go(page: &Page, view: &str, size: Size) -> Outcome {
    if size == Size::Phone && !["Overview", "Build"].contains(&view) {
        go(page, "Overview", size)?;
    }
    tab_to(page, view)?;
    page.press(Key::Enter)?;
    // The reader goes on from the heading.
    page.wait_until(
        "return document.activeElement.id === 'view-title' && scrollY === 0
           && document.querySelectorAll('#view-title').length === 1",
    )?;
    let title = if view == "Build" { "What's on it?" } else { view };
    page.wait_for(view, |page| {
        Ok(page.eval("return document.activeElement.textContent", &[])? == title)
    })?;
    drawn(page)
}

/// Opens a fold by the keys alone.
#[track_caller]
fn unfold(page: &Page, title: &str) -> Outcome {
    tab_to(page, title)?;
    page.press(Key::Enter)?;
    page.wait_until(
        "const { open, lastElementChild } = document.activeElement.parentElement;
         return open && lastElementChild.childElementCount > 0",
    )?;
    // No hand tabs on before what it opened is there; what takes longer says so in the next frame.
    page.eval(
        "await new Promise((done) => requestAnimationFrame(() => requestAnimationFrame(done)))",
        &[],
    )?;
    drawn(page)
}

/// The id of the part that is kept in a slot.
#[track_caller]
fn kept(visit: &Visit, slot: Slot) -> Outcome<String> {
    let id = visit.stored("current")?[slot.key()]["id"].as_str().map(str::to_owned);
    id.ok_or_else(|| Fault::new(format!("no {} is kept", slot.key())))
}

fn whole_task(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    let catalog = demo();
    // On a desktop the build is beside the view.
    if size == Size::Phone {
        go(page, "Build", size)?;
    }
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
    let mass = visit.stored("current")?["rider"]["mass_kg"].as_f64();
    draft.set(Slot::Rider, "mass_kg", mass.unwrap_or(f64::NAN));
    assert!(mass > Some(96.5), "arrow up steps up: {mass:?}");
    assert_answers(page, &draft)?;

    unfold(page, "Wheels and trucks")?;
    tab_to(page, "Wheel ×4")?;
    page.press(Key::Down)?;
    put(&mut draft, &catalog, Slot::Wheel, "buoy-185");
    assert_answers(page, &draft)?;
    assert!(look(page)?.starts_with("Wheel"), "the focus moved");

    go(page, "How fast?", size)?;
    // A curve answers to the arrows.
    tab_to(page, "Arrow keys move along the curve")?;
    page.press(Key::End)?;
    page.press(Key::Left)?;
    page.wait_until("return document.activeElement.closest('figure').querySelector('.chart-readout').textContent.includes('push')")?;
    unfold(page, "Which pulleys and wheels?")?;
    tab_to(page, MAP)?;
    let pulleys = [Slot::MotorPulley, Slot::WheelPulley];
    let before = pulleys.map(|slot| kept(&visit, slot).ok());
    // The first key shows where the board stands; then one column and one row on.
    for key in [Key::Right, Key::Right, Key::Down] {
        page.press(key)?;
    }
    if pulleys.map(|slot| kept(&visit, slot).ok()) != before {
        return Err(Fault::new("moving over the map already picks"));
    }
    // The next more teeth of what the kit offers.
    for slot in pulleys {
        let now = draft.value(slot, "teeth");
        let at = slot.kind().field_index("teeth").expect("pulleys have teeth");
        let offered = catalog.offered(&draft.kit, slot).into_iter();
        let more = offered.filter(|part| part.value(at) > now);
        let next = more.min_by(|a, b| {
            f64::total_cmp(&a.value(at).unwrap_or(0.0), &b.value(at).unwrap_or(0.0))
        });
        let id = next.expect("there is one with more teeth").id.clone();
        put(&mut draft, &catalog, slot, &id);
    }
    page.press(Key::Enter)?;
    page.wait_for("another pairing", |_| {
        Ok(pulleys.map(|slot| kept(&visit, slot).ok())
            == pulleys.map(|slot| Some(draft.record(slot).id.clone())))
    })?;
    assert!(look(page)?.starts_with(MAP), "the focus moved");
    let readout = page.by_css(".gear-map .chart-readout")?.text()?;
    let [motor, wheel] = pulleys.map(|slot| draft.value(slot, "teeth").unwrap_or(f64::NAN));
    let pairing = format!("{motor}/{wheel}\u{a0}teeth");
    assert!(readout.starts_with(&pairing), "{readout}");
    page.screenshot(&format!("page-keyboard-{size:?}"))?;
    page.press(Key::Escape)?;
    page.wait_until("return !document.querySelector('.gear-map .c-cursor')")?;
    go(page, "Overview", size)?;
    assert_answers(page, &draft)?;
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

/// An answer of the overview leads to its question, and the next Tab goes on there.
#[test]
fn the_answers_lead_on() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    for (tile, id) in [(0, "fast"), (1, "steep"), (2, "far")] {
        see(page, "Overview")?;
        let script = "document.querySelectorAll('a.tile')[arguments[0]].focus()";
        page.eval(script, &[tile.into()])?;
        page.press(Key::Enter)?;
        page.wait_until(&format!(
            "const head = document.querySelector('#view-{id} #view-title'), box = head.getBoundingClientRect();
             return document.activeElement === head && box.top >= 0 && box.bottom < innerHeight"
        ))?;
        page.press(Key::Tab)?;
        look(page)?;
        let within = page.eval("return document.activeElement.closest('section.view')?.id", &[])?;
        assert_eq!(within, format!("view-{id}"), "Tab after the tile goes on in its question");
    }
    visit.end()
}

/// Through every stop of the view in sight, to its end or back to its beginning; gives how many.
#[track_caller]
fn stops(page: &Page, keys: &[Key], state: &str, faults: &mut Vec<String>) -> Outcome<u32> {
    for stops in 0..1500 {
        page.chord(keys)?;
        match look(page) {
            Ok(name) if name.is_empty() => return Ok(stops),
            Ok(_) => {}
            Err(fault) => faults.push(format!("{state} {keys:?} {fault}")),
        }
    }
    Err(Fault::new(format!("{state}: the keyboard is trapped")))
}

/// Through every stop of every view and back, with all folds open, a field at fault and messages
/// shown: nothing that has the focus is out of sight. What stands beside each view has its folds
/// open in one of them.
fn walk(size: Size) -> Outcome {
    let visit = Visit::at(size)?;
    let page = &visit.page;
    trouble(&visit)?;
    let mut faults = Vec::new();
    let (mut there, mut back) = (0, 0);
    for view in views(page)?.iter().rev() {
        see(page, view)?;
        open_folds_in(page, if view == "Overview" { "body" } else { "main" })?;
        // From the heading to the top first.
        stops(page, &[Key::Shift, Key::Tab], view, &mut faults)?;
        let ways = [[Key::Tab].as_slice(), &[Key::Shift, Key::Tab]];
        let [down, up] = ways.map(|keys| stops(page, keys, view, &mut faults));
        let (down, up) = (down?, up?);
        assert!(down > 4 && up > 4, "{view}: only {down} and {up} stops");
        there += down;
        back += up;
    }
    assert!(there > 300 && back > 300, "only {there} and {back} stops");
    assert_none(&faults)?;
    visit.end()
}

#[test]
fn the_focus_is_always_seen_on_a_phone() -> Outcome {
    walk(Size::Phone)
}

#[test]
fn the_focus_is_always_seen_on_a_desktop() -> Outcome {
    walk(Size::Desktop)
}
