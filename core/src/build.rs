//! From parts as written to a build that cannot be out of range.

use crate::error::Error;
use crate::parts::{
    Belt, Cell, Charger, Controller, Deck, Mode, Motor, MotorPulley, Pack, Place, Record, Ride,
    Rider, Slot, Truck, Wheel, WheelPulley,
};
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
}

impl Draft {
    /// A plausible two-motor street board, every input at its typical value.
    #[must_use]
    pub fn typical() -> Self {
        let records =
            Slot::ALL.iter().map(|s| Record::typical(s.kind().fields(), s.kind().tags())).collect();
        Self { kit: String::new(), name: String::new(), records }
    }

    /// The record in a slot.
    #[must_use]
    pub fn record(&self, slot: Slot) -> &Record {
        static EMPTY: Record = Record::EMPTY;
        self.records.get(slot as usize).unwrap_or(&EMPTY)
    }

    /// Puts a record into a slot.
    pub fn set_record(&mut self, slot: Slot, record: Record) {
        // Every draft is made with a record for every slot.
        if let Some(place) = self.records.get_mut(slot as usize) {
            *place = record;
        }
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
}

/// Wheels on a board.
pub const WHEELS: f64 = 4.0;

impl Build {
    /// Checks a draft.
    ///
    /// # Errors
    /// One for each value that is missing or out of range, with the slot in
    /// front of the field: `motor.kv_rpm_per_v`.
    pub fn check(draft: &Draft) -> Result<Self, Vec<Error>> {
        let mut errors = Vec::new();
        macro_rules! read {
            ($part:ident, $slot:ident) => {
                match $part::from_record(draft.record(Slot::$slot)) {
                    Ok(part) => Some(part),
                    Err(found) => {
                        let mut prefix = String::from(Slot::$slot.key());
                        prefix.push('.');
                        errors.extend(found.into_iter().map(|e| e.under(&prefix)));
                        None
                    }
                }
            };
        }
        let pack = read!(Pack, Pack);
        let cell = read!(Cell, Cell);
        let motor = read!(Motor, Motor);
        let controller = read!(Controller, Controller);
        let motor_pulley = read!(MotorPulley, MotorPulley);
        let wheel_pulley = read!(WheelPulley, WheelPulley);
        let belt = read!(Belt, Belt);
        let wheel = read!(Wheel, Wheel);
        let truck = read!(Truck, Truck);
        let deck = read!(Deck, Deck);
        let charger = read!(Charger, Charger);
        let low = read!(Mode, ModeLow);
        let mid = read!(Mode, ModeMid);
        let high = read!(Mode, ModeHigh);
        let rider = read!(Rider, Rider);
        let place = read!(Place, Place);
        let ride = read!(Ride, Ride);
        let build = || {
            Some(Self {
                pack: pack?,
                cell: cell?,
                motor: motor?,
                controller: controller?,
                motor_pulley: motor_pulley?,
                wheel_pulley: wheel_pulley?,
                belt: belt?,
                wheel: wheel?,
                truck: truck?,
                deck: deck?,
                charger: charger?,
                modes: [low?, mid?, high?],
                rider: rider?,
                place: place?,
                ride: ride?,
            })
        };
        build().ok_or(errors)
    }

    /// How many of a slot's part are on the board.
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

    /// Mass of the board without rider, kg.
    #[must_use]
    pub fn board_mass_kg(&self) -> f64 {
        let drive = self.motor.mass_kg
            + self.motor_pulley.mass_kg
            + self.wheel_pulley.mass_kg
            + self.belt.mass_kg;
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
        self.board_mass_kg() + self.rider.mass_kg + self.rider.gear_mass_kg
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
