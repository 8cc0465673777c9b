/* Loads the browsers' Python for the kernel, from the first place that gives it.
 *
 * The kernel takes this for Pyodide's own module. `PLACES` are folders of the runtime; the last is the
 * site's own copy where it has one. `LIBRARY` is the standard library as bytecode, which starts sooner;
 * a Python that this browser kept as it was once started is there soonest.
 * Whatever fails, the next way is taken in silence; the last one tells its error.
 */
import { restore } from "./started.mjs";

const PLACES = {{places}};
const LIBRARY = {{library}};
const PATIENCE = 8_000; // ms for an address to answer at all, as some networks drop what they don't allow

const at = (address) => new URL(address, import.meta.url).href;

async function answers(address) {
  const asked = await fetch(address, { signal: AbortSignal.timeout(PATIENCE) });
  if (!asked.ok) throw new Error(`${address}: ${asked.status}`);
}

/* `change` may wrap the runtime's module. */
async function load(place, options, change) {
  if (PLACES.length > 1) await answers(`${place}pyodide.mjs`);
  const { loadPyodide } = await import(`${place}pyodide.mjs`);
  const more = change && { createPyodideModule: change((await import(`${place}pyodide.asm.mjs`)).default) };
  return loadPyodide({ ...options, ...more, indexURL: place });
}

const loadQuickly = (place, options, change) => load(place, { ...options, stdLibURL: at(LIBRARY) }, change);

async function firstOf(ways) {
  for (const [number, way] of ways.entries()) {
    try {
      return await way();
    } catch (error) {
      if (number === ways.length - 1) throw error;
      console.warn(`Python is loaded in another way: ${error}`);
    }
  }
}

const places = () => PLACES.map(at);

/* For one that is kept, which is taken up as it was loaded: so there is one way. */
export const loadToKeep = (options, change) => firstOf(places().map((place) => async () => {
  if (!LIBRARY) throw new Error("this site has no library as bytecode");
  return loadQuickly(place, options, change);
}));

async function loadHere(options) {
  const kept = await restore(loadToKeep, options);
  if (kept) return kept;
  return firstOf(places().flatMap((place) => [
    ...(LIBRARY ? [() => loadQuickly(place, options)] : []),
    () => load(place, options),
  ]));
}

let begun = null; // by `begin`, for the kernel to take over
const heard = {}; // where the kernel wants what Python prints

/* Load it before the kernel asks for it. */
export function begin(options) {
  const [stdout, stderr] = ["stdout", "stderr"].map((name) => (text) => heard[name]?.(text));
  begun = loadHere({ ...options, stdout, stderr });
  begun.catch(() => {}); // the kernel tries once more, and tells
}

export async function loadPyodide(options) {
  const python = await begun?.catch(() => null);
  begun = null;
  if (!python) return loadHere(options);
  Object.assign(heard, { stdout: options.stdout, stderr: options.stderr });
  return python;
}
