//! A part as written: values in the file's units, some of them not given.

use super::CellClass;
use crate::bounds::{Field, Need};
use crate::error::{Error, Reason};
use alloc::string::String;
use alloc::vec::Vec;

/// A part as written in a catalogue or typed on the page.
///
/// `values` and `tags` stand in the order of the kind's tables; what was not
/// given is `None` or empty.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Record {
    /// Stable id, unique within its kind; empty for settings.
    pub id: String,
    /// Name for people.
    pub name: String,
    /// Where its figures come from.
    pub source: String,
    /// Anything a reader should know.
    pub notes: String,
    /// Values in the file's units.
    pub values: Vec<Option<f64>>,
    /// Compatibility tags.
    pub tags: Vec<String>,
}

impl Record {
    /// An empty record.
    pub const EMPTY: Self = Self {
        id: String::new(),
        name: String::new(),
        source: String::new(),
        notes: String::new(),
        values: Vec::new(),
        tags: Vec::new(),
    };

    /// A record in which every needed value is the typical one, without tags. What is assumed by
    /// the cells of the build is left to them.
    #[must_use]
    pub fn typical(fields: &[Field], tags: &[&str]) -> Self {
        let given = |f: &Field| f.need != Need::Optional && f.by_cell.is_none();
        let values = fields.iter().map(|f| given(f).then_some(f.typical)).collect();
        let tags = tags.iter().map(|_| String::new()).collect();
        Self { values, tags, ..Self::EMPTY }
    }

    /// The value as given, in the file's unit.
    #[must_use]
    pub fn value(&self, index: usize) -> Option<f64> {
        self.values.get(index).copied().flatten()
    }

    /// Sets or clears a value, in the file's unit.
    pub fn set(&mut self, index: usize, value: Option<f64>) {
        if self.values.len() <= index {
            self.values.resize(index.saturating_add(1), None);
        }
        if let Some(place) = self.values.get_mut(index) {
            *place = value;
        }
    }

    /// A compatibility tag; empty where none was given.
    #[must_use]
    pub fn tag(&self, index: usize) -> &str {
        self.tags.get(index).map_or("", String::as_str)
    }

    /// Whether the other record describes the same part: same values and tags.
    #[must_use]
    pub fn same_part(&self, other: &Self) -> bool {
        let long = |a: usize, b: usize| 0..a.max(b);
        long(self.values.len(), other.values.len()).all(|i| self.value(i) == other.value(i))
            && long(self.tags.len(), other.tags.len()).all(|i| self.tag(i) == other.tag(i))
    }

    /// Every value checked against its limits, with what is assumed in a build with such cells
    /// filled in.
    ///
    /// # Errors
    /// One for each value that is missing or out of range.
    pub fn checked(
        &self,
        fields: &[Field],
        cell: CellClass,
    ) -> Result<Vec<Option<f64>>, Vec<Error>> {
        let mut errors = Vec::new();
        let mut values = Vec::with_capacity(fields.len());
        for (index, field) in fields.iter().enumerate() {
            match (self.value(index), field.need) {
                (Some(value), _) => match field.check(value) {
                    Ok(value) => values.push(Some(value)),
                    Err(error) => errors.push(error),
                },
                (None, Need::Required) => {
                    errors.push(Error::new(field.key, Reason::missing(field.wanted())))
                }
                (None, Need::Assumed) => values.push(Some(field.assumed(cell))),
                (None, Need::Optional) => values.push(None),
            }
        }
        if errors.is_empty() { Ok(values) } else { Err(errors) }
    }

    /// The same in SI.
    ///
    /// # Errors
    /// As [`Record::checked`].
    pub(crate) fn si(
        &self,
        fields: &[Field],
        cell: CellClass,
    ) -> Result<Vec<Option<f64>>, Vec<Error>> {
        let mut values = self.checked(fields, cell)?;
        for (value, field) in values.iter_mut().zip(fields) {
            *value = value.map(|value| value * field.unit.si());
        }
        Ok(values)
    }
}
