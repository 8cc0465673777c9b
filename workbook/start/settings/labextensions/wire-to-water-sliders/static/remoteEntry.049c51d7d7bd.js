/* Gives each slider of ipywidgets a name and a readable value.
 *
 * Version 8 ties no label to a slider's handle and tells "619.9999999999999" for 620. The words
 * are on the screen already: the label above, and the number beside. Like its neighbour, this
 * file is written by hand in the form of a module-federation container.
 */
(() => {
  const NAME = "wire-to-water-sliders";

  function set(node, attribute, value) {
    if (node.getAttribute(attribute) !== value) node.setAttribute(attribute, value);
  }

  function nameHandle(handle) {
    const slider = handle.closest(".widget-slider, .widget-hslider");
    const label = slider?.querySelector(".widget-label")?.textContent;
    const readout = slider?.querySelector(".widget-readout");
    if (!label) return;
    set(handle, "aria-label", label);
    if (!readout) return;
    set(handle, "aria-valuetext", readout.textContent);
    // The number can be typed into, so it is a field and wants a name too.
    set(readout, "role", "textbox");
    set(readout, "aria-label", label);
  }

  function watch() {
    let waiting = false;
    const look = () => {
      waiting = false;
      document.querySelectorAll(".noUi-handle").forEach(nameHandle);
    };
    new MutationObserver(() => {
      if (!waiting) requestAnimationFrame(look);
      waiting = true;
    }).observe(document.body, {
      subtree: true,
      childList: true,
      characterData: true,
      attributeFilter: ["aria-valuetext"],
    });
  }

  const plugin = {
    id: `${NAME}:names`,
    description: "Tells a screen reader the name and the value of each slider.",
    autoStart: true,
    activate: watch,
  };

  window._JUPYTERLAB ??= {};
  window._JUPYTERLAB[NAME] = {
    init: () => {},
    get: async () => () => ({ __esModule: true, default: plugin }),
  };
})();
