"""A PDF set by typst from a template beside the code, after what all share (printed.typ).

All text goes to typst as JSON and stays data: nothing that was typed can be run there. The same
data give the same PDF: no clock is read, and only the fonts that typst carries are used.
"""

import json
from pathlib import Path
from typing import Any

from solver import SolverError

from .in_browser import in_browser

__all__ = ["CannotPrint", "compiled", "needed", "page_count"]

SHARED = Path(__file__).with_name("printed.typ")
NO_TYPST = (
    "A PDF needs the package typst, which isn't installed. Type: python3 -m pip install typst"
)
IN_BROWSER = (
    "The online workbook can't make a PDF. Open this page in the workbook on a computer to make it."
)


class CannotPrint(SolverError):
    """A PDF that cannot be made; the sentence says what to do."""


def compiled(template: Path, data: Any, kind: str = "pdf", dots: float | None = None):
    """The PDF, or a list of its pages as "png" pictures of so many dots an inch.

    The template has `data` from printed.typ.

    Raises:
        CannotPrint: typst is not installed.
    """
    made = needed().compile(_source(template), format=kind, ppi=dots, timestamp=0, **_reading(data))
    return [made] if kind == "png" and isinstance(made, bytes) else made  # one page comes bare


def page_count(template: Path, data: Any) -> int:
    """How many pages it takes; the template says so in metadata with the label <pages>.

    Raises:
        CannotPrint: typst is not installed.
    """
    reading = _reading(data)
    said = needed().query(_source(template), "<pages>", field="value", one=True, **reading)
    return json.loads(said)


def needed():
    """The package typst; CannotPrint where it is not installed."""
    try:
        import typst
    except ImportError:
        raise CannotPrint(IN_BROWSER if in_browser() else NO_TYPST) from None
    return typst


def _source(template: Path) -> bytes:
    return SHARED.read_bytes() + template.read_bytes()


def _reading(data: Any) -> dict[str, Any]:
    """A template without a file has no folder, so it reaches none."""
    said = json.dumps(data, ensure_ascii=False)
    return {"ignore_system_fonts": True, "sys_inputs": {"data": said}}
