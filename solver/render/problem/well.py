"""A wet well in section: what comes in, floats, volume, sizes, the pump and what it moves out."""

from solver.render.svg import (
    ACCENT,
    INK,
    LOOK,
    PAGE,
    SOFT,
    WATER,
    across,
    circle,
    line,
    path,
    rect,
    wide,
)
from solver.units.quantity import Text

from .drawing import Drawing, Drawn
from .shown import LEAST, LINE, Rows, Shown

__all__ = ["WELL"]

LEFT, WIDE = 28.0, 126.0  # px: the well's left wall, and how wide it is
GROUND, ON, OFF, FLOOR = 30.0, 64.0, 114.0, 138.0  # px from the top
PIPE = 18.0
BESIDE = LEFT + WIDE + 12  # px: where what is beside the well begins
LEVELS: Rows = (("on_level", "on"), ("off_level", "off"))
BETWEEN: Rows = (
    ("working_volume", "volume"),
    ("least_volume", "min. volume"),
    ("working_depth", "depth"),
    ("least_depth", "min. depth"),
)
IN: Rows = (("inflow", "in"), ("daily_inflow", "in"))
OUT: Rows = (
    ("flow", "out"),
    ("drawdown_rate", "drawdown"),
    ("rise_rate", "fills at"),
    ("metered_flow", "meter"),
    ("meter_error", "error"),
)
SIZES: Rows = (
    ("well_diameter", "diameter"),
    ("well_length", ""),
    ("well_width", "×"),
    ("volume_per_depth", ""),
)
DEEP: Rows = (
    ("depth_to_overflow", "down to overflow"),
    ("depth_to_water", "down to water"),
    ("depth_to_floor", "down to floor"),
    ("storage_depth", "up to overflow"),
    ("water_depth", "water depth"),
    ("well_volume", "volume"),
    ("storage_volume", "storage"),
    ("sewer_storage", "in the sewer"),
    ("total_storage", "storage in all"),
    ("storage_time", "until overflow"),
)
TIMED: Rows = (
    ("drawdown_read", "drops"),
    ("drawdown_time", "in"),
    ("rise_read", "rises"),
    ("rise_time", "in"),
    ("closed_rise_read", "closed: rises"),
    ("closed_rise_volume", "closed: rises"),
    ("closed_rise_time", "closed, in"),
    ("rise_time_1", "Pump 1 valved off: in"),
    ("rise_time_2", "Pump 2 valved off: in"),
    ("rise_rate_1", "Pump 1 valved off"),
    ("rise_rate_2", "Pump 2 valved off"),
    ("leakage", "leaks back"),
    ("rated_flow", "rated flow"),
    ("rated_head", "rated head"),
    ("head", "TDH"),
)
CYCLE: Rows = (
    ("fill_time", "fill time"),
    ("pump_down_time", "pump-down time"),
    ("cycle_time", "cycle time"),
    ("shortest_cycle", "shortest cycle"),
    ("least_cycle", "minimum cycle"),
    ("motor_cycle", "time between starts"),
    ("starts_per_hour", ""),
    ("most_starts", "allowed"),
    ("alternating_pumps", "alternating pumps"),
    ("pump_starts", "each pump"),
    ("hours_per_day", "pumping"),
    ("pump_hours", "each"),
    ("motor_size", "motor"),
)


def _draw(shown: Shown) -> Drawn:
    right = LEFT + WIDE
    floats = shown.works("on_level", "off_level", "fill_time", *(name for name, _ in BETWEEN))
    inside, into, out = map(shown.first, (BETWEEN, IN, OUT))
    pieces = [across(0, *_well(floats)), *_pump(right)]
    pieces.append(shown.note(0, GROUND - 10, into[0], into[1], first=True))
    pieces.append(shown.note(0, PIPE - 2, out[0], out[1], dx=right + 20))
    if floats:
        pieces += [
            shown.note(0, y + 5, name, called, dx=BESIDE)
            for (name, called), y in zip(LEVELS, (ON, OFF), strict=True)
        ]
        if shown.has(inside[0]):
            pieces.append(shown.stacked(0, (ON + OFF) / 2 - 4, *inside, dx=LEFT + 8))
    rest = [
        row
        for row in (*OUT, *IN, *BETWEEN, *DEEP, *TIMED, *CYCLE)
        if row not in (inside, into, out)
    ]
    room = LEAST - BESIDE
    short = [row for row in rest if _length(shown, *row) <= room]
    top = OFF + LINE + 5 if floats else PIPE + 42
    more, foot = shown.flow(top, short, room=room, dx=BESIDE)
    long = [row for row in rest if row not in short]
    under = max(FLOOR + 20, foot + LINE) if shown.has(*(name for name, _ in long)) else FLOOR + 20
    below, low = shown.flow(under, (*SIZES, *long))
    return Drawn([*pieces, *more, *below], max(low, foot, FLOOR + 4))


def _length(shown: Shown, name: str, caption: Text) -> float:
    """What a quantity takes beside the well (px)."""
    return wide(f"{shown.caption(name, caption)} ") + wide(shown.text(name), True)


def _well(floats: bool) -> list[str]:
    """The ground, walls, water, inflow and floats, in px from the left edge."""
    right, surface = LEFT + WIDE, ON if floats else ON + 12
    drawn = [
        path((0, GROUND), (LEFT, GROUND), stroke=SOFT),
        rect(LEFT, surface, WIDE, FLOOR - surface, fill=WATER, fill_opacity=0.35),
        path((LEFT, surface), (right, surface), stroke=WATER, width=2.5),
        path((LEFT, GROUND - 6), (LEFT, FLOOR), (right, FLOOR), (right, GROUND - 6), width=4),
        path((0, GROUND + 14), (LEFT + 2, GROUND + 14), stroke=WATER, width=7),
        path((LEFT + 2, GROUND + 16), (LEFT + 8, GROUND + 24), (LEFT + 8, surface), stroke=WATER),
    ]
    if floats:
        for y in (ON, OFF):
            drawn += [
                path((right - 12, GROUND - 6), (right - 12, y), stroke=SOFT, width=1),
                path((right - 12, y), (right + 10, y), stroke=SOFT, width=1, dash="3 3"),
                circle(right - 12, y, 5, fill=LOOK, stroke=PAGE, stroke_width=1.5),
            ]
    return drawn


def _pump(right: float) -> list[str]:
    """A submersible on the floor with its discharge up and out to the right edge."""
    x = right - 64
    return [
        across(
            0,
            path(
                (x + 14, FLOOR - 10),
                (x + 24, FLOOR - 10),
                (x + 24, PIPE + 6),
                (right + 10, PIPE + 6),
                width=5,
            ),
            rect(x - 12, FLOOR - 32, 24, 20, rx=3, fill=ACCENT),
            path(
                (x - 15, FLOOR - 2),
                (x - 11, FLOOR - 12),
                (x + 11, FLOOR - 12),
                (x + 15, FLOOR - 2),
                fill=ACCENT,
                stroke=ACCENT,
            ),
        ),
        line(0, 100, PIPE + 6, right + 10, stroke=INK, stroke_width=5),
        line(0, 100, GROUND, right, stroke=SOFT, stroke_width=1),
    ]


PLACES = dict.fromkeys(
    name for rows in (LEVELS, BETWEEN, IN, OUT, SIZES, DEEP, TIMED, CYCLE) for name, _ in rows
)
ELSEWHERE = ("flow", "rated_flow", "rated_head", "head", "hours_per_day", "motor_size")  # too
WELL = Drawing(
    "A wet well in section",
    tuple(PLACES),
    _draw,
    ("flow", "inflow"),
    tuple(name for name in PLACES if name not in ELSEWHERE),
)
