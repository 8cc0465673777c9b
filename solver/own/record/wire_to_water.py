"""From the wire to the water: what the motor draws and gives, what the pump moves, what it costs."""

from solver.topics.limits import FLOW_SHARE, LOAD_BY_AMPS, MOTOR_LOAD
from solver.topics.zones import Limits
from solver.vocabulary import quantity_named

from .check import Check, Judge, Ways
from .legs import AMPS, VOLTS, derated_load
from .verdict import BEYOND, LOOK, NO_LIMIT, WITHIN, Seen, Verdict, above, no_limit, shown

__all__ = ["COST", "MOTOR", "WATER"]

KILOWATTS = "Have a qualified person measure the kilowatts: they show the load better than amps."
FACTOR_THEN = "Check your power company's rates: some charge extra for a low power factor."
WELL, ROTATING = ("wet_well",), ("rotating",)
ROUND, SQUARE = ("well_diameter",), ("well_length", "well_width")
DROP = ("drawdown_level", "drawdown_time")
BY_GAUGES = (("discharge_gauge", "suction_gauge"), ("discharge_gauge", "suction_vacuum"))
BESIDES = (
    ("discharge_gauge_height",),
    ("suction_gauge_height",),
    ("flow", "discharge_diameter", "suction_diameter"),
)
HEIGHTS = {"discharge_gauge_height", "suction_gauge_height"}
AGREE = 0.10  # two ways that differ by more are not both right
CURVE = "Compare with the pump curve at this head and with earlier records."
EARLIER = "Compare with earlier records of this pump."


def _span(seen: Seen, limits: Limits) -> str:
    """Both limits in a column of a table."""
    return f"{seen.limit(limits.low):g} to {seen.limit(limits.high):g}%"


def motor_load(seen: Seen) -> Verdict:
    """The load by kilowatts: from half load to full load, and up to the service factor."""
    value, factor = seen.known["motor_load"], seen.known.get("service_factor", 1.0)
    rule = f"{MOTOR_LOAD.rule}; above that it goes only as far as the service factor"
    said = f"The load is {seen.shown('motor_load')} of nameplate power"
    bound = _span(seen, MOTOR_LOAD)
    found = Verdict(WITHIN, f"{said}.", rule, MOTOR_LOAD.source, bound=bound)
    if above(value, seen.limit(MOTOR_LOAD.high) * factor):
        then = "The motor is overloaded. Find out what makes the pump need so much power."
        return found._replace(state=BEYOND, says=f"{said}, more than it is rated for.", then=then)
    if above(value, seen.limit(MOTOR_LOAD.high)):
        then = "The motor is running into its service factor. Find out why."
        return found._replace(state=LOOK, then=then)
    if above(seen.limit(MOTOR_LOAD.low), value):
        then = (
            "Below half load, efficiency and power factor drop. Check for a clogged or worn pump."
        )
        return found._replace(state=LOOK, then=then)
    return found


def load_by_amps(seen: Seen) -> Verdict:
    """The load by amps, which is an estimate from half load up and nothing below."""
    value, said = seen.known["load_by_amps"], f"By amps the load is {seen.shown('load_by_amps')}"
    bound = _span(seen, LOAD_BY_AMPS)
    found = Verdict(WITHIN, f"{said}.", LOAD_BY_AMPS.rule, LOAD_BY_AMPS.source, KILOWATTS, bound)
    if above(seen.limit(LOAD_BY_AMPS.low), value):
        return found._replace(
            state=NO_LIMIT, says=f"{said}. That is too little to judge the load by amps."
        )
    if above(value, seen.limit(LOAD_BY_AMPS.high)):
        return found._replace(state=LOOK, says=f"{said}, over full load.")
    return found


def two_ways(name: str, by: str) -> Judge:
    """A judge that holds a worked value against the same thing read outright, where it was."""

    def judge(seen: Seen) -> Verdict:
        read, worked = seen.record.values.get(name), seen.known[name]
        if read is None:
            return no_limit(seen, name, CURVE)
        says = (
            f"By {by} it comes to {seen.shown(name)}; "
            f"it was read as {shown(name, read, seen.units)}."
        )
        rule = "two ways to measure the same thing should agree within 10%"
        source, bound = "common practice, no source", f"{shown(name, read, seen.units)} ± 10%"
        if above(abs(worked - read), AGREE * max(worked, read)):
            then = f"Check the {by} and the reading of {quantity_named(name).label(seen.units)}."
            return Verdict(LOOK, says, rule, source, then, bound)
        return Verdict(WITHIN, says, rule, source, "", bound)

    return judge


def by_gauges(seen: Seen) -> Verdict:
    """The head by two gauges; where one of their heights is not known, it is said."""
    found = two_ways("head", "gauges")(seen)
    unknown = HEIGHTS - seen.record.values.keys()
    if len(unknown) == 1:
        side = unknown.pop().removesuffix("_gauge_height")
        why = f"The height of the {side} gauge is missing, so it counts as level with the pump."
        return found._replace(says=f"{found.says} {why}")
    return found


def flow_share(seen: Seen) -> Verdict:
    """The flow against the rated flow: within a tenth either way."""
    share = seen.known["flow_share"]
    says = f"The pump moves {seen.shown('flow_share')} of its rated flow."
    bound = _span(seen, FLOW_SHARE)
    found = Verdict(WITHIN, says, FLOW_SHARE.rule, FLOW_SHARE.source, bound=bound)
    if above(seen.limit(FLOW_SHARE.low), share):
        then = "Check for wear, a clog, a half-closed valve or water leaking back. Read the gauges too."
        return found._replace(state=LOOK, then=then)
    if above(share, seen.limit(FLOW_SHARE.high)):
        then = "Check the test first. Then look for a broken force main or an open bypass."
        return found._replace(state=LOOK, then=then)
    return found


def plain(name: str, then: str = "") -> Judge:
    """A judge for a value that has no limit of its own."""
    return lambda seen: no_limit(seen, name, then)


def motor(
    name: str, label: str, ways: Ways, judge: Judge | None = None, *,
    legs: bool = False, unless: tuple[str, ...] = (),
) -> Check:  # fmt: skip
    """A check of the quantity `name` at the motor."""
    return Check(
        "motor",
        name,
        label,
        ways,
        name,
        judge or plain(name),
        legs=legs,
        unless=unless,
        cautions=("electrical",),
    )


def pump(
    topic: str, name: str, ways: Ways, then: str = "", *,
    judge: Judge | None = None, unless: tuple[str, ...] = (),
) -> Check:  # fmt: skip
    """A check of the quantity `name` at the pump, or of what it costs; under its own label."""
    labels = quantity_named(name).labels
    return Check(topic, name, labels, ways, name, judge or plain(name, then), unless=unless)


def of_well(*rest: str) -> tuple[tuple[str, ...], ...]:
    """The two shapes of a well, each with the rest of the readings."""
    return tuple((*shape, *DROP, *rest) for shape in (ROUND, SQUARE))


MOTOR = (
    motor("rated_slip_speed", "nameplate slip", (("rated_speed", "poles", "frequency"),)),
    motor("apparent_power", "apparent power", ((*VOLTS, *AMPS),), legs=True),
    motor("input_power", "input power", (("input_power",), ("apparent_power", "power_factor"))),
    motor(
        "power_factor", "power factor",
        (("input_power", "apparent_power"),), plain("power_factor", FACTOR_THEN),
        legs=True, unless=("power_factor",),
    ),
    motor("brake_power", "brake power", (("input_power", "motor_efficiency"),)),
    motor("motor_load", "motor load", (("brake_power", "motor_size"),), motor_load),
    motor(
        "load_by_amps", "load by amps",
        ((*VOLTS, *AMPS, "rated_volts", "full_load_amps"),),
        load_by_amps, legs=True, unless=("motor_load",),
    ),
    motor(
        "derated_power", "load on uneven volts",
        (("motor_size", "brake_power", "voltage_unbalance"),), derated_load, legs=True,
    ),
)  # fmt: skip

WATER = (
    Check(
        "water", "drawdown", "flow by drawdown",
        (*of_well("inflow"), *of_well("rise_level", "rise_time")),
        "flow", two_ways("flow", "drawdown"), cautions=WELL,
    ),
    pump("water", "flow", (("flow",), *of_well("inflow")), CURVE, unless=("drawdown_rate",)),
    pump("water", "flow_share", (("flow", "rated_flow"),), judge=flow_share),
    Check(
        "water", "gauges", "head by gauges", BY_GAUGES, "head", by_gauges,
        optional=BESIDES, cautions=ROTATING,
    ),
    pump(
        "water", "head", (("head",), *BY_GAUGES), CURVE,
        unless=("discharge_gauge_head", "pressure"),
    ),
    pump("water", "water_power", (("flow", "head"),)),
    pump("water", "pump_efficiency", (("water_power", "brake_power"),), CURVE),
    pump("water", "overall_efficiency", (("flow", "head", "input_power"),), EARLIER),
)  # fmt: skip

COST = (
    pump("cost", "energy", (("input_power", "run_time"),)),
    pump("cost", "energy_cost", (("energy", "energy_price"),)),
    pump("cost", "volume_pumped", (("flow", "run_time"),)),
    pump("cost", "energy_per_volume", (("input_power", "flow"),), EARLIER),
    pump("cost", "cost_per_volume", (("energy_per_volume", "energy_price"),)),
)
