"""The wet well over a day, and when the power fails: run hours, and time until it overflows."""

from solver.engine.family import Level

from .kinds import PER_DEPTH, TURNS, numeric
from .scenes import failed_well

__all__ = ["HOURS", "STORAGE"]

HOURS = (
    numeric(
        "run_hours",
        "WU",
        "How many hours a day a pump has to run",
        "hours_per_day",
        Level(
            ("daily_inflow", "flow"),
            "Inflow at {station} is {daily_inflow}. Its only pump moves {flow}. "
            "How many hours a day does it have to run?",
        ),
        Level(
            ("daily_inflow", "drawdown_rate", "inflow"),
            "Inflow at {station} is {daily_inflow}. In a drawdown test of its only pump, the wet well "
            "loses {drawdown_rate} while {inflow} flows in. "
            "How many hours a day does the pump have to run?",
        ),
    ),
    numeric(
        "pump_hours",
        "WK",
        "Hours on each pump's meter",
        "pump_hours",
        Level(
            ("hours_per_day", "alternating_pumps"),
            f"{TURNS} Together they run {{hours_per_day}}. How many hours a day does each one run?",
        ),
        Level(
            ("daily_inflow", "flow", "alternating_pumps"),
            f"{TURNS} Each one moves {{flow}}, and inflow is {{daily_inflow}}. "
            "How many hours a day does each one have to run?",
        ),
    ),
    numeric(
        "daily_inflow",
        "WJ",
        "Daily inflow from the hour meters",
        "daily_inflow",
        Level(
            ("hours_per_day", "flow"),
            "The only pump at {station} moves {flow} and runs {hours_per_day}. "
            "What is the station's daily inflow, in {unit}?",
        ),
        Level(
            ("pump_hours", "alternating_pumps", "flow"),
            f"{TURNS} Each one moves {{flow}}, and each hour meter shows {{pump_hours}}. "
            "What is the station's daily inflow, in {unit}?",
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
            "The power fails at {station}. The wet well can still hold {storage_volume}, and "
            "inflow is {inflow}. How long until it overflows, in {unit}?",
        ),
        Level(
            ("well_diameter", "storage_depth", "inflow"),
            "The power fails at {station}. The round wet well is {well_diameter} across inside, and "
            "the overflow is {storage_depth} above the water. Inflow is {inflow}. "
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
            "the rim to the water and {depth_to_overflow} to the overflow. The sewer can hold "
            "{sewer_storage} more. Inflow is {inflow}. "
            "How long until it overflows, in {unit}?",
        ),
        scene=failed_well,
    ),
)
