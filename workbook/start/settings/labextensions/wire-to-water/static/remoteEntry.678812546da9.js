/* Makes the workbook of JupyterLab: runs its own pages when they open, under a bar of its own.
 *
 * JupyterLab has no setting that runs a notebook on opening, and a reader should not have to know
 * what a cell is. JupyterLab, its one-document views and the static site all load this file as it
 * stands: it is written by hand in the form of a module-federation container, so nothing is built.
 */
(() => {
  const NAME = "wire-to-water";
  const HERE = document.currentScript.src;
  const at = (file) => new URL(file, HERE).href;
  const STYLES = ["page.5b9763d90a1e.css", "bar.dd7d3739e0e1.css"].map(at);
  const PARTS = ["page.3c4ae56aa8b1.js", "start.439d3f5d1d94.js", "way.da1270e409ed.js", "bar.f2c1d6e44bd7.js", "search.956799a70f90.js"].map(at);

  const WIDGETS = ["base", "controls", "output"].map((part) => `@jupyter-widgets/${part}`);

  let shared; // JupyterLab's table of the modules it shares with extensions

  async function borrow(module) {
    const [copy] = Object.values(shared[module]);
    return (await copy.get())();
  }

  /* An address with /doc/ shows one page; there, tools for files and code only take room. */
  async function clearAround({ commands, shell, restored }, kind) {
    await restored;
    if (shell.mode !== "single-document") return;
    for (const side of ["left", "right"]) {
      const which = ["application:toggle-side-tabbar", { side }];
      if (commands.isToggled(...which)) await commands.execute(...which);
    }
    // Whoever opened a notebook of their own wants the menus.
    for (const part of shell.layout.widgets) {
      if (part.id === "jp-top-panel") part.hide();
      if (part.id === "jp-menu-panel") part.setHidden(kind !== "other");
    }
  }

  /* On a page, JupyterLab's single keys must not cut cells to pieces. */
  function keepKeysOff({ commands }, tracker) {
    const process = commands.processKeydownEvent.bind(commands);
    commands.processKeydownEvent = (event) => {
      if (!tracker.currentWidget?.hasClass("wtw-reading")) process(event);
    };
  }

  function markKeyboardUse() {
    const mark = (used) => document.body.classList.toggle("wtw-keys", used);
    window.addEventListener("keydown", ({ key }) => { if (key === "Tab") mark(true); }, true);
    window.addEventListener("pointerdown", () => mark(false), true);
  }

  /* A telephone shows its number keys for a number. */
  function askForNumbers() {
    const ask = ({ target }) => {
      const box = target.closest?.(".w2w-number")?.querySelector("input");
      if (box) box.inputMode = "decimal";
    };
    for (const event of ["pointerdown", "focusin"]) window.addEventListener(event, ask, true);
  }

  const setting = (PageConfig, name) => JSON.parse(PageConfig.getOption(name) || "{}");

  async function makePlugin() {
    const [page, { AGAIN, makeStart }, { makeWay }, { makeBar }, { makeSearch }] = await Promise.all(
      PARTS.map((part) => import(part)),
    );
    const { INotebookTracker, NotebookActions } = await borrow("@jupyterlab/notebook");
    const { PageConfig } = await borrow("@jupyterlab/coreutils");
    const { SessionAPI } = await borrow("@jupyterlab/services");
    const { IRouter } = await borrow("@jupyterlab/application");
    const { element, openPage, plainPath } = page;

    function activate(app, tracker, router) {
      const shipped = setting(PageConfig, "wireToWaterPages");
      const site = PageConfig.getOption("wireToWaterSite") === "yes";
      const base = site ? new URL(".", location.href).href : PageConfig.getBaseUrl();
      const inPlace = site || PageConfig.getOption("mode") === "single-document";
      const isPage = (path) => Object.hasOwn(shipped, path);
      document.head.append(...STYLES.map((href) => element("link", { rel: "stylesheet", href })));
      // Last of all, as what widgets bring of their own yields to it.
      document.body.append(element("style", {}, PageConfig.getOption("wireToWaterLook")));
      keepKeysOff(app, tracker);
      markKeyboardUse();
      askForNumbers();
      const way = makeWay({
        app, tracker, base, site, inPlace, isPage, plainPath, router, SessionAPI,
      });
      const bars = setting(PageConfig, "wireToWaterBars");
      const bar = inPlace && makeBar({ element, bars, way, makeSearch, base });
      const parts = { NotebookActions, AGAIN, makeStart, openCopy: site ? null : way.openCopy };
      if (bar && way.here()) bar.show(way.here());
      // The parts of widgets are otherwise fetched one after another once the first is to be shown.
      for (const part of WIDGETS) void borrow(part).catch(() => {});
      tracker.widgetAdded.connect((_, panel) => {
        if (bar) panel.node.dataset.page = bar.show(plainPath(panel.context.path));
        void openPage(panel, shipped, parts).then((kind) => clearAround(app, kind));
      });
    }

    return {
      id: `${NAME}:pages`,
      description: "Runs the workbook's own pages when they open and shows them as pages.",
      autoStart: true,
      requires: [INotebookTracker],
      optional: [IRouter],
      activate,
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
