//! How much a view asks of its reader: height, elements and words, with its folds as they come.

use std::fs;

use pitchline_tests::browser::{Browser, Fault, Outcome, Page, Size};

use crate::visit::{Site, Visit, assert_none, drawn, link, see, views, wait_begun};

/// Screens, elements and words in sight; and for who has to shorten it, the words of each part.
/// Text kept for who cannot see costs nothing. The build beside a view scrolls for itself: its words
/// count, its height does not.
const MEASURE: &str = "
    const silent = 'script, style, template, noscript, option, title, desc';
    const seen = (e) => {
      if (e.matches(silent) || !e.checkVisibility({ visibilityProperty: true, opacityProperty: true })) return false;
      const { width, height } = e.getBoundingClientRect();
      return width > 2 && height > 2;
    };
    const words = (e) => [...e.childNodes].filter((node) => node.nodeType === Node.TEXT_NODE)
        .flatMap((node) => node.data.split(/\\s+/).filter((word) => word));
    const parts = new Map();
    let tallest = document.documentElement.scrollHeight, count = 0;
    for (const e of document.body.querySelectorAll('*')) {
      const scrolls = ['auto', 'scroll'].includes(getComputedStyle(e).overflowY);
      if (scrolls && e.clientHeight && !e.closest('aside, dialog:not([open])')) {
        tallest = Math.max(tallest, e.scrollHeight + innerHeight - e.clientHeight);
      }
      const own = seen(e) ? words(e) : [];
      if (!own.length) continue;
      count += own.length;
      const part = e.closest('.view > *, aside > *, main > *, .page > *');
      parts.set(part, [...parts.get(part) ?? [], ...own]);
    }
    const named = ([part, own]) => `${part?.localName}.${part?.className}: ${own.length}, ${own.slice(0, 12).join(' ')}`;
    return [tallest / innerHeight, document.querySelectorAll('*').length, count, [...parts].map(named)]";

/// At most so many screens, elements and words.
type Limits = [f64; 3];

/// A phone's and a desktop's screens; the overview is what everyone meets first.
fn limits(view: &str, size: Size) -> Limits {
    let phone = size == Size::Phone;
    match view {
        "Overview" => [if phone { 2.0 } else { 1.0 }, 600.0, 250.0],
        _ => [if phone { 3.0 } else { 2.0 }, 900.0, 450.0],
    }
}

/// What of a view is beyond its limits.
#[track_caller]
fn beyond(page: &Page, view: &str, size: Size) -> Outcome<Option<String>> {
    drawn(page)?;
    let found = page.eval(MEASURE, &[])?;
    let parts: Vec<String> = serde_json::from_value(found[3].clone()).unwrap_or_default();
    let mut over = Vec::new();
    for (at, (name, most)) in
        ["screens", "elements", "words"].into_iter().zip(limits(view, size)).enumerate()
    {
        let Some(is) = found[at].as_f64().filter(|is| *is > 0.0) else {
            return Err(Fault::new(format!("{view} has no {name}: {found}")));
        };
        // Screens as they are said, to one decimal.
        if (is * 10.0).round() / 10.0 > most {
            over.push(format!("{is:.1} {name}, at most {most}"));
        }
    }
    println!(
        "{size:?} {view}: {:.1} {} {}",
        found[0].as_f64().unwrap_or_default(),
        found[1],
        found[2]
    );
    Ok((!over.is_empty()).then(|| format!("{}\n      {}", over.join("; "), parts.join("\n      "))))
}

/// The start, and every view, for both kits of the demo, metric and imperial.
fn stays_small(size: Size) -> Outcome {
    let mut over = Vec::new();
    for kit in ["kittiwake", "gannet"] {
        let visit = Visit::before(Site::new()?, Browser::new(size))?;
        let page = &visit.page;
        // What a first visit begins with, which asks for the kit.
        page.goto(&visit.server.url())?;
        wait_begun(page)?;
        if let Some(found) = beyond(page, "Overview", size)? {
            over.push(format!("start: {found}"));
        }
        visit.open(&link(&format!("kit={kit}")))?;
        for units in ["km, kg", "mi, lb"] {
            see(page, "More")?;
            page.by_role("button", units)?.click()?;
            hush(page)?;
            for view in views(page)? {
                see(page, &view)?;
                if let Some(found) = beyond(page, &view, size)? {
                    over.push(format!("{view}, {kit}, {units}: {found}"));
                }
            }
        }
        visit.end()?;
    }
    assert_none(&over)
}

/// Closes what the page has said of how the build came here; it is gone in a moment anyway.
fn hush(page: &Page) -> Outcome {
    page.wait_until(
        "const close = [...document.querySelectorAll('.message button')].filter((e) => e.textContent === 'Close');
         for (const button of close) button.click();
         return !close.length",
    )
}

#[test]
fn no_view_is_long_on_a_phone() -> Outcome {
    stays_small(Size::Phone)
}

#[test]
fn no_view_is_long_on_a_desktop() -> Outcome {
    stays_small(Size::Desktop)
}

/// What is counted is what a person sees: neither hidden text nor names of pictures; and what scrolls
/// within the page counts as if it did not, but for the build that stands beside a view.
#[test]
fn the_measure_counts_what_is_seen() -> Outcome {
    let site = Site::new()?;
    let page = |name: &str, inside: &str| {
        let html = format!(
            "<!DOCTYPE html><html lang=en><title>Plain</title><link rel=icon href='data:,'>
            <meta name=viewport content='width=device-width'>
            <style>body, .tall {{ margin: 0 }} .box {{ height: 422px; overflow: auto }} .tall {{ height: 844px }}
            .gone {{ visibility: hidden }} .dot {{ position: absolute; width: 1px; height: 1px; overflow: hidden }}</style>
            <body>{inside}"
        );
        fs::write(site.path().join(name), html)
    };
    page(
        "words.html",
        "<p>one <b>two</b> three</p><p class=gone>no</p><p class=dot>no</p><p style='opacity: 0'>no</p>
        <select><option>no</select><svg><title>no</title><text y=20>four</text></svg>
        <details><summary>five</summary><p>no</p></details>",
    )?;
    page("beside.html", "<aside class=box><p class=tall></aside>")?;
    page("box.html", "<div class=box><p class=tall></div>")?;
    let visit = Visit::before(site, Browser::new(Size::Phone))?;
    // A box of 422 px in a window of 844 hides as much again.
    for (name, screens, words) in
        [("words.html", 1.0, 5), ("beside.html", 1.0, 0), ("box.html", 1.5, 0)]
    {
        visit.page.goto(&format!("{}{name}", visit.server.url()))?;
        let found = visit.page.eval(MEASURE, &[])?;
        assert_eq!((found[0].as_f64(), found[2].as_u64()), (Some(screens), Some(words)), "{found}");
    }
    visit.end()
}
