#![allow(missing_docs)]
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Chemistry {
    #[default]
    Energy,
    Power,
    Lfp,
}
pub struct Shape {
    pub r0_share: f64,
    pub r1_share: f64,
    pub r2_share: f64,
    pub tau1_s: f64,
    pub tau2_s: f64,
    pub empty_gain: f64,
    pub empty_scale: f64,
}
impl Chemistry {
    pub fn ocv_v(self, z: f64) -> f64 {
        let z = z.clamp(0.0, 1.0);
        3.2 + 0.9 * z - 0.7 * crate::math::exp(-z / 0.03)
    }
    pub fn shape(self) -> Shape {
        Shape {
            r0_share: 0.84,
            r1_share: 0.28,
            r2_share: 1.22,
            tau1_s: 15.0,
            tau2_s: 510.0,
            empty_gain: 4.0,
            empty_scale: 0.08,
        }
    }
    pub fn resistance_factor(self, c: f64) -> f64 {
        crate::math::exp(3000.0 * (1.0 / (c + 273.15) - 1.0 / 298.15))
    }
    pub fn capacity_factor(self, _c: f64) -> f64 {
        1.0
    }
    pub fn fade(self, _n: f64) -> (f64, f64) {
        (1.0, 1.0)
    }
}
