"""Three legs as bars on both sides of their average: amps, volts or winding ohms.

Bars of given readings are as long as they are off their average, all three on one scale; without
readings they are the same in every problem.
"""

from collections.abc import Sequence

from solver.render.svg import ACCENT, SOFT, across, block, line, path
from solver.units.quantity import Both, Text

from .drawing import Drawing, Drawn
from .shown import Shown, words

__all__ = ["LEGS"]

SETS = (
    ("amps", ("amps_a", "amps_b", "amps_c"), ("A", "B", "C")),
    ("volts", ("volts_ab", "volts_bc", "volts_ca"), ("A–B", "B–C", "C–A")),
    ("ohms", ("ohms_12", "ohms_23", "ohms_31"), ("1–2", "2–3", "3–1")),
)
ANY = (0.9, -0.35, -0.55)  # how far off the bars are when nothing says
LEFT, MIDDLE, REACH = 14.0, 40.0, 24.0  # percent: the bars' end, their average, their longest
TOP, ROW, BAR = 27.0, 27.0, 17.0  # px
NOTES: dict[str, Text] = {
    "amps_deviation": "largest deviation",
    "volts_deviation": "largest deviation",
    "ohms_deviation": "largest deviation",
    "amps_highest": "highest leg",
    "current_unbalance": "unbalance",
    "voltage_unbalance": "unbalance",
    "resistance_unbalance": "unbalance",
    "current_spread": "spread",
    "full_load_amps": "FLA",
    "service_factor": "SF",
    "service_factor_amps": "SFA",
    "load_amps": "of FLA",
    "ohms_healthy": "healthy",
    "motor_size": "nameplate",
    "derated_power": "allowed on it",
    "brake_power": Both("BHP", "shaft"),
    "balanced_rise": "rise in balance",
    "unbalanced_rise": "rise now",
}


def _draw(shown: Shown) -> Drawn:
    what, legs, names = next((s for s in SETS if any(shown.works(n) for n in _all_of(s))), SETS[0])
    foot = TOP + ROW * len(legs)
    average = f"{what}_average"
    pieces = [
        across(MIDDLE, path((0, TOP - 4), (0, foot), stroke=SOFT, width=1.5, dash="4 3")),
        shown.note(MIDDLE, TOP - 10, average, "average", "middle"),
    ]
    for row, (leg, called, off) in enumerate(zip(legs, names, _off(shown, legs), strict=True)):
        y = TOP + ROW * row
        left, right = sorted((MIDDLE, MIDDLE + REACH * off))
        pieces.append(block(left, right, y + 4, BAR, fill=ACCENT, fill_opacity=0.45))
        pieces.append(words(0, y + 18, called))
        pieces.append(shown.note(MIDDLE + REACH + 4, y + 18, leg))
    pieces.append(line(0, 100, foot + 3, stroke=SOFT, stroke_width=0.6))
    more, foot = shown.flow(foot + 22, NOTES.items())
    return Drawn(pieces + more, foot)


def _all_of(one: tuple[str, Sequence[str], Sequence[str]]) -> tuple[str, ...]:
    what, legs, _ = one
    unbalance = {"amps": "current", "volts": "voltage", "ohms": "resistance"}[what]
    return (*legs, f"{what}_average", f"{what}_deviation", f"{unbalance}_unbalance")


def _off(shown: Shown, legs: Sequence[str]) -> Sequence[float]:
    """How far each reading is off the average of the three, the farthest at 1 or -1."""
    read = [shown.case.given[leg] for leg in legs if leg in shown.case.given]
    if len(read) < len(legs):
        return ANY
    average = sum(read) / len(read)
    most = max(abs(one - average) for one in read) or 1
    return [(one - average) / most for one in read]


LEGS = Drawing(
    "Three legs and their average",
    (
        *(name for one in SETS for name in _all_of(one)),
        *NOTES,
    ),
    _draw,
    tuple(f"{what}_average" for what, _, _ in SETS),
)
