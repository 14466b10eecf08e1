// Starts the calculator. The two links it reads carry the names the build gave to the module and
// its wasm; no script stands in the page itself, so that its content policy can forbid them.
//
// Afterwards `<html data-app>` says how it went, for scripts that come later: `running` or
// `broken`. The same moment is announced on `window` as `pitchline:started` or `pitchline:panic`.

const root = document.documentElement;
const wasm = document.getElementById('app-wasm').href;

function announce(name, detail) {
  window.dispatchEvent(new CustomEvent(name, { detail }));
}

async function start() {
  root.dataset.app = 'starting';
  try {
    const module = await import(document.getElementById('app-module').href);
    await module.default({ module_or_path: wasm });
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

start();
