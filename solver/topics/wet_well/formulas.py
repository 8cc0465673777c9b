"""The wet well: what it holds, what it can still hold without power, and the hours of its pumps.

`WET_WELL` has every formula of the chapter; those of drawdown and of cycles are in files of their
own.
"""

from solver.algebra.expression import Known, Number
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import (
    CIRCLE_IN_SQUARE,
    GALLONS_PER_CUBIC_FOOT,
    LITRES_PER_CUBIC_METRE,
    MINUTES_PER_HOUR,
    SECONDS_PER_MINUTE,
)

from .formulas_cycles import CYCLES
from .formulas_drawdown import DRAWDOWN, OUTSIDE, both, minutes

__all__ = ["WET_WELL"]

ARITHMETIC = "arithmetic: a volume over a flow is a time"
TURNS = "common practice, no source: alternating pumps share the hours"
TAPE = "common practice, no source: depths taken from the rim"
GEOMETRY = "geometry: floor area times depth; a circle has 0.785 of the square around it"

diameter, length, width, area = map(
    Known, ("well_diameter", "well_length", "well_width", "well_area")
)
flow, inflow, per_depth = map(Known, ("flow", "inflow", "volume_per_depth"))
storage_volume, sewer_storage = map(Known, ("storage_volume", "sewer_storage"))
daily_inflow, hours, pumps = map(Known, ("daily_inflow", "hours_per_day", "alternating_pumps"))
to_floor, to_water, water_depth = map(Known, ("depth_to_floor", "depth_to_water", "water_depth"))

VOLUMES = (
    Formula(
        "well_area",
        CIRCLE_IN_SQUARE * diameter**2,
        GEOMETRY,
        "A circle covers 0.785 of the square around it.",
        slips=(
            Slip(
                "diameter_for_radius",
                Number(4) * CIRCLE_IN_SQUARE * diameter**2,
                "You squared the diameter and multiplied by 3.14. With 3.14, square the radius.",
            ),
            Slip(
                "radius_for_diameter",
                CIRCLE_IN_SQUARE * diameter**2 / Number(4),
                "You squared the radius and multiplied by 0.785. With 0.785, square the diameter.",
            ),
        ),
    ),
    Formula(
        "well_area",
        length * width,
        GEOMETRY,
        "In a rectangular well, the floor area is length times width.",
        slips=(
            Slip(
                "added",
                length + width,
                "You added length and width. Multiply them to get the floor area.",
            ),
        ),
    ),
    Formula(
        "water_depth",
        to_floor - to_water,
        GEOMETRY,
        f"The tape shows how far down the water is, and the rest of the well is water. {OUTSIDE}",
        slips=(
            Slip(
                "tape_for_depth",
                to_water,
                "You used how far down the water is. Subtract that from the depth to the floor to get how "
                "deep the water is.",
            ),
            Slip(
                "floor_for_depth",
                to_floor,
                "You used the whole well, rim to floor. Only the part under water counts.",
            ),
        ),
    ),
    Formula(
        "well_volume",
        area * water_depth * GALLONS_PER_CUBIC_FOOT,
        f"{GEOMETRY}; {GALLONS_PER_CUBIC_FOOT.source}",
        "The volume of water is the floor area times the depth.",
    ),
    Formula(
        "volume_per_depth",
        area * GALLONS_PER_CUBIC_FOOT,
        f"{GEOMETRY}; {GALLONS_PER_CUBIC_FOOT.source}",
        "This is one layer of water, one foot (or one meter) deep.",
    ),
)

HELD = (
    Formula(
        "storage_depth",
        Known("depth_to_water") - Known("depth_to_overflow"),
        TAPE,
        "Water can still rise from its level now up to the overflow.",
    ),
    Formula(
        "storage_volume",
        per_depth * Known("storage_depth"),
        "geometry: volume per depth times depth",
        "This much still fits between the water and the overflow.",
    ),
    Formula(
        "total_storage",
        storage_volume + sewer_storage,
        ARITHMETIC,
        "Water that backs up into the sewer is stored there too.",
        slips=(
            Slip(
                "sewer_forgotten",
                storage_volume,
                "You left out the sewer. It holds water too before anything overflows.",
            ),
        ),
    ),
    *minutes(
        "storage_time",
        storage_volume,
        inflow,
        ARITHMETIC,
        "With no power, no pump runs, so inflow alone fills the well.",
        unless=("sewer_storage",),
    ),
    *minutes(
        "storage_time",
        Known("total_storage"),
        inflow,
        ARITHMETIC,
        "With no power, no pump runs, so inflow alone fills what is left.",
    ),
)

HOURS = (
    *both(
        "hours_per_day",
        daily_inflow / flow / MINUTES_PER_HOUR,
        daily_inflow * LITRES_PER_CUBIC_METRE / flow / SECONDS_PER_MINUTE / MINUTES_PER_HOUR,
        ARITHMETIC,
        "Everything that comes in has to be pumped out at the pump's own rate.",
        back="What comes in over a day is what the pump moves in its run hours.",
    ),
    Formula(
        "pump_hours",
        hours / pumps,
        TURNS,
        "Alternating pumps share the hours equally.",
        back="Each pump runs an equal share of all the hours.",
    ),
)

WET_WELL = (*VOLUMES, *DRAWDOWN, *CYCLES, *HELD, *HOURS)
