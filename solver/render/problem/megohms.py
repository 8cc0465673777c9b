"""An insulation test over ten minutes, and readings corrected to 40 °C."""

from itertools import pairwise

from solver.render.svg import ACCENT, SOFT, Look, across, block, circle, element, line, path

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown, words

__all__ = ["CORRECTED", "OVER_TIME"]

TIMES = (("30s", "30 s", 16.5), ("1min", "1 min", 48.0), ("10min", "10 min", 81.5))
ENDS = {"30s": (0.0, "start"), "10min": (100.0, "end")}  # a long reading stays inside
LOW, HIGH, AXIS = 74.0, 34.0, 104.0  # px: the lowest and the highest reading, the axis
BOX, RIGHT = 48.0, 58.0  # px and percent: a reading's box, where the corrected one is
RATIOS: Rows = (
    ("absorption_ratio", "DAR"),
    ("polarization_index", "PI"),
    ("test_volts", "test at"),
    ("insulation_at_40", "at 40 °C"),
)


def _over_time(shown: Shown) -> Drawn:
    current = shown.has(*(f"leakage_{when}" for when, _, _ in TIMES))
    what = "leakage" if current else "insulation"
    read = [time for time in TIMES if shown.has(f"{what}_{time[0]}")]
    points = list(
        zip(read, _heights([shown.number(f"{what}_{when}") for when, _, _ in read]), strict=True)
    )
    pieces = [line(0, 100, AXIS, stroke=SOFT, stroke_width=1.5)]
    for ((_, _, left), y), ((_, _, right), then) in pairwise(points):
        ends: Look = {"x1": f"{left:g}%", "y1": y, "x2": f"{right:g}%", "y2": then}
        pieces.append(element("line", **ends, stroke=ACCENT, stroke_width=2.5))
    before = LOW
    for number, ((when, said, share), y) in enumerate(points):
        between = 0 < number < len(points) - 1  # under the curve, clear of both others
        beside, before = y + 22 if between or (number and y >= before) else y - 12, y
        at, anchor = ENDS.get(when, (share, "middle"))
        pieces += [
            across(share, circle(0, y, 5, fill=ACCENT)),
            across(share, path((0, AXIS), (0, AXIS + 5), stroke=SOFT, width=1.5)),
            words(share, AXIS + 20, said, "middle"),
            shown.note(at, beside, f"{what}_{when}", "", anchor),
        ]
    more, foot = shown.flow(AXIS + 22 + LINE, RATIOS)
    return Drawn(pieces + more, foot)


def _heights(values: list[float | None]) -> list[float]:
    """Where each reading is (px), the most at the top; one that is asked is halfway up."""
    given = [value for value in values if value is not None]
    low, high = min(given, default=0.0), max(given, default=1.0)
    span = high - low or 1.0
    return [
        (LOW + HIGH) / 2 if value is None else LOW - (value - low) / span * (LOW - HIGH)
        for value in values
    ]


OVER_TIME = Drawing(
    "An insulation test over ten minutes",
    (
        *(f"{what}_{when}" for when, _, _ in TIMES for what in ("insulation", "leakage")),
        *(name for name, _ in RATIOS),
    ),
    _over_time,
    (),
    tuple(f"{what}_{when}" for when, _, _ in TIMES for what in ("insulation", "leakage")),
)

ROWS = (
    ("before, ", "insulation_before", "winding_temperature_before", "insulation_at_40_before"),
    ("", "insulation", "winding_temperature", "insulation_at_40"),
)
METER: Rows = (
    ("rated_volts", "nameplate"),
    ("test_volts", "test at"),
    ("leakage_current", "leakage"),
    ("insulation_kept", "left of it"),
)


def _corrected(shown: Shown) -> Drawn:
    pieces: list[str] = []
    read = [row for row in ROWS if shown.has(row[1], row[2]) or shown.asks(row[1])]
    y = 4.0
    for when, reading, temperature, at_40 in read:
        at = f"{when}at" if shown.has(temperature) else f"{when}reading"
        pieces += [
            _box(0, y),
            shown.note(0, y + 19, temperature, at, dx=10),
            shown.note(0, y + 38, reading, "reads" if shown.asks(reading) else "", dx=10),
        ]
        if shown.works(at_40):
            pieces += [
                _arrow(y),
                _box(RIGHT, y),
                shown.stacked(RIGHT, y + 19, at_40, f"{when}at 40 °C", dx=10),
            ]
        y += BOX + 6
    given = [row for row in ROWS if row not in read and shown.works(row[3])]
    for share, (when, _, _, at_40) in zip((0, RIGHT), given, strict=False):
        pieces += [_box(share, y), shown.stacked(share, y + 19, at_40, f"{when}at 40 °C", dx=10)]
    y += (BOX + 6) * bool(given)
    pieces += [_arrow(y - BOX - 6)] * (len(given) > 1)
    more, foot = shown.flow(y + 16, METER)
    return Drawn(pieces + more, foot)


def _box(share: float, y: float) -> str:
    return block(share, share + 42, y, BOX, rx=6, fill=ACCENT, fill_opacity=0.15)


def _arrow(y: float) -> str:
    return across(50, path((-20, 0), (20, 0)), path((12, -6), (20, 0), (12, 6)), y=y + BOX / 2)


CORRECTED = Drawing(
    "Insulation resistance, corrected to 40 °C",
    (*(name for row in ROWS for name in row[1:]), *(name for name, _ in METER)),
    _corrected,
    ("insulation_at_40", "insulation"),
    ("insulation", "insulation_at_40", "insulation_before"),
)
