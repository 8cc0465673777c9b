"""The wet well judged: too many starts, and a pump off its rated flow and why."""

from ..draw import Draw
from ..family import Level
from ..limits import FLOW_SHARE, MOTOR_CYCLE
from .against import against
from .duty import WITHOUT_STATIC, changed_duty, judge_duty
from .scenes import noted, round_flow
from .scenes_wells import checked_pump, resting_motor
from .well_family import PER_DEPTH, judged

__all__ = ["DRAWDOWN_CAUSE", "DRAWDOWN_CHECK", "STARTS_LIMIT"]

TABLE = (
    "EI 11C201 Table 7-1 sets the least time between starts. For motors under 20 hp (15 kW) it is "
    "10 to 15 minutes. Up to 100 hp (75 kW) it is 15 to 20, and above that 20 to 30."
)
TENTH = "Common practice looks for the cause beyond 10% either way."

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


def drawn_down(draw: Draw, units: str) -> dict[str, float]:
    """A pump whose duty has changed, found by drawdown and by its gauges."""
    values = changed_duty(WITHOUT_STATIC)(draw, units)
    inflow = round_flow(values["flow"] * draw.between(0.15, 0.5))
    return values | {"inflow": inflow, "drawdown_rate": noted(values["flow"] - inflow)}


DRAWDOWN_CAUSE = judged(
    "drawdown_cause",
    "WG",
    "Drawdown and gauges: worn, held back, or broken open",
    judge_duty(WITHOUT_STATIC),
    drawn_down,
    Level(
        ("flow", "head", "rated_flow", "rated_head"),
        "A drawdown test of {place} gives {flow}, and its gauges show {head} of head. When it was "
        "new it moved {rated_flow} against {rated_head}, at the same levels. What has changed?",
        find=("flow_share", "head_share"),
    ),
    Level(
        ("drawdown_rate", "inflow", "head", "rated_flow", "rated_head"),
        "While {place} runs, the wet well loses {drawdown_rate}, by how fast its level falls. The "
        "inflow is {inflow}, and the gauges show {head} of head. When it was new the pump moved "
        "{rated_flow} against {rated_head}, at the same levels. What has changed?",
        find=("flow", "flow_share", "head_share"),
    ),
)
