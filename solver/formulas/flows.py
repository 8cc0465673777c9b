"""A flow in other units, and what it has dropped by."""

from ..expression import Known, Number, Percent
from ..formula import Formula, Slip
from .conversion_factors import (
    GPM_PER_CFS,
    M3_HOUR_PER_LITRE_SECOND,
    MINUTES_A_DAY,
    MINUTES_AN_HOUR,
    ML_DAY_PER_LITRE_SECOND,
    WATER_MASS,
    factor,
)
from .well_units import GALLONS_PER_CUBIC_FOOT, LITRES_PER_CUBIC_METRE

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
            "This is gallons a second. A minute has 60 of them.",
        ),
        Slip(
            "weight_for_volume",
            flow_per_second * WATER_MASS * Number(60),
            "The 8.34 is pounds of a gallon. A cubic foot holds 7.48 gallons.",
        ),
    ),
    factor(
        "flow",
        flow_per_second * LITRES_PER_CUBIC_METRE,
        "si",
        LITRES_PER_CUBIC_METRE,
        "A cubic metre is 1,000 litres; both count by the second.",
        Slip(
            "by_the_minute",
            flow_per_second * LITRES_PER_CUBIC_METRE * Number(60),
            "This is litres a minute. Both units here count by the second.",
        ),
    ),
    factor(
        "flow",
        flow_per_hour / MINUTES_AN_HOUR,
        "us",
        MINUTES_AN_HOUR,
        "A minute is a sixtieth of an hour, so fewer gallons pass in it.",
        Slip(
            "by_the_second",
            flow_per_hour / MINUTES_AN_HOUR / Number(60),
            "This is gallons a second. The question asks for gallons a minute.",
        ),
    ),
    factor(
        "flow",
        flow_per_hour / M3_HOUR_PER_LITRE_SECOND,
        "si",
        M3_HOUR_PER_LITRE_SECOND,
        "An hour has 3,600 seconds, and a cubic metre 1,000 litres.",
        Slip(
            "by_the_minute",
            flow_per_hour / Number(0.06),
            "This is litres a minute. An hour has 3,600 seconds.",
        ),
    ),
    factor(
        "flow_per_day",
        flow * MINUTES_A_DAY,
        "us",
        MINUTES_A_DAY,
        "A day has 1,440 minutes: 24 hours of 60.",
        Slip("by_the_hour", flow * Number(60), "This is gallons an hour. A day has 24 hours."),
        Slip(
            "hours_for_minutes",
            flow * Number(24),
            "The 24 counts hours. The flow is by the minute, and a day has 1,440.",
        ),
    ),
    factor(
        "flow_per_day",
        flow * ML_DAY_PER_LITRE_SECOND,
        "si",
        ML_DAY_PER_LITRE_SECOND,
        "A day has 86,400 seconds, and a megalitre is 1,000,000 litres.",
        Slip(
            "cubic_metres",
            flow * ML_DAY_PER_LITRE_SECOND * Number(1000),
            "This is cubic metres a day. A megalitre is 1,000 of them.",
        ),
    ),
    Formula(
        "flow_drop",
        earlier_flow - flow,
        "common practice, no source",
        "What was there before, less what is there now.",
    ),
    Formula(
        "flow_drop_share",
        Percent(flow_drop / earlier_flow),
        "common practice, no source: a change is a share of what was there before",
        "A drop is a share of the flow before, not of the flow now.",
        slips=(
            Slip(
                "over_the_later",
                Percent(flow_drop / flow),
                "This divides by the flow now. Divide by the flow before.",
            ),
            Slip(
                "what_is_left",
                Percent(flow / earlier_flow),
                "This is the share that is left. The question asks for the drop.",
            ),
        ),
    ),
)
