//! The bands of the first screen, written by `PITCHLINE_WRITE=1 cargo test -p pitchline-web first`.

use super::sure::Sure;

/// Those of the demo's first kit: the page begins with what `index.html` shows.
pub const FIRST: [Sure; 3] = [
    Sure::first(13.882384747966524, 13.20859903461039, 14.493665605284843),
    Sure::first(0.3136169839597003, 0.29244255260446966, 0.33726961722220367),
    Sure::first(58346.80080141575, 49132.88193673822, 68629.64492322202),
];
