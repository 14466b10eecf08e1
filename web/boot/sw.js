// Pitchline's service worker: keeps one whole build for use without a network.
//
// Rules, each for a reason:
// - A build is kept whole or not at all, and each file is checked by its SHA-256: a host's cache
//   may still hand out files of the build before, and a mix of two builds does not run.
// - A new build waits until the user lets it take over; only then may the old one go.
// - An origin may be shared with other sites and with other copies of this one: every cache is
//   named after the folder, and no other cache is read or deleted.
// - Only the listed addresses are answered. Everything else goes to the network untouched, the
//   catalogue too: the page keeps the last one that it could use.

// Filled in by `cargo site build`: addresses relative to the page, with their SHA-256.
const BUILD = { version: 'unbuilt', files: {} };

const SCOPE = self.registration.scope;
const OWN = `pitchline:${new URL(SCOPE).pathname}:`;
const CACHE = OWN + BUILD.version;
// After so long the page is told what an installation waits for.
const SLOW_AFTER_MS = 8000;
const FILES = new Map(Object.entries(BUILD.files).map(([path, digest]) => [new URL(path, SCOPE).href, digest]));

self.addEventListener('install', (event) => {
  event.waitUntil(install());
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
  if (FILES.has(url.href)) event.respondWith(kept(url.href, request));
});

// A page sees whether this works, but not why it does not: it is told.
async function install() {
  const slow = setTimeout(() => tell('slow', `Still waiting for ${nameOf([...awaited][0] ?? SCOPE)}.`), SLOW_AFTER_MS);
  try {
    await complete();
  } catch (error) {
    await tell('failed', error.message);
    throw error;
  } finally {
    clearTimeout(slow);
  }
}

async function tell(state, why) {
  const pages = await self.clients.matchAll({ includeUncontrolled: true, type: 'window' });
  for (const page of pages.filter(({ url }) => url.startsWith(SCOPE))) page.postMessage({ state, why });
}

// Files that have been asked for and not arrived.
const awaited = new Set();

// Fetches what is not kept yet. Nothing is stored until all of it has arrived and is right.
async function complete() {
  const cache = await caches.open(CACHE);
  const present = new Set((await cache.keys()).map((request) => request.url));
  const missing = [...FILES.keys()].filter((url) => !present.has(url));
  const fetched = await Promise.all(missing.map(download));
  await Promise.all(missing.map((url, index) => cache.put(url, fetched[index])));
}

// What goes wrong is said in sentences for the reader.
async function download(url) {
  const name = nameOf(url);
  awaited.add(url);
  const response = await fetch(url, { cache: 'reload' }).catch(() => {
    throw new Error(`${name} didn't arrive.`);
  });
  // A redirect would be refused by the browser when it is later given for a page.
  if (response.redirected || response.type !== 'basic') throw new Error(`The host sent a different file for ${name}.`);
  if (response.status !== 200) throw new Error(`${name}: the host responded with ${response.status}.`);
  const body = await response.arrayBuffer();
  awaited.delete(url);
  if ((await sha256(body)) !== FILES.get(url)) {
    throw new Error(`${name} isn't the file that was built: the host, or something on the way, changed it.`);
  }
  return rebuilt(response, body);
}

function nameOf(url) {
  return url.slice(SCOPE.length) || 'index.html';
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

// A page wants no worker any more: nothing is answered or kept from here on.
let left = false;

async function leave(port) {
  left = true;
  const names = (await caches.keys()).filter((name) => name.startsWith(OWN));
  await Promise.all(names.map((name) => caches.delete(name)));
  port?.postMessage('left');
}

async function dropOldBuilds() {
  const names = await caches.keys();
  const old = names.filter((name) => name.startsWith(OWN) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

// Whoever asks wants the worker, again where a page that was leaving went away half-way.
async function answerCheck(port) {
  left = false;
  const why = await complete().then(() => '', (error) => error.message);
  port?.postMessage({ complete: !why, why, version: BUILD.version });
}
