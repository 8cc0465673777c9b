"""A short ladder drawing: two rails, and between them each rung with its contacts and what it turns on."""

from solver.render.svg import INK, PAGE, across, circle, line, path, rect
from solver.topics.rungs import Contact, Rung, rung_of

from .drawing import Drawing, Drawn
from .shown import Shown, words

__all__ = ["LADDER"]

FIRST, BRANCH, NEXT = 34.0, 44.0, 58.0  # px: the first rung, the next branch, the next rung
NAME = 19.0  # px from a name down to its symbol


def _draw(shown: Shown) -> Drawn:
    pieces: list[str] = []
    y = foot = FIRST
    for _, text in shown.case.pictured:
        rung = rung_of(text)
        pieces += _rung(rung, y)
        foot = y + BRANCH * (max(len(part) for part in rung.parts) - 1) + 18
        y = foot + NEXT - 18
    rails = [across(share, path((0, 4), (0, foot), width=3)) for share in (0, 100)]
    return Drawn([*rails, *pieces], foot)


def _rung(rung: Rung, y: float) -> list[str]:
    """Its parts from the left rail to the right one, each column as wide as the others."""
    widths = [max(map(len, part)) for part in rung.parts]
    wide = 100 / (sum(widths) + 1)
    pieces = [line(0, 100, y)]
    left = 0.0
    for part, columns in zip(rung.parts, widths, strict=True):
        right = left + columns * wide
        for row, branch in enumerate(part):
            level = y + BRANCH * row
            if row:
                pieces += _beside(left + 0.12 * wide, right - 0.12 * wide, level)
            each = (right - left) / len(branch)
            for at, contact in enumerate(branch):
                pieces += _contact(contact, left + (at + 0.5) * each, level)
        left = right
    return [*pieces, *_output(rung, left + wide / 2, y)]


def _beside(left: float, right: float, y: float) -> list[str]:
    """A branch below another, from one share (percent) of the width to the other."""
    down = [across(share, path((0, y - BRANCH), (0, y))) for share in (left, right)]
    return [line(left, right, y), *down]


def _contact(contact: Contact, share: float, y: float) -> list[str]:
    """Two bars with a gap, and a stroke through them where it is normally closed."""
    drawn = [
        rect(-5, y - 9, 10, 18, fill=PAGE, stroke="none"),
        path((-5, y - 9), (-5, y + 9)),
        path((5, y - 9), (5, y + 9)),
    ]
    if contact.closed:
        drawn.append(path((-8, y + 9), (8, y - 9)))
    return [across(share, *drawn), words(share, y - NAME + 5, contact.name, "middle", look=INK)]


def _output(rung: Rung, share: float, y: float) -> list[str]:
    drawn = [circle(0, y, 11, fill=PAGE, stroke=INK, stroke_width=2)]
    if rung.output == "light":
        drawn += [path((a * 8, y + b * 8), (a * 13, y + b * 13)) for a in (-1, 1) for b in (-1, 1)]
    called = rung.name if rung.output == "coil" else f"{rung.output} {rung.name}"
    return [across(share, *drawn), words(share, y - NAME + 3, called, "middle", look=INK)]


LADDER = Drawing("A ladder drawing", (), _draw, families=("ladder",))
