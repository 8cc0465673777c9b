/* Says at the foot of each page what is kept in this browser: the site, and what its reader did.
 *
 * A browser may clear what a site keeps when space runs low, unless it has promised not to. It is asked
 * for that once there is an answer to lose; some ask their reader then.
 */
const OFFLINE = "Saved on this device: every page opens without a network.";
const ONLINE = "This browser doesn't save these pages, so you need a network to open them.";
const PROMISED = "Your answers are kept in this browser, and it has promised not to clear them.";
const REFUSED =
  "This browser may clear your answers when the device runs low on space. Save a copy of them now and then: ";

const LATER = 3_000; // ms after the rest is kept
const LEAST_MEMORY = 2; // GB, where the browser tells

const inMB = (bytes) => Math.round(bytes / 1e6);

/* `copies` is the address of the page where answers are saved, in words and as a link. */
export function makeKept(base, copies) {
  const said = { site: "", answers: "" };
  let promised = null; // by the browser; null until it was asked
  let line = null;
  let made = false; // a Python for the next visit, or tried

  function put() {
    if (!line) return;
    const link = promised === false ? [Object.assign(document.createElement("a"), copies)] : [];
    const words = [said.site, said.answers].filter(Boolean).join(" ");
    line.replaceChildren(...(words ? [words, ...link] : []));
  }

  function tell(part, text) {
    said[part] = text;
    put();
  }

  async function promise(ask) {
    const { storage } = navigator;
    promised = Boolean(await storage?.persisted?.()) || (ask ? Boolean(await storage?.persist?.()) : null);
    if (promised !== null) tell("answers", promised ? PROMISED : REFUSED);
  }

  /* Once a page is there, all others are kept for when the network is away. */
  function keepAll() {
    const worker = navigator.serviceWorker?.controller;
    if (worker) worker.postMessage("keep");
    else tell("site", ONLINE);
  }

  /* For the next visit this browser keeps a Python that has started, once that costs the reader nothing. */
  function keepPython() {
    if (made || navigator.deviceMemory < LEAST_MEMORY) return;
    made = true;
    const maker = new Worker(`${base}static/making.mjs`, { type: "module" });
    maker.addEventListener("message", () => maker.terminate());
    maker.postMessage(window.wireToWaterPython);
  }

  navigator.serviceWorker?.addEventListener("message", ({ data }) => {
    if (data === "kept") {
      tell("site", OFFLINE);
      setTimeout(keepPython, LATER);
    } else if (data === "not kept") tell("site", ONLINE);
    else tell("site", `Saving this site on your device: ${inMB(data.kept)} of ${inMB(data.of)} MB.`);
  });
  navigator.serviceWorker?.startMessages();
  // Python tells other pages what it keeps, by the site's own name.
  const heard = new BroadcastChannel(base);
  heard.addEventListener("message", () => promised === null && void promise(true).catch(console.error));
  void promise(false).catch(console.error);

  return {
    /* "yes" or "no"; empty as long as nobody asked. */
    answersKept: () => (promised === null ? "" : promised ? "yes" : "no"),
    showIn(page) {
      line = Object.assign(document.createElement("p"), { className: "wtw-kept" });
      line.setAttribute("role", "status");
      page.querySelector(".wtw-foot")?.append(line);
      put();
      keepAll();
    },
  };
}
