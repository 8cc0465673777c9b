"""The mark of a case of find the fault: its way gone through again from the lines of the sheet.

What counts is the fault named, the call made, and each step that a safety rule stopped. Minutes and readings
earn nothing; they are told, to the learner in the review and to the trainer in the class's report.
"""

from collections.abc import Sequence

from solver.fault.case import FaultCase
from solver.fault.remedies import RIGHT
from solver.fault.way import Way
from solver.render.fault import outcome
from solver.sets.credit import share_of_way
from solver.station.faults import FAULTS
from workbook.log import Attempt
from workbook.trainer.learner.own_case import replayed
from workbook.trainer.sets.set_file import Assigned

from .odd import told
from .tries import QuestionMark

__all__ = ["by_way"]

BLANK = "blank"
NOTHING_DONE = "Nothing was done in this case."
NO_NAME = "No fault was named."
PAST_LIMIT = "It was named after the {} tries that count."


def by_way(
    assigned: Assigned,
    number: int,
    case: FaultCase,
    lines: Sequence[Attempt],
    odd: Sequence[str],
    said: Sequence[str] = (),
) -> QuestionMark:
    """The mark of a case by its lines, in order of time; `odd` is what is odd besides, `said` what isn't."""
    way, strange = replayed(case, lines)
    odd = [*odd, *strange]
    out_of = assigned.faults.points
    share = share_of_way(assigned.credit, way, assigned.tries, assigned.faults.unsafe)
    status, why = _state(assigned, way)
    return QuestionMark(
        number,
        min(round(share * out_of, 6), out_of),
        out_of,
        status,
        "",
        "; ".join(FAULTS[name].label for name in way.names),
        " ".join(outcome(way)) if way.words else NOTHING_DONE,
        told((*odd, *said, *why)),
        bool(odd),
        case,
        len(way.names),
        way=way,
    )


def _state(assigned: Assigned, way: Way) -> tuple[str, list[str]]:
    """How a way ended as a question's status, and why it earned nothing where that isn't plain."""
    if not way.words:
        return BLANK, []
    if not way.names:
        return "wrong", [NO_NAME]
    names = list(dict.fromkeys(way.names))
    if way.case.fault not in names[: assigned.tries or None]:
        return "wrong", [PAST_LIMIT.format(assigned.tries)] * way.named
    return ("right" if way.action in RIGHT[way.case.fault][0] else "close"), []
