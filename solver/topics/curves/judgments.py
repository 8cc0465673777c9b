"""Where a pump runs on its curve, and what its shutoff test tells."""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement
from solver.topics.limits import BEST_SHARE, SHUTOFF_SHARE
from solver.topics.readings import shown
from solver.topics.zones import against

from .read_off import WITHOUT_POWER, clear_peak, rows
from .stations import CHAPTER, MISPLACED, SHUTOFF_STORY

__all__ = ["OPERATING_REGION", "SHUTOFF_STORY_TOLD"]

judge_region = against(
    BEST_SHARE,
    f"{BEST_SHARE.rule} (ANSI/HI 9.6.3)",
    (
        "too_far_left",
        "Too far left: it moves too little for its size",
        "Water recirculates inside it. Expect heat, vibration, and worn seals and bearings.",
    ),
    (
        "in_the_region",
        "In the preferred region",
        "Efficiency is good there, and the side load on the shaft is small.",
    ),
    (
        "too_far_right",
        "Too far right: it moves too much for its size",
        "Out there NPSHr is high. Expect cavitation, and check the motor's amps.",
    ),
)


def judge_region_off_curve(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The same, with the best point to be read off the curve."""
    sheet, flow = clear_peak(values), values["flow"]
    if sheet is None or flow > sheet.flows[-1]:
        return None
    shares = [100 * flow / best for best in (sheet.best_flow, sheet.best_line)]
    found, as_read = (judge_region({"best_share": share}, units, draw) for share in shares)
    if found is None or as_read is None or found.right.id != as_read.right.id:
        return None
    moves = f"It moves {shown('flow', flow, units)}. Find its best efficiency point."
    asks = f"{moves} Where on its curve does the pump run?"
    return replace(as_read, asks=asks, table=rows(sheet, units, WITHOUT_POWER))


OPERATING_REGION = CHAPTER.judged(
    "operating_region",
    "QE",
    "Where on its curve a pump runs",
    judge_region,
    MISPLACED,
    Level(
        ("flow", "best_flow"),
        "The best efficiency point (BEP) of {place} is at {best_flow}. It moves {flow}. Where on its "
        "curve does it run?",
        find=("best_share",),
    ),
    Level(
        (),
        "This is the pump curve of {place}. {asks}",
        judge=judge_region_off_curve,
    ),
    since=2,
)

judge_shutoff = against(
    SHUTOFF_SHARE,
    f"{SHUTOFF_SHARE.rule} (ANSI/HI 14.6)",
    (
        "pump",
        "The pump: worn, plugged, trimmed, too slow or turning backward",
        "It makes too little head even with no flow, so the fault is in the pump or its speed.",
    ),
    (
        "sound",
        "The pump makes its head: look at the system",
        "The impeller and the speed are right. A low flow then comes from the piping or the valves.",
    ),
    (
        "not_this_pump",
        "More than the curve: a gauge reads high, or it isn't this impeller",
        "A pump can't beat its own curve. Check the gauges, the impeller and the speed.",
    ),
)

SHUTOFF_STORY_TOLD = CHAPTER.judged(
    "shutoff_story",
    "QJ",
    "What a shutoff test tells you",
    judge_shutoff,
    SHUTOFF_STORY,
    Level(
        ("tested_shutoff", "curve_shutoff"),
        "{person} tests {place} at shutoff for a few seconds. It makes {tested_shutoff} of head. Its curve says "
        "{curve_shutoff} for this impeller and speed. What does the test tell you?",
        find=("shutoff_share",),
    ),
    Level(
        ("shutoff_gauge", "closed_suction", "curve_shutoff"),
        "With the discharge valve of {place} closed for a few seconds, the gauges read {shutoff_gauge} "
        "and {closed_suction}. Both are at the same height. The curve says {curve_shutoff} at shutoff. "
        "What does the test tell you?",
        find=("tested_shutoff", "shutoff_share"),
    ),
    since=2,
)
