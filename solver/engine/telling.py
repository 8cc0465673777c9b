"""What a learner is told: hints before an answer, and a mistake with the learner's own numbers.

The hints begin with what to ask oneself, then the way in words, the formulas, the numbers. None gives
a result away but the last, which has those on the way. The right result is never in what is told of
a mistake.
"""

from dataclasses import replace
from typing import NamedTuple

from solver.algebra.expression import Expr, Fraction, Lookup
from solver.algebra.notation import TEXT
from solver.algebra.tree import names, walk
from solver.algebra.typeset import numbers
from solver.units.show import figures, with_unit
from solver.vocabulary import quantity_named, spoken

from .case import Case
from .changes import SO_FAR, STOPPED_AT
from .mistake import THIS, Mistake
from .steps import Step

__all__ = ["Hint", "hints_of", "told"]

NEARLY_ZERO = 1e-6
LONGEST = 48  # characters of worked numbers that are still read at a glance
# 82 that went in as a whole number is told without its sign.
BARE = replace(TEXT, valued=lambda number, unit: number if unit == "%" else with_unit(number, unit))


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
        hints.append(Hint("The rule", steps=case.steps[-1:]))
        return (*hints, Hint("One pair", _one_pair(case))) if case.ordered else tuple(hints)
    return (*hints, Hint("The numbers", steps=worked, with_numbers=True))


def _asks(case: Case) -> str:
    if case.ordered:
        return "Which step would hurt somebody, or prove nothing, if it came too early?"
    if case.choices:
        return "What does the question ask you to decide? Which reading or rule decides it?"
    given = [f"the {_named(name, case)}" for name in case.given]
    have = " and ".join(filter(None, (", ".join(given[:-1]), *given[-1:])))
    return f"You have {have}. You need the {_named(case.asked, case)}. {_leads(case)}"


def _one_pair(case: Case) -> str:
    """Two of the steps, in the order in which they must stand."""
    first, then = (case.choices[step] for step in case.pairs[0])
    return f"“{first}” comes before “{then}”."


def _leads(case: Case) -> str:
    """What to ask oneself about the way: the machines in it and the direction, where it has any."""
    used = {name for step in case.steps if step.expr is not None for name in names(step.expr)}
    machines = {name.removeprefix("new_") for name in used if name.endswith("_efficiency")}
    if "volumetric_efficiency" in used:
        return (
            "Less comes out than is displaced. Which of the two do you have, and which do you need?"
        )
    if not machines or case.asked.endswith("_efficiency"):
        return "What leads from one to the other?"
    one = len(machines) == 1 and "overall_efficiency" not in machines
    which = "Which machine comes" if one else "Which machines come"
    return f"{which} between them? Are you going toward the wire or toward the water?"


def _way(case: Case, worked: tuple[Step, ...]) -> str:
    """The steps by their names, and the reason of the last."""
    order = ", then the ".join(_named(step.name, case) for step in worked)
    first = "Find" if len(worked) == 1 else "First find"
    why = worked[-1].why
    in_words = not any(mark in why for mark in "×=√")  # a formula comes with the next hint
    return f"{first} the {order}. {why if in_words else ''}".strip()


def _named(name: str, case: Case) -> str:
    return spoken(f"{{{name}:name}}", case.units)


def told(case: Case, mistake: Mistake, value: float, typed: str = "") -> str:
    """What a learner is told who answered `value`; `typed` is how they wrote it, with its unit.

    >>> from solver import draw
    >>> case = draw("brake_power", 7, level=2)
    >>> by_pump = next(m for m in case.mistakes if "multiplied_by.pump" in m.id)
    >>> told(case, by_pump, by_pump.value)[:63]
    'Your 3.667 hp is 6.215 hp × 0.59. You multiplied by the pump ef'
    """
    bare = _short(value, case.unit)
    said = typed or with_unit(bare, case.unit)
    others = (
        _also(other)
        for other in mistake.others
        if other.low <= value <= other.high and other.did != mistake.did
    )
    parts = (
        _work(case, mistake, value, said),
        mistake.did.replace(THIS, f"Your {bare}" if abs(value) >= NEARLY_ZERO else "Your answer"),
        mistake.why,
        next(others, ""),
    )
    return " ".join(filter(None, parts))


def _short(value: float, unit: str) -> str:
    """A number that may be out of all proportion, as somebody says it."""
    for size, name in ((1e12, "trillion"), (1e9, "billion")):
        if abs(value) >= size:
            return f"{value / size:.4g} {name}"
    return figures(value, unit)


def _work(case: Case, mistake: Mistake, value: float, said: str) -> str:
    """The learner's numbers put in, where that is short and says something."""
    if abs(value) < NEARLY_ZERO:
        return "" if THIS in mistake.did else "Your answer is nearly zero."
    if mistake.wrong is None:
        return ""
    if mistake.id not in case.worked_wrong:
        case.worked_wrong[mistake.id] = _numbers(case, mistake.id, mistake.wrong)
    work = case.worked_wrong[mistake.id]
    if not work:
        return ""
    if mistake.form == SO_FAR:
        return f"So far so good: {work} = {_result(case, mistake, value)}."
    if mistake.of == case.asked:
        return f"Your {said} is {work}."
    return spoken(f"Your {said} uses {work} for the {{{mistake.of}:name}}.", case.units)


def _result(case: Case, mistake: Mistake, value: float) -> str:
    """What was worked so far; with its unit, where it is a quantity of the chain."""
    _, stopped, here = mistake.id.rpartition(STOPPED_AT)
    if not stopped:
        return _short(value, "")
    own = quantity_named(here).unit(case.units)
    return with_unit(_short(value, own), own)


def _numbers(case: Case, mistake: str, wrong: Expr) -> str:
    """What was worked instead, with the numbers; "" where it is long, one number, or read from a table."""
    notation = BARE if "percent_as_whole" in mistake else TEXT
    work = numbers(wrong, case.units, case.known, case.given, notation)
    one_alone = not any(mark in work for mark in (*"×+−√^", " / "))  # L/s has no step in it
    of_a_table = any(isinstance(n, Fraction) and isinstance(n.of, Lookup) for n in walk(wrong))
    return "" if one_alone or of_a_table or len(work) > LONGEST else work


def _also(other: Mistake) -> str:
    """Another way to the same number."""
    if other.did.startswith("You "):
        return f"You also get this number if y{other.did[1:]}"
    return f"It{other.did.removeprefix(THIS)}".replace(
        "It is right", "It is also the right answer", 1
    )
