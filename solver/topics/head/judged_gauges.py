"""What two gauges tell about a pump that has changed: a closed valve, a blocked suction, wear.

A pump gives more head as its flow falls. A blockage after it raises the discharge gauge, one
before it lowers the suction gauge, and wear brings the two closer together (common practice, no
source).
"""

from collections.abc import Callable, Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Level, Option
from solver.units.show import exact, figures, with_unit
from solver.vocabulary import quantity_named

from .kinds import judged

__all__ = ["GAUGES_STORY"]

PSI = {"us": 1, "si": 7}  # what a psi is in the unit of the system, roundly
RULE = (
    "blocked after the pump: the discharge gauge goes up; blocked before it: the suction gauge "
    "drops; a worn or slow pump: the two gauges come closer together"
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
        "Something blocks the discharge: a closed valve or a plugged main",
        "a closed discharge valve",
        "The discharge gauge goes up far more than the suction gauge.",
        closed,
        "Don't leave it running this way: the water in the pump heats up. Open the valve or stop "
        "the pump.",
    ),
    Cause(
        "blocked",
        "Something blocks the suction: a closed valve, a dirty strainer or rags",
        "a blocked suction",
        "The suction gauge drops and takes the discharge gauge down with it.",
        blocked,
        "Stop the pump before cavitation damages it. Lock it out before anyone opens the suction.",
    ),
    Cause(
        "worn",
        "The pump makes less head: a worn impeller or too low a speed",
        "a worn impeller",
        "The discharge gauge drops and the suction gauge goes up a little.",
        worn,
        "Check the pump's speed and amps against your records before anyone opens the pump.",
    ),
    Cause(
        "deeper",
        "The wet well level is higher: nothing is wrong with the pump",
        "a higher level in the wet well, with nothing wrong with the pump",
        "Both gauges go up by the same amount, so the pressure rise is the same.",
        deeper,
        "The pump itself hasn't changed.",
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
        f"the pressure rise was {rise} and is now {now}",
        Option(cause.id, cause.text, f"{cause.shows} {cause.then}"),
        tuple(
            Option(
                other.id,
                other.text,
                f"That would look different: {other.shows[0].lower()}{other.shows[1:]}",
            )
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
            Option(other.id, text(other), f"That pair shows {other.asked}. {other.shows}")
            for other in CAUSES
            if other is not asked
        ),
        f"Which pair of readings shows {asked.asked}?",
    )


GAUGES_STORY = judged(
    "gauges_story",
    "HO",
    "What two gauges tell you",
    judge_cause,
    story,
    Level(
        ("discharge_gauge", "suction_gauge", "discharge_gauge_now", "suction_gauge_now"),
        "The gauges on {place} usually read {discharge_gauge} on the discharge and {suction_gauge} on "
        "the suction. Today they read {discharge_gauge_now} and {suction_gauge_now}. "
        "What would you conclude?",
        find=("pressure", "pressure_now"),
    ),
    Level(
        ("discharge_gauge", "suction_gauge"),
        "The gauges on {place} usually read {discharge_gauge} on the discharge and {suction_gauge} on "
        "the suction. {asks}",
        judge=judge_pair,
    ),
)
