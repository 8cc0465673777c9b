"""An exam on paper: the questions with room to write, then the key, as one PDF."""

from pathlib import Path
from typing import Any

from solver.render.text import ROUNDING
from solver.sets.paper import Paper
from solver.sets.paper_questions import faults_of
from workbook.reference import by_chapter, sheet_of
from workbook.ui.cautions import caution_lines
from workbook.ui.contents import titled
from workbook.ui.markup import Markup, tag
from workbook.ui.printing import PAPER, UNITS, asked, compiled, pictures, saved_pdf, solved
from workbook.ui.saving import link

from .elsewhere import printed_qr
from .question import check_askable, questions_of

__all__ = ["pdf_of", "pictures_of", "printed", "save_pdf"]

CASES = (
    "Then come its cases of find the fault. They don't fit on a question sheet: open each on the page "
    "“Find the fault” by its code, or print it there."
)
TEMPLATE = Path(__file__).with_name("exam.typ")


def pdf_of(paper: Paper, site: str = "") -> bytes:
    """The paper and its key. `site` is the address of a static site, for the QR code on it.

    Raises:
        CannotPrint: typst is missing.
        SolverError: a question of it can't be asked any more.
    """
    return compiled(TEMPLATE, printed(paper, site))


def pictures_of(paper: Paper, dots: float = 96) -> list[bytes]:
    """The pages as PNG pictures."""
    return pictures(TEMPLATE, printed(paper), dots)


def printed(paper: Paper, site: str = "") -> dict[str, Any]:
    """All that is on the pages, as plain data.

    Raises:
        SolverError: a question of it can't be asked any more, or the address is none.
    """
    check_askable(paper, all_of_it=True)
    questions = questions_of(paper)[: paper.count]
    cases = [str(case.code) for case in faults_of(paper)]
    return {
        "paper": PAPER[paper.units],
        "code": paper.code,
        "qr": printed_qr(paper, site),
        "about": f"{paper.count} questions, {paper.minutes} minutes, {UNITS[paper.units]}",
        "chapters": list(titled(paper.chapters).values()),
        "always": caution_lines()[-1],
        "rounding": ROUNDING,
        "cases": f"{CASES} {', '.join(cases)}." if cases else "",
        "questions": [asked(each.problem, each.texts) for each in questions],
        "key": [solved(each.problem, each.answer) for each in questions],
    }


def save_pdf(paper: Paper, where: Path, site: str = "") -> Markup:
    """Make the PDF, keep it in a folder, and say so in HTML, with links that save it and its formula sheet."""
    has = "The key comes after the questions."
    return saved_pdf(lambda: pdf_of(paper, site), f"{paper.code}.pdf", where, has, _sheet(paper))


def _sheet(paper: Paper) -> Markup:
    """A link that saves the formula sheet of its chapters, where they have formulas."""
    chapters = tuple(name for name in paper.chapters if name in by_chapter())
    if not chapters:
        return Markup()
    sheet = sheet_of(chapters, paper.units)
    return tag("p", link("Save its formula sheet", sheet.name, "application/pdf", sheet.pdf))
