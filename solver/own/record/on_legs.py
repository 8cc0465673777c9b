"""Volts and amps on three legs, judged by the limits of the phase balance chapter."""

from solver.topics.limits import (
    CURRENT_UNBALANCE,
    DERATED,
    NAMEPLATE_AMPS,
    VOLTAGE_UNBALANCE,
    Limits,
)

from .check import Check
from .rolling import AMPS, TURNS, readings, rolled
from .verdict import BEYOND, LOOK, WITHIN, Seen, Verdict, above, at_most

__all__ = ["LEGS", "VOLTS"]

VOLTS = ("volts_ab", "volts_bc", "volts_ca")
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
    return Verdict(BEYOND if over else WITHIN, says, rule, "NEMA MG 1 12.44 (from memory)", then)


def voltage_unbalance(seen: Seen) -> Verdict:
    stop = f"Don't run the motor on these volts. {EVEN_SUPPLY}"
    return at_most(seen, VOLTAGE_UNBALANCE, "", EVEN_SUPPLY, stop)


def current_unbalance(seen: Seen) -> Verdict:
    rolled = all(f"{leg}_2" in seen.known for leg in AMPS)
    then = "" if rolled else ROLL
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
    return at_most(
        seen,
        DERATED,
        "",
        f"That is too much load on volts this uneven. {EVEN_SUPPLY}",
        "The load is over the nameplate itself. Reduce it and find the cause.",
    )


def check(name: str, label: str, ways: tuple, find: str, judge, **more) -> Check:
    return Check(
        name, "legs", label, ways, find, judge, legs=True, cautions=("electrical",), **more
    )


LEGS = (
    check(
        "volts_level", "volts against the nameplate",
        ((*VOLTS, "rated_volts"),), "volts_average", volts_against_nameplate,
    ),
    check("voltage_unbalance", "voltage unbalance", (VOLTS,), "voltage_unbalance", voltage_unbalance),
    check("current_unbalance", "current unbalance", (AMPS,), "current_unbalance", current_unbalance),
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
    Check(
        "volts_of_one_phase", "legs", "volts of one phase against the nameplate",
        (("volts_ab", "rated_volts"),), "volts_ab", volts_of_one_phase,
        only=ONE_PHASE, cautions=("electrical",),
    ),
    Check(
        "amps_of_one_phase", "legs", "amps of one phase against the nameplate",
        (("amps_a", "full_load_amps", "service_factor"), ("amps_a", "full_load_amps")),
        "amps_a", amps_of_one_phase, also=("service_factor_amps",),
        only=ONE_PHASE, cautions=("electrical",),
    ),
)  # fmt: skip
