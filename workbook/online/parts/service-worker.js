/* Keeps the site in the browser for when the network is away.
 *
 * Each file that comes through here is kept, and serves from then on: no file comes twice. A page that
 * is ready asks for the rest. Once all are there, pages come from what is kept, without a network.
 * All are of one edition: where a file is not the one that this edition had, and the site has a newer
 * edition, all come from the network until that one takes over. A newer edition is fetched whole in
 * the background and takes over when the last page is closed.
 */
const EDITION = "{{edition}}";
const FILES = {{files}}; // address, as seen from the site -> mark of its content
const SIZES = {{sizes}}; // address -> bytes, where they are known
const SPARE = {{spare}}; // address of another host -> the site's own copy, for where that can't be reached
const PATIENCE = 8_000; // ms for another host to begin to answer
const SCOPE = self.registration.scope;
const PREFIX = `wire-to-water ${SCOPE} `;
const LIST = `${SCOPE}kept-files.json`;

const SHARED = `wire-to-water-shared ${SCOPE}`; // files that came by the device's share sheet
const MOST_SHARED = 5_000_000; // bytes

const at = (address) => new URL(address, SCOPE).href;
const FIRST = at("index.html");
const MARKS = new Map(Object.entries(FILES).map(([address, mark]) => [at(address), mark]));
const opened = () => caches.open(PREFIX + EDITION);

const coming = new Map(); // address -> the file that is on its way, and when it is kept
let over = false; // the site has a newer edition, and this one was never whole

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

/* A page may not be opened from an answer that was sent on from another address. */
const straight = (file) =>
  file.redirected ? new Response(file.body, { headers: file.headers, status: file.status }) : file;

/* Ask again whether a file is still the same: all must be of one edition. */
async function asked(url) {
  const copy = SPARE[url];
  if (!copy) return fetch(url, { cache: "no-cache" });
  const late = new AbortController();
  const wait = setTimeout(() => late.abort(), PATIENCE);
  try {
    const file = await fetch(url, { signal: late.signal });
    if (file.ok) return file;
  } catch { /* the copy is asked for */ } finally {
    clearTimeout(wait);
  }
  return fetch(at(copy), { cache: "no-cache" });
}

async function fetched(url) {
  const file = await asked(url);
  if (!file.ok) throw new Error(`${url}: ${file.status}`);
  return straight(file);
}

async function markOf(file) {
  const hash = new Uint8Array(await crypto.subtle.digest("SHA-256", await file.arrayBuffer()));
  return Array.from(hash.slice(0, 8), (byte) => byte.toString(16).padStart(2, "0")).join("");
}

/* Whether a file is of this edition. A host may add to files, so another mark alone proves nothing. */
async function isOurs(url, file) {
  if (!MARKS.get(url) || (await markOf(file)) === MARKS.get(url)) return true;
  const { registration } = self;
  await registration.update().catch(() => {});
  return !(registration.installing || registration.waiting);
}

async function keep(url, file) {
  if (await isOurs(url, file.clone())) {
    if (!over) await (await opened()).put(url, file);
  } else {
    over = true;
    await caches.delete(PREFIX + EDITION);
  }
}

/* The file from the network, once for all who ask meanwhile, and kept. */
function take(url, event) {
  if (!coming.has(url)) {
    const file = fetched(url);
    const kept = file.then((whole) => keep(url, whole.clone())).finally(() => coming.delete(url));
    coming.set(url, { file, kept });
    event.waitUntil(kept.catch((error) => console.warn(`Not kept: ${error}`)));
  }
  return coming.get(url);
}

const taken = async (url, event) => (await take(url, event).file).clone();

/* An edition that takes over is whole before it does. */
async function keepNew() {
  const cache = await opened();
  for (const [address, mark] of Object.entries(FILES)) {
    const url = at(address);
    if (await cache.match(url)) continue;
    await cache.put(url, (await unchanged(address, mark)) ?? (await fetched(url)));
  }
  await cache.put(LIST, new Response(JSON.stringify(FILES)));
}

async function keepAll(event) {
  const cache = await opened();
  if (await cache.match(LIST)) return;
  const of = Object.values(SIZES).reduce((sum, size) => sum + size, 0);
  let kept = 0;
  for (const address of Object.keys(FILES)) {
    const url = at(address);
    if (!(await cache.match(url))) await take(url, event).kept;
    if (over) throw new Error("the site has a newer edition");
    kept += SIZES[address] ?? 0;
    event.source.postMessage({ kept, of });
  }
  await cache.put(LIST, new Response(JSON.stringify(FILES)));
}

async function forgetEarlier() {
  for (const name of await earlier()) await caches.delete(name);
}

/* Words after a question mark choose a page and change no file. */
function fileOf(request) {
  const url = request.url.split(/[?#]/)[0];
  return url === SCOPE ? FIRST : url;
}

async function answer(event, url) {
  if (over) return fetch(event.request);
  const cache = await opened();
  const kept = await cache.match(url);
  // The first page tells whether the site still has this edition, as long as not all of it is kept.
  if (kept && url === FIRST && !(await cache.match(LIST))) return taken(url, event).catch(() => kept);
  return kept ?? taken(url, event);
}

/* Files shared to the installed site wait here until the page that reads them is open. */
async function receive(request) {
  const files = (await request.formData()).getAll("files").filter((file) => file.size <= MOST_SHARED);
  const cache = await caches.open(SHARED);
  const texts = await Promise.all(files.map((file) => file.text()));
  await Promise.all(files.map(({ name }, at_) =>
    cache.put(at(`share?${new URLSearchParams({ name, at: at_ })}`), new Response(texts[at_]))));
  const page = texts.some((text) => text.includes('"of": "GROUP-')) ? "17-group-study" : "14-your-study";
  return Response.redirect(at(`?path=${page}.ipynb`), 303);
}

self.addEventListener("install", (event) => {
  // The first time there is nothing to take over from; the page asks when it is ready.
  event.waitUntil(self.registration.active ? keepNew() : self.skipWaiting());
});

self.addEventListener("activate", (event) => {
  event.waitUntil(Promise.all([self.clients.claim(), forgetEarlier()]));
});

self.addEventListener("message", (event) => {
  if (event.data !== "keep") return;
  const told = keepAll(event).then(() => event.source.postMessage("kept"));
  event.waitUntil(told.catch((error) => {
    console.warn(`Not all files are kept: ${error}`);
    event.source.postMessage("not kept");
  }));
});

self.addEventListener("fetch", (event) => {
  const { request } = event;
  const url = fileOf(request);
  if (request.method === "POST" && url === at("share")) event.respondWith(receive(request));
  if (request.method === "GET" && MARKS.has(url)) event.respondWith(answer(event, url));
});
