// Answers for one build of the page without a network. `cargo xtask build` writes it as sw.js, with the build's files and
// the SHA-256 of all of them behind each other put in (xtask/src/seal.rs).
const BUILD = "{build}";
const FILES = ["{files}"];

// Ends in a slash. Pages of other folders, above or below, share the host's caches.
const { scope } = registration;
const OURS = `torpor ${scope} `;
const CACHE = OURS + BUILD;
const index = scope;
const urls = [index, ...FILES.map((name) => scope + name)];

// All files of the build or none: a host that is just being written to gives files of two.
async function fill() {
  if (await caches.match(index, { cacheName: CACHE })) return;
  // Copies of the visit that goes on, if the host says that they still hold.
  const answers = await Promise.all(urls.map((url) => fetch(url, { cache: "no-cache" })));
  const bodies = await Promise.all(answers.map((answer) => answer.blob()));
  const digest = await crypto.subtle.digest("SHA-256", await new Blob(bodies).arrayBuffer());
  if (btoa(String.fromCharCode(...new Uint8Array(digest))) !== BUILD) throw new Error("not of one build");
  const cache = await caches.open(CACHE);
  try {
    // The index last: a cache that has it is whole.
    for (let at = urls.length; at > 0; at -= 1) {
      await cache.put(urls[at - 1], new Response(bodies[at - 1], answers[at - 1]));
    }
  } catch (full) {
    await caches.delete(CACHE);
    throw full;
  }
}

async function drop() {
  const old = (await caches.keys()).filter((name) => name.startsWith(OURS) && name !== CACHE);
  await Promise.all(old.map((name) => caches.delete(name)));
}

addEventListener("install", (event) => event.waitUntil(fill()));
addEventListener("activate", (event) => event.waitUntil(drop()));
// Only when the page asks for it: open pages are of the build before.
addEventListener("message", () => skipWaiting());
addEventListener("fetch", (event) => {
  const { request } = event;
  const [address] = request.url.split(/[?#]/);
  const url = address === `${scope}index.html` ? index : address;
  if (request.method !== "GET" || !urls.includes(url)) return;
  // The page's own script asks past caches where the wasm that it got is not what it should be; nothing else goes past.
  if (request.cache === "reload" && !request.destination) return;
  const kept = caches.match(url, { cacheName: CACHE, ignoreVary: true });
  event.respondWith(kept.then((answer) => answer ?? fetch(request)));
});
