//! What the browser lets the page do.

use std::path::Path;

use serde_json::json;

use super::{Outcome, Page};

impl Page {
    /// Grants or refuses something that the page must ask for, by its name in
    /// the Permissions standard: `clipboard-write`.
    ///
    /// # Errors
    /// When the browser knows no such thing.
    #[track_caller]
    pub fn permit(&self, what: &str, granted: bool) -> Outcome {
        let state = if granted { "granted" } else { "denied" };
        let body = json!({ "descriptor": { "name": what }, "state": state });
        self.post("permissions", body).map(drop)
    }

    /// Puts downloads into this folder without asking.
    ///
    /// # Errors
    /// When the browser refuses.
    #[track_caller]
    pub fn download_into(&self, folder: &Path) -> Outcome {
        let params = json!({ "behavior": "allow", "downloadPath": folder });
        self.session.devtools("Browser.setDownloadBehavior", params).map(drop)
    }

    /// Runs a script in every page of this tab from now on, before any of the
    /// page's own; for a browser that lacks or forbids something.
    ///
    /// # Errors
    /// When the browser refuses.
    #[track_caller]
    pub fn before_each_page(&self, script: &str) -> Outcome {
        let params = json!({ "source": script });
        self.session.devtools("Page.addScriptToEvaluateOnNewDocument", params).map(drop)
    }

    /// Lets pages run scripts or not; what the tests ask runs all the same.
    ///
    /// # Errors
    /// When the browser refuses.
    #[track_caller]
    pub fn set_scripts(&self, run: bool) -> Outcome {
        let params = json!({ "value": !run });
        self.session.devtools("Emulation.setScriptExecutionDisabled", params).map(drop)
    }
}
