/* Runs the solver's tests on the Python that browsers run:
 *
 *     node solver_in_node.mjs RUNTIME PROJECT BUILT PACKAGES [words for pytest]
 *
 * BUILT is a folder of packages built for that Python. PACKAGES is one of packages installed for
 * another; those in plain Python are used from there. It ends with pytest's own status.
 */
import { resolve } from "node:path";
import { pathToFileURL } from "node:url";

const [runtime, ...folders] = process.argv.slice(2, 6).map((path) => resolve(path));
const words = process.argv.slice(6);
process.on("uncaughtException", (error) => {
  console.error(error.message); // the whole of it shows Pyodide's source
  process.exit(1);
});
const { loadPyodide } = await import(pathToFileURL(`${runtime}/pyodide.mjs`));
const env = { HOME: "/home", PYTEST_DISABLE_PLUGIN_AUTOLOAD: "1" };
const python = await loadPyodide({ indexURL: `${runtime}/`, env });
const places = ["/project", "/built", "/packages"];
places.forEach((place, number) => python.mountNodeFS(place, folders[number]));
python.globals.set("places", python.toPy(places));
python.globals.set("words", python.toPy(words));
process.exit(
  python.runPython(`
import os, sys
os.chdir("/project")
sys.path += places
sys.modules["dask"] = None  # pint looks for it, and that one is not in plain Python
sys.dont_write_bytecode = True
import pytest
int(pytest.main(words))
`),
);
