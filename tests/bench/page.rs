//! Every question answered in the page's wasm beside the same in native code,
//! and an edit, in one run: `cargo bench -p pitchline-tests --bench page`.

use std::time::Instant;

use pitchline_core::catalog::{read_build, write_build};
use pitchline_core::fit::{box_plan, clearances, deck_fit, lean};
use pitchline_core::{BeltOffers, Build, Draft, Drive, answer_set, belt_fit};
use pitchline_site::{Options, serve};
use pitchline_tests::browser::{Browser, Outcome, Size};
use serde_json::json;

const TIMES: usize = 100;

fn main() -> Outcome {
    let file = write_build(&Draft::typical());
    let native = median((0..TIMES).map(|_| {
        let start = Instant::now();
        let (draft, _) = read_build(&file).expect("the typical build reads");
        let build = Build::check(&draft).expect("and checks");
        std::hint::black_box(answer_set(&draft, &build));
        start.elapsed().as_secs_f64() * 1e3
    }));

    let server = serve(Options::new(pitchline_tests::dist()))?;
    let page = Browser::open(Size::Desktop)?;
    page.goto(&server.url())?;
    page.wait_until("return document.documentElement.dataset.app === 'running'")?;
    let script = format!(
        "const module = await import(new URL('./pitchline.js', document.baseURI));
         await module.default();
         const build = {file};
         const times = [];
         for (let i = 0; i < {TIMES}; i++) {{
             const start = performance.now();
             const found = module.answers(build);
             times.push(performance.now() - start);
             if (!found.answers) throw new Error(JSON.stringify(found));
         }}
         return times;"
    );
    let times = page.eval(&script, &[])?;
    let wasm = median(times.as_array().into_iter().flatten().filter_map(serde_json::Value::as_f64));
    println!(
        "{}",
        json!({ "native_ms": native, "wasm_ms": wasm, "wasm_over_native": wasm / native })
    );
    let [edit, with_fit] = edits()?;
    println!(
        "{}",
        json!({
            "fit_native_ms": fit_native(),
            "edit_ms": edit,
            "edit_with_fit_in_sight_ms": with_fit,
        })
    );
    page.close().map(|_| ())
}

/// Does it go together?, all of it, in native code.
fn fit_native() -> f64 {
    let draft = Draft::typical();
    let build = Build::check(&draft).expect("typical values are within their limits");
    median((0..TIMES).map(|_| {
        let start = Instant::now();
        let none = BeltOffers { belts: &[], motor_pulleys: &[], wheel_pulleys: &[] };
        let belt = belt_fit(&Drive::new(&build), &none);
        std::hint::black_box((
            belt,
            clearances(&draft, &build, 0.07),
            deck_fit(&draft, &build),
            lean(&draft, &build),
            box_plan(&draft, &build),
        ));
        start.elapsed().as_secs_f64() * 1e3
    }))
}

/// From an edit until all that follows from it at once is on the page, ms, without the browser's
/// own layout and drawing: with the head of the page in sight, then with the drive's drawing.
fn edits() -> Outcome<[f64; 2]> {
    let mut found = [0.0; 2];
    for (time, seen) in found.iter_mut().zip(["on-it", "fit"]) {
        let server = serve(Options::new(pitchline_tests::dist()))?;
        let page = Browser::open(Size::Desktop)?;
        page.goto(&server.url())?;
        page.wait_until("return document.documentElement.dataset.app === 'running'")?;
        let script = format!(
            "document.getElementById('{seen}')?.scrollIntoView();
             const input = document.getElementById('rider-mass_kg');
             const done = new MessageChannel();
             const settled = () => new Promise((then) => {{
                 done.port1.onmessage = then;
                 done.port2.postMessage(0);
             }});
             const times = [];
             for (let i = 0; i < {TIMES}; i++) {{
                 // So that no drawing of the screen falls into the time.
                 await new Promise(requestAnimationFrame);
                 await settled();
                 input.value = String(70 + i % 20);
                 const start = performance.now();
                 input.dispatchEvent(new Event('input', {{ bubbles: true }}));
                 // All that follows is queued before this, and some of it queues more.
                 for (let turn = 0; turn < 8; turn++) await null;
                 times.push(performance.now() - start);
             }}
             return times;"
        );
        let times = page.eval(&script, &[])?;
        let times = times.as_array().into_iter().flatten();
        *time = median(times.filter_map(serde_json::Value::as_f64));
        page.discard_console()?;
        page.close().map(|_| ())?;
    }
    Ok(found)
}

fn median(times: impl Iterator<Item = f64>) -> f64 {
    let mut times: Vec<f64> = times.collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
