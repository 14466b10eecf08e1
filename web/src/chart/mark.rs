//! What a drawing is made of: plain values, no page, no signals.

use super::number::put_tenths;

/// Which end of a text stands at its `x`.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Anchor {
    /// The text begins at `x`.
    #[default]
    Start,
    /// The text is centred on `x`.
    Middle,
    /// The text ends at `x`.
    End,
}

impl Anchor {
    /// The word SVG uses for it.
    pub fn word(self) -> &'static str {
        match self {
            Self::Start => "start",
            Self::Middle => "middle",
            Self::End => "end",
        }
    }
}

/// One thing to draw. All lengths are logical pixels, x to the right and y
/// down; the look comes from the class alone.
#[derive(Clone, Debug, PartialEq)]
pub enum Mark {
    /// Any outline, as SVG path data.
    Path {
        /// CSS classes.
        class: &'static str,
        /// Path data.
        d: String,
    },
    /// A straight stroke.
    Line {
        /// CSS classes.
        class: &'static str,
        /// Start.
        x1: f64,
        /// Start.
        y1: f64,
        /// End.
        x2: f64,
        /// End.
        y2: f64,
    },
    /// An upright rectangle.
    Rect {
        /// CSS classes.
        class: &'static str,
        /// Left edge.
        x: f64,
        /// Top edge.
        y: f64,
        /// Width, not negative.
        width: f64,
        /// Height, not negative.
        height: f64,
    },
    /// A circle.
    Circle {
        /// CSS classes.
        class: &'static str,
        /// Centre.
        x: f64,
        /// Centre.
        y: f64,
        /// Radius, not negative.
        r: f64,
    },
    /// One line of text on its baseline.
    Text {
        /// CSS classes.
        class: &'static str,
        /// Where the anchor stands.
        x: f64,
        /// The baseline.
        y: f64,
        /// Which end stands at `x`.
        anchor: Anchor,
        /// The words.
        text: String,
    },
}

impl Mark {
    /// A text mark, the commonest to build.
    pub fn text(
        class: &'static str,
        x: f64,
        y: f64,
        anchor: Anchor,
        text: impl Into<String>,
    ) -> Self {
        let text = text.into();
        Self::Text { class, x, y, anchor, text }
    }

    /// The mark's CSS classes.
    pub fn class(&self) -> &'static str {
        match self {
            Self::Path { class, .. }
            | Self::Line { class, .. }
            | Self::Rect { class, .. }
            | Self::Circle { class, .. }
            | Self::Text { class, .. } => class,
        }
    }

    /// The outline as path data, empty for a text. Every shape is drawn as a
    /// path, so that the page needs only two kinds of element.
    pub fn outline(&self) -> String {
        let mut d = String::new();
        match self {
            Self::Path { d: given, .. } => d.push_str(given),
            Self::Line { x1, y1, x2, y2, .. } => {
                step(&mut d, 'M', *x1, *y1);
                step(&mut d, 'L', *x2, *y2);
            }
            Self::Rect { x, y, width, height, .. } => {
                step(&mut d, 'M', *x, *y);
                step(&mut d, 'L', x + width, *y);
                step(&mut d, 'L', x + width, y + height);
                step(&mut d, 'L', *x, y + height);
                d.push('Z');
            }
            Self::Circle { x, y, r, .. } => {
                step(&mut d, 'M', x - r, *y);
                for end in [x + r, x - r] {
                    draw(&mut d, 'A', &[*r, *r, 0.0, 1.0, 0.0, end, *y]);
                }
                d.push('Z');
            }
            Self::Text { .. } => {}
        }
        d
    }
}

/// Path data through places, joined at the end or not.
pub fn path(places: &[(f64, f64)], closed: bool) -> String {
    let mut d = String::new();
    let mut command = 'M';
    for (x, y) in places {
        step(&mut d, command, *x, *y);
        command = 'L';
    }
    if closed {
        d.push('Z');
    }
    d
}

/// Appends one path command that goes to a place.
pub(super) fn step(d: &mut String, command: char, x: f64, y: f64) {
    draw(d, command, &[x, y]);
}

/// Path data of an upright bar with round ends about `x`, from one end's middle to the other's: a
/// circle where they are one.
pub(crate) fn capsule(d: &mut String, x: f64, (top, bottom): (f64, f64), r: f64) {
    step(d, 'M', x - r, top);
    draw(d, 'A', &[r, r, 0.0, 0.0, 1.0, x + r, top]);
    step(d, 'L', x + r, bottom);
    draw(d, 'A', &[r, r, 0.0, 0.0, 1.0, x - r, bottom]);
    d.push('Z');
}

fn draw(d: &mut String, mut before: char, numbers: &[f64]) {
    for v in numbers {
        d.push(before);
        put_tenths(d, *v);
        before = ' ';
    }
}

/// How the cursor is shown, and what "nearest" means to a pointer.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Follow {
    /// An upright rule through the plot with a dot on each curve; the pointer
    /// counts sideways only.
    Rule {
        /// Upper end of the rule.
        top: f64,
        /// Lower end of the rule.
        bottom: f64,
    },
    /// A frame around the stop; the pointer counts both ways.
    Ring {
        /// Width of the frame.
        width: f64,
        /// Height of the frame.
        height: f64,
    },
}

/// A place where the cursor can stand.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct CursorStop {
    /// Where, sideways.
    pub x: f64,
    /// Where, down: one for each curve that has a value here.
    pub ys: Vec<f64>,
    /// Row, for the up and down keys.
    pub row: usize,
    /// Column, for the left and right keys.
    pub col: usize,
    /// What stands here, in words.
    pub text: String,
}

/// A finished drawing, laid out for one width: one logical pixel is one CSS
/// pixel.
#[derive(Clone, Debug, PartialEq)]
pub struct Drawing {
    /// Width in logical pixels.
    pub width: f64,
    /// Height in logical pixels.
    pub height: f64,
    /// What to draw, in painting order.
    pub marks: Vec<Mark>,
    /// Where the cursor can stand; empty means there is no cursor.
    pub points: Vec<CursorStop>,
    /// The stop at which the keyboard begins.
    pub home: usize,
    /// How the cursor is shown.
    pub follow: Follow,
}
