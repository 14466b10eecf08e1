//! From parts as written to a build that cannot be out of range.

use crate::bounds::Need;
use crate::error::{Error, Reason};
use crate::parts::{
    Belt, Bench, Cell, CellClass, Charger, Controller, Deck, Mode, Motor, MotorPulley, Pack, Place,
    Record, Ride, Rider, Slot, Truck, Wheel, WheelPulley,
};
use crate::physics::road_load::TotalMass;
use crate::working::Working;
use alloc::string::String;
use alloc::vec::Vec;

/// A build as written: one record for each slot, nothing checked yet.
#[derive(Clone, Debug, PartialEq)]
pub struct Draft {
    /// Id of the kit that it started from; empty if none.
    pub kit: String,
    /// The rider's own name for it.
    pub name: String,
    records: Vec<Record>,
    unfilled: Vec<Unfilled>,
}

/// A slot whose part is not there, so that nothing can be answered until another is picked.
#[derive(Clone, Debug, PartialEq)]
pub struct Unfilled {
    /// The slot.
    pub slot: Slot,
    /// Id of the part that a kit, a pack or a link names; empty if it cannot be read.
    pub id: String,
    /// Its name; its id where no name can be read.
    pub name: String,
    /// Why the catalogue leaves it out; none where it knows no such part.
    pub why: Option<Error>,
}

impl Draft {
    /// A plausible two-motor street board, every input at its typical value, given or assumed.
    #[must_use]
    pub fn typical() -> Self {
        let records =
            Slot::ALL.iter().map(|s| Record::typical(s.kind().fields(), s.kind().tags())).collect();
        Self { kit: String::new(), name: String::new(), records, unfilled: Vec::new() }
    }

    /// The record in a slot.
    #[must_use]
    pub fn record(&self, slot: Slot) -> &Record {
        static EMPTY: Record = Record::EMPTY;
        self.records.get(slot as usize).unwrap_or(&EMPTY)
    }

    /// Puts a record into a slot.
    pub fn set_record(&mut self, slot: Slot, record: Record) {
        self.unfilled.retain(|unfilled| unfilled.slot != slot);
        // Every draft is made with a record for every slot.
        if let Some(place) = self.records.get_mut(slot as usize) {
            *place = record;
        }
    }

    /// Empties a slot whose part is not there. [`Build::check`] refuses the draft until
    /// [`set_record`](Self::set_record) fills it.
    pub fn unfill(&mut self, unfilled: Unfilled) {
        let (id, name) = (unfilled.id.clone(), unfilled.name.clone());
        self.set_record(unfilled.slot, Record { id, name, ..Record::EMPTY });
        self.unfilled.push(unfilled);
    }

    /// The slots whose part is not there.
    #[must_use]
    pub fn unfilled(&self) -> &[Unfilled] {
        &self.unfilled
    }

    /// Sets or clears an input by its place in the kind's table, in the file's unit.
    pub fn set_value(&mut self, slot: Slot, index: usize, value: Option<f64>) {
        if let Some(record) = self.records.get_mut(slot as usize) {
            record.set(index, value);
        }
    }

    /// The value of an input by its key, in the file's unit.
    #[must_use]
    pub fn value(&self, slot: Slot, key: &str) -> Option<f64> {
        self.record(slot).value(slot.kind().field_index(key)?)
    }

    /// Class, size and capacity of the cells, by which some of what is left out is assumed.
    #[must_use]
    pub fn cell_class(&self) -> CellClass {
        CellClass::of(Cell::FIELDS, Cell::TAGS, self.record(Slot::Cell))
    }

    /// What is taken for an input that is left out, in the file's unit; none where it then stays
    /// empty or is required.
    ///
    /// ```
    /// use pitchline_core::{Draft, Slot};
    ///
    /// let mut draft = Draft::typical();
    /// let full = Slot::Cell.kind().field_index("full_v").unwrap();
    /// assert_eq!(draft.assumed(Slot::Cell, full), Some(4.2));
    /// // Lithium iron phosphate has a lower voltage.
    /// draft.set(Slot::Cell, "chemistry", 2.0);
    /// assert_eq!(draft.assumed(Slot::Cell, full), Some(3.6));
    /// ```
    #[must_use]
    pub fn assumed(&self, slot: Slot, index: usize) -> Option<f64> {
        let field = slot.kind().fields().get(index)?;
        (field.need == Need::Assumed).then(|| field.assumed(self.cell_class()))
    }

    /// Sets an input by its key, in the file's unit; an unknown key changes nothing.
    pub fn set(&mut self, slot: Slot, key: &str, value: f64) {
        if let Some(index) = slot.kind().field_index(key) {
            self.set_value(slot, index, Some(value));
        }
    }
}

impl Default for Draft {
    fn default() -> Self {
        Self::typical()
    }
}

/// A checked build: typed parts in SI, every value within its limits.
#[derive(Clone, Copy, Debug, PartialEq)]
#[allow(missing_docs, reason = "each field is the part of that name")]
pub struct Build {
    pub pack: Pack,
    pub cell: Cell,
    pub motor: Motor,
    pub controller: Controller,
    pub motor_pulley: MotorPulley,
    pub wheel_pulley: WheelPulley,
    pub belt: Belt,
    pub wheel: Wheel,
    pub truck: Truck,
    pub deck: Deck,
    pub charger: Charger,
    pub modes: [Mode; 3],
    pub rider: Rider,
    pub place: Place,
    pub ride: Ride,
    pub bench: Bench,
}

/// Share by which a charger's voltage may miss that of a full pack. Common practice, no source.
const CHARGER_TOLERANCE: f64 = 0.005;

/// Wheels on a board, a count.
pub const WHEELS: f64 = 4.0;

impl Build {
    /// Checks a draft.
    ///
    /// # Errors
    /// One for each value that is missing or out of range, with the slot in
    /// front of the field: `motor.kv_rpm_per_v`; and one for each slot that is not filled.
    pub fn check(draft: &Draft) -> Result<Self, Vec<Error>> {
        let cell = draft.cell_class();
        let mut errors = Vec::new();
        let mut checked = Vec::with_capacity(Slot::ALL.len());
        for slot in Slot::ALL {
            if let Some(unfilled) = draft.unfilled.iter().find(|unfilled| unfilled.slot == *slot) {
                let name = unfilled.name.clone();
                errors.push(Error::new(slot.key(), Reason::Unfilled { name }));
                continue;
            }
            match draft.record(*slot).si(slot.kind().fields(), cell) {
                Ok(values) => checked.push(values),
                Err(found) => {
                    let prefix = [slot.key(), "."].concat();
                    errors.extend(found.into_iter().map(|error| error.under(&prefix)));
                }
            }
        }
        if !errors.is_empty() {
            return Err(errors);
        }
        let mut take =
            |slot: Slot| checked.get_mut(slot as usize).map(core::mem::take).unwrap_or_default();
        Ok(Self {
            pack: Pack::from_si(take(Slot::Pack)),
            cell: Cell::from_si(take(Slot::Cell)),
            motor: Motor::from_si(take(Slot::Motor)),
            controller: Controller::from_si(take(Slot::Controller)),
            motor_pulley: MotorPulley::from_si(take(Slot::MotorPulley)),
            wheel_pulley: WheelPulley::from_si(take(Slot::WheelPulley)),
            belt: Belt::from_si(take(Slot::Belt)),
            wheel: Wheel::from_si(take(Slot::Wheel)),
            truck: Truck::from_si(take(Slot::Truck)),
            deck: Deck::from_si(take(Slot::Deck)),
            charger: Charger::from_si(take(Slot::Charger)),
            modes: [Slot::ModeLow, Slot::ModeMid, Slot::ModeHigh].map(|s| Mode::from_si(take(s))),
            rider: Rider::from_si(take(Slot::Rider)),
            place: Place::from_si(take(Slot::Place)),
            ride: Ride::from_si(take(Slot::Ride)),
            bench: Bench::from_si(take(Slot::Bench)),
        })
    }

    /// How many of a slot's part are on the board: a count from 1 to 4.
    #[must_use]
    pub fn count(&self, slot: Slot) -> f64 {
        match slot {
            Slot::Motor | Slot::MotorPulley | Slot::WheelPulley | Slot::Belt => {
                self.truck.motor_count
            }
            Slot::Wheel => WHEELS,
            _ => 1.0,
        }
    }

    /// Mass of the pack, kg: as given, or its cells and a quarter more for
    /// holders, protection and case (common practice, no source).
    #[must_use]
    pub fn pack_mass_kg(&self) -> f64 {
        self.pack
            .mass_kg
            .unwrap_or(1.25 * self.pack.series * self.pack.parallel * self.cell.mass_kg)
    }

    /// Voltage of the full pack, V. What was entered for a full cell counts up to what its
    /// chemistry bears.
    #[must_use]
    pub fn full_pack_v(&self) -> f64 {
        self.pack.series * self.cell.full_v.min(self.cell.chemistry.highest_full_v())
    }

    /// The lowest and the highest voltage of a charger for this pack, V: within 0.5 % of the full
    /// pack. Cells that are full at the usual voltage of their class take every usual charger for
    /// it: LFP from 3.6 to 3.65 V for each group, and 0.5 % beside.
    #[must_use]
    pub fn charger_fits_v(&self) -> [f64; 2] {
        let class = self.cell.chemistry;
        let full_v = self.full_pack_v();
        let usual = self.cell.full_v == class.full_v();
        let most_v = if usual { self.pack.series * class.charger_v() } else { full_v };
        [full_v * (1.0 - CHARGER_TOLERANCE), most_v * (1.0 + CHARGER_TOLERANCE)]
    }

    /// Whether a charger that ends at this voltage, V, is one for this pack.
    #[must_use]
    pub fn charger_fits(&self, charger_v: f64) -> bool {
        let [least_v, most_v] = self.charger_fits_v();
        (least_v..=most_v).contains(&charger_v)
    }

    /// Temperature of the pack where it charges, °C.
    #[must_use]
    pub fn charge_air_c(&self) -> f64 {
        self.place.charge_air_c.unwrap_or(self.place.air_c)
    }

    /// The warmest that the windings may get with nothing held back, °C.
    #[must_use]
    pub fn winding_held_c(&self) -> f64 {
        let most_c = self.motor.winding_limit_c;
        self.controller.motor_cutback_start_c.map_or(most_c, |start_c| most_c.min(start_c))
    }

    /// Mass of the board without rider, kg.
    #[must_use]
    pub fn board_mass_kg(&self) -> f64 {
        let drive = self.motor.mass_kg
            + self.motor_pulley.mass_kg
            + self.wheel_pulley.mass_kg
            + self.belt.usual_mass_kg();
        self.pack_mass_kg()
            + self.controller.mass_kg
            + self.deck.mass_kg
            + self.truck.mass_kg
            + WHEELS * self.wheel.mass_kg
            + self.truck.motor_count * drive
    }

    /// Mass on the road, kg: board, rider and what the rider carries.
    #[must_use]
    pub fn mass_kg(&self) -> f64 {
        self.mass_explained(&mut Working::off())
    }

    pub(crate) fn mass_explained(&self, w: &mut Working) -> f64 {
        let rider = &self.rider;
        w.apply(TotalMass {
            board: self.board_mass_kg(),
            rider: rider.mass_kg,
            load: rider.gear_mass_kg,
        })
    }

    /// Drag area of the rider, m².
    #[must_use]
    pub fn drag_area_m2(&self) -> f64 {
        self.rider.drag_area_m2.unwrap_or(self.rider.posture.drag_area_m2())
    }

    /// Price of the board in the catalogue's currency, and how many slots have none.
    #[must_use]
    pub fn price(&self) -> (f64, usize) {
        // A pack is sold whole, so its cells are not counted beside it.
        let prices = [
            (self.pack.price, Slot::Pack),
            (self.motor.price, Slot::Motor),
            (self.controller.price, Slot::Controller),
            (self.motor_pulley.price, Slot::MotorPulley),
            (self.wheel_pulley.price, Slot::WheelPulley),
            (self.belt.price, Slot::Belt),
            (self.wheel.price, Slot::Wheel),
            (self.truck.price, Slot::Truck),
            (self.deck.price, Slot::Deck),
            (self.charger.price, Slot::Charger),
        ];
        let total = 0.0
            + prices
                .iter()
                .filter_map(|(price, slot)| price.map(|p| p * self.count(*slot)))
                .sum::<f64>();
        (total, prices.iter().filter(|(price, _)| price.is_none()).count())
    }
}
