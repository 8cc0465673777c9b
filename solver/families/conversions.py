"""Units for pump work: one reading in another unit, by one conversion or a chain of them.

The families here are worked by numbers; flows stand in flow_units.py, chains and figures to be
judged in chains.py and wrong_by_a_factor.py. `CONVERSIONS` has the whole chapter, in the order of
teaching.
"""

from ..family import Level
from .chains import CHAINS
from .flow_units import FLOWS
from .scenes_conversions import lifting, part, pressures, ratings, tank
from .unit_family import numeric
from .wrong_by_a_factor import WRONG_BY_A_FACTOR

__all__ = ["CONVERSIONS"]

CONVERSIONS = (
    *FLOWS,
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
