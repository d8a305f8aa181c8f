// Keeps the whole app on the device. One version, one cache: a page gets what its own version is made of. The version before is kept
// while tabs of it are open, for the parts that they have not loaded yet.
declare const self: ServiceWorkerGlobalScope & {
  assetsManifest?: { version: string; assets: { url: string; hash: string }[] };
};
export {};

self.importScripts("service-worker-assets.js");
const manifest = self.assetsManifest ?? { version: "none", assets: [] };
const prefix = "second-shore-";
const cacheName = prefix + manifest.version;
const base = new URL("./", self.location.href);
const skipped = /(\.br|\.gz|\.map|\.LEGAL\.txt|service-worker\.js|service-worker-assets\.js)$/;
const wanted = manifest.assets.filter((asset) => !skipped.test(asset.url));
const known = new Set(wanted.map((asset) => new URL(asset.url, base).href));

async function install(): Promise<void> {
  const cache = await caches.open(cacheName);
  const old = (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== cacheName);
  await Promise.all(wanted.map(async (asset) => {
    const url = new URL(asset.url, base).href;
    // Hash-checked: a server in the middle of an update makes the install fail, and the old version stays whole.
    const request = new Request(url, { integrity: asset.hash, cache: "no-cache" });
    for (const name of old) {
      const kept = await (await caches.open(name)).match(`${url}?${asset.hash}`);
      if (kept) { await cache.put(`${url}?${asset.hash}`, kept.clone()); return; }
    }
    const answer = await fetch(request);
    if (!answer.ok) throw new Error(`${asset.url}: ${answer.status}`);
    await cache.put(`${url}?${asset.hash}`, answer);
  }));
}

const hashOf = new Map(wanted.map((asset) => [new URL(asset.url, base).href, asset.hash]));

async function answer(request: Request): Promise<Response> {
  const url = new URL(request.url);
  const key = request.mode === "navigate" ? new URL("index.html", base).href : url.origin + url.pathname;
  if (known.has(key)) {
    const kept = await (await caches.open(cacheName)).match(`${key}?${hashOf.get(key)}`);
    if (kept) return kept;
  }
  if (request.mode !== "navigate") {
    const before = await caches.match(key, { ignoreSearch: true });
    if (before) return before;
  }
  return fetch(request);
}

// Caches of other versions, in the order in which they were made.
const others = async (): Promise<string[]> => (await caches.keys()).filter((name) => name.startsWith(prefix) && name !== cacheName);
const drop = async (names: readonly string[]): Promise<void> => { for (const name of names) await caches.delete(name); };

// Where the page that asks is the only one, no tab of the version before is left. A next version that is coming in meanwhile makes its
// cache after these were listed, or is known already.
async function dropWhenAlone(): Promise<void> {
  const names = await others(), pages = await self.clients.matchAll({ type: "window", includeUncontrolled: true });
  if (pages.length === 1 && !self.registration.installing && !self.registration.waiting) await drop(names);
}

self.addEventListener("install", (event) => event.waitUntil(install()));
self.addEventListener("activate", (event) => event.waitUntil((async () => {
  await drop((await others()).slice(0, -1));
  await self.clients.claim();
})()));
self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (event.request.method !== "GET" || url.origin !== self.location.origin) return;
  if (/\/(api|health)(\/|$)/.test(url.pathname)) return;
  event.respondWith(answer(event.request));
});
self.addEventListener("message", (event) => {
  // The page asks for this when the user takes the update.
  if (event.data === "take-over") void self.skipWaiting();
  // And tells this once it stands.
  if (event.data === "opened") event.waitUntil(dropWhenAlone());
});
