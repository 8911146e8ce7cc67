// Keeps the page and every answer given, so that both are there without a signal. Newest first, kept copy if there is none.

const KEPT = "pulses-1";
const PAGE = ["/", "/page/page.css", "/page/page.js", "/page/api.js", "/page/parts.js", "/page/paper.js", "/page/say.js", "/page/icon.svg",
  "/page/manifest.webmanifest", "/page/say/list.json", "/v1/pulses", "/v1/languages"];

self.addEventListener("install", (event) => event.waitUntil((async () => {
  const kept = await caches.open(KEPT);
  await kept.addAll(PAGE);
  await self.skipWaiting();
})()));

self.addEventListener("activate", (event) => event.waitUntil((async () => {
  for (const name of await caches.keys()) if (name !== KEPT) await caches.delete(name);
  await self.clients.claim();
})()));

// A POST that only asks has its body in the key, since caches keep GET alone.
async function keyOf(request) {
  if (request.method === "GET") return request;
  const body = await request.clone().text();
  const digest = await crypto.subtle.digest("SHA-256", new TextEncoder().encode(body));
  const hex = Array.from(new Uint8Array(digest), (one) => one.toString(16).padStart(2, "0")).join("");
  return new Request(`${request.url}?asked=${hex}`);
}

const asks = (url) => ["/v1/readings", "/v1/guidance", "/v1/swaps", "/v1/grain-readings"].includes(url.pathname);

self.addEventListener("fetch", (event) => {
  const url = new URL(event.request.url);
  if (url.origin !== location.origin || !(event.request.method === "GET" || asks(url))) return;
  event.respondWith((async () => {
    const kept = await caches.open(KEPT);
    const key = await keyOf(event.request);
    try {
      const fresh = await fetch(event.request);
      if (fresh.ok) await kept.put(key, fresh.clone());
      return fresh;
    } catch (error) {
      const old = await kept.match(key, { ignoreVary: true });
      if (old) return old;
      throw error;
    }
  })());
});
