/* Opens the pages of the static site, one after another in one view.
 *
 * Only the static site has this file. Starting Python takes seconds in a browser, so it starts as
 * early as can be, and a link leads to the next page on the Python that runs already. What runs in
 * a page, and when, is the work of its neighbour wire-to-water. It is written by hand in the form of
 * a module-federation container, so nothing is built.
 */
(() => {
  const NAME = "wire-to-water-site";
  const WORKER_PATIENCE = 5_000; // ms; without its service worker a browser keeps no answers

  let shared; // JupyterLab's table of the modules it shares with extensions

  async function borrow(module) {
    const [copy] = Object.values(shared[module]);
    return (await copy.get())();
  }

  const words = () => new URL(location.href).searchParams;

  /* The page that an address asks for; the opening page where there is none such. */
  function pageOf(searchParams, pages) {
    const path = searchParams.get("path");
    return pages.includes(path) ? path : pages[0];
  }

  /* The service worker carries what Python writes; a page without one goes on after a while. */
  function workerReady() {
    const { serviceWorker } = navigator;
    if (!serviceWorker) return null; // not a safe address, or a private window
    const late = new Promise((resolve) => setTimeout(resolve, WORKER_PATIENCE));
    return Promise.race([serviceWorker.ready, late]);
  }

  /* Python cannot see the address of the page. Percent signs leave nothing that ends a string. */
  function tell(kernel, base) {
    const query = encodeURIComponent(location.search.slice(1));
    const site = encodeURIComponent(base);
    const code = `from workbook.online import address\naddress.tell("${site}", "${query}")\ndel address`;
    kernel.requestExecute({ code, silent: true, store_history: false });
  }

  function makeSite({ commands, serviceManager, shell }, pages, base) {
    let kernel = null; // the one that all pages share

    /* Python starts before there is a page; the page finds it by its own path. */
    async function startPython(path) {
      await Promise.all([workerReady(), serviceManager.ready]);
      const options = { path, name: path, type: "notebook", kernel: { name: "python" } };
      const session = await serviceManager.sessions.startNew(options);
      session.dispose(); // only this hold on it: the first to hold it would get what widgets send
    }

    async function show(path) {
      const options = { ref: "_noref" };
      const sharing = kernel ? { kernel: { id: kernel.id } } : {};
      await commands.execute("docmanager:open", { path, factory: "Notebook", options, ...sharing });
    }

    async function follow() {
      shell.currentWidget?.dispose();
      await show(pageOf(words(), pages));
    }

    /* A link to a page changes the page; any other goes where it leads. */
    function onClick(event) {
      const link = event.target.closest("a[href]");
      if (!link || event.button || event.ctrlKey || event.metaKey || event.shiftKey) return;
      const target = link.dataset.page ?? targetOf(link);
      if (!target) return;
      event.preventDefault();
      event.stopImmediatePropagation();
      history.pushState(null, "", target);
      void follow();
    }

    /* Where a link leads within the site, or null. */
    function targetOf(link) {
      const url = new URL(link.getAttribute("href"), base);
      const name = decodeURIComponent(url.pathname.split("/").pop());
      if (url.origin !== location.origin || !url.href.startsWith(base)) return null;
      if (pages.includes(name)) return `${base}?path=${encodeURIComponent(name)}`;
      return url.href.split(/[?#]/)[0] === base ? url.href : null;
    }

    function onPage(panel) {
      const { sessionContext } = panel;
      const told = () => {
        kernel = sessionContext.session?.kernel ?? kernel;
        if (sessionContext.session?.kernel) tell(sessionContext.session.kernel, base);
      };
      void sessionContext.ready.then(told);
      sessionContext.statusChanged.connect((_, status) => status === "restarting" && told());
    }

    return { startPython, show, follow, onClick, onPage };
  }

  /* Menus, bars and logo are for those who write notebooks. */
  function clear(shell) {
    shell.collapseTop();
    shell.menu.setHidden(true);
  }

  async function makePlugin() {
    const { INotebookTracker } = await borrow("@jupyterlab/notebook");
    const { PageConfig } = await borrow("@jupyterlab/coreutils");
    return {
      id: `${NAME}:pages`,
      description: "Opens the pages of the static site, one after another in one view.",
      autoStart: true,
      requires: [INotebookTracker],
      activate: (app, tracker) => {
        const pages = Object.keys(JSON.parse(PageConfig.getOption("wireToWaterPages") || "{}"));
        const site = makeSite(app, pages, new URL(".", location.href).href);
        tracker.widgetAdded.connect((_, panel) => site.onPage(panel));
        window.addEventListener("click", site.onClick, true);
        window.addEventListener("popstate", () => void site.follow());
        const path = pageOf(words(), pages);
        const python = site.startPython(path);
        void app.started.then(async () => {
          clear(app.shell);
          await python;
          await site.show(path);
        });
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
