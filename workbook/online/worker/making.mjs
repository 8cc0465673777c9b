/* Makes the Python that is kept for the next visit, beside the page, and says whether it did. */
import { loadToKeep } from "./loading.mjs";
import { make } from "./started.mjs";

/* Of several pages one makes it. */
const makeOnce = (options) =>
  navigator.locks.request(`python of ${import.meta.url}`, { ifAvailable: true }, (lock) => lock && make(loadToKeep, options));

self.onmessage = async ({ data }) => {
  try {
    self.postMessage((await makeOnce(data)) ? "kept" : "nothing to do");
  } catch (error) {
    console.warn(`No started Python is kept: ${error}`);
    self.postMessage("not kept");
  }
};
