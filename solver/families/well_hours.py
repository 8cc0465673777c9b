"""The wet well over a day, and when the power fails: run hours, and time until it overflows."""

from ..family import Level
from .scenes_wells import failed_well
from .well_family import PER_DEPTH, TURNS, numeric

__all__ = ["HOURS", "STORAGE"]

HOURS = (
    numeric(
        "run_hours",
        "WU",
        "The hours a pump must run in a day",
        "hours_per_day",
        Level(
            ("daily_inflow", "flow"),
            "The inflow of {station} is {daily_inflow}. Its one pump moves {flow}. "
            "How many hours a day must it run?",
        ),
        Level(
            ("daily_inflow", "drawdown_rate", "inflow"),
            "The inflow of {station} is {daily_inflow}. While its one pump is tested, the well loses "
            "{drawdown_rate} and {inflow} comes in. How many hours a day must the pump run?",
        ),
    ),
    numeric(
        "pump_hours",
        "WK",
        "The hours on each pump's meter",
        "pump_hours",
        Level(
            ("hours_per_day", "alternating_pumps"),
            f"{TURNS} Together they run {{hours_per_day}}. How many hours a day does each run?",
        ),
        Level(
            ("daily_inflow", "flow", "alternating_pumps"),
            f"{TURNS} Each moves {{flow}}, and the inflow is {{daily_inflow}}. "
            "How many hours a day must each run?",
        ),
    ),
    numeric(
        "daily_inflow",
        "WJ",
        "A day's volume from the hour meters",
        "daily_inflow",
        Level(
            ("hours_per_day", "flow"),
            "The one pump of {station} moves {flow} and runs {hours_per_day}. "
            "What is the station's inflow in a day, in {unit}?",
        ),
        Level(
            ("pump_hours", "alternating_pumps", "flow"),
            f"{TURNS} Each moves {{flow}}, and each hour meter shows {{pump_hours}}. "
            "What is the station's inflow in a day, in {unit}?",
        ),
    ),
)

STORAGE = (
    numeric(
        "storage_time",
        "WO",
        "Time until the well overflows",
        "storage_time",
        Level(
            ("storage_volume", "inflow"),
            "The power fails at {station}. The wet well can still hold {storage_volume}, and the "
            "inflow is {inflow}. How long until it overflows, in {unit}?",
        ),
        Level(
            ("well_diameter", "storage_depth", "inflow"),
            "The power fails at {station}. Its round wet well is {well_diameter} across, and the "
            "overflow is {storage_depth} above the water. The inflow is {inflow}. "
            "How long until it overflows, in {unit}?",
        ),
        Level(
            (
                "volume_per_depth",
                "depth_to_water",
                "depth_to_overflow",
                "sewer_storage",
                "inflow",
            ),
            f"The power fails. {PER_DEPTH} Measured from outside, it is {{depth_to_water}} from "
            "the rim to the water and {depth_to_overflow} to the overflow. The sewer holds "
            "{sewer_storage} more. The inflow is {inflow}. "
            "How long until it overflows, in {unit}?",
        ),
        scene=failed_well,
    ),
)
