//! What heat leaves of the push.

use super::journey::Journey;
use crate::answers::{FULL, Limit};
use crate::math::root;
use crate::parts::Mode;

/// What a cutback between two temperatures leaves; it takes a degree at least, as no sensor is
/// finer (common practice, no source).
fn left(hot_c: f64, start_c: f64, end_c: f64) -> f64 {
    (1.0 - (hot_c - start_c).max(0.0) / (end_c - start_c).max(1.0)).max(0.0)
}

impl Journey {
    /// The ride mode that a hot controller, or hot windings, leave, and which of them.
    ///
    /// Windings warm up within seconds: their share is the one that holds amid the step, from how
    /// warm the wish would make them, and how warm a share of the limits does.
    pub(super) fn mode(&self, wish_c: f64, share_c: impl Fn(f64) -> f64) -> (Mode, Limit) {
        let (c, most_c) = (&self.drive.build.controller, self.drive.build.motor.winding_limit_c);
        let controller = left(self.now.controller_c, c.cutback_start_c, c.cutback_end_c);
        let windings = c.motor_cutback_start_c.map_or(1.0, |start_c| {
            let left = |hot_c: f64| left(hot_c, start_c, c.motor_cutback_end_c.unwrap_or(most_c));
            if left(wish_c) < 1.0 {
                root(0.0, 1.0, 1e-6, |share| left(share_c(share)) - share)
            } else {
                1.0
            }
        });
        let limit = if windings < controller { Limit::WindingHot } else { Limit::ControllerHot };
        (Mode { current_share: windings.min(controller), ..FULL }, limit)
    }
}
