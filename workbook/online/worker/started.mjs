/* A Python that has started, kept in this browser: the next visit takes it up from there.
 *
 * This browser makes it by itself, from what it has, so nothing is downloaded for it. It is the memory of
 * a Python that has loaded what the first problem needs, and its files. It fits one edition of the site,
 * one version of the browser and one time zone, and has its name from them. Chance is not part of it:
 * what Python draws by chance is drawn anew after each start.
 *
 * Where one does not start, it is thrown away, and Python is loaded as ever. A start that never ended
 * (a tab can run out of memory) counts as one that failed; after two of them none is made again. Nor is
 * one made after three tries that never ended.
 */
const MARK = {{mark}}; // of the library and of these modules
const BASE = new URL("..", import.meta.url).href;
const KEPT = `python of ${BASE}`; // among the browser's caches
const MOST_FAULTS = 2;
const MOST_TRIES = 3;
const PATIENCE = 30_000; // ms for a start
const HEAD = 16; // bytes: how long the memory and the list of files are

const TEMPORARY = "/tmp/wheels";
const UNPACK = `
import gc, importlib, os, random, sys, zipfile
from _random import Random
site = next(path for path in sys.path if path.endswith("site-packages"))
for name in os.listdir("${TEMPORARY}"):
    zipfile.ZipFile(f"${TEMPORARY}/{name}").extractall(site)
    os.unlink(f"${TEMPORARY}/{name}")
os.rmdir("${TEMPORARY}")
importlib.invalidate_caches()
import piplite.piplite, pyodide_kernel, ipywidgets
from workbook import page
page.get_ready()
for module in [each for each in sys.modules.values() if (getattr(each, "__file__", None) or "").startswith(site)]:
    os.unlink(module.__file__)  # it is in the memory
gc.collect()
other = [each for each in gc.get_objects() if issubclass(type(each), Random)]
if [each for each in other if each is not random._inst and type(each) is not random.SystemRandom]:
    raise RuntimeError("something draws by a chance of its own")
for name in "other each module name site gc importlib os random sys zipfile Random page".split():
    globals().pop(name, None)
`;
/* It also proves that modules which nobody has loaded yet are still found. */
const WAKE = `
import asyncio, random
random.seed()
import colorsys
await asyncio.sleep(0)
del asyncio, random, colorsys
`;

const kept = () => caches.open(KEPT);

function nameOf({ lockFileURL }) {
  const zone = Intl.DateTimeFormat().resolvedOptions().timeZone;
  return `${BASE}started?${new URLSearchParams([MARK, lockFileURL, navigator.userAgent, zone].map((word, at) => [at, word]))}`;
}

/* How it went: whether a start has begun and not ended, how many failed, and how often one was to be made. */
async function history(cache, name) {
  return (await (await cache.match(`${name}&history`))?.json()) ?? { begun: false, faults: 0, tries: 0 };
}

const remember = (cache, name, words) => cache.put(`${name}&history`, new Response(JSON.stringify(words)));

/* What Python's memory holds of JavaScript, by its name, and by its name again. */
function nameIn(python) {
  return (thing) => {
    if (thing === python) return ["python"];
    for (const [where, parts] of [["python", python], ["api", python._api]]) {
      const name = Object.getOwnPropertyNames(parts).find((each) => parts[each] === thing);
      if (name) return [where, name];
    }
    throw new Error(`Python holds something of the page: ${thing}`);
  };
}

function thingIn({ API }, [where, name]) {
  const parts = where === "api" ? API : API.public_api;
  const thing = name ? parts[name] : parts;
  if (!thing) throw new Error(`${where} ${name} is not there`);
  return thing;
}

/* Every file and folder: a path and the file's size, and what is in the files. */
function filesOf({ FS }) {
  const list = [], contents = [];
  const note = (path) => {
    const { mode } = FS.lstat(path || "/");
    if (FS.isFile(mode)) {
      const data = FS.readFile(path);
      list.push([path, data.length]);
      contents.push(data);
    } else if (FS.isDir(mode)) {
      if (path) list.push([path]);
      for (const name of FS.readdir(path || "/")) if (![".", ".."].includes(name)) walk(`${path}/${name}`);
    } else {
      throw new Error(`${path} is no file`);
    }
  };
  // Python's own devices and library are there in every Python.
  const walk = (path) => /^\/(dev|proc|lib\/python\d+\.zip)$/.test(path) || note(path);
  walk("");
  return { list, contents };
}

function layFiles({ FS }, list, bytes) {
  let at = 0;
  for (const [path, size] of list) {
    if (size !== undefined) FS.writeFile(path, bytes.subarray(at, (at += size)), { canOwn: true });
    else if (!FS.analyzePath(path).exists) FS.mkdir(path);
  }
}

/* A Python with all packages, as one file. */
async function packed(load, options) {
  const lock = await (await fetch(options.lockFileURL)).json();
  const python = await load({ ...options, packages: [], _makeSnapshot: true });
  python.FS.mkdirTree(TEMPORARY);
  for (const { file_name } of Object.values(lock.packages)) {
    const wheel = await fetch(new URL(file_name, options.lockFileURL));
    python.FS.writeFile(`${TEMPORARY}/${file_name}`, new Uint8Array(await wheel.arrayBuffer()));
  }
  python.runPython(UNPACK);
  const memory = python.makeMemorySnapshot({ serializer: nameIn(python) });
  const { list, contents } = filesOf(python);
  const told = new TextEncoder().encode(JSON.stringify(list));
  const whole = new Blob([new Uint32Array([memory.length, told.length, 0, 0]), memory, told, ...contents]);
  return new Response(whole.stream().pipeThrough(new CompressionStream("gzip"))).blob();
}

/* Make one and keep it, unless there is one, or this browser is not made for it. */
export async function make(load, options) {
  const cache = await kept(), name = nameOf(options);
  const { faults, tries } = await history(cache, name);
  if ((await cache.match(name)) || faults >= MOST_FAULTS || tries >= MOST_TRIES) return false;
  for (const { url } of await cache.keys()) if (!url.startsWith(name)) await cache.delete(url);
  await remember(cache, name, { begun: false, faults, tries: tries + 1 });
  await cache.put(name, new Response(await packed(load, options)));
  await remember(cache, name, { begun: false, faults, tries: 0 });
  return true;
}

async function unpacked(file) {
  const bytes = await new Response(file.body.pipeThrough(new DecompressionStream("gzip"))).arrayBuffer();
  const [memory, told] = new Uint32Array(bytes, 0, HEAD / 4);
  return {
    memory: new Uint8Array(bytes, HEAD, memory),
    list: JSON.parse(new TextDecoder().decode(new Uint8Array(bytes, HEAD + memory, told))),
    contents: new Uint8Array(bytes, HEAD + memory + told),
  };
}

/* Python as it was kept. `load` loads the runtime with these options, and lets its module be changed. */
async function wake(load, options, file) {
  const parts = unpacked(file);
  let module;
  const python = await load({
    ...options,
    packages: [],
    _loadSnapshot: parts.then(({ memory }) => memory),
    _snapshotDeserializer: (words) => thingIn(module, words),
  }, (create) => async (settings) => {
    module = await create(settings);
    const { memory, list, contents } = await parts;
    module.growMemory(memory.length);
    layFiles(module, list, contents);
    return module;
  });
  for (const name of options.packages) python.loadedPackages[name] = "kept";
  await python.runPythonAsync(WAKE);
  return python;
}

const late = (time) => new Promise((_, fail) => setTimeout(() => fail(new Error(`not ready after ${time} ms`)), time));

/* A start whose beginning is noted until it ends, so that the next visit knows of one that never did. */
async function noted(cache, name, start) {
  const before = await history(cache, name);
  try {
    if (before.begun) throw new Error("the last start never ended");
    await remember(cache, name, { ...before, begun: true });
    const python = await start();
    await cache.delete(`${name}&history`);
    return python;
  } catch (error) {
    await cache.delete(name);
    await remember(cache, name, { ...before, begun: false, faults: before.faults + 1 });
    throw error;
  }
}

/* The Python that is kept, or null where there is none that starts. Of several pages that start at once,
 * the first notes how it goes; the browser frees its lock however that page ends. */
export async function restore(load, options) {
  try {
    const cache = await kept(), name = nameOf(options), file = await cache.match(name);
    if (!file) return null;
    const start = () => Promise.race([wake(load, options, file), late(PATIENCE)]);
    return await navigator.locks.request(`start of ${name}`, { ifAvailable: true },
      (lock) => (lock ? noted(cache, name, start) : start()));
  } catch (error) {
    console.warn(`Python is not taken up as it was kept: ${error}`);
    return null;
  }
}
