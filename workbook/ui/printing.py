"""Printed pages: a PDF set by typst, and what all of them share: paper, a question, its solution.

A template beside a feature's code is set after `printed.typ`, which all share. All text goes to typst
as JSON and stays data: nothing that was typed can be run there. The same data give the same PDF: no
clock is read, and only the fonts that typst carries are used.
"""

import json
from collections.abc import Callable, Sequence
from pathlib import Path
from types import ModuleType
from typing import Any

from solver import Case, SolverError
from solver.render.text import one_line_text, question_rows, step_lines
from solver.units.show import capital

from .markup import Markup, joined, tag
from .pieces import say
from .saving import link
from .static_site import in_browser

__all__ = [
    "PAPER",
    "UNITS",
    "CannotPrint",
    "asked",
    "compiled",
    "needed",
    "page_count",
    "pictures",
    "saved_pdf",
    "solved",
]

PAPER = {"us": "us-letter", "si": "a4"}
UNITS = {"us": "US units", "si": "metric units"}
ROOM, LITTLE = 1.3, 0.25  # inches to write in: where there are readings to work with, and where not
SHARED = Path(__file__).with_name("printed.typ")
NO_TYPST = (
    "A PDF needs the package typst, which isn't installed. Type: python3 -m pip install typst"
)
IN_BROWSER = (
    "The online workbook can't make a PDF. Open this page in the workbook on a computer to make it."
)


class CannotPrint(SolverError):
    """A PDF that cannot be made; the sentence says what to do."""


def compiled(template: Path, data: Any) -> bytes:
    """The PDF. The template has `data` from printed.typ.

    Raises:
        CannotPrint: typst is not installed.
    """
    return bytes(_made(template, data, "pdf"))


def pictures(template: Path, data: Any, dots: float) -> list[bytes]:
    """The same pages as PNG pictures of so many dots an inch.

    Raises:
        CannotPrint: typst is not installed.
    """
    made = _made(template, data, "png", dots)
    return [made] if isinstance(made, bytes) else made  # one page comes bare


def page_count(template: Path, data: Any) -> int:
    """How many pages it takes; the template says so in metadata with the label <pages>.

    Raises:
        CannotPrint: typst is not installed.
    """
    reading = _reading(data)
    said = needed().query(_source(template), "<pages>", field="value", one=True, **reading)
    return int(json.loads(said))


def saved_pdf(
    made: Callable[[], bytes], name: str, where: Path, has: str, more: Markup | None = None
) -> Markup:
    """Make a PDF, keep it in a folder, and say so in HTML, with a link that saves it elsewhere.

    `has` is a sentence on what is in it; `more` follows the link. What can't be made is told of.
    """
    try:
        data = made()
    except SolverError as refusal:
        return say("missing", str(refusal))
    held = joined(tag("p", link("Save the PDF", name, "application/pdf", data)), more)
    try:
        (where / name).write_bytes(data)
    except OSError as error:
        said = f"It couldn't be saved in {where}: {error.strerror}. Save it with this link."
    else:
        said = f"It's in your folder, {where}. {has}"
    return say("worked", "The PDF is made.", said, html=held)


def needed() -> ModuleType:
    """The package typst.

    Raises:
        CannotPrint: it is not installed.
    """
    try:
        import typst
    except ImportError:
        raise CannotPrint(IN_BROWSER if in_browser() else NO_TYPST) from None
    return typst


def _made(template: Path, data: Any, kind: str, dots: float | None = None) -> Any:
    return needed().compile(_source(template), format=kind, ppi=dots, timestamp=0, **_reading(data))


def _source(template: Path) -> bytes:
    return SHARED.read_bytes() + template.read_bytes()


def _reading(data: Any) -> dict[str, Any]:
    """A template without a file has no folder, so it reaches none."""
    said = json.dumps(data, ensure_ascii=False)
    return {"ignore_system_fonts": True, "sys_inputs": {"data": said}}


def asked(
    case: Case, choices: Sequence[str], *, asks: str = "Answer", table: bool = True
) -> dict[str, Any]:
    """A question. `asks` stands before the line for its answer; `table` repeats what is given.

    The rows of a long question are there in any case.
    """
    rows = question_rows(case) if table else case.table
    return {
        "text": case.lead,
        "given": [[capital(label), value] for label, value in rows],
        "choices": list(choices),
        "numbering": "A." if case.ordered else "1.",
        "asks": asks,
        "room": ROOM if case.given else LITTLE,
    }


def solved(case: Case, answer: str) -> dict[str, Any]:
    """The answer in words, the code, each step, and all of them in one line where that is short."""
    return {
        "answer": answer,
        "code": case.code,
        "steps": [
            list(step_lines(step, case.known, case.given, case.units)) for step in case.steps
        ],
        "one_line": one_line_text(case),
    }
