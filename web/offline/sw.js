// Keeps the page's own files for when there is no network. The build puts the list and its mark in place of the two names below.
// A page that is open keeps the files it began with: a newer worker waits until the page asks it to take over.
const files = __FILES__;
const cacheName = `rootfront-${__MARK__}`;

self.addEventListener("install", (event) => {
  event.waitUntil(
    caches
      .open(cacheName)
      .then((cache) => cache.addAll(files.map((file) => new Request(file, { cache: "reload" })))),
  );
});

self.addEventListener("activate", (event) => {
  const old = (names) => names.filter((name) => name.startsWith("rootfront-") && name !== cacheName);
  event.waitUntil(
    caches
      .keys()
      .then((names) => Promise.all(old(names).map((name) => caches.delete(name))))
      .then(() => self.clients.claim()),
  );
});

self.addEventListener("message", ({ data }) => {
  if (data === "take over") self.skipWaiting();
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  if (request.method !== "GET" || new URL(request.url).origin !== self.location.origin) return;
  event.respondWith(answer(request));
});

async function answer(request) {
  const cache = await caches.open(cacheName);
  const wanted = request.mode === "navigate" ? self.registration.scope : request;
  const kept = await cache.match(wanted, { ignoreSearch: request.mode === "navigate" });
  return kept ?? fetch(request);
}
