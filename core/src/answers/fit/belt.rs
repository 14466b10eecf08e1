//! Which belts fit the pulleys and the mount.

use super::belt_bench::{BenchFit, bench_fit};
use super::belt_load::{BeltLoad, BeltMesh, CentreFrom};
use crate::answers::drive::Drive;
use crate::parts::{Belt, MotorPulley, WheelPulley};
use crate::physics::belt_geometry::{
    PulleyOutside, RatedPullInMesh, SmallPulleyRadius, TouchingCentre, USUAL_TEETH, centre_m,
    pitch_line_m,
};
use crate::working::Working;
use alloc::vec::Vec;
use serde::Serialize;

/// What may be put on the board.
#[derive(Clone, Copy, Debug, Default)]
pub struct BeltOffers<'a> {
    /// Belts.
    pub belts: &'a [Belt],
    /// Motor pulleys.
    pub motor_pulleys: &'a [MotorPulley],
    /// Wheel pulleys.
    pub wheel_pulleys: &'a [WheelPulley],
}

/// Which belts were tried.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum BeltList {
    /// Those on offer of the same pitch, as far as their teeth are given.
    Offered,
    /// The lengths of 5 mm pitch that are often in stock. Common practice, no source.
    Usual,
    /// None: nothing on offer has teeth, and of this pitch no list is known.
    Unknown,
}

/// Sizes of a pulley.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct PulleySize {
    /// Teeth.
    pub teeth: f64,
    /// Diameter of the pitch circle, m.
    pub pitch_diameter_m: f64,
    /// Diameter over the tips of the teeth, m, where the pitch line is known.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub outside_diameter_m: Option<f64>,
}

/// A belt, and how it would run.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct BeltChoice {
    /// Place among the belts on offer; none if it is not of them.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub offer: Option<usize>,
    /// Teeth.
    pub teeth: f64,
    /// Pitch length, m.
    pub length_m: f64,
    /// How it lies at the centre distance that it wants.
    pub mesh: BeltMesh,
    /// Whether the mount slides there.
    pub in_slot: bool,
    /// Where in the slot, as a share: 0 at the near stop, 1 at the far one.
    pub place: f64,
    /// Travel left to tighten it, m; negative beyond the far stop.
    pub travel_left_m: f64,
    /// Highest pull, N, with these teeth in mesh.
    pub rated_n: f64,
    /// Greatest pull of the drive as a share of that.
    pub used: f64,
    /// Mass of one, kg: as given, or by width and length.
    pub mass_kg: f64,
    /// Price of one, in the catalogue's currency.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<f64>,
    /// How much the wanted centre distance is more than the measured one, m.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub off_measured_m: Option<f64>,
}

/// The nearest belt that does not fit.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct BeltMiss {
    /// The belt.
    pub belt: BeltChoice,
    /// How much more the mount would have to slide, m.
    pub miss_m: f64,
}

/// How the belt on the board fits.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum BeltOnBoard {
    /// Its teeth are not given.
    NoTeeth,
    /// Too short: the pulleys would overlap.
    TooShort,
    /// As told; it may lie outside the slot.
    Taut(BeltChoice),
}

/// Which belts fit, and what they must pull.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct BeltFit {
    /// Motor pulley and wheel pulley.
    pub pulleys: [PulleySize; 2],
    /// Centre distance at which they would touch, m.
    pub touching_m: f64,
    /// The mount's stops, m, the nearer first.
    pub slot_m: [f64; 2],
    /// Which belts were tried.
    pub list: BeltList,
    /// Those that fit, shortest first.
    pub fitting: Vec<BeltChoice>,
    /// The nearest one too short for the near stop.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub shorter: Option<BeltMiss>,
    /// The nearest one too long for the far stop.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub longer: Option<BeltMiss>,
    /// The belt on the board.
    pub on_board: BeltOnBoard,
    /// What the rider measured, and the belt in hand.
    pub bench: BenchFit,
    /// Where the centre distance of `run` was taken from.
    pub run_from: CentreFrom,
    /// The centre distance run at; none where the pulleys would overlap.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub run: Option<BeltMesh>,
    /// What the belt on the board must pull, and how tight it has to be.
    pub load: BeltLoad,
}

impl BeltFit {
    /// The belt on offer to take: of those that fit, the one that lies nearest
    /// the middle of the slot, and of two alike the one that works less hard.
    #[must_use]
    pub fn pick(&self) -> Option<&BeltChoice> {
        let rank = |belt: &BeltChoice| (crate::math::abs(belt.place - 0.5), belt.used);
        let mut best: Option<&BeltChoice> = None;
        for belt in self.fitting.iter().filter(|belt| belt.offer.is_some()) {
            if best.is_none_or(|best| rank(belt) < rank(best)) {
                best = Some(belt);
            }
        }
        best
    }
}

/// A drive with what every belt is judged by.
pub(super) struct Judge<'a> {
    pub(super) drive: &'a Drive,
    pub(super) radii: [f64; 2],
    pub(super) stops: [f64; 2],
    pub(super) measured_m: Option<f64>,
    pub(super) peak_n: f64,
}

impl Judge<'_> {
    /// How a belt would run; none if the pulleys would overlap or its teeth are not given.
    pub(super) fn choice(&self, belt: &Belt, offer: Option<usize>) -> Option<BeltChoice> {
        let ([small, large], [near, far]) = (self.radii, self.stops);
        let (teeth, length) = (belt.teeth?, belt.length_m()?);
        let centre = centre_m(length, small, large).ok()?;
        let mesh = self.drive.mesh(self.radii, centre, &mut Working::off());
        let (rating, width) = (1e-3 * belt.rating_n_per_m, 1e3 * belt.width_m);
        let rated_n = RatedPullInMesh { rating, width, share: mesh.rating_share }.value();
        Some(BeltChoice {
            offer,
            teeth,
            length_m: length,
            mesh,
            in_slot: near <= centre && centre <= far,
            // A slot without travel has one place.
            place: (centre - near) / (far - near).max(1e-9),
            travel_left_m: far - centre,
            rated_n,
            used: self.peak_n / rated_n,
            mass_kg: belt.usual_mass_kg(),
            price: belt.price,
            off_measured_m: self.measured_m.map(|measured| centre - measured),
        })
    }
}

/// Puts an item where its key belongs, smallest first: a general sort costs
/// the page more.
pub(super) fn put<T>(list: &mut Vec<T>, item: T, key: fn(&T) -> f64) {
    let at = list.iter().position(|other| key(other) > key(&item)).unwrap_or(list.len());
    list.insert(at, item);
}

/// Every belt to try: those on offer, or the usual ones.
fn candidates(belt: &Belt, offers: &[Belt]) -> (BeltList, Vec<(Belt, Option<usize>)>) {
    let same = |pitch: f64| crate::math::abs(pitch - belt.pitch_m) < 1e-9;
    let offered = offers.iter().enumerate().filter(|(_, o)| o.teeth.is_some() && same(o.pitch_m));
    let found: Vec<_> = offered.map(|(place, offer)| (*offer, Some(place))).collect();
    if !found.is_empty() {
        return (BeltList::Offered, found);
    }
    if !same(0.005) {
        return (BeltList::Unknown, found);
    }
    let usual =
        |teeth: &f64| (Belt { teeth: Some(*teeth), mass_kg: None, price: None, ..*belt }, None);
    (BeltList::Usual, USUAL_TEETH.iter().map(usual).collect())
}

/// Which of the belts on offer fit the board's pulleys and mount, what the
/// bench measurements say, and what the belt must pull.
///
/// Never fails: a belt that cannot go round pulleys that do not overlap is left
/// out, and told as such where it is the one on the board or in hand.
///
/// ```
/// use pitchline_core::{BeltOffers, BeltOnBoard, Build, Draft, Drive, Slot, belt_fit};
///
/// // Two pulleys alike: the belt wraps half of each and runs straight between them, so that
/// // 58 teeth of 5 mm on 30 and 30 want (58 − 30) · 5 mm / 2.
/// let mut draft = Draft::typical();
/// draft.set(Slot::MotorPulley, "teeth", 30.0);
/// draft.set(Slot::WheelPulley, "teeth", 30.0);
/// draft.set(Slot::Belt, "teeth", 58.0);
/// let drive = Drive::new(&Build::check(&draft).unwrap());
/// let none = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
/// let BeltOnBoard::Taut(belt) = belt_fit(&drive, &none).on_board else { panic!("it goes round") };
/// assert!((belt.mesh.centre_m - 0.070).abs() < 1e-9);
/// assert!((belt.mesh.teeth - 15.0).abs() < 1e-9);
/// // The mount slides from 66 to 78 mm.
/// assert!(belt.in_slot && (belt.travel_left_m - 0.008).abs() < 1e-9);
/// ```
#[must_use]
pub fn belt_fit(drive: &Drive, offers: &BeltOffers) -> BeltFit {
    let w = &mut Working::off();
    let build = &drive.build;
    let radii @ [small, large] = drive.radii(w);
    let stops @ [near, far] = drive.stops();
    let run = drive.centre(radii, w).map(|centre| drive.mesh(radii, centre, w));
    let load = drive.belt_load(run);
    let measured_m = build.bench.measured_centre_m;
    let judge = Judge { drive, radii, stops, measured_m, peak_n: load.peak_n };
    let (list, tried) = candidates(&build.belt, offers.belts);
    let mut choices: Vec<BeltChoice> = Vec::new();
    for (belt, offer) in &tried {
        if let Some(choice) = judge.choice(belt, *offer) {
            put(&mut choices, choice, |choice| choice.teeth);
        }
    }
    let short = choices.iter().rfind(|choice| choice.mesh.centre_m < near);
    let long = choices.iter().find(|choice| choice.mesh.centre_m > far);
    let size = |teeth: f64| PulleySize {
        teeth,
        pitch_diameter_m: 2.0 * SmallPulleyRadius { teeth, pitch: build.belt.pitch_m }.value(),
        outside_diameter_m: pitch_line_m(build.belt.pitch_m)
            .map(|above| PulleyOutside { teeth, pitch: build.belt.pitch_m, above }.value()),
    };
    BeltFit {
        pulleys: [size(build.motor_pulley.teeth), size(build.wheel_pulley.teeth)],
        touching_m: TouchingCentre { small, large }.value(),
        slot_m: stops,
        list,
        shorter: short.map(|belt| BeltMiss { belt: *belt, miss_m: near - belt.mesh.centre_m }),
        longer: long.map(|belt| BeltMiss { belt: *belt, miss_m: belt.mesh.centre_m - far }),
        on_board: match (build.belt.teeth, judge.choice(&build.belt, None)) {
            (None, _) => BeltOnBoard::NoTeeth,
            (_, None) => BeltOnBoard::TooShort,
            (_, Some(choice)) => BeltOnBoard::Taut(choice),
        },
        bench: bench_fit(&judge, &choices, offers),
        fitting: choices.iter().filter(|choice| choice.in_slot).copied().collect(),
        run_from: drive.centre_from(),
        run,
        load,
    }
}
