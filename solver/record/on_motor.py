"""What the motor draws, what it gives, and how much of its nameplate that is."""

from ..limits import MOTOR_LOAD
from .check import Check
from .on_legs import VOLTS, derated_load
from .rolling import AMPS
from .verdict import BEYOND, LOOK, WITHIN, Seen, Verdict, above, no_limit

__all__ = ["MOTOR"]

ELECTRICAL = ("electrical",)
FACTOR_THEN = "Compare with your power company's terms: some charge for a low power factor."


def load(name: str, note: str = ""):
    """A judge of the load in percent: from half load to full load, and up to the service factor."""

    def judge(seen: Seen) -> Verdict:
        value, factor = seen.known[name], seen.known.get("service_factor", 1.0)
        rule = f"{MOTOR_LOAD.rule}; over it only as far as the service factor"
        said = (
            f"The {'load' if not note else 'load by amps'} is {seen.shown(name)} of nameplate power"
        )
        found = Verdict(WITHIN, f"{said}.{note}", rule, MOTOR_LOAD.source)
        if above(value, MOTOR_LOAD.high * factor):
            then = "The motor is overloaded. Find out what makes the pump need so much power."
            return found._replace(
                state=BEYOND, says=f"{said}, more than it allows.{note}", then=then
            )
        if above(value, MOTOR_LOAD.high):
            then = "The motor runs on its service factor. Find out why."
            return found._replace(state=LOOK, then=then)
        if above(MOTOR_LOAD.low, value):
            then = (
                "Under half load efficiency and power factor fall. Look for a blocked or worn pump."
            )
            return found._replace(state=LOOK, then=then)
        return found

    return judge


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
        unless=("power_factor",),
    ),
    check("brake_power", "brake power", (("input_power", "motor_efficiency"),), given("brake_power")),
    check("motor_load", "motor load", (("brake_power", "motor_size"),), load("motor_load")),
    check(
        "load_by_amps", "load by amps",
        ((*VOLTS, *AMPS, "rated_volts", "full_load_amps"),),
        load("load_by_amps", " Amps follow the load only above half load."),
        legs=True, unless=("motor_load",),
    ),
    check(
        "derated_power", "load on uneven volts",
        (("motor_size", "brake_power", "voltage_unbalance"),), derated_load, legs=True,
    ),
)  # fmt: skip
