//! What kind of device and person the page believes it meets.

use serde_json::json;

use super::{Engine, Outcome, Page};

/// A screen.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Size {
    /// 390 x 844 CSS px at two device pixels each, touch.
    Phone,
    /// 320 x 640 CSS px at two device pixels each, touch: the width at which
    /// WCAG 2.2 criterion 1.4.10 asks for no sideways scrolling.
    Narrow,
    /// 1280 x 800 CSS px, mouse.
    Desktop,
    /// Any other width and height in CSS px, mouse.
    Pixels(u32, u32),
}

impl Size {
    fn metrics(self) -> (u32, u32, u32, bool) {
        match self {
            Self::Phone => (390, 844, 2, true),
            Self::Narrow => (320, 640, 2, true),
            Self::Desktop => (1280, 800, 1, false),
            Self::Pixels(width, height) => (width, height, 1, false),
        }
    }
}

/// A colour scheme.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Theme {
    /// Dark on light.
    Light,
    /// Light on dark.
    Dark,
}

impl Page {
    /// Another screen; takes effect at once, in this tab.
    ///
    /// # Errors
    /// When the browser refuses.
    #[track_caller]
    pub fn set_size(&self, size: Size) -> Outcome {
        self.settings.borrow_mut().size = size;
        self.emulate()
    }

    /// Another colour scheme.
    ///
    /// # Errors
    /// When the browser refuses.
    #[track_caller]
    pub fn set_theme(&self, theme: Theme) -> Outcome {
        self.session.only_chromium("another theme for a page that is open")?;
        self.settings.borrow_mut().theme = theme;
        self.emulate()
    }

    /// The paper side of the page, for a look at `@media print`; `false` goes
    /// back to the screen.
    ///
    /// # Errors
    /// When the browser refuses.
    #[track_caller]
    pub fn set_print(&self, print: bool) -> Outcome {
        let media = if print { "print" } else { "" };
        let params = json!({ "media": media });
        self.session.devtools("Emulation.setEmulatedMedia", params).map(drop)
    }

    /// The reader's own few colours in place of the page's; `false` goes back to
    /// what was set before.
    ///
    /// # Errors
    /// When the browser refuses.
    #[track_caller]
    pub fn set_forced_colors(&self, forced: bool) -> Outcome {
        self.session.only_chromium("forced colours")?;
        if !forced {
            return self.emulate();
        }
        let params = json!({ "features": [{ "name": "forced-colors", "value": "active" }] });
        self.session.devtools("Emulation.setEmulatedMedia", params).map(drop)
    }

    /// A processor so many times slower; 1 goes back to this machine's own.
    ///
    /// # Errors
    /// When the browser refuses.
    #[track_caller]
    pub fn set_slower(&self, times: u32) -> Outcome {
        let params = json!({ "rate": times });
        self.session.devtools("Emulation.setCPUThrottlingRate", params).map(drop)
    }

    /// Does something while the window is as high as the page, so that nothing sticks over anything.
    /// All else that the page believes stays.
    #[track_caller]
    pub(crate) fn in_full_height<T>(&self, act: impl FnOnce() -> Outcome<T>) -> Outcome<T> {
        if self.settings.borrow().engine != Engine::Chromium {
            return act();
        }
        let (width, height, scale, mobile) = self.settings.borrow().size.metrics();
        let resize = |height: u64| {
            let metrics = json!({
                "width": width, "height": height, "deviceScaleFactor": scale, "mobile": mobile,
            });
            self.session.devtools("Emulation.setDeviceMetricsOverride", metrics)
        };
        let whole = self.eval("return document.documentElement.scrollHeight", &[])?.as_u64();
        resize(whole.unwrap_or(0).max(height.into()))?;
        let done = act();
        resize(height.into())?;
        done
    }

    /// Tells the tab in front everything it should believe. The browser
    /// forgets none of it on navigation, but each new tab starts without.
    #[track_caller]
    pub(crate) fn emulate(&self) -> Outcome {
        let settings = self.settings.borrow().clone();
        let (width, height, scale, mobile) = settings.size.metrics();
        if settings.engine != Engine::Chromium {
            return self.resize(width, height);
        }
        let theme = match settings.theme {
            Theme::Light => "light",
            Theme::Dark => "dark",
        };
        let motion = if settings.reduced_motion { "reduce" } else { "no-preference" };
        let wishes = [
            (
                "Emulation.setDeviceMetricsOverride",
                json!({
                    "width": width, "height": height,
                    "deviceScaleFactor": scale, "mobile": mobile,
                }),
            ),
            (
                "Emulation.setTouchEmulationEnabled",
                json!({ "enabled": mobile, "maxTouchPoints": 5 }),
            ),
            (
                "Emulation.setEmulatedMedia",
                json!({ "features": [
                    { "name": "prefers-color-scheme", "value": theme },
                    { "name": "prefers-reduced-motion", "value": motion },
                ] }),
            ),
            ("Emulation.setLocaleOverride", json!({ "locale": settings.locale })),
            // Keeps what a screen reader would hear up to date; otherwise the
            // browser works it out from nothing for each element that is asked.
            ("Accessibility.enable", json!({})),
        ];
        for (command, params) in wishes {
            self.session.devtools(command, params)?;
        }
        Ok(())
    }
}
