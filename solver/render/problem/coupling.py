"""A coupling between motor and pump, with the gap between its halves; and wear rings in one another."""

from solver.render.svg import INK, LOOK, PAGE, SOFT, across, circle, path, rect, shape

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown, words

__all__ = ["COUPLING", "WEAR_RINGS"]

Y = 62.0  # px: the shafts
RIM: Rows = (("rim_reading", "indicator moves"), ("parallel_offset", "offset"))
GAPS: Rows = (
    ("wide_gap", "gap at the top"),
    ("narrow_gap", "gap at the bottom"),
    ("coupling_diameter", "coupling"),
    ("foot_spacing", "feet apart"),
    ("shim_thickness", "shim under the back feet"),
)
RINGS: Rows = (
    ("case_ring_bore", "case ring inside"),
    ("impeller_ring_diameter", "impeller ring outside"),
    ("ring_gap", "clearance"),
    ("new_ring_gap", "clearance when new"),
    ("ring_wear", "of the new clearance"),
)


def _draw(shown: Shown) -> Drawn:
    angled = shown.has("wide_gap", "narrow_gap")
    pieces = [across(0, *_machines(angled))]
    pieces += [words(0, Y + 5, "Motor", "middle", dx=52), words(0, Y + 5, "Pump", "middle", dx=276)]
    more, foot = shown.flow(Y + 74, GAPS if angled else RIM, room=LEAST)
    return Drawn([*pieces, *more], foot)


def _machines(angled: bool) -> list[str]:
    """The motor on its feet, the halves of the coupling, and the pump; out by far more than real ones."""
    lean, low = (7, 0) if angled else (0, 8)
    half = ((150 - lean, Y - 34 + low), (166 - lean, Y - 34 + low), (166 + lean, Y + 34 + low), (150 + lean, Y + 34 + low))  # fmt: skip
    feet = [rect(x, Y + 30, 18, 8, fill=INK) for x in (16, 70)]
    return [
        path((2, Y + 42), (328, Y + 42), stroke=SOFT, width=4),
        *feet,
        path((100, Y + low), (152, Y + low), stroke=SOFT, width=6),
        path((188, Y), (236, Y), stroke=SOFT, width=6),
        rect(4, Y - 30, 96, 60, fill=PAGE, stroke=INK, stroke_width=2.5),
        shape(*half, fill=PAGE, stroke=INK, stroke_width=2.5),
        rect(176, Y - 34, 16, 68, fill=PAGE, stroke=LOOK, stroke_width=2.5),
        rect(236, Y - 30, 80, 60, fill=PAGE, stroke=INK, stroke_width=2.5),
        rect(250, Y + 30, 52, 8, fill=INK),
    ]


def _draw_rings(shown: Shown) -> Drawn:
    rings = [
        circle(58, 62, 56, fill=SOFT, fill_opacity=0.35, stroke=INK, stroke_width=2.5),
        circle(58, 62, 42, fill=PAGE, stroke=INK, stroke_width=2.5),
        circle(58, 62, 35, fill=PAGE, stroke=LOOK, stroke_width=2.5),
        circle(58, 62, 20, fill="none", stroke=LOOK, stroke_width=2.5),
    ]
    more, foot = shown.column(0, 22, RINGS, dx=132)
    return Drawn([across(0, *rings), *more], max(foot, 122))


COUPLING = Drawing("A coupling between motor and pump", tuple(n for n, _ in (*RIM, *GAPS)), _draw)
WEAR_RINGS = Drawing("Wear rings", tuple(name for name, _ in RINGS), _draw_rings)
