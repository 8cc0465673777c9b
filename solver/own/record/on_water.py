"""What the pump moves and lifts, what reaches the water of what the wire gives, and its cost."""

from collections.abc import Callable

from solver.topics.limits import FLOW_SHARE
from solver.vocabulary import quantity_named

from .check import Check
from .verdict import LOOK, WITHIN, Seen, Verdict, above, no_limit, shown

__all__ = ["COST", "WATER"]

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


def two_ways(name: str, by: str) -> Callable[[Seen], Verdict]:
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
        source = "common practice, no source"
        if above(abs(worked - read), AGREE * max(worked, read)):
            then = f"Check the {by} and the reading of {quantity_named(name).label(seen.units)}."
            return Verdict(LOOK, says, rule, source, then)
        return Verdict(WITHIN, says, rule, source)

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
    found = Verdict(WITHIN, says, FLOW_SHARE.rule, FLOW_SHARE.source)
    if above(FLOW_SHARE.low, share):
        then = "Check for wear, a clog, a half-closed valve or water leaking back. Read the gauges too."
        return found._replace(state=LOOK, then=then)
    if above(share, FLOW_SHARE.high):
        then = "Check the test first. Then look for a broken force main or an open bypass."
        return found._replace(state=LOOK, then=then)
    return found


def plain(name: str, then: str = ""):
    """A judge for a value that has no limit of its own."""
    return lambda seen: no_limit(seen, name, then)


def check(topic: str, name: str, ways: tuple, then: str = "", **more) -> Check:
    more = {"find": name, "judge": plain(name, then), "labels": quantity_named(name).labels} | more
    return Check(name, topic, ways=ways, **more)


def of_well(*rest: str) -> tuple[tuple[str, ...], ...]:
    """The two shapes of a well, each with the rest of the readings."""
    return tuple((*shape, *DROP, *rest) for shape in (ROUND, SQUARE))


WATER = (
    Check(
        "drawdown", "water", "flow by drawdown",
        (*of_well("inflow"), *of_well("rise_level", "rise_time")),
        "flow", two_ways("flow", "drawdown"), cautions=WELL,
    ),
    check("water", "flow", (("flow",), *of_well("inflow")), CURVE, unless=("drawdown_rate",)),
    check("water", "flow_share", (("flow", "rated_flow"),), judge=flow_share),
    Check(
        "gauges", "water", "head by gauges", BY_GAUGES, "head", by_gauges,
        optional=BESIDES, cautions=ROTATING,
    ),
    check("water", "head", (("head",), *BY_GAUGES), CURVE, unless=("discharge_gauge_head", "pressure")),
    check("water", "water_power", (("flow", "head"),)),
    check("water", "pump_efficiency", (("water_power", "brake_power"),), CURVE),
    check("water", "overall_efficiency", (("flow", "head", "input_power"),), EARLIER),
)  # fmt: skip

COST = (
    check("cost", "energy", (("input_power", "run_time"),)),
    check("cost", "energy_cost", (("energy", "energy_price"),)),
    check("cost", "volume_pumped", (("flow", "run_time"),)),
    check("cost", "energy_per_volume", (("input_power", "flow"),), EARLIER),
    check("cost", "cost_per_volume", (("energy_per_volume", "energy_price"),)),
)
