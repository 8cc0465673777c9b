"""Where the water comes from and the pump that moves it: a well or a tank, one scene a kind of station."""

from solver.station.station import Station

from .picture_pieces import (
    FLOOR,
    GROUND,
    PIPE,
    WALL,
    Texts,
    gauge,
    ground_line,
    level_at,
    pump_at,
    submersible_at,
    water_body,
    well_with_floats,
)
from .svg import ACCENT, SOFT, label, path, rect

__all__ = ["RISER", "source"]

RISER = 188.0  # where the discharge goes up


def source(station: Station, texts: Texts) -> list[str]:
    """The water and the pump."""
    if station.kind.submerged:
        return (_in_the_well if station.well else _in_a_channel)(station, texts)
    if station.well is None:
        return _beside_a_tank(station, texts)
    lifts = station.suction is not None and station.suction.lift > 0
    return _above(station, texts) if lifts else _dry_pit(station, texts)


def _in_the_well(station: Station, texts: Texts) -> list[str]:
    """A submersible in its well, its gauge on the pipe at the top."""
    left, right = 20.0, 202.0
    return [
        *well_with_floats(station, texts, left, right, 124),
        path((RISER - 30, FLOOR - 14), (RISER, FLOOR - 14), (RISER, PIPE), width=6),
        *submersible_at(RISER - 34, FLOOR - 2),
        *gauge(270, PIPE - 28, (270, PIPE), texts.get("discharge_gauge", ""), (270, PIPE - 46)),
    ]


def _in_a_channel(station: Station, texts: Texts) -> list[str]:
    """A propeller pump at the foot of its column, in a channel."""
    left, right, surface = 8.0, 206.0, PIPE + 24
    return [
        *ground_line((left, right)),
        *water_body(left, right, surface, GROUND + 10),
        path(
            (left, surface - 9),
            (left, GROUND + 10),
            (right, GROUND + 10),
            (right, surface - 9),
            width=4,
        ),
        path((RISER, GROUND - 8), (RISER, PIPE), width=6),
        path(
            (RISER - 11, GROUND + 4),
            (RISER - 7, GROUND - 22),
            (RISER + 7, GROUND - 22),
            (RISER + 11, GROUND + 4),
            (RISER - 11, GROUND + 4),
            fill=ACCENT,
            stroke=ACCENT,
            width=2,
        ),
        rect(RISER - 9, PIPE - 42, 18, 34, rx=3, fill=ACCENT),
        path((RISER, PIPE - 8), (RISER, PIPE), width=3),
        *gauge(270, PIPE - 28, (270, PIPE), texts.get("discharge_gauge", ""), (270, PIPE - 46)),
    ]


def _dry_pit(station: Station, texts: Texts) -> list[str]:
    """A pump on the floor of a dry pit beside the well."""
    left, right = 8.0, 122.0
    y = FLOOR - 26
    return [
        *well_with_floats(station, texts, left, right, right - 12),
        path((right + 2.5, FLOOR + 2.5), (204, FLOOR + 2.5), (204, GROUND - 8), width=WALL),
        path((right - 4, y), (168, y), width=6),
        path((172, y), (RISER, y - 8), (RISER, PIPE), width=6),
        *pump_at(162, y),
        *gauge(146, y - 34, (146, y), texts.get("suction_gauge", ""), (130, y - 50), "start"),
        *gauge(
            158, y - 92, (RISER, y - 92), texts.get("discharge_gauge", ""), (130, y - 109), "start"
        ),
    ]


def _above(station: Station, texts: Texts) -> list[str]:
    """A pump on the ground, above the water it draws up."""
    left, right = 8.0, 150.0
    well = station.well
    assert well is not None
    y, x = GROUND - 19, 112.0
    surface = level_at(well, well.depth)
    lift = texts.get("suction_lift", "")
    vacuum = texts.get("suction_vacuum", texts.get("suction_gauge", ""))
    return [
        *well_with_floats(station, texts, left, right, 108),
        path((x + 16, FLOOR - 12), (x + 16, y), (168, y), width=6),
        path((172, y), (RISER, y - 8), (RISER, PIPE), width=6),
        *pump_at(168, y),
        *gauge(144, y - 34, (144, y), vacuum, (150, y - 50)),
        *gauge(270, PIPE - 28, (270, PIPE), texts.get("discharge_gauge", ""), (270, PIPE - 46)),
        path((160, y + 26), (160, surface), width=1.2, stroke=SOFT),
        path((right + 6, surface), (174, surface), width=1.2, stroke=SOFT, dash="3 3"),
        label(165, (GROUND + surface) / 2 + 4, "lift") if lift else "",
        label(165, (GROUND + surface) / 2 + 21, "", lift) if lift else "",
    ]


def _beside_a_tank(station: Station, texts: Texts) -> list[str]:
    """A pump on the ground, its suction from a tank whose water is above it."""
    left, right, top = 4.0, 112.0, 40.0
    y = GROUND - 19
    over = texts.get("static_suction_head", "")
    return [
        *ground_line(),
        *water_body(left, right, top + 16, GROUND - 2),
        path((left, top), (left, GROUND - 1), (right, GROUND - 1), (right, top), width=4),
        path((right - 2, y), (168, y), width=6),
        path((172, y), (RISER, y - 8), (RISER, PIPE), width=6),
        *pump_at(170, y),
        *gauge(140, y - 34, (140, y), texts.get("suction_gauge", ""), (120, y - 50), "start"),
        *gauge(270, PIPE - 28, (270, PIPE), texts.get("discharge_gauge", ""), (270, PIPE - 46)),
        label(left + 6, top + 38, "", over) if over else "",
        label(left + 6, top + 55, "over the pump") if over else "",
    ]
