"""The notebook of a set: cards for people, and cells that nbgrader takes points from.

It lies as nbgrader wants it, in `source/NAME/NAME.ipynb` of a course, with `set.toml` beside it, and
asks whatever that file says. Nothing in it is anybody's own, so all get the same.
"""

import re
from collections.abc import Iterable, Iterator
from pathlib import Path

from solver import SolverError
from solver.sets.work_set import plan_of
from workbook.start.folder import CannotWrite, state_of, write_page
from workbook.trainer.coming_in.handed_in import ANSWER
from workbook.trainer.gradebook.rules import grade_id
from workbook.ui.cautions import topics
from workbook.ui.pages import MARK, PRACTICE, code_cells, fingerprint, shipped_pages

from .as_toml import toml_of
from .set_file import SET_FILE, Assigned, name_catalogue, read_set_file
from .told import about, how

__all__ = ["NotOurs", "notebook_of", "write_source"]

FAULT = "page.fault()"
CAUTIONS = re.compile(r"^page\.cautions(?:_in_full)?\((.+)\)$", re.MULTILINE)
KERNEL = {"display_name": "Python 3", "language": "python", "name": "python3"}
KEPT = {"deletable": False}
LOCKED = {**KEPT, "editable": False}
HIDDEN = {"jupyter": {"source_hidden": True}, "tags": ["hide-input"]}
TROUBLE = "If no question shows below, choose Run and then Run All Cells."
PLAIN = (
    "*Use this cell only if there is no box above. Double-click here, and type after the colon.*"
)
DONE = """## Turning it in

You can close this page and come back. Your answers stay here."""


class NotOurs(SolverError):
    """A notebook stands there that was changed by hand; the sentence says what to do."""


def write_source(assigned: Assigned, folder: Path) -> Path:
    """Write a set's notebook and its `set.toml` into the course in `folder`; the notebook's path.

    Writing a set again brings both up to date. A `set.toml` that says the same already is left.

    Raises:
        NotOurs: the notebook there was changed by hand, so it is left as it is.
        CannotWrite: the folder does not allow it.
    """
    own = folder / "source" / assigned.name / f"{assigned.name}.ipynb"
    try:
        own.parent.mkdir(parents=True, exist_ok=True)
        if own.exists():
            text, written = state_of(own)
            if text is None or text != written:
                raise NotOurs(f"{own} was changed by hand. Move it, or use another name.")
        _bring_set_file(assigned, own.with_name(SET_FILE))
        page = notebook_of(assigned)
        write_page(page, fingerprint(page), own)
    except OSError as error:
        raise CannotWrite(f"{own.parent} can't be written to: {error.strerror}.") from error
    return own


def _bring_set_file(assigned: Assigned, path: Path) -> None:
    """Comments that a trainer wrote into it stay, where it means the same."""
    of = assigned.work.catalogue
    try:
        if read_set_file(path) == assigned:
            return
        if read_set_file(path, of) == assigned:
            name_catalogue(path, of)
            return
    except SolverError:
        pass
    path.write_text(toml_of(assigned), encoding="utf-8")


def notebook_of(assigned: Assigned) -> dict:
    """The notebook of a set, in the form of nbformat 4.5."""
    count = assigned.work.count
    cells = [*_opening(assigned)]
    for number in range(1, count + 1):
        cells += _question(number, assigned.points)
    for number in range(count + 1, assigned.work.asked + 1):
        cells += _case(number, assigned.faults.points)
    cells += [
        _words("hand-in-first", DONE),
        _code("hand-in", "This line shows how to turn it in.", 'page.set_work("end")'),
    ]
    mark = {"page": True, "set": assigned.work.code}
    metadata = {"kernelspec": KERNEL, "language_info": {"name": "python"}, MARK: mark}
    return {"cells": cells, "metadata": metadata, "nbformat": 4, "nbformat_minor": 5}


def _opening(assigned: Assigned) -> Iterator[dict]:
    yield _words("title", f"# {_plain(assigned.title)}\n\n{about(assigned)}")
    yield _words("cautions-first", "## Before you go near a machine")
    wanted = ", ".join(f'"{topic}"' for topic in _topics(assigned))
    yield _code("cautions", "This line shows the cautions.", f"page.cautions({wanted})")
    yield _words("how", f"## How it works\n\n{_listed(how(assigned))}\n\n{TROUBLE}")
    yield _code("who", "This line asks who you are.", "page.set_work()")


def _listed(lines: Iterable[str]) -> str:
    return "\n".join(f"- {line}" for line in lines)


def _topics(assigned: Assigned) -> Iterable[str]:
    """The cautions that the chapters of this set have, in their usual order."""
    chapters = {asked.kind.chapter for asked in plan_of(assigned.work)}
    found = set()
    for path in shipped_pages():
        text = "\n".join(code_cells(path))
        if chapters & set(PRACTICE.findall(text)) or (assigned.work.faults and FAULT in text):
            found.update(re.findall(r'"(\w+)"', " ".join(CAUTIONS.findall(text))))
    return [topic for topic in topics() if topic in found]


def _question(number: int, points: float) -> Iterator[dict]:
    yield _words(f"heading-{number:02}", f"## Question {number}")
    shows = f"This line shows question {number}."
    yield _code(f"card-{number:02}", shows, f"page.set_question({number})")
    plain = _words(f"answer-{number:02}", f"{PLAIN}\n\n{ANSWER} ", KEPT)
    plain["metadata"][MARK] = {"answer": number}
    yield plain
    yield _grade(number, points)


def _case(number: int, points: float) -> Iterator[dict]:
    """A case has no cell for a plain answer: what is measured can't be told in one."""
    yield _words(f"heading-{number:02}", f"## Question {number}: find the fault")
    yield _code(
        f"card-{number:02}", f"This line shows question {number}.", f"page.set_fault({number})"
    )
    yield _grade(number, points)


def _grade(number: int, points: float) -> dict:
    name = grade_id(number)
    cell = _code(name, f"This line grades question {number}.", f"page.set_mark({number})")
    cell["metadata"]["nbgrader"] = {
        "grade": True,
        "grade_id": name,
        "locked": True,
        "points": int(points) if points % 1 == 0 else points,
        "schema_version": 3,
        "solution": False,
        "task": False,
    }
    return cell


def _words(cell_id: str, text: str, held: dict = LOCKED) -> dict:
    return {"cell_type": "markdown", "id": cell_id, "metadata": {**held}, "source": text}


def _code(cell_id: str, says: str, call: str) -> dict:
    """Each cell brings in the workbook itself: it may be the only one that is run."""
    source = f"# {says}\nfrom workbook import page\n\n{call}"
    held = {"cell_type": "code", "id": cell_id, "metadata": {**HIDDEN, **LOCKED}, "source": source}
    return {**held, "outputs": [], "execution_count": None}


def _plain(title: str) -> str:
    """A title as it is, though a mark in it means something in Markdown."""
    return re.sub(r"([\\`*_{}\[\]<>#$|~])", r"\\\1", title)
