//! The bands of the first screen, written by `PITCHLINE_WRITE=1 cargo test -p pitchline-web first`.

use super::sure::Sure;

/// Those of the demo's first kit: the page begins with what `index.html` shows.
pub const FIRST: [Sure; 3] = [
    Sure::first(13.561115062547794, 12.930027120793145, 14.147461535424513),
    Sure::first(0.28274742063889796, 0.2634419246406081, 0.30340010806516743),
    Sure::first(36034.1073335386, 30164.50464674152, 42670.5973072501),
];
