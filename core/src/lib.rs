//! The physics of a belt-drive electric longboard.
#![no_std]
