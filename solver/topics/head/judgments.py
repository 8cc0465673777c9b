"""Judgments of the head chapter: a part left out, a pipe by its C factor, what two gauges tell.

A pump gives more head as its flow falls. A blockage after it raises the discharge gauge, one
before it lowers the suction gauge, and wear brings the two closer together (common practice, no
source).
"""

from collections.abc import Callable, Mapping
from typing import NamedTuple

from solver.engine.draw import Draw
from solver.engine.family import Judge, Judgement, Option
from solver.topics.drawn.readings import shown
from solver.topics.tables import named_rows
from solver.units.show import figures

from .scenes import worked

__all__ = ["judge_cause", "judge_missing", "judge_pair", "judge_pipe", "story"]

CALLED = {
    "static_head": "static head",
    "friction_head": "friction loss",
    "minor_loss": "minor losses",
    "delivery_head": "pressure at the end",
}
APART = 0.04  # of the total: parts nearer than this could not be told from a rounded sum
NEAR = 2  # how far outside a row of the table a measured C may lie
PSI = {"us": 1, "si": 7}  # what a psi is in the unit of the system, roundly
RULE = (
    "blocked after the pump: the discharge gauge goes up; blocked before it: the suction gauge "
    "drops; a worn or slow pump: the two gauges come closer together"
)


def judge_missing(*parts: str) -> Judge:
    """Which part the difference between the sum and the figure is."""

    def judge(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
        sizes = {part: values[part] for part in parts}
        total = worked(sizes, "head", units)
        by_size = sorted(sizes.values())
        if min(b - a for a, b in zip((0, *by_size), by_size, strict=False)) < APART * total:
            return None
        gone = parts[int(values["gone"])]
        short = shown("head", total - values["head"], units, figures)
        all_of_it = f"all the parts add up to {shown('head', total, units, figures)}"
        return Judgement(
            "what the total falls short by is the part that was left out",
            f"{all_of_it}; {shown('head', values['head'], units)} is {short} short",
            Option(
                gone,
                f"The {CALLED[gone]}",
                f"The total is {short} short, which is the {CALLED[gone]}.",
            ),
            (
                *(
                    Option(
                        f"took_{part}",
                        f"The {CALLED[part]}",
                        f"That part is {shown(part, size, units, figures)}, but the total is {short} short.",
                    )
                    for part, size in sizes.items()
                    if part != gone
                ),
                Option("nothing", "Nothing was left out", f"Add it up again: {all_of_it}."),
            ),
        )

    return judge


def judge_pipe(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The row of the table of C factors that fits, among four."""
    found = values["c_factor"]
    rows = named_rows("c_factors")
    fitting = [n for n, (low, high) in rows.items() if low - NEAR <= found <= high + NEAR]
    if len(fitting) != 1:
        return None
    (right,) = fitting
    others = draw.shuffled([name for name in rows if name != right])[:3]

    def usual(name: str) -> str:
        low, high = rows[name]
        return f"{low:g}" if low == high else f"{low:g} to {high:g}"

    return Judgement(
        "C factors: " + "; ".join(f"{name} {usual(name)}" for name in (right, *others)),
        f"C is {figures(found)}",
        Option(
            "fits",
            right[:1].upper() + right[1:],
            f"This pipe's C is {usual(right)}. C drops as a pipe gets rougher, so write it down with "
            "the date.",
        ),
        tuple(
            Option(
                f"other_{i}",
                name[:1].upper() + name[1:],
                f"That pipe's C would be {usual(name)}, but here C is {found:.0f}.",
            )
            for i, name in enumerate(others, 1)
        ),
    )


class Readings(NamedTuple):
    """Two gauges at one time."""

    discharge: float
    suction: float

    @property
    def rise(self) -> float:
        """What the pump adds, in the unit of the gauges."""
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
    """Less flow, so more head; `psi` is one psi in the unit of the gauges, here and below."""
    suction = usual.suction + psi * draw.between(1, 2)
    return Readings(suction + usual.rise * draw.between(1.18, 1.35), suction)


def blocked(draw: Draw, usual: Readings, psi: float) -> Readings:
    """Hardly anything left on the suction gauge."""
    rise = usual.rise * draw.between(1.04, 1.08)
    suction = psi * draw.between(0.6, 2)
    return Readings(suction + rise, suction)


def worn(draw: Draw, usual: Readings, psi: float) -> Readings:
    """Less head, and less flow drawing on the suction."""
    suction = usual.suction + psi * draw.between(1, 2)
    return Readings(suction + usual.rise * draw.between(0.68, 0.84), suction)


def deeper(draw: Draw, usual: Readings, psi: float) -> Readings:
    """The same pump with more water over it."""
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


def judge_cause(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Which cause fits what the two gauges did."""
    cause = CAUSES[int(values["cause"])]
    rise, now = (shown(n, values[n], units, figures) for n in ("pressure", "pressure_now"))
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

    def said(gauges: Readings) -> str:
        discharge, suction = (shown("pressure", reading, units) for reading in gauges)
        return f"discharge {discharge}, suction {suction}"

    return Judgement(
        RULE,
        f"usual: {said(usual)}",
        Option(asked.id, said(pairs[asked]), f"{asked.shows} {asked.then}"),
        tuple(
            Option(other.id, said(pairs[other]), f"That pair shows {other.asked}. {other.shows}")
            for other in CAUSES
            if other is not asked
        ),
        f"Which pair of readings shows {asked.asked}?",
    )
