/* The bar above every page: where one can go, and what can be found.
 *
 * It stands in the page before JupyterLab's own parts, so that it is first for the keyboard and for
 * a screen reader. On a narrow screen what does not fit is under "More". Who follows
 * a click on a link says so before by an event.
 */
const OWN = "Your own notebooks";
const ON_A_PHONE = 4; // places that fit there; the first is the name of the workbook itself

/* A button that opens what is under it. Escape, or going elsewhere, closes it. */
function makeFold(button, panel, opens = () => {}) {
  const open = (wanted) => {
    if (wanted) opens();
    button.setAttribute("aria-expanded", String(wanted));
    panel.classList.toggle("wtw-open", wanted);
  };
  const isOpen = () => button.getAttribute("aria-expanded") === "true";
  const holds = (node) => button.contains(node) || panel.contains(node);
  button.addEventListener("click", () => open(!isOpen()));
  for (const part of [button, panel]) {
    part.addEventListener("keydown", (event) => {
      if (event.key !== "Escape" || !isOpen()) return;
      open(false);
      button.focus();
    });
    part.addEventListener("focusout", ({ relatedTarget }) => {
      if (relatedTarget && !holds(relatedTarget)) open(false);
    });
  }
  window.addEventListener("pointerdown", ({ target }) => { if (!holds(target)) open(false); });
  window.addEventListener("wire-to-water:leaves", () => open(false));
  open(false);
  return open;
}

export function makeBar({ element, bars, way, makeSearch, base }) {
  const folders = Object.keys(bars).sort((a, b) => b.length - a.length);
  let links = []; // of what is shown, each with the page it leads to
  let built = null; // the folder whose bar is shown
  const nav = element("nav", { class: "wtw-bar", "aria-label": "Workbook" });

  const below = (folder, name) => (folder ? `${folder}/${name}` : name);
  const folderOf = (path) => folders.find((folder) => !folder || path.startsWith(`${folder}/`));

  function link(folder, { name, page }) {
    const path = below(folder, page);
    const node = element("a", { href: way.addressOf(path) }, name);
    links.push({ node, path });
    return node;
  }

  /* The list of chapters opens under its name. */
  function list(folder, { name, pages }) {
    const button = element("button", { type: "button", class: "wtw-lists", "aria-controls": "wtw-list" }, name);
    const items = pages.map((page) => element("li", {}, link(folder, page)));
    const own = element("div");
    const panel = element("div", { id: "wtw-list", class: "wtw-list" }, element("ul", {}, ...items), own);
    makeFold(button, panel, () => void listOwn(folder, own).catch(console.error));
    return element("li", {}, button, panel);
  }

  async function listOwn(folder, place) {
    const found = await way.ownNotebooks(folder);
    const items = found.map(({ name, path }) =>
      element("li", {}, element("a", { href: way.addressOf(path) }, name)));
    place.replaceChildren(...(items.length ? [element("b", {}, OWN), element("ul", {}, ...items)] : []));
  }

  function build(folder) {
    const { places, search, formulas } = bars[folder];
    links = [];
    built = folder;
    const item = (place) =>
      place.pages ? list(folder, place) : element("li", {}, link(folder, place));
    const first = places.slice(0, ON_A_PHONE).map(item);
    first[0].classList.add("wtw-wide");
    const later = places.slice(ON_A_PHONE).map(item);
    const home = element("a", { class: "wtw-home", href: links[0].node.href, "aria-label": "Wire to Water, home" },
      element("span", { class: "wtw-wide" }, "Wire to Water"), element("span", { class: "wtw-narrow" }, "W→W"));
    nav.replaceChildren(home, element("ul", { class: "wtw-places" }, ...first));
    if (!later.length) return;
    const more = element("button", { type: "button", class: "wtw-more", "aria-controls": "wtw-rest" }, "More");
    const find = search && makeSearch({
      element,
      list: new URL(search, base).href,
      more: (words) => way.addressOf(below(folder, formulas), { find: words }),
      addressOf: (name, words) => way.addressOf(below(folder, name), words),
    });
    const rest = element("div", { id: "wtw-rest", class: "wtw-rest" }, element("ul", { class: "wtw-places" }, ...later));
    if (find) rest.append(find.node);
    const open = makeFold(more, rest);
    find?.onWanted(() => open(true), () => open(false));
    nav.append(more, rest);
  }

  /* Show the bar that belongs to a page, with that page marked; "home" where it is the first one. */
  function show(path) {
    const folder = folderOf(path);
    document.body.classList.toggle("wtw-framed", folder !== undefined);
    if (folder === undefined) {
      nav.remove();
      return "";
    }
    if (folder !== built) build(folder);
    for (const each of links) {
      if (each.path === path) each.node.setAttribute("aria-current", "page");
      else each.node.removeAttribute("aria-current");
    }
    const listed = nav.querySelector(".wtw-list [aria-current]");
    nav.querySelector(".wtw-lists")?.classList.toggle("wtw-here", Boolean(listed));
    if (!nav.isConnected) document.body.prepend(nav);
    return path === links[0].path && bars[folder].search ? "home" : "";
  }

  return { show };
}
