//! Whether a charger is for a pack, and what it does there: decisions as data, worded by the page.

use super::charge::Charge;
use super::drive::Drive;
use super::notice::fits;
use crate::build::{Build, Draft};
use crate::error::Error;
use crate::parts::{Charger, Record, Slot};
use alloc::vec::Vec;
use serde::Serialize;

/// Cells are not to be charged below this, °C. Common practice, no source.
pub const LEAST_CHARGE_C: f64 = 0.0;

/// Why a pack is not to be charged, gravest first.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
#[serde(rename_all = "snake_case")]
pub enum ChargeRefusal {
    /// The charger ends at other volts than a full pack has.
    WrongVolts {
        /// Charger, V.
        charger_v: f64,
        /// Full pack, V.
        pack_v: f64,
        /// The lowest and the highest voltage of a charger for this pack, V.
        fits_v: [f64; 2],
        /// Whether it would overcharge the cells; else it never fills them.
        overcharges: bool,
    },
    /// The charger's plug is another than the pack's port.
    WrongPlug,
    /// The cells are colder than they may be charged.
    TooCold {
        /// Temperature of the cells, °C.
        cell_c: f64,
        /// Lowest temperature for charging, °C.
        least_c: f64,
    },
}

/// A charger that gives more current than the cells are rated for: to be used only where the pack
/// itself holds the current down.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS))]
pub struct TooStrong {
    /// Current of the charger, A.
    pub charger_a: f64,
    /// What the cells are rated for together, A.
    pub cells_a: f64,
}

/// How a charger stands to a pack, and to the cells as warm as they are.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ChargerFit {
    /// Why it is not to be used; the gravest reason.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub refusal: Option<ChargeRefusal>,
    /// Whether it is too strong for the cells, refused or not.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub too_strong: Option<TooStrong>,
}

impl ChargerFit {
    /// Whether it is one for this pack, though the cells may be too cold now.
    #[must_use]
    pub const fn is_for_the_pack(&self) -> bool {
        let other = matches!(
            self.refusal,
            Some(ChargeRefusal::WrongVolts { .. } | ChargeRefusal::WrongPlug)
        );
        !other && self.too_strong.is_none()
    }
}

/// How long does it charge?
#[derive(Clone, Debug, PartialEq, Serialize)]
#[cfg_attr(feature = "schema", derive(ts_rs::TS), ts(optional_fields))]
pub struct Charging {
    /// From where the rider begins until the charger ends by itself.
    pub full: Charge,
    /// From there until what the rider takes as enough.
    pub enough: Charge,
    /// From there until the rider leaves.
    pub leaving: Charge,
    /// Whether the charger is too strong for the cells; the charges are then at the cells' current.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub too_strong: Option<TooStrong>,
}

/// What a charger on offer would do for a board.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct ChargerOffer {
    /// Its current, A.
    pub current_a: f64,
    /// Its price, in the catalogue's currency.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub price: Option<f64>,
    /// How it stands to the pack.
    pub fit: ChargerFit,
    /// Time from where the rider begins to what is enough, s; none where it is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub enough_s: Option<f64>,
    /// Time until it ends by itself, s; none where it is refused.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub full_s: Option<f64>,
}

impl Build {
    /// What the cells are rated to be charged with together, A.
    #[must_use]
    pub fn cells_charge_a(&self) -> f64 {
        self.pack.parallel * self.cell.max_charge_a
    }

    /// Whether the charger gives more than the cells are rated for.
    #[must_use]
    pub fn charger_too_strong(&self) -> Option<TooStrong> {
        let (charger_a, cells_a) = (self.charger.current_a, self.cells_charge_a());
        (charger_a > cells_a).then_some(TooStrong { charger_a, cells_a })
    }

    /// Why the charger is not to be used, plug aside: a build knows no plugs.
    pub(super) fn charge_refusal(&self) -> Option<ChargeRefusal> {
        let charger_v = self.charger.full_v;
        if !self.charger_fits(charger_v) {
            let (pack_v, fits_v) = (self.full_pack_v(), self.charger_fits_v());
            let overcharges = charger_v > pack_v;
            return Some(ChargeRefusal::WrongVolts { charger_v, pack_v, fits_v, overcharges });
        }
        let cell_c = self.charge_air_c();
        (cell_c < LEAST_CHARGE_C)
            .then_some(ChargeRefusal::TooCold { cell_c, least_c: LEAST_CHARGE_C })
    }
}

/// How a charger stands to the pack of a draft; `build` is the draft checked, with that charger.
pub(super) fn charger_fit(draft: &Draft, build: &Build, charger: &Record) -> ChargerFit {
    let plug = fits(Slot::Pack, draft.record(Slot::Pack), Slot::Charger, charger);
    let refusal = match build.charge_refusal() {
        wrong @ Some(ChargeRefusal::WrongVolts { .. }) => wrong,
        _ if !plug => Some(ChargeRefusal::WrongPlug),
        other => other,
    };
    ChargerFit { refusal, too_strong: build.charger_too_strong() }
}

/// How long does it charge, with the charger on the board? `build` is the draft checked.
///
/// # Errors
/// [`ChargeRefusal`] where the charger is for other volts or has another plug, and for cells below
/// 0 °C.
///
/// ```
/// use pitchline_core::{Build, ChargeRefusal, Draft, Slot, charging};
///
/// let mut draft = Draft::typical();
/// let found = charging(&draft, &Build::check(&draft).unwrap()).unwrap();
/// assert!(found.enough.time_s < found.full.time_s && found.too_strong.is_none());
///
/// // A charger for one more cell in series would overcharge the pack.
/// let series = draft.value(Slot::Pack, "series").unwrap();
/// draft.set(Slot::Charger, "full_v", 4.2 * (series + 1.0));
/// let refused = charging(&draft, &Build::check(&draft).unwrap()).unwrap_err();
/// assert!(matches!(refused, ChargeRefusal::WrongVolts { overcharges: true, .. }));
/// ```
pub fn charging(draft: &Draft, build: &Build) -> Result<Charging, ChargeRefusal> {
    let fit = charger_fit(draft, build, draft.record(Slot::Charger));
    if let Some(refusal) = fit.refusal {
        return Err(refusal);
    }
    let (drive, ride) = (Drive::new(build), build.ride);
    Ok(Charging {
        full: drive.charge(ride.charge_from, 1.0)?,
        enough: drive.charge(ride.charge_from, ride.charge_to)?,
        leaving: drive.charge_for(ride.charge_from, ride.charge_time_s)?,
        too_strong: fit.too_strong,
    })
}

/// What another charger would do for a board. `build` is the draft checked.
///
/// # Errors
/// One for each value of the charger that is missing or out of range.
///
/// ```
/// use pitchline_core::{Build, ChargeRefusal, Draft, Slot, charger_offer};
///
/// let draft = Draft::typical();
/// let build = Build::check(&draft).unwrap();
/// let offer = |volts: f64, amperes: f64| {
///     let mut with = draft.clone();
///     with.set(Slot::Charger, "full_v", volts);
///     with.set(Slot::Charger, "current_a", amperes);
///     charger_offer(&draft, &build, with.record(Slot::Charger)).unwrap()
/// };
/// // 9 Ah from 20 to 80 % at 6 A: 0.9 h at least, and less than at 3 A.
/// let strong = offer(42.0, 6.0);
/// assert!(strong.enough_s.unwrap() >= 0.9 * 3600.0 * 0.999);
/// assert!(strong.enough_s < offer(42.0, 3.0).enough_s);
/// // Cells of 3 Ah, 3 in parallel, bear 9 A.
/// assert!(strong.fit.too_strong.is_none() && offer(42.0, 10.0).fit.too_strong.is_some());
/// // A charger for 12 in series is not for 10.
/// let wrong = offer(50.4, 3.0);
/// assert!(matches!(wrong.fit.refusal, Some(ChargeRefusal::WrongVolts { overcharges: true, .. })));
/// assert_eq!(wrong.full_s, None);
/// ```
pub fn charger_offer(
    draft: &Draft,
    build: &Build,
    charger: &Record,
) -> Result<ChargerOffer, Vec<Error>> {
    let part = Charger::from_record(charger)?;
    let with = Build { charger: part, ..*build };
    let fit = charger_fit(draft, &with, charger);
    let (drive, ride) = (Drive::new(&with), with.ride);
    let time = |to: f64| match fit.refusal {
        Some(_) => None,
        None => drive.charge(ride.charge_from, to).ok().map(|charge| charge.time_s),
    };
    Ok(ChargerOffer {
        current_a: part.current_a,
        price: part.price,
        fit,
        enough_s: time(ride.charge_to),
        full_s: time(1.0),
    })
}
