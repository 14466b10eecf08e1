//! Keys, as the WebDriver standard numbers them.

/// A key on the keyboard.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[allow(missing_docs, reason = "each says itself")]
pub enum Key {
    Backspace,
    Tab,
    Enter,
    Shift,
    Control,
    Alt,
    Escape,
    Space,
    PageUp,
    PageDown,
    End,
    Home,
    Left,
    Up,
    Right,
    Down,
    Delete,
    /// A key that writes this character.
    Char(char),
}

impl Key {
    /// The code point of the standard's table "Keyboard actions",
    /// <https://www.w3.org/TR/webdriver2/#keyboard-actions>.
    pub(crate) fn value(self) -> char {
        match self {
            Self::Backspace => '\u{E003}',
            Self::Tab => '\u{E004}',
            Self::Enter => '\u{E007}',
            Self::Shift => '\u{E008}',
            Self::Control => '\u{E009}',
            Self::Alt => '\u{E00A}',
            Self::Escape => '\u{E00C}',
            Self::Space => '\u{E00D}',
            Self::PageUp => '\u{E00E}',
            Self::PageDown => '\u{E00F}',
            Self::End => '\u{E010}',
            Self::Home => '\u{E011}',
            Self::Left => '\u{E012}',
            Self::Up => '\u{E013}',
            Self::Right => '\u{E014}',
            Self::Down => '\u{E015}',
            Self::Delete => '\u{E017}',
            Self::Char(letter) => letter,
        }
    }
}
