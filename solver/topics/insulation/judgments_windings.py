"""Ohms between three leads judged: how far they may differ, and what a fault makes of them."""

from collections.abc import Mapping
from math import inf, isinf

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judge, Judgement, Option
from solver.station.condition import between_leads
from solver.station.need import ANY
from solver.station.scene import OneOf, Readings
from solver.station.supply import Legs
from solver.topics.limits import FORM_OHMS, LOW_VOLTAGE, RANDOM_OHMS
from solver.topics.readings import noted
from solver.topics.zones import too_near
from solver.units.show import exact, figures, with_unit

from .windings import CHAPTER, MEDIUM, OHMS, TESTED, faulty, ohms_within

__all__ = ["OHMS_LIMIT", "WINDING_FAULTS"]

KINDS = (("random-wound", RANDOM_OHMS), ("form-wound", FORM_OHMS))


def judge_limit(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Unbalance against 2 % of a random-wound winding, or 1 % of a form-wound one.

    Large motors on medium volts are form-wound. Of a reader's motor it isn't known: then either.
    """
    volts = values.get("rated_volts")
    kind, limits = draw.pick(KINDS) if volts is None else KINDS[volts >= LOW_VOLTAGE]
    size, (_, limit) = values["resistance_unbalance"], limits.at(values)
    if too_near(size, limit) or abs(size - limit) < 0.1:
        return None
    over = size > limit
    found = f"The unbalance is {figures(size)}%, {'over' if over else 'within'} {limit:g}%"
    find = f"{found}. Measure again at the motor leads, then check the splices and joints."
    keep = f"{found}. Write it down with the date and the temperature."
    options = [
        Option("over", f"Find the cause: over {limit:g}%", find if over else f"{found}."),
        Option("within", f"Accept it: {limit:g}% or less", f"{found}." if over else keep),
    ]
    right = options.pop(0 if over else 1)
    other = Option(
        "never_equal",
        "Ignore it: three phases never read the same",
        "Three good phases agree within a percent or two, so a difference means something.",
    )
    return Judgement(
        "ANSI/EASA AR100: within 2% of the average for random-wound, 1% for form-wound",
        f"{kind}: {figures(size)}% against {limit:g}%",
        right,
        (*options, other),
        asks=f"The motor is {kind}. What is your call?",
    )


ANY_OHMS = OneOf(
    tuple(ohms_within((0.5, 0.85), (1.15, 1.8), (2.3, 4), need=need) for need in (ANY, MEDIUM))
)

OHMS_LIMIT = (
    CHAPTER.judged(
        "resistance_limit",
        "GX",
        "Winding resistance: accept it or not",
        judge_limit,
        ANY_OHMS,
        Level(
            ("ohms_average", "ohms_deviation"),
            f"{TESTED}The three lead-to-lead readings average {{ohms_average}}. The largest "
            "deviation from the average is {ohms_deviation}. {asks}",
            find=("resistance_unbalance",),
        ),
        Level(
            OHMS,
            f"{TESTED}Lead to lead it reads {{ohms_12}}, {{ohms_23}} and {{ohms_31}}. {{asks}}",
            find=("resistance_unbalance",),
        ),
    ),
)

PAIRS = ("1-2", "2-3", "3-1")
AGAIN = "Check the meter clips first, then have a qualified person open the connections."


def phases(kind: str, reads: float, at: int = 0, odd: float = 1.0) -> Legs:
    """Ohms of the three phases of a motor that `reads` so many ohms when healthy between any two leads.

    The one at place `at` has `odd` times its ohms: none where shorted, infinite where open.
    """
    one = reads / 2 if kind == "wye" else reads * 1.5
    first, second, third = (one * odd if place == at else one for place in range(3))
    return first, second, third


def written(readings: Legs) -> str:
    """Three readings as a tester notes them."""
    said = ["open" if isinf(ohms) else with_unit(exact(noted(ohms)), "ohm") for ohms in readings]
    return ", ".join(f"{pair} {text}" for pair, text in zip(PAIRS, said, strict=True))


SHOWN = {
    "open": "one open phase",
    "shorted": "one shorted phase",
    "sound": "a good winding",
}

WHY = {
    "wye": {
        "open": "Both pairs with that phase read open. The third pair hasn't changed.",
        "shorted": "Both pairs with that phase read half. The third pair hasn't changed.",
    },
    "delta": {
        "open": "The pair across the open phase reads three times as much. The others read half again as much.",
        "shorted": "The pair across the shorted phase reads zero. The others read a quarter less.",
    },
}
SOUND = "All three pairs read the same, so this winding is good."


def judge_readings(kind: str) -> Judge:
    """Which three readings an open or a shorted phase gives."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
        ohms = values["ohms_healthy"]
        at = draw.pick((0, 1, 2))
        asked = draw.pick(("open", "shorted"))
        options = {}
        for id, odd in (("sound", 1.0), ("open", inf), ("shorted", 0.0)):
            readings = written(between_leads(kind, phases(kind, ohms, at, odd)))
            options[id] = Option(id, readings, WHY[kind].get(id, SOUND))
        right = options.pop(asked)
        return Judgement(
            "wye: you read two phases in series; delta: one phase in parallel with the other two",
            f"{SHOWN[asked]}: {right.text}",
            Option(right.id, right.text, f"{right.says} {AGAIN}"),
            tuple(options.values()),
            asks=f"Which readings show {SHOWN[asked]}?",
        )

    return judge


FAULTS = {
    "sound": (
        "The winding is good",
        "All three readings agree. Write them down with the temperature.",
    ),
    "turns": (
        "Some turns are shorted in one phase",
        f"Shorted turns lower the resistance. {AGAIN}",
    ),
    "joint": (
        "One lead has a bad connection",
        f"A bad connection adds resistance to both pairs with that lead. {AGAIN}",
    ),
    "open": (
        "One phase is open",
        f"With one phase open, a delta still reads through the other two. {AGAIN}",
    ),
}

TELLS = {
    "sound": "All three readings agree within a percent.",
    "turns": "The readings that changed are lower than when the motor was healthy.",
    "joint": "Two readings are higher than when the motor was healthy. The third hasn't changed.",
    "open": "One reading is three times the healthy one. The others are one and a half times.",
}


AGREES = 0.02  # of the healthy ohms


def fault_shown(shares: list[float]) -> str:
    """The fault that three readings show, each over the healthy one; nothing where none is clear."""
    low, _, high = sorted(shares)
    lower, higher = low < 1 - AGREES, high > 1 + AGREES
    if low > 1 + AGREES:
        return "open"
    if lower and higher:
        return ""
    return "turns" if lower else "joint" if higher else "sound"


def judge_named(*faults: str) -> Judge:
    """The fault behind three readings."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        shares = [values[name] / values["ohms_healthy"] for name in OHMS]
        here = fault_shown(shares)
        if here not in faults:
            return None
        options = {
            id: Option(id, FAULTS[id][0], FAULTS[id][1] if id == here else TELLS[here])
            for id in faults
        }
        right = options.pop(here)
        return Judgement(
            "divide each reading by the healthy one",
            ", ".join(f"{pair} × {share:.2f}" for pair, share in zip(PAIRS, shares, strict=True)),
            right,
            tuple(options.values()),
        )

    return judge


WINDING_FAULTS = (
    CHAPTER.judged(
        "fault_readings",
        "GF",
        "What an open or shorted phase reads",
        judge_readings("wye"),
        Readings(),
        Level(
            ("ohms_healthy",),
            "When healthy, the wye-connected motor of {place} reads {ohms_healthy} between any two "
            "leads. {asks}",
        ),
        Level(
            ("ohms_healthy",),
            "When healthy, the delta-connected motor of {place} reads {ohms_healthy} between any "
            "two leads. {asks}",
            judge=judge_readings("delta"),
        ),
    ),
    CHAPTER.judged(
        "fault_named",
        "GH",
        "Three readings, and the fault behind them",
        judge_named("sound", "turns", "joint"),
        Readings(change=faulty(False, "sound", "turns", "joint")),
        Level(
            ("ohms_healthy", *OHMS),
            f"{TESTED}When healthy, this wye-connected motor read {{ohms_healthy}} between any two "
            "leads. Now the three pairs read {ohms_12}, {ohms_23} and {ohms_31}. "
            "What is wrong, if anything?",
        ),
        Level(
            ("ohms_healthy", *OHMS),
            f"{TESTED}When healthy, this delta-connected motor read {{ohms_healthy}} between any "
            "two leads. Now the three pairs read {ohms_12}, {ohms_23} and {ohms_31}. "
            "What is wrong, if anything?",
            scene=Readings(change=faulty(True, "sound", "turns", "open")),
            judge=judge_named("sound", "turns", "open"),
        ),
    ),
)
