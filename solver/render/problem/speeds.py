"""Speeds of a motor on one line: the field, the shaft behind it by the slip, and the nameplate's full load."""

from solver.render.svg import ACCENT, LOOK, SOFT, across, circle, line, path
from solver.units.quantity import Text

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown

__all__ = ["SPEEDS"]

Y = 58.0  # px: the line
SHARES = {
    1: (92.0,),
    2: (45.0, 92.0),
    3: (20.0, 54.0, 92.0),
}  # percent; schematic, as slip is small
MARKS: Rows = (
    ("rated_speed", "nameplate"),
    ("running_speed", "running"),
    ("synchronous_speed", "synchronous"),
)
UNDER: Rows = (
    ("frequency", "frequency"),
    ("poles", "poles"),
    ("load_by_slip", "load by slip"),
)


def _draw(shown: Shown) -> Drawn:
    pieces = [line(0, 100, Y, stroke=SOFT, stroke_width=2)]
    marks = _in_order(shown)
    places = dict(zip((name for name, _ in marks), SHARES[len(marks)], strict=True))
    for name, called in marks:
        share = places[name]
        end = share > 90
        pieces += [
            across(share, circle(0, Y, 6, fill=ACCENT if name == "synchronous_speed" else LOOK)),
            shown.stacked(100 if end else share, Y - 34, name, called, "end" if end else "middle"),
        ]
    if {"running_speed", "synchronous_speed"} <= set(places) and shown.works("slip", "slip_speed"):
        pieces += _slip(shown, *sorted((places["running_speed"], places["synchronous_speed"])))
    more, foot = shown.flow(Y + 34 + (LINE + 2 if len(pieces) > 1 + 2 * len(marks) else 0), UNDER)
    return Drawn(pieces + more, max(foot, Y + 34))


def _in_order(shown: Shown) -> list[tuple[str, Text]]:
    """The speeds of this problem, slowest first; one that is not given is where it usually is.

    A judgment may be about a shaft that outruns its field, so a field that is not given is left out there.
    """
    said = {"rated_speed": ("rated_slip_speed",), "running_speed": ("slip", "slip_speed")}
    marks = [
        (name, called)
        for name, called in MARKS
        if shown.works(name, *said.get(name, ()))
        or (name == "synchronous_speed" and not shown.case.choices)
    ]
    for place in (0, 1, 0):
        pair = marks[place : place + 2]
        given = [shown.case.given[name] for name, _ in pair if name in shown.case.given]
        if len(given) == 2 and given[0] > given[1]:
            marks[place : place + 2] = pair[::-1]
    return marks


def _slip(shown: Shown, running: float, field: float) -> list[str]:
    """The slip, as what lies between the two."""
    ends = [
        across(x, path((0, Y + 11), (0, Y + 21), stroke=SOFT, width=1.2)) for x in (running, field)
    ]
    name = next((name for name in ("slip", "slip_speed") if shown.has(name)), "slip")
    return [
        line(running, field, Y + 16, stroke=SOFT, stroke_width=1.2),
        *ends,
        shown.note((running + field) / 2, Y + 34, name, "slip", "middle"),
    ]


SPEEDS = Drawing(
    "The motor's speeds",
    (
        *("synchronous_speed", "running_speed", "rated_speed", "slip", "slip_speed"),
        *(name for name, _ in UNDER),
    ),
    _draw,
    ("synchronous_speed",),
    ("synchronous_speed", "running_speed", "rated_speed", "slip", "slip_speed"),
)
