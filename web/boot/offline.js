// The page's side of offline use: registers the service worker, says how it stands, and changes
// to a new build when the user asks for it. Without a service worker all of this does nothing.
//
// Told on `window`, and readable at any time on `<html>`:
//   data-offline   off | installing | ready | incomplete
//   data-version   the build that is ready offline
//   data-update    waiting, when a newer build is ready to take over
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

root.dataset.offline = 'off';

function announce(name, detail) {
  window.dispatchEvent(new CustomEvent(name, { detail }));
}

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
      root.dataset.offline = 'incomplete';
      return;
    }
    root.dataset.offline = 'ready';
    root.dataset.version = data.version;
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
      if (worker.state === 'redundant' && !registration.active) root.dataset.offline = 'off';
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
    // It may be keeping the catalogue at this very moment, so it is told first.
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

async function start() {
  if (started || !workers) return;
  started = true;
  try {
    if (new URLSearchParams(location.search).has('no-sw')) {
      await leave();
      return;
    }
    registration = await workers.register(WORKER, { scope: SCOPE, updateViaCache: 'none' });
    root.dataset.offline = 'installing';
    follow();
    if (asked) takeOver();
    check((await workers.ready).active);
  } catch {
    // Plain http, private windows, switched-off storage: everything works, only not offline.
  }
}

// After the first rendering, so that the worker's downloads do not delay it. A page that broke
// needs it too: a repaired build comes by this way.
if (root.dataset.app === 'running' || root.dataset.app === 'broken') start();
for (const name of ['pitchline:started', 'pitchline:panic', 'pitchline:not-loaded']) {
  window.addEventListener(name, start);
}
