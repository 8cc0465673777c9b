"""The results of a group put together: files brought in, and what they say, with names or without."""

from collections.abc import Callable, Mapping, Sequence
from functools import partial
from time import monotonic
from typing import Any

from ipywidgets import HTML, Box, FileUpload, VBox

from solver.units.show import counted
from workbook.figures import LOOK
from workbook.ui import static_site
from workbook.ui.controls import AUTO, Panel, Tick, button, classed, show, tick
from workbook.ui.markup import joined, tag
from workbook.ui.pieces import listed, say
from workbook.ui.saving import link

from . import results_shown
from .members import Result
from .own_group import OwnGroup
from .results import GroupFacts, NotAResult, facts, read_result
from .results_shown import flaws_html, questions_html, table_of_counts
from .set_text import ProblemSet

__all__ = ["ResultsPanel"]

MOST_FILES = 100
TOLD = 8  # faults of files told at once
ABOUT = (
    "Open the set above first. Then bring in the files that the members sent you, in any order. "
    "Bringing in the same file twice does no harm. This page reads them. It doesn't keep them or send them anywhere."
)
NO_SET = "Open the set first, at “Work on a set”. Then bring the results in."
NOTHING = (
    "Nothing has been brought in yet. Choose “Bring in results” above, and pick the files that the "
    "members sent you. Your own answers show here after you give some."
)
SAME_NAME = (
    "Some results have the same name but no answer in common, so they may be from two people. They count as "
    "two until you check the box. Check it if one person worked on two devices."
)


class ResultsPanel(Panel):
    """What the members got, by the results brought in and one's own answers."""

    def __init__(self, own: OwnGroup, clock: Callable[[], float] = monotonic):
        super().__init__("w2w-together", "w2w-results", clock=clock)
        self.own, self.problems = own, own.problems
        self.told: GroupFacts | None = None
        self.upload = FileUpload(
            accept=".jsonl,.txt", multiple=True, description="Bring in results"
        )
        self.upload.layout = AUTO
        classed(self.upload, "w2w-button").observe(self.safely(self._brought), "value")
        self.look = button("Look again", self.once(self.redraw))
        self.again = button("Start over", self.once(self._begin_again))
        changed = self.safely(lambda _: self.redraw())
        self.mine = tick("With my own answers", True, changed)
        self.hidden = tick("No names", False, changed)
        self.alike, self.boxes = classed(VBox(), "w2w-ticks"), dict[str, Tick]()
        self.top, self.counts, self.flaws, self.all = (HTML() for _ in range(4))
        classed(self.counts, "w2w-numbers")
        self.save = button("Make a file for a spreadsheet", self.once(self._save))
        self.saved = HTML()
        self.put(*self._parts())
        own.parts["results"] = self
        self.redraw()

    def _parts(self) -> list:
        self.shown = VBox([
            HTML(tag("h3", "What to go over together")), self.flaws,
            HTML(tag("h3", "How many got each one")), self.counts,
            HTML(joined(tag("h3", "Question by question"), tag("p", "Open one to see who got what."))), self.all,
            classed(Box([self.save]), "w2w-buttons"), self.saved,
        ])  # fmt: skip
        return [
            HTML(joined(LOOK, tag("p", ABOUT, cls="w2w-about"))),
            classed(Box([self.upload, self.look, self.again]), "w2w-buttons"),
            classed(Box([self.mine, self.hidden]), "w2w-ticks"),
            classed(self.said, "w2w-told"), self.top, self.alike, self.shown,
        ]  # fmt: skip

    def _brought(self, _) -> None:
        if not self.upload.value:
            return
        files, self.upload.value = self.upload.value, ()
        self._bring_all(files)

    def _bring_all(self, files: Sequence[dict[str, Any]]) -> None:
        problems = self.own.problems
        if not problems:
            self.said.value = say("missing", NO_SET)
            return
        before = len(self.own.results)
        faults = [self._bring(problems, number, file) for number, file in enumerate(files, 1)]
        faults = [fault for fault in faults if fault]
        more = [f"And {counted(len(faults) - TOLD, 'more file')}."] * (len(faults) > TOLD)
        self.redraw()
        here = f"{counted(len(files), 'file')} looked at; {len(self.own.results) - before} new."
        self.said.value = say("notice" if faults else "note", here, *faults[:TOLD], *more)

    def _bring(self, problems: ProblemSet, number: int, file: dict[str, Any]) -> str:
        """Take one file in; a sentence where there is something to say of it."""
        # A file's name may be that of a member.
        called = f"File {number}" if self.hidden.value else f"“{file['name'][:80]}”"
        if len(self.own.results) == MOST_FILES:
            return f"{called} was left out: {MOST_FILES} results are here already."
        try:
            result = read_result(bytes(file["content"]), problems)
        except NotAResult as refusal:
            return f"{called} was left out: {refusal}"
        if result.attempts not in [other.attempts for other in self.own.results]:
            self.own.results.append(result)
        if not result.strange:
            return ""
        return (
            f"{called}: {counted(result.strange, 'line')} of it couldn't be read and was left out."
        )

    def _begin_again(self) -> None:
        self.own.results = []
        self.own.one_person.clear()
        self.redraw()
        self.said.value = say(
            "note", "The results you brought in are cleared. Your files haven't changed."
        )

    def redraw(self) -> None:
        """What the results say now."""
        if self.problems != self.own.problems:
            self.problems = self.own.problems
            self.said.value = say("")
        if self.problems and (shared := static_site.shared()):
            self._bring_all([{"name": name, "content": data} for name, data in shared])
            return
        mine = self._mine() if self.problems and self.mine.value else []
        results = [*self.own.results, *mine]
        self.told = facts(self.own.questions, results, self.own.one_person) if results else None
        show(self.shown, self.told)
        self.saved.value = ""
        show(self.alike, self.told)
        if not (self.told and self.problems):
            self.top.value = tag("p", NOTHING if self.problems else NO_SET)
            return
        names = results_shown.names_for(self.told, self.problems, self.hidden.value)
        self.top.value = joined(
            tag("h3", self.problems.name), tag("p", results_shown.summary(self.told))
        )
        self._ask_who_is_who(names)
        self.flaws.value = flaws_html(self.told)
        self.counts.value = table_of_counts(self.told)
        self.all.value = questions_html(self.told, names)

    def _ask_who_is_who(self, names: Mapping[str, str]) -> None:
        """A box to check for each name that two people may have; no two count as one in silence."""
        asked = results_shown.alike(self.told, names) if self.told else {}
        for name, called in asked.items():
            box = self.boxes.get(name) or tick("", False, self.safely(partial(self._are_one, name)))
            box.description = f"{listed(called)}: one person"
            box.put(name in self.own.one_person)
            self.boxes[name] = box  # the same one, so that the keyboard stays there
        shown = [HTML(say("notice", SAME_NAME)), *(self.boxes[name] for name in asked)]
        self.alike.children = shown if asked else []

    def _are_one(self, name: str, one: bool) -> None:
        (self.own.one_person.add if one else self.own.one_person.discard)(name)
        self.redraw()

    def _mine(self) -> list[Result]:
        made = self.own.made()
        return [Result(self.own.name, made)] if made else []

    def _save(self) -> None:
        if not (self.told and self.problems):
            return
        hidden = self.hidden.value
        names = results_shown.names_for(self.told, self.problems, hidden)
        name = f"wire-to-water-group-{self.problems.mark.lower()}.csv"
        saves = link(
            "Save the file for a spreadsheet",
            name,
            "text/csv",
            results_shown.results_csv(self.told, names),
        )
        says = "It has no names in it." if hidden else "It has the names members typed."
        self.saved.value = joined(tag("p", saves, cls="w2w-saves"), tag("p", says))
