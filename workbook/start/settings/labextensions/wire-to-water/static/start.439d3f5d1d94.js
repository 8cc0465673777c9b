/* Starts the program behind a page, and starts it again.
 *
 * When a program ends, the server soon puts a new one in its place by itself, and says
 * "autorestarting" before that one is there. A restart asked for meanwhile would set two programs
 * on the same ports and lose answers for good, so a replaced program is only waited for.
 *
 * All pages share one program. Where another window started it again, this page comes back too.
 */
export const AGAIN = "Start this page again";

// ms, between two questions; one to a program that is just ending or coming gets no answer
const ASK_SOON = 125;
const ASK_AGAIN = 2_000;
const PATIENCE = 90_000; // ms; longer than a first start on an old laptop
const RETRIES = 2; // a page whose own program ends it must not start for ever

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
 * `say(state, text)` shows how it stands; `done()` sees to what a run leaves in the page.
 */
export function makeStart({ content, sessionContext }, NotebookActions, say, done) {
  let newest = 0; // only the newest start goes on and speaks
  let underWay = false;
  let replaced = false; // by the server, since the page last began to run
  // Others have more to do around a page.
  const announce = (what) =>
    content.node.dispatchEvent(new CustomEvent(`wire-to-water:${what}`, { bubbles: true }));

  async function run(afresh, wanted, retries) {
    if (afresh && !replaced) await renew(sessionContext);
    await answer(sessionContext);
    if (!wanted()) return false;
    replaced = false;
    announce("starts");
    // Run as a list, the cells stay where they are; "run all" goes to the foot of the page.
    const whole = await NotebookActions.runCells(content, content.widgets, sessionContext);
    // The program ended meanwhile: what it made is gone.
    if (replaced) return retries > 0 && run(false, wanted, retries - 1);
    done();
    return whole;
  }

  function ended(byServer) {
    replaced = byServer;
    if (newest && !underWay) say("stopped", `This page has stopped. Choose ${AGAIN}.`);
  }

  sessionContext.statusChanged.connect((_, status) => {
    if (status === "dead" || status === "autorestarting") ended(status === "autorestarting");
    // A program that begins while this page waits for nothing was started again elsewhere.
    if (status === "starting" && newest && !underWay && !replaced) void start(false);
  });
  // A program that is gone for good may take its session along before its state is told.
  sessionContext.sessionChanged.connect((_, { newValue }) => newValue || ended(false));

  async function start(afresh) {
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
      const whole = await run(afresh, wanted, RETRIES);
      if (whole) tell("ready", "This page is ready.");
      else tell("stopped", `Part of this page didn't start. Choose ${AGAIN}.`);
    } catch (error) {
      if (wanted()) console.error(error);
      tell("stopped", `This page couldn't start. Choose ${AGAIN}.`);
    }
    clearTimeout(late);
    if (wanted()) underWay = false;
    if (wanted()) announce("settled");
  }

  return start;
}
