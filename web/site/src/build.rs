//! From sources to `dist`.

use std::env;
use std::io;
use std::path::Path;
use std::process::Command;

use crate::tool::{self, TRUNK, WASM_BINDGEN};

/// Builds `dist` below `root`: fetches what is missing, then runs Trunk, whose hook
/// [finishes](crate::finish) the site.
///
/// # Errors
/// When a step fails.
pub fn build(root: &Path) -> io::Result<()> {
    tool::ensure_target(root)?;
    let mut path = vec![TRUNK.ensure()?, WASM_BINDGEN.ensure()?];
    path.extend(env::split_paths(&env::var_os("PATH").unwrap_or_default()));
    let path = env::join_paths(path).map_err(io::Error::other)?;
    // Trunk works offline, so that it takes no other program than those two.
    tool::run(Command::new("cargo").args(["fetch", "--quiet", "--locked"]).current_dir(root))?;
    tool::run(
        Command::new("trunk")
            .args(["build", "--release", "--offline"])
            .current_dir(root)
            .env("PATH", path)
            // Trunk takes only `true` or `false` for it, against the convention.
            .env_remove("NO_COLOR"),
    )
}
