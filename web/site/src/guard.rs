//! A built module that lets nobody into a wasm that has broken.

use std::io;

/// Where the module that wasm-bindgen makes takes what the wasm exports: every call goes by it.
const ENTRY: &str = "wasm = instance.exports;";
/// The same, guarded.
const GUARDED: &str = "wasm = guarded(instance.exports);";

/// After a panic or a trap, memory may be half changed. No listener, no timer and no other page's
/// call may enter then: what the page itself left behind gets an empty answer, what another page
/// calls throws.
const GUARD: &str = "function guarded(exports) {
  let broken = false;
  // The panic hook tells before the wasm ends; what that sets off must not enter either.
  globalThis.addEventListener?.('pitchline:panic', () => { broken = true; }, { capture: true });
  const guard = (name, call) => (...given) => {
    if (broken) {
      if (name === 'answers' || name === 'version') throw new Error('The calculator broke. Load the page again.');
      return [];
    }
    try {
      return call(...given);
    } catch (error) {
      // Out of memory, or out of stack, by its names in the browsers.
      if (['RuntimeError', 'RangeError', 'InternalError'].includes(error?.name)) broken = true;
      throw error;
    }
  };
  const pairs = Object.entries(exports);
  return Object.fromEntries(pairs.map(([name, it]) => [name, typeof it === 'function' ? guard(name, it) : it]));
}
";

/// The module with the guard before it. One that has it already stays as it is.
///
/// # Errors
/// When the place where the exports come in is not there exactly once.
pub(crate) fn guard(module: &str) -> io::Result<String> {
    if module.contains("guarded(instance.exports)") {
        return Ok(module.to_owned());
    }
    if module.matches(ENTRY).count() != 1 {
        let fault = format!("the built module must hold this exactly once: {ENTRY}");
        return Err(io::Error::other(fault));
    }
    Ok(format!("{GUARD}{}", module.replace(ENTRY, GUARDED)))
}

#[cfg(test)]
mod tests {
    use super::guard;

    #[test]
    fn a_module_is_guarded_once() {
        let once = guard("let wasm;\nwasm = instance.exports;\n").expect("it has the place");
        assert!(once.contains("wasm = guarded(instance.exports);"), "{once}");
        assert_eq!(guard(&once).expect("it is guarded"), once);
        assert!(guard("nothing").is_err());
    }
}
