"""Volts and amps on three legs, and amps after the leads are rolled, by the phase balance chapter.

A high leg that stays with the line points to the supply; one that moves with the motor lead, to the
motor, its cable or a splice (pump makers' manuals).
"""

from collections.abc import Sequence
from functools import partial
from itertools import pairwise

from solver.topics.balance.judgments_leads import CLEAR, CONNECTIONS
from solver.topics.limits import CURRENT_UNBALANCE, DERATED, NAMEPLATE_AMPS, VOLTAGE_UNBALANCE
from solver.topics.zones import Limits

from .check import Check, Judge
from .verdict import BEYOND, LOOK, WITHIN, Seen, Verdict, above, at_most

__all__ = ["AMPS", "LEGS", "TURNS", "VOLTS", "cause", "course", "derated_load", "high_leg"]

VOLTS = ("volts_ab", "volts_bc", "volts_ca")
AMPS, TURNS = ("amps_a", "amps_b", "amps_c"), ("", "_2", "_3")
STANDS_OUT = 0.01  # a high leg is told from the next by this share of the average, or not at all
STAYS_OR_MOVES = (
    "high leg stays with the line: supply; high leg moves with the lead: motor, cable or splice"
)
PRACTICE = "common practice, no source"
ONE_PHASE = ("phase", "1")
OFF_NAMEPLATE = 0.10
EVEN_SUPPLY = (
    "Find what makes the volts uneven: single-phase loads, a loose connection, a weak fuse. "
    "Then call the power company."
)
ROLL = (
    "Have a qualified person roll the leads, locked out and tested dead. "
    "That shows whether it is the supply or the motor. Check the rotation afterward."
)


def volts_against_nameplate(seen: Seen) -> Verdict:
    """Each pair of lines within 10 % of the nameplate's volts."""
    rated = seen.known["rated_volts"]
    furthest = max(VOLTS, key=lambda name: abs(seen.known[name] - rated))
    return volts_off(seen, furthest, f"Of the three, {seen.shown(furthest)} is furthest from")


def volts_of_one_phase(seen: Seen) -> Verdict:
    """The one pair of lines within 10 % of the nameplate's volts."""
    return volts_off(seen, "volts_ab", f"It reads {seen.shown('volts_ab')}, against")


def volts_off(seen: Seen, name: str, said: str) -> Verdict:
    """How far the volts `name` are from the nameplate's; `said` begins the sentence."""
    rated = seen.known["rated_volts"]
    off = abs(seen.known[name] - rated)
    over = above(off, OFF_NAMEPLATE * rated)
    says = f"{said} the nameplate's {seen.shown('rated_volts')}: {100 * off / rated:.3g}% off."
    then = "Check the taps and the supply. Call the power company." if over else ""
    rule = "within 10% of the nameplate volts, at nameplate frequency"
    state, source = BEYOND if over else WITHIN, "NEMA MG 1 12.44 (from memory)"
    return Verdict(state, says, rule, source, then, f"{seen.shown('rated_volts')} ± 10%")


def voltage_unbalance(seen: Seen) -> Verdict:
    """Voltage unbalance in percent, by the limits of NEMA MG 1."""
    stop = f"Don't run the motor on these volts. {EVEN_SUPPLY}"
    return at_most(seen, VOLTAGE_UNBALANCE, "", EVEN_SUPPLY, stop)


def current_unbalance(seen: Seen) -> Verdict:
    """Current unbalance in percent, by the limits of common practice."""
    then = "" if all(f"{leg}_2" in seen.known for leg in AMPS) else ROLL
    return at_most(seen, CURRENT_UNBALANCE, "", then, f"One winding is running hot. {then}".strip())


def amps_against_nameplate(seen: Seen) -> Verdict:
    """The highest leg against full-load amps, and against service-factor amps where known."""
    return amps_over(seen, NAMEPLATE_AMPS)


def amps_of_one_phase(seen: Seen) -> Verdict:
    """The one current against the same."""
    rule = "the amps against full-load amps, then against service-factor amps"
    return amps_over(seen, NAMEPLATE_AMPS._replace(quantity="amps_a", rule=rule))


def amps_over(seen: Seen, limits: Limits) -> Verdict:
    """Amps against the nameplate; without a service factor more than full load is looked into."""
    if "service_factor_amps" in seen.known:
        return at_most(
            seen,
            limits,
            "",
            "The motor is running into its service factor, and hotter. Find out why: load, low volts, drag.",
            "The motor is overloaded. Take it out of service and find the load or the fault.",
        )
    rule = limits.rule.partition(", then")[0]
    limits = limits._replace(high="full_load_amps", rule=rule)
    found = at_most(seen, limits, "", "", "Read the service factor on the nameplate.")
    if found.state == BEYOND:
        return found._replace(state=LOOK, says=f"{found.says} The service factor isn't known.")
    return found


def derated_load(seen: Seen) -> Verdict:
    """The load against what the nameplate is worth on uneven volts."""
    return at_most(
        seen,
        DERATED,
        "",
        f"That is too much load on volts this uneven. {EVEN_SUPPLY}",
        "The load is over the nameplate itself. Reduce it and find the cause.",
    )


def high_leg(seen: Seen, turn: str) -> str | None:
    """The leg with the most amps; None where it hardly stands out."""
    amps = {leg: seen.known[f"amps_{leg.lower()}{turn}"] for leg in "ABC"}
    first, second, _ = sorted(amps, key=amps.__getitem__, reverse=True)
    average = sum(amps.values()) / 3
    return first if amps[first] - amps[second] >= STANDS_OUT * average else None


def course(high: Sequence[str | None]) -> int | None:
    """How many legs the high one moves at each roll; None where it is not clear.

    0 is with the line, anything else with the motor lead.
    """
    legs = [leg for leg in high if leg]
    moved = {("ABC".index(after) - "ABC".index(before)) % 3 for before, after in pairwise(legs)}
    return moved.pop() if len(legs) == len(high) and len(moved) == 1 else None


def cause(high: Sequence[str | None]) -> tuple[str, str]:
    """What the high legs of two or three connections say, and what to look at.

    >>> cause(["A", "A", "A"])[0]
    'The high leg stays on line A, whichever lead is on it. The cause is in the supply.'
    >>> cause(["A", "B", "C"])[0]
    'The high leg moves with its lead (A, then B, then C). The cause is the motor, its cable or a splice.'
    """
    legs = [leg for leg in high if leg]
    if len(legs) < len(high):
        return (
            "No leg is off by as much as 1% of the average, so rolling the leads tells you nothing.",
            "",
        )
    path, moved = ", then ".join(legs), course(legs)
    if moved == 0:
        says = f"The high leg stays on line {legs[0]}, whichever lead is on it. The cause is in the supply."
        return says, f"Check the supply of line {legs[0]}: fuse, contact, connection, transformer."
    if moved is not None:
        says = f"The high leg moves with its lead ({path}). The cause is the motor, its cable or a splice."
        return says, "Check the splice and the cable of that lead, then the winding."
    says = f"The high leg goes {path}. That follows neither the line nor the lead."
    return says, "Read all the connections again at the same load."


def best(seen: Seen, turns: tuple[str, ...]) -> str:
    """Which connection to keep, where one is clearly best."""
    size = {turn: seen.known[f"current_unbalance{turn}"] for turn in turns}
    first, second, *_ = sorted(size, key=size.__getitem__)
    if size[second] - size[first] < CLEAR:
        return "No connection is clearly better."
    name = CONNECTIONS[TURNS.index(first)].lower()
    return f"The lowest unbalance is {size[first]:.3g}%, {name}. Keep that connection, and check the rotation."


def rolled(turns: tuple[str, ...]) -> Judge:
    """A judge of these connections: where the cause is, and the least unbalance among them."""

    def judge(seen: Seen) -> Verdict:
        low, high = seen.limit(CURRENT_UNBALANCE.low), seen.limit(CURRENT_UNBALANCE.high)
        least = min(seen.known[f"current_unbalance{turn}"] for turn in turns)
        state = (WITHIN, LOOK, BEYOND)[above(least, low) + above(least, high)]
        says, look = cause([high_leg(seen, turn) for turn in turns])
        keep = best(seen, turns)
        then = f"{look} {keep}".strip() if above(seen.known["current_unbalance"], low) else ""
        rule = f"{STAYS_OR_MOVES}; {CURRENT_UNBALANCE.rule}"
        return Verdict(state, f"{says} {keep}", rule, PRACTICE, then, f"up to {low:g}%")

    return judge


def readings(turns: tuple[str, ...]) -> tuple[str, ...]:
    """The names of the amps on each leg, at these connections."""
    return tuple(f"{leg}{turn}" for turn in turns for leg in AMPS)


of_one_phase = partial(Check, "legs", only=ONE_PHASE, cautions=("electrical",))
check = partial(Check, "legs", legs=True, cautions=("electrical",))
LEGS = (
    check(
        "volts_level", "volts against the nameplate",
        ((*VOLTS, "rated_volts"),), "volts_average", volts_against_nameplate,
    ),
    check(
        "voltage_unbalance", "voltage unbalance", (VOLTS,), "voltage_unbalance",
        voltage_unbalance, by_a_hair=True,
    ),
    check(
        "current_unbalance", "current unbalance", (AMPS,), "current_unbalance",
        current_unbalance, by_a_hair=True,
    ),
    check(
        "rolled_once", "leads rolled once",
        (readings(TURNS[:2]),), "current_unbalance_2", rolled(TURNS[:2]),
        also=("current_unbalance",), unless=("amps_a_3",),
    ),
    check(
        "rolled_twice", "leads rolled twice",
        (readings(TURNS),), "current_unbalance_3", rolled(TURNS),
        also=("current_unbalance", "current_unbalance_2"),
    ),
    check(
        "amps_highest", "highest leg against the nameplate",
        ((*AMPS, "full_load_amps", "service_factor"), (*AMPS, "full_load_amps")),
        "amps_highest", amps_against_nameplate, also=("service_factor_amps",),
    ),
    of_one_phase(
        "volts_of_one_phase", "volts of one phase against the nameplate",
        (("volts_ab", "rated_volts"),), "volts_ab", volts_of_one_phase,
    ),
    of_one_phase(
        "amps_of_one_phase", "amps of one phase against the nameplate",
        (("amps_a", "full_load_amps", "service_factor"), ("amps_a", "full_load_amps")),
        "amps_a", amps_of_one_phase, also=("service_factor_amps",),
    ),
)  # fmt: skip
