"""What two gauges say of a pump that has changed: a closed valve, a blocked suction, wear.

A pump gives more head as its flow falls. A blockage after it raises the discharge gauge, one
before it lowers the suction gauge, and wear brings the two nearer (common practice, no source;
compare WaterWorld, Pump Maintenance Know-How, January 2007).
"""

from collections.abc import Callable, Mapping
from typing import NamedTuple

from ..draw import Draw
from ..family import Judgement, Level, Option
from ..show import exact, figures, with_unit
from ..vocabulary import quantity_named
from .head_family import judged

__all__ = ["GAUGES_STORY"]

PSI = {"us": 1, "si": 7}  # what a psi is in the unit of the system, roundly
RULE = (
    "blocked after the pump: discharge rises; before it: suction falls; worn or slow: they close in"
)


class Readings(NamedTuple):
    """Two gauges at one time."""

    discharge: float
    suction: float

    @property
    def rise(self) -> float:
        return self.discharge - self.suction


class Cause(NamedTuple):
    """What has changed: as an option, as a question asks for it, what it shows, and a draw of it."""

    id: str
    text: str
    asked: str
    shows: str
    change: Callable[[Draw, Readings, float], Readings]
    then: str = ""


def closed(draw: Draw, usual: Readings, psi: float) -> Readings:
    suction = usual.suction + psi * draw.between(1, 2)
    return Readings(suction + usual.rise * draw.between(1.18, 1.35), suction)


def blocked(draw: Draw, usual: Readings, psi: float) -> Readings:
    rise = usual.rise * draw.between(1.04, 1.08)
    suction = psi * draw.between(0.6, 2)
    return Readings(suction + rise, suction)


def worn(draw: Draw, usual: Readings, psi: float) -> Readings:
    suction = usual.suction + psi * draw.between(1, 2)
    return Readings(suction + usual.rise * draw.between(0.68, 0.84), suction)


def deeper(draw: Draw, usual: Readings, psi: float) -> Readings:
    more = psi * draw.between(4, 8)
    return Readings(usual.discharge + more, usual.suction + more)


CAUSES = (
    Cause(
        "closed",
        "The discharge is shut off: a closed valve or a blocked main",
        "a closed discharge valve",
        "The discharge gauge rises far more than the suction gauge.",
        closed,
        "Do not leave it running so: the water in the pump heats. Open the valve or stop it.",
    ),
    Cause(
        "blocked",
        "The suction is blocked: a valve, a strainer or rags",
        "a blocked suction",
        "The suction gauge falls, and takes the discharge gauge down with it.",
        blocked,
        "Stop it before it cavitates. Lock it out before you open the suction.",
    ),
    Cause(
        "worn",
        "The impeller is worn, or the pump turns too slowly",
        "a worn impeller",
        "The discharge gauge falls and the suction gauge rises a little.",
        worn,
        "Compare speed and amps with the records before the pump is opened.",
    ),
    Cause(
        "deeper",
        "The water it draws stands higher; the pump is as it was",
        "a higher level in the wet well, with the pump as it was",
        "Both gauges rise alike, so the pressure rise stays.",
        deeper,
        "The pump gives what it gave before.",
    ),
)


def story(draw: Draw, units: str) -> dict[str, float]:
    """A pump's usual readings, and those of today with one of the causes."""
    psi = PSI[units]
    suction = round(draw.between(10, 18) * psi)
    usual = Readings(float(suction + round(draw.between(18, 55) * psi)), float(suction))
    cause = draw.pick(range(len(CAUSES)))
    now = CAUSES[cause].change(draw, usual, psi)
    return {
        "discharge_gauge": usual.discharge,
        "suction_gauge": usual.suction,
        "discharge_gauge_now": float(round(now.discharge)),
        "suction_gauge_now": float(round(now.suction)),
        "cause": float(cause),
    }


def shown(value: float, units: str, write=exact) -> str:
    unit = quantity_named("pressure").unit(units)
    return with_unit(write(value), unit)


def judge_cause(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Which cause fits what the two gauges did."""
    cause = CAUSES[int(values["cause"])]
    rise, now = (shown(values[name], units, figures) for name in ("pressure", "pressure_now"))
    return Judgement(
        RULE,
        f"the pressure rise was {rise}, and is {now}",
        Option(cause.id, cause.text, f"{cause.shows} {cause.then}"),
        tuple(
            Option(other.id, other.text, f"There it is otherwise. {other.shows}")
            for other in CAUSES
            if other is not cause
        ),
    )


def judge_pair(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Which of four pairs of readings a cause gives."""
    usual = Readings(values["discharge_gauge"], values["suction_gauge"])
    asked = CAUSES[int(values["cause"])]
    pairs = {
        cause: Readings(*map(round, cause.change(draw, usual, PSI[units]))) for cause in CAUSES
    }
    if len(set(pairs.values())) < len(CAUSES):
        return None

    def text(cause: Cause) -> str:
        discharge, suction = (shown(float(reading), units) for reading in pairs[cause])
        return f"discharge {discharge}, suction {suction}"

    return Judgement(
        RULE,
        f"usual: discharge {shown(usual.discharge, units)}, suction {shown(usual.suction, units)}",
        Option(asked.id, text(asked), f"{asked.shows} {asked.then}"),
        tuple(
            Option(other.id, text(other), f"This shows {other.asked}. {other.shows}")
            for other in CAUSES
            if other is not asked
        ),
        f"Which pair of readings shows {asked.asked}?",
    )


GAUGES_STORY = judged(
    "gauges_story",
    "HO",
    "What two gauges say of a change",
    judge_cause,
    story,
    Level(
        ("discharge_gauge", "suction_gauge", "discharge_gauge_now", "suction_gauge_now"),
        "{place} usually reads {discharge_gauge} at the discharge and {suction_gauge} at "
        "the suction. Today it reads {discharge_gauge_now} and {suction_gauge_now}. "
        "What has changed?",
        find=("pressure", "pressure_now"),
    ),
    Level(
        ("discharge_gauge", "suction_gauge"),
        "{place} usually reads {discharge_gauge} at the discharge and {suction_gauge} at "
        "the suction. {asks}",
        judge=judge_pair,
    ),
)
