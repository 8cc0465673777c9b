"""Keeps each try of a card in the reader's log, and says so where it cannot."""

import contextlib
from collections.abc import Sequence
from datetime import datetime
from functools import cache
from itertools import takewhile

from solver import BadCode
from solver.engine.code import read_code
from workbook.log import SHOWN, Attempt, Log, NotKept, default_path, lasting, made

from .practice import Try

__all__ = ["attempt_of", "codes_today", "keep", "own_log", "past", "units_of"]

FORGOTTEN = (
    "This browser forgets your answers when you close the page. "
    "Open Your study and save a copy first."
)


@cache
def own_log() -> Log:
    """The reader's own log; one for all cards of a page."""
    return Log(default_path())


def attempt_of(told: Try, of: str = "", who: str = "") -> Attempt:
    """A try as it stands in a log."""
    case, verdict = told.case, told.verdict
    return made(
        code=case.code,
        family=case.family.name,
        level=case.level,
        typed=told.text,
        status=verdict.status if verdict else SHOWN,
        mistake=(verdict.mistake if verdict else None) or "",
        seconds=round(told.seconds, 1),
        tries=told.number,
        hints=told.hints,
        solution=verdict is None,
        of=of,
        who=who,
    )


def past() -> Sequence[Attempt]:
    """Every attempt in the reader's log, oldest first; none where it cannot be read."""
    log = own_log()
    with contextlib.suppress(OSError):
        log.read()
    return log.attempts


def codes_today() -> set[str]:
    """The codes of the problems that were answered today, by the reader's own clock."""
    today = datetime.now().astimezone().date()

    def of_today(attempt: Attempt) -> bool:
        return datetime.fromisoformat(attempt.when).astimezone().date() == today

    return {attempt.code for attempt in takewhile(of_today, reversed(past()))}


def units_of(attempts: Sequence[Attempt]) -> str:
    """The system of units in which somebody worked last."""
    for attempt in reversed(attempts):
        with contextlib.suppress(BadCode):
            return read_code(attempt.code).units
    return "us"


def keep(told: Try, log: Log | None = None, of: str = "", who: str = "") -> str:
    """Write a try through to a log, else the reader's own; a sentence where that cannot be."""
    try:
        (log or own_log()).keep(attempt_of(told, of, who))
    except NotKept as fault:
        return str(fault)
    return "" if lasting() else FORGOTTEN
