//! What went wrong, and on which line of the test.

use std::fmt;
use std::panic::Location;

/// What a test gives back.
pub type Outcome<T = ()> = Result<T, Fault>;

/// Why a step failed, with the line of the test that took it.
pub struct Fault {
    what: String,
    line: &'static Location<'static>,
}

impl Fault {
    /// A fault at the caller's line.
    #[track_caller]
    pub fn new(what: impl Into<String>) -> Self {
        Self { what: what.into(), line: Location::caller() }
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}\n  at {}", self.what, self.line)
    }
}

// A failed test prints this form, so it is the readable one.
impl fmt::Debug for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        fmt::Display::fmt(self, f)
    }
}

impl std::error::Error for Fault {}

impl From<std::io::Error> for Fault {
    #[track_caller]
    fn from(error: std::io::Error) -> Self {
        Self::new(error.to_string())
    }
}
