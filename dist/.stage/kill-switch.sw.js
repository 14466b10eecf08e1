// The way back for whoever hosts this folder, when a build must leave browsers at once: copy this
// file over sw.js on the host. Each browser then drops what it kept of this folder, and loads the
// page from the network, at its next visit. Nothing that belongs to other folders is touched, and
// set-ups that people saved stay.
const OWN = `pitchline:${new URL(self.registration.scope).pathname}:`;

self.addEventListener('install', () => self.skipWaiting());

self.addEventListener('activate', (event) => {
  event.waitUntil(leave());
});

async function leave() {
  for (const name of await caches.keys()) {
    if (name.startsWith(OWN)) await caches.delete(name);
  }
  await self.registration.unregister();
}
