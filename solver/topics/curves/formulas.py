"""Pump curves and kinds of pumps: the shutoff test, the best point, two pumps.

`CURVES` has every formula of the chapter; those of strokes and turns are in `formulas_strokes.py`.
"""

from solver.algebra.expression import Constant, Figure, Known, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import HEAD_PER_PRESSURE

from .formulas_strokes import STROKES

__all__ = ["CURVES"]

RIM = Constant(
    "shutoff_constant",
    "shutoff head constant",
    us=Figure(1840, "", also=(1838,)),
    si=Figure(84_600, "", also=(84_580,)),
    source="Abulencia & Theodore, Fluid Flow, Ex 22.4: the rim runs at the square root of 2gH; 1,840 for "
    "inches, rpm and ft, 84,600 for mm, rpm and m",
)
TEST = "DOE Fundamentals Handbook, Mechanical Science (DOE-HDBK-1018), vol. 1: shutoff head (from memory)"
RIM_RULE = f"{RIM.source}; within about 10% for radial impellers (common practice, no source)"
TOGETHER = "DOE Fundamentals Handbook, Thermodynamics, Heat Transfer and Fluid Flow (DOE-HDBK-1012), vol. 3: centrifugal pumps in parallel and in series"

tested, speed = map(Known, ("tested_shutoff", "pump_speed"))
head, second, series = map(Known, ("head", "second_head", "series_head"))
flow, second_flow = map(Known, ("flow", "second_flow"))
discharge, suction = map(Known, ("shutoff_gauge", "closed_suction"))

SHUTOFF = (
    Formula(
        "tested_shutoff",
        (discharge - suction) * HEAD_PER_PRESSURE,
        TEST,
        "With no flow there is no friction. The rise from gauge to gauge is all the head the pump makes.",
        slips=(
            Slip(
                "suction_left_out",
                discharge * HEAD_PER_PRESSURE,
                "You left out the suction gauge. Some of that pressure was there before the pump.",
            ),
            Slip(
                "gauges_added",
                (discharge + suction) * HEAD_PER_PRESSURE,
                "You added the gauges. A positive suction pressure helps the pump, so subtract it.",
            ),
        ),
    ),
    Formula(
        "shutoff_share",
        Percent(tested / Known("curve_shutoff")),
        "arithmetic: the measured head over the one on the curve",
        "Compare what you measured with what the curve promises.",
        slips=(
            Slip(
                "what_is_missing",
                Percent((Known("curve_shutoff") - tested) / Known("curve_shutoff")),
                "You found how far it is below the curve. The question asks for what it makes.",
            ),
        ),
    ),
    Formula(
        "impeller_estimate",
        RIM * tested**0.5 / speed,
        RIM_RULE,
        "The water leaves the impeller at rim speed, so the shutoff head tells you how big it is.",
        slips=(
            Slip(
                "root_left_out",
                RIM * tested / speed,
                "You left out the square root. Head changes with the square of the rim speed.",
            ),
        ),
        empirical=True,
        turns=(),
    ),
    Formula(
        "shutoff_estimate",
        (Known("impeller_diameter") * speed / RIM) ** 2,
        RIM_RULE,
        "Diameter times speed is rim speed, and shutoff head changes with its square.",
        slips=(
            Slip(
                "not_squared",
                Known("impeller_diameter") * speed / RIM,
                "You didn't square it. Head changes with the square of the rim speed.",
            ),
        ),
        empirical=True,
        turns=(),
    ),
    Formula(
        "best_share",
        Percent(flow / Known("best_flow")),
        "arithmetic: the flow over the one at the best efficiency point",
        "This tells you how far from its best efficiency point the pump runs.",
    ),
)

TWO_PUMPS = (
    Formula(
        "series_head",
        head + second,
        TOGETHER,
        "In series the same water goes through one pump after the other, so their heads add up.",
        slips=(
            Slip(
                "averaged",
                (head + second) / Number(2),
                "You averaged the heads. In series they add up, because each pump lifts the water more.",
            ),
            Slip(
                "as_in_parallel",
                head,
                "You gave the head of one pump. That's for pumps side by side; in series the heads add up.",
            ),
        ),
    ),
    Formula(
        "series_gauge",
        Known("suction_gauge") + series / HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "The pumps add their pressure to what was at the suction already.",
        slips=(
            Slip(
                "suction_left_out",
                series / HEAD_PER_PRESSURE,
                "You left out the suction pressure. The pumps add to it.",
            ),
        ),
    ),
    Formula(
        "combined_flow",
        flow + second_flow,
        TOGETHER,
        "Side by side, each pump adds its own flow at the same head.",
        slips=(
            Slip(
                "averaged",
                (flow + second_flow) / Number(2),
                "You averaged the flows. Side by side at one head, they add up.",
            ),
            Slip(
                "as_in_series",
                flow,
                "You gave the flow of one pump. That's for pumps in series; side by side the flows add up.",
            ),
        ),
    ),
)

CURVES = (*SHUTOFF, *TWO_PUMPS, *STROKES)
