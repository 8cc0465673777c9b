"""Chemical feed: from a dose to pounds a day, to gallons of solution, to a pump's setting; and dilution."""

from solver.algebra.expression import Constant, Expr, Figure, Fraction, Known, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import (
    LITRES_PER_CUBIC_METRE,
    MINUTES_PER_HOUR,
    NONE,
    SECONDS_PER_MINUTE,
)
from solver.topics.conversions.factors import WATER_MASS

__all__ = ["CHEMICAL"]

POUNDS_FORMULA = "the pounds formula: Mountain Empire CC (VCCS), chemical dosages; NESC formulas"
ARITHMETIC = "arithmetic"
POUNDS = Constant(
    "pounds_constant",
    "pounds constant",
    us=Figure(8.34, "lb/day / MGD mg/L", also=(8.345,), exact=8.345404),
    si=NONE,
    source="arithmetic: a million gallons of water weigh 8.34 million pounds, and 1 mg/L is one in a million",
)
GRAMS = Constant(
    "grams_per_kilogram",
    "grams per kilogram",
    us=NONE,
    si=Figure(1000, "m3/day mg/L / kg/day", exact=1000.0),
    source="definition of the kilogram; 1 mg/L is 1 gram in a cubic meter",
)
HOURS_PER_DAY = Constant(
    "hours_per_day_constant",
    "hours per day",
    us=Figure(24, "h/day", exact=24.0),
    si=Figure(24, "h/day", exact=24.0),
    source="definition of the day",
)
MILLILITERS = Constant(
    "milliliters",
    "milliliters in a volume",
    us=Figure(3785, "mL / gal", also=(3785.4,), exact=3785.412),
    si=Figure(1000, "mL / L", exact=1000.0),
    source="NIST SP 811 App. B (a gallon is 3,785.412 mL)",
)

dose, daily_flow, chemical_feed = map(Known, ("dose", "daily_flow", "chemical_feed"))
strength = Fraction(Known("solution_strength"))
solution_feed, solution_weight = Known("solution_feed"), Known("solution_weight")
solution_flow, hour, minute = map(Known, ("solution_flow", "solution_hour", "solution_minute"))
stroke, speed = Fraction(Known("stroke_setting")), Fraction(Known("speed_setting"))

FEED_WHY = "A dose in mg/L is pounds of chemical in a million pounds of water."
DOSES = (
    Formula(
        "dose",
        Known("chlorine_demand") + Known("chlorine_residual"),
        "US EPA, operators' manuals: dose is demand plus residual",
        "The water uses up the demand first. What is left of the dose is the residual.",
        slips=(
            Slip(
                "subtracted",
                Known("chlorine_demand") - Known("chlorine_residual"),
                "You subtracted the residual. The dose has to cover both, so add them.",
            ),
        ),
    ),
    Formula(
        "chemical_feed",
        daily_flow * dose * POUNDS,
        POUNDS_FORMULA,
        FEED_WHY,
        slips=(
            Slip(
                "constant_left_out",
                daily_flow * dose,
                "You left out 8.34. A million gallons of water weigh 8.34 million pounds.",
            ),
        ),
        systems=("us",),
        back="The dose is pounds of chemical over millions of pounds of water.",
    ),
    Formula(
        "chemical_feed",
        daily_flow * dose / GRAMS,
        POUNDS_FORMULA,
        "One mg/L is one gram in a cubic meter. A kilogram has 1,000 grams.",
        systems=("si",),
        back="One mg/L is one gram in a cubic meter.",
    ),
)


def volume_of_solution(system: str, volume: Expr, as_water: Expr) -> Formula:
    """Weight over weight per volume, in the system's units."""
    return Formula(
        "solution_flow",
        volume,
        ARITHMETIC,
        "Weight over weight per volume is volume.",
        slips=(
            Slip(
                "as_water",
                as_water,
                "You took the solution as water. It is heavier, so use its own weight per volume.",
            ),
        ),
        systems=(system,),
        back="Volume times weight per volume is weight.",
    )


SOLUTIONS = (
    Formula(
        "solution_feed",
        chemical_feed / strength,
        "definition: strength by weight is pounds of chemical in 100 pounds of solution",
        "Only part of the solution is chemical, so it takes more solution than chemical.",
        slips=(
            Slip(
                "multiplied_by_strength",
                chemical_feed * strength,
                "You multiplied by the strength. It takes more solution than chemical, so divide.",
            ),
        ),
        back="Only part of the solution is chemical.",
    ),
    Formula(
        "solution_weight",
        Known("specific_gravity") * WATER_MASS,
        "definition of specific gravity",
        "Specific gravity compares the solution with water: 8.34 lb/gal, or 1,000 kg/m³.",
    ),
    volume_of_solution("us", solution_feed / solution_weight, solution_feed / WATER_MASS),
    volume_of_solution(
        "si",
        solution_feed / solution_weight * LITRES_PER_CUBIC_METRE,
        solution_feed / WATER_MASS * LITRES_PER_CUBIC_METRE,
    ),
    Formula(
        "solution_hour",
        solution_flow / HOURS_PER_DAY,
        ARITHMETIC,
        "The pump feeds around the clock, so a day's solution is spread over 24 hours.",
        back="A day has 24 hours.",
    ),
    Formula(
        "solution_minute",
        hour * MILLILITERS / MINUTES_PER_HOUR,
        MILLILITERS.source,
        "Turn the volume into milliliters, and the hour into 60 minutes.",
        slips=(
            Slip(
                "per_hour",
                hour * MILLILITERS,
                "You have milliliters per hour. Divide by 60 to get them per minute.",
            ),
        ),
        back="Turn milliliters back, and minutes into hours.",
    ),
    Formula(
        "solution_minute",
        Known("cylinder_volume") / Known("cylinder_time") * SECONDS_PER_MINUTE,
        "drawdown calibration, any feed pump's manual",
        "All that the pump feeds comes out of the cylinder, so the drop over the time is its output.",
        slips=(
            Slip(
                "seconds_as_minutes",
                Known("cylinder_volume") / Known("cylinder_time"),
                "You have milliliters per second. Multiply by 60 to get them per minute.",
            ),
        ),
        turns=("cylinder_volume", "cylinder_time"),
    ),
)
SETTINGS = (
    Formula(
        "solution_hour",
        Known("feeder_capacity") * stroke * speed,
        "feed pump manuals: output goes with stroke length and with strokes per minute",
        "Half the stroke gives half the output, and half the speed halves it again.",
        slips=(
            Slip(
                "stroke_left_out",
                Known("feeder_capacity") * speed,
                "You left out the stroke. Both settings cut the output.",
            ),
            Slip(
                "speed_left_out",
                Known("feeder_capacity") * stroke,
                "You left out the speed. Both settings cut the output.",
            ),
        ),
        back="What the settings leave is the output over the capacity.",
    ),
    Formula(
        "new_speed_setting",
        Known("speed_setting") * Known("wanted_minute") / minute,
        "feed pump manuals: output goes with strokes per minute",
        "Output goes up and down with the speed, so scale the setting by wanted over measured.",
        slips=(
            Slip(
                "upside_down",
                Known("speed_setting") * minute / Known("wanted_minute"),
                "You scaled by measured over wanted. To feed more the setting goes up, and to feed less it goes down.",
            ),
        ),
    ),
    Formula(
        "capacity_share",
        Percent(hour / Known("feeder_capacity")),
        ARITHMETIC,
        "Compare what has to be fed with the most the pump can feed.",
    ),
    Formula(
        "days_of_supply",
        Known("solution_on_hand") / solution_flow,
        ARITHMETIC,
        "What is in the tank, divided by what is used in a day, gives days.",
    ),
)
strong, mixed = Fraction(Known("strong_strength")), Fraction(Known("mixed_strength"))
DILUTION = (
    Formula(
        "strong_volume",
        Known("mixed_volume") * mixed / strong,
        "conservation of the chemical: C1 V1 = C2 V2",
        "The chemical in both is the same. Adding water only spreads it out.",
        slips=(
            Slip(
                "upside_down",
                Known("mixed_volume") * strong / mixed,
                "You put the strengths in upside down. It takes less of the strong solution than you mix.",
            ),
        ),
        back="The chemical in both is the same. Adding water only spreads it out.",
    ),
    Formula(
        "added_water",
        Known("mixed_volume") - Known("strong_volume"),
        ARITHMETIC,
        "What isn't strong solution is water.",
    ),
)

CHEMICAL = (*DOSES, *SOLUTIONS, *SETTINGS, *DILUTION)
