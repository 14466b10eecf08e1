//! Narrow screens, large text, and fingers.

use std::collections::BTreeMap;

use pitchline_tests::browser::{Browser, Key, Outcome, Page, Size, Theme};
use serde_json::Value;

use crate::legible::{open_folds, trouble};
use crate::pick::pairings;
use crate::visit::{Site, Visit, assert_none, drawn, link, see, views, wait_begun};

/// What sticks out: of the window, or of its own box without a way to scroll.
const OFFENDERS: &str = "
    const wide = document.scrollingElement.scrollWidth, room = document.documentElement.clientWidth;
    const name = (e) => `${e.localName}.${e.getAttribute('class') ?? ''}#${e.id} ${(e.textContent ?? '').slice(0, 40)}`;
    const found = [];
    if (wide > room) found.push(`the page is ${wide} wide in ${room}`);
    for (const e of document.querySelectorAll('body *')) {
      if (!e.checkVisibility() || e.closest('.chart-table') && !e.matches('.chart-table')) continue;
      // Drawings cannot know of a reader's own spacing; they may not widen the page.
      if (arguments[0] && e instanceof SVGElement) continue;
      const r = e.getBoundingClientRect();
      // Heard, not seen.
      if (r.width <= 1 && r.height <= 1) continue;
      if (r.width && (r.right > room + 0.6 || r.left < -0.6)) found.push(`${name(e)}: ${r.left} to ${r.right}`);
      const scrolls = ['auto', 'scroll'].includes(getComputedStyle(e).overflowX);
      // What a closed group holds is said in one line, cut where it ends: it stands in the group.
      if (e instanceof HTMLElement && !e.matches('select, input, .chart-plot, .chart-frame, .group .fold-hint') && !scrolls
          && e.clientWidth && e.scrollWidth > e.clientWidth + 1) {
        found.push(`${name(e)}: ${e.scrollWidth} in ${e.clientWidth}`);
      }
    }
    return found.slice(0, 12)";

/// What sticks out of the view in sight.
#[track_caller]
fn sticking_out(page: &Page, state: &str) -> Outcome<Vec<String>> {
    let found = page.eval(OFFENDERS, &[state.contains("spacing").into()])?;
    let list: Vec<String> = serde_json::from_value(found).expect("a list of words");
    Ok(list.into_iter().map(|one| format!("{state}: {one}")).collect())
}

/// Text at so many per cent of its size, as readers set it in their browser.
#[track_caller]
fn enlarge(page: &Page, percent: u32) -> Outcome {
    let script = "document.documentElement.style.fontSize = `${arguments[0]}%`";
    page.eval(script, &[percent.into()])?;
    let pixels = f64::from(percent) * 0.16;
    page.wait_until(&format!("return getComputedStyle(document.body).fontSize === '{pixels}px'"))
}

/// A reader's own spacing, as WCAG 2.2, criterion 1.4.12, has it; none to take it back.
const SPACING: &str = "const style = document.body.style, given = arguments[0];
    style.lineHeight = given ? 1.5 : ''; style.letterSpacing = given ? '0.12em' : '';
    style.wordSpacing = given ? '0.16em' : ''";

/// WCAG 2.2, criterion 1.4.10: 320 CSS px without sideways scrolling, which is 1280 px at four times
/// the size; 1.4.12, with its text spacing; and 1.4.4, text at twice its size. Every view in all of
/// them, since a view that is in sight is laid out anew at once.
#[test]
fn nothing_sticks_out_of_a_narrow_screen() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Narrow))?;
    let page = &visit.page;
    page.goto(&visit.server.url())?;
    wait_begun(page)?;
    let mut found = sticking_out(page, "first, 320 px")?;
    visit.open("")?;
    for view in views(page)? {
        see(page, &view)?;
        drawn(page)?;
        found.extend(sticking_out(page, &format!("{view}, 320 px"))?);
    }
    trouble(&visit)?;
    let places = [
        // A desktop at twice its size is half as wide, and at four times a quarter.
        ("1280 px at 200 %", Size::Pixels(640, 400), 100),
        ("1280 px at 400 %", Size::Pixels(320, 200), 100),
        ("390 px", Size::Phone, 100),
        ("390 px, text at 200 %", Size::Phone, 200),
        ("320 px", Size::Narrow, 100),
    ];
    for units in ["km, kg", "mi, lb"] {
        see(page, "More")?;
        page.by_role("button", units)?.click()?;
        for view in views(page)? {
            see(page, &view)?;
            open_folds(page)?;
            for (name, size, percent) in places {
                page.set_size(size)?;
                enlarge(page, percent)?;
                drawn(page)?;
                found.extend(sticking_out(page, &format!("{view}, {name}, all open, {units}"))?);
            }
            page.eval(SPACING, &[true.into()])?;
            found.extend(sticking_out(page, &format!("{view}, 320 px, text spacing, {units}"))?);
            page.eval(SPACING, &[false.into()])?;
        }
    }
    assert_none(&found)?;
    visit.end()
}

/// The build beside a view, on a desktop and on the narrowest screen that has room for it.
#[test]
fn nothing_sticks_out_of_two_columns() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Desktop))?;
    let page = &visit.page;
    let mut found = Vec::new();
    trouble(&visit)?;
    for view in views(page)? {
        see(page, &view)?;
        open_folds(page)?;
        for (name, size) in [("960 px", Size::Pixels(960, 600)), ("1280 px", Size::Desktop)] {
            page.set_size(size)?;
            page.by_css("aside")?;
            drawn(page)?;
            found.extend(sticking_out(page, &format!("{view}, {name}, all open"))?);
        }
    }
    assert_none(&found)?;
    visit.end()
}

/// At twice the text a figure that breaks reads as two, and a bar that fills the window hides the rest;
/// sideways and at 200 % and more it lets go of the screen.
#[test]
fn the_bar_and_the_answers_leave_room() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    visit.open("")?;
    let bar = "const bar = document.querySelector('.foot'), box = bar.getBoundingClientRect();
        return [getComputedStyle(bar).position, box.height / innerHeight, Math.round(innerHeight - box.bottom)]";
    enlarge(page, 200)?;
    page.screenshot("page-large-text-Phone")?;
    for view in ["Overview", "Build"] {
        see(page, view)?;
        let lines = "return [...document.querySelectorAll('.tile strong')].map((e) => e.getClientRects().length)";
        assert_eq!(page.eval(lines, &[])?, serde_json::json!([1, 1, 1]), "{view}");
        let held = page.eval(bar, &[])?;
        assert_eq!((&held[0], &held[2]), (&"sticky".into(), &0.into()), "{view}: {held}");
        assert!(held[1].as_f64() < Some(0.25), "{view}: the bar takes {held}");
    }
    enlarge(page, 100)?;
    for size in [Size::Pixels(844, 390), Size::Pixels(640, 400), Size::Pixels(320, 200)] {
        page.set_size(size)?;
        assert_eq!(page.eval(bar, &[])?[0], "static", "{size:?}");
    }
    visit.end()
}

/// A message, its offer and its "Close" side by side on a phone.
#[test]
fn the_buttons_of_a_message_stay_beside_it() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    for size in [Size::Phone, Size::Narrow] {
        page.set_size(size)?;
        visit.open("")?;
        // The page writes its own address a moment after it has begun.
        page.wait_until("return location.hash.includes('kit=')")?;
        visit.open(&link("kit=gannet&rider.mass_kg=81"))?;
        page.by_text("Build opened from the link.")?;
        // The head has an Undo too.
        let button = |n| Outcome::Ok(page.all_by_css(".message button")?.swap_remove(n));
        let (undo, close) = (button(0)?, button(1)?);
        assert_eq!((undo.text()?.as_str(), close.text()?.as_str()), ("Undo", "Close"));
        let (undo, close) = (undo.rect()?, close.rect()?);
        assert!((undo.y - close.y).abs() < 0.5 && undo.x < close.x, "{size:?}");
        page.screenshot(&format!("page-message-{size:?}"))?;
        button(0)?.click()?;
    }
    visit.end()
}

/// Wide tables show that they go on, in every choice of colours, and scroll by
/// keyboard.
#[test]
fn a_wide_table_shows_that_it_goes_on() -> Outcome {
    let visit = Visit::at(Size::Phone)?;
    let page = &visit.page;
    pairings(page)?;
    page.eval("document.querySelector('.gear-map .chart-data').open = true", &[])?;
    let table = page.by_role("region", "Every available pairing")?;
    let hidden = "const e = arguments[0]; return [e.scrollLeft, e.scrollWidth - e.clientWidth - e.scrollLeft]";
    let hidden = || -> Outcome<[f64; 2]> {
        Ok(serde_json::from_value(page.eval(hidden, &[table.json()])?).unwrap_or_default())
    };
    assert!(hidden()?[0] == 0.0 && hidden()?[1] > 40.0, "{:?}", hidden()?);
    table.focus()?;
    page.press(Key::Right)?;
    page.wait_for("it scrolls", |_| Ok(hidden()?[0] > 10.0))?;
    page.assert_accessible()?;

    // Two covers of the ground's colour go with the table, over two shades that stay.
    let layers = "const style = getComputedStyle(arguments[0]);
        const colours = style.backgroundImage.match(/rgba?\\([^)]*\\)/g) ?? [];
        return [style.backgroundAttachment, colours[0], colours[4]]";
    let mut looks = Vec::new();
    for theme in [Theme::Light, Theme::Dark] {
        page.set_theme(theme)?;
        table.hover(0.5, 0.1)?;
        looks.push((format!("{theme:?}"), page.eval(layers, &[table.json()])?));
        page.screenshot(&format!("page-wide-table-{theme:?}"))?;
    }
    page.set_forced_colors(true)?;
    looks.push(("forced".into(), page.eval(layers, &[table.json()])?));
    page.screenshot("page-wide-table-forced")?;
    page.set_forced_colors(false)?;
    for (name, look) in looks {
        assert_eq!(look[0], "local, local, scroll, scroll", "{name}");
        let ratio = contrast(&look[1], &look[2]);
        assert!(ratio >= 3.0, "{name}: {ratio} of {look}");
    }
    visit.end()
}

/// Contrast ratio of two colours as the browser writes them; zero for none.
/// WCAG 2.2, "contrast ratio" and "relative luminance".
fn contrast(one: &Value, other: &Value) -> f64 {
    let luminance = |colour: &Value| {
        let text = colour.as_str()?.split_once('(')?.1;
        let channels: Vec<f64> =
            text.trim_end_matches(')').split(',').filter_map(|c| c.trim().parse().ok()).collect();
        let linear = |c: &f64| {
            let c = c / 255.0;
            if c <= 0.04045 { c / 12.92 } else { ((c + 0.055) / 1.055).powf(2.4) }
        };
        let [r, g, b] =
            channels.get(..3)?.iter().map(linear).collect::<Vec<_>>().try_into().ok()?;
        Some(0.2126 * r + 0.7152 * g + 0.0722 * b)
    };
    match (luminance(one), luminance(other)) {
        (Some(one), Some(other)) => (f64::max(one, other) + 0.05) / (f64::min(one, other) + 0.05),
        _ => 0.0,
    }
}

/// 44 px, for cold and greasy fingers: WCAG 2.2, criterion 2.5.5.
#[test]
fn fingers_find_every_control() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    trouble(&visit)?;
    page.permit("clipboard-write", false)?;
    let script = "
        const small = [], kinds = {};
        for (const e of document.querySelectorAll('button, select, input, summary, a[href], [role=application]')) {
          if (!e.checkVisibility()) continue;
          kinds[e.localName] = (kinds[e.localName] ?? 0) + 1;
          const r = e.getBoundingClientRect();
          if (r.width < 43.99 || r.height < 43.99) small.push(`${e.localName}#${e.id} ${e.computedName}: ${r.width} x ${r.height}`);
        }
        // A cell of the gear map is a control in all but name.
        const cells = document.querySelectorAll('.gear-map .c-cell');
        for (const e of [...cells].slice(0, 9)) {
          const r = e.getBoundingClientRect();
          if (r.width < 43 || r.height < 40) small.push(`cell of the map: ${r.width} x ${r.height}`);
        }
        return [small, { ...kinds, cell: cells.length }]";
    let mut small = Vec::new();
    let mut kinds = BTreeMap::<String, u64>::new();
    for view in views(page)? {
        see(page, &view)?;
        if view == "Share" {
            page.by_role("button", "Copy link")?.click()?;
            page.by_label("Copy this link")?;
        }
        open_folds(page)?;
        let found = page.eval(script, &[])?;
        let list: Vec<String> = serde_json::from_value(found[0].clone()).expect("words");
        small.extend(list.into_iter().map(|one| format!("{view}: {one}")));
        let met: BTreeMap<String, u64> = serde_json::from_value(found[1].clone()).expect("counts");
        for (kind, count) in met {
            *kinds.entry(kind).or_default() += count;
        }
    }
    let least =
        [("button", 50), ("input", 50), ("select", 10), ("summary", 20), ("a", 40), ("cell", 9)];
    for (kind, least) in least {
        assert!(kinds.get(kind) >= Some(&least), "only {kinds:?}");
    }
    assert_none(&small)?;
    visit.end()
}
