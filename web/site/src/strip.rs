//! A wasm module without the names of its functions.
//!
//! They are a third of what the linker writes and of no use to a reader.
//! Asking the linker to leave them out takes away what wasm-bindgen needs, so
//! they go afterwards.

/// The module without its `name` section, or unchanged if it cannot be read.
pub(crate) fn names(module: &[u8]) -> Vec<u8> {
    without_names(module).unwrap_or_else(|| module.to_vec())
}

/// Sections are an id, a size and content, behind eight bytes of head; custom
/// ones have id 0 and begin with their name.
/// Source: WebAssembly Core Specification, 5.5 Modules.
fn without_names(module: &[u8]) -> Option<Vec<u8>> {
    const HEAD: usize = 8;
    let mut kept = module.get(..HEAD)?.to_vec();
    let mut at = HEAD;
    while at < module.len() {
        let (size, content) = number(module, at + 1)?;
        let end = content.checked_add(size)?;
        let custom = module.get(at)? == &0;
        let (length, name) = if custom { number(module, content)? } else { (0, content) };
        if !custom || module.get(name..name.checked_add(length)?)? != b"name" {
            kept.extend_from_slice(module.get(at..end)?);
        }
        at = end;
    }
    Some(kept)
}

/// An unsigned number in LEB128 at a place, and the place behind it.
fn number(bytes: &[u8], mut at: usize) -> Option<(usize, usize)> {
    let (mut value, mut shift) = (0, 0);
    loop {
        let byte = usize::from(*bytes.get(at)?);
        value |= (byte & 0x7f).checked_shl(shift)?;
        at += 1;
        if byte < 0x80 {
            return Some((value, at));
        }
        shift += 7;
    }
}

#[cfg(test)]
mod tests {
    use super::names;

    #[test]
    fn only_the_names_go() {
        let head = b"\0asm\x01\0\0\0".to_vec();
        let types = [1, 4, 1, 0x60, 0, 0];
        let named = [0, 7, 4, b'n', b'a', b'm', b'e', 9, 9];
        let other = [0, 6, 4, b'm', b'o', b'r', b'e', 9];
        let whole = [&head[..], &types, &named, &other].concat();
        assert_eq!(names(&whole), [&head[..], &types, &other].concat());
    }

    #[test]
    fn what_is_no_module_stays() {
        for odd in [&b""[..], b"text", b"\0asm\x01\0\0\0\x01\xff", b"\0asm\x01\0\0\0\0\x05\xff"] {
            assert_eq!(names(odd), odd);
        }
    }
}
