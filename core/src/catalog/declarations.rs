//! The TypeScript declarations of the module, made from the types that answer and from the tables
//! that check what goes in.

use super::build_file::{FORMAT, VERSION};
use super::outcome::{Options, Outcome};
use super::record::HEAD;
use super::schema::{BUILD_MEANINGS, HEAD_MEANINGS, TAG_MEANING, meaning};
use crate::bounds::{Field, Need, Unit};
use crate::error::bare;
use crate::parts::{Kind, Slot};
use alloc::format;
use alloc::string::{String, ToString};
use alloc::vec::Vec;
use core::any::TypeId;
use ts_rs::{Config, TS, TypeVisitor};

/// What the module offers. Two of the functions stand in `web/api`, `start` is written by
/// the site's finish.
const MODULE: &str = "\
// Types of pitchline.js. Values are in SI, except degrees Celsius, degrees of angle, Wh and Ah, as
// each comment says. In a build file the key carries the unit.

/** Starts the module. Await it before you call anything else. */
export default function start(options?: object): Promise<unknown>;

/**
 * Answers every question for a build. A slot left out gets typical values. Never throws.
 * If a charge is refused, show that: the wrong charger can set a pack on fire.
 */
export function answers(build?: BuildFile, options?: Options): Outcome;

/** Version of this module, by semantic versioning. */
export function version(): string;
";

/// The text of `pitchline.d.ts`: the module's functions, and every type that goes in or comes out,
/// each with its meaning and unit.
///
/// ```
/// let text = pitchline_core::catalog::declarations();
/// assert!(text.contains("/** Number of teeth. From 8 to 60 teeth. */\n    teeth: number;"));
/// ```
#[must_use]
pub fn declarations() -> String {
    let mut found = Found::default();
    found.visit::<Options>();
    found.visit::<Outcome>();
    // In which order they are found may differ from one compiler run to the next.
    found.declared.sort();
    let mut text = String::from(MODULE);
    found.declared.iter().for_each(|(_, declared)| text.push_str(declared));
    // Links lead nowhere outside of the documentation.
    let mut text = text.replace("[`", "`").replace("`]", "`");
    text.push_str(&build_file());
    for kind in Kind::ALL {
        text.push_str(&input(*kind));
    }
    text
}

/// Every type so far, by name, with its text.
#[derive(Default)]
struct Found {
    declared: Vec<(String, String)>,
    seen: Vec<TypeId>,
}

impl TypeVisitor for Found {
    fn visit<T: TS + 'static + ?Sized>(&mut self) {
        if self.seen.contains(&TypeId::of::<T>()) {
            return;
        }
        self.seen.push(TypeId::of::<T>());
        let config = Config::default().with_array_tuple_limit(3);
        // What has no place of its own is written where it is used, such as a list.
        if T::output_path().is_some() {
            let declared = T::decl(&config);
            let lines: Vec<_> = declared.lines().map(str::trim_end).collect();
            let docs = T::docs().unwrap_or_default();
            let text = format!("\n{docs}export {}\n", lines.join("\n"));
            self.declared.push((T::name(&config), text));
        }
        T::visit_dependencies(self);
        T::visit_generics(self);
    }
}

/// The interface of a build file.
fn build_file() -> String {
    let mut interface = Interface::new("BuildFile", "A build: one object per slot, in full.");
    interface.field("What kind of file this is.", "format?", &format!("\"{FORMAT}\""));
    interface.field("Version of the file format, a count.", "version?", &VERSION.to_string());
    for (key, meaning) in BUILD_MEANINGS {
        interface.field(meaning, &format!("{key}?"), "string");
    }
    for slot in Slot::ALL {
        let kind = slot.kind();
        let meaning = "If left out, typical values are used.";
        interface.field(meaning, &format!("{}?", slot.key()), &input_name(kind));
    }
    interface.end()
}

/// The interface of what a slot takes.
fn input(kind: Kind) -> String {
    let about = format!("A `{}` of a build.", kind.key());
    let mut interface = Interface::new(&input_name(kind), &about);
    for (key, meaning) in HEAD.into_iter().zip(HEAD_MEANINGS) {
        interface.field(meaning, &format!("{key}?"), "string");
    }
    for tag in kind.tags() {
        interface.field(TAG_MEANING, &format!("{tag}?"), "string");
    }
    for field in kind.fields() {
        let optional = if field.need == Need::Required { "" } else { "?" };
        let (meaning, form) = (meaning(field), form(field));
        let comment = format!("{meaning}{}", range(field));
        interface.field(&comment, &format!("{}{optional}", field.key), &form);
    }
    interface.end()
}

fn input_name(kind: Kind) -> String {
    format!("{kind:?}Input")
}

fn form(field: &Field) -> String {
    let quoted: Vec<_> = field.choices.iter().map(|choice| format!("\"{choice}\"")).collect();
    if quoted.is_empty() { "number".into() } else { quoted.join(" | ") }
}

/// Range and unit of an input, as a sentence; nothing for a choice.
fn range(field: &Field) -> String {
    if !field.choices.is_empty() {
        return String::new();
    }
    let (least, most) = (bare(field.min), bare(field.max));
    let unit = match field.unit {
        Unit::None => "(a ratio)",
        Unit::Count => "(a count)",
        Unit::Money => "(in that currency)",
        unit => unit.symbol(),
    };
    format!(" From {least} to {most} {unit}.")
}

/// An interface that is being written.
struct Interface(String);

impl Interface {
    fn new(name: &str, about: &str) -> Self {
        Self(format!("\n/** {about} */\nexport interface {name} {{\n"))
    }

    /// Its key carries a question mark where it may be left out.
    fn field(&mut self, meaning: &str, key: &str, form: &str) {
        self.0.push_str(&format!("    /** {meaning} */\n    {key}: {form};\n"));
    }

    /// A key that begins with `$` is a comment.
    fn end(mut self) -> String {
        self.field("A comment.", "[comment: `$${string}`]", "unknown");
        self.0.push_str("}\n");
        self.0
    }
}
