//! The bands of the first screen, written by `PITCHLINE_WRITE=1 cargo test -p pitchline-web first`.

use super::sure::Sure;

/// Those of the demo's first kit: the page begins with what `index.html` shows.
pub const FIRST: [Sure; 3] = [
    Sure::first(13.719702230577377, 13.05475519694351, 14.32628127583147),
    Sure::first(0.3136169839597003, 0.29244255260446966, 0.33726961722220367),
    Sure::first(59339.98653902005, 50183.29191735601, 69770.19378572323),
];
