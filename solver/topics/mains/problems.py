"""Force mains by numbers: volume, time and surge. Measuring flow is in `problems_measuring.py`.

`MAINS` has the whole chapter, in the order of teaching; what is to be judged is in `judgments.py`, and
questions in words are in the TOML files.
"""

from solver.engine.family import Level
from solver.topics.questions import in_words

from .judgments import CLOSING_TOLD
from .problems_measuring import MEASURING
from .stations import CHAPTER, FLUSH, LONG, MAIN, SURGE

__all__ = ["MAINS"]

PIPE = "The force main from {station} is {pipe_length} long, with an inside diameter of {pipe_diameter}."

HOLDS = CHAPTER.numeric(
    "what_a_main_holds",
    "YV",
    "What a force main holds",
    "main_volume",
    MAIN,
    Level(("pipe_length", "pipe_diameter"), f"{PIPE} What volume does it hold?"),
    Level(
        ("pipe_length", "pipe_diameter", "flow"),
        f"{PIPE} One pump moves {{flow}} through it. How many minutes does the sewage take to get through?",
        asked="main_time",
    ),
    Level(
        ("pipe_length", "pipe_diameter", "cycle_volume"),
        f"{PIPE} The pumps move {{cycle_volume}} in each cycle. How many cycles does it take to push out "
        "what is in the main?",
        asked="clearing_cycles",
        scene=LONG,
    ),
    since=2,
)

FLUSHING = CHAPTER.numeric(
    "flushing_flow",
    "YF",
    "The flow that flushes a force main",
    "flow",
    FLUSH,
    Level(
        ("pipe_diameter", "velocity"),
        "A force main has an inside diameter of {pipe_diameter}. What flow does it take to move the sewage at "
        "{velocity}?",
    ),
    Level(
        ("flow", "velocity"),
        "A pump moves {flow}. To keep the main clean, the sewage has to move at {velocity} or faster. "
        "What is the largest inside diameter the force main can have?",
        asked="pipe_diameter",
    ),
    since=2,
)

STOPPED = "A pressure wave runs through the pipe at {wave_speed}."

SURGED = CHAPTER.numeric(
    "surge",
    "YS",
    "Surge in a force main",
    "wave_time",
    SURGE,
    Level(
        ("pipe_length", "wave_speed"),
        f"The force main from {{station}} is {{pipe_length}} long. {STOPPED} How long does the wave take "
        "to run to the far end and back?",
    ),
    Level(
        ("velocity", "wave_speed"),
        f"Sewage moves at {{velocity}} through the force main from {{station}}. {STOPPED} A valve "
        "slams shut and stops the flow at once. How much pressure does the surge add?",
        asked="surge_pressure",
    ),
    Level(
        ("velocity", "wave_speed", "pipe_length", "closing_time"),
        f"Sewage moves at {{velocity}} through {{pipe_length}} of force main from {{station}}. {STOPPED} "
        "A valve closes evenly in {closing_time}, slower than the wave comes back. How much pressure does the "
        "surge add?",
        asked="slow_surge",
    ),
    since=2,
)

MAINS = (
    HOLDS,
    FLUSHING,
    SURGED,
    CLOSING_TOLD,
    in_words(CHAPTER, "force_main_care", "YA", "Force mains, air and surge", since=2),
    *MEASURING,
    in_words(CHAPTER, "flow_meters", "YM", "What a flowmeter needs", since=2),
)
