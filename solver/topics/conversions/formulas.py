"""The conversions of pump work: pressure, volume, weight, power and percent.

`CONVERSIONS` has every formula of the chapter; those of flows are in `formulas_flows.py`.
"""

from solver.algebra.expression import Known, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import (
    GALLONS_PER_CUBIC_FOOT,
    HEAD_PER_PRESSURE,
    KW_PER_HP,
    LITRES_PER_CUBIC_METRE,
    PER_PRESSURE,
    WATER_WEIGHT,
)

from .factors import (
    FOOT_POUNDS,
    KPA_PER_BAR,
    KPA_PER_PSI,
    WATER_MASS,
    WATTS,
    WEIGHT_OF_FLOW,
    factor,
)
from .formulas_flows import FLOWS

__all__ = ["CONVERSIONS"]

CARRIED = "Know the weight before a floor, a truck or a hoist has to carry it."

flow = Known("flow")
gauge_pressure = Known("gauge_pressure")
water_volume, tank_volume, volume_converted = map(
    Known, ("water_volume", "tank_volume", "volume_converted")
)
horsepower_rating, shaft_work = map(Known, ("horsepower_rating", "shaft_work"))

PRESSURES = (
    Formula(
        "water_height",
        gauge_pressure * HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "A gauge feels the height of water above it, however wide the tank is.",
        back=PER_PRESSURE,
    ),
    Formula(
        "water_height",
        Known("tank_depth") - Known("tap_height"),
        "common practice, no source: a gauge feels only the water above it",
        "The gauge feels only the water above it, not the water below.",
        slips=(
            Slip(
                "all_the_depth",
                Known("tank_depth"),
                "You used the whole depth. Only the water above the gauge counts.",
            ),
        ),
        turns=("tank_depth",),
    ),
    factor(
        "second_scale",
        gauge_pressure * KPA_PER_PSI,
        "us",
        KPA_PER_PSI,
        "One psi is nearly 7 kilopascals.",
        Slip(
            "feet_for_kilopascals",
            gauge_pressure * HEAD_PER_PRESSURE,
            "You used 2.31, which gives feet of water. One psi is 6.895 kilopascals.",
        ),
        back="One psi is nearly 7 kilopascals, so the number in psi is smaller.",
    ),
    factor(
        "second_scale",
        gauge_pressure / KPA_PER_BAR,
        "si",
        KPA_PER_BAR,
        "A bar is 100 kilopascals.",
        Slip(
            "thousand_for_hundred",
            gauge_pressure / Number(1000),
            "You divided by 1,000. A bar is 100 kilopascals.",
        ),
        back="A bar is 100 kilopascals, so the number in kilopascals is bigger.",
    ),
)

VOLUMES = (
    factor(
        "water_volume",
        volume_converted * GALLONS_PER_CUBIC_FOOT,
        "us",
        GALLONS_PER_CUBIC_FOOT,
        "A cubic foot holds about 7½ gallons.",
        Slip(
            "weight_for_volume",
            volume_converted * WATER_MASS,
            "You used 8.34, which is pounds per gallon. A cubic foot holds 7.48 gallons.",
        ),
    ),
    factor(
        "water_volume",
        volume_converted / LITRES_PER_CUBIC_METRE,
        "si",
        LITRES_PER_CUBIC_METRE,
        "A cubic meter is 1,000 liters.",
        Slip(
            "hundred_for_thousand",
            volume_converted / Number(100),
            "You divided by 100. A cubic meter is 1,000 liters.",
        ),
    ),
    factor(
        "water_weight",
        water_volume * WATER_MASS,
        "us",
        WATER_MASS,
        f"A gallon of water weighs 8.34 pounds. {CARRIED}",
        Slip(
            "volume_for_weight",
            water_volume * GALLONS_PER_CUBIC_FOOT,
            "You used 7.48, which is gallons per cubic foot. A gallon weighs 8.34 pounds.",
        ),
        back="Each gallon of water weighs 8.34 pounds.",
    ),
    factor(
        "water_weight",
        water_volume * WATER_MASS,
        "si",
        WATER_MASS,
        f"A cubic meter of water is 1,000 kilograms. {CARRIED}",
        Slip(
            "force_for_mass",
            water_volume * WATER_WEIGHT,
            "You used 9.81, which gives kilonewtons. A cubic meter of water is 1,000 kilograms.",
        ),
        back="Each cubic meter of water is 1,000 kilograms.",
    ),
    Formula(
        "water_volume",
        tank_volume - Known("empty_volume"),
        "common practice, no source",
        "The part that isn't empty is full.",
        turns=("tank_volume",),
    ),
    Formula(
        "percent_full",
        Percent(water_volume / tank_volume),
        "common practice, no source: percent is part divided by whole, times 100",
        "Percent is the part divided by the whole, times 100.",
        slips=(
            Slip(
                "empty_share",
                Percent((tank_volume - water_volume) / tank_volume),
                "You found how empty it is. The question asks how full it is.",
            ),
        ),
        back="The part is that percent of the whole.",
    ),
)

POWERS = (
    Formula(
        "kilowatt_rating",
        horsepower_rating * KW_PER_HP,
        KW_PER_HP.source,
        "One horsepower is about three-quarters of a kilowatt.",
        slips=(
            Slip(
                "converted_twice",
                horsepower_rating * KW_PER_HP * KW_PER_HP,
                "You used the 0.746 twice. Use it once.",
            ),
        ),
        back="A horsepower is less than a kilowatt, so it takes more of them.",
    ),
    factor(
        "horsepower_rating",
        shaft_work / FOOT_POUNDS,
        "us",
        FOOT_POUNDS,
        "One horsepower lifts 33,000 pounds one foot in one minute.",
        Slip(
            "by_the_second",
            shaft_work / Number(550),
            "You used 550, which is for foot-pounds per second. Per minute it is 33,000.",
        ),
    ),
    factor(
        "kilowatt_rating",
        shaft_work / WATTS,
        "si",
        WATTS,
        "A kilowatt is 1,000 watts.",
    ),
    Formula(
        "weight_flow",
        flow * WEIGHT_OF_FLOW,
        WEIGHT_OF_FLOW.source,
        "Power lifts weight, so turn the flow into weight first.",
    ),
    Formula(
        "lifting_work",
        Known("weight_flow") * Known("head"),
        "the definition of work: weight times the height it is lifted",
        "Work is the weight times the height you lift it.",
        slips=(
            Slip(
                "added",
                Known("weight_flow") + Known("head"),
                "You added weight and height. Work is one times the other.",
            ),
        ),
    ),
)

CONVERSIONS = (*FLOWS, *PRESSURES, *VOLUMES, *POWERS)
