"""Lines of answer sheets as cards keep them, and as nobody should."""

from solver import grade
from solver.engine.grading import as_typed
from solver.sets.work_set import cases_for
from workbook.log import SHOWN, Attempt, line_of

__all__ = ["choice", "line", "mistaken", "number", "right", "sheet", "shown", "wrong"]


def right(case) -> str:
    """A right answer, as somebody would type it."""
    return as_typed(case, case.answer)


def mistaken(case) -> str:
    """An answer that a known mistake gives."""
    return as_typed(case, case.mistakes[0].value)


def wrong(case) -> str:
    """An answer to a numeric problem that nothing known gives."""
    for factor in (1.37, 1.73, 2.31, 3.17, 0.43):
        if grade(case, text := f"{case.answer * factor:.8g}").status == "wrong":
            return text
    raise AssertionError(f"every wrong answer to {case.code} has a name")


def number(assigned, person: str) -> int:
    """The first question whose answer is a number."""
    cases = cases_for(assigned.work, person)
    return next(at for at, case in enumerate(cases, 1) if not case.choices)


def choice(assigned, person: str) -> int:
    """The first question whose answer is a choice."""
    cases = cases_for(assigned.work, person)
    return next(at for at, case in enumerate(cases, 1) if case.choices)


def line(assigned, person: str, number: int, typed, tries: int = 1, **other) -> Attempt:
    """What a card keeps of an answer; `typed` may be a function of the problem."""
    case = cases_for(assigned.work, person)[number - 1]
    text = typed if isinstance(typed, str) else typed(case)
    verdict = grade(case, text)
    found = Attempt(
        id=f"{person}-{number}-{tries}",
        when=f"2025-11-25T18:{number:02}:{tries % 60:02}.000000Z",
        code=case.code,
        family=case.family.name,
        level=case.level,
        typed=text,
        status=verdict.status if verdict.counts else "wrong",
        mistake=verdict.mistake or "",
        seconds=41.5,
        tries=tries,
        of=assigned.work.code,
        who=person,
    )
    return found._replace(**other)


def shown(assigned, person: str, number: int, tries: int = 1) -> Attempt:
    """The worked solution was opened."""
    return line(assigned, person, number, "", tries, status=SHOWN, solution=True)


def sheet(*lines: Attempt | bytes) -> bytes:
    """These lines as a file."""
    return b"".join((each if isinstance(each, bytes) else _bytes(each)) + b"\n" for each in lines)


def _bytes(line: Attempt) -> bytes:
    return line_of(line).encode("utf-8", "surrogatepass")  # a file may hold anything
