//! The page, started in the browser.
fn main() {}
