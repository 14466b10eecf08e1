//! axe-core, the accessibility checker, inside the page.

use std::fmt;

use serde_json::Value;

use super::page::{target, text};
use super::{Fault, Outcome, Page};

/// One rule that the page breaks.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Violation {
    /// The rule's name, such as `color-contrast`.
    pub rule: String,
    /// `minor`, `moderate`, `serious` or `critical`.
    pub impact: String,
    /// What the rule asks for.
    pub help: String,
    /// Each offender: its selector, its markup and what to do.
    pub places: Vec<String>,
}

impl fmt::Display for Violation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{} ({}): {}", self.rule, self.impact, self.help)?;
        for place in &self.places {
            write!(f, "\n    {}", place.replace('\n', "\n      "))?;
        }
        Ok(())
    }
}

const RUN: &str = r"
const result = await axe.run(document, {
  resultTypes: ['violations'],
  runOnly: { type: 'tag', values: ['wcag2a', 'wcag2aa', 'wcag21a', 'wcag21aa', 'wcag22aa', 'best-practice'] },
  rules: { 'target-size': { enabled: true } },
});
return result.violations.map((v) => ({
  rule: v.id, impact: v.impact, help: v.help,
  places: v.nodes.map((n) => `${n.target.flat().join(' ')}  ${n.html.slice(0, 200)}\n${n.failureSummary}`),
}));";

impl Page {
    /// What axe-core finds against WCAG 2.2 A and AA and its own good
    /// practice, in the page as it is now, in a window as high as the page: what a bar at the foot
    /// covers can be scrolled out from under it.
    ///
    /// # Errors
    /// When axe-core is not installed, or throws.
    #[track_caller]
    pub fn axe(&self) -> Outcome<Vec<Violation>> {
        if self.eval("return typeof axe", &[])? == "undefined" {
            let file = target().join("axe/axe.min.js");
            let Ok(source) = std::fs::read_to_string(&file) else {
                return Err(Fault::new(
                    "target/axe/axe.min.js is missing; tests/run installs what the tests need",
                ));
            };
            // Scripts from the driver stand outside the page's own policy.
            self.eval(&source, &[])?;
        }
        let found = self.in_full_height(|| self.eval(RUN, &[]))?;
        let part = |value: &Value, key: &str| text(value.get(key).cloned().unwrap_or_default());
        let list = |value: &Value| value.as_array().cloned().unwrap_or_default();
        Ok(list(&found)
            .iter()
            .map(|one| Violation {
                rule: part(one, "rule"),
                impact: part(one, "impact"),
                help: part(one, "help"),
                places: list(one.get("places").unwrap_or(&Value::Null))
                    .into_iter()
                    .map(text)
                    .collect(),
            })
            .collect())
    }

    /// Fails when [`Page::axe`] finds anything.
    ///
    /// # Errors
    /// With every violation, where it is and what to do.
    #[track_caller]
    pub fn assert_accessible(&self) -> Outcome {
        let found = self.axe()?;
        if found.is_empty() {
            return Ok(());
        }
        let lines: Vec<String> = found.iter().map(ToString::to_string).collect();
        Err(Fault::new(format!(
            "{} accessibility rules broken:\n  {}",
            found.len(),
            lines.join("\n  ")
        )))
    }
}
