//! What the build adds to Trunk's output.

use std::collections::BTreeMap;
use std::fs;
use std::io;
use std::path::Path;

use serde::{Deserialize, Serialize};

use crate::guard::guard;
use crate::names::without_names;
use crate::{digest, fingerprint, offline, tree};

/// The record of a build, `dist/build.json`.
#[derive(Debug, Serialize, Deserialize)]
pub(crate) struct Record {
    pub(crate) app: String,
    pub(crate) version: String,
    /// The service worker's version.
    pub(crate) offline: String,
    /// Over all sources.
    pub(crate) fingerprint: String,
    pub(crate) sources: BTreeMap<String, String>,
    /// All of `dist` but this record.
    pub(crate) files: BTreeMap<String, String>,
}

/// How the name of the wasm ends.
const WASM: &str = "_bg.wasm";

pub(crate) const RECORD: &str = "build.json";

/// What [`finish`] did.
#[derive(Clone, Debug)]
pub struct Finished {
    /// The service worker's version, 16 hexadecimal digits.
    pub version: String,
    /// How many files are kept for offline use.
    pub kept: usize,
}

/// Adds to `dist`, built from what is below `root`, what Trunk cannot know: `pitchline.js` (the module under a name
/// that stays), `sw.js` with its list, and `build.json`. May be run again at any time.
///
/// # Errors
/// When `dist` is not a build of this site, or a file cannot be read or written.
pub fn finish(root: &Path, dist: &Path) -> io::Result<Finished> {
    let names = tree::files(dist)?;
    let page = the_one(&names, "pitchline-web", ".js")?;
    let module = the_one(&names, "pitchline-api", ".js")?;
    let wasm = the_one(&names, "pitchline-api", WASM)?;
    for name in [page, module] {
        let path = dist.join(name);
        tree::write(&path, &guard(&tree::read_text(&path)?)?)?;
    }
    for name in &names {
        slim(&dist.join(name))?;
    }
    let [module, wasm] = hashed(dist, [module, wasm])?;
    tree::write(&dist.join("pitchline.js"), &stable_module(&module, &wasm))?;
    slim(&dist.join("pitchline.js"))?;
    // What the page falls back on when the maker's own file cannot be read.
    // Trunk has just put it there.
    fs::copy(dist.join(offline::LIVE), dist.join("demo.json"))?;

    let template = tree::read_text(&root.join("web/boot/sw.js"))?;
    let listed = offline::list(dist)?;
    let (worker, version) = offline::worker(&template, &listed)?;
    tree::write(&dist.join("sw.js"), &worker)?;

    let sources = fingerprint(root)?;
    let record = Record {
        app: "pitchline".to_owned(),
        version: env!("CARGO_PKG_VERSION").to_owned(),
        offline: version.clone(),
        fingerprint: sources.total,
        sources: sources.files,
        files: digests(dist)?,
    };
    let text = serde_json::to_string_pretty(&record)?;
    tree::write(&dist.join(RECORD), &(text + "\n"))?;
    Ok(Finished { version, kept: listed.len() })
}

/// Scripts and styles without comments and white space, wasm without names. Done to what is done
/// already, it changes nothing.
fn slim(path: &Path) -> io::Result<()> {
    let small = match path.extension().and_then(|ending| ending.to_str()) {
        Some("js") => minifier::js::minify(&tree::read_text(path)?).to_string(),
        Some("css") => minifier::css::minify(&tree::read_text(path)?)
            .map_err(|fault| io::Error::other(format!("{}: {fault}", path.display())))?
            .to_string(),
        Some("wasm") => return fs::write(path, without_names(&tree::read(path)?)?),
        _ => return Ok(()),
    };
    tree::write(path, &small)
}

/// Digests of all files of `dist` but the record of them.
pub(crate) fn digests(dist: &Path) -> io::Result<BTreeMap<String, String>> {
    tree::files(dist)?
        .into_iter()
        .filter(|name| name != RECORD)
        .map(|name| Ok((name.clone(), digest::sha256(&tree::read(&dist.join(&name))?))))
        .collect()
}

/// A module and its wasm under names that change with their content. Trunk gives such names only to
/// what the page itself loads.
fn hashed(dist: &Path, [module, wasm]: [&str; 2]) -> io::Result<[String; 2]> {
    let Some(name) = wasm.strip_suffix(WASM).filter(|name| !name.contains("-api-")) else {
        return Ok([module.to_owned(), wasm.to_owned()]);
    };
    let contents = [tree::read(&dist.join(module))?, tree::read(&dist.join(wasm))?];
    let hash = &digest::sha256(&contents.concat())[..16];
    let names = [format!("{name}-{hash}.js"), format!("{name}-{hash}{WASM}")];
    fs::rename(dist.join(module), dist.join(&names[0]))?;
    fs::rename(dist.join(wasm), dist.join(&names[1]))?;
    Ok(names)
}

/// `pitchline.js`, for pages that import the calculator as a module: the built module's name
/// changes with its content, this one does not. The built module would look for its wasm under the
/// name it had before, so the wrapper says where it is. `answers` never throws, so
/// the wrapper says in its place what is wrong once the calculator broke. The types are in
/// `pitchline.d.ts`, which comes with the catalogue's folder.
fn stable_module(js: &str, wasm: &str) -> String {
    format!(
        "// The calculator as a module, under a name that stays.\n\
         import init, {{ answers as asked }} from './{js}';\n\
         export * from './{js}';\n\
         const wasm = new URL('./{wasm}', import.meta.url);\n\
         export function answers(build, options) {{\n\
         \x20 try {{\n\
         \x20   return asked(build, options);\n\
         \x20 }} catch (error) {{\n\
         \x20   return {{ errors: [{{ field: '', reason: String(error) }}], ignored: [] }};\n\
         \x20 }}\n\
         }}\n\
         export default function start(options = {{}}) {{\n\
         \x20 return init({{ module_or_path: wasm, ...options }});\n\
         }}\n"
    )
}

fn the_one<'a>(names: &'a [String], package: &str, ending: &str) -> io::Result<&'a str> {
    let mut fitting =
        names.iter().filter(|name| name.starts_with(package) && name.ends_with(ending));
    match (fitting.next(), fitting.next()) {
        (Some(name), None) => Ok(name),
        _ => Err(io::Error::other(format!(
            "dist must hold exactly one {package}*{ending}; run `cargo site build`"
        ))),
    }
}
