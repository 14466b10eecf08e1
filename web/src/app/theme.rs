//! Light or dark, where the reader chose.

use super::store::App;
use crate::platform;
use crate::text::keep;
use leptos::prelude::*;

/// Under which the choice is kept.
const KEY: &str = "theme";

/// What decides the page's colours.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Theme {
    /// The device does.
    #[default]
    Device,
    /// Dark ink on light paper.
    Light,
    /// Light ink on dark paper.
    Dark,
}

impl Theme {
    /// As it is kept; nothing for the device's.
    fn key(self) -> &'static str {
        match self {
            Self::Device => "",
            Self::Light => "light",
            Self::Dark => "dark",
        }
    }
}

impl App {
    /// What decides the page's colours; tracked.
    #[must_use]
    pub fn theme(self) -> Theme {
        self.theme.get()
    }

    /// Colours the page, now and at the next visit.
    pub fn set_theme(self, theme: Theme) {
        self.theme.set(theme);
        platform::tell_theme(theme.key());
        let kept = self.keeper.with_value(|keeper| {
            keeper.as_ref().is_some_and(|keeper| keeper.local.set(KEY, theme.key()))
        });
        if !kept {
            self.say(keep::NOT_KEPT);
        }
    }

    /// Takes over what the page was coloured by before it started.
    pub(super) fn begin_theme(self) {
        let kept = platform::theme();
        let known = [Theme::Light, Theme::Dark].into_iter().find(|theme| theme.key() == kept);
        self.theme.set(known.unwrap_or_default());
    }
}
