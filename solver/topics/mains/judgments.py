"""How fast is too fast to close a valve, and whether a flume is submerged."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.topics.limits import CLOSING_RATIO
from solver.topics.zones import against
from solver.units.show import figures, with_unit

from .formulas_measuring import flume_row
from .stations import CHAPTER, CLOSING, SUBMERGED

__all__ = ["CLOSING_TOLD", "FLUME_TOLD"]

NEAR = 4.0  # percent
LIMITS = (
    "a Parshall flume flows free up to a submergence of 50% with a throat of 3 in (76 mm), 60% with 6 or 9 in "
    "(152 or 229 mm), and 70% from 1 ft to 8 ft (305 to 2,438 mm)"
)

judge_closing = against(
    CLOSING_RATIO,
    "the full surge comes when the valve closes before the wave is back",
    (
        "full",
        "The full surge: as if it closed at once",
        "The valve is closed before the wave is back to relieve it. Close it slower.",
    ),
    (
        "part",
        "Part of the full surge: less, the slower it closes",
        "The wave is back before the valve is closed, and takes some of the surge away.",
    ),
    (
        "little",
        "A small part: a tenth of the full surge or less",
        "The wave goes there and back ten times or more while the valve closes.",
    ),
)

CLOSING_TOLD = CHAPTER.judged(
    "closing_time",
    "YC",
    "Does the valve close too fast",
    judge_closing,
    CLOSING,
    Level(
        ("pipe_length", "wave_speed", "closing_time"),
        "The force main from {station} is {pipe_length} long. A pressure wave runs through it at "
        "{wave_speed}. Its valve closes evenly in {closing_time}. What surge does that make?",
        find=("wave_time", "closing_ratio"),
    ),
    Level(
        ("pipe_length", "wave_speed", "velocity", "closing_time"),
        "Sewage moves at {velocity} through the force main from {station}. The main is {pipe_length} "
        "long, and a pressure wave runs at {wave_speed}. A valve closes evenly in {closing_time}. What "
        "surge does that make?",
        find=("surge_head", "surge_pressure", "wave_time", "closing_ratio"),
    ),
    since=2,
)


def judge_flume(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Free or submerged, by the downstream head over the upstream one."""
    share = values["submergence"]
    most = flume_row(values["flume_throat"], units)["submergence"]
    if abs(share - most) < NEAR:
        return None
    said = f"the submergence is {with_unit(figures(share), '%')}"
    free = Option(
        "free",
        "Free flow: the upstream head alone tells the flow",
        f"{said.capitalize()}, under {most:g}%. The water downstream doesn't reach back into the throat.",
    )
    less = Option(
        "less",
        "Submerged: the real flow is less than the upstream head says",
        f"{said.capitalize()}, over {most:g}%. Backed-up water raises the head without any more flow.",
    )
    more = Option(
        "more",
        "Submerged: the real flow is more than the upstream head says",
        "Water that backs up holds the flow back. It can't add any.",
    )
    over = share > most
    right = less if over else free
    other = Option(
        (free if over else less).id,
        (free if over else less).text,
        f"{said.capitalize()}. The limit for this flume is {most:g}%.",
    )
    return Judgement(LIMITS, f"{said}; the limit is {most:g}%", right, (other, more))


FLUME_TOLD = CHAPTER.judged(
    "flume_submerged",
    "YB",
    "Is the flume submerged",
    judge_flume,
    SUBMERGED,
    Level(
        ("flume_throat", "submergence"),
        "A Parshall flume with a throat of {flume_throat} has a submergence of {submergence}. What can you "
        "say about its flow?",
    ),
    Level(
        ("flume_throat", "flume_head", "downstream_head"),
        "In a Parshall flume with a throat of {flume_throat}, the upstream head is {flume_head}. The "
        "downstream head is {downstream_head}, above the same floor. What can you say about its flow?",
        find=("submergence",),
    ),
    since=2,
)
