"""The feed pump: what a drawdown cylinder shows, its stroke and speed, dilution."""

from solver.engine.family import Level
from solver.topics.limits import FEEDER_SHARE
from solver.topics.zones import against

from .small import CHAPTER, CHLORINE, DILUTED, FERRIC, HYPO, OVERSIZED, TREATS

__all__ = ["PUMP"]

PUMP = (
    CHAPTER.numeric(
        "drawdown_cylinder",
        "XC",
        "Output from a drawdown cylinder",
        "solution_minute",
        CHLORINE,
        Level(
            ("cylinder_volume", "cylinder_time"),
            "{person} opens the drawdown cylinder to the feed pump and closes the tank. The pump draws "
            "{cylinder_volume} in {cylinder_time}. What does it deliver, in {unit}?",
        ),
        Level(
            ("cylinder_volume", "cylinder_time", "feeder_capacity"),
            "{person} opens the drawdown cylinder to the feed pump and closes the tank. The pump draws "
            "{cylinder_volume} in {cylinder_time}. Its nameplate says {feeder_capacity}. What percent of that "
            "does it deliver?",
            asked="capacity_share",
        ),
        Level(
            (
                "cylinder_volume",
                "cylinder_time",
                "solution_strength",
                "specific_gravity",
                "daily_flow",
            ),
            "A plant treats {daily_flow} at a steady rate. The hypochlorite pump draws {cylinder_volume} "
            "from the cylinder in {cylinder_time}. The solution is {solution_strength} chlorine by "
            "weight and has a specific gravity of {specific_gravity}. What is the chlorine dose?",
            asked="dose",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "stroke_and_speed",
        "XP",
        "Stroke and speed settings",
        "solution_hour",
        FERRIC,
        Level(
            ("feeder_capacity", "stroke_setting", "speed_setting"),
            "A feed pump delivers {feeder_capacity} with stroke and speed at 100%. It is set to "
            "{stroke_setting} stroke and {speed_setting} speed. What should it deliver, in {unit}?",
        ),
        Level(
            ("solution_hour", "feeder_capacity", "stroke_setting"),
            "A feed pump delivers {feeder_capacity} with stroke and speed at 100%. It has to deliver "
            "{solution_hour}, and its stroke is set to {stroke_setting}. What speed setting does it need?",
            asked="speed_setting",
        ),
        Level(
            ("cylinder_volume", "cylinder_time", "speed_setting", "wanted_minute"),
            "At {speed_setting} speed, a feed pump draws {cylinder_volume} from the cylinder in "
            "{cylinder_time}. It has to deliver {wanted_minute}, and the stroke stays as it is. What speed "
            "setting does it need?",
            asked="new_speed_setting",
        ),
        since=2,
    ),
    CHAPTER.judged(
        "feed_pump_size",
        "XZ",
        "Does the feed pump fit the job",
        against(
            FEEDER_SHARE,
            FEEDER_SHARE.rule,
            (
                "too_big",
                "Too big: it would run under 10% of its capacity",
                "So low, the strokes are too small or too far apart to feed evenly. Get a smaller pump.",
            ),
            (
                "fits",
                "It fits: the job takes 10% to 100% of its capacity",
                "It can be turned up and down from here. Prove the output with the cylinder.",
            ),
            (
                "too_small",
                "Too small: the job takes more than its whole capacity",
                "At full stroke and speed it still feeds too little. Get a larger pump or a second one.",
            ),
        ),
        OVERSIZED,
        Level(
            ("solution_hour", "feeder_capacity"),
            "A job takes {solution_hour} of hypochlorite. The spare feed pump delivers up to "
            "{feeder_capacity} and turns down to a tenth of that. Does it fit?",
            find=("capacity_share",),
        ),
        Level(
            ("daily_flow", "dose", "solution_strength", "specific_gravity", "feeder_capacity"),
            f"{TREATS}{HYPO}. The solution is {{solution_strength}} chlorine by weight and has a specific "
            "gravity of {specific_gravity}. The spare feed pump delivers up to {feeder_capacity} and "
            "turns down to a tenth of that. Does it fit?",
            find=("solution_hour", "capacity_share"),
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "dilution",
        "XQ",
        "Mixing a weaker solution",
        "strong_volume",
        DILUTED,
        Level(
            ("strong_strength", "mixed_strength", "mixed_volume"),
            "{person} has to mix {mixed_volume} of {mixed_strength} hypochlorite from a solution of "
            "{strong_strength}. How much of the strong solution does it take?",
        ),
        Level(
            ("strong_strength", "mixed_strength", "strong_volume"),
            "{person} has {strong_volume} of {strong_strength} hypochlorite and waters all of it down to "
            "{mixed_strength}. How much water does that take?",
            asked="added_water",
        ),
        since=2,
    ),
)
