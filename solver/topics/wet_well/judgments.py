"""The wet well judged: starts, a pump off its rated flow and why, water that comes back.

A level that rises with the pumps off rises from the sewer, or back through a check valve.
"""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level, Option
from solver.topics.drawn.readings import noted, round_flow, shown
from solver.topics.limits import FLOW_SHARE, LEAK_SHARE, MOTOR_CYCLE, against
from solver.topics.speed.judgments_duty import WITHOUT_STATIC, changed_duty, judge_duty
from solver.units.show import figures

from .scenes import (
    CHAPTER,
    FALLS,
    LOSES,
    PER_DEPTH,
    checked_pump,
    resting_motor,
    rising_well,
    two_check_valves,
    worked,
)

__all__ = ["DRAWDOWN_CAUSE", "DRAWDOWN_CHECK", "LEAKING_VALVE", "RISE_SOURCE", "STARTS_LIMIT"]

TABLE = "EI 11C201 Table 7-1 gives the minimum time between motor starts."

TIMES = (
    ("Table 7-1, under 20 hp (15 kW)", "10 to 15 min"),
    ("Table 7-1, 20 to 100 hp (15 to 75 kW)", "15 to 20 min"),
    ("Table 7-1, over 100 hp (75 kW)", "20 to 30 min"),
)

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
    resting_motor,
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
    checked_pump,
    Level(
        ("flow", "rated_flow"),
        "A drawdown test of {place} shows {flow}. The pump is rated for {rated_flow} at this head. "
        f"{TENTH} What is your call?",
        find=("flow_share",),
    ),
    Level(
        ("drawdown_rate", "inflow", "rated_flow"),
        f"{LOSES} Inflow is {{inflow}}. The pump is rated for {{rated_flow}} at this head. {TENTH} "
        "What is your call?",
        find=("flow", "flow_share"),
    ),
    Level(
        ("volume_per_depth", "drawdown_read", "drawdown_time", "inflow", "rated_flow"),
        f"{PER_DEPTH} {FALLS} Inflow is {{inflow}}. The pump is rated for {{rated_flow}} at this head. "
        f"{TENTH} What is your call?",
        find=("flow", "flow_share"),
    ),
)


def drawn_down(draw: Draw, units: str) -> dict[str, float]:
    """A pump whose duty has changed, found by drawdown and by its gauges."""
    values = changed_duty(WITHOUT_STATIC)(draw, units)
    inflow = round_flow(values["flow"] * draw.between(0.15, 0.5))
    return values | {"inflow": inflow, "drawdown_rate": noted(values["flow"] - inflow)}


DRAWDOWN_CAUSE = CHAPTER.judged(
    "drawdown_cause",
    "WG",
    "What changed, from a drawdown test and two gauges",
    judge_duty(WITHOUT_STATIC),
    drawn_down,
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

OPENED = "With the pumps off and locked out"

# Percent of the rise that closing one valve takes away: from the first on its check valve leaks,
# up to the second it holds, and between the two nobody can say.
LEAKING, HOLDING = 10, 5

RISE_SOURCE = CHAPTER.judged(
    "rise_source",
    "WX",
    "Where the water comes from with the pumps off",
    against(
        LEAK_SHARE,
        LEAK_SHARE.rule,
        (
            "inflow",
            "Nearly all from the sewer: the check valves hold",
            "Closing the valves hardly changed the rise, so hardly any water was coming back.",
        ),
        (
            "both",
            "Part of it from the sewer, part of it back from the force main",
            "A check valve is leaking. Find which one, and plan to open it, locked out.",
        ),
        (
            "check_valve",
            "Most of it back from the force main, through a check valve",
            "The pump moves the same water over and over. Find which valve leaks, and repair it, "
            "locked out.",
        ),
    ),
    rising_well,
    Level(
        ("rise_rate", "inflow"),
        f"{OPENED}, the wet well of {{station}} takes in {{rise_rate}}. With the discharge valves "
        "closed too, it takes in {inflow}. Where does the water come from?",
        find=("leakage", "leak_share"),
    ),
    Level(
        ("volume_per_depth", "rise_read", "rise_time", "closed_rise_read", "closed_rise_time"),
        f"{PER_DEPTH} {OPENED}, the level takes {{rise_time}} to rise {{rise_read}}. With the "
        "discharge valves closed too, it takes {closed_rise_time} to rise {closed_rise_read}. "
        "Where does the water come from?",
        find=("rise_rate", "inflow", "leakage", "leak_share"),
    ),
)

VALVES = {
    (False, False): ("neither", "Neither one: the water comes from the sewer"),
    (True, False): ("pump_1", "Pump 1's check valve"),
    (False, True): ("pump_2", "Pump 2's check valve"),
    (True, True): ("both", "Both check valves"),
}

REPAIR = "Lock out the pump, close the valves and drain the pipe before anyone opens a check valve."


def judge_valves(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Whose closed valve slowed the rise; None where the change is too small to say."""
    whole, *closed = (values[f"rise_rate{which}"] for which in ("", "_1", "_2"))
    one, two = (
        worked({"rise_rate": whole, "inflow": rate}, "leak_share", units) for rate in closed
    )
    if HOLDING < one < LEAKING or HOLDING < two < LEAKING:
        return None
    rates = [shown("rise_rate", rate, units, figures) for rate in (whole, *closed)]
    found = (one >= LEAKING, two >= LEAKING)

    def says(leaks: tuple[bool, bool]) -> str:
        for pump, (here, there) in enumerate(zip(found, leaks, strict=True), 1):
            if here != there:
                slowed = "slowed the rise" if here else "hardly changed the rise"
                holds = "leaks" if here else "holds"
                return (
                    f"Closing Pump {pump}'s discharge valve {slowed}, so its check valve {holds}."
                )
        told = "so that is where water was coming back" if any(leaks) else "so no water came back"
        slowed = "slowed" if any(leaks) else "hardly changed"
        which = "Closing that valve" if sum(leaks) == 1 else "Closing either valve"
        return f"{which} {slowed} the rise, {told}. {REPAIR if any(leaks) else ''}".strip()

    options = {leaks: Option(*VALVES[leaks], says(leaks)) for leaks in VALVES}
    right = options.pop(found)
    return Judgement(
        "if closing one discharge valve slows the rise, that pump's check valve leaks",
        "both open {}; Pump 1 closed {}; Pump 2 closed {}".format(*rates),
        right,
        tuple(options.values()),
    )


LEAKING_VALVE = CHAPTER.judged(
    "leaking_valve",
    "WY",
    "Which check valve leaks",
    judge_valves,
    two_check_valves,
    Level(
        ("rise_rate", "rise_rate_1", "rise_rate_2"),
        f"{OPENED}, the wet well of {{station}} takes in {{rise_rate}}. With only Pump 1's "
        "discharge valve closed, it takes in {rise_rate_1}. With only Pump 2's closed, it takes in "
        "{rise_rate_2}. Which check valve leaks?",
    ),
    Level(
        ("volume_per_depth", "rise_read", "rise_time", "rise_time_1", "rise_time_2"),
        f"{PER_DEPTH} {OPENED}, the level takes {{rise_time}} to rise {{rise_read}}. With only "
        "Pump 1's discharge valve closed, the same rise takes {rise_time_1}. With only Pump 2's "
        "closed, it takes {rise_time_2}. Which check valve leaks?",
        find=("rise_rate", "rise_rate_1", "rise_rate_2"),
    ),
)
