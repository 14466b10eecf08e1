//! The charges of this question.

use crate::state::App;
use pitchline_core::{Build, Charge, ChargeRefusal, Charger, Draft, Drive, Record, Slot, fits};

/// Why a charger is not to be used now.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Refused {
    /// It ends at other volts than the full pack has.
    Volts { charger_v: f64, pack_v: f64 },
    /// Its plug is another than the pack's port.
    Plug,
    /// The pack is too cold, °C.
    Cold { cell_c: f64, least_c: f64 },
}

/// What a charger does.
pub(super) struct Charges {
    /// Until it ends by itself.
    pub(super) full: Charge,
    /// Until there is enough.
    pub(super) enough: Charge,
    /// Until the rider leaves.
    pub(super) leaving: Charge,
}

/// A charger on offer, or the one on the board.
pub(super) struct Offer {
    pub(super) part: Record,
    pub(super) current_a: f64,
    pub(super) price: Option<f64>,
    /// Whether it is on the board.
    pub(super) here: bool,
    /// Whether it gives more than the cells are rated for.
    pub(super) strong: bool,
    /// Times to enough and to full, s.
    pub(super) times_s: Result<[f64; 2], Refused>,
}

/// All of it.
pub(super) struct Found {
    pub(super) build: Build,
    /// With the charger on the board.
    pub(super) charges: Result<Charges, Refused>,
    /// What the cells are rated for together, A.
    pub(super) cells_a: f64,
    pub(super) offers: Vec<Offer>,
}

impl Found {
    pub(super) fn new(app: App) -> Option<Self> {
        let build = app.found()?.build;
        let (draft, offered) = app.read(|model| {
            let offered = model.loaded.catalog.offered(&model.draft.kit, Slot::Charger);
            (model.draft.clone(), offered.into_iter().cloned().collect())
        });
        Some(Self::of(&draft, build, offered))
    }

    pub(super) fn of(draft: &Draft, build: Build, mut offered: Vec<Record>) -> Self {
        // The one on the board may be altered, or not on offer.
        let own = draft.record(Slot::Charger);
        match offered.iter_mut().find(|part| part.id == own.id) {
            Some(part) => *part = own.clone(),
            None => offered.insert(0, own.clone()),
        }
        let cells_a = build.pack.parallel * build.cell.max_charge_a;
        let pack = draft.record(Slot::Pack);
        let plug = |part: &Record| fits(Slot::Pack, pack, Slot::Charger, part);
        let offer = |part: Record| {
            let charger = Charger::from_record(&part).ok()?;
            let (from, to) = (build.ride.charge_from, build.ride.charge_to);
            let drive = Drive::new(&Build { charger, ..build });
            let time = |to| Ok(charge(drive.charge(from, to), plug(&part))?.time_s);
            Some(Offer {
                current_a: charger.current_a,
                price: charger.price,
                here: part.id == own.id,
                strong: charger.current_a > cells_a,
                times_s: time(to).and_then(|enough| Ok([enough, time(1.0)?])),
                part,
            })
        };
        Self {
            charges: charges(&build, plug(own)),
            cells_a,
            offers: offered.into_iter().filter_map(offer).collect(),
            build,
        }
    }

    /// The charges, where there are any.
    pub(super) fn charges(&self) -> Option<&Charges> {
        self.charges.as_ref().ok()
    }
}

fn charges(build: &Build, plug: bool) -> Result<Charges, Refused> {
    let (drive, ride) = (Drive::new(build), build.ride);
    Ok(Charges {
        full: charge(drive.charge(ride.charge_from, 1.0), plug)?,
        enough: charge(drive.charge(ride.charge_from, ride.charge_to), plug)?,
        leaving: charge(drive.charge_for(ride.charge_from, ride.charge_time_s), plug)?,
    })
}

fn charge(found: Result<Charge, ChargeRefusal>, plug: bool) -> Result<Charge, Refused> {
    match found {
        Err(ChargeRefusal::WrongVolts { charger_v, pack_v }) => {
            Err(Refused::Volts { charger_v, pack_v })
        }
        _ if !plug => Err(Refused::Plug),
        Err(ChargeRefusal::TooCold { cell_c, least_c }) => Err(Refused::Cold { cell_c, least_c }),
        Ok(charge) => Ok(charge),
    }
}
