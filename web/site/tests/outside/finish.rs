//! What the build adds to Trunk's output.

use pitchline_site::finish;

use crate::folder::repository;

#[test]
fn the_module_is_found_under_a_name_that_stays() {
    let folder = repository("stable-name");
    finish(folder.path(), &folder.path().join("dist")).expect("dist can be finished");
    let module = folder.read("dist/pitchline.js");
    assert!(module.contains("from'./pitchline-web-1f2e3d4c5b6a7988.js'"), "{module}");
    assert!(module.contains("'./pitchline-web-1f2e3d4c5b6a7988_bg.wasm'"), "{module}");
    let worker = folder.read("dist/sw.js");
    assert!(worker.contains("\"pitchline.js\""), "the added module is kept too");
}

#[test]
fn finishing_twice_changes_nothing() {
    let folder = repository("twice");
    let first = finish(folder.path(), &folder.path().join("dist")).expect("dist can be finished");
    let files = ["dist/sw.js", "dist/build.json", "dist/pitchline.js"];
    let before = files.map(|file| folder.read(file));
    let second =
        finish(folder.path(), &folder.path().join("dist")).expect("dist can be finished again");
    assert_eq!(first.version, second.version);
    assert_eq!(before, files.map(|file| folder.read(file)));
}

#[test]
fn a_folder_that_is_no_build_is_refused() {
    let folder = repository("no-build");
    folder.write("dist/pitchline-web-2f2e3d4c5b6a7988.js", "");
    assert!(finish(folder.path(), &folder.path().join("dist")).is_err(), "two modules");
    folder.remove("dist/pitchline-web-1f2e3d4c5b6a7988.js");
    folder.remove("dist/pitchline-web-2f2e3d4c5b6a7988.js");
    assert!(finish(folder.path(), &folder.path().join("dist")).is_err(), "no module");
}
