//! A drawing as SVG text, for tests and for anything made without a browser.

use super::mark::{Drawing, Mark};
use super::number::tenths;

/// The drawing as one `<svg>` element; `name` becomes its accessible name.
pub fn svg(drawing: &Drawing, name: &str) -> String {
    let mut out = String::new();
    let (width, height) = (tenths(drawing.width), tenths(drawing.height));
    put(
        &mut out,
        &[
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart-svg\" role=\"img\" width=\"",
            &width,
            "\" height=\"",
            &height,
            "\" viewBox=\"",
            &view_box(drawing),
            "\" aria-label=\"",
            &escaped(name),
            "\">",
        ],
    );
    for mark in &drawing.marks {
        put(&mut out, &["\n<"]);
        match mark {
            Mark::Text { class, x, y, anchor, text } => put(
                &mut out,
                &[
                    "text class=\"",
                    class,
                    "\" x=\"",
                    &tenths(*x),
                    "\" y=\"",
                    &tenths(*y),
                    "\" text-anchor=\"",
                    anchor.word(),
                    "\">",
                    &escaped(text),
                    "</text>",
                ],
            ),
            shape => put(
                &mut out,
                &["path class=\"", shape.class(), "\" d=\"", &shape.outline(), "\"/>"],
            ),
        }
    }
    out.push_str("\n</svg>");
    out
}

/// The value of the `viewBox` attribute.
pub(super) fn view_box(drawing: &Drawing) -> String {
    ["0 0 ", &tenths(drawing.width), " ", &tenths(drawing.height)].concat()
}

fn put(out: &mut String, parts: &[&str]) {
    parts.iter().for_each(|part| out.push_str(part));
}

fn escaped(text: &str) -> String {
    let mut out = String::new();
    for letter in text.chars() {
        match letter {
            '&' => out.push_str("&amp;"),
            '<' => out.push_str("&lt;"),
            '>' => out.push_str("&gt;"),
            '"' => out.push_str("&quot;"),
            _ => out.push(letter),
        }
    }
    out
}

#[cfg(test)]
mod tests {
    use super::super::{Anchor, Follow};
    use super::*;

    #[test]
    fn every_kind_of_mark() {
        let drawing = Drawing {
            width: 40.0,
            height: 20.5,
            marks: vec![
                Mark::Line { class: "a", x1: 0.0, y1: 1.0, x2: 2.25, y2: 3.0 },
                Mark::Rect { class: "b", x: 1.0, y: 2.0, width: 3.0, height: 4.0 },
                Mark::Circle { class: "c", x: 10.0, y: 10.0, r: 5.0 },
                Mark::Path { class: "d", d: "M0 0L1 1".into() },
                Mark::text("e", 5.0, 9.0, Anchor::End, "Quay < Steps & \"back\""),
            ],
            points: Vec::new(),
            home: 0,
            follow: Follow::Rule { top: 0.0, bottom: 1.0 },
        };
        assert_eq!(
            svg(&drawing, "two > one"),
            "<svg xmlns=\"http://www.w3.org/2000/svg\" class=\"chart-svg\" role=\"img\" \
             width=\"40\" height=\"20.5\" viewBox=\"0 0 40 20.5\" aria-label=\"two &gt; one\">\n\
             <path class=\"a\" d=\"M0 1L2.3 3\"/>\n\
             <path class=\"b\" d=\"M1 2L4 2L4 6L1 6Z\"/>\n\
             <path class=\"c\" d=\"M5 10A5 5 0 1 0 15 10A5 5 0 1 0 5 10Z\"/>\n\
             <path class=\"d\" d=\"M0 0L1 1\"/>\n\
             <text class=\"e\" x=\"5\" y=\"9\" text-anchor=\"end\">\
             Quay &lt; Steps &amp; &quot;back&quot;</text>\n</svg>"
        );
    }
}
