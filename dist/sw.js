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
const BUILD = {
  "files": {
    "./": "ffb710ba597525a8dd280da3441148cb725c7d0fa8a3ce830a23b56fce0952ff",
    "apple-touch-icon.png": "21f099fbf6befd3c930b9517807e0f4e7b1dd275098eb3107c7291f4cc6dc7ef",
    "boot-13f9b9d295c54d26.js": "ac403ca66f0bc9534f6777af2391376daef0b9e77e507de40cc88d26f5a1686c",
    "build.schema.json": "13cff7cacf7afe19f32ab1603d309efb6369fbd91087f084d36b6aaf21ebc336",
    "catalogue.schema.json": "b1481119b2e25c8ab1e36eb7332c355c703463c0281ae435c96d5a35ade5ff26",
    "chart-c16f6bf23bbe615c.css": "c3d6b8608b0e69d11b432d478881d4e9b691b26271e391a81ec04c1a02641dde",
    "demo.json": "0013352a1bfa51fdf7c048bdf786de627aa0fc0d64439330007e51bd1b1e1ac4",
    "drawing-3545b7da2fc01867.css": "54f3b25092f504846ac58dde9eee6377726d8e519277ca05932f28a65d9b3c27",
    "icon-192.png": "517029f3cc379518f366bb9b2f5e0c7ccd4d2a39e07875dd8880b324426c4908",
    "icon-512.png": "58adae9d2cd0b1c9ee8c6ce81e1f41fc91fa5ae58998927f14fa4ff2dc5a4f35",
    "icon-maskable-512.png": "7e4f118d7f2ef230df83520f1e0d4b1ab82801c285d2fee16c16b2854ca08442",
    "icon.svg": "3ad63a8e8466f27f712ac18499faa7e1a0c228115cba520fe2de9a5262690432",
    "main-c95a19553fa0d7a4.css": "d4e39a0f741ed7895198da42a2900b64f34a4713c635ecb8416b86cbea7d3a9d",
    "manifest.webmanifest": "8c4400fad208774242fd87db1ea49958452f24a44cb7abb3b95c6b0e50918621",
    "offline-87b351406b24d6b9.js": "b7bcc0c7d41f24afe9137375da18eff235e2dcb7f86b80ced9828741afff0db1",
    "parts-90eca3e3a831cfcf.css": "f5290b49a24317f7d5dfb714deea074681a40386ab224a7199be747cb273ca72",
    "pitchline-web-ccd20292cdf0c6b1.js": "296ea75642355796a6a3799aeaa5e7501bb27d2e70dd2859f0cafd156a5b164e",
    "pitchline-web-ccd20292cdf0c6b1_bg.wasm": "d16743acea6a52486d8f4cec78f212df43c97210162ba3fafe021692314e4ded",
    "pitchline.js": "26372d9d464dad5c268be9c6c95c102744a644e5c9e0be4edd2e71bdf197d021",
    "recovery-cfd6f67de6f44f8c.js": "2b743839dd7a597c54fe4f70fbc0ffbbbe8667e5b5c6f95fd140fb509e8f9047",
    "recovery-f970be19a5a93239.css": "899a5ba6fbfd88c351e6ca95877d6eee799028621bdfdfe77c56de725f70e463",
    "ride-69f0c253e40e7d7c.css": "4bf5d3c51a7a7d63365bf1272f4533ad1f896344b6dfe2b956aff223ee52d21b",
    "tokens-47815a99ef28ae22.css": "f4893b43eff9c418ddcfb8acb77e98c122f9e2523ca98a2020f7393944937f11"
  },
  "version": "ec46a74ab0307081"
};

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
    throw new Error(`${name} did not arrive.`);
  });
  // A redirect would be refused by the browser when it is later given for a page.
  if (response.redirected || response.type !== 'basic') throw new Error(`The host sends another file for ${name}.`);
  if (response.status !== 200) throw new Error(`${name}: the host answered ${response.status}.`);
  const body = await response.arrayBuffer();
  awaited.delete(url);
  if ((await sha256(body)) !== FILES.get(url)) {
    throw new Error(`${name} is not the file that was built: the host, or something on the way, changed it.`);
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
  const old = names.filter((name) => name.startsWith(OWN) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

async function answerCheck(port) {
  const why = await complete().then(() => '', (error) => error.message);
  port?.postMessage({ complete: !why, why, version: BUILD.version });
}
