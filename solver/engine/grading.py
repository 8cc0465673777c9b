"""From what a learner typed to a verdict: right, a named mistake, close, wrong or unreadable."""

from math import isclose
from typing import NamedTuple

from solver.algebra.expression import Constant, Expr, Fraction, Known, Product
from solver.algebra.tree import walk
from solver.errors import Unreadable
from solver.units.order import letters_of, read_order, steps_of
from solver.units.reading import Reading, read
from solver.units.show import figures, with_unit
from solver.vocabulary import quantity_named

from .case import Case
from .mistake import CLOSE, Mistake
from .order import broken
from .telling import told

__all__ = ["MISTAKE", "NEAR", "RIGHT", "WRONG", "Verdict", "as_typed", "grade"]

RIGHT, MISTAKE, NEAR, WRONG, UNREADABLE = "right", "mistake", "close", "wrong", "unreadable"


MORE_BROKEN = "Once you fix that, look at the other steps: this isn't the only one out of place."


class Verdict(NamedTuple):
    """What became of an answer. `value` is the answer as read, in `unit`; None if unreadable."""

    status: str
    says: str
    mistake: str | None = None
    value: float | None = None
    unit: str | None = None
    echo: str = ""

    @property
    def counts(self) -> bool:
        """Whether this was a try: text that cannot be read never is."""
        return self.status != UNREADABLE


def grade(case: Case, text: str) -> Verdict:
    """The verdict on an answer as typed. It never raises for what a learner types."""
    if case.choices:
        return _grade_order(case, text) if case.ordered else _grade_choice(case, text)
    asked = quantity_named(case.asked)
    try:
        reading = read(text, case.unit, bare_fraction=asked.takes_decimal, quantity=asked)
    except Unreadable as refusal:
        return Verdict(UNREADABLE, str(refusal))
    return _numeric(case, reading)


def as_typed(case: Case, value: float) -> str:
    """What somebody types to give this value: a number in the unit asked, or the letters of an order."""
    return letters_of(value) if case.ordered else f"{value:.10g}"


def _numeric(case: Case, reading: Reading) -> Verdict:
    value = reading.value

    def verdict(status: str, says: str, mistake: str | None = None) -> Verdict:
        return Verdict(status, says, mistake, value, case.unit, reading.echo)

    if case.low <= value <= case.high:
        return verdict(RIGHT, f"Right: {_answer(case)}.")
    if found := _nearest_mistake(case, value):
        return verdict(MISTAKE, told(case, found, value, reading.said), found.id)
    if isclose(value, case.answer, rel_tol=CLOSE * (1 + 1e-12)):
        return verdict(NEAR, _close(case, value))
    return verdict(WRONG, _what_to_look_at(case, value))


def _close(case: Case, value: float) -> str:
    """What to do about a near answer: the right one cut to two figures, or rounding on the way."""
    if isclose(value, float(f"{case.answer:.2g}"), rel_tol=1e-9):
        return "Close. Give three figures."
    return "Close, but not within rounding. Keep more figures in each step."


def _nearest_mistake(case: Case, value: float) -> Mistake | None:
    fitting = [m for m in case.mistakes if m.low <= value <= m.high]
    if not fitting:
        others = (other for m in case.mistakes for other in m.others)
        fitting = [other for other in others if other.low <= value <= other.high]
    return min(fitting, key=lambda m: abs(m.value - value), default=None)


def _answer(case: Case) -> str:
    return with_unit(figures(case.answer, case.unit), case.unit)


def _what_to_look_at(case: Case, value: float) -> str:
    if value < 0 <= case.answer:
        return "Your answer is below zero, and that can't be right here. Check what you subtracted from what."
    for power in (1, 2, 3, 6):
        for factor in (10**power, 10**-power):
            if case.low <= value / factor <= case.high:
                return "Your digits are right, but the decimal point is in the wrong place. Check the units."
    size = "high" if value > case.answer else "low"
    return f"Not yet: your answer is too {size}. {_first_to_check(case)}"


def _first_to_check(case: Case) -> str:
    """Where most people who work this chain go wrong."""
    nodes = [node for step in case.steps if step.expr is not None for node in walk(step.expr)]
    if any(_is_efficiency(node) for node in nodes):
        return "First check whether to multiply or divide by each efficiency, then check the units."
    if any(isinstance(node, Constant) for node in nodes):
        return "First check the unit of each reading, then each conversion."
    if any(isinstance(node, Product) and node.under for node in nodes):
        return "First check what goes on top and what goes on the bottom."
    return "First check each reading, then what you add and what you subtract."


def _is_efficiency(node: Expr) -> bool:
    match node:
        case Fraction(Known(name)):
            return quantity_named(name).is_efficiency
    return False


def _grade_choice(case: Case, text: str) -> Verdict:
    words = " ".join(text[:400].split()).casefold().rstrip(".")
    by_text = [c.casefold().rstrip(".") for c in case.choices]
    try:
        number = by_text.index(words) + 1 if words in by_text else int(read(text, "choice").value)
        if not 1 <= number <= len(case.choices):
            raise Unreadable(
                f"You typed {number}. Type the number of one choice, 1 to {len(case.choices)}."
            )
    except Unreadable as refusal:
        return Verdict(UNREADABLE, str(refusal))
    echo = f"choice {number}"
    if number == case.answer:
        return Verdict(RIGHT, f"Right. {case.steps[-1].why}", None, float(number), "choice", echo)
    wrong = next(m for m in case.mistakes if m.value == number)
    return Verdict(MISTAKE, wrong.says, wrong.id, float(number), "choice", echo)


def _grade_order(case: Case, text: str) -> Verdict:
    """Right where every pair stands as it must; else the pair is told that is broken first."""
    try:
        number = read_order(text, len(case.choices))
    except Unreadable as refusal:
        return Verdict(UNREADABLE, str(refusal))
    echo, wrong = letters_of(number), broken(case.pairs, steps_of(number))
    if not wrong:
        return Verdict(RIGHT, f"Right. {case.steps[-1].why}", None, number, case.unit, echo)
    told = case.single_mistakes[wrong[0]]
    says = f"{told.says} {MORE_BROKEN}" if wrong[1:] else told.says
    return Verdict(MISTAKE, says, told.id, number, case.unit, echo)
