//! Finding things the way a person does: by label, by role and name, by text.

use std::time::{Duration, Instant};

use serde_json::{Value, json};

use super::page::{pause, text};
use super::{Element, Fault, Outcome, PATIENCE, Page};

const FIND: &str = include_str!("find.js");

impl Page {
    /// The form field with this accessible name. An exact name wins over one
    /// that merely contains the text.
    ///
    /// # Errors
    /// When there is none after [`PATIENCE`], or more than one.
    #[track_caller]
    pub fn by_label(&self, name: &str) -> Outcome<Element<'_>> {
        self.one("label", name, "")
    }

    /// The element with this ARIA role and accessible name, matched as for
    /// [`Page::by_label`]; an empty name matches any.
    ///
    /// # Errors
    /// When there is none after [`PATIENCE`], or more than one.
    #[track_caller]
    pub fn by_role(&self, role: &str, name: &str) -> Outcome<Element<'_>> {
        self.one("role", name, role)
    }

    /// Every visible element with this ARIA role, in document order, without
    /// waiting.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn all_by_role(&self, role: &str) -> Outcome<Vec<Element<'_>>> {
        Ok(self.look("role", "", role)?.0)
    }

    /// The first of the innermost visible elements whose text contains this.
    ///
    /// # Errors
    /// When there is none after [`PATIENCE`].
    #[track_caller]
    pub fn by_text(&self, words: &str) -> Outcome<Element<'_>> {
        self.first("text", words, "")
    }

    /// The first visible element that a CSS selector matches; for what has
    /// neither label, role nor text.
    ///
    /// # Errors
    /// When there is none after [`PATIENCE`].
    #[track_caller]
    pub fn by_css(&self, selector: &str) -> Outcome<Element<'_>> {
        self.first("css", selector, "")
    }

    /// Every visible element that a CSS selector matches, without waiting.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn all_by_css(&self, selector: &str) -> Outcome<Vec<Element<'_>>> {
        Ok(self.look("css", selector, "")?.0)
    }

    #[track_caller]
    fn one(&self, kind: &str, name: &str, role: &str) -> Outcome<Element<'_>> {
        let start = Instant::now();
        loop {
            let (mut found, seen) = self.look(kind, name, role)?;
            if found.len() == 1
                && let Some(element) = found.pop()
            {
                return Ok(element);
            }
            // Two of a kind may be one on its way out.
            let grace = if found.is_empty() { PATIENCE } else { Duration::from_secs(1) };
            if start.elapsed() > grace {
                return Err(Fault::new(format!(
                    "{} {}; on the page: {seen:?}{}",
                    found.len(),
                    what(kind, name, role),
                    self.errors()
                )));
            }
            pause();
        }
    }

    #[track_caller]
    fn first(&self, kind: &str, wanted: &str, role: &str) -> Outcome<Element<'_>> {
        let start = Instant::now();
        loop {
            let (found, seen) = self.look(kind, wanted, role)?;
            if let Some(element) = found.into_iter().next() {
                return Ok(element);
            }
            if start.elapsed() > PATIENCE {
                return Err(Fault::new(format!(
                    "no {}; on the page: {seen:?}{}",
                    what(kind, wanted, role),
                    self.errors()
                )));
            }
            pause();
        }
    }

    /// One look: what matches, and what there was to choose from.
    #[track_caller]
    fn look(
        &self,
        kind: &str,
        wanted: &str,
        role: &str,
    ) -> Outcome<(Vec<Element<'_>>, Vec<String>)> {
        let args = [json!(kind), json!(wanted), json!(role)];
        let mut answer = self.eval(FIND, &args)?;
        if let Some(Value::Array(kin)) = answer.get_mut("kin").map(Value::take) {
            return self.choose_among(&kin, wanted, role);
        }
        let mut list = |key: &str| match answer.get_mut(key).map(Value::take) {
            Some(Value::Array(items)) => items,
            _ => Vec::new(),
        };
        let seen = list("seen").into_iter().map(text).collect();
        let mut found = Vec::new();
        for item in list("found") {
            found.push(Element::from_json(self, &item, &what(kind, wanted, role))?);
        }
        Ok((found, seen))
    }

    /// What the script does where it can: asks each for its role and name. An empty role stands
    /// for any field, which the script has made sure of.
    #[track_caller]
    fn choose_among(
        &self,
        kin: &[Value],
        wanted: &str,
        role: &str,
    ) -> Outcome<(Vec<Element<'_>>, Vec<String>)> {
        let squash = |name: &str| name.split_whitespace().collect::<Vec<_>>().join(" ");
        let wanted = squash(wanted);
        let (mut exact, mut loose, mut seen) = (Vec::new(), Vec::new(), Vec::new());
        for one in kin {
            let element = Element::from_json(self, one, &what("role", &wanted, role))?;
            // The page may have taken it away meanwhile.
            let Ok(name) = element.name().map(|name| squash(&name)) else { continue };
            let fits = name.contains(&wanted)
                && (role.is_empty() || element.role().is_ok_and(|found| found == role));
            if fits && name == wanted {
                exact.push(element);
            } else if fits {
                loose.push(element);
            }
            seen.push(name);
        }
        Ok((if exact.is_empty() { loose } else { exact }, seen))
    }
}

fn what(kind: &str, wanted: &str, role: &str) -> String {
    match kind {
        "label" => format!("field labelled {wanted:?}"),
        "role" => format!("{role} named {wanted:?}"),
        "text" => format!("element with the text {wanted:?}"),
        _ => format!("element matching {wanted}"),
    }
}
