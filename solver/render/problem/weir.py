"""Weirs, seen from upstream, and a flume from the side: the head and the flow. Not to scale."""

from solver.render.svg import ACCENT, SOFT, WATER, across, element, height, path, rect

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown

__all__ = ["FLUME", "WEIR"]

WIDE, TOP, SURFACE, CREST, FLOOR = 150.0, 8.0, 34.0, 74.0, 104.0  # px
LEFT, RIGHT = 38.0, 112.0  # px: the opening at the surface
BESIDE = WIDE + 24
OVER: Rows = (
    ("notch_angle", "degrees"),
    ("notch_constant", "constant"),
    ("crest_length", "crest"),
    ("contracted_crest", "crest"),
    ("upstream_depth", "upstream"),
    ("crest_height", "crest at"),
    ("weir_head", "head"),
    ("weir_flow", "flow"),
)
THROUGH: Rows = (
    ("flume_throat", "throat"),
    ("flume_constant", "constant"),
    ("flume_exponent", "exponent"),
    ("flume_head", "upstream"),
    ("downstream_head", "downstream"),
    ("submergence", "submergence"),
    ("flume_flow", "flow"),
)


def _beside(shown: Shown, drawn: list[str], rows: Rows) -> Drawn:
    """A drawing, and its values at its right."""
    more, foot = shown.flow(TOP + 20, rows, room=LEAST - BESIDE, dx=BESIDE)
    return Drawn([across(0, *drawn), *more], max(foot, FLOOR + 6))


def _weir(shown: Shown) -> Drawn:
    notch = shown.works("notch_angle", "notch_constant")
    whole = shown.has("crest_length")
    low = (WIDE / 2,) if notch else (LEFT, RIGHT)
    left, right = (0.0, WIDE) if whole else (LEFT, RIGHT)
    foot = (0.0, WIDE) if whole else low
    opening = ((left, SURFACE), *((x, CREST) for x in foot), (right, SURFACE))
    rises = [(left, TOP), *opening[1:-1], (right, TOP)]
    if notch:  # its sides go on up at the same slope
        more = (WIDE / 2 - LEFT) * (SURFACE - TOP) / (CREST - SURFACE)
        rises = [(LEFT - more, TOP), (WIDE / 2, CREST), (RIGHT + more, TOP)]
    plate = ((0.0, TOP), *rises, (WIDE, TOP), (WIDE, FLOOR), (0.0, FLOOR))
    points = " ".join(f"{x:g},{y:g}" for x, y in opening)
    drawn = [
        element("polygon", points=points, fill=WATER, fill_opacity=0.45),
        path(*plate, (0, TOP), width=2, stroke=ACCENT, fill=SOFT),
        path(opening[0], opening[-1], stroke=WATER, width=2.5),
        *height(WIDE / 2, SURFACE + 2, CREST - 2),
    ]
    return _beside(shown, drawn, OVER)


def _flume(shown: Shown) -> Drawn:
    behind = shown.has("downstream_head", "submergence")
    tail = SURFACE + 14 if behind else FLOOR - 16
    water = ((0, SURFACE), (58, SURFACE), (96, tail if behind else SURFACE + 40), (WIDE, tail))
    bed = ((0, CREST + 8), (62, CREST + 8), (92, FLOOR - 2), (116, FLOOR - 10), (WIDE, FLOOR - 10))
    points = " ".join(f"{x:g},{y:g}" for x, y in (*water, *reversed(bed)))
    drawn = [
        element("polygon", points=points, fill=WATER, fill_opacity=0.4),
        path(*water, stroke=WATER, width=2.5),
        path(*bed, width=4),
        *height(26, SURFACE + 2, CREST + 4),
        path((112, TOP + 8), (140, TOP + 8), width=2.2),
        path((133, TOP + 3), (140, TOP + 8), (133, TOP + 13), width=2.2),
        rect(20, TOP, 12, 8, rx=2, fill=ACCENT),
        path((26, TOP + 8), (26, SURFACE - 2), stroke=SOFT, width=1.2, dash="3 3"),
    ]
    return _beside(shown, drawn, THROUGH)


WEIR = Drawing("A weir, seen from upstream", tuple(name for name, _ in OVER), _weir)
FLUME = Drawing(
    "A flume from the side",
    tuple(name for name, _ in THROUGH),
    _flume,
    core=("flume_head", "submergence"),
)
