"""What somebody earns who knows nothing and clicks one choice after another."""

from itertools import islice, permutations
from statistics import fmean

from solver import Case, Verdict, grade
from solver.sets.credit import share_of
from solver.sets.work_set import cases_for
from solver.topics.catalogue import Refused

from .set_file import Assigned

__all__ = ["guessing", "guessing_share"]

ANYBODY = "anybody"
MOST_ORDERS = 120  # of the orders of some steps that are looked at


def guessing_share(assigned: Assigned) -> float:
    """The share of the points, 0 to 1, that guessing earns on average: an invented person's questions.

    A number cannot be guessed. Choices are tried in any order, each as likely, until one is right or no
    try is left.
    """
    cases = [case for case in cases_for(assigned.work, ANYBODY) if not isinstance(case, Refused)]
    return fmean(_of(assigned, case) for case in cases) if cases else 0.0


def _of(assigned: Assigned, case: Case) -> float:
    many = len(case.choices)
    if not many:
        return 0.0
    if case.ordered:
        return _of_order(assigned, case)
    most = min(assigned.tries_for(case) or many, many)
    verdicts = [grade(case, str(number)) for number in range(1, many + 1)]
    right = next(each for each in verdicts if each.status == "right")
    others = [each for each in verdicts if each is not right]
    found = []
    for at in range(1, many + 1):  # the right one comes as this one
        shares = [
            fmean(share_of(assigned.credit, o, n, True) for o in others) for n in range(1, at)
        ]
        shares = [*shares, share_of(assigned.credit, right, at, True)][:most]
        by = {"best": max(shares), "first": shares[0], "last": shares[-1]}
        found.append(by[assigned.counts])
    return fmean(found)


def _of_order(assigned: Assigned, case: Case) -> float:
    """Steps put into any order: what one such try earns, and that again for each further try."""
    letters = "ABCDEFGHIJ"[: len(case.choices)]
    verdicts = [grade(case, "".join(one)) for one in islice(permutations(letters), MOST_ORDERS)]
    chance = fmean(each.status == "right" for each in verdicts)
    others = [each for each in verdicts if each.status != "right"]
    wrong = fmean(share_of(assigned.credit, each, 1, True) for each in others) if others else 0.0
    tries = assigned.tries_for(case) if assigned.counts != "first" else 1
    share, left = 0.0, 1.0
    for number in range(1, (tries or 3) + 1):
        share += left * chance * share_of(assigned.credit, _right(case), number, True)
        left *= 1 - chance
    return share + left * wrong


def _right(case: Case) -> Verdict:
    return Verdict("right", "", value=float(case.answer))


def guessing(assigned: Assigned) -> str:
    """What guessing earns, in a sentence; and what to change where that is much."""
    share = guessing_share(assigned)
    if share < 0.005:
        return "Guessing alone earns nothing here."
    said = f"Guessing alone earns about {share:.0%} of the points."
    if share > 0.25:
        said += (
            " To make it less, allow fewer tries where there are choices, or give a wrong choice 0."
        )
    return said
