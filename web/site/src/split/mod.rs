//! Cuts the page's wasm in two: what must arrive before the page is usable, and what may come
//! after it.
//!
//! ```text
//! linker --names and addresses--> links --+
//! wasm-bindgen --> module ----------------+--> reach --> first, later
//! ```
//!
//! The page marks where the later piece begins: the functions below [`LATER`]. All that can be
//! reached from the page's exports without going through one of them is first, functions and data
//! alike; the rest is later. So a function that both need is there once, in the first piece.
//!
//! The pieces share memory, table and globals. In the first piece a stub stands for each marked
//! function that it calls: it calls through a place in the table that is empty until the later
//! piece fills it. The later piece imports all else from the exports of the first.

mod first;
mod later;
mod links;
mod module;
mod reach;

use std::collections::{BTreeMap, HashMap};
use std::io;

use links::Links;
use module::Module;
use reach::Reach;
use wasm_encoder::ExportKind;
use wasmparser::Validator;

/// Functions whose names begin so are where the later piece begins. They must not be inlined.
const LATER: &str = "pitchline_web::later::";

/// From which module the later piece imports: the whole exports of the first.
const FROM: &str = "p";

/// The two pieces.
#[derive(Debug)]
pub struct Pieces {
    /// The module without what may come later.
    pub first: Vec<u8>,
    /// What may come later.
    pub later: Vec<u8>,
}

/// Cuts `bound`, as wasm-bindgen leaves it, by what the linker knew of `linked`: it must have been
/// told `--emit-relocs`, and wasm-bindgen `--no-demangle`. Neither piece keeps names.
///
/// # Errors
/// When one of them is not of that kind, nothing is marked, or a piece is not valid.
pub fn split(linked: &[u8], bound: &[u8]) -> io::Result<Pieces> {
    let module = Module::read(bound).map_err(about("the module"))?;
    let links = Links::read(linked).map_err(about("the linker's file"))?;
    let plan = Plan::new(&module, &links)?;
    let pieces = Pieces {
        first: first::write(&plan).map_err(about("the first piece"))?,
        later: later::write(&plan).map_err(about("the later piece"))?,
    };
    for (piece, name) in [(&pieces.first, "the first piece"), (&pieces.later, "the later piece")] {
        Validator::new().validate_all(piece).map_err(about(name))?;
    }
    Ok(pieces)
}

fn about<E: std::fmt::Display>(what: &str) -> impl Fn(E) -> io::Error {
    move |fault| io::Error::other(format!("{what}: {fault}"))
}

/// What goes where. Functions go by their number in the module, imports first.
struct Plan<'a> {
    module: &'a Module<'a>,
    /// Whether a function's body is in the later piece.
    late: Vec<bool>,
    /// Where in the table a late function is found, if anything looks for it there.
    slots: BTreeMap<u32, u32>,
    /// Functions that are stubs in the first piece.
    stubs: Vec<u32>,
    /// What the later piece calls of the first, most called first, so that these have the short
    /// numbers.
    shared: Vec<u32>,
    /// How long the table must be.
    table: u64,
    /// Data of each piece: address and bytes.
    first_data: Vec<(u32, Vec<u8>)>,
    later_data: Vec<(u32, Vec<u8>)>,
}

impl<'a> Plan<'a> {
    fn new(module: &'a Module<'a>, links: &Links<'_>) -> io::Result<Self> {
        let marked: Vec<bool> = module
            .names
            .iter()
            .map(|name| format!("{:#}", rustc_demangle::demangle(name)).starts_with(LATER))
            .collect();
        let reach = Reach::of(module, links, &marked);
        let mut stubs = Vec::new();
        let mut calls = HashMap::<u32, u32>::new();
        for function in module.functions() {
            let late = !reach.function(function);
            for &called in &module.calls[function as usize] {
                if late && reach.function(called) {
                    *calls.entry(called).or_default() += 1;
                } else if !late && !reach.function(called) {
                    stubs.push(called);
                }
            }
        }
        stubs.extend(module.exports.iter().filter(|&&function| !reach.function(function)));
        stubs.sort_unstable();
        stubs.dedup();
        if stubs.is_empty() {
            return Err(io::Error::other(format!("nothing is called below {LATER}")));
        }
        let mut shared: Vec<u32> = calls.keys().copied().collect();
        shared.sort_by_key(|function| (u32::MAX - calls[function], *function));

        let mut table = module.table_size;
        let mut slots = BTreeMap::new();
        for &(slot, function) in &module.slots {
            if !reach.function(function) {
                slots.insert(slot, function);
            }
        }
        for &stub in &stubs {
            if !slots.values().any(|&function| function == stub) {
                slots.insert(table as u32, stub);
                table += 1;
            }
        }
        let (first_data, later_data) = reach.cut_data(module, links);
        let late = module.functions().map(|function| !reach.function(function)).collect();
        Ok(Plan { module, late, slots, stubs, shared, table, first_data, later_data })
    }

    /// The place in the table of a stub's function.
    fn slot_of(&self, stub: u32) -> Option<u32> {
        self.slots.iter().find(|(_, function)| **function == stub).map(|(slot, _)| *slot)
    }

    fn is_late(&self, function: u32) -> bool {
        self.late.get(function as usize).copied().unwrap_or(false)
    }

    fn is_stub(&self, function: u32) -> bool {
        self.stubs.binary_search(&function).is_ok()
    }

    /// What the first piece exports for the later one: name, kind and number. wasm-bindgen's own
    /// names do not begin with a digit.
    fn shares(&self) -> impl Iterator<Item = (String, ExportKind, u32)> {
        let module = self.module;
        let all = |kind, count: usize| (0..count as u32).map(move |index| (kind, index));
        let functions = self.shared.iter().map(|function| (ExportKind::Func, *function));
        functions
            .chain(all(ExportKind::Table, module.tables.len()))
            .chain(all(ExportKind::Memory, module.memories.len()))
            .chain(all(ExportKind::Global, module.globals.len()))
            .enumerate()
            .map(|(number, (kind, index))| (number.to_string(), kind, index))
    }
}

/// Runs of entries that stand side by side.
fn runs(entries: impl IntoIterator<Item = (u32, u32)>) -> Vec<(u32, Vec<u32>)> {
    let mut runs: Vec<(u32, Vec<u32>)> = Vec::new();
    for (at, value) in entries {
        match runs.last_mut() {
            Some((start, run)) if *start + run.len() as u32 == at => run.push(value),
            _ => runs.push((at, vec![value])),
        }
    }
    runs
}
