//! Pages within a page.

use serde_json::{Value, json};

use super::{Element, Outcome, Page};

impl Page {
    /// Speaks of the page inside an `<iframe>` from now on.
    ///
    /// # Errors
    /// When the element holds no page.
    #[track_caller]
    pub fn enter_frame(&self, frame: &Element<'_>) -> Outcome {
        self.post("frame", json!({ "id": frame.json() })).map(drop)
    }

    /// Speaks of the whole tab again.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn leave_frame(&self) -> Outcome {
        self.post("frame", json!({ "id": Value::Null })).map(drop)
    }
}
