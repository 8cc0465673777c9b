"""A flow in the units of pumps, of channel meters and of reports, and its drop in percent."""

from ..family import Level
from .scenes_conversions import change, flows
from .unit_family import numeric

__all__ = ["FLOWS"]

FLOWS = (
    numeric(
        "flow_converted",
        "CM",
        "A flow in the pump's own unit",
        "flow",
        flows,
        Level(("flow_per_hour",), "{place} moves {flow_per_hour}. What flow is that in {unit}?"),
        Level(
            ("flow_per_second",),
            "The channel meter at {station} shows {flow_per_second}. What flow is that in {unit}?",
        ),
        Level(
            ("daily_flow",),
            "A report gives {daily_flow} for {station}, the same at all hours. "
            "What flow is that in {unit}?",
        ),
    ),
    numeric(
        "channel_flow",
        "CF",
        "A flow as a channel meter counts it",
        "flow_per_second",
        flows,
        Level(
            ("flow",),
            "{place} moves {flow}. What does a channel meter show for it in {unit}?",
        ),
        Level(
            ("daily_flow",),
            "A report gives {daily_flow} for {station}, the same at all hours. "
            "What does a channel meter show for it in {unit}?",
        ),
    ),
    numeric(
        "daily_flow",
        "CD",
        "A flow as a report counts it",
        "daily_flow",
        flows,
        Level(("flow",), "{place} moves {flow} at all hours. What is its daily flow in {unit}?"),
        Level(
            ("flow_per_hour",),
            "{place} moves {flow_per_hour} at all hours. What is its daily flow in {unit}?",
        ),
        Level(
            ("flow_per_second",),
            "The channel meter at {station} shows {flow_per_second} at all hours. "
            "What is the daily flow in {unit}?",
        ),
    ),
    numeric(
        "flow_of_a_day",
        "CG",
        "What a flow comes to in a day",
        "flow_per_day",
        flows,
        Level(("flow",), "{place} moves {flow} at all hours. How much is that in {unit}?"),
        Level(
            ("flow_per_hour",),
            "{place} moves {flow_per_hour} at all hours. How much is that in {unit}?",
        ),
        Level(
            ("flow_per_second",),
            "The channel meter at {station} shows {flow_per_second} at all hours. "
            "How much is that in {unit}?",
        ),
    ),
    numeric(
        "flow_drop",
        "CX",
        "A drop in percent",
        "flow_drop_share",
        change,
        Level(
            ("earlier_flow", "flow_drop"),
            "{place} moved {earlier_flow} when it was new. Now it moves {flow_drop} less. "
            "What is the drop in percent?",
        ),
        Level(
            ("earlier_flow", "flow"),
            "{place} moved {earlier_flow} when it was new. Now it moves {flow}. "
            "What is the drop in percent?",
        ),
    ),
)
