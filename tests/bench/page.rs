//! One full set of answers in the page's wasm beside the same in native code,
//! in one run: `cargo bench -p pitchline-tests --bench page`.

use std::time::Instant;

use pitchline_core::catalog::{read_build, write_build};
use pitchline_core::{Build, Draft, answers};
use pitchline_site::{Options, serve};
use pitchline_tests::browser::{Browser, Outcome, Size};
use serde_json::json;

const TIMES: usize = 200;

fn main() -> Outcome {
    let file = write_build(&Draft::typical());
    let native = median((0..TIMES).map(|_| {
        let start = Instant::now();
        let draft = read_build(&file).expect("the typical build reads");
        let build = Build::check(&draft).expect("and checks");
        std::hint::black_box(answers(&build));
        start.elapsed().as_secs_f64() * 1e3
    }));

    let server = serve(Options::new(pitchline_tests::dist()))?;
    let page = Browser::open(Size::Desktop)?;
    page.goto(&server.url())?;
    page.wait_until("return document.documentElement.dataset.app === 'running'")?;
    let script = format!(
        "const module = await import(document.getElementById('app-module').href);
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
    page.close().map(|_| ())
}

fn median(times: impl Iterator<Item = f64>) -> f64 {
    let mut times: Vec<f64> = times.collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
