//! Builds of the site that differ by a mark, and what a browser shows of them.

use std::fs;
use std::path::Path;

use pitchline_site::offline;
use pitchline_tests::browser::{Fault, Outcome, Page};
use pitchline_tests::root;
use serde_json::Value;
use tempfile::TempDir;

/// A file only these builds have, so that a mix of two builds shows.
const MARK: &str = "mark.txt";

/// A copy of a built site with a mark of its own.
pub(crate) struct Build {
    folder: TempDir,
}

impl Build {
    /// Copies `dist`, puts the mark into the page and into one more file, and
    /// lists the files anew for the service worker, as a build does.
    pub(crate) fn marked(dist: &Path, mark: &str) -> Outcome<Self> {
        let folder = tempfile::Builder::new().prefix("pitchline-site-").tempdir()?;
        copy(dist, folder.path()).map_err(|error| {
            Fault::new(format!("{}: {error}; `cargo site build` makes it", dist.display()))
        })?;
        let page = folder.path().join("index.html");
        fs::write(&page, fs::read_to_string(&page)? + &format!("<!-- {mark} -->\n"))?;
        fs::write(folder.path().join(MARK), mark)?;
        let template = fs::read_to_string(root().join("web/boot/sw.js"))?;
        let (worker, _) = offline::worker(&template, &offline::list(folder.path())?)?;
        fs::write(folder.path().join("sw.js"), worker)?;
        Ok(Self { folder })
    }

    pub(crate) fn path(&self) -> &Path {
        self.folder.path()
    }

    /// The name of the page's wasm, which no build can do without.
    pub(crate) fn wasm(&self) -> Outcome<String> {
        for entry in fs::read_dir(self.path())? {
            let name = entry?.file_name().to_string_lossy().into_owned();
            if name.starts_with("pitchline-web") && name.ends_with("_bg.wasm") {
                return Ok(name);
            }
        }
        Err(Fault::new("the build has no wasm"))
    }
}

fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let target = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &target)?;
        } else {
            fs::copy(entry.path(), target)?;
        }
    }
    Ok(())
}

/// Fails unless the tab in front runs, and shows the page and the file of
/// that one build.
#[track_caller]
pub(crate) fn assert_shows(page: &Page, mark: &str) -> Outcome {
    page.wait_until("return ['running', 'broken'].includes(document.documentElement.dataset.app)")?;
    let broken = page.eval("return document.querySelector('.recovery pre')?.textContent", &[])?;
    if let Some(report) = broken.as_str() {
        return Err(Fault::new(format!("the page does not run:\n{report}")));
    }
    let script = "const mark = (text) => text.match(/<!-- (.*?) -->\\s*$/)?.[1];
        const own = [...document.childNodes].filter((n) => n.nodeType === Node.COMMENT_NODE);
        const fetched = await (await fetch('./')).text();
        return [own.at(-1)?.data.trim(), mark(fetched), await (await fetch('mark.txt')).text()]";
    let shown = page.eval(script, &[])?;
    if shown == Value::from(vec![mark; 3]) {
        return Ok(());
    }
    Err(Fault::new(format!("page, page fetched, file: {shown}, not all {mark:?}")))
}

/// Waits until the tab in front shows the page of that build, asking the
/// service worker for nothing meanwhile: it only gives way when it has no work.
#[track_caller]
pub(crate) fn wait_shows(page: &Page, mark: &str) -> Outcome {
    page.wait_until(&format!("return document.lastChild.data?.trim() === '{mark}'"))?;
    assert_shows(page, mark)
}

/// Waits until the page says that it is ready to work offline.
#[track_caller]
pub(crate) fn wait_ready(page: &Page) -> Outcome {
    page.wait_until("return document.documentElement.dataset.offline === 'ready'")
}
