"""Ohms between three leads: what an open phase, a shorted one or a poor joint shows."""

from collections.abc import Mapping
from math import inf, isinf

from solver.engine.draw import Draw
from solver.engine.family import Judge, Judgement, Level, Option, Scene
from solver.topics.drawn.readings import noted
from solver.units.show import exact, with_unit

from .kinds import TESTED, judged
from .scenes import OHMS

__all__ = ["WINDING_FAULTS", "between_leads"]

PAIRS = ("1-2", "2-3", "3-1")
AGAIN = "Check the meter clips first, then have a qualified person open the connections."


def parallel(one: float, other: float) -> float:
    """Two resistances side by side; either may be open."""
    if isinf(one) or isinf(other):
        return min(one, other)
    return one * other / (one + other) if one + other else 0.0


def between_leads(kind: str, phases: tuple[float, float, float]) -> tuple[float, ...]:
    """Ohms from lead 1 to 2, 2 to 3 and 3 to 1 of a "wye" or a "delta", from its three phases.

    The phases of a wye stand from each lead to the middle; those of a delta from lead to lead.

    >>> between_leads("wye", (1.0, 1.0, 0.0)), between_leads("delta", (1.0, 1.0, inf))
    ((2.0, 1.0, 1.0), (1.0, 1.0, 2.0))
    """
    a, b, c = phases
    if kind == "wye":
        return a + b, b + c, c + a
    return parallel(a, b + c), parallel(b, c + a), parallel(c, a + b)


def written(readings: tuple[float, ...]) -> str:
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
    ("wye", "open"): "Both pairs with that phase read open. The third pair hasn't changed.",
    ("wye", "shorted"): "Both pairs with that phase read half. The third pair hasn't changed.",
    (
        "delta",
        "open",
    ): "The pair across the open phase reads three times as much. The others read half again as much.",
    (
        "delta",
        "shorted",
    ): "The pair across the shorted phase reads zero. The others read a quarter less.",
}
SOUND = "All three pairs read the same, so this winding is good."


def judge_readings(kind: str) -> Judge:
    """Which three readings an open or a shorted phase gives."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
        ohms = values["ohms_healthy"]
        phase = ohms / 2 if kind == "wye" else ohms * 1.5
        at = draw.pick((0, 1, 2))
        sets = {"sound": (phase,) * 3}
        for fault, odd in (("open", inf), ("shorted", 0.0)):
            sets[fault] = tuple(odd if i == at else phase for i in range(3))
        asked = draw.pick(("open", "shorted"))
        options = {
            id: Option(id, written(between_leads(kind, phases)), WHY.get((kind, id), SOUND))
            for id, phases in sets.items()
        }
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
        phase = ohms / 2 if kind == "wye" else ohms * 1.5
        odd = {
            "sound": phase,
            "turns": phase * draw.between(0.55, 0.8),
            "joint": phase * draw.between(1.25, 1.6),
            "open": inf,
        }[fault]
        at = draw.pick((0, 1, 2))
        readings = between_leads(kind, tuple(odd if i == at else phase for i in range(3)))
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
    judged(
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
    judged(
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
