"""Amps before and after the motor leads are rolled: where the cause of a high leg is.

The high leg stays with the line: the supply. It moves with the motor lead: motor, cable or
splice (pump makers' manuals).
"""

from collections.abc import Callable
from itertools import pairwise

from solver.topics.balance.judgments_leads import CLEAR, CONNECTIONS
from solver.topics.limits import CURRENT_UNBALANCE

from .verdict import BEYOND, LOOK, WITHIN, Seen, Verdict, above

__all__ = ["AMPS", "TURNS", "cause", "readings", "rolled"]

AMPS, TURNS = ("amps_a", "amps_b", "amps_c"), ("", "_2", "_3")
STANDS_OUT = 0.01  # a high leg is told from the next by this share of the average, or not at all
RULE = "high leg stays with the line: supply; high leg moves with the lead: motor, cable or splice"
PRACTICE = "common practice, no source"


def high_leg(seen: Seen, turn: str) -> str | None:
    """The leg with the most amps; None where it hardly stands out."""
    amps = {leg: seen.known[f"amps_{leg.lower()}{turn}"] for leg in "ABC"}
    first, second, _ = sorted(amps, key=amps.get, reverse=True)
    average = sum(amps.values()) / 3
    return first if amps[first] - amps[second] >= STANDS_OUT * average else None


def cause(legs: list[str | None]) -> tuple[str, str]:
    """What the high legs of two or three connections say, and what to look at.

    >>> cause(["A", "A", "A"])[0]
    'The high leg stays on line A, whichever lead is on it. The cause is in the supply.'
    >>> cause(["A", "B", "C"])[0]
    'The high leg moves with its lead (A, then B, then C). The cause is the motor, its cable or a splice.'
    """
    if None in legs:
        return (
            "No leg is off by as much as 1% of the average, so rolling the leads tells you nothing.",
            "",
        )
    path = ", then ".join(legs)
    moved = {("ABC".index(after) - "ABC".index(before)) % 3 for before, after in pairwise(legs)}
    if moved == {0}:
        says = f"The high leg stays on line {legs[0]}, whichever lead is on it. The cause is in the supply."
        return says, f"Check the supply of line {legs[0]}: fuse, contact, connection, transformer."
    if len(moved) == 1:
        says = f"The high leg moves with its lead ({path}). The cause is the motor, its cable or a splice."
        return says, "Check the splice and the cable of that lead, then the winding."
    says = f"The high leg goes {path}. That follows neither the line nor the lead."
    return says, "Read all the connections again at the same load."


def best(seen: Seen, turns: tuple[str, ...]) -> str:
    """Which connection to keep, where one is clearly best."""
    size = {turn: seen.known[f"current_unbalance{turn}"] for turn in turns}
    first, second, *_ = sorted(size, key=size.get)
    if size[second] - size[first] < CLEAR:
        return "No connection is clearly better."
    name = CONNECTIONS[TURNS.index(first)].lower()
    return f"The lowest unbalance is {size[first]:.3g}%, {name}. Keep that connection, and check the rotation."


def rolled(turns: tuple[str, ...]) -> Callable[[Seen], Verdict]:
    """A judge of these connections: where the cause is, and the least unbalance among them."""

    def judge(seen: Seen) -> Verdict:
        low, high = CURRENT_UNBALANCE.low, CURRENT_UNBALANCE.high
        least = min(seen.known[f"current_unbalance{turn}"] for turn in turns)
        state = (WITHIN, LOOK, BEYOND)[above(least, low) + above(least, high)]
        says, look = cause([high_leg(seen, turn) for turn in turns])
        keep = best(seen, turns)
        then = f"{look} {keep}".strip() if above(seen.known["current_unbalance"], low) else ""
        rule = f"{RULE}; {CURRENT_UNBALANCE.rule}"
        return Verdict(state, f"{says} {keep}", rule, PRACTICE, then)

    return judge


def readings(turns: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(f"{leg}{turn}" for turn in turns for leg in AMPS)
