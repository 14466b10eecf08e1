//! What a board is made of, one noun a file.
//!
//! A [`Record`] is a part as written in a file or typed on the page; the typed
//! structs here are the same part once checked, in SI (and degrees Celsius).

#[macro_use]
mod table;
mod battery;
mod choice;
mod drive;
mod frame;
mod kind;
mod record;
mod ride;
mod wheel;

pub use battery::{Cell, Charger, Pack};
pub use choice::{Convention, Outing, Posture, Surface};
pub use drive::{Belt, Controller, Mode, Motor, MotorPulley, WheelPulley};
pub use frame::{Deck, Truck};
pub use kind::{Kind, Slot};
pub use record::Record;
pub use ride::{Bench, Place, Ride, Rider};
pub use wheel::Wheel;
