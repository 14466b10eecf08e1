//! A real browser, asked in plain words: Chromium, or WebKit and Firefox for what the standard
//! covers.
//!
//! ```no_run
//! use pitchline_tests::browser::{Browser, Key, Outcome, Size};
//!
//! fn saves() -> Outcome {
//!     let page = Browser::open(Size::Phone)?;
//!     page.goto("http://127.0.0.1:8000/")?;
//!     page.by_label("Pack voltage")?.fill("36,5")?;
//!     page.by_role("button", "Save")?.click()?;
//!     page.press(Key::Tab)?;
//!     page.by_text("Saved")?;
//!     page.assert_quiet()
//! }
//! ```
//!
//! Everything that looks for something waits for it first, up to
//! [`PATIENCE`]; everything that talks to the browser gives up after
//! [`LIMIT`]. Dropping the [`Page`] ends the browser, and so does the end of
//! the test process, however it ends.

mod axe;
mod chromium;
mod element;
mod emulate;
mod fault;
mod find;
mod firefox;
mod frame;
mod key;
mod page;
mod permit;
mod process;
mod record;
mod session;
mod standard;
mod tab;
mod webkit;

use std::time::Duration;

pub use axe::Violation;
pub use element::{Element, Rect};
pub use emulate::{Size, Theme};
pub use fault::{Fault, Outcome};
pub use key::Key;
pub use page::Page;
pub use process::running;
pub use record::{ConsoleEntry, foreign};
pub use tab::Tab;

/// How long a look-up or a wait goes on before it fails. Generous, because
/// the machines that run this are small and shared.
pub const PATIENCE: Duration = Duration::from_secs(15);

/// How long one command to the browser may take.
pub const LIMIT: Duration = Duration::from_secs(60);

/// What a browser is built on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Of most browsers; pretends to be any device, and records all it does.
    Chromium,
    /// Of iPhones, here on a desk. Sizes are those of its window, of 334 CSS px or more, at one
    /// device pixel each and with a mouse.
    WebKit,
    /// Sizes are those of its window, at one device pixel each.
    Firefox,
}

/// A browser about to be started; every setting has a default.
#[derive(Clone, Debug)]
pub struct Browser {
    pub(crate) engine: Engine,
    pub(crate) size: Size,
    pub(crate) theme: Theme,
    pub(crate) locale: String,
    pub(crate) reduced_motion: bool,
}

impl Browser {
    /// Chromium, light theme, British English, motion allowed.
    pub fn new(size: Size) -> Self {
        Self {
            engine: Engine::Chromium,
            size,
            theme: Theme::Light,
            locale: "en-GB".to_owned(),
            reduced_motion: false,
        }
    }

    /// Another engine.
    pub fn engine(mut self, engine: Engine) -> Self {
        self.engine = engine;
        self
    }

    /// What `prefers-color-scheme` says.
    pub fn theme(mut self, theme: Theme) -> Self {
        self.theme = theme;
        self
    }

    /// A BCP 47 tag such as `de-DE`: the language the page is asked for and
    /// the one numbers are written in.
    pub fn locale(mut self, tag: &str) -> Self {
        tag.clone_into(&mut self.locale);
        self
    }

    /// Makes `prefers-reduced-motion` say `reduce`.
    pub fn reduced_motion(mut self) -> Self {
        self.reduced_motion = true;
        self
    }

    /// Starts the browser with an empty profile.
    ///
    /// # Errors
    /// When the browser or its driver is missing or does not come up.
    #[track_caller]
    pub fn start(self) -> Outcome<Page> {
        Page::start(self)
    }

    /// A browser of this size with everything else at its default.
    ///
    /// # Errors
    /// As [`Browser::start`].
    #[track_caller]
    pub fn open(size: Size) -> Outcome<Page> {
        Self::new(size).start()
    }
}
