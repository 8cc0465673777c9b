/* Leads from page to page in one view, on one Python.
 *
 * A link to another page opens it in place, and the address changes with it, so that Back leads back.
 * The page that is left is closed first: its widgets go, and the next page gets what Python sends.
 */
const SOON = 500; // ms that a page left may take to close its widgets; a busy Python takes longer
const NAME = "Wire to Water";
const LATE = 30_000; // ms in which JupyterLab, on a busy computer, may still open the first page, or start a program
const OWN = ["token", "_xsrf"]; // words of an address that are the server's

/* How addresses are built: the site's one page has the path after a question mark. */
function placesOf(site, base) {
  const within = (url) => url.origin + url.pathname === base || url.href.startsWith(base);
  const rest = (url) => decodeURIComponent((url.origin + url.pathname).slice(base.length));
  const lead = location.href.slice(base.length).match(/^doc(\/workspaces\/[^/]+)?\/tree\//)?.[0];
  const words = (url) => {
    const kept = new URLSearchParams(url.search);
    for (const name of ["path", ...OWN]) kept.delete(name);
    return kept;
  };
  const encoded = (path) => path.split("/").map(encodeURIComponent).join("/");
  const onSite = {
    pathOf: (url) => url.searchParams.get("path") ?? rest(url).split("/").pop(),
    addressOf: (path, more = "") => {
      const query = new URLSearchParams({ path });
      new URLSearchParams(more).forEach((value, name) => query.set(name, value));
      return `${base}?${query}`;
    },
  };
  const onServer = {
    pathOf: (url) =>
      rest(url).match(/^(?:files|(?:doc|lab)(?:\/workspaces\/[^/]+)?\/tree)\/(.+)$/)?.[1] ?? "",
    addressOf: (path, more = "") => {
      const query = String(new URLSearchParams(more));
      return `${base}${lead ?? "doc/tree/"}${encoded(path)}${query ? `?${query}` : ""}`;
    },
  };
  const { pathOf, addressOf } = site ? onSite : onServer;
  return {
    addressOf,
    /* The page that a link leads to, with words for it; null for any other link. */
    targetOf(href) {
      const url = new URL(href, location.href);
      const path = within(url) ? pathOf(url) : "";
      return path.endsWith(".ipynb") ? { path, words: words(url) } : null;
    },
  };
}

/* A tab has the name of its page; JupyterLab now and then gives it another. */
function makeTabNamer(siteName) {
  let wanted = siteName;
  const put = () => document.title === wanted || (document.title = wanted);
  new MutationObserver(put).observe(document.querySelector("title"), { childList: true });
  return (model) => {
    const [line] = model.cells.get(0)?.sharedModel.getSource().split("\n") ?? [""];
    const heading = line.replace(/^#+\s*/, "");
    wanted = heading === siteName ? siteName : `${heading} - ${siteName}`;
    put();
  };
}

function run(kernel, code) {
  return kernel.requestExecute({ code, silent: true, store_history: false }).done;
}

/* Of a page that is left before it has its program JupyterLab forgets the connection, which then takes, for
 * good, all that Python sends to later pages. */
function hasProgram({ sessionContext }) {
  const late = new Promise((done) => setTimeout(done, LATE));
  return Promise.race([sessionContext.initialize().catch(() => {}), late]);
}

export function makeWay({ app, tracker, base, site, inPlace, isPage, plainPath, router, SessionAPI }) {
  const { commands, serviceManager } = app;
  const places = placesOf(site, base);
  const here = () => places.targetOf(location.href);
  let shown = location.href; // a place within a page changes the address as well
  let kernel = null; // all pages share one
  let asked = null; // the page opened last at a wish: the address has it, or by now a later wish
  let turn = Promise.resolve();
  const first = { path: here()?.path, leftAt: 0 }; // the page that the browser was sent to
  const nameTab = inPlace ? makeTabNamer(NAME) : () => {};

  function open(path, sharing = {}) {
    const options = { ref: "_noref" };
    return commands.execute("docmanager:open", { path, factory: "Notebook", options, ...sharing });
  }

  /* JupyterLab asks for a program late, and tells the server no path with it; it opens the page once it has
   * put back the windows of last time, of which there are none here. So this does both first. */
  function startEarly(path) {
    const options = { path, name: path.split("/").pop(), type: "notebook", kernel: { name: "python3" } };
    void SessionAPI.startSession(options, serviceManager.serverSettings).catch(console.error);
    void app.started.then(() => here()?.path === path && open(path)).catch(console.error);
  }

  async function leave(panel) {
    const { context, sessionContext } = panel;
    // The server keeps a page of ours as it ships, and JupyterLab would say so in a window of its own.
    const kept = context.model.readOnly || (!site && isPage(plainPath(context.path)));
    if (context.model.dirty && !kept) await context.save().catch(console.error);
    const program = sessionContext.session?.kernel;
    if (program?.status === "dead" || !program) return;
    const closed = run(program, `from workbook.ui import left\nleft.close("${program.clientId}")\ndel left`);
    await Promise.race([closed.catch(() => {}), new Promise((done) => setTimeout(done, SOON))]);
  }

  /* The address has changed: what it asks for takes the place of what is shown. */
  async function follow() {
    const target = here();
    if (!target || location.href === shown) return;
    shown = location.href;
    const panel = tracker.currentWidget;
    if (panel && plainPath(panel.context.path) === first.path) first.leftAt = Date.now();
    if (panel) {
      await hasProgram(panel);
      await leave(panel);
    }
    panel?.dispose();
    const sharing = kernel && isPage(target.path) ? { kernel: { id: kernel.id } } : {};
    asked = target.path;
    await open(target.path, sharing);
  }

  const inTurn = () => { turn = turn.then(follow).catch(console.error); };

  function targetAt({ target }) {
    const link = target instanceof Element ? target.closest("a[href]:not([download])") : null;
    const leads = link && places.targetOf(link.href);
    return leads && (!site || isPage(leads.path)) ? { link, ...leads } : null;
  }

  /* A link that is opened elsewhere, or copied, must lead to the page and not to its file. */
  function mend(event) {
    const found = targetAt(event);
    if (found) found.link.href = places.addressOf(found.path, found.words);
  }

  /* As a class's report does. In a page's text it is JupyterLab that says so, of a link mended before. */
  const opensBeside = (link) => link.target === "_blank" && !link.closest(".jp-RenderedMarkdown");

  function onClick(event) {
    const found = targetAt(event);
    if (!found || event.button || event.ctrlKey || event.metaKey || event.shiftKey) return;
    if (opensBeside(found.link)) return;
    event.preventDefault();
    event.stopImmediatePropagation();
    go(found.path, found.words);
  }

  function go(path, words = "") {
    window.dispatchEvent(new Event("wire-to-water:leaves")); // whatever is open closes
    const address = places.addressOf(path, words);
    if (address !== location.href) history.pushState(null, "", address);
    inTurn();
  }

  /* Python cannot see the address, and is told which page makes the widgets. Percent signs end no string. */
  function tell(program) {
    const query = encodeURIComponent(String(here()?.words ?? ""));
    const said = site ? "" : `static_site.tell("", "${query}")\n`;
    run(program, `from workbook.ui import left, static_site\n${said}left.watch()\ndel left, static_site`);
  }

  function onPage({ context, node, sessionContext }) {
    void context.ready.then(() => nameTab(context.model));
    node.addEventListener("wire-to-water:starts", () => {
      const program = sessionContext.session?.kernel;
      if (!program) return;
      tell(program);
      if (node.dataset.wireToWater === "page") kernel = program;
    });
    sessionContext.statusChanged.connect((_, status) => {
      if (status === "dead" && sessionContext.session?.kernel?.id === kernel?.id) kernel = null;
    });
  }

  /* JupyterLab may open a notebook by itself; then the address follows. But the first page, which it
   * opens by itself too, may come after the reader has left it. */
  function onCurrent(panel) {
    const path = panel && plainPath(panel.context.path);
    if (!panel || path === asked || path === here()?.path) return;
    if (path === first.path && Date.now() - first.leftAt < LATE) {
      panel.dispose();
      return;
    }
    asked = null;
    history.pushState(null, "", places.addressOf(path));
    shown = location.href;
  }

  if (inPlace) {
    // JupyterLab would put each change of page into the history twice, without its words.
    if (!site) router.navigate = () => {};
    if (!site && isPage(here()?.path)) startEarly(here().path);
    tracker.currentChanged.connect((_, panel) => onCurrent(panel));
    tracker.widgetAdded.connect((_, panel) => onPage(panel));
    window.addEventListener("click", onClick, true);
    for (const event of ["pointerover", "focusin"]) window.addEventListener(event, mend, true);
    window.addEventListener("popstate", inTurn);
    window.addEventListener("pagehide", () => { if (tracker.currentWidget) void leave(tracker.currentWidget); });
  }
  /* What a page is made of, for whoever is curious: a copy, as the page itself stays as it is. */
  async function openCopy({ path }) {
    const folder = plainPath(path).split("/").slice(0, -1).join("/");
    const made = await serviceManager.contents.copy(path, folder);
    go(plainPath(made.path));
  }

  /* What a reader made of pages, or brought along, beside the pages of a folder. */
  async function ownNotebooks(folder) {
    if (site) return [];
    const { content } = await serviceManager.contents.get(folder, { content: true });
    const own = content.filter(({ type, path }) => type === "notebook" && !isPage(plainPath(path)));
    return own.map(({ name, path }) => ({ name: name.replace(/\.ipynb$/, ""), path: plainPath(path) }));
  }

  return { openCopy, ownNotebooks, addressOf: places.addressOf, here: () => here()?.path };
}
