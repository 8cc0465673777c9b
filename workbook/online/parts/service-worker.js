/* Keeps the site in the browser for when the network is away.
 *
 * A page that is ready asks for every file of the site to be kept. Once all are there, pages come
 * from what is kept, all of one edition; before, all come from the network. A newer edition is
 * fetched whole in the background and takes over when the last page is closed.
 */
const EDITION = "{{edition}}";
const FILES = {{files}}; // address, as seen from the site -> mark of its content
const SCOPE = self.registration.scope;
const PREFIX = `wire-to-water ${SCOPE} `;
const LIST = `${SCOPE}kept-files.json`;

const at = (address) => new URL(address, SCOPE).href;
const KNOWN = new Set(Object.keys(FILES).map(at));
const opened = () => caches.open(PREFIX + EDITION);

async function earlier() {
  const names = await caches.keys();
  return names.filter((name) => name.startsWith(PREFIX) && name !== PREFIX + EDITION);
}

/* A file as an earlier edition kept it, where it is still the same. */
async function unchanged(address, mark) {
  for (const name of await earlier()) {
    const cache = await caches.open(name);
    const list = await (await cache.match(LIST))?.json();
    const kept = list?.[address] === mark && (await cache.match(at(address)));
    if (kept) return kept;
  }
  return null;
}

/* Ask again whether a file is still the same: all must be of one edition. */
async function fetched(url) {
  const file = await fetch(url, { cache: "no-cache" });
  if (!file.ok) throw new Error(`${url}: ${file.status}`);
  return file;
}

async function keepAll() {
  const cache = await opened();
  if (await cache.match(LIST)) return;
  for (const [address, mark] of Object.entries(FILES)) {
    const url = at(address);
    if (await cache.match(url)) continue;
    await cache.put(url, (await unchanged(address, mark)) ?? (await fetched(url)));
  }
  await cache.put(LIST, new Response(JSON.stringify(FILES)));
}

async function forgetEarlier() {
  for (const name of await earlier()) await caches.delete(name);
}

/* Words after a question mark choose a page and change no file. */
function fileOf(request) {
  const url = request.url.split(/[?#]/)[0];
  return url === SCOPE ? at("index.html") : url;
}

async function answer(request, url) {
  const cache = await opened();
  if (!(await cache.match(LIST))) return fetch(request);
  const kept = await cache.match(url);
  if (kept) return kept;
  const file = await fetched(url);
  await cache.put(url, file.clone());
  return file;
}

self.addEventListener("install", (event) => {
  // The first time there is nothing to take over from; the page asks when it is ready.
  event.waitUntil(self.registration.active ? keepAll() : self.skipWaiting());
});

self.addEventListener("activate", (event) => {
  event.waitUntil(Promise.all([self.clients.claim(), forgetEarlier()]));
});

self.addEventListener("message", (event) => {
  if (event.data !== "keep") return;
  const told = keepAll().then(() => event.source.postMessage("kept"));
  event.waitUntil(told.catch((error) => console.warn(`Not all files are kept: ${error}`)));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = fileOf(request);
  if (request.method === "GET" && KNOWN.has(url)) event.respondWith(answer(request, url));
});
