//! Several tabs of one browser.

use http::Method;
use serde_json::{Value, json};

use super::page::text;
use super::{Outcome, Page};

/// A tab, in front or not.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Tab(String);

impl Page {
    /// The tab in front.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn tab(&self) -> Outcome<Tab> {
        let handle = self.session.send(Method::GET, "window", Value::Null)?;
        Ok(Tab(text(handle)))
    }

    /// Opens an empty tab and brings it to the front.
    ///
    /// # Errors
    /// When the browser does not answer.
    #[track_caller]
    pub fn open_tab(&self) -> Outcome<Tab> {
        let answer = self.post("window/new", json!({ "type": "tab" }))?;
        let handle = answer.get("handle").cloned().unwrap_or_default();
        let tab = Tab(text(handle));
        self.switch_to(&tab)?;
        self.emulate()?;
        Ok(tab)
    }

    /// Brings a tab to the front; all else then speaks of that one.
    ///
    /// # Errors
    /// When it was closed.
    #[track_caller]
    pub fn switch_to(&self, tab: &Tab) -> Outcome {
        self.post("window", json!({ "handle": tab.0 })).map(drop)
    }

    /// Closes the tab in front and brings `next` there.
    ///
    /// # Errors
    /// When `next` was closed.
    #[track_caller]
    pub fn close_tab(&self, next: &Tab) -> Outcome {
        self.session.send(Method::DELETE, "window", Value::Null)?;
        self.switch_to(next)
    }
}
