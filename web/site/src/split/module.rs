//! The module that is cut.

use std::collections::HashMap;

use wasmparser::{
    Data, DataKind, ElementItems, ElementKind, ExternalKind, FuncType, FunctionBody, GlobalType,
    KnownCustom, MemoryType, Name, Operator, Parser, Payload, TableType, TypeRef,
};

use super::links::Fault;

/// What matters of it. Functions go by their number, imports first.
#[derive(Default)]
pub(super) struct Module<'a> {
    pub(super) bytes: &'a [u8],
    pub(super) types: Vec<FuncType>,
    /// The type of each function.
    pub(super) kinds: Vec<u32>,
    /// The name of each function, as the linker wrote it.
    pub(super) names: Vec<&'a str>,
    /// How many functions are imported.
    pub(super) imported: u32,
    /// The bodies of those that are not.
    pub(super) bodies: Vec<FunctionBody<'a>>,
    /// What each function calls, as often as it does.
    pub(super) calls: Vec<Vec<u32>>,
    /// Constants in each function, which may be addresses.
    pub(super) constants: Vec<Vec<u32>>,
    /// Exported functions, and the one that starts.
    pub(super) exports: Vec<u32>,
    pub(super) tables: Vec<TableType>,
    pub(super) memories: Vec<MemoryType>,
    pub(super) globals: Vec<GlobalType>,
    /// The table of functions, how long it is, and what it holds from the start.
    pub(super) table: u32,
    pub(super) table_size: u64,
    pub(super) slots: Vec<(u32, u32)>,
    /// Data by its address.
    pub(super) data: Vec<(u32, &'a [u8])>,
}

impl<'a> Module<'a> {
    pub(super) fn read(bytes: &'a [u8]) -> Result<Self, Fault> {
        let mut module = Module { bytes, ..Module::default() };
        let mut names = HashMap::new();
        for payload in Parser::new(0).parse_all(bytes) {
            match payload? {
                Payload::TypeSection(types) => {
                    for of in types.into_iter_err_on_gc_types() {
                        module.types.push(of?);
                    }
                }
                Payload::ImportSection(imports) => {
                    for import in imports.into_imports() {
                        let TypeRef::Func(kind) = import?.ty else {
                            return Err("more is imported than functions".into());
                        };
                        module.kinds.push(kind);
                        module.imported += 1;
                    }
                }
                Payload::FunctionSection(kinds) => {
                    for kind in kinds {
                        module.kinds.push(kind?);
                    }
                }
                Payload::TableSection(tables) => {
                    for table in tables {
                        module.tables.push(table?.ty);
                    }
                }
                Payload::MemorySection(memories) => {
                    for memory in memories {
                        module.memories.push(memory?);
                    }
                }
                Payload::GlobalSection(globals) => {
                    for global in globals {
                        module.globals.push(global?.ty);
                    }
                }
                Payload::ExportSection(exports) => {
                    for export in exports {
                        let export = export?;
                        if export.kind == ExternalKind::Func {
                            module.exports.push(export.index);
                        }
                    }
                }
                Payload::StartSection { func, .. } => module.exports.push(func),
                Payload::ElementSection(elements) => {
                    for element in elements {
                        module.element(element?)?;
                    }
                }
                Payload::DataSection(segments) => {
                    for segment in segments {
                        let segment = segment?;
                        module.data.push((address(&segment)?, segment.data));
                    }
                }
                Payload::CodeSectionEntry(body) => module.bodies.push(body),
                Payload::CustomSection(section) => {
                    if let KnownCustom::Name(section) = section.as_known() {
                        names = function_names(section)?;
                    }
                }
                _ => {}
            }
        }
        module.names =
            module.functions().map(|f| names.get(&f).copied().unwrap_or_default()).collect();
        module.look_into_bodies()?;
        let table = module.tables.get(module.table as usize).ok_or("it has no table")?;
        module.table_size = table.initial;
        Ok(module)
    }

    /// All of them.
    pub(super) fn functions(&self) -> std::ops::Range<u32> {
        0..self.kinds.len() as u32
    }

    /// The body of one that is not imported.
    pub(super) fn body(&self, function: u32) -> Option<&FunctionBody<'a>> {
        self.bodies.get(function.checked_sub(self.imported)? as usize)
    }

    /// The type of one.
    pub(super) fn of(&self, function: u32) -> Option<&FuncType> {
        self.types.get(*self.kinds.get(function as usize)? as usize)
    }

    fn element(&mut self, element: wasmparser::Element<'a>) -> Result<(), Fault> {
        let ElementKind::Active { table_index, offset_expr } = element.kind else {
            return Err("it has elements that are not active".into());
        };
        let ElementItems::Functions(functions) = element.items else {
            return Err("it has elements that are no plain functions".into());
        };
        self.table = table_index.unwrap_or(0);
        for (slot, function) in (constant(&offset_expr)?..).zip(functions) {
            self.slots.push((slot, function?));
        }
        Ok(())
    }

    fn look_into_bodies(&mut self) -> Result<(), Fault> {
        self.calls = vec![Vec::new(); self.imported as usize];
        self.constants = self.calls.clone();
        for body in &self.bodies {
            let (mut calls, mut constants) = (Vec::new(), Vec::new());
            for operator in body.get_operators_reader()? {
                match operator? {
                    Operator::Call { function_index }
                    | Operator::ReturnCall { function_index }
                    | Operator::RefFunc { function_index } => calls.push(function_index),
                    Operator::I32Const { value } => constants.push(value as u32),
                    _ => {}
                }
            }
            self.calls.push(calls);
            self.constants.push(constants);
        }
        Ok(())
    }
}

/// Names by the number of the function.
pub(super) fn function_names(
    section: wasmparser::NameSectionReader<'_>,
) -> Result<HashMap<u32, &str>, Fault> {
    let mut names = HashMap::new();
    for part in section {
        if let Name::Function(functions) = part? {
            for naming in functions {
                let naming = naming?;
                names.insert(naming.index, naming.name);
            }
        }
    }
    Ok(names)
}

/// Where a segment goes.
pub(super) fn address(segment: &Data<'_>) -> Result<u32, Fault> {
    match &segment.kind {
        DataKind::Active { memory_index: 0, offset_expr } => constant(offset_expr),
        _ => Err("it has data that are not put into the one memory at the start".into()),
    }
}

fn constant(expression: &wasmparser::ConstExpr<'_>) -> Result<u32, Fault> {
    match expression.get_operators_reader().read()? {
        Operator::I32Const { value } => Ok(value as u32),
        _ => Err("a place is not a plain number".into()),
    }
}
