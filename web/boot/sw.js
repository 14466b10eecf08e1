// Pitchline's service worker: keeps one whole build for use without a network.
//
// Rules, each for a reason:
// - A build is kept whole or not at all, and each file is checked by its SHA-256: a host's cache
//   may still hand out files of the build before, and a mix of two builds does not run.
// - A new build waits until the user lets it take over; only then may the old one go.
// - An origin may be shared with other sites and with other copies of this one: every cache is
//   named after the folder, and no other cache is read or deleted.
// - Only the listed addresses are answered. Everything else goes to the network untouched.

// Filled in by `cargo site build`: addresses relative to the page, with their SHA-256.
const BUILD = { version: 'unbuilt', files: {} };

const SCOPE = self.registration.scope;
const OWN = `pitchline:${new URL(SCOPE).pathname}:`;
const CACHE = OWN + BUILD.version;
// The catalogue may be edited on the host at any time, so it lives outside the builds.
const KEPT = `${OWN}catalogue`;
const CATALOGUE = new URL('catalogue.json', SCOPE).href;
const CATALOGUE_PATIENCE_MS = 3000;
const FILES = new Map(Object.entries(BUILD.files).map(([path, digest]) => [new URL(path, SCOPE).href, digest]));

self.addEventListener('install', (event) => {
  event.waitUntil(Promise.all([complete(), freshCatalogue().catch(allowBrokenCatalogue)]));
});

self.addEventListener('activate', (event) => {
  event.waitUntil(Promise.all([dropOldBuilds(), self.clients.claim()]));
});

self.addEventListener('message', (event) => {
  if (event.data === 'SKIP_WAITING') self.skipWaiting();
  if (event.data === 'CHECK') event.waitUntil(answerCheck(event.ports[0]));
  if (event.data === 'LEAVE') event.waitUntil(leave(event.ports[0]));
});

self.addEventListener('fetch', (event) => {
  const { request } = event;
  if (left || request.method !== 'GET' || !request.url.startsWith(SCOPE)) return;
  const url = new URL(request.url);
  url.hash = '';
  // Listed by its folder, see below.
  url.pathname = url.pathname.replace(/\/index\.html$/, '/');
  if (request.mode === 'navigate' && url.href.split('?')[0] === SCOPE) {
    // The way out of a broken build must not lead through it.
    if (url.searchParams.has('no-sw')) return;
    url.search = '';
  }
  if (url.href === CATALOGUE) event.respondWith(catalogue(event));
  else if (FILES.has(url.href)) event.respondWith(kept(url.href, request));
});

// Fetches what is not kept yet. Nothing is stored until all of it has arrived and is right.
async function complete() {
  const cache = await caches.open(CACHE);
  const present = new Set((await cache.keys()).map((request) => request.url));
  const missing = [...FILES.keys()].filter((url) => !present.has(url));
  const fetched = await Promise.all(missing.map(download));
  await Promise.all(missing.map((url, index) => cache.put(url, fetched[index])));
}

async function download(url) {
  const response = await fetch(url, { cache: 'reload' });
  refuseUnlessPlain(response);
  const body = await response.arrayBuffer();
  if ((await sha256(body)) !== FILES.get(url)) throw new Error(`${url} is not the file of this build`);
  return rebuilt(response, body);
}

// A redirect would be refused by the browser when it is later given for a page.
function refuseUnlessPlain(response) {
  if (response.status !== 200 || response.type !== 'basic' || response.redirected) {
    throw new Error(`${response.url}: ${response.status} ${response.type} ${response.redirected ? 'redirected' : ''}`);
  }
}

// The body is unpacked by now. All other headers stay: a host may have set rules with them.
function rebuilt(response, body) {
  const headers = new Headers(response.headers);
  headers.delete('content-encoding');
  headers.delete('content-length');
  return new Response(body, { headers });
}

async function sha256(body) {
  const digest = new Uint8Array(await crypto.subtle.digest('SHA-256', body));
  return Array.from(digest, (byte) => byte.toString(16).padStart(2, '0')).join('');
}

async function kept(url, request) {
  try {
    const cache = await caches.open(CACHE);
    const response = await cache.match(url);
    if (response) return response;
  } catch {
    // Storage may fail as a whole; the network is as good.
  }
  return fetch(request);
}

// The network's copy if it comes in time, else the last good one, else whatever comes.
async function catalogue(event) {
  const fresh = freshCatalogue();
  // One that comes late is still good for the next time.
  event.waitUntil(fresh.catch(() => {}));
  const late = new Promise((resolve) => setTimeout(resolve, CATALOGUE_PATIENCE_MS));
  const inTime = await Promise.race([fresh.catch(() => undefined), late]);
  return inTime ?? (await lastCatalogue()) ?? fetch(event.request);
}

async function freshCatalogue() {
  const response = await fetch(CATALOGUE, { cache: 'no-cache' });
  refuseUnlessPlain(response);
  const text = await response.text();
  JSON.parse(text); // A slip while editing must not replace the last good copy.
  try {
    const cache = await caches.open(KEPT);
    await cache.put(CATALOGUE, rebuilt(response, text));
    // It came while the caches were being taken away.
    if (left) await caches.delete(KEPT);
  } catch {
    // Without room to keep it, it can still be shown.
  }
  return rebuilt(response, text);
}

// The page explains a broken catalogue and falls back to its own; it is no reason to do without
// the rest. One that did not arrive is.
function allowBrokenCatalogue(error) {
  if (!(error instanceof SyntaxError)) throw error;
}

async function lastCatalogue() {
  try {
    const cache = await caches.open(KEPT);
    const response = await cache.match(CATALOGUE);
    if (!response) return undefined;
    const marked = rebuilt(response, await response.text());
    marked.headers.set('x-pitchline-kept', 'yes');
    return marked;
  } catch {
    return undefined;
  }
}

// The page wants no worker any more: nothing is answered or kept from here on.
let left = false;

async function leave(port) {
  left = true;
  const names = (await caches.keys()).filter((name) => name.startsWith(OWN));
  await Promise.all(names.map((name) => caches.delete(name)));
  port?.postMessage('left');
}

async function dropOldBuilds() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(OWN) && name !== CACHE && name !== KEPT);
  await Promise.all(old.map((name) => caches.delete(name)));
}

async function answerCheck(port) {
  const done = await complete().then(() => true, () => false);
  port?.postMessage({ complete: done, version: BUILD.version });
}
