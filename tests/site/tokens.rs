//! The colour tokens of a style sheet, by theme.

use std::collections::BTreeMap;

/// Token names, with their dashes, and what they stand for.
pub(crate) type Tokens = BTreeMap<String, String>;

/// The two themes that the style sheet describes.
#[derive(Debug, PartialEq)]
pub(crate) struct Themes {
    pub(crate) light: Tokens,
    pub(crate) dark: Tokens,
}

/// One custom property with all the rules it stands in, outermost first.
struct Declaration {
    rules: Vec<String>,
    name: String,
    value: String,
}

/// Reads `:root { --ink: #123456; }` and what a dark theme changes of it: what stands inside
/// `@media (prefers-color-scheme: dark)`.
pub(crate) fn themes(css: &str) -> Themes {
    let mut light = Tokens::new();
    let mut dark = Tokens::new();
    for Declaration { rules, name, value } in declarations(css) {
        let rule = rules.join(" ");
        if rule == ":root" {
            light.insert(name, value);
        } else if rule.ends_with(":root") && rule.contains("prefers-color-scheme: dark") {
            dark.insert(name, value);
        }
    }
    let dark = light.clone().into_iter().chain(dark).collect();
    Themes { light, dark }
}

fn declarations(css: &str) -> Vec<Declaration> {
    let css = without_comments(css);
    let mut found = Vec::new();
    let mut rules = Vec::new();
    let mut piece = String::new();
    for letter in css.chars() {
        match letter {
            '{' => rules.push(std::mem::take(&mut piece).trim().to_owned()),
            ';' | '}' => {
                if let Some((name, value)) = piece.split_once(':')
                    && name.trim().starts_with("--")
                {
                    let (name, value) = (name.trim().to_owned(), value.trim().to_owned());
                    found.push(Declaration { rules: rules.clone(), name, value });
                }
                piece.clear();
                if letter == '}' {
                    rules.pop();
                }
            }
            _ => piece.push(letter),
        }
    }
    found
}

fn without_comments(css: &str) -> String {
    let mut kept = String::new();
    let mut rest = css;
    while let Some((before, after)) = rest.split_once("/*") {
        kept.push_str(before);
        rest = after.split_once("*/").map_or("", |(_, after)| after);
    }
    kept + rest
}

/// The red, green and blue of a token, 0 to 255.
///
/// # Errors
/// When there is no such token, or it is not `#rgb`, `#rrggbb` or `var(--x)`.
pub(crate) fn colour(tokens: &Tokens, name: &str) -> Result<[u8; 3], String> {
    let mut value = tokens.get(name).ok_or_else(|| format!("no token {name}"))?;
    // As many steps as there are tokens: more would go in a circle.
    for _ in 0..tokens.len() {
        let Some(other) = value.strip_prefix("var(").and_then(|rest| rest.strip_suffix(')')) else {
            break;
        };
        value = tokens.get(other.trim()).ok_or_else(|| format!("{name}: no token {other}"))?;
    }
    hex(value).ok_or_else(|| format!("{name}: cannot judge {value}"))
}

fn hex(value: &str) -> Option<[u8; 3]> {
    let digits: Vec<u8> = value
        .strip_prefix('#')?
        .chars()
        .map(|digit| digit.to_digit(16).and_then(|digit| u8::try_from(digit).ok()))
        .collect::<Option<_>>()?;
    match digits.as_slice() {
        [r, g, b] => Some([r * 17, g * 17, b * 17]),
        [r, s, g, h, b, c] => Some([r * 16 + s, g * 16 + h, b * 16 + c]),
        _ => None,
    }
}

#[test]
fn a_style_sheet_is_read() {
    let css = "
        /* --ink: #fff; */
        :root { --ink: #102030; --edge: var(--ink); --gap: 1rem }
        .card { --ink: #f00; }
        @media (prefers-color-scheme: dark) {
            :root { --ink: #abc; }
            .card { --ink: #0f0; }
        }
        @media print { :root { --ink: #000; } }";
    let Themes { light, dark } = themes(css);
    assert_eq!(colour(&light, "--ink"), Ok([0x10, 0x20, 0x30]));
    assert_eq!(colour(&light, "--edge"), Ok([0x10, 0x20, 0x30]));
    assert_eq!(colour(&dark, "--edge"), Ok([0xaa, 0xbb, 0xcc]));
    assert!(colour(&light, "--gap").is_err() && colour(&light, "--none").is_err());
}
