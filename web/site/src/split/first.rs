//! The first piece: the module with stubs for what comes later.

use std::io;

use wasm_encoder::reencode::{Error, Reencode, utils};
use wasm_encoder::{
    CodeSection, ConstExpr, DataSection, ElementSection, Elements, ExportKind, ExportSection,
    Function, FunctionSection, Module, TableSection,
};
use wasmparser::{
    CodeSectionReader, CustomSectionReader, DataSectionReader, ElementSectionReader,
    ExportSectionReader, FunctionSectionReader, Parser, TableSectionReader,
};

use super::links::Fault;
use super::{Plan, runs};

/// The first piece.
pub(super) fn write(plan: &Plan<'_>) -> Result<Vec<u8>, Fault> {
    let mut numbers = Vec::new();
    let mut next = 0;
    for function in plan.module.functions() {
        let stays = !plan.is_late(function) || plan.is_stub(function);
        numbers.push(stays.then_some(next));
        next += u32::from(stays);
    }
    let mut first = First { plan, numbers };
    let mut module = Module::new();
    first.parse_core_module(&mut module, Parser::new(0), plan.module.bytes)?;
    Ok(module.finish())
}

struct First<'a> {
    plan: &'a Plan<'a>,
    /// The new number of each function that stays.
    numbers: Vec<Option<u32>>,
}

type Outcome = Result<(), Error<io::Error>>;

fn fault(text: impl Into<String>) -> Error<io::Error> {
    Error::UserError(io::Error::other(text.into()))
}

impl Reencode for First<'_> {
    type Error = io::Error;

    fn function_index(&mut self, function: u32) -> Result<u32, Error<io::Error>> {
        let number = self.numbers.get(function as usize).copied().flatten();
        number.ok_or_else(|| fault(format!("function {function} is needed")))
    }

    fn parse_function_section(
        &mut self,
        functions: &mut FunctionSection,
        section: FunctionSectionReader<'_>,
    ) -> Outcome {
        for (function, kind) in (self.plan.module.imported..).zip(section) {
            if self.numbers[function as usize].is_some() {
                functions.function(kind?);
            }
        }
        Ok(())
    }

    fn parse_table_section(
        &mut self,
        tables: &mut TableSection,
        section: TableSectionReader<'_>,
    ) -> Outcome {
        for (number, table) in (0..).zip(section) {
            let mut table = table?;
            if number == self.plan.module.table {
                table.ty.initial = self.plan.table;
                table.ty.maximum = table.ty.maximum.map(|most| most.max(self.plan.table));
            }
            self.parse_table(tables, table)?;
        }
        Ok(())
    }

    fn parse_export_section(
        &mut self,
        exports: &mut ExportSection,
        section: ExportSectionReader<'_>,
    ) -> Outcome {
        utils::parse_export_section(self, exports, section)?;
        for (name, kind, index) in self.plan.shares() {
            let index = if kind == ExportKind::Func { self.function_index(index)? } else { index };
            exports.export(&name, kind, index);
        }
        Ok(())
    }

    fn parse_element_section(
        &mut self,
        elements: &mut ElementSection,
        _: ElementSectionReader<'_>,
    ) -> Outcome {
        let module = self.plan.module;
        let kept = module.slots.iter().filter(|(slot, _)| !self.plan.slots.contains_key(slot));
        for (slot, functions) in runs(kept.copied()) {
            let mut numbers = Vec::new();
            for function in functions {
                numbers.push(self.function_index(function)?);
            }
            let table = Some(module.table).filter(|table| *table != 0);
            let at = ConstExpr::i32_const(slot as i32);
            elements.active(table, &at, Elements::Functions(numbers.into()));
        }
        Ok(())
    }

    fn data_count(&mut self, _: u32) -> Result<u32, Error<io::Error>> {
        u32::try_from(self.plan.first_data.len()).map_err(|_| fault("too much data"))
    }

    fn parse_data_section(&mut self, data: &mut DataSection, _: DataSectionReader<'_>) -> Outcome {
        for (address, bytes) in &self.plan.first_data {
            data.active(0, &ConstExpr::i32_const(*address as i32), bytes.iter().copied());
        }
        Ok(())
    }

    fn parse_code_section(&mut self, code: &mut CodeSection, _: CodeSectionReader<'_>) -> Outcome {
        let module = self.plan.module;
        for function in module.functions() {
            if self.plan.is_stub(function) {
                code.function(&self.stub(function)?);
            } else if let Some(body) = module.body(function)
                && !self.plan.is_late(function)
            {
                self.parse_function_body(code, body.clone())?;
            }
        }
        Ok(())
    }

    /// Names, and what the linker left for this tool, are of no use to a reader.
    fn parse_custom_section(
        &mut self,
        into: &mut Module,
        from: CustomSectionReader<'_>,
    ) -> Outcome {
        match from.name() {
            "name" | "linking" | "reloc.CODE" | "reloc.DATA" => Ok(()),
            _ => utils::parse_custom_section(self, into, from),
        }
    }
}

impl First<'_> {
    /// Hands everything on through the table.
    fn stub(&self, function: u32) -> Result<Function, Error<io::Error>> {
        let module = self.plan.module;
        let of = module.of(function).ok_or_else(|| fault("a function has no type"))?;
        let slot = self.plan.slot_of(function).ok_or_else(|| fault("a stub has no place"))?;
        let mut stub = Function::new([]);
        let mut code = stub.instructions();
        for parameter in 0..of.params().len() {
            code.local_get(parameter as u32);
        }
        code.i32_const(slot as i32);
        code.call_indirect(module.table, module.kinds[function as usize]);
        code.end();
        Ok(stub)
    }
}
