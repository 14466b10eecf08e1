//! The first screen as HTML: what the page shows before any wasm runs.
//!
//! A test compares it with `index.html`, and writes it there when
//! `PITCHLINE_WRITE` is set, so that it cannot go stale.

use super::strip;
use crate::state::{FIRST, Sure};
use crate::text::{Style, page};
use pitchline_core::band::{Band, Quantity};
use pitchline_core::catalog::Catalog;
use pitchline_core::{Build, answers};

/// The first kit.
fn first_build(catalog: &Catalog) -> Build {
    Build::check(&catalog.draft(&catalog.kits[0].id)).expect("the demo is valid")
}

/// How sure its answers are.
fn first_bands(build: &Build) -> [Sure; 3] {
    [Quantity::TopSpeed, Quantity::Hill, Quantity::SteadyDistance].map(|quantity| {
        let band = Band::of(build, quantity).expect("it has an answer");
        Sure { nominal: band.nominal, low: band.p10, high: band.p90, of: None }
    })
}

/// The head of the page and the strip, with the first kit's answers.
fn first_screen(catalog: &Catalog) -> String {
    let (kit, build) = (&catalog.kits[0], first_build(catalog));
    let (answers, style) = (answers(&build), Style::default());
    let [speed, hill, distance] = first_bands(&build);
    let tiles = [
        strip::top_speed(&answers, speed, style),
        strip::hill(&answers, hill, style),
        strip::distance(&answers, distance, style),
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

fn demo() -> Catalog {
    let demo = include_str!("../../catalog/catalogue.json");
    let (catalog, faults) = Catalog::read(demo).expect("the demo is JSON");
    assert!(faults.is_empty());
    catalog
}

/// The page begins with the bands that the first screen shows, so that nothing flickers.
#[test]
fn the_first_bands_are_the_demos() {
    const BEGIN: &str = "pub const FIRST: [Sure; 3] = [\n";
    let here = concat!(env!("CARGO_MANIFEST_DIR"), "/src/state/first.rs");
    let wanted = first_bands(&first_build(&demo()));
    if std::env::var_os("PITCHLINE_WRITE").is_some() {
        let row = |sure: Sure| {
            format!("    Sure::first({:?}, {:?}, {:?}),\n", sure.nominal, sure.low, sure.high)
        };
        let text = std::fs::read_to_string(here).expect("the file is there");
        let from = text.find(BEGIN).expect("the place of the bands") + BEGIN.len();
        let text = format!("{}{}];\n", &text[..from], wanted.map(row).concat());
        std::fs::write(here, text).expect("written");
    } else {
        assert_eq!(FIRST, wanted, "run again with PITCHLINE_WRITE=1");
    }
}

#[test]
fn the_first_screen_has_the_demos_answers() {
    const BEGIN: &str = "    <div id=\"pitchline-page\">\n";
    const END: &str = "    </div>\n    <noscript>";
    let here = concat!(env!("CARGO_MANIFEST_DIR"), "/index.html");
    let html = std::fs::read_to_string(here).expect("index.html is there");
    let from = html.find(BEGIN).expect("the place of the page") + BEGIN.len();
    let to = from + html[from..].find(END).expect("the end of the page's place");
    let wanted = first_screen(&demo());
    if std::env::var_os("PITCHLINE_WRITE").is_some() {
        std::fs::write(here, format!("{}{wanted}{}", &html[..from], &html[to..])).expect("written");
    } else {
        assert_eq!(&html[from..to], wanted, "run again with PITCHLINE_WRITE=1");
    }
}
