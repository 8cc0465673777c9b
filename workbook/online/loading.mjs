/* Loads the browsers' Python for the kernel, from the first place that gives it.
 *
 * The kernel takes this for Pyodide's own module. `PLACES` are folders of the runtime; the last is the
 * site's own copy where it has one. `LIBRARY` is the standard library as bytecode, which starts sooner.
 * Whatever fails, the next way is taken in silence; the last one tells its error.
 */
const PLACES = {{places}};
const LIBRARY = {{library}};
const PATIENCE = 8_000; // ms for an address to answer at all, as some networks drop what they don't allow

const at = (address) => new URL(address, import.meta.url).href;

async function answers(address) {
  const asked = await fetch(address, { signal: AbortSignal.timeout(PATIENCE) });
  if (!asked.ok) throw new Error(`${address}: ${asked.status}`);
}

async function load(place, options) {
  if (PLACES.length > 1) await answers(`${place}pyodide.mjs`);
  const { loadPyodide } = await import(`${place}pyodide.mjs`);
  return loadPyodide({ ...options, indexURL: place });
}

export async function loadPyodide(options) {
  const ways = PLACES.map(at).flatMap((place) => [
    ...(LIBRARY ? [[place, { ...options, stdLibURL: at(LIBRARY) }]] : []),
    [place, options],
  ]);
  for (const [number, way] of ways.entries()) {
    try {
      return await load(...way);
    } catch (error) {
      if (number === ways.length - 1) throw error;
      console.warn(`Python is loaded in another way: ${error}`);
    }
  }
}
