"""What a wet well and its sewer can still hold without power, and the hours its pumps must run."""

from solver.algebra.expression import Known
from solver.algebra.formula import Formula, Slip

from .units_of_wells import (
    LITRES_PER_CUBIC_METRE,
    MINUTES_PER_HOUR,
    SECONDS_PER_MINUTE,
    both,
    minutes,
)

__all__ = ["STORAGE"]

ARITHMETIC = "arithmetic: a volume over a flow is a time"
TURNS = "common practice, no source: alternating pumps share the hours"
TAPE = "common practice, no source: depths taken from the rim"

flow, inflow, per_depth = map(Known, ("flow", "inflow", "volume_per_depth"))
storage_volume, sewer_storage = map(Known, ("storage_volume", "sewer_storage"))
daily_inflow, hours, pumps = map(Known, ("daily_inflow", "hours_per_day", "alternating_pumps"))

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

STORAGE = (*HELD, *HOURS)
