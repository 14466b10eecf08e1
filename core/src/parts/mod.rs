//! What a board is made of, one noun a file.
//!
//! A [`Record`] is a part as written in a file or typed on the page; the typed
//! structs here are the same part once checked, in SI (and degrees Celsius).

#[macro_use]
mod table;
mod battery;
mod cell_class;
mod choice;
mod drive;
mod frame;
mod kind;
mod record;
mod ride;
mod wheel;

pub use battery::{Cell, Charger, Pack};
pub use cell_class::CellClass;
pub(crate) use cell_class::{USUAL_SIZE_M, size_of_format};
pub use choice::{Convention, Outing, Posture, Surface};
pub use drive::{Belt, Controller, Mode, Motor, MotorPulley, WheelPulley};
pub use frame::{Deck, Truck};
pub use kind::{Kind, Slot};
pub use record::Record;
pub use ride::{Bench, Place, Ride, Rider};
pub use wheel::Wheel;
