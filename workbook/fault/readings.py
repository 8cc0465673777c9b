"""The buttons of a case: readings by what they need, each with its minutes; the steps before them."""

from collections.abc import Callable
from functools import partial

from ipywidgets import HTML, Button, VBox

from solver.engine.draw import Draw
from solver.fault.safety import LOCKOUT, PERMIT, QUALIFIED, RESTORE, STEPS
from solver.fault.way import Way
from solver.units.show import capital
from workbook.ui.controls import Panel, button, classed, marked, row, show
from workbook.ui.markup import tag

__all__ = ["Readings"]

HEADS = {
    "running": ("Pump running", ""),
    "live": ("Panel open, pump running", "live parts: a qualified person"),
    "dead": ("Inside", "locked out and proved dead"),
}


class Readings:
    """A button for each act and step; `do` gets its word."""

    def __init__(self, panel: Panel, do: Callable[[str], object]):
        self._panel, self._do = panel, do
        self.acts: dict[str, Button] = {}
        self.steps: dict[str, Button] = {}
        self.box = VBox()

    def open(self, way: Way) -> None:
        """The buttons of a case. The steps of lockout come in an order of chance: putting them right is the job."""
        self.acts, self.steps = {}, {}
        parts: list[object] = []
        for needs, (title, note) in HEADS.items():
            head = [tag("b", title), f" · {note}" if note else None]
            parts.append(HTML(tag("p", *head, cls="w2w-needs")))
            if needs == "live":
                parts.append(row("w2w-acts", self._step(QUALIFIED)))
            if needs == "dead":
                mixed = Draw(f"lockout {way.case.code}").shuffled(LOCKOUT)
                steps = [self._step(name) for name in (*mixed, PERMIT, RESTORE)]
                parts.append(row("w2w-acts", *steps))
            names = [name for name, act in way.case.acts.items() if act.needs == needs]
            parts.append(row("w2w-acts", *map(self._act, names)))
        self.box.children = tuple(parts)
        self.show(way)

    def _act(self, name: str) -> Button:
        self.acts[name] = classed(self._button(name), "w2w-act")
        return self.acts[name]

    def _step(self, name: str) -> Button:
        self.steps[name] = classed(self._button(name), "w2w-step")
        return self.steps[name]

    def _button(self, word: str) -> Button:
        return button(word, self._panel.once(partial(self._do, word)))

    def show(self, way: Way) -> None:
        """Minutes, what is taken and what is done."""
        for name, made in self.acts.items():
            act, taken = way.case.acts[name], name in way.taken
            made.description = (
                f"✓ {capital(act.label)}"
                if taken
                else f"{capital(act.label)} · {way.cost(name)} min"
            )
            marked(made, "w2w-done", taken)
        for name, made in self.steps.items():
            step, done = STEPS[name], name in way.done
            made.description = f"✓ {step.label}" if done else f"{step.label} · {step.minutes} min"
            marked(made, "w2w-done", done)
        show(self.steps[RESTORE], any(name in way.done for name in LOCKOUT))
        show(self.steps[PERMIT], "check_valve" in self.acts)
