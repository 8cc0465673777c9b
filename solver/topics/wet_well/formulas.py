"""The wet well: what it holds, by its shape and the depth of water in it."""

from solver.algebra.expression import Constant, Figure, Known, Number
from solver.algebra.formula import Formula, Slip

from .formulas_cycles import CYCLES
from .formulas_drawdown import DRAWDOWN, OUTSIDE
from .formulas_storage import STORAGE
from .units_of_wells import GALLONS_PER_CUBIC_FOOT

__all__ = ["WET_WELL"]

GEOMETRY = "geometry: floor area times depth; a circle has 0.785 of the square around it"

CIRCLE_IN_SQUARE = Constant(
    "circle_in_square",
    "0.785 of a circle",
    us=Figure(0.785, "", also=(0.7854, 0.7853982), exact=0.78539816),
    si=Figure(0.785, "", also=(0.7854, 0.7853982), exact=0.78539816),
    source="geometry: a quarter of pi",
)

diameter, length, width, area = map(
    Known, ("well_diameter", "well_length", "well_width", "well_area")
)
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

WET_WELL = (*VOLUMES, *DRAWDOWN, *CYCLES, *STORAGE)
