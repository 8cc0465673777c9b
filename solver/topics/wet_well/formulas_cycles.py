"""How long a wet well takes to fill and to empty, and how often its pumps start."""

from collections.abc import Callable

from solver.algebra.expression import Expr, Known, Lookup, Number
from solver.algebra.formula import Formula, Slip
from solver.errors import NotSolvable
from solver.station.well import CycleRow, cycle_rows
from solver.topics.constants import (
    LITRES_PER_CUBIC_METRE,
    MINUTES_PER_HOUR,
    SECONDS_PER_MINUTE,
)
from solver.topics.tables import table_source

from .formulas_drawdown import minutes

__all__ = ["CYCLES"]

ARITHMETIC = "arithmetic: a volume over a flow is a time"
CYCLE = "MIL-HDBK-1005/9A 2.5.3.6: fill time and pump-down time make the cycle"
LEAST = (
    "US Army Corps of Engineers EI 11C201 (1997) chapter 7; MIL-HDBK-1005/9A 2.5.3.6: V = T q / 4"
)
TURNS = "common practice, no source: alternating pumps share the starts"
COOLING = "A larger motor heats up more at each start, so it needs longer to cool."
FLOATS = "common practice, no source: the pump-on level minus the pump-off level"

flow, inflow, drawdown_rate = map(Known, ("flow", "inflow", "drawdown_rate"))
per_depth, on_level, off_level = map(Known, ("volume_per_depth", "on_level", "off_level"))
working_depth, working_volume = map(Known, ("working_depth", "working_volume"))
fill_time, pump_down_time, cycle_time = map(Known, ("fill_time", "pump_down_time", "cycle_time"))
starts, pumps, least_cycle = map(Known, ("starts_per_hour", "alternating_pumps", "least_cycle"))


def read_table(figure: Callable[[CycleRow], float]) -> Lookup:
    """A figure of EI 11C201 Table 7-1 (minutes) for a motor size (hp | kW).

    Reading it raises NotSolvable for a motor above the table.
    """

    def read(size: float, units: str) -> float:
        *smaller, last = cycle_rows(units)
        if size > last.under:
            raise NotSolvable(
                f"the table ends at {last.under:g}, and this motor is {size:.4g}: "
                "ask the motor's manufacturer how often it may start"
            )
        return figure(next((row for row in smaller if size < row.under), last))

    rule = "EI 11C201 Table 7-1 for"
    return Lookup(Known("motor_size"), read, rule, ("hp", "kW"), ("min", "min"))


WORKING = (
    Formula(
        "working_depth",
        on_level - off_level,
        FLOATS,
        "Only the water between the two levels is pumped in each cycle.",
        slips=(
            Slip(
                "on_level_alone",
                on_level,
                "You used the pump-on level alone. Water below the pump-off level stays in the well, so "
                "subtract that level.",
            ),
        ),
    ),
    Formula(
        "working_volume",
        per_depth * working_depth,
        "geometry: volume per depth times depth",
        "Every foot (or meter) of depth holds the same volume.",
        back="Every foot (or meter) of depth holds the same volume, so divide.",
    ),
    *minutes(
        "fill_time",
        working_volume,
        inflow,
        CYCLE,
        "With the pump off, inflow alone fills the well.",
    ),
    *minutes(
        "pump_down_time",
        working_volume,
        drawdown_rate,
        CYCLE,
        "The well empties at the drawdown rate, because inflow keeps coming.",
    ),
    Formula(
        "cycle_time",
        fill_time + pump_down_time,
        CYCLE,
        "From one start to the next, the well fills once and is pumped down once.",
        slips=(
            Slip(
                "fill_time_alone",
                fill_time,
                "You used the fill time alone. The cycle includes the pump-down time too.",
            ),
            Slip(
                "pump_down_time_alone",
                pump_down_time,
                "You used the pump-down time alone. The cycle includes the fill time too.",
            ),
        ),
    ),
)


def most_starts(
    source: str, starts_allowed: Expr, why: str, unless: tuple[str, ...] = ()
) -> Formula:
    """The least cycle time that keeps a limit on starts."""
    return Formula("least_cycle", MINUTES_PER_HOUR / starts_allowed, source, why, unless=unless)


def least_volume(system: str, swept: Expr) -> Formula:
    """The least volume from what the pump moves in one least cycle."""
    return Formula(
        "least_volume",
        swept / Number(4),
        LEAST,
        "Starts come closest together when inflow is half of what the pump moves.",
        slips=(
            Slip(
                "not_quartered",
                swept,
                "You left out the 4. The minimum volume is cycle time times pump flow, divided by 4.",
            ),
            Slip(
                "halved",
                swept / Number(2),
                "You divided by 2. Half of the cycle fills the well, at half the pump flow: divide by 4.",
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
                "You divided the cycle time by 60. Do it the other way: divide 60 minutes by the cycle "
                "time.",
            ),
        ),
    ),
    Formula(
        "pump_starts",
        starts / pumps,
        TURNS,
        "Alternating pumps share the starts equally.",
    ),
    Formula(
        "motor_cycle",
        cycle_time * pumps,
        TURNS,
        "Each motor rests while the other pumps take their turns.",
    ),
    Formula("cycle_floor", read_table(lambda row: row.floor), table_source("cycles"), COOLING),
    Formula("cycle_ceiling", read_table(lambda row: row.ceiling), table_source("cycles"), COOLING),
    most_starts(
        ARITHMETIC,
        Known("most_starts"),
        "That many starts, evenly spaced, have to fit into 60 minutes.",
        unless=("alternating_pumps",),
    ),
    most_starts(
        "US Army Corps of Engineers EI 11C201 (1997) chapter 7: alternating halves the volume",
        Known("most_starts") * pumps,
        "Each pump may start that often, so with alternating pumps the station may start more often.",
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
        "This is how long the pump would take if nothing came in.",
    ),
    Formula(
        "shortest_cycle",
        Number(4) * Known("sweep_time"),
        LEAST,
        "When inflow is half of what the pump moves, filling and emptying each take twice as long.",
        slips=(
            Slip(
                "doubled_once",
                Number(2) * Known("sweep_time"),
                "You doubled the time once. Filling takes twice as long, and so does emptying: multiply "
                "by 4.",
            ),
        ),
    ),
)

CYCLES = (*WORKING, *STARTS)
