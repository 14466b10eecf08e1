//! Boards drawn from the core's own tables of limits, the same in every run.

use pitchline_core::{Draft, Field, Need, Slot};

/// Draws by the generator of Steele, Lea and Flood, "Fast splittable
/// pseudorandom number generators", 2014.
pub(crate) struct Draws(pub(crate) u64);

impl Draws {
    /// From 0 up to 1.
    fn share(&mut self) -> f64 {
        self.0 = self.0.wrapping_add(0x9E37_79B9_7F4A_7C15);
        let mut z = self.0;
        z = (z ^ (z >> 30)).wrapping_mul(0xBF58_476D_1CE4_E5B9);
        z = (z ^ (z >> 27)).wrapping_mul(0x94D0_49BB_1331_11EB);
        ((z ^ (z >> 31)) >> 11) as f64 / (1_u64 << 53) as f64
    }

    /// A whole number below `count`.
    pub(crate) fn below(&mut self, count: usize) -> usize {
        (self.share() * count as f64) as usize
    }

    fn value(&mut self, field: &Field, wide: bool) -> Option<f64> {
        if field.need != Need::Required && self.share() < 0.2 {
            return None;
        }
        let share = self.share();
        let (low, high) = if wide {
            (field.min, field.max)
        } else {
            let span = 0.25 * (field.max - field.min);
            let span = if field.typical == 0.0 { span } else { 0.4 * field.typical.abs() };
            (field.min.max(field.typical - span), field.max.min(field.typical + span))
        };
        let value = low + share * (high - low);
        Some(if field.must_be_whole() { value.round() } else { value })
    }

    /// A board within the limits: any at all, or one that somebody might build.
    pub(crate) fn draft(&mut self, wide: bool) -> Draft {
        let mut draft = Draft::typical();
        for slot in Slot::ALL {
            for (index, field) in slot.kind().fields().iter().enumerate() {
                let value = self.value(field, wide);
                draft.set_value(*slot, index, value);
            }
        }
        draft
    }
}
