//! The page as a person meets it, in a real browser.
