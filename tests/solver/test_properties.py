"""What holds for every problem there is: each family, level and system, over many seeds.

A few seeds each in the ordinary run (SEEDS, in drawn.py). The long run, 10,000 each, is its own command:

    W2W_SEEDS=10000 python -m pytest tests/solver/test_properties.py -q

A new family is covered by being listed in its topic; nothing is added here.
"""

import re
from functools import lru_cache
from itertools import product
from string import Formatter

import pytest

from solver import Case, case_from_code, draw, grade
from solver.algebra.tree import Compute, compiled, constants
from solver.topics.tables import motor_sizes
from solver.units.reading import read
from solver.units.show import exact, with_unit
from solver.vocabulary import quantity_named

from .drawn import (
    JUDGEMENTS,
    NUMERIC,
    PROBLEMS,
    SEEDS,
    each,
    rounded,
    rounded_half_up,
    seeds,
    typed,
)

# Slots left open, gaps, and what Python calls nothing; "maintenance" only holds such letters.
BROKEN = re.compile(r"[{}]|  | [.,]|\b(None|nan|inf)\b")
# The order that losses allow (common practice, no source): each is at least the one before.
UP_THE_CHAIN = ("water_power", "brake_power", "motor_output", "motor_power")
every_problem = each(PROBLEMS)
every_numeric_problem = each(NUMERIC)
every_judgement = each(JUDGEMENTS)


@lru_cache(maxsize=8)
def cases(problem) -> tuple[Case, ...]:
    """The cases of a problem: the tests of a kind follow one another, and it has at most eight."""
    family, level, units = problem
    return tuple(draw(family, seed, units, level) for seed in seeds(SEEDS))


def faulty(found) -> list[str]:
    """The first faults found, few enough to read."""
    return [text for text, _ in zip(found, range(5), strict=False)]


@every_numeric_problem
def test_a_case_accepts_its_own_answer_as_people_write_it(problem):
    def refused():
        for case in cases(problem):
            answers = (repr(case.answer), *(typed(case.answer, case.unit, n) for n in (None, 4, 3)))
            for text in answers:
                if grade(case, text).status != "right":
                    yield f"{case.code}: {text} for {case.answer}"

    assert [] == faulty(refused())


@every_numeric_problem
def test_any_constant_in_use_and_three_figures_a_step_still_give_a_right_answer(problem):
    """The chain again from its steps: each mix of constants, whole or rounded as it goes."""
    chains: dict[tuple[int, ...], list] = {}
    keeps = (lambda value: value, _three, _three_half_up)

    def refused():
        for case in cases(problem):
            key = tuple(id(step.expr) for step in case.steps)
            chain = chains.get(key) or chains.setdefault(key, _with_every_constant(case))
            for (mix, links), keep in product(chain, keeps):
                known = dict(case.given)
                for name, compute in links:
                    known[name] = keep(compute(known))
                if not case.low <= known[case.asked] <= case.high:
                    yield f"{case.code}: {known[case.asked]} with {mix}, for {case.answer}"

    assert [] == faulty(refused())


def _with_every_constant(case: Case) -> list[tuple[tuple, list[tuple[str, Compute]]]]:
    used = list(dict.fromkeys(c for step in case.steps for c in constants(step.expr)))
    figures = [constant.figure(case.units) for constant in used]
    mixes = list(product(*((figure.value, *figure.also) for figure in figures)))
    return [
        (mix, [(s.name, compiled(s.expr, case.units, dict(zip(used, mix, strict=True))))
               for s in case.steps])
        for mix in mixes
    ]  # fmt: skip


def _three(value: float) -> float:
    return rounded(value, 3)


def _three_half_up(value: float) -> float:
    return rounded_half_up(value, 3)


@every_numeric_problem
def test_every_named_mistake_is_refused_and_named(problem):
    """At full precision by its own name; at three figures as one that comes as near or holds it, or as close."""

    def missed():
        for case in cases(problem):
            by_id = {mistake.id: mistake for mistake in case.mistakes}
            for mistake in case.mistakes:
                for text in (repr(mistake.value), typed(mistake.value, case.unit)):
                    if grade(case, text)[::2][:2] != ("mistake", mistake.id):
                        yield f"{case.code}: {text} is {mistake.id}, not {grade(case, text)}"
                text = typed(mistake.value, case.unit, 3)
                verdict = grade(case, text)
                if verdict.status == "close":  # rounded to three figures it is near the right one
                    continue
                name, short = verdict.mistake, rounded(mistake.value, 3)
                off = abs(short - mistake.value)
                near = name and abs(short - by_id[name].value)
                holds = name and by_id[name].low <= short <= by_id[name].high
                if near is None or (near > off and not holds):
                    yield f"{case.code}: {text} is {mistake.id}, not {name}"

    assert [] == faulty(missed())


@every_numeric_problem
def test_no_mistake_shares_any_answer_with_a_right_one(problem):
    def touching():
        for case in cases(problem):
            assert case.low < case.answer < case.high
            for mistake in case.mistakes:
                if mistake.low <= case.high and case.low <= mistake.high:
                    yield f"{case.code}: {mistake}"

    assert [] == faulty(touching())


@every_problem
def test_every_machine_drawn_could_exist(problem):
    def impossible():
        for case in cases(problem):
            worked = {s.name: s.value for s in case.steps if s.expr is not None}
            for name, value in (case.given | worked).items():
                low, high = quantity_named(name).usual(case.units)
                if not low <= value <= high:
                    yield f"{case.code}: {name} {value} is not from {low} to {high}"
            chain = [case.known[name] for name in UP_THE_CHAIN if name in case.known]
            if chain != sorted(chain):
                yield f"{case.code}: {chain} does not rise from the water to the wire"
            size = case.known.get("motor_size")
            if size is not None and size not in motor_sizes(case.units):
                yield f"{case.code}: {size} is not a standard motor"

    assert [] == faulty(impossible())


@pytest.mark.parametrize(
    ("text", "found"),
    [
        ("How many gpm is 62 ft?", None),
        ("After maintenance, what financing is needed?", None),
        ("It shows nan gpm.", "nan"),
        ("It shows None.", "None"),
        ("It shows inf A at {volts}.", "inf"),
        ("At {volts}.", "{"),
        ("It shows .", " ."),
        ("It  shows", "  "),
    ],
)
def test_a_broken_question_is_told_from_a_whole_one(text, found):
    match = BROKEN.search(text)
    assert found == (match and match[0])


@every_problem
def test_the_question_is_whole_and_holds_every_given_as_it_is_used(problem):
    family, level, _ = problem
    words = [part for part, *_ in Formatter().parse(family.level(level).question)]

    def broken():
        for case in cases(problem):
            question = case.question
            if BROKEN.search(question):
                yield f"{case.code}: {question}"
            if question != question.strip() or not all(part in question for part in words):
                yield f"{case.code}: {question}"
            for name, value in case.given.items():
                unit = quantity_named(name).unit(case.units)
                shown = with_unit(exact(value, unit), unit)
                if shown not in question or read(shown, unit).value != value:
                    yield f"{case.code}: {name} {value!r} is shown as {shown}"

    assert [] == faulty(broken())


@every_problem
def test_the_code_alone_gives_an_equal_case_back(problem):
    def changed():
        for case in cases(problem)[::3]:
            if case_from_code(case.code) != case:
                yield case.code

    assert [] == faulty(changed())


@every_problem
def test_problems_differ_from_seed_to_seed(problem):
    """Someone who takes new numbers gets new numbers: a third of them or more are different."""
    first = cases(problem)
    assert len({(case.question, case.choices) for case in first}) >= len(first) / 3


@every_judgement
def test_the_choices_differ_and_exactly_one_is_right(problem):
    def broken():
        for case in cases(problem):
            count = len(case.choices)
            by_number = [grade(case, str(n)).status for n in range(1, count + 1)]
            by_text = [grade(case, text).status for text in case.choices]
            if len({text.casefold() for text in case.choices}) != count or count < 2:
                yield f"{case.code}: {case.choices}"
            if by_number != by_text or sorted(by_text) != ["mistake"] * (count - 1) + ["right"]:
                yield f"{case.code}: {by_number} by number, {by_text} by text"

    assert [] == faulty(broken())


@every_judgement
def test_a_wrong_choice_is_named_with_its_own_reason(problem):
    def unnamed():
        for case in cases(problem):
            for mistake in case.mistakes:
                verdict = grade(case, case.choices[int(mistake.value) - 1])
                if (verdict.mistake, verdict.says) != (mistake.id, mistake.says):
                    yield f"{case.code}: {verdict}"

    assert [] == faulty(unnamed())


@every_judgement
def test_the_right_choice_does_not_stand_in_one_place(problem):
    """Each place gets its share of the seeds, within four standard deviations of an even one."""
    drawn = cases(problem)
    count = len(drawn[0].choices)
    places = [sum(case.answer == place for case in drawn) for place in range(1, count + 1)]
    even = len(drawn) / count
    spread = 4 * (even * (1 - 1 / count)) ** 0.5
    assert all(abs(place - even) <= spread for place in places), places
