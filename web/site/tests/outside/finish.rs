//! What the build adds to Trunk's output.

use pitchline_site::finish;

use crate::folder::repository;

#[test]
fn the_module_is_found_under_a_name_that_stays() {
    let folder = repository("stable-name");
    finish(folder.path(), &folder.path().join("dist")).expect("dist can be finished");
    let module = folder.read("dist/pitchline.js");
    let (_, named) = module.split_once("from'./pitchline-api-").expect("it names the module");
    let (hash, _) = named.split_once(".js'").expect("and that is a script");
    assert!(hash.len() == 16 && hash.bytes().all(|byte| byte.is_ascii_hexdigit()), "{hash}");
    assert!(module.contains(&format!("'./pitchline-api-{hash}_bg.wasm'")), "{module}");
    assert!(folder.read(&format!("dist/pitchline-api-{hash}.js")).contains("guarded("));
    let worker = folder.read("dist/sw.js");
    assert!(!worker.contains("pitchline-api"), "the page can do without it");
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
