// Keeps the files of these pages for when there is no network. A version is taken in whole, and takes over when no page of the one before is open.

const version = 'eighthturn-{{version}}';
const names = {{names}};

const own = (name) => new URL(name, registration.scope).href;

addEventListener('install', (e) => {
  e.waitUntil(caches.open(version).then((cache) => cache.addAll(names.map((name) => new Request(own(name), { cache: 'no-cache' }) /* asks whether what the page has just fetched is still so */))));
});

addEventListener('activate', (e) => {
  e.waitUntil(caches.keys().then((keys) => Promise.all(keys.filter((key) => key.startsWith('eighthturn-') && key !== version).map((key) => caches.delete(key)))));
});

addEventListener('fetch', (e) => {
  const { pathname, href } = new URL(e.request.url), name = pathname.endsWith('/') ? own('index.html') : href.replace(/[?#].*$/, '');
  if (e.request.method !== 'GET' || !names.some((known) => own(known) === name)) return;
  e.respondWith(caches.open(version).then((cache) => cache.match(name)).then((there) => there ?? fetch(e.request)));
});
