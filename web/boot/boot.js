// Starts the calculator. The two links it reads carry the names the build gave to the module and
// its wasm; no script stands in the page itself, so that its content policy can forbid them.
//
// Afterwards `<html data-app>` says how it went, for scripts that come later: `running` or
// `broken`. The same moment is announced on `window` as `pitchline:started` or `pitchline:panic`.
//
// The build has cut the wasm in two. The calculator asks for the later piece, which works on the
// first one's memory and functions, by `pitchline:later-wanted`, and again if it did not arrive.
// `<html data-later>` says how it stands: `loading`, `ready` or `failed`; `pitchline:later` is
// announced at each change.

const root = document.documentElement;
const wasm = document.getElementById('app-wasm').href;
let first;

function announce(name, detail) {
  window.dispatchEvent(new CustomEvent(name, { detail }));
}

async function start() {
  root.dataset.app = 'starting';
  try {
    const module = await import(document.getElementById('app-module').href);
    first = module.default({ module_or_path: wasm });
    await first;
  } catch (error) {
    // A panic has told its own story by now. A trap without one is as final. Anything else means
    // that a file did not arrive, or that this browser cannot run it.
    if (root.dataset.app === 'broken') return;
    const trapped = error instanceof WebAssembly.RuntimeError;
    announce(trapped ? 'pitchline:panic' : 'pitchline:not-loaded', String(error));
    return;
  }
  if (root.dataset.app !== 'broken') {
    root.dataset.app = 'running';
    announce('pitchline:started');
  }
}

function laterIs(state) {
  root.dataset.later = state;
  announce('pitchline:later');
}

async function later() {
  if (root.dataset.later && root.dataset.later !== 'failed') return;
  laterIs('loading');
  let state = 'ready';
  try {
    const answer = await fetch(wasm.replace('_bg.wasm', '_later.wasm'));
    // Putting it in its place runs nothing of it.
    await WebAssembly.instantiate(await answer.arrayBuffer(), { p: await first });
  } catch {
    // No network, not found after an update, or not a piece of this build.
    state = 'failed';
  }
  laterIs(state);
}

window.addEventListener('pitchline:later-wanted', later);
start();
