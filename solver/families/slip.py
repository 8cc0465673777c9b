"""Synchronous speed, slip, running speed, and the load that slip tells."""

from ..family import Level
from .scenes_nameplate import on_a_drive, slipping, speeds
from .three_phase import numeric

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
            "{person} reads {poles} poles on the nameplate of {place}. The supply has "
            "{frequency}. What is the synchronous speed?",
        ),
        Level(
            ("frequency", "poles"),
            "A drive runs {place} at {frequency}. The motor has {poles} poles. "
            "What is the synchronous speed then?",
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
            "The field of the motor of {place} turns at {synchronous_speed}, the shaft at "
            "{running_speed}. What is the slip, in percent?",
        ),
        Level(
            ("frequency", "poles", "running_speed"),
            "The motor of {place} has {poles} poles on {frequency}. {person} measures "
            "{running_speed}. What is the slip, in percent?",
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
            "The field of the motor of {place} turns at {synchronous_speed}. The slip is {slip}. "
            "At what speed does the shaft run?",
            scene=speeds,
        ),
        Level(
            ("frequency", "poles", "slip"),
            "The motor of {place} has {poles} poles on {frequency}. The slip is {slip}. "
            "At what speed does the shaft run?",
            scene=speeds,
        ),
        Level(
            ("frequency", "poles", "slip_speed"),
            "A drive runs {place} at {frequency}. The motor has {poles} poles and slips "
            "{slip_speed} under its load. At what speed does the shaft run?",
            scene=on_a_drive,
        ),
    ),
    numeric(
        "load_by_slip",
        "NG",
        "Motor load by slip",
        "load_by_slip",
        speeds,
        Level(
            ("synchronous_speed", "rated_speed", "running_speed"),
            "The field of the motor of {place} turns at {synchronous_speed}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed}. "
            "What is the load by slip, in percent?",
        ),
        Level(
            ("frequency", "poles", "rated_speed", "running_speed"),
            "The motor of {place} has {poles} poles on {frequency}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed}. "
            "What is the load by slip, in percent?",
        ),
    ),
)
