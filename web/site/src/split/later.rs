//! The later piece: what it has of its own, and how it lays hold of the first.

use std::collections::HashMap;
use std::io;

use wasm_encoder::reencode::{Error, Reencode};
use wasm_encoder::{
    CodeSection, ConstExpr, DataCountSection, DataSection, ElementSection, Elements, EntityType,
    ExportKind, FunctionSection, ImportSection, Module, TypeSection,
};

use super::links::Fault;
use super::{FROM, Plan, runs};

/// The later piece.
pub(super) fn write(plan: &Plan<'_>) -> Result<Vec<u8>, Fault> {
    let own: Vec<u32> = plan.module.functions().filter(|f| plan.is_late(*f)).collect();
    let called = plan.shared.iter().chain(&own);
    let mut later = Later {
        numbers: called.enumerate().map(|(number, function)| (*function, number as u32)).collect(),
        types: Vec::new(),
    };

    let mut code = CodeSection::new();
    let mut functions = FunctionSection::new();
    let mut imports = ImportSection::new();
    for function in &own {
        let body = plan.module.body(*function).ok_or("an import cannot be later")?;
        functions.function(later.type_index(plan.module.kinds[*function as usize])?);
        later.parse_function_body(&mut code, body.clone())?;
    }
    for (name, kind, index) in plan.shares() {
        let at = index as usize;
        let module = plan.module;
        let of = match kind {
            ExportKind::Func => EntityType::Function(later.type_index(module.kinds[at])?),
            ExportKind::Table => {
                let mut of = module.tables[at];
                if index == module.table {
                    of.initial = plan.table;
                    of.maximum = of.maximum.map(|most| most.max(plan.table));
                }
                later.table_type(of)?.into()
            }
            ExportKind::Memory => later.memory_type(module.memories[at])?.into(),
            ExportKind::Global => later.global_type(module.globals[at])?.into(),
            _ => return Err("nothing else is shared".into()),
        };
        imports.import(FROM, &name, of);
    }

    let mut elements = ElementSection::new();
    for (slot, functions) in runs(plan.slots.iter().map(|(slot, f)| (*slot, *f))) {
        let numbers: Vec<u32> = functions.iter().map(|function| later.numbers[function]).collect();
        let table = Some(plan.module.table).filter(|table| *table != 0);
        elements.active(
            table,
            &ConstExpr::i32_const(slot as i32),
            Elements::Functions(numbers.into()),
        );
    }
    let mut data = DataSection::new();
    for (address, bytes) in &plan.later_data {
        data.active(0, &ConstExpr::i32_const(*address as i32), bytes.iter().copied());
    }

    let mut types = TypeSection::new();
    for old in later.types.clone() {
        let of = plan.module.types.get(old as usize).ok_or("a type is missing")?;
        let of = later.func_type(of.clone())?;
        types.ty().func_type(&of);
    }
    let mut module = Module::new();
    module.section(&types).section(&imports).section(&functions).section(&elements);
    module.section(&DataCountSection { count: data.len() }).section(&code).section(&data);
    Ok(module.finish())
}

struct Later {
    /// The new number of each function that is called.
    numbers: HashMap<u32, u32>,
    /// The old numbers of the types, in the order in which they were needed.
    types: Vec<u32>,
}

impl Reencode for Later {
    type Error = io::Error;

    fn function_index(&mut self, function: u32) -> Result<u32, Error<io::Error>> {
        let number = self.numbers.get(&function).copied();
        number.ok_or_else(|| {
            Error::UserError(io::Error::other(format!("function {function} is needed")))
        })
    }

    fn type_index(&mut self, old: u32) -> Result<u32, Error<io::Error>> {
        let known = self.types.iter().position(|of| *of == old);
        let new = known.unwrap_or(self.types.len());
        if known.is_none() {
            self.types.push(old);
        }
        u32::try_from(new).map_err(|fault| Error::UserError(io::Error::other(fault)))
    }
}
