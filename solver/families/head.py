"""Head: what a pump must overcome, from water levels, from gauges and from pipes.

The families here are levels, gauges and the suction side; pipes and totals are in total_head.py,
and those where something is to be judged in judged_head.py, judged_suction.py and
gauges_judged.py. `HEAD` has the whole chapter, in the order of teaching.
"""

from ..family import Family, Level
from .gauges_judged import GAUGES_STORY
from .head_family import numeric
from .judged_head import MISSING_PART, WHICH_PIPE
from .judged_suction import NPSH_CHECK, SUCTION_LIMIT, VELOCITY_CHECK
from .scenes_head import flooded, gauges, low_lift_gauges, station, suction
from .total_head import PIPES, TOTAL

__all__ = ["HEAD"]

GAUGES = (
    "The gauges of {place} read {discharge_gauge} at the discharge and {suction_gauge} at the "
    "suction."
)
HEIGHTS = (
    "The discharge gauge sits {discharge_gauge_height} above the pump, the suction gauge "
    "{suction_gauge_height} above it."
)
AIR = "The atmosphere there holds up {atmospheric_head} of water, whose vapor head is {vapor_head}."
BELOW = "The water stands {suction_lift} below the pump, and the suction pipe takes {suction_loss}."

LEVELS = (
    numeric(
        "static_head",
        "HS",
        "Static head from levels",
        "static_head",
        station,
        Level(
            ("discharge_elevation", "suction_elevation"),
            "The wet well of {station} stands at an elevation of {suction_elevation}. "
            "The main ends at {discharge_elevation}. What is the static head?",
        ),
        Level(
            ("static_discharge_head", "suction_lift"),
            "{place} stands {suction_lift} above the water it draws. It discharges "
            "{static_discharge_head} above itself. What is the static head?",
        ),
        Level(
            ("static_discharge_head", "static_suction_head"),
            "The water stands {static_suction_head} above {place}. It discharges "
            "{static_discharge_head} above itself. What is the static head?",
            scene=flooded,
        ),
    ),
)

FROM_GAUGES = (
    numeric(
        "gauges_to_head",
        "HT",
        "Total dynamic head from two gauges",
        "head",
        low_lift_gauges,
        Level(
            ("discharge_gauge", "suction_gauge"),
            f"{GAUGES} They sit level, on pipes of one size. What is the total dynamic head?",
            scene=gauges(),
        ),
        Level(
            (
                "discharge_gauge",
                "suction_gauge",
                "discharge_gauge_height",
                "suction_gauge_height",
            ),
            f"{GAUGES} {HEIGHTS} The pipes are of one size. What is the total dynamic head?",
        ),
        Level(
            ("discharge_gauge", "suction_vacuum"),
            "{place} shows {discharge_gauge} at the discharge and a vacuum of {suction_vacuum} at "
            "the suction. The gauges sit level, on pipes of one size. "
            "What is the total dynamic head?",
        ),
        Level(
            (
                "discharge_gauge",
                "suction_gauge",
                "discharge_velocity_head",
                "suction_velocity_head",
            ),
            f"{GAUGES} They sit level with the pump. The velocity head is "
            "{discharge_velocity_head} in the discharge pipe and {suction_velocity_head} in the "
            "wider suction pipe. What is the total dynamic head?",
            scene=gauges(20, 38),
        ),
    ),
    numeric(
        "expected_gauge",
        "HG",
        "What the discharge gauge should read",
        "discharge_gauge",
        gauges(),
        Level(
            ("head", "suction_gauge"),
            "By its curve {place} should give {head} of head now. The suction gauge reads "
            "{suction_gauge}, level with the discharge gauge. What should the discharge gauge read?",
        ),
        Level(
            ("head", "suction_gauge", "discharge_gauge_height", "suction_gauge_height"),
            "By its curve {place} should give {head} of head now. The suction gauge reads "
            f"{{suction_gauge}}. {HEIGHTS} What should the discharge gauge read?",
            scene=low_lift_gauges,
        ),
    ),
)

SUCTION_SIDE = (
    numeric(
        "dynamic_suction_lift",
        "HV",
        "Dynamic suction lift",
        "dynamic_suction_lift",
        suction((2, 5)),
        Level(
            ("suction_vacuum",),
            "The suction gauge of {place} shows a vacuum of {suction_vacuum}. "
            "What is the dynamic suction lift?",
        ),
        Level(
            ("suction_lift", "suction_loss"),
            "{place} stands {suction_lift} above the water it draws. Its suction pipe takes "
            "{suction_loss}. What is the dynamic suction lift?",
        ),
    ),
    numeric(
        "suction_loss",
        "HU",
        "What the suction pipe takes",
        "suction_loss",
        suction((3.5, 8)),
        Level(
            ("dynamic_suction_lift", "suction_lift"),
            "{place} stands {suction_lift} above the water it draws. Its dynamic suction lift is "
            "{dynamic_suction_lift}. What does the suction pipe take?",
        ),
        Level(
            ("suction_vacuum", "suction_lift"),
            "{place} stands {suction_lift} above the water it draws. Its suction gauge shows a "
            "vacuum of {suction_vacuum}. What does the suction pipe take?",
        ),
    ),
    SUCTION_LIMIT,
    numeric(
        "npsh_available",
        "HN",
        "NPSH available",
        "npsh_available",
        suction(),
        Level(
            ("atmospheric_head", "vapor_head", "suction_lift", "suction_loss"),
            f"{AIR} {BELOW} What is the NPSH available?",
        ),
        Level(
            ("atmospheric_head", "vapor_head", "static_suction_head", "suction_loss"),
            f"{AIR} It stands {{static_suction_head}} above the pump, and the suction pipe takes "
            "{suction_loss}. What is the NPSH available?",
        ),
        Level(
            ("atmospheric_head", "vapor_head", "suction_vacuum"),
            f"{AIR} The suction gauge of {{place}} shows a vacuum of {{suction_vacuum}}. "
            "What is the NPSH available?",
        ),
    ),
    numeric(
        "greatest_lift",
        "HI",
        "How high a pump may stand above its water",
        "greatest_lift",
        suction(),
        Level(
            ("atmospheric_head", "vapor_head", "suction_loss", "npsh_required", "npsh_margin"),
            f"{AIR} The suction pipe takes {{suction_loss}}. The pump requires {{npsh_required}} "
            "of NPSH, and {npsh_margin} is wanted as a margin. "
            "How high may it stand above the water?",
        ),
        Level(
            (
                "atmospheric_head",
                "vapor_head",
                "suction_lift",
                "dynamic_suction_lift",
                "npsh_required",
                "npsh_margin",
            ),
            f"{AIR} Today the pump stands {{suction_lift}} above the water, and its dynamic "
            "suction lift is {dynamic_suction_lift}. It requires {npsh_required} of NPSH, and "
            "{npsh_margin} is wanted as a margin. How high may it stand above the water?",
        ),
    ),
    NPSH_CHECK,
)

HEAD: tuple[Family, ...] = (
    *LEVELS,
    *PIPES,
    VELOCITY_CHECK,
    WHICH_PIPE,
    *TOTAL,
    MISSING_PART,
    *FROM_GAUGES,
    GAUGES_STORY,
    *SUCTION_SIDE,
)
