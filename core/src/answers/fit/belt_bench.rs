//! The other way round: a measured centre distance, and a belt in hand.

use super::belt::{BeltChoice, BeltOffers, BeltOnBoard, Judge, put};
use crate::build::Build;
use crate::math::abs;
use crate::parts::Belt;
use crate::physics::belt_geometry::{centre_m, length_m, whole};
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// What a measured centre distance asks for.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum MeasuredCentre {
    /// Nothing was measured.
    NotGiven,
    /// The pulleys would overlap there.
    Overlap,
    /// This belt would be taut there.
    Length {
        /// Its pitch length, m.
        length_m: f64,
        /// The whole teeth next to that, fewer and more; alike where it is whole.
        teeth: [f64; 2],
    },
}

/// A pair of pulleys for the belt in hand.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct PulleyPair {
    /// Place among the motor pulleys on offer.
    pub motor_pulley: usize,
    /// Place among the wheel pulleys on offer.
    pub wheel_pulley: usize,
    /// Centre distance that the belt wants with them, m.
    pub centre_m: f64,
    /// How much that is more than the measured one, m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off_measured_m: Option<f64>,
}

/// What the workbench says.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct BenchFit {
    /// What the measured centre distance asks for.
    pub measured: MeasuredCentre,
    /// The belts whose wanted centre distance is nearest to it, nearest first,
    /// and none farther off than the mount slides or [`REACH_M`], 10 mm; the first that
    /// lies in the slot is the one to take.
    pub nearest: Vec<BeltChoice>,
    /// The belt in hand on these pulleys.
    pub in_hand: BeltOnBoard,
    /// Pairs on offer with which the belt in hand is taut within the slot,
    /// nearest to the measured centre distance first.
    pub pairs: Vec<PulleyPair>,
}

/// How far off what was measured a belt is told at the most where the mount
/// slides less, m. Common practice, no source.
pub const REACH_M: f64 = 0.010;

/// Belts told beside a measured centre distance.
const NEAREST: usize = 4;

pub(super) fn bench_fit(judge: &Judge, choices: &[BeltChoice], offers: &BeltOffers) -> BenchFit {
    let build = &judge.drive.build;
    let [small, large] = judge.radii;
    let measured = match judge.measured_m.map(|centre| length_m(centre, small, large)) {
        None => MeasuredCentre::NotGiven,
        Some(Err(_)) => MeasuredCentre::Overlap,
        Some(Ok(length_m)) => {
            let teeth = length_m / build.belt.pitch_m;
            let fewer = whole(teeth);
            let more = if teeth - fewer < 1e-9 { fewer } else { fewer + 1.0 };
            MeasuredCentre::Length { length_m, teeth: [fewer, more] }
        }
    };
    let mut nearest = Vec::new();
    if let MeasuredCentre::Length { .. } = measured {
        let [near, far] = judge.stops;
        let reach = (far - near).max(REACH_M);
        let off = |choice: &BeltChoice| abs(choice.off_measured_m.unwrap_or(0.0));
        for choice in choices.iter().filter(|choice| off(choice) <= reach) {
            put(&mut nearest, *choice, off);
        }
        nearest.truncate(NEAREST);
    }
    let in_hand = build.bench.belt_in_hand_teeth.map(|teeth| {
        // Of a belt in hand only its teeth are known.
        Belt { teeth: Some(teeth), mass_kg: None, price: None, ..build.belt }
    });
    BenchFit {
        measured,
        nearest,
        in_hand: match in_hand.map(|belt| judge.choice(&belt, None)) {
            None => BeltOnBoard::NoTeeth,
            Some(None) => BeltOnBoard::TooShort,
            Some(Some(choice)) => BeltOnBoard::Taut(choice),
        },
        pairs: in_hand.map_or_else(Vec::new, |belt| pairs(judge, &belt, offers)),
    }
}

/// The pairs with which a belt is taut within the slot.
fn pairs(judge: &Judge, belt: &Belt, offers: &BeltOffers) -> Vec<PulleyPair> {
    let mut found = Vec::new();
    let ([near, far], length) = (judge.stops, belt.length_m().unwrap_or(0.0));
    for (motor_pulley, motor) in offers.motor_pulleys.iter().enumerate() {
        for (wheel_pulley, wheel) in offers.wheel_pulleys.iter().enumerate() {
            let build = Build { motor_pulley: *motor, wheel_pulley: *wheel, ..judge.drive.build };
            let drive = judge.drive.with_gear(&build);
            let [small, large] = drive.radii(&mut Working::off());
            let Ok(centre_m) = centre_m(length, small, large) else { continue };
            if near <= centre_m && centre_m <= far {
                let off_measured_m = judge.measured_m.map(|measured| centre_m - measured);
                let pair = PulleyPair { motor_pulley, wheel_pulley, centre_m, off_measured_m };
                put(&mut found, pair, |pair| abs(pair.off_measured_m.unwrap_or(0.0)));
            }
        }
    }
    found
}
