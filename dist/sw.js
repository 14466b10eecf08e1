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
    "./": "5257bb4abe909e1b4afb11a78efd0cc628d6d331c6743f96c01396d6889a09d9",
    "apple-touch-icon.png": "21f099fbf6befd3c930b9517807e0f4e7b1dd275098eb3107c7291f4cc6dc7ef",
    "boot-e659dde76cb637ef.js": "05a811d118e0a446bd4051cff88373cd85c57afca7f41cdee47cb110857d2433",
    "build.schema.json": "7b36fe7c7ad5af5f99eb83d5de34752a0ceef14c9a228d44c76b5c781886d968",
    "catalogue.schema.json": "d99b59cdb6955b91928ea0c0fff2f176cca954e48ac55c20f85dda838d9d4e59",
    "chart-eebded3e26f9a9c.css": "5cd9acb0702a494f583a731dbbb942280635e60934efe1afbed123399a219f49",
    "dark-cd7ef7c12daa175f.css": "9fc076b9d5efb915928edbeaaab02a65746bfc01c8a21c657e22ffa84994632b",
    "demo.json": "e51caca5bf21d731e626b1077f2c92c6e046893b225d04ff8bf5ff58a9dc0f93",
    "drawing-fda3c2cfc1873e6.css": "ef86d2aea51854a78db48c22fb6974ba46ab7571e020590ceb61b33c3dda65ab",
    "icon-192.png": "517029f3cc379518f366bb9b2f5e0c7ccd4d2a39e07875dd8880b324426c4908",
    "icon-512.png": "58adae9d2cd0b1c9ee8c6ce81e1f41fc91fa5ae58998927f14fa4ff2dc5a4f35",
    "icon-maskable-512.png": "7e4f118d7f2ef230df83520f1e0d4b1ab82801c285d2fee16c16b2854ca08442",
    "icon.svg": "3ad63a8e8466f27f712ac18499faa7e1a0c228115cba520fe2de9a5262690432",
    "main-566f4d3089746c72.css": "e5402319fe869745e09ba12a3a9cdf641d05f064e6b3f8c27b38b496eabaa8b2",
    "manifest.webmanifest": "8c4400fad208774242fd87db1ea49958452f24a44cb7abb3b95c6b0e50918621",
    "offline-d255ed7a36b0ce34.js": "117711aa4470649bf09e940cca41a15b5a4089ed344a6b41f8e26e3ab9dcc328",
    "parts-2e9225199e0feedb.css": "6ab469dd671966db6940a2beea81bd9032bed4a13fce49ae2042f10b535a7053",
    "pitchline-web-a1268bd638b78404.js": "49ccd775a438a0bded762f9ef08b7b4396030670c246be74838a2c45aae02ddf",
    "pitchline-web-a1268bd638b78404_bg.wasm": "43e0b91cdddeca4ec3715264b0924e35ae4ae0512fd76fb02e3f3f7020eede22",
    "recovery-890d58c80bf02f93.js": "a71f3e0a7faddfe8691b9bd77a59c261e26956e034fbf7a08a00bceab67be90f",
    "recovery-f970be19a5a93239.css": "899a5ba6fbfd88c351e6ca95877d6eee799028621bdfdfe77c56de725f70e463",
    "ride-f2340d79833507d2.css": "d2367dd9491b1866aeac116fec5141138506ee8ddcbe405a724381fc7c466903",
    "tokens-20a4619fa9ec4e26.css": "4d519001121a63e9b56723bd6c9fb299b11cf3fd87065a61e0204352446b4741"
  },
  "version": "0779e3df2c56c896"
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
