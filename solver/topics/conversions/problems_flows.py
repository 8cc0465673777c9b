"""Flows in other units, by the day, and as a share."""

from solver.engine.family import Level
from solver.topics.scenes import ANY

from .small import CHAPTER
from .stations import CHANNEL_METER, WORN

__all__ = ["FLOWS"]

FLOWS = (
    CHAPTER.numeric(
        "flow_converted",
        "CM",
        "Flow in the pump's own unit",
        "flow",
        ANY,
        Level(("flow_per_hour",), "{place} moves {flow_per_hour}. What flow is that in {unit}?"),
        Level(
            ("flow_per_second",),
            "The open-channel meter at {station} shows {flow_per_second}. What flow is that in {unit}?",
            scene=CHANNEL_METER,
        ),
        Level(
            ("daily_flow",),
            "A report shows a steady {daily_flow} for {station}. What flow is that in {unit}?",
        ),
    ),
    CHAPTER.numeric(
        "channel_flow",
        "CF",
        "Flow as an open-channel meter shows it",
        "flow_per_second",
        CHANNEL_METER,
        Level(
            ("flow",),
            "{place} moves {flow}. What does an open-channel meter show for that, in {unit}?",
        ),
        Level(
            ("daily_flow",),
            "A report shows a steady {daily_flow} for {station}. "
            "What does an open-channel meter show for that, in {unit}?",
        ),
    ),
    CHAPTER.numeric(
        "daily_flow",
        "CD",
        "Flow as a report shows it",
        "daily_flow",
        ANY,
        Level(("flow",), "{place} moves a steady {flow}. What is its daily flow in {unit}?"),
        Level(
            ("flow_per_hour",),
            "{place} moves a steady {flow_per_hour}. What is its daily flow in {unit}?",
        ),
        Level(
            ("flow_per_second",),
            "The open-channel meter at {station} shows a steady {flow_per_second}. "
            "What is the daily flow in {unit}?",
            scene=CHANNEL_METER,
        ),
    ),
    CHAPTER.numeric(
        "flow_of_a_day",
        "CG",
        "How much a flow adds up to in a day",
        "flow_per_day",
        ANY,
        Level(("flow",), "{place} moves a steady {flow}. How much is that in {unit}?"),
        Level(
            ("flow_per_hour",),
            "{place} moves a steady {flow_per_hour}. How much is that in {unit}?",
        ),
        Level(
            ("flow_per_second",),
            "The open-channel meter at {station} shows a steady {flow_per_second}. "
            "How much is that in {unit}?",
            scene=CHANNEL_METER,
        ),
    ),
    CHAPTER.numeric(
        "flow_drop",
        "CX",
        "A drop in percent",
        "flow_drop_share",
        WORN,
        Level(
            ("earlier_flow", "flow_drop"),
            "When new, {place} moved {earlier_flow}. Now it moves {flow_drop} less. "
            "What is the drop in percent?",
        ),
        Level(
            ("earlier_flow", "flow"),
            "When new, {place} moved {earlier_flow}. Now it moves {flow}. "
            "What is the drop in percent?",
        ),
    ),
)
