/* Runs the workbook's own pages when they open, and shows them as pages.
 *
 * JupyterLab has no setting that runs a notebook on opening, and a reader should not have to know
 * what a cell is. JupyterLab, its one-document views and the static site all load this file as it
 * stands: it is written by hand in the form of a module-federation container, so nothing is built.
 *
 * Any notebook could carry our mark, and running a stranger's code unasked is dangerous. So a page
 * runs only when the server lists its path (see workbook/server.py) and every code cell in it is
 * letter for letter the one that ships.
 *
 * A page that a trainer sends comes from outside, so it never runs unasked: a button starts it. Its
 * code is put out of sight only where each cell is a call of the workbook, as the writer makes it.
 */
(() => {
  const NAME = "wire-to-water";
  const MARK = "wire_to_water";
  const STYLE = new URL("page.f88dc304d624.css", document.currentScript.src).href;
  // ms, between two questions; one to a program that is just ending or coming gets no answer
  const ASK_SOON = 125;
  const ASK_AGAIN = 2_000;
  const PATIENCE = 90_000; // ms; longer than a first start on an old laptop
  const SET_LINE =
    /^# [^\n]*\nfrom workbook import page\n\npage\.(cautions|set_(work|question|mark))\([\w", ]*\)$/;
  const START = "Start this page";
  const AGAIN = "Start this page again";
  const FROM_TRAINER = "This page comes from your trainer. Start it only if you expect it.";
  const FROM_ELSEWHERE =
    "Some code here isn't the workbook's. Start it only if you trust whoever wrote it.";
  const RETRIES = 2; // a page whose own program ends it must not start for ever

  let shared; // JupyterLab's table of the modules it shares with extensions

  async function borrow(module) {
    const [copy] = Object.values(shared[module]);
    return (await copy.get())();
  }

  function isMarked(model) {
    return Boolean(model.getMetadata(MARK)?.page);
  }

  /* A set of work, by the mark that its writer gives it. */
  function isSet(model) {
    return isMarked(model) && typeof model.getMetadata(MARK).set === "string";
  }

  function sources(model) {
    const cells = Array.from(model.cells).filter((cell) => cell.type === "code");
    return cells.map((cell) => cell.sharedModel.getSource());
  }

  function isOurs(context, shipped) {
    const path = context.path.replace(/^[^/:]*:/, ""); // a drive's name may stand before it
    const wanted = Object.hasOwn(shipped, path) ? shipped[path] : null;
    return wanted !== null && JSON.stringify(sources(context.model)) === JSON.stringify(wanted);
  }

  function element(tag, attributes, text) {
    const node = Object.assign(document.createElement(tag), { textContent: text });
    Object.entries(attributes).forEach(([name, value]) => node.setAttribute(name, value));
    return node;
  }

  /* The strip above a page stands in for the toolbar: one line of state and two buttons. */
  function makeStrip(panel, Widget, start) {
    const node = element("div", { class: "wtw-strip" }, "");
    const line = element("span", { role: "status", class: "wtw-state" }, "");
    const again = element("button", { type: "button" }, AGAIN);
    const code = element("button", { type: "button", "aria-pressed": "false" }, "Show the code");
    again.addEventListener("click", () => {
      const afresh = again.textContent === AGAIN;
      again.textContent = AGAIN;
      start(afresh);
    });
    code.addEventListener("click", () => {
      strip.showCode(code.getAttribute("aria-pressed") !== "true");
    });
    node.append(line, again, code);
    const strip = new Widget({ node });
    strip.say = (state, text) => {
      node.dataset.state = state;
      line.textContent = text;
    };
    strip.showCode = (shown) => {
      code.setAttribute("aria-pressed", String(shown));
      showAsPage(panel, !shown);
    };
    strip.waitForReader = (text) => {
      again.textContent = START;
      strip.say("waiting", text);
    };
    panel.contentHeader.addWidget(strip);
    return strip;
  }

  /* A page to read, or the notebook it is made of. On a page, single keys must not cut cells. */
  function showAsPage(panel, asPage) {
    panel.toggleClass("wtw-reading", asPage);
    panel.toolbar.setHidden(asPage);
    for (const cell of panel.content.widgets) {
      cell.node.toggleAttribute("data-lm-suppress-shortcuts", asPage);
      cell.node.toggleAttribute("data-wtw-aside", isEmptyAnswer(cell.model));
    }
  }

  /* A cell to write into where no card shows; one that was written into stays in sight. */
  function isEmptyAnswer({ sharedModel }) {
    const { answer } = sharedModel.getMetadata(MARK) ?? {};
    return Boolean(answer) && !/Answer:\s*\S/.test(sharedModel.getSource());
  }

  /* A double click marks a word to read or copy; it must not open the text for change. */
  function keepTextClosed(event) {
    const inPage = event.target.closest(".wtw-reading");
    if (inPage && event.target.closest(".jp-MarkdownCell")) event.stopPropagation();
  }

  /* An address with /doc/ shows one page; there, tools for files and code only take room. */
  async function clearAround({ commands, shell, restored }) {
    await restored;
    if (shell.mode !== "single-document") return;
    const bars = [
      ["application:toggle-side-tabbar", { side: "left" }],
      ["application:toggle-side-tabbar", { side: "right" }],
      ["application:toggle-header", {}],
    ];
    for (const [command, which] of bars) {
      if (commands.isToggled(command, which)) await commands.execute(command, which);
    }
  }

  /* JupyterLab opens a link in place, and then the browser's Back changes the address alone. */
  function followBack(shell) {
    const path = shell.mode === "single-document" && shell.currentWidget?.context?.path;
    if (path && !decodeURI(location.pathname).endsWith(`/${path}`)) location.reload();
  }

  const pause = (time) => new Promise((resolve) => setTimeout(resolve, time));

  /* Put a new program behind a page, whether or not there still is one. */
  async function renew(sessionContext) {
    const kernel = sessionContext.session?.kernel;
    if (kernel && !kernel.isDisposed) return sessionContext.restartKernel();
    // The server may have forgotten the session too; JupyterLab learns that only by asking.
    await sessionContext.sessionManager.refreshRunning();
    return sessionContext.changeKernel({ name: sessionContext.prevKernelName });
  }

  /* Wait until the program behind a page answers; nothing JupyterLab keeps says that it is there. */
  async function answer(sessionContext) {
    let heard = false;
    for (let wait = ASK_SOON; !heard; wait = Math.min(2 * wait, ASK_AGAIN)) {
      const kernel = sessionContext.session?.kernel;
      if (!kernel || kernel.isDisposed) throw new Error("The program is gone.");
      const asked = kernel.requestKernelInfo().then(
        (reply) => { heard ||= Boolean(reply); },
        () => pause(wait), // not connected yet, or the program ended over the question
      );
      await Promise.race([asked, pause(wait)]);
    }
  }

  /* Returns what starts a page, and again with a new program when asked for that.
   *
   * When a program ends, the server soon puts a new one in its place by itself, and says
   * "autorestarting" before that one is there. A restart asked for meanwhile would set two programs
   * on the same ports and lose answers for good, so a replaced program is only waited for.
   */
  function makeStart({ content, context, sessionContext }, NotebookActions, say) {
    let newest = 0; // only the newest start goes on and speaks
    let underWay = false;
    let replaced = false; // by the server, since the page last began to run
    // The static site has more to do around a page.
    const announce = (what) =>
      content.node.dispatchEvent(new CustomEvent(`wire-to-water:${what}`, { bubbles: true }));

    async function run(afresh, wanted, retries) {
      if (afresh && !replaced) await renew(sessionContext);
      await answer(sessionContext);
      if (!wanted()) return false;
      replaced = false;
      announce("starts");
      // Run as a list, the cells stay where they are; "run all" goes to the foot of the page.
      const done = await NotebookActions.runCells(content, content.widgets, sessionContext);
      // The program ended meanwhile: what it made is gone.
      if (replaced) return retries > 0 && run(false, wanted, retries - 1);
      // What a run leaves on our page is made again on opening, so there is nothing to save. On one
      // that is handed in, the questions stay readable, and what was written into it must be kept.
      if (isSet(context.model)) context.save().catch(console.error);
      else context.model.dirty = false;
      return done;
    }

    function ended(byServer) {
      replaced = byServer;
      if (newest && !underWay) say("stopped", `This page has stopped. Choose ${AGAIN}.`);
    }

    sessionContext.statusChanged.connect((_, status) => {
      if (status === "dead" || status === "autorestarting") ended(status === "autorestarting");
    });
    // A program that is gone for good may take its session along before its state is told.
    sessionContext.sessionChanged.connect((_, { newValue }) => newValue || ended(false));

    return async function start(afresh) {
      const mine = ++newest;
      const wanted = () => mine === newest;
      const tell = (state, text) => wanted() && say(state, text);
      const late = setTimeout(() => {
        if (wanted()) replaced = false; // it never came: the next start asks for one itself
        tell("slow", `This is taking a long time. You can wait, or choose ${AGAIN}.`);
      }, PATIENCE);
      underWay = true;
      say("starting", "Getting this page ready. The first page can take a minute.");
      try {
        await sessionContext.ready;
        const done = await run(afresh, wanted, RETRIES);
        if (done) tell("ready", "This page is ready.");
        else tell("stopped", `Part of this page didn't start. Choose ${AGAIN}.`);
      } catch (error) {
        if (wanted()) console.error(error);
        tell("stopped", `This page couldn't start. Choose ${AGAIN}.`);
      }
      clearTimeout(late);
      if (wanted()) underWay = false;
      if (wanted()) announce("settled");
    };
  }

  async function openPage(app, panel, shipped) {
    await panel.context.ready;
    const { context } = panel;
    const ours = isMarked(context.model) && isOurs(context, shipped);
    const kind = ours ? "page" : isSet(context.model) ? "set" : "other";
    panel.node.dataset.wireToWater = kind;
    if (kind === "other") return;
    const { NotebookActions } = await borrow("@jupyterlab/notebook");
    const { Widget } = await borrow("@lumino/widgets");

    const strip = makeStrip(panel, Widget, (afresh) => start(afresh));
    const start = makeStart(panel, NotebookActions, strip.say);
    panel.node.addEventListener("dblclick", keepTextClosed, true);
    if (ours) {
      showAsPage(panel, true);
      await Promise.all([clearAround(app), start(false)]);
      return;
    }
    const plain = sources(context.model).every((source) => SET_LINE.test(source));
    strip.waitForReader(plain ? FROM_TRAINER : FROM_ELSEWHERE);
    strip.showCode(!plain);
    if (!plain) panel.content.widgets.forEach((cell) => { cell.inputHidden = false; });
    await clearAround(app);
  }

  async function makePlugin() {
    const { INotebookTracker } = await borrow("@jupyterlab/notebook");
    const { PageConfig } = await borrow("@jupyterlab/coreutils");
    return {
      id: `${NAME}:pages`,
      description: "Runs the workbook's own pages when they open and shows them as pages.",
      autoStart: true,
      requires: [INotebookTracker],
      activate: (app, tracker) => {
        const shipped = JSON.parse(PageConfig.getOption("wireToWaterPages") || "{}");
        document.head.append(element("link", { rel: "stylesheet", href: STYLE }, ""));
        window.addEventListener("popstate", () => followBack(app.shell));
        tracker.widgetAdded.connect((_, panel) => void openPage(app, panel, shipped));
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
