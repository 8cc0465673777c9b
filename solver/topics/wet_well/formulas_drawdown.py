"""The pump tested by its own wet well: what flows in, out and back, by how fast the level moves."""

from solver.algebra.expression import Expr, Known, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import (
    CENTIMETRES_PER_METRE,
    INCHES_PER_FOOT,
    LITRES_PER_CUBIC_METRE,
    SECONDS_PER_MINUTE,
)

__all__ = ["DRAWDOWN", "OUTSIDE", "both", "minutes"]

TIMED = "common practice, no source: a volume over the time it took is a flow"
PUMP_RATE = "common practice, no source: pump rate = drawdown rate + inflow"
OUTSIDE = (
    "Measure from outside: a wet well is usually a permit-required confined space "
    "(29 CFR 1910.146)."
)

per_depth, flow, inflow = map(Known, ("volume_per_depth", "flow", "inflow"))
drawdown_rate, rise_rate = map(Known, ("drawdown_rate", "rise_rate"))


def both(
    result: str,
    us: Expr,
    si: Expr,
    source: str,
    why: str,
    slips: tuple[Slip, ...] = (),
    unless: tuple[str, ...] = (),
    back: str = "",
) -> tuple[Formula, Formula]:
    """One rule in gallons and gpm, and in cubic metres and litres a second."""
    return (
        Formula(result, us, source, why, slips, ("us",), unless, back=back),
        Formula(result, si, source, why, slips, ("si",), unless, back=back),
    )


def minutes(
    result: str,
    volume: Expr,
    rate: Expr,
    source: str,
    why: str,
    unless: tuple[str, ...] = (),
    wrong: tuple[tuple[str, Expr, str], ...] = (),
) -> tuple[Formula, Formula]:
    """A volume over a flow, in minutes; `wrong`: flows divided by instead, each an id, itself, what to say."""
    multiplied = Slip(
        "multiplied",
        volume * rate,
        "You multiplied volume by flow. Time is volume divided by flow.",
    )

    def in_system(units: str) -> Formula:
        def over(flow: Expr) -> Expr:
            si = volume * LITRES_PER_CUBIC_METRE / flow / SECONDS_PER_MINUTE
            return volume / flow if units == "us" else si

        slips = (multiplied, *(Slip(id, over(flow), says) for id, flow, says in wrong))
        return Formula(result, over(rate), source, why, slips, (units,), unless)

    return in_system("us"), in_system("si")


def over_time(rate: str, volume: Expr, time: Expr, why: str) -> tuple[Formula, Formula]:
    """A volume over the seconds it took, in gpm or L/s."""
    us, si = volume * SECONDS_PER_MINUTE / time, volume * LITRES_PER_CUBIC_METRE / time
    return both(rate, us, si, TIMED, why)


def moved(name: str, rate: str, why: str) -> tuple[Formula, ...]:
    """From a change of level as measured, and its time, to the `rate` of that volume."""
    level, volume, read, time = (Known(f"{name}_{x}") for x in ("level", "volume", "read", "time"))
    in_us, in_si = ("us",), ("si",)
    return (
        Formula(
            level.name,
            read / INCHES_PER_FOOT,
            INCHES_PER_FOOT.source,
            f"The well is measured in feet, so change the inches to feet. {OUTSIDE}",
            systems=in_us,
        ),
        Formula(
            level.name,
            read / CENTIMETRES_PER_METRE,
            CENTIMETRES_PER_METRE.source,
            f"The well is measured in meters, so change the centimeters to meters. {OUTSIDE}",
            systems=in_si,
        ),
        Formula(
            volume.name,
            per_depth * level,
            "geometry: volume per depth times depth",
            "Every foot (or meter) of depth holds the same volume.",
            back="Every foot (or meter) of depth holds the same volume, so divide.",
        ),
        *over_time(rate, volume, time, why),
    )


def pumped(incoming: Expr, why: str, unless: tuple[str, ...]) -> Formula:
    """The pump's flow from the drawdown rate and what came in meanwhile."""
    return Formula(
        "flow",
        drawdown_rate + incoming,
        PUMP_RATE,
        why,
        slips=(
            Slip(
                "inflow_forgotten",
                drawdown_rate,
                "You left out the inflow. The pump moved that water too.",
            ),
            Slip(
                "inflow_taken_away",
                drawdown_rate - incoming,
                "You subtracted the inflow. The pump moved that water too, so add it.",
            ),
        ),
        unless=unless,
        yields_to=("flow",),
    )


# The level shows the inflow alone only where the valves are closed, or the check valves hold.
INFLOW_KNOWN = ("inflow", "leakage", "closed_rise_read", "closed_rise_level", "closed_rise_volume")

DRAWDOWN = (
    *moved(
        "drawdown",
        "drawdown_rate",
        "The rate is the volume that left, divided by the time it took.",
    ),
    *moved("rise", "rise_rate", "With the pumps off, this is how fast water comes into the well."),
    *moved(
        "closed_rise",
        "inflow",
        "With the pumps locked out and the discharge valves closed, nothing leaks back, so all of it "
        "is inflow.",
    ),
    *(
        formula
        for pump in (1, 2)
        for formula in over_time(
            f"rise_rate_{pump}",
            Known("rise_volume"),
            Known(f"rise_time_{pump}"),
            f"With the discharge valve of Pump {pump} closed, its check valve can't let water back.",
        )
    ),
    pumped(inflow, "The pump moves what the well loses plus what flows in at the same time.", ()),
    pumped(
        rise_rate,
        "The pump moves what the well loses plus what flows in at the same time.",
        INFLOW_KNOWN,
    ),
    Formula(
        "drawdown_rate",
        flow - inflow,
        PUMP_RATE,
        "Inflow keeps coming while the pump runs, so the well loses less than the pump moves.",
        slips=(
            Slip(
                "inflow_forgotten",
                flow,
                "You left out the inflow. Water keeps coming in while the pump runs.",
            ),
        ),
        unless=("lag_volume", "lag_depth"),  # in a storm the level rises while the lead pump runs
    ),
    Formula(
        "leakage",
        rise_rate - inflow,
        "common practice, no source: any rise beyond the inflow came back through a check valve",
        "With the pumps off, anything beyond the inflow is leaking back through a check valve.",
        slips=(
            Slip(
                "all_of_the_rise",
                rise_rate,
                "You used the whole rise. Part of it is inflow, so subtract the inflow.",
            ),
        ),
    ),
    Formula(
        "leak_share",
        Percent(Known("leakage") / rise_rate),
        "common practice, no source: leakage against the whole rise",
        "This is how much of the rise came back from the force main.",
    ),
    Formula(
        "flow_share",
        Percent(flow / Known("rated_flow")),
        "common practice, no source: measured flow against the pump's rated flow",
        "This is how much of its rated flow the pump still moves.",
    ),
)
