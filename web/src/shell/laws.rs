//! What the shell in the HTML says until the page lives; `PITCHLINE_WRITE=1` writes its headings.

use crate::question::registry::{Group, QUESTIONS, Question};

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

/// Where the list of questions stands in the file.
const BEGIN: &str = "          <div class=\"list\">\n";
const END: &str = "          </div>\n          <p";

#[test]
fn the_shell_names_what_comes() {
    let entry = |question: &Question| format!("<li>{}</li>", question.title);
    let group = |group: Group| {
        let of = QUESTIONS.iter().filter(|question| question.group == group);
        let list: String = of.map(entry).collect();
        format!("            <section><h2>{}</h2><ul>{list}</ul></section>\n", group.title())
    };
    let wanted: String = Group::ALL.into_iter().map(group).collect();
    let html = include_str!("../../index.html");
    let from = html.find(BEGIN).expect("the place of the list") + BEGIN.len();
    let to = from + html[from..].find(END).expect("its end");
    if std::env::var_os("PITCHLINE_WRITE").is_some() {
        let file = concat!(env!("CARGO_MANIFEST_DIR"), "/index.html");
        let text = format!("{}{wanted}{}", &html[..from], &html[to..]);
        return std::fs::write(file, text).expect("written");
    }
    assert_eq!(&html[from..to], wanted, "run again with PITCHLINE_WRITE=1");
}
