// The page's side of offline use: registers the service worker, says how it stands, and changes
// to a new build when the user asks for it. Without a service worker all of this does nothing.
//
// Told on `window`, and readable at any time on `<html>`:
//   data-offline   off | installing | slow | failed | ready | incomplete
//   data-offline-why   what is awaited or went wrong, in a sentence for the reader
//   data-version   the build that is ready offline
//   data-update    waiting, when a newer build is ready to take over
//   pitchline:offline-told     one of the two above changed
//   pitchline:offline-ready    once, when everything is kept; detail.version
//   pitchline:update-waiting   a newer build waits; may come again for a still newer one
//   pitchline:before-reload    the last moment to save
// Listened to:
//   pitchline:update-now       let the waiting build take over and reload, in all tabs

const root = document.documentElement;
// Next to this file, wherever the folder was put.
const SCOPE = new URL('./', import.meta.url);
const WORKER = new URL('sw.js', SCOPE);
const OWN_CACHES = `pitchline:${SCOPE.pathname}:`;

// Nobody is left to wonder for longer; what comes later still counts.
const PATIENCE_MS = 10000;

function announce(name, detail) {
  window.dispatchEvent(new CustomEvent(name, { detail }));
}

function tell(state, why = '') {
  root.dataset.offline = state;
  root.dataset.offlineWhy = why;
  announce('pitchline:offline-told');
}

tell('off');

// Embedded pages without an origin of their own may not even look.
function container() {
  try {
    return navigator.serviceWorker;
  } catch {
    return undefined;
  }
}

const workers = container();
let registration;
let started = false;
let asked = false;
let reloading = false;

function reload() {
  if (reloading) return;
  reloading = true;
  announce('pitchline:before-reload');
  location.reload();
}

// The worker counts its files, and fetches again what the browser may have thrown away.
function check(worker) {
  const { port1, port2 } = new MessageChannel();
  port1.onmessage = ({ data }) => {
    port1.close();
    if (!data.complete) {
      tell('incomplete', data.why);
      return;
    }
    root.dataset.version = data.version;
    tell('ready');
    announce('pitchline:offline-ready', { version: data.version });
  };
  worker.postMessage('CHECK', [port2]);
}

function updateWaiting() {
  root.dataset.update = 'waiting';
  announce('pitchline:update-waiting');
}

function follow() {
  if (registration.waiting && registration.active) updateWaiting();
  const watch = () => {
    const worker = registration.installing;
    worker?.addEventListener('statechange', () => {
      if (worker.state === 'installed' && registration.active) updateWaiting();
      // Why it failed, the worker has told if it could.
      if (worker.state === 'redundant' && !registration.active && root.dataset.offline !== 'failed') {
        tell('failed', "The page's files couldn't be stored.");
      }
    });
  };
  watch();
  registration.addEventListener('updatefound', watch);
  document.addEventListener('visibilitychange', () => {
    if (document.visibilityState === 'visible') registration.update().catch(() => {});
  });
}

function takeOver() {
  if (registration?.waiting) registration.waiting.postMessage('SKIP_WAITING');
  else if (registration) reload();
}

// Heard from the first moment on; a wish that comes before the worker is known waits for it.
window.addEventListener('pitchline:update-now', () => {
  asked = true;
  takeOver();
});

// A page that had no worker gets its first one by surprise; only a change is a reason to reload.
let controlled = Boolean(workers?.controller);
workers?.addEventListener('controllerchange', () => {
  if (controlled || asked) reload();
  controlled = true;
});

// `?no-sw` is the way out of a broken worker: the worker lets that address through to the
// network, and the page takes worker and caches away. Only our own: other sites may live on the
// same origin.
async function leave() {
  const known = await workers.getRegistration(SCOPE);
  if (known?.scope === SCOPE.href) {
    // It may be keeping files at this very moment, so it is told first.
    const told = new Promise((done) => {
      const { port1, port2 } = new MessageChannel();
      port1.onmessage = done;
      known.active?.postMessage('LEAVE', [port2]);
      setTimeout(done, 3000);
    });
    await told;
    await known.unregister();
  }
  for (const name of await caches.keys()) {
    if (name.startsWith(OWN_CACHES)) await caches.delete(name);
  }
}

// From a worker that installs. One for a newer build takes nothing from the copy that is there.
workers?.addEventListener('message', ({ data }) => {
  if (workers.controller || registration?.active) return;
  if (['slow', 'failed'].includes(data?.state)) tell(data.state, data.why);
});

async function start() {
  if (started) return;
  started = true;
  if (!workers) {
    if (!window.isSecureContext) tell('off', 'Offline use needs https.');
    return;
  }
  try {
    if (new URLSearchParams(location.search).has('no-sw')) {
      await leave();
      return;
    }
    tell('installing');
    setTimeout(() => {
      if (root.dataset.offline === 'installing') {
        tell('slow', registration ? "Some of the page's files haven't arrived." : 'Still waiting for sw.js.');
      }
    }, PATIENCE_MS);
    registration = await workers.register(WORKER, { scope: SCOPE, updateViaCache: 'none' });
    follow();
    if (asked) takeOver();
    check((await workers.ready).active);
  } catch (error) {
    // Private windows, switched-off storage, no sw.js: everything works, only not offline.
    tell('failed', `The browser says: ${error.message}`);
  }
}

// After the first rendering, so that the worker's downloads do not delay it. A page that broke
// needs it too: a repaired build comes by this way.
if (root.dataset.app === 'running' || root.dataset.app === 'broken') start();
for (const name of ['pitchline:started', 'pitchline:panic', 'pitchline:not-loaded']) {
  window.addEventListener(name, start);
}
