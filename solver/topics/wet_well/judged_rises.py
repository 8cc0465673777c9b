"""The level rises with the pumps off: from the sewer, or back through which check valve."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level, Option
from solver.topics.limits import LEAK_SHARE, against
from solver.units.show import figures, with_unit

from .kinds import PER_DEPTH, judged
from .scenes import rising_well, two_check_valves

__all__ = ["LEAKING_VALVE", "RISE_SOURCE"]

OPENED = "With the pumps off and locked out"
LESS = 0.9  # a rise slower than this with one valve closed: water came back through its check valve
CLEAR = 0.95  # above this it made no difference; between the two nobody can say

RISE_SOURCE = judged(
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
        f"both open {shown[0]}; Pump 1 closed {shown[1]}; Pump 2 closed {shown[2]}",
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
