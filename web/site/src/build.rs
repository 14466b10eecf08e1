//! From sources to `dist`.

use std::env;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use std::process::Command;

use crate::finish::{FIRST, Finished, LATER, finish, the_one};
use crate::split::split;
use crate::tool::{self, TRUNK, WASM_BINDGEN};
use crate::tree;

/// Builds `dist` below `root`: fetches what is missing, runs Trunk, then [`finish`].
///
/// # Errors
/// When a step fails, or the result names a folder of this machine.
pub fn build(root: &Path) -> io::Result<Finished> {
    // Where the compiler writes paths down is decided by what it was told, links or not.
    let root = &root.canonicalize()?;
    tool::ensure_target(root)?;
    let mut path = vec![TRUNK.ensure()?, WASM_BINDGEN.ensure()?];
    path.extend(env::split_paths(&env::var_os("PATH").unwrap_or_default()));
    let path = env::join_paths(path).map_err(io::Error::other)?;

    // Trunk works offline, so that it takes no other program than those two.
    tool::run(Command::new("cargo").args(["fetch", "--quiet", "--locked"]).current_dir(root))?;
    let target = target(root)?;
    drop_old_snippets(&target)?;
    let machine = Machine::look(root)?;
    tool::run(
        Command::new("trunk")
            .args(["build", "--release", "--offline"])
            .current_dir(root)
            .env("PATH", path)
            .env("CARGO_ENCODED_RUSTFLAGS", machine.flags())
            // Trunk takes only `true` or `false` for it, against the convention.
            .env_remove("NO_COLOR"),
    )?;
    cut(root, &target)?;
    let finished = finish(root)?;
    machine.is_unnamed_in(&root.join("dist"))?;
    Ok(finished)
}

/// Trunk copies all script snippets that wasm-bindgen ever left in its folder, those of earlier
/// builds too, so the folder has to go first.
fn drop_old_snippets(target: &Path) -> io::Result<()> {
    match fs::remove_dir_all(target.join("wasm-bindgen/release/snippets")) {
        Err(error) if error.kind() != io::ErrorKind::NotFound => Err(error),
        _ => Ok(()),
    }
}

/// Cuts what Trunk left in two; the linker's own file says where.
fn cut(root: &Path, target: &Path) -> io::Result<()> {
    let linked = tree::read(&target.join("wasm32-unknown-unknown/web/pitchline-web.wasm"))?;
    let dist = root.join("dist");
    let name = the_one(&tree::files(&dist)?, FIRST)?.to_owned();
    let pieces = split(&linked, &tree::read(&dist.join(&name))?)?;
    fs::write(dist.join(&name), pieces.first)?;
    fs::write(dist.join(name.replace(FIRST, LATER)), pieces.later)
}

/// Where cargo builds.
fn target(root: &Path) -> io::Result<PathBuf> {
    let metadata = tool::output(
        Command::new("cargo")
            .args(["metadata", "--offline", "--no-deps", "--format-version", "1"])
            .current_dir(root),
    )?;
    let metadata: serde_json::Value = serde_json::from_str(&metadata)?;
    let target = metadata["target_directory"].as_str().unwrap_or("target");
    Ok(root.join(target))
}

/// The folders of this machine that the compiler would write into panic messages. The same
/// sources must give the same bytes everywhere, and `dist` is published.
struct Machine {
    renamed: Vec<(PathBuf, String)>,
}

impl Machine {
    fn look(root: &Path) -> io::Result<Self> {
        let home = match env::var_os("CARGO_HOME") {
            Some(home) => PathBuf::from(home),
            None => env::home_dir()
                .map(|home| home.join(".cargo"))
                .ok_or_else(|| io::Error::other("no home folder"))?,
        };
        let rustc =
            |args: &[&str]| tool::output(Command::new("rustc").args(args).current_dir(root));
        let sysroot = PathBuf::from(rustc(&["--print", "sysroot"])?);
        let verbose = rustc(&["-vV"])?;
        let commit = verbose
            .lines()
            .find_map(|line| line.strip_prefix("commit-hash: "))
            .unwrap_or("unknown");

        // The compiler applies the last rule that fits, so the special ones come last.
        let mut renamed = vec![
            (home.clone(), "cargo".to_owned()),
            (root.to_owned(), "pitchline".to_owned()),
            // With the library's sources installed, their place replaces this fixed one.
            (sysroot.join("lib/rustlib/src/rust"), format!("/rustc/{commit}")),
        ];
        let sources = home.join("registry/src");
        if sources.is_dir() {
            for registry in fs::read_dir(sources)? {
                renamed.push((registry?.path(), "crate".to_owned()));
            }
        }
        Ok(Machine { renamed })
    }

    /// For `CARGO_ENCODED_RUSTFLAGS`, which parts its flags with the unit separator.
    fn flags(&self) -> String {
        self.renamed
            .iter()
            .map(|(from, to)| format!("--remap-path-prefix={}={to}", from.display()))
            // What refers to what, for the cut; nothing of it stays in `dist`.
            .chain(["-Clink-arg=--emit-relocs".to_owned()])
            .collect::<Vec<_>>()
            .join("\u{1f}")
    }

    fn is_unnamed_in(&self, dist: &Path) -> io::Result<()> {
        for name in tree::files(dist)? {
            let content = tree::read(&dist.join(&name))?;
            for (folder, _) in &self.renamed {
                let folder = folder.display().to_string();
                if content.windows(folder.len()).any(|part| part == folder.as_bytes()) {
                    return Err(io::Error::other(format!("dist/{name} names {folder}")));
                }
            }
        }
        Ok(())
    }
}
