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
const BUILD = {
  "files": {
    "./": "adcf7decd94a873d1861b63f45b950bcee6d3539ce10c52819aa7ae78bb2d0e8",
    "apple-touch-icon.png": "21f099fbf6befd3c930b9517807e0f4e7b1dd275098eb3107c7291f4cc6dc7ef",
    "boot-f9b4fed32afd4d1e.js": "f63d0b2c1fe40a2e2adf023b4ebd90fd8520f7507b2913ac06f839999151a1b6",
    "build.schema.json": "5f09b4191a78ce42908de10d1ab2de9f79ad9eeabac8e521b56fad7ebfc8631a",
    "catalogue.schema.json": "f8412740bf5eeac18e7ff65f79f9459df01f7df17b4d72cb876181bbb8f0a25a",
    "chart-77a66d5d302da9df.css": "67c66fbecbbf22e76b018b589d502626f0bb2c2d646ba17a00c3eecec52fa438",
    "contents-cfaa597d59704b2.css": "f94cadb7e8ccd647c7baf95472806921cb08aba7600532b684f4451c779924f1",
    "demo.json": "0013352a1bfa51fdf7c048bdf786de627aa0fc0d64439330007e51bd1b1e1ac4",
    "drawing-9bd5a7cc586dbf67.css": "5fa150bbbf9dac38caab4d83e5d268937d51aa05190773581131902d55c01975",
    "icon-192.png": "517029f3cc379518f366bb9b2f5e0c7ccd4d2a39e07875dd8880b324426c4908",
    "icon-512.png": "58adae9d2cd0b1c9ee8c6ce81e1f41fc91fa5ae58998927f14fa4ff2dc5a4f35",
    "icon-maskable-512.png": "7e4f118d7f2ef230df83520f1e0d4b1ab82801c285d2fee16c16b2854ca08442",
    "icon.svg": "3ad63a8e8466f27f712ac18499faa7e1a0c228115cba520fe2de9a5262690432",
    "main-d0527fff2c0556aa.css": "d3c9455995d62ca516bf8c027118c2535ee1ac4900d16a6bd6ff7a0e3a1abda1",
    "manifest.webmanifest": "8c4400fad208774242fd87db1ea49958452f24a44cb7abb3b95c6b0e50918621",
    "offline-143b252c611a116a.js": "b99df37aa3d7e484309dfa27bf85932d59427d648d3fb08d1eb670ecfed2d5d6",
    "parts-d9e24a25eff66022.css": "72560e0601dfdd83e0ad843b8d52b1581662cef048f594483d58c8009f34064b",
    "pitchline-web-f1532a9063318a80.js": "c4e1ffa9b835d652907adffa8c383f02ecaf8c4f0cfbed0be066a37265f94865",
    "pitchline-web-f1532a9063318a80_bg.wasm": "bc7a9ca000a8d95069e2e5f921c6a8cefb1b8aa26897ce0bc507f209722e3c0b",
    "pitchline-web-f1532a9063318a80_later.wasm": "09e663af35a82edb5ef56aa62ece29cfba18f98f35b6fbdeb9abfa10b078d87b",
    "pitchline.js": "6b923ad8e8e848d7bac38ef89b831976ddddc2ebfbd16d185675f298d34e53c7",
    "recovery-91a18a609f019e7e.css": "1c80474ab9ea9d5feb40d8698f2727010cd49a21923415557906ac114df9901a",
    "recovery-c2deb56f5a9e6566.js": "7afc2fb07154b82d5aa0c3ef75ffb2acdfcf0b6835de8ea3a7a2422c8ced2c25",
    "ride-53285a7d03ea4213.css": "da086cb4d3f2df2ac5b273b2c12ff9b57d8b9e4617a25d02bc1b07e0c00ff431",
    "tokens-f422c40130524836.css": "7d6006b5ec3ced68351b9c484cf3a4a6cbae8f76ff6baa6c419d9aa96e8e0d02"
  },
  "version": "c3e21c148b1755c7"
};

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
