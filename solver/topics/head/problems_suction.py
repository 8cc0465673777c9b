"""The suction side: lift, losses, and the net positive suction head."""

from solver.engine.family import Level

from .judged_suction import NPSH_CHECK, SUCTION_LIMIT
from .stations import CHAPTER, CLOGGED, LIFTING, ON_FLOODED_PIPES, PART_CLOGGED, PUMP_LEVEL

__all__ = ["SUCTION_SIDE"]

AIR = (
    "Barometric pressure is {atmospheric_head} of water, and the water's vapor pressure is "
    "{vapor_head}."
)
LOSS = "Friction loss in the suction pipe is {suction_loss}."
NPSHA = "What is the net positive suction head available (NPSHa)?"
NPSHR = "The pump's net positive suction head required (NPSHr) is {npsh_required}, and you want a margin of {npsh_margin}."

SUCTION_SIDE = (
    CHAPTER.numeric(
        "dynamic_suction_lift",
        "HV",
        "Dynamic suction lift",
        "dynamic_suction_lift",
        PUMP_LEVEL,
        Level(
            ("suction_vacuum",),
            "The suction gauge on {place} reads a vacuum of {suction_vacuum}. "
            "What is the dynamic suction lift?",
        ),
        Level(
            ("suction_lift", "suction_loss"),
            "{place} is {suction_lift} above the water in the wet well. "
            f"{LOSS} What is the dynamic suction lift?",
            scene=PART_CLOGGED,
        ),
    ),
    CHAPTER.numeric(
        "suction_loss",
        "HU",
        "Losses in the suction pipe",
        "suction_loss",
        CLOGGED,
        Level(
            ("dynamic_suction_lift", "suction_lift"),
            "{place} is {suction_lift} above the water in the wet well. Its dynamic suction lift is "
            "{dynamic_suction_lift}. What are the losses in the suction pipe?",
        ),
        Level(
            ("suction_vacuum", "suction_lift"),
            "{place} is {suction_lift} above the water in the wet well. Its suction gauge reads a "
            "vacuum of {suction_vacuum}. What are the losses in the suction pipe?",
        ),
    ),
    SUCTION_LIMIT,
    CHAPTER.numeric(
        "npsh_available",
        "HN",
        "Net positive suction head available",
        "npsh_available",
        PUMP_LEVEL,
        Level(
            ("atmospheric_head", "vapor_head", "suction_lift", "suction_loss"),
            f"{AIR} The pump is {{suction_lift}} above the water. {LOSS} {NPSHA}",
        ),
        Level(
            ("atmospheric_head", "vapor_head", "static_suction_head", "suction_loss"),
            f"{AIR} The water is {{static_suction_head}} above the pump. {LOSS} {NPSHA}",
            scene=ON_FLOODED_PIPES,
        ),
        Level(
            ("atmospheric_head", "vapor_head", "suction_vacuum"),
            f"{AIR} The suction gauge on {{place}} reads a vacuum of {{suction_vacuum}}. {NPSHA}",
        ),
    ),
    CHAPTER.numeric(
        "greatest_lift",
        "HI",
        "How far a pump can be above its water",
        "greatest_lift",
        LIFTING,
        Level(
            ("atmospheric_head", "vapor_head", "suction_loss", "npsh_required", "npsh_margin"),
            f"{AIR} {LOSS} {NPSHR} How far above the water can the pump be?",
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
            f"{AIR} Today the pump is {{suction_lift}} above the water, with a dynamic suction lift of "
            f"{{dynamic_suction_lift}}. {NPSHR} How far above the water can the pump be?",
        ),
    ),
    NPSH_CHECK,
)
