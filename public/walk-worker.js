/*
 * Keeps the walk-through's page and what it is drawn with, so that it opens again without network. It holds nothing that
 * was entered: entries wait in the page's own database. The network comes first wherever there is one.
 */
const CACHE = "walk-through-1";
/** How long the network is waited for before the kept page is shown [ms]. */
const PATIENCE_MS = 4000;

self.addEventListener("install", () => self.skipWaiting());
self.addEventListener("activate", (event) => event.waitUntil(self.clients.claim()));

self.addEventListener("message", (event) => {
  if (event.data?.say !== "keep") return;
  event.waitUntil(
    keep(event.data.addresses).then(
      () => event.source?.postMessage({ say: "kept" }),
      () => event.source?.postMessage({ say: "not-kept" }),
    ),
  );
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const address = new URL(request.url);
  if (request.method !== "GET" || address.origin !== self.location.origin) return;
  if (address.pathname.startsWith("/_next/static/")) event.respondWith(keptFirst(request));
  else if (request.mode === "navigate" && isWalk(address)) event.respondWith(networkFirst(request, address));
});

const isWalk = (address) => /^\/buildings\/\d+\/walk$/.test(address.pathname);
/** One page is kept whatever desk it was opened for: the desk is read from the address by the page itself. */
const pageKey = (address) => `${address.origin}${address.pathname}`;

async function keptFirst(request) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(request);
  if (kept) return kept;
  const answer = await fetch(request);
  if (answer.ok) await cache.put(request, answer.clone());
  return answer;
}

async function networkFirst(request, address) {
  const cache = await caches.open(CACHE);
  const kept = await cache.match(pageKey(address));
  try {
    const answer = await (kept ? withPatience(fetch(request)) : fetch(request));
    // A redirected page is the sign-in's: whoever was signed in is so no longer, and what was kept for them goes.
    if (answer.redirected || answer.type === "opaqueredirect") await cache.delete(pageKey(address));
    else if (answer.ok) await cache.put(pageKey(address), answer.clone());
    return answer;
  } catch (error) {
    if (kept) return kept;
    throw error;
  }
}

function withPatience(answer) {
  return Promise.race([
    answer,
    new Promise((_, reject) => setTimeout(() => reject(new Error("no answer in time")), PATIENCE_MS)),
  ]);
}

/** Keeps the page and all that it has loaded, and forgets what an earlier version of it was drawn with. */
async function keep(addresses) {
  const cache = await caches.open(CACHE);
  for (const address of addresses) {
    if (isWalk(new URL(address))) {
      const answer = await fetch(address, { credentials: "same-origin" });
      if (!answer.ok || answer.redirected) throw new Error("the page did not come");
      await cache.put(pageKey(new URL(address)), answer);
    } else if (!(await cache.match(address))) await cache.add(address);
  }
  for (const request of await cache.keys())
    if (new URL(request.url).pathname.startsWith("/_next/") && !addresses.includes(request.url))
      await cache.delete(request);
}
