/* Steps to put in order, for answer.js: rows that are dragged, moved by their buttons or by the arrow keys,
 * and a box with their letters, first step first, which moves the rows when it is typed in.
 *
 * The text in the box is the answer. It is empty until something was moved: the order in which the steps
 * come is none that anybody has chosen.
 */
const NAMES = "ABCDEFGHI";
const HOW = "Drag the steps, use their arrows, or type their letters.";

/* One row: a grip, the letter, the step, and a button for each way. */
function makeRow(letter, text, move) {
  const button = (sign, by, way) => {
    const made = element("button", { type: "button", class: "w2w-move", "aria-label": `Move ${way}: ${text}` }, sign);
    made.addEventListener("click", () => move(letter, by));
    return made;
  };
  return element("li", { class: "w2w-choice w2w-step-row", "data-letter": letter },
    element("span", { class: "w2w-grip", "aria-hidden": "true" }, "⠿"),
    element("span", { class: "w2w-key" }, letter),
    element("span", { class: "w2w-step-text" }, text),
    button("↑", -1, "up"), button("↓", 1, "down"));
}

/* Drag a row among its list: by its grip, or with a mouse anywhere on it. The list holds the pointer, for a
 * row that changes its place would let go of it. */
function dragged(list, dropped) {
  list.addEventListener("pointerdown", (event) => {
    const row = event.target.closest("li");
    const held = event.target.closest(".w2w-grip") || event.pointerType === "mouse";
    if (!row || !held || event.button || event.target.closest("button")) return;
    event.preventDefault();
    list.setPointerCapture(event.pointerId);
    row.classList.add("w2w-held");
    const follow = ({ clientY }) => {
      const below = [...list.children].find((other) => {
        const { top, height } = other.getBoundingClientRect();
        return other !== row && clientY < top + height / 2;
      }) ?? null;
      if (row.nextElementSibling !== below) list.insertBefore(row, below);
    };
    list.addEventListener("pointermove", follow);
    list.addEventListener("lostpointercapture", () => {
      row.classList.remove("w2w-held");
      list.removeEventListener("pointermove", follow);
      dropped(row);
    }, { once: true });
  });
}

function makeOrder(name, changed, { label, choices }) {
  const known = [...NAMES.slice(0, choices.length)];
  const rows = choices.map((text, at) => makeRow(NAMES[at], text, move));
  const list = element("ol", { class: "w2w-order", "aria-label": "The steps, in your order" }, ...rows);
  const heard = element("span", { class: "w2w-heard", role: "status", "aria-live": "polite" });
  const box = element("input", {
    id: `${name}-order`, type: "text", class: "w2w-box", enterkeyhint: "go",
    autocomplete: "off", autocapitalize: "characters", spellcheck: "false",
  });
  const how = element("p", { class: "w2w-about" }, HOW);
  const asks = element("label", { for: box.id, class: "w2w-asks" }, label);
  const order = () => [...list.children].map((row) => row.dataset.letter);

  /* The rows as the text says: the letters in it first, each once, then the others. */
  function show(text) {
    const typed = [...new Set(text.toUpperCase())].filter((letter) => known.includes(letter));
    const letters = [...typed, ...known.filter((letter) => !typed.includes(letter))];
    if (letters.join() !== order().join()) letters.forEach((letter) => list.append(rows[known.indexOf(letter)]));
  }

  let before = known.join(" ");
  function moved(row) {
    const now = order();
    if (now.join(" ") === before) return;
    before = box.value = now.join(" ");
    heard.textContent = `${row.dataset.letter} is now number ${now.indexOf(row.dataset.letter) + 1} of ${rows.length}.`;
    changed();
  }

  function move(letter, by) {
    const row = rows[known.indexOf(letter)];
    const other = by < 0 ? row.previousElementSibling : row.nextElementSibling;
    if (!other) return;
    if (by < 0) row.after(other); else row.before(other); // the row itself stays, and with it the focus
    moved(row);
  }

  dragged(list, moved);
  list.addEventListener("keydown", (event) => {
    const by = { ArrowUp: -1, ArrowDown: 1 }[event.key];
    const row = event.target.closest("li");
    if (!by || !row || event.ctrlKey || event.metaKey || event.altKey) return;
    event.preventDefault();
    move(row.dataset.letter, by);
  });
  box.addEventListener("input", () => {
    show(box.value);
    before = order().join(" ");
    changed();
  });
  return {
    parts: [how, list, heard, asks, box],
    read: () => box.value,
    write: (text) => {
      box.value = text;
      show(text);
      before = order().join(" ");
    },
    first: () => box,
  };
}

