"""Units for pump work: one reading in another unit, by one conversion or a chain of them.

The families here are worked by numbers; chains and figures to be judged are in chains.py and
wrong_by_a_factor.py. `CONVERSIONS` has the whole chapter, in the order of teaching.
"""

from ..family import Family, Level, Scene
from ..formulas import CONVERSIONS as FORMULAS
from ..formulas import POWER
from .chains import CHAINS
from .scenes_conversions import change, flows, lifting, part, pressures, ratings, tank
from .wrong_by_a_factor import WRONG_BY_A_FACTOR

__all__ = ["CONVERSIONS"]


def numeric(name: str, tag: str, title: str, asked: str, scene: Scene, *levels: Level) -> Family:
    return Family(name, tag, "units", title, asked, levels, scene, (*POWER, *FORMULAS))


CONVERSIONS = (
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
    numeric(
        "water_height",
        "CH",
        "The water above a gauge",
        "water_height",
        pressures,
        Level(
            ("gauge_pressure",),
            "The gauge at the foot of a standpipe reads {gauge_pressure}. "
            "How high does the water stand above it?",
        ),
        Level(
            ("second_scale",),
            "The gauge at the foot of a standpipe can be read only on its second scale: "
            "{second_scale}. How high does the water stand above it, in {unit}?",
        ),
    ),
    numeric(
        "gauge_pressure",
        "CI",
        "What a tank's gauge should read",
        "gauge_pressure",
        pressures,
        Level(
            ("water_height",),
            "In a standpipe the water stands {water_height} above the gauge. "
            "What should the gauge read?",
        ),
        Level(
            ("tank_depth", "tap_height"),
            "A tank is filled to {tank_depth}. Its gauge sits {tap_height} above the floor. "
            "What should the gauge read?",
        ),
    ),
    numeric(
        "second_scale",
        "CS",
        "A pressure on the gauge's second scale",
        "second_scale",
        pressures,
        Level(
            ("gauge_pressure",),
            "{person} reads {gauge_pressure} at {station}. "
            "What does the gauge's second scale, in {unit}, show?",
        ),
        Level(
            ("water_height",),
            "In a standpipe the water stands {water_height} above the gauge. "
            "What does the gauge show on its second scale, in {unit}?",
        ),
    ),
    numeric(
        "water_volume",
        "CU",
        "A volume of water in another unit",
        "water_volume",
        tank,
        Level(
            ("volume_converted",),
            "A tank at {station} holds {volume_converted} of water. How much is that in {unit}?",
        ),
        Level(
            ("water_weight",),
            "A truck may carry {water_weight} of water from {station}. How much is that in {unit}?",
        ),
    ),
    numeric(
        "water_weight",
        "CL",
        "What a volume of water weighs",
        "water_weight",
        tank,
        Level(
            ("water_volume",),
            "{person} wants to load {water_volume} of water on a truck. What does the water weigh?",
        ),
        Level(
            ("volume_converted",),
            "A tank at {station} holds {volume_converted} of water. What does the water weigh?",
        ),
        Level(
            ("tank_volume", "percent_full"),
            "A tank of {tank_volume} at {station} is {percent_full} full of water. "
            "What does the water weigh?",
        ),
    ),
    numeric(
        "percent_full",
        "CT",
        "How full a tank is, in percent",
        "percent_full",
        part,
        Level(
            ("water_volume", "tank_volume"),
            "A tank of {tank_volume} at {station} holds {water_volume}. How full is it?",
        ),
        Level(
            ("empty_volume", "tank_volume"),
            "A tank of {tank_volume} at {station} has room for another {empty_volume}. "
            "How full is it?",
        ),
        Level(
            ("volume_converted", "tank_volume"),
            "A tank of {tank_volume} at {station} holds {volume_converted}. How full is it?",
        ),
    ),
    numeric(
        "kilowatt_rating",
        "CK",
        "A motor's rating in kilowatts",
        "kilowatt_rating",
        ratings,
        Level(
            ("horsepower_rating",),
            "A motor for {station} is marked {horsepower_rating}. What is its rating in {unit}?",
        ),
        Level(
            ("shaft_work",),
            "On a test stand the shaft of {place} does {shaft_work}. What is that in {unit}?",
        ),
    ),
    numeric(
        "horsepower_rating",
        "CB",
        "A motor's rating in horsepower",
        "horsepower_rating",
        ratings,
        Level(
            ("kilowatt_rating",),
            "A motor for {station} is marked {kilowatt_rating}. What is its rating in {unit}?",
        ),
        Level(
            ("shaft_work",),
            "On a test stand the shaft of {place} does {shaft_work}. What is that in {unit}?",
        ),
    ),
    numeric(
        "lifting_work",
        "CE",
        "The work done on the water",
        "lifting_work",
        lifting,
        Level(
            ("weight_flow", "head"),
            "{place} lifts {weight_flow} of water against {head} of head. "
            "What is the rate of work on the water, in {unit}?",
        ),
        Level(
            ("flow", "head"),
            "{place} lifts {flow} against {head} of head. "
            "What is the rate of work on the water, in {unit}?",
        ),
        Level(
            ("flow", "pressure"),
            "{place} moves {flow}. The gauges show a pressure rise of {pressure} across it. "
            "What is the rate of work on the water, in {unit}?",
        ),
    ),
    CHAINS,
    WRONG_BY_A_FACTOR,
)
