/* Opens the first page of the static site, and gets its Python ready.
 *
 * Only the static site has this file. Starting Python takes seconds in a browser, so it starts as
 * early as can be. What runs in a page, and what leads from one to the next on the Python that runs
 * already, is the work of its neighbor wire-to-water, which tells of it by events. It is written by
 * hand in the form of a module-federation container, so nothing is built.
 */
(() => {
  const NAME = "wire-to-water-site";
  const SHARE = new URL("share.a39ea4504d35.js", document.currentScript.src).href;
  const KEPT = new URL("kept.c57037216ee7.js", document.currentScript.src).href;
  const COPIES = { page: "14-your-study.ipynb", text: "open Your study, then choose Make a copy to save." };

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

  function run(kernel, code) {
    kernel?.requestExecute({ code, silent: true, store_history: false });
  }

  /* Python cannot see the page's address, and has no files yet. Percent signs end no string. */
  function prepare(kernel, base, kept, shared) {
    const [site, query] = [base, location.search.slice(1)].map(encodeURIComponent);
    const files = encodeURIComponent(JSON.stringify(shared.splice(0)));
    run(
      kernel,
      `from workbook.log import journal
from workbook.ui import static_site
static_site.tell("${site}", "${query}", "${kept}")
static_site.receive("${files}")
await journal.open_journal(static_site.site())
del journal, static_site`,
    );
  }

  /* Python starts before there is a page; the page finds it by its own path. */
  async function startPython({ ready, sessions }, path) {
    await ready;
    const options = { path, name: path, type: "notebook", kernel: { name: "python" } };
    const session = await sessions.startNew(options);
    session.dispose(); // only this hold on it: the first to hold it would get what widgets send
  }

  /* Menus, bars and logo are for those who write notebooks. */
  function clear(shell) {
    shell.collapseTop();
    shell.menu.setHidden(true);
  }

  function start({ commands, serviceManager, shell, started }, tracker, pages, { makeKept, shareFiles, sharedFiles }) {
    const base = new URL(".", location.href).href;
    const path = pageOf(location.href, pages);
    const kept = makeKept(base, { href: `${base}?path=${COPIES.page}`, textContent: COPIES.text });
    const shared = [];
    void sharedFiles(base).then((files) => shared.push(...files)).catch(console.error);
    shareFiles();
    tracker.widgetAdded.connect((_, { context, node, sessionContext }) => {
      void context.ready.then(() => requestAnimationFrame(() => {
        document.getElementById("opening")?.remove();
        tell();
      }));
      const kernel = () => sessionContext.session?.kernel;
      node.addEventListener("wire-to-water:starts", () => prepare(kernel(), base, kept.answersKept(), shared));
      node.addEventListener("wire-to-water:settled", () => {
        told = "";
        kept.showIn(node);
      });
    });
    /* What is loaded is told on the first page's own line, until there is a page with a line for it. */
    let told = "";
    const tell = () => {
      const line = document.querySelector('.wtw-page[data-state="starting"] .wtw-state');
      if (line && told) line.textContent = told;
    };
    addEventListener("wire-to-water:opening", ({ detail }) => {
      told = detail;
      tell();
    });
    const python = startPython(serviceManager, path);
    void started.then(async () => {
      await python;
      clear(shell);
      const options = { ref: "_noref" };
      await commands.execute("docmanager:open", { path, factory: "Notebook", options });
    });
  }

  async function makePlugin() {
    const { INotebookTracker } = await borrow("@jupyterlab/notebook");
    const { PageConfig } = await borrow("@jupyterlab/coreutils");
    const parts = { ...(await import(KEPT)), ...(await import(SHARE)) };
    return {
      id: `${NAME}:pages`,
      description: "Opens the first page of the website, and gets its Python ready.",
      autoStart: true,
      requires: [INotebookTracker],
      activate: (app, tracker) => {
        start(app, tracker, Object.keys(JSON.parse(PageConfig.getOption("wireToWaterPages"))), parts);
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
