/* Runs to_bytecode.py on the browsers' own Python: node in_node.mjs RUNTIME SCRIPT WHEELS-OR-ZIP */
import { readFileSync } from "node:fs";
import { basename, dirname, resolve } from "node:path";
import { pathToFileURL } from "node:url";

const [runtime, script, packed] = process.argv.slice(2).map((path) => resolve(path));
const { loadPyodide } = await import(pathToFileURL(`${runtime}/pyodide.mjs`));
const python = await loadPyodide({ indexURL: `${runtime}/` });
python.mountNodeFS("/packed", dirname(packed));
try {
  python.runPython("import sys; sys.argv = ['to_bytecode.py', '/packed/" + basename(packed) + "']");
  python.runPython(readFileSync(script, "utf8")); // as a program: its name is __main__
} catch (error) {
  console.error(error.message);
  process.exit(1);
}
