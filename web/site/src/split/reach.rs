//! What the first piece needs.

use std::collections::HashMap;
use std::ops::Range;

use super::links::{Links, Uses};
use super::module::Module;

/// What can be reached without going through a marked function.
pub(super) struct Reach {
    functions: Vec<bool>,
    data: Vec<bool>,
}

/// So many bytes may lie between two runs of data before a cut is worth it: the best of 4 to 96,
/// after brotli.
const CUT: usize = 48;

#[derive(Clone, Copy, PartialEq, Eq)]
enum Owner {
    /// Between the pieces that the linker knew: filling.
    Nobody,
    First,
    Later,
}

type Segments = Vec<(u32, Vec<u8>)>;

impl Reach {
    pub(super) fn of(module: &Module<'_>, links: &Links<'_>, marked: &[bool]) -> Self {
        let mut by_name = HashMap::<&str, Vec<u32>>::new();
        for function in module.functions() {
            by_name.entry(module.names[function as usize]).or_default().push(function);
        }
        let mut reach = Reach {
            functions: vec![false; module.kinds.len()],
            data: vec![false; links.data.len()],
        };
        let known = |function: u32| links.of(module.names[function as usize]);
        let mut functions = module.exports.clone();
        functions.extend(0..module.imported);
        functions.extend(module.slots.iter().map(|(_, f)| *f).filter(|f| known(*f).is_none()));
        let mut data = Vec::new();
        let take = |uses: &Uses<'_>, functions: &mut Vec<u32>, data: &mut Vec<usize>| {
            let named = uses.functions.iter().filter_map(|name| by_name.get(name));
            functions.extend(named.flatten());
            data.extend(&uses.data);
        };
        take(&links.unnamed, &mut functions, &mut data);
        loop {
            if let Some(function) = functions.pop() {
                let at = function as usize;
                if marked[at] || std::mem::replace(&mut reach.functions[at], true) {
                    continue;
                }
                functions.extend(&module.calls[at]);
                match known(function) {
                    Some(uses) => take(uses, &mut functions, &mut data),
                    // Made by wasm-bindgen. It refers to no data, as far as is known; but any
                    // number in it that could be an address is taken for one.
                    None => {
                        let numbers = &module.constants[at];
                        let meant = |place: &Range<u32>| numbers.iter().any(|n| place.contains(n));
                        let all = links.data.iter().enumerate();
                        data.extend(all.filter(|(_, d)| meant(&d.place)).map(|(number, _)| number));
                    }
                }
            } else if let Some(datum) = data.pop() {
                if !std::mem::replace(&mut reach.data[datum], true) {
                    take(&links.data[datum].uses, &mut functions, &mut data);
                }
            } else {
                return reach;
            }
        }
    }

    /// Whether a function is in the first piece.
    pub(super) fn function(&self, function: u32) -> bool {
        self.functions.get(function as usize).copied().unwrap_or(true)
    }

    /// The data of the first piece and of the later one.
    pub(super) fn cut_data(&self, module: &Module<'_>, links: &Links<'_>) -> (Segments, Segments) {
        let (mut first, mut later) = (Vec::new(), Vec::new());
        for &(address, bytes) in &module.data {
            let mut owners = vec![Owner::Nobody; bytes.len()];
            // Those of the first piece last, because names may overlap.
            for owner in [Owner::Later, Owner::First] {
                for (datum, reached) in links.data.iter().zip(&self.data) {
                    let (Some(from), Some(to)) = (
                        datum.place.start.checked_sub(address),
                        datum.place.end.checked_sub(address),
                    ) else {
                        continue;
                    };
                    if *reached == (owner == Owner::First)
                        && let Some(owned) = owners.get_mut(from as usize..to as usize)
                    {
                        owned.fill(owner);
                    }
                }
            }
            for (byte, owner) in bytes.iter().zip(&mut owners) {
                if *owner == Owner::Nobody && *byte != 0 {
                    *owner = Owner::First;
                }
            }
            // The later piece writes over what the first one puts into its places, but not the
            // other way round.
            let plain = |owner: Owner, byte: u8| if owner == Owner::Later { 0 } else { byte };
            cut(address, bytes, &owners, Owner::First, |_| true, plain, &mut first);
            let between = |owner| owner == Owner::Nobody;
            cut(address, bytes, &owners, Owner::Later, between, |_, byte| byte, &mut later);
        }
        (first, later)
    }
}

/// The runs of one owner. Short gaps are bridged where they `may` be.
fn cut(
    address: u32,
    bytes: &[u8],
    owners: &[Owner],
    mine: Owner,
    may: impl Fn(Owner) -> bool,
    byte: impl Fn(Owner, u8) -> u8,
    into: &mut Segments,
) {
    // Memory is zero where nothing is put.
    let wanted = |at: usize| owners[at] == mine && bytes[at] != 0;
    let mut last = None::<(usize, usize)>;
    let mut put = |(from, to): (usize, usize)| {
        let run = (from..to).map(|at| byte(owners[at], bytes[at])).collect();
        into.push((address + from as u32, run));
    };
    for at in (0..bytes.len()).filter(|at| wanted(*at)) {
        last = match last {
            Some((from, to))
                if at - to < CUT && owners[to..at].iter().all(|o| *o == mine || may(*o)) =>
            {
                Some((from, at + 1))
            }
            Some(run) => {
                put(run);
                Some((at, at + 1))
            }
            None => Some((at, at + 1)),
        };
    }
    if let Some(run) = last {
        put(run);
    }
}
