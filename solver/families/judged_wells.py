"""The wet well judged: too many starts, a pump off its rated flow, and where a rise comes from."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judgement, Level, Option
from ..limits import FLOW_SHARE, LEAK_SHARE, MOTOR_CYCLE
from ..show import figures, with_unit
from .against import against
from .scenes_wells import checked_pump, resting_motor, rising_well, two_check_valves
from .well_family import PER_DEPTH, judged

__all__ = ["DRAWDOWN_CHECK", "LEAKING_VALVE", "RISE_SOURCE", "STARTS_LIMIT"]

TABLE = (
    "EI 11C201 Table 7-1 asks for 10 to 15 minutes between starts of a motor under 20 hp (15 kW), "
    "15 to 20 up to 100 hp (75 kW), 20 to 30 above."
)
TENTH = "Common practice looks for the cause beyond 10% either way."
OPENED = "With the pumps off and locked out"
LESS = 0.9  # a rise slower than this with one valve closed: water came back through its check valve
CLEAR = 0.95  # above this it made no difference; between the two nobody can say

STARTS_LIMIT = judged(
    "starts_limit",
    "WE",
    "Does the motor start too often",
    against(
        MOTOR_CYCLE,
        MOTOR_CYCLE.rule,
        (
            "too_often",
            "Too often: the time is under the table's lower figure",
            "Each start heats the windings. Set the floats further apart, or ask for a design check.",
        ),
        (
            "maker_decides",
            "It depends on the motor: the time is between the two figures",
            "Keep to the maker's limit on starts, which comes before any table.",
        ),
        (
            "seldom_enough",
            "Not too often: the time is over the table's upper figure",
            "The motor cools between starts. Still keep to the maker's own limit.",
        ),
    ),
    resting_motor,
    Level(
        ("motor_size", "motor_cycle"),
        f"The {{motor_size}} motor of {{place}} has {{motor_cycle}} from one start to its next. "
        f"{TABLE} Does it start too often?",
        find=("cycle_floor", "cycle_ceiling"),
    ),
    Level(
        ("motor_size", "cycle_time", "alternating_pumps"),
        "At {station} it is {cycle_time} from one start to the next. Its {alternating_pumps} "
        f"pumps take turns, each with a motor of {{motor_size}}. {TABLE} "
        "Does each motor start too often?",
        find=("cycle_floor", "cycle_ceiling", "motor_cycle"),
    ),
    Level(
        ("motor_size", "working_volume", "flow", "inflow", "alternating_pumps"),
        "The wet well of {station} holds {working_volume} between floats, and the inflow is "
        "{inflow}. Its {alternating_pumps} pumps take turns. Each moves {flow} and has a motor "
        f"of {{motor_size}}. {TABLE} Does each motor start too often?",
        find=("cycle_floor", "cycle_ceiling", "motor_cycle"),
    ),
)

DRAWDOWN_CHECK = judged(
    "drawdown_check",
    "WB",
    "A drawdown test against the rated flow",
    against(
        FLOW_SHARE,
        FLOW_SHARE.rule,
        (
            "low",
            "Low: look for wear, a clog, a half-closed valve or a leak back",
            "Take the gauges too: they tell a tired pump from a blocked main.",
        ),
        (
            "as_rated",
            "As it should be: within 10%",
            "Note it with the date and the gauges, so that a later change shows.",
        ),
        (
            "high",
            "High: check the test, then look for a broken main",
            "A pump moves more than rated only against less head. Measure again first.",
        ),
    ),
    checked_pump,
    Level(
        ("flow", "rated_flow"),
        "A drawdown test of {place} gives {flow}. It is rated for {rated_flow} at this head. "
        f"{TENTH} What do you say of it?",
        find=("flow_share",),
    ),
    Level(
        ("drawdown_rate", "inflow", "rated_flow"),
        "While {place} runs, the wet well loses {drawdown_rate}, by how fast its level falls. The "
        f"inflow is {{inflow}}. The pump is rated for {{rated_flow}} at this head. {TENTH} "
        "What do you say of it?",
        find=("flow", "flow_share"),
    ),
    Level(
        ("volume_per_depth", "drawdown_read", "drawdown_time", "inflow", "rated_flow"),
        f"{PER_DEPTH} While one pump runs, its level takes {{drawdown_time}} to fall "
        "{drawdown_read}. The inflow is {inflow}. The pump is rated for {rated_flow} at this "
        f"head. {TENTH} What do you say of it?",
        find=("flow", "flow_share"),
    ),
)

RISE_SOURCE = judged(
    "rise_source",
    "WX",
    "Pumps off, and the level rises: from where",
    against(
        LEAK_SHARE,
        LEAK_SHARE.rule,
        (
            "inflow",
            "Nearly all from the sewer: the check valves hold",
            "Closing the valves hardly changed the rise, so hardly any water came back.",
        ),
        (
            "both",
            "From the sewer, and part of it from the force main",
            "A check valve passes. Find which one, and plan to open it, locked out.",
        ),
        (
            "check_valve",
            "Most of it from the force main, back through a check valve",
            "The pump moves this water again and again. Find which valve, and repair it, locked out.",
        ),
    ),
    rising_well,
    Level(
        ("rise_rate", "inflow"),
        f"{OPENED}, the wet well of {{station}} takes in {{rise_rate}}. With the discharge "
        "valves closed it takes in {inflow}. Where does the water come from?",
        find=("leakage", "leak_share"),
    ),
    Level(
        ("volume_per_depth", "rise_read", "rise_time", "closed_rise_read", "closed_rise_time"),
        f"{PER_DEPTH} {OPENED}, its level takes {{rise_time}} to rise {{rise_read}}. With the "
        "discharge valves closed it takes {closed_rise_time} to rise {closed_rise_read}. "
        "Where does the water come from?",
        find=("rise_rate", "inflow", "leakage", "leak_share"),
    ),
)


VALVES = {
    (False, False): ("neither", "Neither: the sewer fills the well"),
    (True, False): ("pump_1", "The check valve of pump 1"),
    (False, True): ("pump_2", "The check valve of pump 2"),
    (True, True): ("both", "Both check valves"),
}
REPAIR = "Lock out, close and drain before anyone opens a check valve."


def judge_valves(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Whose closed valve slowed the rise; None where the change is too small to say."""
    whole = values["rise_rate"]
    shares = [values[f"rise_rate_{pump}"] / whole for pump in (1, 2)]
    if any(LESS < share < CLEAR for share in shares):
        return None
    unit = "gpm" if units == "us" else "L/s"
    shown = [with_unit(figures(values[f"rise_rate{which}"]), unit) for which in ("", "_1", "_2")]
    found = tuple(share <= LESS for share in shares)

    def says(leaks: tuple[bool, bool]) -> str:
        for pump, (here, there) in enumerate(zip(found, leaks, strict=True), 1):
            if here != there:
                slowed = "slowed the rise" if here else "hardly changed the rise"
                holds = "leaks" if here else "holds"
                return f"Closing the valve of pump {pump} {slowed}, so its check valve {holds}."
        told = "so the water came back there" if any(leaks) else "so no water came back"
        slowed = "slowed" if any(leaks) else "hardly changed"
        which = "Closing that valve" if sum(leaks) == 1 else "Closing either valve"
        return f"{which} {slowed} the rise, {told}. {REPAIR if any(leaks) else ''}".strip()

    options = {leaks: Option(*VALVES[leaks], says(leaks)) for leaks in VALVES}
    right = options.pop(found)
    return Judgement(
        "a rise that slows when one discharge valve is closed came back through its check valve",
        f"both open {shown[0]}; pump 1 closed {shown[1]}; pump 2 closed {shown[2]}",
        right,
        tuple(options.values()),
    )


LEAKING_VALVE = judged(
    "leaking_valve",
    "WY",
    "Which check valve leaks",
    judge_valves,
    two_check_valves,
    Level(
        ("rise_rate", "rise_rate_1", "rise_rate_2"),
        f"{OPENED}, the wet well of {{station}} takes in {{rise_rate}}. With the discharge valve "
        "of pump 1 closed it takes in {rise_rate_1}; with that of pump 2 closed instead, "
        "{rise_rate_2}. Which check valve leaks?",
    ),
    Level(
        ("volume_per_depth", "rise_read", "rise_time", "rise_time_1", "rise_time_2"),
        f"{PER_DEPTH} {OPENED}, its level takes {{rise_time}} to rise {{rise_read}}. With the "
        "discharge valve of pump 1 closed the same rise takes {rise_time_1}; with that of pump 2 "
        "closed instead, {rise_time_2}. Which check valve leaks?",
        find=("rise_rate", "rise_rate_1", "rise_rate_2"),
    ),
)
