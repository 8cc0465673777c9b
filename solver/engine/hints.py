"""Hints for a problem: first what to ask oneself, then the way in words, the formulas, the numbers.

The first is never a formula, and none gives a result away but the last, which has those on the way.
"""

from typing import NamedTuple

from solver.units.spoken import spoken

from .case import Case
from .steps import Step

__all__ = ["Hint", "hints_of"]


class Hint(NamedTuple):
    """One hint: its title and either sentences, or steps whose formulas or numbers are shown."""

    title: str
    says: str = ""
    steps: tuple[Step, ...] = ()
    with_numbers: bool = False


def hints_of(case: Case) -> tuple[Hint, ...]:
    """The hints of a problem, in the order they are given."""
    worked = tuple(step for step in case.steps if step.expr is not None)
    hints = [Hint("Ask yourself", _asks(case))]
    if worked:
        hints.append(Hint("The way", _way(case, worked)))
        hints.append(Hint("The formula" if len(worked) == 1 else "The formulas", steps=worked))
    if case.choices:
        return (*hints, Hint("The rule", steps=case.steps[-1:]))
    return (*hints, Hint("The numbers", steps=worked, with_numbers=True))


def _asks(case: Case) -> str:
    if case.choices:
        return "What does the question ask you to decide? Which reading or rule decides it?"
    given = [_named(name, case) for name in case.given]
    have = " and ".join(filter(None, (", ".join(given[:-1]), *given[-1:])))
    return f"You have the {have}. You need the {_named(case.asked, case)}. What leads from one to the other?"


def _way(case: Case, worked: tuple[Step, ...]) -> str:
    """The steps by their names, and the reason of the last."""
    order = ", then the ".join(_named(step.name, case) for step in worked)
    first = "Find" if len(worked) == 1 else "First find"
    why = worked[-1].why
    in_words = not any(mark in why for mark in "×=√")  # a formula comes with the next hint
    return f"{first} the {order}. {why if in_words else ''}".strip()


def _named(name: str, case: Case) -> str:
    return spoken(f"{{{name}:name}}", case.units)
