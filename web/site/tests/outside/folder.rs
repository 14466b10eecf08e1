//! Folders that tests may do as they like with.

use std::fs;
use std::path::{Path, PathBuf};

use pitchline_site::SOURCES;

/// A folder of its own for each test, empty at the start.
pub(crate) struct Folder(PathBuf);

impl Folder {
    pub(crate) fn new(test: &str) -> Self {
        let path = Path::new(env!("CARGO_TARGET_TMPDIR")).join(test);
        if path.exists() {
            fs::remove_dir_all(&path).expect("an old folder can be removed");
        }
        fs::create_dir_all(&path).expect("a folder can be made");
        Folder(path)
    }

    pub(crate) fn path(&self) -> &Path {
        &self.0
    }

    /// Writes a file and the folders above it.
    pub(crate) fn write(&self, path: &str, content: impl AsRef<[u8]>) -> &Self {
        let path = self.0.join(path);
        fs::create_dir_all(path.parent().expect("a file is in a folder"))
            .expect("a folder can be made");
        fs::write(path, content).expect("a file can be written");
        self
    }

    pub(crate) fn remove(&self, path: &str) {
        fs::remove_file(self.0.join(path)).expect("a file can be removed");
    }

    pub(crate) fn read(&self, path: &str) -> String {
        fs::read_to_string(self.0.join(path)).expect("a file can be read")
    }
}

/// The worker's real source.
pub(crate) const WORKER: &str = include_str!("../../../boot/sw.js");

/// A repository with something in every source, and a `dist` as Trunk leaves it.
pub(crate) fn repository(test: &str) -> Folder {
    let folder = Folder::new(test);
    for source in SOURCES {
        match *source {
            "web/boot" => folder.write("web/boot/sw.js", WORKER),
            file if file.contains('.') => folder.write(file, file),
            tree => folder.write(&format!("{tree}/one/two.rs"), tree),
        };
    }
    folder
        .write("dist/index.html", PAGE)
        .write(
            "dist/pitchline-web-1f2e3d4c5b6a7988.js",
            "export default 1;\nwasm = instance.exports;\n",
        )
        .write("dist/pitchline-web-1f2e3d4c5b6a7988_bg.wasm", "\0asm\x01\0\0\0")
        .write("dist/pitchline-api.js", "export default 2;\nwasm = instance.exports;\n")
        .write("dist/pitchline-api_bg.wasm", "\0asm\x01\0\0\0")
        .write("dist/main-f2e3d4c5b6a7988.css", "p { color: red }")
        .write("dist/catalogue.json", "{}")
        .write("dist/icon.svg", "<svg/>");
    folder
}

const PAGE: &str = r#"<!DOCTYPE html>
<link rel="stylesheet" href="./main-f2e3d4c5b6a7988.css">
<link rel="icon" href="./icon.svg">
<link rel="modulepreload" href="./pitchline-web-1f2e3d4c5b6a7988.js">
<link rel="preload" href="./pitchline-web-1f2e3d4c5b6a7988_bg.wasm">
"#;
