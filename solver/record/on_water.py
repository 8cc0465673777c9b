"""What the pump moves and lifts, what reaches the water of what the wire gives, and its cost."""

from ..limits import FLOW_SHARE
from ..vocabulary import quantity_named
from .check import Check
from .verdict import LOOK, WITHIN, Seen, Verdict, above, no_limit, shown

__all__ = ["COST", "WATER"]

WELL, ROTATING = ("wet_well",), ("rotating",)
ROUND, SQUARE = ("well_diameter",), ("well_length", "well_width")
DROP = ("drawdown_level", "drawdown_time")
AGREE = 0.10  # a drawdown test and a flow meter that differ by more are not both right
CURVE = "Compare with the pump's curve at this head, and with earlier records."
EARLIER = "Compare with earlier records of this pump."


def drawdown(seen: Seen) -> Verdict:
    """The flow by the wet well, held against the flow meter where there is one."""
    metered = seen.record.values.get("flow")
    found = no_limit(seen, "flow")
    if metered is None:
        return found
    worked = seen.known["flow"]
    rule, source = "two ways to one flow agree within 10%", "common practice, no source"
    says = (
        f"The drawdown gives {seen.shown('flow')}, the meter {shown('flow', metered, seen.units)}."
    )
    if above(abs(worked - metered), AGREE * max(worked, metered)):
        then = "Check the flow meter, the level readings and the inflow."
        return Verdict(LOOK, says, rule, source, then)
    return Verdict(WITHIN, says, rule, source)


def flow_share(seen: Seen) -> Verdict:
    """The flow against the rated flow: within a tenth either way."""
    share = seen.known["flow_share"]
    says = f"The pump moves {seen.shown('flow_share')} of its rated flow."
    found = Verdict(WITHIN, says, FLOW_SHARE.rule, FLOW_SHARE.source)
    if above(FLOW_SHARE.low, share):
        then = "Look for wear, a clog, a half-closed valve or a leak back. Take the gauges too."
        return found._replace(state=LOOK, then=then)
    if above(share, FLOW_SHARE.high):
        then = "Check the test first. Then look for a broken main or an open bypass."
        return found._replace(state=LOOK, then=then)
    return found


def plain(name: str, then: str = ""):
    """A judge for a value that has no limit of its own."""
    return lambda seen: no_limit(seen, name, then)


def check(topic: str, name: str, ways: tuple, then: str = "", **more) -> Check:
    more = {"find": name, "judge": plain(name, then), "label": quantity_named(name).label} | more
    return Check(name, topic, ways=ways, **more)


def of_well(*rest: str) -> tuple[tuple[str, ...], ...]:
    """The two shapes of a well, each with the rest of the readings."""
    return tuple((*shape, *DROP, *rest) for shape in (ROUND, SQUARE))


WATER = (
    Check(
        "drawdown", "water", "flow by drawdown",
        (*of_well("inflow"), *of_well("rise_level", "rise_time")),
        "flow", drawdown, cautions=WELL,
    ),
    check("water", "flow", (("flow",), *of_well("inflow")), CURVE, unless="drawdown_rate"),
    check("water", "flow_share", (("flow", "rated_flow"),), judge=flow_share),
    check("water", "head", (("head",),), CURVE, cautions=ROTATING),
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
