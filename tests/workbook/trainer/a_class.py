"""A made-up class: people who know more or less, and what they hand in for a set."""

import random
from collections.abc import Iterator
from math import exp

from solver import grade
from solver.engine.grading import as_typed
from solver.sets.work_set import cases_for
from workbook.log import Attempt, line_of
from workbook.trainer.sets.set_file import Assigned

__all__ = ["answered", "handed_in", "people"]

WHEN = "2025-11-25T18:{:02}:{:02}.000000Z"


def people(many: int) -> list[str]:
    """Ids of an invented class."""
    return [f"operator-{number:04}" for number in range(1, many + 1)]


def answered(assigned: Assigned, person: str, typed: dict[int, str], status: str) -> bytes:
    """A sheet with these answers by question, which a card would have kept with this status."""
    cases = cases_for(assigned.work, person)
    return b"".join(_line(assigned, person, n, cases[n - 1], t, status) for n, t in typed.items())


def _line(assigned, person, number, case, typed, status, mistake="") -> bytes:
    when = WHEN.format(number // 60, number % 60)
    line = Attempt(
        f"{person}-{number}", when, case.code, case.family.name, case.level, typed, status, mistake,
        of=assigned.work.code, who=person,
    )  # fmt: skip
    return line_of(line).encode() + b"\n"


def handed_in(assigned: Assigned, ids: list[str], seed: int = 1) -> Iterator[tuple[str, bytes]]:
    """Each person's sheet: the more somebody knows, the more of it is right."""
    chance = random.Random(seed)
    for person in ids:
        yield person, _sheet(assigned, person, chance, chance.gauss(0.5, 1.2))


def _sheet(assigned: Assigned, person: str, chance: random.Random, able: float) -> bytes:
    lines = []
    for number, case in enumerate(cases_for(assigned.work, person), 1):
        hard = (number % 5 - 2) / 2
        if chance.random() < 1 / (1 + exp(2 * (hard - able))):
            lines.append(
                _line(assigned, person, number, case, as_typed(case, case.answer), "right")
            )
        elif chance.random() < 0.7 and case.mistakes:
            slip = case.mistakes[min(int(chance.expovariate(1)), len(case.mistakes) - 1)]
            typed = as_typed(case, slip.value)
            lines.append(_line(assigned, person, number, case, typed, "mistake", slip.id))
        elif chance.random() < 0.6 and not case.choices:
            typed = f"{case.answer * 1.4567:.6g}"
            found = grade(case, typed)  # for some kinds it happens to be a known mistake
            lines.append(
                _line(assigned, person, number, case, typed, found.status, found.mistake or "")
            )
    return b"".join(lines)
