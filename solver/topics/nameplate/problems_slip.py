"""Synchronous speed, slip, running speed, and the load that slip tells."""

from solver.engine.family import Level

from .problems_three_phase import numeric
from .scenes import on_a_drive, slipping, speeds

__all__ = ["SPEEDS"]

SPEEDS = (
    numeric(
        "synchronous_speed",
        "NY",
        "Synchronous speed",
        "synchronous_speed",
        speeds,
        Level(
            ("frequency", "poles"),
            "The motor of {place} has {poles} poles, and the supply is {frequency}. "
            "What is the synchronous speed?",
        ),
        Level(
            ("frequency", "poles"),
            "A variable-frequency drive runs {place} at {frequency}. The motor has {poles} poles. "
            "What is the synchronous speed at that frequency?",
            scene=on_a_drive,
        ),
    ),
    numeric(
        "slip",
        "NP",
        "Slip, in percent",
        "slip",
        slipping,
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
    numeric(
        "running_speed",
        "NR",
        "Running speed from slip",
        "running_speed",
        slipping,
        Level(
            ("synchronous_speed", "slip"),
            "The synchronous speed of {place} is {synchronous_speed}. The slip is {slip}. "
            "How fast does the shaft turn?",
            scene=speeds,
        ),
        Level(
            ("frequency", "poles", "slip"),
            "The motor of {place} has {poles} poles and runs on {frequency}. The slip is {slip}. "
            "How fast does the shaft turn?",
            scene=speeds,
        ),
        Level(
            ("frequency", "poles", "slip_speed"),
            "A variable-frequency drive runs {place} at {frequency}. The motor has {poles} poles "
            "and slips {slip_speed} under load. How fast does the shaft turn?",
            scene=on_a_drive,
        ),
    ),
    numeric(
        "load_by_slip",
        "NG",
        "Motor load from slip",
        "load_by_slip",
        speeds,
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
