// Starts the calculator. The two `<meta>` it reads carry the names the build gave to the module and
// its wasm; no script stands in the page itself, so that its content policy can forbid them.
//
// `<html>` says how it went, for scripts that come later:
//   data-app      starting | running | broken
//   data-awaits   program | catalogue, until it runs
//   data-theme    light | dark, where the reader chose; `pitchline:theme` tells of another choice
// The calculator itself sends `pitchline:started` on `window` once its page stands; here
// `pitchline:panic` (detail: the message) and `pitchline:not-loaded` (detail: kind, message) are sent.

const root = document.documentElement;

// What the device's theme decides follows the reader's choice where there is one.
const themed = [...document.querySelectorAll('[media^="(prefers-color-scheme"]')].map((e) => [e, e.media]);
function showTheme() {
  const { theme } = root.dataset;
  const chosen = theme === 'light' || theme === 'dark';
  for (const [e, media] of themed) e.media = !chosen ? media : media.includes(theme) ? 'all' : 'not all';
}
try {
  root.dataset.theme = localStorage.getItem(`pitchline:${new URL('.', location).pathname}:theme`) ?? '';
} catch {
  // A frame without an origin has no store.
}
showTheme();
window.addEventListener('pitchline:theme', showTheme);

function announce(name, detail) {
  window.dispatchEvent(new CustomEvent(name, { detail }));
}

// A panic has told its own story by now; a trap without one is as final. A program that cannot be
// compiled is damaged, or newer than this browser. Anything else means that a file did not arrive.
function tell(error) {
  if (root.dataset.app === 'broken') return;
  const message = String(error);
  if (error instanceof WebAssembly.RuntimeError) announce('pitchline:panic', message);
  else announce('pitchline:not-loaded', { kind: error instanceof WebAssembly.CompileError ? 'program' : 'load', message });
}

// The shell is in sight before the program is asked for, which would be in its way on a slow line.
// A page in the background has no frames and waits for none.
function painted() {
  return new Promise((go) => {
    requestAnimationFrame(() => setTimeout(go));
    setTimeout(go, 250);
  });
}

const addressOf = (name) => new URL(document.querySelector(`meta[name="${name}"]`).content, document.baseURI);

async function start() {
  root.dataset.app = 'starting';
  root.dataset.awaits = 'program';
  if (typeof WebAssembly !== 'object') {
    announce('pitchline:not-loaded', { kind: 'wasm', message: 'there is no WebAssembly' });
    return;
  }
  try {
    await painted();
    // Both at once: the module is small and would only delay its wasm.
    const files = Promise.all([import(addressOf('app-module')), fetch(addressOf('app-wasm'))]);
    // The first number that a browser writes by the reader's language is slow: here nobody waits for it.
    (1.5).toLocaleString('default');
    const [module, wasm] = await files;
    await module.default({ module_or_path: wasm });
    if (root.dataset.app === 'starting') root.dataset.awaits = 'catalogue';
  } catch (error) {
    tell(error);
  }
}

window.addEventListener('pitchline:started', () => {
  if (root.dataset.app !== 'broken') root.dataset.app = 'running';
  delete root.dataset.awaits;
});
start();
