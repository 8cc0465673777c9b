"""What the motor draws, what it gives, and how much of its nameplate that is."""

from solver.topics.limits import LOAD_BY_AMPS, MOTOR_LOAD

from .check import Check
from .on_legs import VOLTS, derated_load
from .rolling import AMPS
from .verdict import BEYOND, LOOK, NO_LIMIT, WITHIN, Seen, Verdict, above, no_limit

__all__ = ["MOTOR"]

ELECTRICAL = ("electrical",)
KILOWATTS = "Have a qualified person measure the kilowatts: they show the load better than amps."
FACTOR_THEN = "Check your power company's rates: some charge extra for a low power factor."


def motor_load(seen: Seen) -> Verdict:
    """The load by kilowatts: from half load to full load, and up to the service factor."""
    value, factor = seen.known["motor_load"], seen.known.get("service_factor", 1.0)
    rule = f"{MOTOR_LOAD.rule}; above that it goes only as far as the service factor"
    said = f"The load is {seen.shown('motor_load')} of nameplate power"
    found = Verdict(WITHIN, f"{said}.", rule, MOTOR_LOAD.source)
    if above(value, MOTOR_LOAD.high * factor):
        then = "The motor is overloaded. Find out what makes the pump need so much power."
        return found._replace(state=BEYOND, says=f"{said}, more than it is rated for.", then=then)
    if above(value, MOTOR_LOAD.high):
        then = "The motor is running into its service factor. Find out why."
        return found._replace(state=LOOK, then=then)
    if above(MOTOR_LOAD.low, value):
        then = (
            "Below half load, efficiency and power factor drop. Check for a clogged or worn pump."
        )
        return found._replace(state=LOOK, then=then)
    return found


def load_by_amps(seen: Seen) -> Verdict:
    """The load by amps, which is an estimate from half load up and nothing below."""
    value, said = seen.known["load_by_amps"], f"By amps the load is {seen.shown('load_by_amps')}"
    found = Verdict(WITHIN, f"{said}.", LOAD_BY_AMPS.rule, LOAD_BY_AMPS.source, KILOWATTS)
    if above(LOAD_BY_AMPS.low, value):
        return found._replace(
            state=NO_LIMIT, says=f"{said}. That is too little to judge the load by amps."
        )
    if above(value, LOAD_BY_AMPS.high):
        return found._replace(state=LOOK, says=f"{said}, over full load.")
    return found


def given(name: str, then: str = ""):
    """A judge for a value that has no limit of its own."""
    return lambda seen: no_limit(seen, name, then)


def check(name: str, label: str, ways: tuple, judge, find: str = "", **more) -> Check:
    return Check(name, "motor", label, ways, find or name, judge, cautions=ELECTRICAL, **more)


MOTOR = (
    check(
        "rated_slip_speed", "nameplate slip",
        (("rated_speed", "poles", "frequency"),), given("rated_slip_speed"),
    ),
    check(
        "apparent_power", "apparent power", ((*VOLTS, *AMPS),), given("apparent_power"), legs=True
    ),
    check(
        "input_power", "input power",
        (("input_power",), ("apparent_power", "power_factor")), given("input_power"),
    ),
    check(
        "power_factor", "power factor",
        (("input_power", "apparent_power"),), given("power_factor", FACTOR_THEN),
        legs=True, unless=("power_factor",),
    ),
    check("brake_power", "brake power", (("input_power", "motor_efficiency"),), given("brake_power")),
    check("motor_load", "motor load", (("brake_power", "motor_size"),), motor_load),
    check(
        "load_by_amps", "load by amps",
        ((*VOLTS, *AMPS, "rated_volts", "full_load_amps"),),
        load_by_amps, legs=True, unless=("motor_load",),
    ),
    check(
        "derated_power", "load on uneven volts",
        (("motor_size", "brake_power", "voltage_unbalance"),), derated_load, legs=True,
    ),
)  # fmt: skip
