//! The two programs the build needs, at one exact version each, kept out of the repository.

use std::env;
use std::io;
use std::path::{Path, PathBuf};
use std::process::Command;

/// A program installed with `cargo install`.
pub(crate) struct Tool {
    package: &'static str,
    program: &'static str,
    version: &'static str,
    flags: &'static [&'static str],
}

/// Newer ones want a newer compiler. A build without optimisation takes a third of the time to
/// install and is no slower where it matters: most of a build is spent in the compiler.
pub(crate) const TRUNK: Tool = Tool {
    package: "trunk",
    program: "trunk",
    version: "0.21.14",
    flags: &["--locked", "--no-default-features", "--features", "rustls", "--debug"],
};

/// Must be the version of the wasm-bindgen crate, to the last digit.
pub(crate) const WASM_BINDGEN: Tool = Tool {
    package: "wasm-bindgen-cli",
    program: "wasm-bindgen",
    version: "0.2.129",
    flags: &["--locked", "--no-default-features", "--debug"],
};

impl Tool {
    /// Installs the program unless it is there, and gives the folder it is in.
    ///
    /// # Errors
    /// When it cannot be installed.
    pub(crate) fn ensure(&self) -> io::Result<PathBuf> {
        let name = self.package.trim_end_matches("-cli");
        let place = cache()?.join(format!("{name}-{}", self.version));
        let bin = place.join("bin");
        let program = bin.join(format!("{}{}", self.program, env::consts::EXE_SUFFIX));
        if !program.exists() {
            println!("Installing {} {} (once) ...", self.program, self.version);
            let mut install = Command::new("cargo");
            install
                .arg("install")
                .arg(format!("{}@{}", self.package, self.version))
                .args(self.flags)
                .arg("--root")
                .arg(&place);
            run(&mut install)?;
        }
        Ok(bin)
    }
}

/// Adds the compiler's half for the browser where it is missing.
pub(crate) fn ensure_target(root: &Path) -> io::Result<()> {
    const TARGET: &str = "wasm32-unknown-unknown";
    let libraries = output(
        Command::new("rustc")
            .args(["--print", "target-libdir", "--target", TARGET])
            .current_dir(root),
    )?;
    if Path::new(&libraries).exists() {
        return Ok(());
    }
    run(Command::new("rustup").args(["target", "add", TARGET]).current_dir(root))
}

/// Runs a command to its end, with its output on the terminal.
///
/// # Errors
/// When it cannot be started or fails.
pub(crate) fn run(command: &mut Command) -> io::Result<()> {
    let status = command.status().map_err(|error| failed(command, &error))?;
    if status.success() { Ok(()) } else { Err(failed(command, &status)) }
}

/// Runs a command and gives its trimmed standard output.
///
/// # Errors
/// When it cannot be started, fails, or does not write text.
pub(crate) fn output(command: &mut Command) -> io::Result<String> {
    let output = command.output().map_err(|error| failed(command, &error))?;
    if !output.status.success() {
        return Err(failed(command, &output.status));
    }
    let text = String::from_utf8(output.stdout).map_err(|error| failed(command, &error))?;
    Ok(text.trim().to_owned())
}

fn failed(command: &Command, reason: &dyn std::fmt::Display) -> io::Error {
    let program = command.get_program().display();
    io::Error::other(format!("{program}: {reason}"))
}

fn cache() -> io::Result<PathBuf> {
    let set = |name: &str| env::var_os(name).map(PathBuf::from).filter(|path| path.is_absolute());
    set("XDG_CACHE_HOME")
        .or_else(|| env::home_dir().map(|home| home.join(".cache")))
        .map(|cache| cache.join("pitchline"))
        .ok_or_else(|| io::Error::other("no home folder to keep the build's tools in"))
}
