"""Which drawing a problem has, and the whole picture: drawing, what else is given, words for a listener."""

from html import escape

from solver.algebra.tree import names
from solver.engine.case import Case
from solver.render.svg import LOOK, element, wide
from solver.units.show import capital
from solver.vocabulary import quantity_named

from .band import BAND
from .bill import BILL
from .circuit import BRANCHES, LOOP
from .closed import CLOSED
from .control import ALARM_BATTERY, CONTROL_LOAD, LEAD_LAG, SIGNAL
from .coupling import COUPLING, WEAR_RINGS
from .curve import BEST_POINT, CURVE
from .demand import DEMAND
from .drawing import Drawing
from .energy import ENERGY
from .feed import DILUTION, FEED
from .gauges import GAUGES
from .greasing import BEARING, HOUR_METER
from .ladder import LADDER
from .legs import LEGS
from .megohms import CORRECTED, OVER_TIME
from .peaks import PEAKS
from .pipe import PIPE
from .plate import PLATE, PUMP_PLATE
from .profile import PROFILE
from .rolled import ROLLED
from .shaft import SHAFT
from .sheaves import SHEAVES
from .sheet import SHEET
from .shown import LEAST, Shown, words
from .speeds import SPEEDS
from .standby import BYPASS, GENERATOR
from .strokes import STROKES
from .suction import SUCTION
from .supply import RUN, TRANSFORMER
from .tank import TANK
from .throat import THROAT
from .together import TOGETHER
from .triangle import TRIANGLE
from .twice import TWICE
from .weir import FLUME, WEIR
from .well import WELL

__all__ = ["drawing_for", "picture_of"]

DRAWINGS: tuple[Drawing, ...] = (
    *(BAND, ENERGY, BILL, PEAKS, DEMAND),
    *(WELL, GAUGES, SUCTION, PIPE, PROFILE, TANK),
    *(TRIANGLE, SPEEDS, PLATE, LEGS, ROLLED, OVER_TIME, CORRECTED),
    *(BRANCHES, LOOP, RUN, TRANSFORMER),
    *(LADDER, SIGNAL, LEAD_LAG, CONTROL_LOAD, ALARM_BATTERY),
    *(TWICE, CURVE, BEST_POINT, PUMP_PLATE, SHEET, STROKES, TOGETHER, CLOSED),
    *(WEIR, FLUME, THROAT),
    *(SHEAVES, SHAFT, COUPLING, WEAR_RINGS, BEARING, HOUR_METER, FEED, DILUTION, GENERATOR, BYPASS),
)
FEWEST = 2  # quantities in their places that make a picture worth its room
WIDEST = 620  # px


def drawing_for(case: Case) -> Drawing | None:
    """The drawing with a place for most of the problem's quantities; None where none says enough."""
    if case.pictured:
        return next((d for d in DRAWINGS if case.family.name in d.families), None)
    told = {*case.given} | ({case.asked} if not case.choices else set())
    fits = [
        (len(told.intersection(drawing.places)), drawing)
        for drawing in DRAWINGS
        if (case.choices or case.asked in drawing.places)
        and (not drawing.core or told.intersection(drawing.core))
    ]
    best = max(fits, key=lambda fit: fit[0], default=None)
    return best[1] if best and best[0] >= FEWEST else None


def picture_of(case: Case, mark: str = "", answered: bool = False, name: str = "") -> str:
    """The picture of a problem as SVG, or "" where it has none.

    `mark` is the step to look at after a mistake; with `answered` the answer takes the place of its
    question mark. `name` makes its ids its own on a page; it is the problem's code unless told.
    """
    drawing = drawing_for(case)
    if drawing is None:
        return ""
    shown = Shown(case, _marks(case, mark, drawing), answered)
    pieces, tall = drawing.draw(shown)
    left_over = [name for name in case.given if name not in drawing.places]
    more, tall = shown.flow(tall + 19, [(name, shown.named(name)) for name in left_over])
    pieces += more
    if mark:
        more, tall = _look_here(tall, quantity_named(mark).label(case.units))
        pieces += more
    own = name or case.code or case.family.name
    return element(
        "svg",
        element("title", escape(shown.said(drawing.title)), id=f"{own}-title"),
        element("desc", escape(_description(shown, mark)), id=f"{own}-words"),
        *pieces,
        xmlns="http://www.w3.org/2000/svg",
        width="100%",
        height=tall + 6,
        role="img",
        aria_labelledby=f"{own}-title {own}-words",
        class_="w2w-problem-picture",
        style=f"display: block; overflow: visible; max-width: {WIDEST}px; color: var(--w2w-text, CanvasText)",
    )


def _look_here(foot: float, label: str) -> tuple[list[str], float]:
    """The line under a picture that says where to look, in two where one is too short, and its foot."""
    lines = [f"Look here: {label}"]
    if wide(lines[0]) > LEAST:
        lines = ["Look here:", label]
    low = foot + 20 + 17 * (len(lines) - 1)
    return [words(0, foot + 20 + 17 * n, line, look=LOOK) for n, line in enumerate(lines)], low


def _marks(case: Case, mark: str, drawing: Drawing) -> frozenset[str]:
    """Where a step is to be looked at: at the machine it passes, at its result, or at what it is worked from."""
    step = next((step for step in case.steps if step.name == mark), None)
    if step is None:
        return frozenset()
    used = set(names(step.expr)) if step.expr else set()
    drawn = set(drawing.places).intersection((*drawing.named, *case.given, case.asked))
    machines = {name for name in used & drawn if quantity_named(name).is_efficiency}
    return frozenset(machines or {mark} & drawn or used & drawn)


def _description(shown: Shown, mark: str) -> str:
    """All that the picture says, for somebody who cannot see it."""
    case = shown.case
    given = "; ".join(
        f"{quantity_named(name).label(case.units)} {shown.text(name)}" for name in case.given
    )
    sentences = [f"Given: {given}." if given else ""]
    if case.pictured:
        sentences.append("; ".join(f"{label}: {text}" for label, text in case.pictured) + ".")
    if not case.choices:
        asked = quantity_named(case.asked).label(case.units)
        value = shown.text(case.asked)
        sentences.append(f"Asked: {asked}." if value == "?" else f"{capital(asked)}: {value}.")
    if mark:
        sentences.append(f"Look at the {quantity_named(mark).label(case.units)}.")
    return " ".join(sentence for sentence in sentences if sentence)
