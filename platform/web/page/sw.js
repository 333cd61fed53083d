// Keeps every file of this version on the device, so that no network is needed after the first visit.
// The list and its name, which is made of the files' own bytes, are put in when the page is built. A
// new version is fetched whole beside the old one, and takes over only when the page says so.

const name = 'wrapwright-@version@';
const files = [@files@];

self.addEventListener('install', event => event.waitUntil(
  caches.open(name).then(cache => cache.addAll(files.map(file => new Request(file, { cache: 'reload' }))))));

self.addEventListener('activate', event => event.waitUntil(caches.keys()
  .then(all => Promise.all(all.filter(n => n.startsWith('wrapwright-') && n !== name).map(n => caches.delete(n))))
  .then(() => self.clients.claim())));

self.addEventListener('message', event => { if (event.data === 'take over') self.skipWaiting(); });

self.addEventListener('fetch', event => {
  if (event.request.method !== 'GET' || new URL(event.request.url).origin !== location.origin) return;
  event.respondWith(caches.open(name)
    .then(cache => cache.match(event.request, { ignoreSearch: true }))
    .then(found => found || fetch(event.request)));
});
