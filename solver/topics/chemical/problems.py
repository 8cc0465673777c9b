"""Chemical feed pumps: pounds a day, solutions, drawdown cylinder, stroke and speed, dilution, questions.

`CHEMICAL` has the whole chapter, in the order of teaching; the pump's own are in `problems_pump.py`.
"""

from solver.engine.family import Level
from solver.topics.questions import in_words

from .problems_pump import PUMP
from .small import ALUM, CHAPTER, CHLORINE, FERRIC, HYPO, IN_WORDS, SMALL_FLOW, TREATS

__all__ = ["CHEMICAL"]

DELIVERED = (
    "The solution is {solution_strength} chemical by weight and has a specific gravity of "
    "{specific_gravity}. "
)
POUNDS = (
    CHAPTER.numeric(
        "chemical_feed",
        "XF",
        "Pounds (kilograms) of chemical per day",
        "chemical_feed",
        FERRIC,
        Level(
            ("daily_flow", "dose"),
            f"{TREATS}ferric chloride. How much ferric chloride is that per day, in {{unit}}?",
        ),
        Level(
            ("flow", "dose"),
            "{place} runs around the clock and moves {flow}. Ferric chloride is fed into it at a dose of "
            "{dose}. How much ferric chloride is that per day, in {unit}?",
            scene=SMALL_FLOW,
        ),
        Level(
            ("daily_flow", "chlorine_demand", "chlorine_residual"),
            "A plant treats {daily_flow}. The water has a chlorine demand of {chlorine_demand}, and the "
            "residual should be {chlorine_residual}. How much chlorine is that per day, in {unit}?",
            scene=CHLORINE,
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "dose_from_feed",
        "XD",
        "The dose from what was fed",
        "dose",
        FERRIC,
        Level(
            ("chemical_feed", "daily_flow"),
            "A plant treats {daily_flow} and feeds {chemical_feed} of ferric chloride into it. What is the "
            "dose?",
        ),
        Level(
            ("solution_flow", "solution_strength", "specific_gravity", "daily_flow"),
            "A plant treats {daily_flow} and uses {solution_flow} of alum solution. "
            f"{DELIVERED}What is the dose of alum?",
            scene=ALUM,
        ),
        since=2,
    ),
)
SOLUTION = (
    CHAPTER.numeric(
        "solution_flow",
        "XS",
        "How much solution a dose takes",
        "solution_flow",
        FERRIC,
        Level(
            ("chemical_feed", "solution_strength", "solution_weight"),
            "A plant needs {chemical_feed} of ferric chloride. Its solution is {solution_strength} ferric "
            "chloride by weight and weighs {solution_weight}. How much solution is that per day, in {unit}?",
        ),
        Level(
            ("daily_flow", "dose", "solution_strength", "specific_gravity"),
            f"{TREATS}alum. {DELIVERED}How much solution is that per day, in {{unit}}?",
            scene=ALUM,
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "feed_pump_rate",
        "XM",
        "What to set a feed pump to",
        "solution_minute",
        CHLORINE,
        Level(
            ("solution_hour",),
            "A feed pump has to deliver {solution_hour} of hypochlorite. How much is that, in {unit}?",
        ),
        Level(
            ("solution_flow",),
            "A plant uses {solution_flow} of hypochlorite, fed evenly around the clock. How much is that, "
            "in {unit}?",
        ),
        Level(
            ("daily_flow", "dose", "solution_strength", "specific_gravity"),
            f"{TREATS}{HYPO}. The solution is {{solution_strength}} chlorine by weight and has a specific "
            "gravity of {specific_gravity}. What does the feed pump have to deliver, in {unit}?",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "days_of_supply",
        "XT",
        "Days of supply",
        "days_of_supply",
        CHLORINE,
        Level(
            ("solution_on_hand", "solution_flow"),
            "The tank holds {solution_on_hand} of hypochlorite, and the plant uses {solution_flow}. How "
            "many days will it last?",
        ),
        Level(
            ("solution_on_hand", "solution_minute"),
            "The tank holds {solution_on_hand} of hypochlorite, and the feed pump delivers "
            "{solution_minute} around the clock. How many days will it last?",
        ),
        since=2,
    ),
)
WORDS = (
    in_words(
        CHAPTER,
        "chemical_safety",
        "XH",
        "Chemicals: storing, handling, spills",
        since=2,
        scene=IN_WORDS,
    ),
    in_words(
        CHAPTER,
        "feed_pumps",
        "XV",
        "Feed pumps: valves, prime and trouble",
        since=2,
        scene=IN_WORDS,
    ),
)

CHEMICAL = (*POUNDS, *SOLUTION, *PUMP, *WORDS)
