// Keeps every file of this version on the device, so that no network is needed after the first visit.
// The list and its name, which is made of the files' own bytes, are put in when the page is built. A
// new version is fetched whole beside the old one, and takes over only when the page says so. The page
// may be an older one than this worker, so what they say to each other stays 'take over' and 'newer'.

const name = 'wrapwright-@version@';
const files = [@files@];

// The version that the page is given. It is kept beside the versions and changed by 'take over' alone,
// because a browser that was killed starts a waiting worker by itself.
const current = async () => (await (await caches.open('wrapwright')).match('version'))?.text();
const makeCurrent = async () => (await caches.open('wrapwright')).put('version', new Response(name));

async function fill() {
  try {
    await (await caches.open(name)).addAll(files.map(file => new Request(file, { cache: 'reload' })));
  } catch (error) {
    await caches.delete(name); // a part of it is no use
    throw error;
  }
}

/// Lets go of every version but this one and the one that the page is given.
async function tidy() {
  const wanted = [name, await current()];
  const all = await caches.keys();
  await Promise.all(all.filter(n => n.startsWith('wrapwright-') && !wanted.includes(n)).map(n => caches.delete(n)));
}

async function takeOver() {
  const had = await current() === name;
  if (!await caches.has(name)) await fill(); // another version's tidy() came in between
  await makeCurrent();
  await self.skipWaiting();
  await tidy();
  if (had) return;
  for (const page of await self.clients.matchAll({ includeUncontrolled: true, type: 'window' })) page.postMessage('newer');
}

self.addEventListener('install', event => event.waitUntil(fill()
  .then(current).then(version => version ?? makeCurrent())));

self.addEventListener('activate', event => event.waitUntil(tidy()
  .then(current).then(version => version === name && self.clients.claim())));

self.addEventListener('message', event => { if (event.data === 'take over') event.waitUntil(takeOver()); });

self.addEventListener('fetch', event => {
  if (event.request.method !== 'GET' || new URL(event.request.url).origin !== location.origin) return;
  event.respondWith(current()
    .then(version => caches.match(event.request, { ignoreSearch: true, cacheName: version ?? name }))
    .then(found => found || fetch(event.request)));
});
