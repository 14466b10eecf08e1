//! What flows where in the pack and its leads, and the fuse and wire for it.

use super::drive::{Drive, Sag};
use super::margins::{FUSE_SHARE, Rating, drawn};
use crate::build::{Build, Draft};
use crate::physics::road_load::Slope;
use crate::physics::wire::{WireDiameter, WireResistance, area_mm2, rise_k};
use alloc::vec::Vec;
use serde::Serialize;

/// Rated currents of fuses that are sold, A. Common practice, no source.
pub const FUSES_A: [f64; 16] = [
    5.0, 7.5, 10.0, 15.0, 20.0, 25.0, 30.0, 35.0, 40.0, 50.0, 60.0, 70.0, 80.0, 100.0, 125.0, 150.0,
];
/// Most that leads may get warmer than the air for long, K. Common practice, no source.
pub const RISE_K: f64 = 30.0;
/// Gauges that are sold, the thinnest first.
const GAUGES: [f64; 11] = [24.0, 22.0, 20.0, 18.0, 16.0, 14.0, 12.0, 10.0, 8.0, 6.0, 4.0];
/// Temperature of leads that carry current, °C. Common practice, no source.
const WARM_C: f64 = 60.0;

/// The main fuse, or what is missing to choose it.
#[derive(Clone, Debug, PartialEq)]
pub struct FuseChoice {
    /// Rated current of the fuse that is fitted, A; none where nobody gave it.
    pub now_a: Option<f64>,
    /// Lowest rated current that bears what the board draws, A: for long, and for seconds at full
    /// throttle.
    pub least_a: f64,
    /// Highest that still protects leads, connector, wires inside and cells, A; none where one of
    /// their ratings is missing.
    pub most_a: Option<f64>,
    /// What sets that.
    pub protects: Option<Rating>,
    /// The smallest on sale between the two, A; none where there is none, or `most_a` is missing.
    pub fuse_a: Option<f64>,
    /// Lowest DC voltage rating, V.
    pub least_v: f64,
    /// Ratings that nobody gave and without which there is no choice.
    pub missing: Vec<Rating>,
}

/// The leads between pack and controller.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leads {
    /// Gauge.
    pub gauge: f64,
    /// Copper, mm².
    pub area_mm2: f64,
    /// Resistance of both leads together, warm, ohm.
    pub ohm: f64,
    /// Voltage lost in them at full throttle, V.
    pub drop_v: f64,
    /// Warmer than the air on the rider's hill, K.
    pub rise_k: f64,
}

/// What flows in the pack and its leads.
#[derive(Clone, Debug, PartialEq)]
pub struct Wiring {
    /// Out of the pack on the rider's hill, A.
    pub hill_a: f64,
    /// Out of the pack for seconds at full throttle, A.
    pub peak_a: f64,
    /// The same in each cell, A.
    pub cell_a: f64,
    /// The leads as they are.
    pub leads: Leads,
    /// The thinnest leads that stay cool enough on the hill; none where none on sale do.
    pub thinnest: Option<Leads>,
    /// The main fuse.
    pub fuse: FuseChoice,
    /// Connections between the groups, a count.
    pub links: f64,
    /// Welds at the ends of all cells, a count.
    pub welds: f64,
    /// Share of its capacity that a group keeps when one of its cells fails, from 0 to 1; so far goes
    /// the pack.
    pub weak_share: f64,
    /// Current in each cell that is left in such a group at full throttle, A; 0 where none is left.
    pub weak_cell_a: f64,
}

/// What flows in the pack and its leads, and the fuse for it.
///
/// ```
/// use pitchline_core::{Build, Draft, Slot, wiring};
///
/// let mut draft = Draft::typical();
/// let found = wiring(&draft, &Build::check(&draft).unwrap());
/// // 10 groups of 3 cells; two motors may draw 25 A each.
/// assert_eq!((found.links, found.welds), (9.0, 60.0));
/// assert!((found.peak_a - 50.0).abs() < 1e-6);
/// // Nobody said what the leads bear.
/// assert_eq!(found.fuse.fuse_a, None);
/// for (key, rated_a) in [("wire_a", 70.0), ("connector_a", 80.0)] {
///     draft.set(Slot::Pack, key, rated_a);
/// }
/// draft.set(Slot::Cell, "max_discharge_a", 30.0);
/// let found = wiring(&draft, &Build::check(&draft).unwrap());
/// assert_eq!((found.fuse.fuse_a, found.fuse.most_a), (Some(50.0), Some(70.0)));
/// assert_eq!(found.fuse.least_v, 42.0);
/// ```
#[must_use]
pub fn wiring(draft: &Draft, build: &Build) -> Wiring {
    let b = build;
    let [hill_a, peak_a] = drawn(b);
    let parallel = b.pack.parallel;
    let leads = |gauge: f64| leads(b, gauge, hill_a, peak_a);
    let cool = |leads: &Leads| leads.rise_k <= RISE_K;
    let left = parallel - 1.0;
    Wiring {
        hill_a,
        peak_a,
        cell_a: peak_a / parallel,
        leads: leads(b.pack.wire_awg),
        thinnest: GAUGES.into_iter().map(leads).find(cool),
        fuse: fuse(draft, b, hill_a, peak_a),
        links: b.pack.series - 1.0,
        welds: 2.0 * b.pack.series * parallel,
        weak_share: left / parallel,
        weak_cell_a: if left > 0.0 { peak_a / left } else { 0.0 },
    }
}

fn leads(build: &Build, gauge: f64, hill_a: f64, peak_a: f64) -> Leads {
    let diameter = WireDiameter { gauge }.value();
    let ohm = WireResistance { length: build.pack.wire_m, diameter, celsius: WARM_C }.value();
    let metre = WireResistance { length: 1.0, diameter, celsius: WARM_C }.value();
    Leads {
        gauge,
        area_mm2: area_mm2(diameter),
        ohm,
        drop_v: ohm * peak_a,
        rise_k: rise_k(hill_a, metre, diameter),
    }
}

fn fuse(draft: &Draft, build: &Build, hill_a: f64, peak_a: f64) -> FuseChoice {
    let pack = &build.pack;
    let least_a = peak_a.max(hill_a / FUSE_SHARE);
    let bounds = [
        (Rating::Leads, pack.wire_a),
        (Rating::PackConnector, pack.connector_a),
        (Rating::CellDischarge, Some(build.cell.max_discharge_a * pack.parallel)),
    ];
    let ratings = bounds.iter().map(|(rating, _)| *rating);
    let missing: Vec<Rating> = ratings.filter(|rating| !rating.is_given(draft)).collect();
    let mut most: Option<(f64, Rating)> = None;
    let inner = (Rating::InnerWires, pack.inner_wire_a);
    for (rating, bound) in bounds.into_iter().chain([inner]) {
        if let Some(bound) = bound.filter(|bound| most.is_none_or(|(least, _)| *bound < least)) {
            most = Some((bound, rating));
        }
    }
    let most = most.filter(|_| missing.is_empty());
    let fits =
        |(most_a, _)| FUSES_A.into_iter().find(|size| (least_a - 1e-9..=most_a).contains(size));
    FuseChoice {
        now_a: pack.fuse_a,
        least_a,
        most_a: most.map(|(most_a, _)| most_a),
        protects: most.map(|(_, rating)| rating),
        fuse_a: most.and_then(fits),
        least_v: build.full_pack_v(),
        missing,
    }
}

/// Resting voltage of the pack by charge, for a gauge.
#[derive(Clone, Debug, PartialEq, Serialize)]
pub struct Gauge {
    /// Charge, a share, and the pack's voltage at rest, V, the fullest first.
    pub points: Vec<(f64, f64)>,
    /// Voltages at rest above which each of four lights shines, V, the first light first.
    pub lights_v: [f64; 4],
    /// How much lower it reads at cruising speed on the flat with half the charge, V; none where the
    /// board cannot hold that speed.
    pub sag_v: Option<f64>,
}

/// Charges of a gauge's card.
const CHARGES: [f64; 7] = [1.0, 0.9, 0.75, 0.6, 0.5, 0.25, 0.1];
/// Charges at which a light goes out. Common practice, no source.
const LIGHTS: [f64; 4] = [0.1, 0.35, 0.6, 0.85];

/// The card of a charge gauge for a checked build: what the pack's voltage at rest says.
///
/// ```
/// use pitchline_core::{Build, Draft, gauge};
///
/// let found = gauge(&Build::check(&Draft::typical()).unwrap());
/// // 10 cells of 4.2 V, and half charge at 3.750874 V each: Chen et al. 2020, whose open-circuit
/// // voltages the class of energy cells is made from.
/// assert!((found.points[0].1 - 42.0).abs() < 0.01);
/// assert!((found.points[4].1 / 37.50874 - 1.0).abs() < 0.005);
/// ```
#[must_use]
pub fn gauge(build: &Build) -> Gauge {
    let drive = Drive::new(build);
    let at_rest = |charge: f64| build.pack.series * build.cell.chemistry.ocv_v(charge);
    let supply = drive.supply(0.5, Sag::Sustained);
    let point = drive.hold(&supply, build.ride.cruise_m_s, Slope::FLAT);
    Gauge {
        points: CHARGES.map(|charge| (charge, at_rest(charge))).into(),
        lights_v: LIGHTS.map(at_rest),
        sag_v: point.map(|point| at_rest(0.5) - point.bus_v),
    }
}
