"""Ohms between three leads judged: how far they may differ, and what a fault makes of them."""

from collections.abc import Mapping
from math import inf, isinf

from solver.engine.draw import Draw
from solver.engine.family import Judge, Judgement, Level, Option, Scene
from solver.topics.drawn.readings import noted
from solver.topics.limits import FORM_OHMS, RANDOM_OHMS, too_near
from solver.units.show import exact, figures, with_unit

from .scenes import CHAPTER, OHMS, TESTED, windings

__all__ = ["OHMS_LIMIT", "WINDING_FAULTS", "between_leads"]

Three = tuple[float, float, float]
KINDS = (("random-wound", RANDOM_OHMS), ("form-wound", FORM_OHMS))


def judge_limit(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Unbalance against 2 % of a random-wound winding, or 1 % of a form-wound one."""
    kind, limits = draw.pick(KINDS)
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


OHMS_LIMIT = (
    CHAPTER.judged(
        "resistance_limit",
        "GX",
        "Winding resistance: accept it or not",
        judge_limit,
        windings((0.5, 0.85), (1.15, 1.8), (2.3, 4)),
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


def parallel(one: float, other: float) -> float:
    """Two resistances side by side; either may be open."""
    if isinf(one) or isinf(other):
        return min(one, other)
    return one * other / (one + other) if one + other else 0.0


def between_leads(kind: str, phases: Three) -> Three:
    """Ohms from lead 1 to 2, 2 to 3 and 3 to 1 of a "wye" or a "delta", from those of its phases.

    The phases of a wye go from each lead to the middle, those of a delta from lead to lead. An
    open one is infinite. Source: arithmetic, resistances in series and in parallel.

    >>> between_leads("wye", (1.0, 1.0, 0.0)), between_leads("delta", (1.0, 1.0, inf))
    ((2.0, 1.0, 1.0), (1.0, 1.0, 2.0))
    """
    a, b, c = phases
    if kind == "wye":
        return a + b, b + c, c + a
    return parallel(a, b + c), parallel(b, c + a), parallel(c, a + b)


def phases(kind: str, reads: float, at: int = 0, odd: float = 1.0) -> Three:
    """Ohms of the three phases of a motor that `reads` so many ohms when healthy between any two leads.

    The one at place `at` has `odd` times its ohms: none where shorted, infinite where open.
    """
    one = reads / 2 if kind == "wye" else reads * 1.5
    first, second, third = (one * odd if place == at else one for place in range(3))
    return first, second, third


def written(readings: Three) -> str:
    """Three readings as a tester notes them."""
    said = ["open" if isinf(ohms) else with_unit(exact(noted(ohms)), "ohm") for ohms in readings]
    return ", ".join(f"{pair} {text}" for pair, text in zip(PAIRS, said, strict=True))


def healthy(draw: Draw, units: str) -> dict[str, float]:
    """What a sound motor reads between any two leads."""
    return {"ohms_healthy": noted(draw.between(0.2, 6), 2)}


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


def faulty(kind: str, *faults: str) -> Scene:
    """A motor with one of these faults, and what it read when healthy."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        ohms = healthy(draw, units)["ohms_healthy"]
        fault = draw.pick(faults)
        odd = {
            "sound": 1.0,
            "turns": draw.between(0.55, 0.8),
            "joint": draw.between(1.25, 1.6),
            "open": inf,
        }[fault]
        readings = between_leads(kind, phases(kind, ohms, draw.pick((0, 1, 2)), odd))
        near = [noted(ohms * draw.between(0.997, 1.003)) for ohms in readings]
        return {
            "ohms_healthy": ohms,
            **dict(zip(OHMS, near, strict=True)),
            "fault": float(tuple(FAULTS).index(fault)),
        }

    return scene


def judge_named(*faults: str) -> Judge:
    """The fault behind three readings."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
        here = tuple(FAULTS)[int(values["fault"])]
        options = {
            id: Option(id, FAULTS[id][0], FAULTS[id][1] if id == here else TELLS[here])
            for id in faults
        }
        right = options.pop(here)
        shares = [values[name] / values["ohms_healthy"] for name in OHMS]
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
        healthy,
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
        faulty("wye", "sound", "turns", "joint"),
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
            scene=faulty("delta", "sound", "turns", "open"),
            judge=judge_named("sound", "turns", "open"),
        ),
    ),
)
