//! An hour of stop and go and a band of 500 samples: native, and in wasm as the page's is built, in
//! Chromium; beside them the same hour in plain JavaScript and by SciPy. In one run:
//! `cargo bench -p pitchline-tests --bench ride`.
//!
//! SciPy's is left out where no Python has it; `PITCHLINE_PYTHON` names one that does.

use std::env;
use std::fs;
use std::path::Path;
use std::process::Command;
use std::time::Instant;

use base64::Engine as _;
use base64::engine::general_purpose::STANDARD;
use pitchline_site::{Options, serve};
use pitchline_tests::browser::{Browser, Fault, Outcome, Size};
use pitchline_timed::{board, distance_band, hour, of_band, of_hour};
use serde_json::{Value, json};

const TIMES: usize = 100;
/// What the model's own figure of it is held against: SciPy at rtol 1e-9.
const FIXTURE: &str = include_str!("../fixture/ride/stop_and_go.csv");
const BOARD: &str = include_str!("../fixture/ride/board.csv");
const CELL: &str = include_str!("../fixture/cells/ocv_Chen2020_fine401.csv");

fn main() -> Outcome {
    let build = board();
    let ride = of_hour(&hour(&build));
    let native_ride = median((0..TIMES).map(|_| timed(|| hour(std::hint::black_box(&build)))));
    let band = of_band(&distance_band());
    let native_band = median((0..TIMES).map(|_| timed(distance_band)));

    let server = serve(Options::new(pitchline_tests::dist()))?;
    let page = Browser::open(Size::Desktop)?;
    page.goto(&server.url())?;
    page.wait_until("return document.documentElement.dataset.app === 'running'")?;
    let script = format!(
        "{}
         const bytes = Uint8Array.from(atob(arguments[0]), (letter) => letter.charCodeAt(0));
         const {{ ride, band }} = (await WebAssembly.instantiate(bytes)).instance.exports;
         const median = (run) => {{
             const times = Array.from({{ length: {TIMES} }}, () => {{
                 const start = performance.now();
                 run();
                 return performance.now() - start;
             }});
             return times.sort((one, other) => one - other)[{TIMES} >> 1];
         }};
         const script = () => hourOfStopAndGo(arguments[1], arguments[2]);
         return {{
             ride: [0, 1, 2].map(ride), band: [0, 1, 2].map(band), script: script(),
             ride_ms: median(() => ride(0)), band_ms: median(() => band(0)), script_ms: median(script),
         }};",
        include_str!("ride.js")
    );
    let found =
        page.eval(&script, &[STANDARD.encode(wasm()?).into(), BOARD.into(), CELL.into()])?;
    page.close().map(|_| ())?;
    same("the ride", &ride, &found["ride"])?;
    same("the band", &band, &found["band"])?;

    let figures = |[distance_m, charge, hottest_c]: [f64; 3]| json!({ "distance_m": distance_m, "charge": charge, "hottest_winding_c": hottest_c });
    let row = |of: &str| -> f64 {
        let row = FIXTURE.lines().find_map(|line| line.strip_prefix(&format!("{of},")));
        row.and_then(|value| value.parse().ok()).expect("the fixture has it")
    };
    let say = |of: &str, value: Value| println!("{}", json!({ of: value }));
    say("reference", figures(["distance_m", "charge", "hottest_winding_c"].map(row)));
    say("core", figures(ride));
    say("hour_ms", json!({ "native": native_ride, "wasm": found["ride_ms"] }));
    say("band_500_ms", json!({ "native": native_band, "wasm": found["band_ms"] }));
    say("javascript", figures(three(&found["script"])));
    say("javascript_ms", found["script_ms"].clone());
    match scipy() {
        Some(found) => say("scipy", found),
        None => println!("no Python with SciPy: its ride is left out"),
    }
    Ok(())
}

/// The crate of what is timed, as wasm with the page's profile.
fn wasm() -> Outcome<Vec<u8>> {
    let cargo = env::var_os("CARGO").unwrap_or_else(|| "cargo".into());
    let built = Command::new(cargo)
        .args(["build", "--quiet", "--package", "pitchline-timed", "--profile", "web"])
        .args(["--target", "wasm32-unknown-unknown", "--message-format", "json"])
        .output()?;
    let text = String::from_utf8_lossy(&built.stdout);
    let name = |line: &str| {
        let message: Value = serde_json::from_str(line).ok()?;
        let names = message["filenames"].as_array()?;
        names
            .iter()
            .filter_map(Value::as_str)
            .find(|name| name.ends_with(".wasm"))
            .map(String::from)
    };
    let name = text.lines().rev().find_map(name).ok_or_else(|| {
        Fault::new(format!("no wasm was built: {}", String::from_utf8_lossy(&built.stderr)))
    })?;
    Ok(fs::read(name)?)
}

/// The same answers in wasm as in native code, to 1e-9.
fn same(what: &str, native: &[f64; 3], wasm: &Value) -> Outcome {
    let close = |(one, other): (&f64, f64)| (one - other).abs() <= 1e-9 * one.abs();
    if native.iter().zip(three(wasm)).all(close) {
        return Ok(());
    }
    Err(Fault::new(format!("{what} is {native:?} native and {wasm} in wasm")))
}

fn three(value: &Value) -> [f64; 3] {
    std::array::from_fn(|n| value[n].as_f64().unwrap_or(f64::NAN))
}

/// The same hour by `tests/fit/ride.py`, without its start.
fn scipy() -> Option<Value> {
    let given = env::var("PITCHLINE_PYTHON").ok();
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("fit");
    let script = "
import json, sys, time
sys.path.insert(0, sys.argv[1])
import ride
start = time.perf_counter()
state, _ = ride.ride()
took = time.perf_counter() - start
print(json.dumps({
    'ms': took * 1e3,
    'distance_m': state[ride.X],
    'charge': state[ride.Z],
    'hottest_winding_c': ride.hottest,
}))";
    let run = |python: String| {
        let run = Command::new(python).args(["-c", script]).arg(&folder).output().ok()?;
        serde_json::from_slice(&run.stdout).ok()
    };
    given.into_iter().chain(["python3".into(), "python".into()]).find_map(run)
}

fn timed<T>(run: impl FnOnce() -> T) -> f64 {
    let start = Instant::now();
    std::hint::black_box(run());
    start.elapsed().as_secs_f64() * 1e3
}

fn median(times: impl Iterator<Item = f64>) -> f64 {
    let mut times: Vec<f64> = times.collect();
    times.sort_by(f64::total_cmp);
    times[times.len() / 2]
}
