//! The page, started in the browser.

fn main() {
    pitchline_web::start();
}
