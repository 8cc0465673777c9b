"""Charts as SVG for a page: one under the other, in the page's ink, with what its colors mean on top."""

from collections.abc import Sequence
from html import escape

from solver.render.svg import element
from solver.units.show import figures
from workbook.ui.markup import Markup

from .chart import GREY, INK, Axis, Bar, Chart, Dot, Line, Note, steps, tenfolds

__all__ = ["charts_svg", "ticks_of"]

WIDE = 440.0  # px; it shrinks to 330 on a phone, where letters of 16 are still 9 points
LETTER, LINE = 16.0, 21.0  # px
CHARACTER = 10.2  # px: what one figure takes in the widest letters that browsers have
GAP, SWATCH = 8.0, 22.0  # px
EDGE = 4.0  # px that a thick line may stand over the axes
DASH = "7 5"


def charts_svg(charts: Sequence[Chart], alt: str, name: str) -> Markup:
    """The charts under each other, described by `alt`; `name` makes ids its own."""
    drawn: list[str] = [_hatch(name)]
    y = 0.0
    for number, chart in enumerate(charts):
        pieces, tall = _chart(chart, name, f"{name}-room-{number}")
        drawn.append(element("g", *pieces, transform=f"translate(0,{y:g})"))
        y += tall
    return Markup(
        element(
            "svg", *drawn, xmlns="http://www.w3.org/2000/svg", viewBox=f"0 0 {WIDE:g} {y:g}",
            role="img", aria_label=alt, font_size=LETTER, style="color: var(--jp-ui-font-color1, #1b1b1b)",
        )
    )  # fmt: skip


def _hatch(name: str) -> str:
    """Slanted lines over the color of what is lost or saved."""
    slant = element("path", d="M0,9 L9,0", stroke=INK, stroke_width=1)
    pattern = element(
        "pattern", slant, id=f"{name}-hatch", width=9, height=9, patternUnits="userSpaceOnUse"
    )
    return element("defs", pattern)


class _Scale:
    """From the numbers of a chart to px."""

    def __init__(self, chart: Chart, left: float, top: float) -> None:
        self.left, self.top = left, top
        self.right, self.foot = WIDE - chart.right, top + chart.tall
        self.across, self.up = chart.evened(self.right - left)

    def x(self, value: float) -> float:
        return self.left + self.across.share(value) * (self.right - self.left)

    def y(self, value: float) -> float:
        return self.foot - self.up.share(value) * (self.foot - self.top)


def _chart(chart: Chart, name: str, room: str) -> tuple[list[str], float]:
    """A chart with its legend and its axes, and how high it is (px); `name` and `room` are for its ids."""
    legend, top = _legend(chart, name)
    if chart.up.label:
        legend.append(_text(0, top + LETTER, chart.up.label))
        top += LINE + 2
    up = ticks_of(chart.up)
    left = max((CHARACTER * len(text) for _, text in up), default=0.0) + (GAP if up else 2)
    scale = _Scale(chart, left, top + 6)
    across = ticks_of(scale.across)
    pieces = [*legend, *_up(scale), *_across(scale, across)]
    inside = [_piece(one, scale, name) for one in chart.drawn if isinstance(one, Bar | Line)]
    pieces += _clipped(inside, scale, room)
    pieces += [_piece(one, scale, name) for one in chart.drawn if isinstance(one, Dot | Note)]
    foot = scale.foot + (LINE if across else 4)
    for row in filter(None, chart.across.label.split("\n")):
        foot += LINE - 1
        pieces.append(_text(left, foot - 3, row))
    return pieces, foot + 8


def _clipped(pieces: Sequence[str], scale: _Scale, name: str) -> list[str]:
    """Pieces without what is beyond the axes; `name` is an id of its own."""
    wide, tall = scale.right - scale.left + 2 * EDGE, scale.foot - scale.top + 2 * EDGE
    room = element("rect", x=scale.left - EDGE, y=scale.top - EDGE, width=wide, height=tall)
    return [
        element("clipPath", room, id=name),
        element("g", *pieces, clip_path=f"url(#{name})"),
    ]


def ticks_of(axis: Axis) -> Sequence[tuple[float, str]]:
    """The values of an axis that are named, with their words."""
    if axis.ticks is not None:
        return axis.ticks
    chosen = (tenfolds if axis.tenfold else steps)(axis.low, axis.high)
    return [(value, figures(value).replace("-", "−")) for value in chosen]


def _up(scale: _Scale) -> list[str]:
    """The ticks of the upright axis: words, and where they are round numbers a thin line for each."""
    pieces = []
    for value, text in ticks_of(scale.up):
        y = scale.y(value)
        pieces.append(_text(scale.left - GAP, y + 5, text, "end"))
        if scale.up.ticks is None:
            pieces.append(_stroke((scale.left, y), (scale.right, y), GREY, 0.5))
    return pieces


def _across(scale: _Scale, ticks: Sequence[tuple[float, str]]) -> list[str]:
    """The line at the foot with its ticks and their words."""
    if not ticks:
        return []
    pieces = [_stroke((scale.left, scale.foot), (scale.right, scale.foot), GREY, 1)]
    for value, text in ticks:
        x = scale.x(value)
        half = CHARACTER * len(text) / 2
        anchor = "end" if x + half > WIDE else "start" if x - half < 0 else "middle"
        pieces.append(_stroke((x, scale.foot), (x, scale.foot + 4), GREY, 1))
        pieces.append(_text(x, scale.foot + LINE - 1, text, anchor))
    return pieces


def _piece(one: Bar | Line | Dot | Note, scale: _Scale, name: str) -> str:
    match one:
        case Bar():
            return _bar(one, scale, name)
        case Line():
            return _line(one, scale)
        case Dot():
            return _dot(one, scale.x(one.x), scale.y(one.y))
    x, y = scale.x(one.x) + one.dx, scale.y(one.y) + one.dy
    return _text(x, y, one.text, one.anchor, one.bold, one.color)


def _bar(bar: Bar, scale: _Scale, name: str) -> str:
    left, right = sorted((scale.x(bar.left), scale.x(bar.left + bar.wide)))
    top, foot = sorted((scale.y(bar.foot), scale.y(bar.foot + bar.tall)))
    return _filled(left, top, right - left, foot - top, bar, name)


def _filled(x: float, y: float, wide: float, tall: float, bar: Bar, name: str) -> str:
    """A rectangle (px) in the color of a bar, hatched where that is."""
    place: dict[str, str | float] = {"x": x, "y": y, "width": wide, "height": tall}
    opacity = 0.28 if bar.faint else 1
    drawn = element("rect", **place, fill=bar.color, fill_opacity=f"{opacity:g}")
    return drawn + (element("rect", **place, fill=f"url(#{name}-hatch)") if bar.hatched else "")


def _line(line: Line, scale: _Scale) -> str:
    """A line, in pieces where a point of it is not a number; or an area."""
    way, pen = [], "M"
    for x, y in line.points:
        if x != x or y != y:
            pen = "M"
            continue
        way.append(f"{pen}{scale.x(x):.1f},{scale.y(y):.1f}")
        pen = "L"
    if line.area:
        return element("path", d=" ".join(way) + "Z", fill=line.color, fill_opacity="0.28")
    return element("path", d=" ".join(way), fill="none", **_look(line))


def _look(line: Line) -> dict[str, str | float]:
    dash: dict[str, str | float] = {"stroke_dasharray": DASH} if line.dashed else {}
    return {"stroke": line.color, "stroke_width": line.width, "stroke_linejoin": "round", **dash}


def _dot(dot: Dot, x: float, y: float) -> str:
    match dot.shape:
        case "ring":
            return element(
                "circle", cx=x, cy=y, r=dot.r, fill="none", stroke=dot.color, stroke_width=2
            )
        case "diamond":
            way = f"M{x:.1f},{y - 8:.1f} l8,8 l-8,8 l-8,-8 Z"
            return element("path", d=way, fill=dot.color)
        case "square":
            return element("rect", x=x - 5, y=y - 5, width=10, height=10, fill=dot.color)
    return element("circle", cx=x, cy=y, r=dot.r, fill=dot.color)


def _stroke(start: tuple[float, float], end: tuple[float, float], color: str, width: float) -> str:
    (x1, y1), (x2, y2) = start, end
    return element("line", x1=x1, y1=y1, x2=x2, y2=y2, stroke=color, stroke_width=width)


def _text(
    x: float, y: float, text: str, anchor: str = "start", bold: bool = False, color: str = INK
) -> str:
    weight: dict[str, str | float] = {"font_weight": "bold"} if bold else {}
    return element("text", escape(text), x=x, y=y, text_anchor=anchor, fill=color, **weight)


def _legend(chart: Chart, name: str) -> tuple[list[str], float]:
    """What each color means, in as many lines as that takes, and where they end (px)."""
    pieces: list[str] = []
    x, y = 0.0, 0.0
    for one in chart.drawn:
        if isinstance(one, Note) or not one.label:
            continue
        length = SWATCH + GAP + CHARACTER * len(one.label)
        if x and x + length > WIDE:
            x, y = 0.0, y + LINE
        pieces += [_swatch(one, x, y + 5, name), _text(x + SWATCH + GAP, y + LETTER, one.label)]
        x += length + 2 * GAP
    return pieces, y + LINE + 2 if pieces else 0.0


def _swatch(one: Bar | Line | Dot, x: float, y: float, name: str) -> str:
    match one:
        case Bar():
            return _filled(x, y, SWATCH, 12, one, name)
        case Line():
            return element("path", d=f"M{x:.1f},{y + 6:.1f} h{SWATCH:g}", fill="none", **_look(one))
    return _dot(one, x + SWATCH / 2, y + 6)
