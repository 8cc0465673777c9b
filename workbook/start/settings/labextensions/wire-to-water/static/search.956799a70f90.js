/* The search in the bar: chapters, words of the trade and formulas, as a list under the box.
 *
 * "/" or Ctrl+K leads here, the arrows choose, Enter opens, Escape leaves. The list of all there is to find
 * comes from the server once, when it is first wanted; Enter that comes sooner waits for it. Each word
 * typed must begin a word of what is found, as on the page of formulas.
 */
const HEADS = { chapter: "Chapters", word: "Words", formula: "Formulas" };
const MOST = { chapter: 4, word: 5, formula: 6 };
const LATER = 3_000; // ms
const APART = /[\s(),;:|"“”=]+/;
const NOTHING = "Try one short word, such as head, amps or PF.";
const LOADING = "One moment, the list is loading.";
const FAILED = "The list didn't load. Press Enter to search the Formulas page.";

const plain = (text) => text.normalize("NFKC").toLowerCase().split(APART).filter(Boolean);

/* How well a name fits: it is called so, it begins so, a word in it does, or another name has it. */
function rank({ name, words: called }, words) {
  const own = ` ${plain(name).join(" ")}`;
  const asked = words.join(" ");
  if (own.slice(1) === asked || called.includes(`| ${asked} |`)) return 0;
  if (own.startsWith(` ${asked}`)) return 1;
  return words.every((word) => own.includes(` ${word}`)) ? 2 : 3;
}

function found(entries, text) {
  const words = plain(text);
  if (!words.length) return [];
  const fit = entries.filter((entry) => words.every((word) => ` ${entry.words}`.includes(` ${word}`)));
  const best = fit.map((entry) => [rank(entry, words), entry])
    .sort((a, b) => a[0] - b[0] || a[1].name.length - b[1].name.length);
  const of = (kind) => best.map(([, entry]) => entry).filter((entry) => entry.kind === kind);
  return Object.keys(HEADS).flatMap((kind) => of(kind).slice(0, MOST[kind]));
}

function isTyping({ target }) {
  return target instanceof Element && target.closest("input, textarea, select, [contenteditable=true]");
}

export function makeSearch({ element, list, addressOf, more }) {
  const box = element("input", {
    type: "search", role: "combobox", "aria-expanded": "false", "aria-controls": "wtw-found",
    "aria-autocomplete": "list", autocomplete: "off", spellcheck: "false", enterkeyhint: "go",
    "aria-label": "Find a formula, a chapter or a word", placeholder: "Find a formula, a word …",
  });
  const shown = element("div", { id: "wtw-found", class: "wtw-found", role: "listbox", "aria-label": "Found" });
  const told = element("span", { role: "status", class: "wtw-heard" });
  const node = element("div", { role: "search", class: "wtw-search" }, box, shown, told);
  let entries = null; // all there is to find
  let loading = false;
  let entered = false; // Enter came before the list
  let fault = "";
  let options = [];
  let chosen = -1;
  let wanted = () => {};
  let left = () => {};
  const waiting = () => !entries && !fault;

  async function load() {
    if (entries || loading) return;
    loading = true;
    try {
      const answer = await fetch(list);
      if (!answer.ok) throw new Error(`${list}: ${answer.status}`);
      const rows = await answer.json();
      entries = rows.map(([kind, name, about, page, find, words]) => ({ kind, name, about, page, find, words }));
      fault = "";
    } catch (error) {
      fault = FAILED;
      console.warn(error);
    }
    loading = false;
    if (box.value) look();
    if (entered) enter();
  }

  function enter() {
    entered = waiting() && chosen < 0;
    if (entered) void load();
    else options[chosen]?.click();
  }

  function step(by) {
    const from = chosen < 0 && by < 0 ? 0 : chosen;
    choose((from + by + options.length) % options.length);
  }

  /* None is -1: nothing is marked for Enter while the list is still to come. */
  function choose(index) {
    chosen = index;
    options.forEach((option, at) => option.setAttribute("aria-selected", String(at === chosen)));
    const option = options[chosen];
    if (option) box.setAttribute("aria-activedescendant", option.id);
    else box.removeAttribute("aria-activedescendant");
    option?.scrollIntoView({ block: "nearest" });
  }

  /* Each is a link, so that it can be opened in a tab of its own. */
  function option(href, name, about) {
    const id = `wtw-option-${options.length}`;
    const small = about ? [element("small", {}, about)] : [];
    const line = element("a", { id, href, role: "option", tabindex: "-1", "aria-selected": "false" }, element("span", {}, name), ...small);
    options.push(line);
    return line;
  }

  function look() {
    const text = box.value.trim();
    options = [];
    const groups = [];
    const hits = text && entries ? found(entries, text) : [];
    for (const [kind, head] of Object.entries(HEADS)) {
      const here = hits.filter((entry) => entry.kind === kind);
      if (!here.length) continue;
      const lines = here.map(({ name, about, page, find }) => option(addressOf(page, find ? { find } : {}), name, about));
      groups.push(element("div", { role: "group", "aria-label": head }, element("b", { "aria-hidden": "true" }, head), ...lines));
    }
    if (text && entries && !hits.length) groups.push(element("p", {}, `Nothing here is called “${text}”. ${NOTHING}`));
    if (text && !entries) groups.push(element("p", {}, fault || LOADING));
    if (text) groups.push(element("div", { role: "group", "aria-label": "Everything else" }, option(more(text), `Look for “${text}” in all formulas, units and tables`)));
    shown.replaceChildren(...groups);
    open(Boolean(text));
    choose(hits.length ? 0 : waiting() ? -1 : options.length - 1);
    told.textContent = !text ? "" : waiting() ? LOADING : hits.length ? `${hits.length} found` : "Nothing found";
  }

  function open(isOpen) {
    shown.classList.toggle("wtw-open", isOpen);
    box.setAttribute("aria-expanded", String(isOpen));
  }

  function leave() {
    box.value = "";
    entered = false;
    look();
    left();
  }

  // Made by a program of its own, so it is asked for once the first page has all it needs.
  window.addEventListener("wire-to-water:settled", () => setTimeout(load, LATER), { once: true });
  box.addEventListener("focus", () => { void load(); if (box.value) look(); });
  box.addEventListener("input", () => { entered = false; look(); });
  box.addEventListener("keydown", (event) => {
    const steps = { ArrowDown: 1, ArrowUp: -1 };
    if (event.key in steps && options.length) step(steps[event.key]);
    else if (event.key === "Enter" && box.value.trim()) enter();
    else if (event.key === "Escape") { leave(); box.blur(); }
    else return;
    event.preventDefault();
    event.stopPropagation();
  });
  window.addEventListener("wire-to-water:leaves", leave);
  window.addEventListener("pointerdown", ({ target }) => { if (!node.contains(target)) open(false); });
  node.addEventListener("focusout", ({ relatedTarget }) => { if (!node.contains(relatedTarget)) open(false); });
  window.addEventListener("keydown", (event) => {
    const asked = (event.key === "k" && (event.ctrlKey || event.metaKey)) || (event.key === "/" && !isTyping(event));
    if (!asked || event.defaultPrevented || !node.isConnected) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    wanted();
    box.focus();
    box.select();
  }, true);
  return { node, onWanted: (before, after) => { wanted = before; left = after; } };
}
