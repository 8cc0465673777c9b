/* Opens the pages of the static site, one after another in one view.
 *
 * Only the static site has this file. Starting Python takes seconds in a browser, so it starts as
 * early as can be, and a link leads to the next page on the Python that runs already. What runs in
 * a page, and when, is the work of its neighbour wire-to-water, which tells of it by events. It is
 * written by hand in the form of a module-federation container, so nothing is built.
 */
(() => {
  const NAME = "wire-to-water-site";

  let shared; // JupyterLab's table of the modules it shares with extensions

  async function borrow(module) {
    const [copy] = Object.values(shared[module]);
    return (await copy.get())();
  }

  /* The page that the address asks for; the opening page where there is none such. */
  function pageOf(address, pages) {
    const path = new URL(address).searchParams.get("path");
    return pages.includes(path) ? path : pages[0];
  }

  /* Once a page is there, all others are kept for when the network is away. */
  const keepAll = () => void navigator.serviceWorker?.controller?.postMessage("keep");

  function run(kernel, code) {
    kernel?.requestExecute({ code, silent: true, store_history: false });
  }

  /* Python cannot see the page's address, and has no files yet. Percent signs end no string. */
  function prepare(kernel, base) {
    const [site, query] = [base, location.search.slice(1)].map(encodeURIComponent);
    run(
      kernel,
      `from workbook.log import journal
from workbook.ui import static_site
static_site.tell("${site}", "${query}")
await journal.open_journal(static_site.site())
del journal, static_site`,
    );
  }

  function fetchPictures(kernel) {
    run(kernel, "from workbook.ui import static_site\nstatic_site.fetch_pictures()\ndel static_site");
  }

  /* A tab has the name of its page; JupyterLab now and then gives it another. */
  function tabNamer(siteName) {
    let wanted = siteName;
    const put = () => document.title === wanted || (document.title = wanted);
    new MutationObserver(put).observe(document.querySelector("title"), { childList: true });
    return (model) => {
      const [line] = model.cells.get(0).sharedModel.getSource().split("\n");
      const heading = line.replace(/^#+\s*/, "");
      wanted = heading === siteName ? siteName : `${heading} - ${siteName}`;
      put();
    };
  }

  /* Where a link leads within the site; null for any other. */
  function targetOf(link, pages, base) {
    const url = new URL(link.getAttribute("href"), base);
    if (!url.href.startsWith(base)) return null;
    const name = decodeURIComponent(url.pathname.split("/").pop());
    if (pages.includes(name)) return `${base}?path=${encodeURIComponent(name)}`;
    return url.href.split(/[?#]/)[0] === base ? url.href : null;
  }

  function makeSite({ commands, name, serviceManager, shell }, pages, base) {
    let kernel = null; // all pages share one
    let shown = location.search; // a place within a page changes the address as well
    const nameTab = tabNamer(name);

    /* Python starts before there is a page; the page finds it by its own path. */
    async function startPython(path) {
      await serviceManager.ready;
      const options = { path, name: path, type: "notebook", kernel: { name: "python" } };
      const session = await serviceManager.sessions.startNew(options);
      session.dispose(); // only this hold on it: the first to hold it would get what widgets send
    }

    async function show(path) {
      const options = { ref: "_noref" };
      const sharing = kernel ? { kernel: { id: kernel.id } } : {};
      await commands.execute("docmanager:open", { path, factory: "Notebook", options, ...sharing });
    }

    /* The address has changed. */
    async function follow() {
      if (location.search === shown) return;
      shown = location.search;
      shell.currentWidget?.dispose();
      await show(pageOf(location.href, pages));
    }

    /* A link that is opened elsewhere, or copied, must lead to the page and not to its file. */
    function onLink({ target, type }) {
      const link = target instanceof Element ? target.closest("a[href]") : null;
      const place = link && targetOf(link, pages, base);
      if (place && type !== "click") link.href = place;
      return place;
    }

    function onClick(event) {
      const place = onLink(event);
      if (!place || event.button || event.ctrlKey || event.metaKey || event.shiftKey) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      history.pushState(null, "", place);
      void follow();
    }

    function onPage({ context, node, sessionContext }) {
      void context.ready.then(() => nameTab(context.model));
      node.addEventListener("wire-to-water:starts", () => {
        kernel = sessionContext.session?.kernel;
        prepare(kernel, base);
      });
      node.addEventListener("wire-to-water:settled", () => {
        fetchPictures(sessionContext.session?.kernel);
        keepAll();
      });
    }

    return { startPython, show, follow, onLink, onClick, onPage };
  }

  /* Menus, bars and logo are for those who write notebooks. */
  function clear(shell) {
    shell.collapseTop();
    shell.menu.setHidden(true);
    document.getElementById("opening")?.remove();
  }

  function start(app, tracker, pages) {
    const site = makeSite(app, pages, new URL(".", location.href).href);
    tracker.widgetAdded.connect((_, panel) => site.onPage(panel));
    window.addEventListener("click", site.onClick, true);
    for (const event of ["pointerover", "focusin"]) window.addEventListener(event, site.onLink, true);
    window.addEventListener("popstate", () => void site.follow());
    const path = pageOf(location.href, pages);
    const python = site.startPython(path);
    void app.started.then(async () => {
      await python;
      clear(app.shell);
      await site.show(path);
    });
  }

  async function makePlugin() {
    const { INotebookTracker } = await borrow("@jupyterlab/notebook");
    const { PageConfig } = await borrow("@jupyterlab/coreutils");
    return {
      id: `${NAME}:pages`,
      description: "Opens the pages of the website one after another in one view.",
      autoStart: true,
      requires: [INotebookTracker],
      activate: (app, tracker) => {
        start(app, tracker, Object.keys(JSON.parse(PageConfig.getOption("wireToWaterPages"))));
      },
    };
  }

  window._JUPYTERLAB ??= {};
  window._JUPYTERLAB[NAME] = {
    init: (scope) => { shared = scope; },
    get: async () => {
      const plugin = await makePlugin();
      return () => ({ __esModule: true, default: plugin });
    },
  };
})();
