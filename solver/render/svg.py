"""Pieces of a drawing as SVG text: lines, pipes, valves, gauges, labels. Everything said is escaped.

A drawing that has no viewBox keeps its letters and its height, and takes the width it is given: `across` puts
pieces in px at a share of that width, and `stretched` draws a shape that grows with it. A drawing takes its colors from the page: `currentColor` for what is drawn and said, and the variables
`--w2w-soft`, `--w2w-accent`, `--w2w-look`, `--w2w-page` and `--w2w-water`, each with a color that stands on light and dark.
"""

from html import escape

__all__ = [
    "ACCENT",
    "INK",
    "LOOK",
    "PAGE",
    "SOFT",
    "TEXT",
    "WATER",
    "Look",
    "across",
    "block",
    "check_valve",
    "circle",
    "element",
    "gate_valve",
    "height",
    "label",
    "line",
    "path",
    "rect",
    "shape",
    "stretched",
    "wide",
]

Look = dict[str, str | float]

INK = "currentColor"
SOFT = "var(--w2w-soft, currentColor)"
ACCENT = "var(--w2w-accent, #0b7a83)"
LOOK = "var(--w2w-look, #b45f06)"
PAGE = "var(--w2w-page, Canvas)"
WATER = "var(--w2w-water, #4a9cc4)"
TEXT = 13.5  # px when the drawing is as wide as its viewBox says


def element(tag: str, *inside: str, **attributes: str | float) -> str:
    """An element; `stroke_width` is written stroke-width, and numbers to a tenth.

    >>> element("rect", x=1.0, stroke_width=2.25, fill="none")
    '<rect x="1" stroke-width="2.2" fill="none"/>'
    """
    named = "".join(
        f' {name.rstrip("_").replace("_", "-")}="{_value(value)}"'
        for name, value in attributes.items()
    )
    return f"<{tag}{named}>{''.join(inside)}</{tag}>" if inside else f"<{tag}{named}/>"


def _value(value: str | float) -> str:
    return escape(value) if isinstance(value, str) else f"{value:.1f}".removesuffix(".0")


def path(
    *points: tuple[float, float],
    stroke: str = INK,
    width: float = 2.0,
    dash: str = "",
    fill: str = "none",
) -> str:
    """A line through points (px), with round corners."""
    way = "M" + " L".join(f"{x:g},{y:g}" for x, y in points)
    dashed = {"stroke_dasharray": dash} if dash else {}
    return element(
        "path",
        d=way,
        fill=fill,
        stroke=stroke,
        stroke_width=width,
        stroke_linejoin="round",
        **dashed,
    )


def rect(x: float, y: float, width: float, height: float, **attributes: str | float) -> str:
    """A rectangle by its upper left corner (px)."""
    return element("rect", x=x, y=y, width=width, height=height, **attributes)


def circle(x: float, y: float, r: float, **attributes: str | float) -> str:
    """A circle (px)."""
    return element("circle", cx=x, cy=y, r=r, **attributes)


def label(
    x: float, y: float, name: str, value: str = "", anchor: str = "start", first_bold: bool = False
) -> str:
    """A name in plain letters and its value in bold ones, or the other way, on a halo of the page's color."""
    parts: list[str] = []
    for text, bold in ((name, first_bold), (value, not first_bold)):
        space = " " if parts and text else ""
        if text:
            look: Look = {"font_weight": "600"} if bold else {"fill": SOFT}
            parts.append(element("tspan", escape(space + text), **look))
    return element(
        "text",
        *parts,
        x=x,
        y=y,
        text_anchor=anchor,
        font_size=TEXT,
        fill=INK,
        stroke=PAGE,
        stroke_width=3.0,
        stroke_linejoin="round",
        paint_order="stroke",
    )


def across(share: float, *inside: str, y: float = 0) -> str:
    """Pieces drawn in px from a point at `share` percent of the drawing's width, `y` px down."""
    return element("svg", *inside, x=f"{share:g}%", y=y, overflow="visible")


def line(left: float, right: float, y: float, start: float = 0, **attributes: str | float) -> str:
    """A level line between two shares (percent) of the width, `y` px down; or from `start` px to the right one."""
    ends: Look = {"x1": start or f"{left:g}%", "x2": f"{right:g}%", "y1": y, "y2": y}
    return element("line", **ends, **{"stroke": INK, "stroke_width": 2.0, **attributes})


def block(left: float, right: float, top: float, tall: float, **look: str | float) -> str:
    """A rectangle between two shares (percent) of the drawing's width, `top` and `tall` in px."""
    return element("rect", x=f"{left:g}%", y=top, width=f"{right - left:g}%", height=tall, **look)


def height(x: float, top: float, bottom: float) -> list[str]:
    """A height between two levels (px), with an arrow at each end."""
    top, bottom = sorted((top, bottom))
    return [
        path((x, top), (x, bottom), width=1.5),
        path((x - 4, top + 6), (x, top), (x + 4, top + 6), width=1.5),
        path((x - 4, bottom - 6), (x, bottom), (x + 4, bottom - 6), width=1.5),
    ]


def shape(*points: tuple[float, float], **look: str | float) -> str:
    """A closed shape through points (px)."""
    way = "M" + " L".join(f"{x:g},{y:g}" for x, y in points) + "Z"
    return element("path", d=way, **look)


def stretched(
    left: float,
    right: float,
    top: float,
    tall: float,
    *points: tuple[float, float],
    **look: str | float,
) -> str:
    """A shape between two shares (percent) of the width and `tall` px high; its points go from 0 to 100 each way."""
    drawn = shape(*points, vector_effect="non-scaling-stroke", **look)
    return element(
        "svg", drawn, x=f"{left:g}%", y=top, width=f"{right - left:g}%", height=tall,
        viewBox="0 0 100 100", preserveAspectRatio="none", overflow="visible",
    )  # fmt: skip


NARROW, BROAD = frozenset("iljtfrI.,:;'|!()[]/ -"), frozenset("mwMWNOQGDH%@→≥")


def wide(text: str, bold: bool = False, size: float = TEXT) -> float:
    """How wide a text is at most (px), by the widest letters that browsers have for it.

    >>> wide("ill") < wide("gpm") < wide("gpm", bold=True)
    True
    """
    ems = sum(0.38 if c in NARROW else 0.95 if c in BROAD else 0.62 for c in text)
    return ems * size * (1.1 if bold else 1.0)


def check_valve(x: float, y: float) -> str:
    """A check valve in a pipe that runs to the right."""
    flap = path((x - 8, y - 8), (x + 7, y), (x - 8, y + 8), (x - 8, y - 8), fill=PAGE, width=2.5)
    return element("g", flap, path((x + 8, y - 9), (x + 8, y + 9), width=3))


def gate_valve(x: float, y: float) -> str:
    """A gate valve with its handwheel."""
    corners = ((x - 9, y - 8), (x + 9, y + 8), (x + 9, y - 8), (x - 9, y + 8), (x - 9, y - 8))
    stem = path((x, y), (x, y - 15), width=2.5)
    wheel = path((x - 7, y - 15), (x + 7, y - 15), width=3)
    return element("g", path(*corners, fill=PAGE, width=2.5), stem, wheel)
