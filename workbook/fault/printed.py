"""A case on paper: the report, the nameplates and the record; the readings on a page to fold; the answer."""

from pathlib import Path
from typing import Any

from solver.fault.case import FaultCase
from solver.fault.finding import finding
from solver.fault.record import last_year
from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.review import sure_way
from solver.fault.safety import LOCKOUT, QUALIFIED, STEPS
from solver.fault.way import Way
from solver.render.fault import NEEDS, case_heading, finding_text, way_in_words
from solver.render.station import plates
from solver.station.faults import FAULTS
from solver.units.show import capital
from workbook.ui.cautions import caution_lines
from workbook.ui.markup import Markup
from workbook.ui.printing import PAPER, compiled, pictures, saved_pdf

__all__ = ["pdf_of", "pictures_of", "printed", "save_pdf"]

TEMPLATE = Path(__file__).with_name("case.typ")
FOLD = (
    "Fold this page away. Say which reading you take and what has to come first; a partner reads you that line "
    "alone. A reading whose steps you left out isn't read to you."
)
FIRST = {
    "running": "Nothing comes first.",
    "live": f"First: {STEPS[QUALIFIED].label.lower()} ({STEPS[QUALIFIED].rule.source}).",
    "dead": f"First: {', '.join(STEPS[name].label.lower() for name in LOCKOUT)} "
    "(29 CFR 1910.147). The check valve needs the permit too (29 CFR 1910.146).",
}


def pdf_of(case: FaultCase) -> bytes:
    """The case as a PDF.

    Raises:
        CannotPrint: typst is missing.
    """
    return compiled(TEMPLATE, printed(case))


def pictures_of(case: FaultCase, dots: float = 96) -> list[bytes]:
    """The pages as PNG pictures."""
    return pictures(TEMPLATE, printed(case), dots)


def printed(case: FaultCase) -> dict[str, Any]:
    """All that is on the pages, as plain data."""
    best, why = RIGHT[case.fault]
    sure = sure_way(str(case.code))
    return {
        "paper": PAPER[case.units],
        "code": str(case.code),
        "title": case.title,
        "report": case.report,
        "about": case_heading(case),
        "suspects": [FAULTS[name].label for name in case.suspects],
        "plates": [[title, [list(row) for row in rows]] for title, rows in plates(case.station)],
        "record": [[capital(one.signal.label), one.text(case.units)] for one in last_year(case)],
        "fold": FOLD,
        "readings": [
            [title, FIRST[needs], _readings(case, needs)] for needs, title in NEEDS.items()
        ],
        "answer": [
            f"It was: {FAULTS[case.fault].label}.",
            f"What to do: {ACTIONS[best[0]].lower()}. {why}",
            f"A sure way takes {sure.minutes} minutes: {way_in_words(sure)}.",
        ],
        "always": caution_lines()[-1],
    }


def _readings(case: FaultCase, needs: str) -> list[list[str]]:
    """What each reading shows: its name, minutes, and the line to read out."""
    way = Way(case)
    return [
        [
            capital(act.label),
            f"{way.cost(act.name)} min",
            finding_text(finding(case, act.name), case.units),
        ]
        for act in case.acts.values()
        if act.needs == needs
    ]


def save_pdf(case: FaultCase, where: Path) -> Markup:
    """Make the PDF, keep it in a folder, and say so in HTML, with a link that saves it elsewhere."""
    has = "Page 2 has the readings, to fold away. The answer is last."
    return saved_pdf(lambda: pdf_of(case), f"{case.code}.pdf", where, has)
