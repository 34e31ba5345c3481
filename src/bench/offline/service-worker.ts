/// <reference lib="webworker" />

/** Written in when the bench is built: every file of it, and a name that is another one for every build. */
declare const FILES: readonly string[];
declare const BUILD: string;

const worker = globalThis as unknown as ServiceWorkerGlobalScope;
const PREFIX = 'pinlight-';
const cacheName = PREFIX + BUILD;

// All files are fetched before the new bench may take over, so that it never runs half old and half new.
worker.addEventListener('install', (event) => {
  event.waitUntil(
    caches
      .open(cacheName)
      .then((cache) => cache.addAll(FILES.map((file) => new Request(file, { cache: 'reload' })))),
  );
});

worker.addEventListener('activate', (event) => {
  event.waitUntil(
    (async () => {
      for (const name of await caches.keys()) {
        if (name.startsWith(PREFIX) && name !== cacheName) await caches.delete(name);
      }
      await worker.clients.claim();
    })(),
  );
});

// Only when a person says so does a new bench take over.
worker.addEventListener('message', ({ data }) => {
  if (data === 'take-over') void worker.skipWaiting();
});

worker.addEventListener('fetch', (event) => {
  const { request } = event;
  if (request.method !== 'GET' || new URL(request.url).origin !== worker.location.origin) return;
  event.respondWith(answer(request));
});

async function answer(request: Request): Promise<Response> {
  const cache = await caches.open(cacheName);
  const wanted = request.mode === 'navigate' ? './index.html' : request;
  return (await cache.match(wanted, { ignoreSearch: true })) ?? fetch(request);
}
