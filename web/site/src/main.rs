//! `cargo site`: builds and serves the site.
fn main() {}
