//! The first screen as HTML: what the page shows before any wasm runs.
//!
//! A test compares it with `index.html`, and writes it there when
//! `PITCHLINE_WRITE` is set, so that it cannot go stale.

use super::strip;
use crate::text::{Style, page};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Build, answers};

/// The head of the page and the strip, with the first kit's answers.
fn first_screen(catalog: &Catalog) -> String {
    let kit = &catalog.kits[0];
    let build = Build::check(&catalog.draft(&kit.id)).expect("the demo is valid");
    let (answers, style) = (answers(&build), Style::default());
    let tiles = [
        strip::top_speed(&answers, style),
        strip::hill(&answers, style),
        strip::distance(&answers, style),
    ];
    let tiles = tiles.map(|tile| {
        format!(
            "        <div class=\"tile\"><span class=\"headline\"><span class=\"headline-name\">{}</span><span class=\"headline-figure\"><strong>{}</strong> <span>{}</span></span><span class=\"headline-limit\">{}</span></span></div>\n",
            tile.name, tile.figure, tile.unit, tile.limit
        )
    });
    format!(
        "      <header class=\"top\"><div><h1>Pitchline</h1><p class=\"maker\">{}</p><p class=\"tagline\">{}</p></div></header>\n      <nav class=\"strip\" aria-label=\"Answers\">\n{}      </nav>\n      <main><section class=\"question\"><h2>{}</h2><p><strong>{}</strong> {}</p><p class=\"help\">Getting the calculator ready…</p></section></main>\n",
        catalog.maker,
        page::TAGLINE,
        tiles.concat(),
        page::ON_IT,
        kit.name,
        kit.notes,
    )
}

#[test]
fn the_first_screen_has_the_demos_answers() {
    const BEGIN: &str = "    <div id=\"pitchline-page\">\n";
    const END: &str = "    </div>\n    <noscript>";
    let here = concat!(env!("CARGO_MANIFEST_DIR"), "/index.html");
    let demo = include_str!("../../catalog/catalogue.json");
    let (catalog, faults) = Catalog::read(demo).expect("the demo is JSON");
    assert!(faults.is_empty());
    let html = std::fs::read_to_string(here).expect("index.html is there");
    let from = html.find(BEGIN).expect("the place of the page") + BEGIN.len();
    let to = from + html[from..].find(END).expect("the end of the page's place");
    let wanted = first_screen(&catalog);
    if std::env::var_os("PITCHLINE_WRITE").is_some() {
        std::fs::write(here, format!("{}{wanted}{}", &html[..from], &html[to..])).expect("written");
    } else {
        assert_eq!(&html[from..to], wanted, "run again with PITCHLINE_WRITE=1");
    }
}
