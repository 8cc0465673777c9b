/* Shows the workbook's pages as pages: no code, no tools, a quiet foot; how a page stands, in words.
 *
 * Any notebook could carry our mark, and running a stranger's code unasked is dangerous. So a page
 * runs only when the server lists its path (see workbook/start/server.py) and every code cell in it
 * is letter for letter the one that ships.
 *
 * A page that a trainer sends comes from outside, so it never runs unasked: a button starts it. Its
 * code is put out of sight only where each cell is a call of the workbook, as the writer makes it.
 */
const MARK = "wire_to_water";
const SET_LINE =
  /^# [^\n]*\nfrom workbook import page\n\npage\.(cautions|set_(work|question|mark))\([\w", ]*\)$/;
const START = "Start this page";
const FROM_TRAINER = "This page comes from your trainer. Start it only if you expect it.";
const FROM_ELSEWHERE =
  "Some code here isn't the workbook's. Start it only if you trust whoever wrote it.";

export function element(tag, attributes = {}, ...children) {
  const node = document.createElement(tag);
  Object.entries(attributes).forEach(([name, value]) => node.setAttribute(name, value));
  node.append(...children);
  return node;
}

const isMarked = (model) => Boolean(model.getMetadata(MARK)?.page);

/* A set of work, by the mark that its writer gives it. */
const isSet = (model) => isMarked(model) && typeof model.getMetadata(MARK).set === "string";

/* A path as the server has it; a drive's name may stand before it. */
export const plainPath = (path) => path.replace(/^[^/:]*:/, "");

function sources(model) {
  const cells = Array.from(model.cells).filter((cell) => cell.type === "code");
  return cells.map((cell) => cell.sharedModel.getSource());
}

function isOurs(context, shipped) {
  const path = plainPath(context.path);
  const wanted = Object.hasOwn(shipped, path) ? shipped[path] : null;
  return wanted !== null && JSON.stringify(sources(context.model)) === JSON.stringify(wanted);
}

/* A cell to write into where no card shows; one that was written into stays in sight. */
function isEmptyAnswer({ sharedModel }) {
  const { answer } = sharedModel.getMetadata(MARK) ?? {};
  return Boolean(answer) && !/Answer:\s*\S/.test(sharedModel.getSource());
}

/* A page to read, or the notebook it is made of. */
function showAsPage(panel, asPage) {
  panel.toggleClass("wtw-reading", asPage);
  panel.toolbar.setHidden(asPage);
  for (const cell of panel.content.widgets) {
    cell.node.toggleAttribute("data-wtw-aside", isEmptyAnswer(cell.model));
  }
}

/* A double click marks a word to read or copy; it must not open the text for change. */
function keepTextClosed(event) {
  const inPage = event.target.closest(".wtw-reading");
  if (inPage && event.target.closest(".jp-MarkdownCell")) event.stopPropagation();
}

/* How a page stands: a line that goes once it is ready, and the button that starts it. */
function makeStrip(panel, again, start) {
  const line = element("span", { role: "status", class: "wtw-state" });
  const button = element("button", { type: "button" }, again);
  const node = element("div", { class: "wtw-strip" }, line, button);
  button.addEventListener("click", () => start(panel.node.dataset.state !== "waiting"));
  panel.node.append(node);
  panel.addClass("wtw-page");
  return (state, text) => {
    panel.node.dataset.state = state;
    line.textContent = text;
    button.textContent = state === "waiting" ? START : again;
  };
}

/* What is seldom wanted is at the foot of the page. */
function addFoot(panel, ...parts) {
  panel.node.querySelector(".wtw-foot")?.remove();
  const foot = element("div", { class: "wtw-foot" }, ...parts);
  // A notebook takes the focus back to its cell from whatever else is in it.
  for (const kind of ["focusin", "focusout", "keydown"]) foot.addEventListener(kind, (event) => event.stopPropagation());
  panel.content.node.querySelector(".jp-WindowedPanel-outer").append(foot);
}

function quiet(text, does) {
  const button = element("button", { type: "button" }, text);
  button.addEventListener("click", does);
  return button;
}

/* The code of a set is shown in place, as the set is its reader's own file. */
function codeButton(panel) {
  const button = quiet("Show the code", () => button.show(!panel.hasClass("wtw-reading")));
  button.show = (asPage) => {
    button.setAttribute("aria-pressed", String(!asPage));
    showAsPage(panel, asPage);
  };
  return button;
}

/* What widgets give no word for: whether a button's part is open, and what is told of a box. */
function tellMore(node) {
  let waits = false;
  const tell = () => {
    waits = false;
    for (const button of node.querySelectorAll(".w2w-opens")) {
      button.setAttribute("aria-expanded", String(button.classList.contains("w2w-opened")));
    }
    for (const box of node.querySelectorAll(".w2w-at :is(input, select):not([aria-describedby])")) {
      const [, place] = box.closest(".w2w-at").className.match(/w2w-at-(\w+)/);
      box.setAttribute("aria-describedby", `w2w-where-${place}`);
    }
  };
  const soon = () => {
    if (!waits) requestAnimationFrame(tell);
    waits = true;
  };
  const what = { subtree: true, childList: true, attributes: true, attributeFilter: ["class"] };
  new MutationObserver(soon).observe(node, what);
}

/* One can answer at once. Where a finger types, that would bring the keys of the screen up. */
function focusAnswer({ node }) {
  const free = document.activeElement === document.body || document.activeElement.matches(".jp-Cell, .jp-Notebook");
  if (!free || !window.matchMedia("(pointer: fine)").matches) return;
  node.querySelector(".w2w-card .w2w-asking input")?.focus({ preventScroll: true });
}

/* The notebook that a page is; where a copy cannot be opened, it can be saved. */
function asNotebook(context, openCopy) {
  if (openCopy) return quiet("Open a copy of this page as a notebook", () => void openCopy(context));
  const name = plainPath(context.path);
  return element("a", { href: `files/${encodeURIComponent(name)}`, download: name }, "Save this page as a notebook");
}

/* A page is as it ships, whatever was typed over it: there is nothing to save, nothing to lose. */
function keepAsItIs({ context }) {
  const clear = () => { if (context.model.dirty) context.model.dirty = false; };
  context.model.stateChanged.connect(clear);
  clear();
}

/* What a page needs of others: JupyterLab's parts, what starts a page, and how a copy is opened. */
export async function openPage(panel, shipped, { NotebookActions, AGAIN, makeStart, openCopy }) {
  await panel.context.ready;
  const { context } = panel;
  const ours = isMarked(context.model) && isOurs(context, shipped);
  const kind = ours ? "page" : isSet(context.model) ? "set" : "other";
  panel.node.dataset.wireToWater = kind;
  if (kind === "other") return kind;

  tellMore(panel.content.node);
  const say = makeStrip(panel, AGAIN, (afresh) => start(afresh));
  // What a run leaves on our page is made again on opening, so there is nothing to save. On one
  // that is handed in, the questions stay readable, and what was written into it must be kept.
  const done = ours ? () => {} : () => void context.save().catch(console.error);
  const start = makeStart(panel, NotebookActions, say, done);
  const again = quiet(AGAIN, () => start(true));
  again.className = "wtw-again";
  panel.node.addEventListener("dblclick", keepTextClosed, true);
  if (ours) {
    keepAsItIs(panel);
    showAsPage(panel, true);
    addFoot(panel, again, asNotebook(context, openCopy));
    panel.node.addEventListener("wire-to-water:settled", () => focusAnswer(panel));
    void start(false);
    return kind;
  }
  const plain = sources(context.model).every((source) => SET_LINE.test(source));
  const code = codeButton(panel);
  addFoot(panel, again, code);
  say("waiting", plain ? FROM_TRAINER : FROM_ELSEWHERE);
  code.show(plain);
  if (!plain) panel.content.widgets.forEach((cell) => { cell.inputHidden = false; });
  return kind;
}
