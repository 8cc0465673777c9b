"""The wet well judged: starts, and a pump off its rated flow and why. `judgments_rise` has rising levels."""

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.errors import NotSolvable
from solver.station.faults import put
from solver.station.need import Need
from solver.station.scene import Readings
from solver.station.station import Station
from solver.station.well import cycle_rows
from solver.topics.limits import FLOW_SHARE, MOTOR_CYCLE
from solver.topics.speed.judgments_duty import (
    SOME_FRICTION,
    WITHOUT_STATIC,
    changed_duty,
    judge_duty,
)
from solver.topics.zones import against

from .stations import CHAPTER, FALLS, LOSES, PER_DEPTH, well_with

__all__ = ["DRAWDOWN_CAUSE", "DRAWDOWN_CHECK", "STARTS_LIMIT"]

TABLE = "EI 11C201 Table 7-1 gives the minimum time between motor starts."

TIMES = (
    ("Table 7-1, under 20 hp (15 kW)", "10 to 15 min"),
    ("Table 7-1, 20 to 100 hp (15 to 75 kW)", "15 to 20 min"),
    ("Table 7-1, 100 to 250 hp (75 to 185 kW)", "20 to 30 min"),
    ("Table 7-1, over 250 hp (185 kW)", "as its manufacturer says"),
)


def starting(station: Station, draw: Draw) -> Station:
    """An on float so low that the motor starts too often, often enough to ask, or not too often.

    Motors on the line between two rows of the table are left out.
    """
    if station.motor.size in (row.under for row in cycle_rows(station.system.name)):
        raise NotSolvable("its motor is on the line between two rows of the table")
    floor, ceiling = station.reading("cycle_floor"), station.reading("cycle_ceiling")
    zones = (
        (0.6 * floor, 0.95 * floor),
        (1.03 * floor, 0.97 * ceiling),
        (1.03 * ceiling, 1.6 * ceiling),
    )
    busy = well_with(station, station.rated[0] * draw.between(0.3, 0.7))
    return put(busy, "short_cycling", "motor_cycle", draw.between(*draw.pick(zones)))


TENTH = "More than 10% off either way is worth looking into."

STARTS_LIMIT = CHAPTER.judged(
    "starts_limit",
    "WE",
    "Does the motor start too often",
    against(
        MOTOR_CYCLE,
        MOTOR_CYCLE.rule,
        (
            "too_often",
            "Too often: the time is below the table's lower figure",
            "Each start heats the windings. Set the floats farther apart, or ask for a design check.",
        ),
        (
            "maker_decides",
            "Depends on the motor: the time is between the two figures",
            "Go by the motor manufacturer's limit on starts. It comes before any table.",
        ),
        (
            "seldom_enough",
            "Not too often: the time is above the table's upper figure",
            "The motor has time to cool between starts. Still keep to the manufacturer's own limit.",
        ),
    ),
    Readings(Need(well=True, pumps=2), starting),
    Level(
        ("motor_size", "motor_cycle"),
        f"The {{motor_size}} motor of {{place}} starts every {{motor_cycle}}. "
        f"{TABLE} Does it start too often?",
        find=("cycle_floor", "cycle_ceiling"),
        table=TIMES,
    ),
    Level(
        ("motor_size", "cycle_time", "alternating_pumps"),
        "At {station}, a pump starts every {cycle_time}. Its {alternating_pumps} pumps "
        f"alternate, each with a motor of {{motor_size}}. {TABLE} Does each motor start too often?",
        find=("cycle_floor", "cycle_ceiling", "motor_cycle"),
        table=TIMES,
    ),
    Level(
        ("motor_size", "working_volume", "flow", "inflow", "alternating_pumps"),
        "The wet well of {station} holds {working_volume} between floats, and inflow is {inflow}. Its "
        "{alternating_pumps} pumps alternate. Each moves {flow} and has a motor of {motor_size}. "
        f"{TABLE} Does each motor start too often?",
        find=("cycle_floor", "cycle_ceiling", "motor_cycle"),
        table=TIMES,
    ),
)


def tested(station: Station, draw: Draw, share: float) -> Station:
    """The inflow of a drawdown test, a part of what the pump then moves."""
    return well_with(station, station.rated[0] * share * draw.between(0.15, 0.5))


def off_its_rating(station: Station, draw: Draw) -> Station:
    """A pump that moves less than its rated flow, near it, or more."""
    wanted = draw.between(*draw.pick(((55, 86), (92, 108), (113, 130))))
    fault = "broken_main" if wanted > 100 else draw.pick(("worn_rings", "throttled_valve"))
    return put(tested(station, draw, wanted / 100), fault, "flow_share", wanted)


DRAWDOWN_CHECK = CHAPTER.judged(
    "drawdown_check",
    "WB",
    "A drawdown test compared with the rated flow",
    against(
        FLOW_SHARE,
        FLOW_SHARE.rule,
        (
            "low",
            "Low: look for wear, a clog, a partly closed valve or a leak back",
            "Read the gauges too. They tell you whether the pump is worn or the main is blocked.",
        ),
        (
            "as_rated",
            "Good: within 10% of the rated flow",
            "Write it down with the date and the gauge readings, so you can see a later change.",
        ),
        (
            "high",
            "High: repeat the test, then look for a broken main",
            "A pump moves more than its rated flow only against less head. Measure again first.",
        ),
    ),
    Readings(Need(well=True), off_its_rating),
    Level(
        ("flow", "rated_flow"),
        "A drawdown test of {place} shows {flow}. Its rated flow is {rated_flow}. "
        f"{TENTH} What is your call?",
        find=("flow_share",),
    ),
    Level(
        ("drawdown_rate", "inflow", "rated_flow"),
        f"{LOSES} Inflow is {{inflow}}. The pump's rated flow is {{rated_flow}}. {TENTH} "
        "What is your call?",
        find=("flow", "flow_share"),
    ),
    Level(
        ("volume_per_depth", "drawdown_read", "drawdown_time", "inflow", "rated_flow"),
        f"{PER_DEPTH} {FALLS} Inflow is {{inflow}}. The pump's rated flow is {{rated_flow}}. "
        f"{TENTH} What is your call?",
        find=("flow", "flow_share"),
    ),
)


def drawn_down(station: Station, draw: Draw) -> Station:
    """A pump whose duty has changed, found by drawdown and by its gauges."""
    return changed_duty(WITHOUT_STATIC)(tested(station, draw, 0.6), draw)


DRAWDOWN_CAUSE = CHAPTER.judged(
    "drawdown_cause",
    "WG",
    "What changed, from a drawdown test and two gauges",
    judge_duty(WITHOUT_STATIC),
    Readings(SOME_FRICTION, drawn_down),
    Level(
        ("flow", "head", "rated_flow", "rated_head"),
        "A drawdown test of {place} shows {flow}, and its gauges show {head} of head. When new, it "
        "moved {rated_flow} at {rated_head}, with the same water levels. What changed?",
        find=("flow_share", "head_share"),
    ),
    Level(
        ("drawdown_rate", "inflow", "head", "rated_flow", "rated_head"),
        f"{LOSES} Inflow is {{inflow}}, and the gauges show {{head}} of head. When new, the pump moved "
        "{rated_flow} at {rated_head}, with the same water levels. What changed?",
        find=("flow", "flow_share", "head_share"),
    ),
)
