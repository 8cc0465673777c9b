"""Units for pump work: one reading in another unit, by one conversion or a chain of them.

The families here are worked by numbers; flows are in flow_units.py, chains and figures to be
judged in chains.py and wrong_by_a_factor.py. `CONVERSIONS` has the whole chapter, in the order of
teaching.
"""

from solver.engine.family import Level

from .judged_chains import CHAINS
from .judged_factors import WRONG_BY_A_FACTOR
from .kinds import numeric
from .problems_flows import FLOWS
from .scenes import lifting, part, pressures, ratings, tank

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
            "The gauge at the bottom of a standpipe reads {gauge_pressure}. "
            "How high is the water above the gauge?",
        ),
        Level(
            ("second_scale",),
            "You can only read the second scale of the gauge at the bottom of a standpipe. It shows "
            "{second_scale}. How high is the water above the gauge, in {unit}?",
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
            "The water in a standpipe is {water_height} above the gauge. "
            "What should the gauge read?",
        ),
        Level(
            ("tank_depth", "tap_height"),
            "A tank is filled to a depth of {tank_depth}. Its gauge is {tap_height} above the floor. "
            "What should the gauge read?",
        ),
    ),
    numeric(
        "second_scale",
        "CS",
        "Pressure on the gauge's second scale",
        "second_scale",
        pressures,
        Level(
            ("gauge_pressure",),
            "{person} reads {gauge_pressure} on a gauge at {station}. "
            "What does its second scale show, in {unit}?",
        ),
        Level(
            ("water_height",),
            "The water in a standpipe is {water_height} above the gauge. "
            "What does the gauge's second scale show, in {unit}?",
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
            "A truck may haul {water_weight} of water from {station}. How much is that in {unit}?",
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
            "{person} wants to haul {water_volume} of water on a truck. How much does the water weigh?",
        ),
        Level(
            ("volume_converted",),
            "A tank at {station} holds {volume_converted} of water. How much does the water weigh?",
        ),
        Level(
            ("tank_volume", "percent_full"),
            "A tank of {tank_volume} at {station} is {percent_full} full of water. "
            "How much does the water weigh?",
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
            "A tank of {tank_volume} at {station} has {water_volume} in it. What percent full is it?",
        ),
        Level(
            ("empty_volume", "tank_volume"),
            "A tank of {tank_volume} at {station} has room for {empty_volume} more. "
            "What percent full is it?",
        ),
        Level(
            ("volume_converted", "tank_volume"),
            "A tank of {tank_volume} at {station} has {volume_converted} in it. What percent full is it?",
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
            "The nameplate of a motor for {station} says {horsepower_rating}. "
            "What is its rating in {unit}?",
        ),
        Level(
            ("shaft_work",),
            "On a test stand, the shaft of {place} delivers {shaft_work}. What is that in {unit}?",
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
            "The nameplate of a motor for {station} says {kilowatt_rating}. "
            "What is its rating in {unit}?",
        ),
        Level(
            ("shaft_work",),
            "On a test stand, the shaft of {place} delivers {shaft_work}. What is that in {unit}?",
        ),
    ),
    numeric(
        "lifting_work",
        "CE",
        "Rate of work on the water",
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
            "{place} moves {flow}. Its gauges show a pressure rise of {pressure}. "
            "What is the rate of work on the water, in {unit}?",
        ),
    ),
    CHAINS,
    WRONG_BY_A_FACTOR,
)
