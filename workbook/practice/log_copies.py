"""Take the log along: a copy to save, and copies of other computers brought in."""

from collections.abc import Callable, Mapping, Sequence
from datetime import date
from typing import Any

from ipywidgets import HTML, FileUpload

from solver.units.show import counted
from workbook.log import Log, NotKept, NotRead, line_of, parse
from workbook.ui import static_site
from workbook.ui.controls import AUTO, Panel, button, classed, row
from workbook.ui.markup import tag
from workbook.ui.pieces import say
from workbook.ui.saving import link

__all__ = ["LogCopies"]

MOST_BYTES = 100_000_000  # some 400,000 answers; the settings of the server let no more through
MAY_BE_CLEARED = (
    "This browser may clear your answers when the device runs low on space or after weeks without a visit. "
    "Make a copy now and then, and keep the file somewhere else."
)


class LogCopies(Panel):
    """A button that makes a copy of the log to save, and one that brings copies in."""

    def __init__(self, kept: Log, today: Callable[[], date] = date.today):
        super().__init__("w2w-copies")
        self.kept, self.today = kept, today
        self.save = button("Make a copy to save", self.once(self._copy))
        self.saved = HTML()
        self.upload = FileUpload(accept=".jsonl,.txt", multiple=True, description="Bring in a copy")
        self.upload.layout = AUTO
        classed(self.upload, "w2w-button").observe(self.safely(self._brought), "value")
        notice = HTML(say("notice", MAY_BE_CLEARED) if static_site.may_be_cleared() else "")
        if shared := static_site.shared():
            self._bring_all([{"name": name, "content": data} for name, data in shared])
        self.put(notice, row("w2w-buttons", self.save, self.upload), self.saved, self.said)

    def _copy(self) -> None:
        try:
            self.kept.read()
        except NotRead as fault:
            self.said.value = say("notice", str(fault))
            return
        attempts = self.kept.attempts
        if not attempts:
            self.said.value = say("note", "Your log is empty, so there is nothing to save yet.")
            return
        data = "".join(line_of(attempt) + "\n" for attempt in attempts).encode()
        name = f"wire-to-water-answers-{self.today()}.jsonl"
        says = f"Save {counted(len(attempts), 'answer')}"
        self.saved.value = tag("p", link(says, name, "application/jsonl", data))
        self.said.value = say("note", "The copy is ready. Click the link to save it.")

    def _brought(self, _: object) -> None:
        if not self.upload.value:
            return
        files, self.upload.value = self.upload.value, ()
        self._bring_all(files)

    def _bring_all(self, files: Sequence[Mapping[str, Any]]) -> None:
        said = [sentence for file in files for sentence in self._bring(file)]
        self.said.value = say("note", *said)

    def _bring(self, file: Mapping[str, Any]) -> Sequence[str]:
        name, data = file["name"][:80], bytes(file["content"])
        if len(data) > MOST_BYTES:
            limit = MOST_BYTES // 1_000_000
            return [f"“{name}” is larger than {limit} MB, so it wasn't read."]
        attempts, strange = parse(data)
        if not attempts:
            return [f"“{name}” doesn't hold any answers. Choose a copy this page made."]
        try:
            new = self.kept.merge(attempts)
        except (NotKept, NotRead) as fault:
            return [f"“{name}” was read. {fault}"]
        had = len({attempt.id for attempt in attempts}) - new
        were = "was" if had == 1 else "were"
        said = [f"“{name}”: {counted(new, 'answer')} brought in, {had:,} {were} here already."]
        if strange:
            where = ", ".join(str(one.number) for one in strange[:5])
            lines = counted(len(strange), "line")
            said.append(f"{lines} of it couldn't be read and was left out (line {where}).")
        return said
