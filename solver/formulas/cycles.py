"""How long a wet well takes to fill and to empty, and how often its pumps start."""

from ..errors import NotSolvable
from ..expression import Expr, Known, Lookup, Number
from ..formula import Formula, Slip
from ..tables import table_rows, table_source
from .well_units import LITRES_PER_CUBIC_METRE, MINUTES_PER_HOUR, SECONDS_PER_MINUTE, minutes

__all__ = ["CYCLES"]

ARITHMETIC = "arithmetic: a volume over a flow is a time"
CYCLE = "MIL-HDBK-1005/9A 2.5.3.6: fill time and pump-down time make the cycle"
LEAST = (
    "US Army Corps of Engineers EI 11C201 (1997) chapter 7; MIL-HDBK-1005/9A 2.5.3.6: V = T q / 4"
)
TURNS = "common practice, no source: pumps that take turns share the starts"
COOLING = "Larger motors heat more at each start, so they need longer to cool."
FLOATS = "common practice, no source: the pump-on level less the pump-off level"

flow, inflow, drawdown_rate = map(Known, ("flow", "inflow", "drawdown_rate"))
per_depth, on_level, off_level = map(Known, ("volume_per_depth", "on_level", "off_level"))
working_depth, working_volume = map(Known, ("working_depth", "working_volume"))
fill_time, pump_down_time, cycle_time = map(Known, ("fill_time", "pump_down_time", "cycle_time"))
starts, pumps, least_cycle = map(Known, ("starts_per_hour", "alternating_pumps", "least_cycle"))


def read_table(column: str) -> Lookup:
    """A figure of EI 11C201 Table 7-1 (minutes) for a motor size (hp | kW)."""

    def read(size: float, units: str) -> float:
        under = {"us": "under_hp", "si": "under_kw"}[units]
        *smaller, last = table_rows("cycles")
        if size > last[under]:
            raise NotSolvable(
                f"a motor of {size:.4g} is above {last[under]:g}, where the table ends: "
                "ask the motor's maker how often it may start"
            )
        return next((row for row in smaller if size < row[under]), last)[column]

    rule = "EI 11C201 Table 7-1 for"
    return Lookup(Known("motor_size"), read, rule, ("hp", "kW"), ("min", "min"))


WORKING = (
    Formula(
        "working_depth",
        on_level - off_level,
        FLOATS,
        "Only the water between the two levels is pumped in a cycle.",
        slips=(
            Slip(
                "on_level_alone",
                on_level,
                "This is the pump-on level alone. What is below the pump-off level stays.",
            ),
        ),
    ),
    Formula(
        "working_volume",
        per_depth * working_depth,
        "geometry: volume per depth times depth",
        "Each unit of depth holds the same volume.",
    ),
    *minutes(
        "fill_time",
        working_volume,
        inflow,
        CYCLE,
        "With the pump off, only the inflow fills the well.",
    ),
    *minutes(
        "pump_down_time",
        working_volume,
        drawdown_rate,
        CYCLE,
        "The well empties at the drawdown rate, as inflow keeps coming.",
    ),
    Formula(
        "cycle_time",
        fill_time + pump_down_time,
        CYCLE,
        "From one start to the next the well fills once and empties once.",
        slips=(
            Slip(
                "fill_time_alone",
                fill_time,
                "This is the fill time alone. The cycle has the pump-down time too.",
            ),
            Slip(
                "pump_down_time_alone",
                pump_down_time,
                "This is the pump-down time alone. The cycle has the fill time too.",
            ),
        ),
    ),
)


def most_starts(source: str, starts_allowed: Expr, why: str, **more) -> Formula:
    """The least cycle time that keeps a limit on starts."""
    return Formula("least_cycle", MINUTES_PER_HOUR / starts_allowed, source, why, **more)


def least_volume(system: str, swept: Expr) -> Formula:
    """The least volume from what the pump moves in one least cycle."""
    return Formula(
        "least_volume",
        swept / Number(4),
        LEAST,
        "Starts are most frequent when the inflow is half the pump rate.",
        slips=(
            Slip(
                "not_quartered",
                swept,
                "The 4 is left out. The least volume is cycle time times pump rate, over 4.",
            ),
            Slip(
                "halved",
                swept / Number(2),
                "This divides by 2. Half the cycle fills the well, at half the pump rate: divide by 4.",
            ),
        ),
        systems=(system,),
    )


STARTS = (
    Formula(
        "starts_per_hour",
        MINUTES_PER_HOUR / cycle_time,
        CYCLE,
        "Each cycle has one start, so count the cycles in 60 minutes.",
        slips=(
            Slip(
                "upside_down",
                cycle_time / MINUTES_PER_HOUR,
                "The ratio is upside down. The 60 minutes stand above the line.",
            ),
        ),
    ),
    Formula(
        "pump_starts",
        starts / pumps,
        TURNS,
        "Pumps that take turns share the starts equally.",
    ),
    Formula(
        "motor_cycle",
        cycle_time * pumps,
        TURNS,
        "A motor rests while the others take their turns.",
    ),
    Formula("cycle_floor", read_table("from"), table_source("cycles"), COOLING),
    Formula("cycle_ceiling", read_table("to"), table_source("cycles"), COOLING),
    most_starts(
        ARITHMETIC,
        Known("most_starts"),
        "So many starts, evenly spread, must fit into 60 minutes.",
        unless=("alternating_pumps",),
    ),
    most_starts(
        "US Army Corps of Engineers EI 11C201 (1997) chapter 7: alternating halves the volume",
        Known("most_starts") * pumps,
        "Each pump may start so often; taking turns, the station may start more often.",
    ),
    least_volume("us", least_cycle * flow),
    least_volume("si", least_cycle * SECONDS_PER_MINUTE * flow / LITRES_PER_CUBIC_METRE),
    Formula(
        "least_depth",
        Known("least_volume") / per_depth,
        "geometry: volume over volume per depth",
        "The floats must be this far apart to hold the volume between them.",
    ),
    *minutes(
        "sweep_time",
        working_volume,
        flow,
        LEAST,
        "So long would the pump need if nothing came in.",
    ),
    Formula(
        "shortest_cycle",
        Number(4) * Known("sweep_time"),
        LEAST,
        "At an inflow of half the pump rate, filling and emptying each take twice as long.",
        slips=(
            Slip(
                "doubled_once",
                Number(2) * Known("sweep_time"),
                "This is twice the time. Filling takes twice, and emptying takes twice as well.",
            ),
        ),
    ),
)

CYCLES = (*WORKING, *STARTS)
