"""What amps, speed and the three powers tell of a motor's load, judged."""

from solver.engine.draw import Draw
from solver.engine.family import Level, Scene
from solver.topics.drawn.legs import AMPS
from solver.topics.drawn.readings import noted
from solver.topics.limits import LOAD_BY_AMPS, against

from .judges import judge_names
from .judges_slip import ABOVE, FULL, HEAVY, LIGHT, LIVE, judge_poles, judge_slip, slipping_by
from .problems_three_phase import LEGS_READ, READ, judged
from .scenes import off_volts, running, speeds

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
            "{place} runs at a power factor (PF) of {power_factor}. {asks}",
        ),
        Level(
            ("line_volts", "line_amps", "power_factor"),
            f"{READ} The power factor (PF) is {{power_factor}}. {{asks}}",
            find=("apparent_power",),
        ),
    ),
    judged(
        "load_method",
        "NU",
        "What amps can tell you about the load",
        against(
            LOAD_BY_AMPS,
            LOAD_BY_AMPS.rule,
            (
                "too_low",
                "Too low to tell: measure the kilowatts",
                f"Even with no load, a motor draws a third or more of its full-load amps. {LIVE}",
            ),
            (
                "fair",
                "A fair estimate of the load",
                "In this range the amps follow the load well. Kilowatts are better still.",
            ),
            (
                "over",
                "Over full load: check the service factor",
                "The winding is running hot. Find out why before you let it keep running.",
            ),
        ),
        drawn_at((0.3, 0.47), (0.55, 0.96), (1.05, 1.2)),
        Level(
            ("line_volts", "line_amps", "rated_volts", "full_load_amps"),
            f"{READ} The nameplate shows {{rated_volts}} and full-load amps (FLA) of "
            "{full_load_amps}. Corrected for the volts, what do the amps tell you about the load?",
            find=("load_by_amps",),
        ),
        Level(
            ("line_volts", *AMPS, "rated_volts", "full_load_amps"),
            f"{LEGS_READ} The nameplate shows {{rated_volts}} and full-load amps (FLA) of "
            "{full_load_amps}. Corrected for the volts, what do the average amps tell you about "
            "the load?",
            find=("load_by_amps",),
        ),
    ),
)

FROM_SPEED = (
    judged(
        "pole_count",
        "NZ",
        "How many poles the motor has",
        judge_poles,
        speeds,
        Level(
            ("frequency", "rated_speed"),
            "The nameplate of {place} says {rated_speed} and {frequency}. "
            "How many poles does the motor have?",
        ),
        Level(
            ("frequency", "running_speed"),
            "{person} measures {running_speed} at the motor shaft of {place}, under load. The "
            "supply is {frequency}. How many poles does the motor have?",
        ),
    ),
    judged(
        "slip_tells",
        "NE",
        "What the slip tells you",
        judge_slip(LIGHT, FULL, HEAVY),
        slipping_by("light", "full", "heavy"),
        Level(
            ("synchronous_speed", "rated_speed", "running_speed"),
            "The synchronous speed of {place} is {synchronous_speed}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed} at the shaft. "
            "What does the slip tell you?",
        ),
        Level(
            ("frequency", "poles", "rated_speed", "running_speed"),
            "The motor of {place} has {poles} poles and runs on {frequency}. The nameplate says "
            "{rated_speed} at full load. {person} measures {running_speed} at the shaft. "
            "What does the slip tell you?",
            find=("synchronous_speed",),
            scene=slipping_by("light", "heavy", "above"),
            judge=judge_slip(LIGHT, HEAVY, ABOVE),
        ),
    ),
)
