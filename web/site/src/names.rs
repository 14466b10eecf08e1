//! Leaves out of a wasm the names of its functions: a quarter of its bytes, for debuggers alone.

use std::io;

use wasm_encoder::{Module, RawSection};
use wasmparser::{Parser, Payload};

/// The same module without names.
///
/// # Errors
/// When it is no module.
pub(crate) fn without_names(wasm: &[u8]) -> io::Result<Vec<u8>> {
    let mut module = Module::new();
    for payload in Parser::new(0).parse_all(wasm) {
        let payload = payload.map_err(io::Error::other)?;
        let named = matches!(&payload, Payload::CustomSection(custom) if custom.name() == "name");
        if let Some((id, range)) = payload.as_section().filter(|_| !named) {
            let data = &wasm[range.start as usize..range.end as usize];
            module.section(&RawSection { id, data });
        }
    }
    Ok(module.finish())
}

#[cfg(test)]
mod tests {
    use super::without_names;
    use wasm_encoder::{CustomSection, Encode, Module, NameMap, NameSection};

    /// By the core specification a name section is the custom section called `name`.
    #[test]
    fn names_go_and_all_else_stays() {
        let mut kept = Module::new();
        kept.section(&CustomSection { name: "other".into(), data: [1, 2].as_slice().into() });
        let mut names = NameSection::new();
        let mut map = NameMap::new();
        map.append(0, "a_function");
        names.functions(&map);
        let mut whole = kept.clone();
        whole.section(&names);
        let (kept, whole) = (kept.finish(), whole.finish());
        assert!(whole.len() > kept.len());
        assert_eq!(without_names(&whole).expect("a module"), kept);
        assert_eq!(without_names(&kept).expect("a module"), kept);
        assert!(without_names(b"no module").is_err());
        let mut bytes = Vec::new();
        names.encode(&mut bytes);
        assert!(whole.ends_with(&bytes));
    }
}
