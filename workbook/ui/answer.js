/* The place for an answer: a box, choices or steps to put in order (order.js), and the one main button
 * that Enter presses.
 *
 * Each letter and each press is told as a message, in order, and a press carries its text along: so
 * a press never overtakes what was typed. What is asked comes from Python whole, as `asked`.
 */
const KEYS = "123456789";
const LETTERS = "abcdefghi";
const LOOKS = 120; // frames in which a new place comes on the page
const SHORT = 12; // letters of a choice that fits twice beside each other on a phone
const SOON = 30; // ms in which what was said before the message is on the page

function element(tag, attributes = {}, ...children) {
  const node = document.createElement(tag);
  Object.entries(attributes).forEach(([name, value]) => {
    if (value === true) node.setAttribute(name, "");
    else if (value !== false) node.setAttribute(name, value);
  });
  node.append(...children);
  return node;
}

/* A box for a number or a text: `read` and `write` its text, `first` takes the focus. */
function makeBox(name, changed) {
  const id = `${name}-box`;
  const box = element("input", {
    id, type: "text", class: "w2w-box",
    enterkeyhint: "go", autocomplete: "off", autocapitalize: "off", spellcheck: "false",
  });
  const label = element("label", { for: id, class: "w2w-asks" });
  box.addEventListener("input", changed);
  return {
    parts: [label, box],
    ask: (asked) => {
      label.textContent = asked.label;
      box.inputMode = asked.number ? "decimal" : "text";
    },
    read: () => box.value,
    write: (text) => { box.value = text; },
    first: () => box,
  };
}

/* Rows to click or tap; the text of the chosen one is its number. */
function makeChoices(name, changed, { label, choices }) {
  const dots = choices.map((_, at) => element("input", { type: "radio", name, value: at + 1 }));
  const rows = choices.map((choice, at) =>
    element("label", { class: "w2w-choice" }, dots[at],
      element("span", { class: "w2w-key", "aria-hidden": "true" }, KEYS[at] ?? ""),
      element("span", {}, choice)));
  const short = choices.every((choice) => choice.length <= SHORT);
  const group = element("fieldset", short ? { class: "w2w-pairs" } : {}, element("legend", { class: "w2w-asks" }, label), ...rows);
  const choose = (dot) => {
    dot.checked = true;
    dot.focus();
    changed();
  };
  const chosen = () => dots.find((dot) => dot.checked);
  group.addEventListener("change", changed);
  group.addEventListener("keydown", (event) => {
    if (event.ctrlKey || event.metaKey || event.altKey) return;
    const key = event.key.toLowerCase();
    const ends = { arrowdown: 0, arrowright: 0, arrowup: dots.length - 1, arrowleft: dots.length - 1 };
    const at = chosen() && key in ends
      ? -1 // the browser itself goes on from a row that is chosen
      : ends[key] ?? Math.max(KEYS.indexOf(key), LETTERS.indexOf(key));
    if (key.length > 1 && !(key in ends)) return;
    if (!dots[at]) return;
    event.preventDefault();
    choose(dots[at]);
  });
  return {
    parts: [group],
    read: () => chosen()?.value ?? "",
    write: (text) => dots.forEach((dot) => { dot.checked = dot.value === text.trim(); }),
    first: () => chosen() ?? dots[0],
  };
}

function render({ model, el }) {
  // By chance: each place loads this file anew, so nothing here can count them.
  const name = `w2w-answer-${Math.random().toString(36).slice(2)}`;
  // Keys typed here are no shortcuts of the notebook around it.
  const form = element("form", {
    class: "w2w-asking", novalidate: true, tabindex: "-1", "data-lm-suppress-shortcuts": true,
  });
  const main = element("button", { type: "submit", class: "w2w-button w2w-first" });
  const tell = (kind) => {
    const { count } = model.get("asked");
    model.send({ kind, text: field.read(), main: main.textContent, handled: model.get("handled"), count });
  };
  const changed = () => {
    model.set("typed", field.read()); // kept for another view of the same place
    tell("typed");
  };
  const box = makeBox(name, changed);
  let field;
  let pressed = { at: -Infinity, text: "" };

  /* The box stays where one question in numbers follows another, and with it a telephone's keys. */
  function build() {
    const asked = model.get("asked");
    const choosing = asked.choices.length > 0;
    const make = asked.ordered ? makeOrder : makeChoices;
    const held = form.contains(document.activeElement);
    const before = field;
    field = choosing ? make(name, changed, asked) : box;
    field.ask?.(asked);
    if (field !== before) {
      form.classList.toggle("w2w-choosing", choosing);
      form.replaceChildren(...field.parts, main);
    }
    field.write(model.get("typed") ?? asked.text);
    if (held && !form.contains(document.activeElement)) field.first().focus({ preventScroll: true });
  }

  function ask() {
    model.set("typed", undefined);
    build();
    pressed.text = field.read();
  }

  const label = () => { main.textContent = model.get("main"); };

  /* The focus in the answer, and the whole card in sight. Where a finger is all there is, the focus
   * in the box would open the keys over the question. */
  function focus(looks = LOOKS) {
    if (!form.offsetParent) {
      if (looks) requestAnimationFrame(() => focus(looks - 1));
      return;
    }
    const place = matchMedia("(hover: none)").matches ? form : field.first();
    place.focus({ preventScroll: true });
    place.select?.();
    const card = el.closest(".w2w-card, .w2w-panel") ?? form;
    const inSight = card.getBoundingClientRect().top >= 0 && main.getBoundingClientRect().bottom <= innerHeight;
    if (!inSight) card.scrollIntoView({ block: "start" });
  }

  function focusIfAsked() {
    if (model.get("focused") === model.get("focus_asked")) return;
    model.set("focused", model.get("focus_asked"));
    if (model.get("focus_asked") && !typesElsewhere()) focus();
  }

  /* Whoever went on to the search of the bar, or to a cell of the notebook, keeps the focus there. */
  function typesElsewhere() {
    const at = document.activeElement;
    return at.matches("input, textarea, select, [contenteditable=true]") && !at.closest(".w2w-panel");
  }

  const showTold = () =>
    el.closest(".w2w-panel")?.querySelector(".w2w-told")?.scrollIntoView({ block: "nearest" });
  const hear = ({ kind }) => { if (kind === "told") setTimeout(showTold, SOON); };

  form.addEventListener("keydown", (event) => {
    if (event.key !== "Enter") return;
    event.stopPropagation();
    if (event.repeat) event.preventDefault(); // a key held down is one press
  });
  main.addEventListener("click", ({ pointerType }) => {
    if (pointerType === "mouse") field.first().focus({ preventScroll: true });
  });
  form.addEventListener("submit", (event) => {
    event.preventDefault();
    const before = pressed;
    pressed = { at: event.timeStamp, text: field.read() };
    if (pressed.text !== before.text || pressed.at - before.at >= model.get("pause")) tell("press");
  });

  build();
  label();
  el.append(form);
  focusIfAsked();
  const heard = { "change:asked": ask, "change:main": label, "change:focus_asked": focusIfAsked, "msg:custom": hear };
  Object.entries(heard).forEach(([what, then]) => model.on(what, then));
  return () => Object.entries(heard).forEach(([what, then]) => model.off(what, then));
}

export default { render };
