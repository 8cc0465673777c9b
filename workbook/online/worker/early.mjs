/* The kernel's own worker, which loads Python at once, without waiting for the kernel to ask for it. */
import "../{{kernel}}"; // first, so that it hears the kernel
import { begin } from "./loading.mjs";

const SIZES = {{sizes}}; // bytes of each file that Python is loaded from
const sum = (names) => names.reduce((all, name) => all + (SIZES[name] ?? 0), 0);
const of = sum(Object.keys(SIZES));
const loaded = new Set();

const came = new PerformanceObserver((list) => {
  for (const { name } of list.getEntries()) loaded.add(name.split(/[?#]/)[0].split("/").pop());
  self.postMessage({ loaded: sum([...loaded]), of });
});
came.observe({ type: "resource", buffered: true });
begin(JSON.parse(self.name));
