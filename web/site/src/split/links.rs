//! What the linker knew: which function and which piece of data refers to which.
//!
//! Source: WebAssembly tool conventions, `Linking.md`: the sections `linking` and `reloc.*`.

use std::collections::HashMap;
use std::error::Error;
use std::ops::Range;

use wasmparser::{
    KnownCustom, Linking, Parser, Payload, RelocSectionReader, RelocationType, SymbolInfo,
};

use super::module::{address, function_names};

pub(super) type Fault = Box<dyn Error>;

/// What something refers to by address. Calls are not among it: they are plain in the code.
#[derive(Default)]
pub(super) struct Uses<'a> {
    /// Functions whose place in the table it knows, by name.
    pub(super) functions: Vec<&'a str>,
    /// Data, by number.
    pub(super) data: Vec<usize>,
}

/// A piece of data that the linker had a name for.
pub(super) struct Datum<'a> {
    /// Its addresses.
    pub(super) place: Range<u32>,
    pub(super) uses: Uses<'a>,
}

/// All of it.
#[derive(Default)]
pub(super) struct Links<'a> {
    /// Of each function that it knew, by name. Where several bear one name, of all of them.
    functions: HashMap<&'a str, Uses<'a>>,
    pub(super) data: Vec<Datum<'a>>,
    /// Exported functions by the name that wasm-bindgen gives them.
    exported: HashMap<&'a str, &'a str>,
    /// Of data that have no name.
    pub(super) unnamed: Uses<'a>,
}

/// What a symbol stands for.
#[derive(Clone, Copy)]
enum Symbol<'a> {
    Function(&'a str),
    Data(usize),
    Other,
}

/// The file in parts, before they are put together.
#[derive(Default)]
struct Parts<'a> {
    names: HashMap<u32, &'a str>,
    exports: Vec<(&'a str, u32)>,
    imported: u32,
    /// Number of the section, where its content begins, and what it holds.
    code: (u32, u64, Vec<Range<u64>>),
    /// Of each segment, where its bytes stand in the file and where they go.
    data: (u32, u64, Vec<(Range<u64>, u32)>),
    symbols: Vec<SymbolInfo<'a>>,
    relocations: Vec<RelocSectionReader<'a>>,
}

impl<'a> Links<'a> {
    pub(super) fn read(linked: &'a [u8]) -> Result<Self, Fault> {
        let parts = Parts::read(linked)?;
        let mut links = Links::default();
        for name in parts.names.values() {
            links.functions.insert(name, Uses::default());
        }
        for (name, number) in &parts.exports {
            if let (Some((stem, _)), Some(own)) = (name.rsplit_once('_'), parts.names.get(number)) {
                links.exported.insert(stem, own);
            }
        }
        let symbols = links.take_symbols(&parts)?;
        let code = &parts.code;
        let by_place = links.by_place();
        for section in &parts.relocations {
            for entry in section.entries() {
                let entry = entry?;
                let symbol = symbols.get(entry.index as usize).copied();
                let offset = u64::from(entry.offset);
                let uses = if section.section_index() == code.0 {
                    let at = code.1 + offset;
                    let number = code.2.partition_point(|body| body.end <= at);
                    let inside = code.2.get(number).is_some_and(|body| body.contains(&at));
                    let number = parts.imported + u32::try_from(number)?;
                    let name = parts.names.get(&number).filter(|_| inside);
                    let name = name.ok_or("a reference stands in no function")?;
                    links.functions.entry(name).or_default()
                } else if section.section_index() == parts.data.0 {
                    let at = parts.address(parts.data.1 + offset)?;
                    match by_place.get(by_place.partition_point(|(end, _)| *end <= at)) {
                        Some((_, number)) if links.data[*number].place.contains(&at) => {
                            &mut links.data[*number].uses
                        }
                        _ => &mut links.unnamed,
                    }
                } else {
                    continue;
                };
                match (entry.ty, symbol) {
                    (
                        RelocationType::TableIndexSleb | RelocationType::TableIndexI32,
                        Some(Symbol::Function(name)),
                    ) => uses.functions.push(name),
                    (
                        RelocationType::MemoryAddrLeb
                        | RelocationType::MemoryAddrSleb
                        | RelocationType::MemoryAddrI32,
                        Some(Symbol::Data(number)),
                    ) => uses.data.push(number),
                    // Places that the linker itself makes up, such as the end of the data.
                    (
                        RelocationType::MemoryAddrLeb
                        | RelocationType::MemoryAddrSleb
                        | RelocationType::MemoryAddrI32,
                        Some(Symbol::Other),
                    ) => {}
                    (
                        RelocationType::FunctionIndexLeb
                        | RelocationType::TypeIndexLeb
                        | RelocationType::GlobalIndexLeb
                        | RelocationType::TableNumberLeb,
                        _,
                    ) => {}
                    (kind, _) => return Err(format!("a reference of the kind {kind:?}").into()),
                }
            }
        }
        Ok(links)
    }

    /// What a function of the module refers to, by its name there. `None` if wasm-bindgen made it.
    pub(super) fn of(&self, name: &str) -> Option<&Uses<'a>> {
        // The macro of wasm-bindgen adds a hash to the name that its program takes away again.
        self.functions.get(name).or_else(|| self.functions.get(self.exported.get(name)?))
    }

    fn take_symbols(&mut self, parts: &Parts<'a>) -> Result<Vec<Symbol<'a>>, Fault> {
        let mut symbols = Vec::new();
        for symbol in &parts.symbols {
            symbols.push(match symbol {
                SymbolInfo::Func { index, .. } => {
                    Symbol::Function(parts.names.get(index).copied().unwrap_or_default())
                }
                // What is zero at the start is in no segment of the file, and refers to nothing.
                SymbolInfo::Data { symbol: Some(of), .. } => {
                    match parts.data.2.get(of.index as usize) {
                        Some((_, address)) if of.size > 0 => {
                            let start = address + of.offset;
                            let place = start..start + of.size;
                            self.data.push(Datum { place, uses: Uses::default() });
                            Symbol::Data(self.data.len() - 1)
                        }
                        _ => Symbol::Other,
                    }
                }
                _ => Symbol::Other,
            });
        }
        Ok(symbols)
    }

    /// The data by where they end.
    fn by_place(&self) -> Vec<(u32, usize)> {
        let mut places: Vec<_> =
            self.data.iter().enumerate().map(|(number, datum)| (datum.place.end, number)).collect();
        places.sort_unstable();
        places
    }
}

impl<'a> Parts<'a> {
    fn read(linked: &'a [u8]) -> Result<Self, Fault> {
        let mut parts = Parts::default();
        let mut section = 0;
        for payload in Parser::new(0).parse_all(linked) {
            let payload = payload?;
            let is_section = payload.as_section().is_some();
            match payload {
                Payload::ImportSection(imports) => {
                    for import in imports.into_imports() {
                        parts.imported +=
                            u32::from(matches!(import?.ty, wasmparser::TypeRef::Func(_)));
                    }
                }
                Payload::ExportSection(exports) => {
                    for export in exports {
                        let export = export?;
                        parts.exports.push((export.name, export.index));
                    }
                }
                Payload::CodeSectionStart { unchecked_range, .. } => {
                    parts.code = (section, unchecked_range.start, Vec::new());
                }
                Payload::CodeSectionEntry(body) => {
                    parts.code.2.push(body.range());
                    continue;
                }
                Payload::DataSection(segments) => {
                    parts.data = (section, segments.range().start, Vec::new());
                    for segment in segments {
                        let segment = segment?;
                        let end = segment.range.end;
                        let start = end - segment.data.len() as u64;
                        parts.data.2.push((start..end, address(&segment)?));
                    }
                }
                Payload::CustomSection(custom) => match custom.as_known() {
                    KnownCustom::Name(names) => parts.names = function_names(names)?,
                    KnownCustom::Linking(linking) => {
                        for part in linking.subsections() {
                            if let Linking::SymbolTable(symbols) = part? {
                                parts.symbols = symbols.into_iter().collect::<Result<_, _>>()?;
                            }
                        }
                    }
                    KnownCustom::Reloc(relocations) => parts.relocations.push(relocations),
                    _ => {}
                },
                _ => {}
            }
            section += u32::from(is_section);
        }
        if parts.symbols.is_empty() || parts.relocations.is_empty() {
            return Err("it does not say what refers to what".into());
        }
        Ok(parts)
    }

    /// The address of a byte of data in the file.
    fn address(&self, at: u64) -> Result<u32, Fault> {
        let found = self.data.2.iter().find(|(bytes, _)| bytes.contains(&at));
        let (bytes, address) = found.ok_or("a reference stands in no data")?;
        Ok(address + u32::try_from(at - bytes.start)?)
    }
}
