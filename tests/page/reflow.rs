//! Narrow screens, large text, and fingers.

use pitchline_tests::browser::{Browser, Fault, Key, Outcome, Page, Size, Theme};
use serde_json::Value;

use crate::legible::{open_folds, trouble};
use crate::pick::pairings;
use crate::visit::{Site, Visit, link};

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
      if (r.width && (r.right > room + 0.6 || r.left < -0.6)) found.push(`${name(e)}: ${r.left} to ${r.right}`);
      const scrolls = ['auto', 'scroll'].includes(getComputedStyle(e).overflowX);
      if (e instanceof HTMLElement && !e.matches('select, input, .chart-plot, .chart-frame') && !scrolls
          && e.clientWidth && e.scrollWidth > e.clientWidth + 1) {
        found.push(`${name(e)}: ${e.scrollWidth} in ${e.clientWidth}`);
      }
    }
    return found.slice(0, 12)";

#[track_caller]
fn assert_fits(page: &Page, state: &str) -> Outcome {
    let found = page.eval(OFFENDERS, &[state.contains("spacing").into()])?;
    let list: Vec<String> = serde_json::from_value(found).unwrap_or_default();
    if list.is_empty() {
        return Ok(());
    }
    Err(Fault::new(format!("{state}:\n  {}", list.join("\n  "))))
}

/// WCAG 2.2, criterion 1.4.10: 320 CSS px without sideways scrolling, which is
/// 1280 px at four times the size; and 1.4.12, with its text spacing.
#[test]
fn nothing_sticks_out_of_a_narrow_screen() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Narrow))?;
    let page = &visit.page;
    visit.open("")?;
    page.screenshot_whole("page-narrow")?;
    assert_fits(page, "320 px")?;
    trouble(&visit)?;
    open_folds(page)?;
    assert_fits(page, "320 px, all open")?;
    page.by_role("button", "mi, lb")?.click()?;
    assert_fits(page, "320 px, all open, imperial")?;

    let spaced = "const style = document.body.style;
        style.lineHeight = 1.5; style.letterSpacing = '0.12em'; style.wordSpacing = '0.16em'";
    page.eval(spaced, &[])?;
    assert_fits(page, "320 px, text spacing")?;

    // A desktop at twice its size is half as wide.
    page.set_size(Size::Pixels(640, 400))?;
    visit.open(&link("kit=gannet"))?;
    assert_fits(page, "1280 px at 200 %")?;
    visit.end()
}

/// WCAG 2.2, criterion 1.4.4: text at twice its size, as readers set it in
/// their browser.
#[test]
fn nothing_sticks_out_at_twice_the_text() -> Outcome {
    let visit = Visit::before(Site::new()?, Browser::new(Size::Phone))?;
    let page = &visit.page;
    visit.open("")?;
    let large = "document.documentElement.style.fontSize = '200%'";
    page.eval(large, &[])?;
    page.wait_until("return getComputedStyle(document.body).fontSize === '32px'")?;
    page.screenshot("page-large-text-Phone")?;
    // A figure that breaks reads as two; a strip that fills the window hides the rest.
    let strip = "return [[...document.querySelectorAll('.tile strong')].map((e) => e.getClientRects().length),
        document.querySelector('.strip').getBoundingClientRect().height <= innerHeight / 2]";
    assert_eq!(page.eval(strip, &[])?, serde_json::json!([[1, 1, 1], true]));
    assert_fits(page, "390 px, text at 200 %")?;
    trouble(&visit)?;
    page.eval(large, &[])?;
    open_folds(page)?;
    assert_fits(page, "390 px, text at 200 %, all open")?;
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
        let (undo, close) = (page.by_role("button", "Undo")?, page.by_role("button", "Close")?);
        let (undo, close) = (undo.rect()?, close.rect()?);
        assert!((undo.y - close.y).abs() < 0.5 && undo.x < close.x, "{size:?}");
        page.screenshot(&format!("page-message-{size:?}"))?;
        page.by_role("button", "Undo")?.click()?;
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
    let table = page.by_role("region", "Every pairing on offer")?;
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
    open_folds(page)?;
    page.permit("clipboard-write", false)?;
    page.by_role("button", "Copy link")?.click()?;
    page.by_label("Copy this link")?;
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
        return [small, kinds, cells.length]";
    let found = page.eval(script, &[])?;
    let count = |kind: &str| found[1][kind].as_u64().unwrap_or(0);
    assert!(count("button") > 50 && count("input") > 50 && count("select") > 10, "{found}");
    assert!(count("summary") > 20 && found[2].as_u64() > Some(8), "{found}");
    let small: Vec<String> = match &found[0] {
        Value::Array(list) => list.iter().filter_map(Value::as_str).map(str::to_owned).collect(),
        _ => Vec::new(),
    };
    assert!(small.is_empty(), "too small for a finger:\n  {}", small.join("\n  "));
    visit.end()
}
