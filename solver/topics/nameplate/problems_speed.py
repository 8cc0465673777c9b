"""Speeds of a motor: synchronous speed, slip, and the load from the slip."""

from solver.engine.family import Level

from .stations import CHAPTER, ON_THE_LINE, SLIPPING, SLIPPING_TURNED_DOWN, TURNED_DOWN

__all__ = ["SPEEDS"]

SPEEDS = (
    CHAPTER.numeric(
        "synchronous_speed",
        "NY",
        "Synchronous speed",
        "synchronous_speed",
        ON_THE_LINE,
        Level(
            ("frequency", "poles"),
            "The motor of {place} has {poles} poles, and the supply is {frequency}. "
            "What is the synchronous speed?",
        ),
        Level(
            ("frequency", "poles"),
            "A variable-frequency drive runs {place} at {frequency}. The motor has {poles} poles. "
            "What is the synchronous speed at that frequency?",
            scene=TURNED_DOWN,
        ),
    ),
    CHAPTER.numeric(
        "slip",
        "NP",
        "Slip, in percent",
        "slip",
        SLIPPING,
        Level(
            ("synchronous_speed", "running_speed"),
            "The synchronous speed of {place} is {synchronous_speed}. The shaft turns at "
            "{running_speed}. What is the slip, in percent?",
        ),
        Level(
            ("frequency", "poles", "running_speed"),
            "The motor of {place} has {poles} poles and runs on {frequency}. {person} measures "
            "{running_speed} at the shaft. What is the slip, in percent?",
        ),
    ),
    CHAPTER.numeric(
        "running_speed",
        "NR",
        "Running speed from slip",
        "running_speed",
        SLIPPING,
        Level(
            ("synchronous_speed", "slip"),
            "The synchronous speed of {place} is {synchronous_speed}. The slip is {slip}. "
            "How fast does the shaft turn?",
            scene=ON_THE_LINE,
        ),
        Level(
            ("frequency", "poles", "slip"),
            "The motor of {place} has {poles} poles and runs on {frequency}. The slip is {slip}. "
            "How fast does the shaft turn?",
            scene=ON_THE_LINE,
        ),
        Level(
            ("frequency", "poles", "slip_speed"),
            "A variable-frequency drive runs {place} at {frequency}. The motor has {poles} poles "
            "and slips {slip_speed} under load. How fast does the shaft turn?",
            scene=SLIPPING_TURNED_DOWN,
        ),
    ),
    CHAPTER.numeric(
        "load_by_slip",
        "NG",
        "Motor load from slip",
        "load_by_slip",
        ON_THE_LINE,
        Level(
            ("synchronous_speed", "rated_speed", "running_speed"),
            "The synchronous speed of {place} is {synchronous_speed}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed} at the shaft. "
            "What is the load from the slip, in percent?",
        ),
        Level(
            ("frequency", "poles", "rated_speed", "running_speed"),
            "The motor of {place} has {poles} poles and runs on {frequency}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed} at the shaft. "
            "What is the load from the slip, in percent?",
        ),
    ),
)
