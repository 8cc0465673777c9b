"""What amps, speed and the three powers tell of a motor's load, judged."""

from ..draw import Draw
from ..family import Level, Scene
from ..limits import LOAD_BY_AMPS
from .against import against
from .judges_nameplate import judge_names
from .judges_slip import ABOVE, FULL, HEAVY, LIGHT, LIVE, judge_poles, judge_slip, slipping_by
from .legs import AMPS
from .scenes import noted
from .scenes_nameplate import off_volts, running, speeds
from .three_phase import LEGS_READ, READ, judged

__all__ = ["FROM_AMPS", "FROM_SPEED"]


def drawn_at(*shares: tuple[float, float]) -> Scene:
    """A motor off its nameplate volts, whose load by amps lies in one of some ranges."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        values = off_volts(draw, units)
        amps = values["full_load_amps"] * draw.between(*draw.pick(shares))
        amps *= values["rated_volts"] / values["line_volts"]
        scale = amps / values["line_amps"]
        return values | {name: noted(values[name] * scale) for name in ("line_amps", *AMPS)}

    return scene


FROM_AMPS = (
    judged(
        "names_of_powers",
        "NJ",
        "Which reading is kVA, kW or kvar",
        judge_names,
        running,
        Level(
            ("power_factor",),
            "{place} runs at a power factor of {power_factor}. {asks}",
        ),
        Level(
            ("line_volts", "line_amps", "power_factor"),
            f"{READ} The power factor is {{power_factor}}. {{asks}}",
            find=("apparent_power",),
        ),
    ),
    judged(
        "load_method",
        "NU",
        "What amps tell of the load, and what not",
        against(
            LOAD_BY_AMPS,
            LOAD_BY_AMPS.rule,
            (
                "too_low",
                "Too low to say: measure the kilowatts",
                f"A motor without load draws a third or more of its amps. {LIVE}",
            ),
            (
                "fair",
                "A fair estimate of the load",
                "In this range the amps follow the load well. Kilowatts are better still.",
            ),
            (
                "over",
                "Over full load: look at the service factor",
                "The winding runs hot. Find out why before it runs on.",
            ),
        ),
        drawn_at((0.3, 0.47), (0.55, 0.96), (1.05, 1.2)),
        Level(
            ("line_volts", "line_amps", "rated_volts", "full_load_amps"),
            f"{READ} The nameplate says {{rated_volts}} and {{full_load_amps}}. "
            "What do the amps, corrected for the volts, tell of the load?",
            find=("load_by_amps",),
        ),
        Level(
            ("line_volts", *AMPS, "rated_volts", "full_load_amps"),
            f"{LEGS_READ} The nameplate says {{rated_volts}} and {{full_load_amps}}. "
            "What do the average amps, corrected for the volts, tell of the load?",
            find=("load_by_amps",),
        ),
    ),
)

FROM_SPEED = (
    judged(
        "pole_count",
        "NZ",
        "How many poles",
        judge_poles,
        speeds,
        Level(
            ("frequency", "rated_speed"),
            "The nameplate of {place} says {rated_speed} and {frequency}. "
            "How many poles has the motor?",
        ),
        Level(
            ("frequency", "running_speed"),
            "{person} measures {running_speed} on the loaded motor of {place}. The supply has "
            "{frequency}. How many poles has the motor?",
        ),
    ),
    judged(
        "slip_tells",
        "NE",
        "What the slip tells",
        judge_slip(LIGHT, FULL, HEAVY),
        slipping_by("light", "full", "heavy"),
        Level(
            ("synchronous_speed", "rated_speed", "running_speed"),
            "The field of the motor of {place} turns at {synchronous_speed}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed}. "
            "What does the slip tell?",
        ),
        Level(
            ("frequency", "poles", "rated_speed", "running_speed"),
            "The motor of {place} has {poles} poles on {frequency}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed}. "
            "What does the slip tell?",
            find=("synchronous_speed",),
            scene=slipping_by("light", "heavy", "above"),
            judge=judge_slip(LIGHT, HEAVY, ABOVE),
        ),
    ),
)
