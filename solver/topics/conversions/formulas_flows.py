"""Flows in other units, by the day, and as a share."""

from solver.algebra.expression import Known, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import GALLONS_PER_CUBIC_FOOT, LITRES_PER_CUBIC_METRE

from .factors import (
    GPM_PER_CFS,
    M3_HOUR_PER_LITRE_SECOND,
    MINUTES_A_DAY,
    MINUTES_AN_HOUR,
    ML_DAY_PER_LITRE_SECOND,
    WATER_MASS,
    factor,
)

__all__ = ["FLOWS"]

flow, flow_per_second, flow_per_hour = map(Known, ("flow", "flow_per_second", "flow_per_hour"))
earlier_flow, flow_drop = map(Known, ("earlier_flow", "flow_drop"))

FLOWS = (
    factor(
        "flow",
        flow_per_second * GPM_PER_CFS,
        "us",
        GPM_PER_CFS,
        "A cubic foot is 7.48 gallons, and a minute has 60 seconds.",
        Slip(
            "seconds_kept",
            flow_per_second * GALLONS_PER_CUBIC_FOOT,
            "You stopped at gallons per second. A minute has 60 seconds.",
        ),
        Slip(
            "weight_for_volume",
            flow_per_second * WATER_MASS * Number(60),
            "You used 8.34, which is pounds per gallon. A cubic foot holds 7.48 gallons.",
        ),
        back="One cfs is 448.8 gpm, so the number in cfs is much smaller.",
    ),
    factor(
        "flow",
        flow_per_second * LITRES_PER_CUBIC_METRE,
        "si",
        LITRES_PER_CUBIC_METRE,
        "A cubic meter is 1,000 liters, and both flows are per second.",
        Slip(
            "by_the_minute",
            flow_per_second * LITRES_PER_CUBIC_METRE * Number(60),
            "You found liters per minute. Both flows here are per second.",
        ),
        back="A cubic meter is 1,000 liters, so the number in cubic meters is smaller.",
    ),
    factor(
        "flow",
        flow_per_hour / MINUTES_AN_HOUR,
        "us",
        MINUTES_AN_HOUR,
        "An hour has 60 minutes.",
        Slip(
            "by_the_second",
            flow_per_hour / MINUTES_AN_HOUR / Number(60),
            "You found gallons per second. For gallons per minute, divide by 60 only once.",
        ),
    ),
    factor(
        "flow",
        flow_per_hour / M3_HOUR_PER_LITRE_SECOND,
        "si",
        M3_HOUR_PER_LITRE_SECOND,
        "An hour has 3,600 seconds, and a cubic meter has 1,000 liters.",
        Slip(
            "by_the_minute",
            flow_per_hour / Number(0.06),
            "You found liters per minute. An hour has 3,600 seconds.",
        ),
    ),
    factor(
        "flow_per_day",
        flow * MINUTES_A_DAY,
        "us",
        MINUTES_A_DAY,
        "A day has 1,440 minutes: 24 hours of 60 minutes.",
        Slip(
            "by_the_hour", flow * Number(60), "You stopped at gallons per hour. A day has 24 hours."
        ),
        Slip(
            "hours_for_minutes",
            flow * Number(24),
            "You used 24, which counts hours. The flow is per minute, and a day has 1,440 minutes.",
        ),
    ),
    factor(
        "flow_per_day",
        flow * ML_DAY_PER_LITRE_SECOND,
        "si",
        ML_DAY_PER_LITRE_SECOND,
        "A day has 86,400 seconds, and a megaliter is 1,000,000 liters.",
        Slip(
            "cubic_metres",
            flow * ML_DAY_PER_LITRE_SECOND * Number(1000),
            "You found cubic meters per day. A megaliter is 1,000 cubic meters.",
        ),
    ),
    Formula(
        "flow_drop",
        earlier_flow - flow,
        "common practice, no source",
        "The drop is the flow before minus the flow now.",
    ),
    Formula(
        "flow_drop_share",
        Percent(flow_drop / earlier_flow),
        "common practice, no source: a change is a share of what was there before",
        "Compare the drop with the flow before, not with the flow now.",
        slips=(
            Slip(
                "over_the_later",
                Percent(flow_drop / flow),
                "You divided by the flow now. Divide by the flow before.",
            ),
            Slip(
                "what_is_left",
                Percent(flow / earlier_flow),
                "You found what percent is left. The question asks for the drop.",
            ),
        ),
    ),
)
