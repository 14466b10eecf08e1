//! What the shell in the HTML says until the page lives.

use crate::question::registry::{ANSWERED, SETUP};
use crate::text::page;

fn shell() -> &'static str {
    let html = include_str!("../../index.html");
    let from = html.find("<div id=\"pitchline-page\">").expect("the place of the page");
    &html[from..html.find("</body>").expect("its end")]
}

/// What stands between the tags.
fn words() -> Vec<&'static str> {
    let parts = shell().split('<').filter_map(|part| part.split_once('>'));
    parts.map(|(_, words)| words.trim()).filter(|words| !words.is_empty()).collect()
}

/// A demo's figures and name would be false on a maker's page.
#[test]
fn the_shell_has_no_figures_and_no_maker() {
    for words in words() {
        assert!(!words.contains(|c: char| c.is_ascii_digit()), "{words}");
        assert!(!words.contains("Ferry Lane"), "{words}");
    }
}

#[test]
fn the_shell_names_what_comes() {
    let words = words();
    let titles = [SETUP].iter().chain(ANSWERED).map(|question| question.title);
    let headings = shell().split("<h2>").skip(1).filter_map(|part| part.split('<').next());
    assert_eq!(headings.collect::<Vec<_>>(), titles.collect::<Vec<_>>());
    assert!(words.contains(&page::TAGLINE), "{words:?}");
}
