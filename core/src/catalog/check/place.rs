//! Where in the catalogue a fault is, in the words of the file.

use crate::catalog::Catalog;
use crate::error::{Error, Reason};
use alloc::string::String;
use alloc::vec::Vec;

/// Where a fault is, and what became of the entry.
///
/// ```
/// use pitchline_core::catalog::Catalog;
///
/// let text = r#"{ "schema_version": 1, "maker": "Ferry Lane Board Works",
///   "motor_pulleys": [{ "id": "mp7", "name": "7 teeth", "teeth": 7 }] }"#;
/// let (catalog, faults) = Catalog::read(text).unwrap();
/// let place = catalog.place(&faults[0]);
/// assert_eq!((&*place.list, &*place.part, &*place.key), ("motor_pulleys", "7 teeth", "teeth"));
/// assert!(place.left_out);
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Place {
    /// Key of the list: `motors`, `kits`; empty for what stands beside the lists.
    pub list: String,
    /// Name of the part or the kit, or else its id or its number in the list (`#3`, counted from
    /// 1); empty for the list itself and for what stands beside the lists.
    pub part: String,
    /// The key within that, with a slash where it lies deeper: `slots/wheel/options/0`; empty
    /// for the whole entry.
    pub key: String,
    /// Whether the part, the kit or the list was left out; otherwise what is faulty is ignored.
    pub left_out: bool,
}

impl Catalog {
    /// Where one of its faults is.
    #[must_use]
    pub fn place(&self, fault: &Error) -> Place {
        let mut steps = fault.field.split('/').skip(1);
        let first = steps.next().unwrap_or_default();
        let second = steps.next();
        let number = second.and_then(|step| step.parse::<usize>().ok());
        let list_out = self.left_out.iter().any(|out| out.why.field == fault.field);
        let Some(number) = number else {
            let key = plain(fault.field.split('/').skip(1));
            let list = known_list(first);
            let key = if list && second.is_none() { String::new() } else { key };
            let list = if list { first.into() } else { String::new() };
            return Place { list, part: String::new(), key, left_out: list_out };
        };
        let part = if fault.part.is_empty() {
            alloc::format!("#{}", number.saturating_add(1))
        } else {
            fault.part.clone()
        };
        let left_out = if first == "kits" {
            self.is_kit_left_out(fault)
        } else {
            let head = alloc::format!("/{first}/{number}");
            self.left_out.iter().any(|out| under(&out.why.field, &head))
        };
        Place { list: first.into(), part, key: plain(steps), left_out }
    }

    /// How many parts, kits and lists were left out; `faults` are those of this catalogue.
    #[must_use]
    pub fn count_left_out(&self, faults: &[Error]) -> usize {
        let of_kits = faults.iter().filter(|fault| under(&fault.field, "/kits"));
        let mut kits: Vec<&str> = Vec::new();
        for fault in of_kits.filter(|fault| self.is_kit_left_out(fault)) {
            let number = fault.field.split('/').nth(2);
            kits.extend(number.filter(|number| !kits.contains(number)));
        }
        self.left_out.len().saturating_add(kits.len())
    }

    fn is_kit_left_out(&self, fault: &Error) -> bool {
        let twice = matches!(fault.reason, Reason::Duplicate { .. });
        // A long name is cut where a fault tells it.
        let named = |name: &str| !fault.part.is_empty() && name.starts_with(&*fault.part);
        twice || !self.kits.iter().any(|kit| named(&kit.name))
    }
}

fn known_list(key: &str) -> bool {
    key == "kits" || crate::parts::Kind::ALL.iter().any(|kind| kind.list_key() == key)
}

/// Whether a pointer is that of `head`, or of something within it.
fn under(pointer: &str, head: &str) -> bool {
    pointer.strip_prefix(head).is_some_and(|rest| rest.is_empty() || rest.starts_with('/'))
}

/// Steps of a JSON pointer as their keys are written in the file (RFC 6901).
fn plain<'s>(steps: impl Iterator<Item = &'s str>) -> String {
    let keys: Vec<String> = steps.map(|key| key.replace("~1", "/").replace("~0", "~")).collect();
    keys.join("/")
}
