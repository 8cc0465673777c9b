"""From water to water: the two surfaces, the pump between them, and every part of the head in its place."""

from solver.render.svg import (
    ACCENT,
    INK,
    SOFT,
    WATER,
    across,
    block,
    circle,
    height,
    line,
    path,
    rect,
)
from solver.units.quantity import Both

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown

__all__ = ["PROFILE"]

# px: the main, the upper water, the pump, the floor of the lower; the lower under the pump and over it
MAIN, HIGH, PUMP, BOTTOM = 24.0, 36.0, 78.0, 128.0
LIFTED, FLOODED = 118.0, 40.0
TANK, RULER = 77.0, 71.0  # percent: where the tank begins, where heights are measured
SUMP = 106.0  # px: the lower water's right edge
LOSSES: Rows = (
    ("friction_head", "friction"),
    ("minor_loss", "minor losses"),
    ("friction_rate", ""),
    ("delivery_pressure", "at the end"),
    ("outlet_velocity", "at the outlet"),
)
PIPE: Rows = (
    ("flow", "flow"),
    ("daily_flow", "flow"),
    ("weight_flow", ""),
    ("pipe_length", "pipe"),
    ("pipe_diameter", "inside"),
    ("c_factor", "C"),
)
POWER: Rows = (
    ("pressure", "pressure rise"),
    ("water_power", Both("WHP", "water")),
    ("pump_efficiency", "pump"),
    ("brake_power", Both("BHP", "shaft")),
    ("lifting_work", "work"),
)


def _draw(shown: Shown) -> Drawn:
    flooded = shown.works("static_suction_head")
    surface = FLOODED if flooded else LIFTED
    split = shown.works("static_discharge_head")
    pieces = [*_waters(surface), *_machine()]
    pieces.append(line(0, RULER + 2, surface, stroke=SOFT, stroke_width=1, stroke_dasharray="4 4"))
    pieces.append(line(RULER - 2, TANK, HIGH, stroke=SOFT, stroke_width=1, stroke_dasharray="4 4"))
    low = PUMP if split else surface
    pieces.append(across(RULER, *height(0, HIGH, low)))
    name, called = (
        ("static_discharge_head", "discharge head") if split else ("static_head", "static head")
    )
    pieces.append(shown.stacked(RULER, (HIGH + low) / 2 - 4, name, called, "end", dx=-8))
    for name, called in (("suction_lift", "suction lift"), ("static_suction_head", "suction head")):
        if shown.has(name):
            pieces.append(
                across(0, path((0, PUMP), (SUMP, PUMP), stroke=SOFT, width=1, dash="4 4"))
            )
            pieces.append(across(0, *height(10, surface, PUMP)))
            pieces.append(shown.stacked(0, (surface + PUMP) / 2 - 2, name, called, dx=18))
    if split and shown.has("static_head"):
        pieces.append(shown.note(RULER, BOTTOM + 7, "static_head", "static head", "end", dx=-8))
    pieces.append(shown.note(0, surface - 7, "suction_elevation", dx=8))
    pieces.append(shown.note((TANK + 100) / 2, HIGH + 26, "discharge_elevation", "", "middle"))
    pieces.append(shown.note(0, 17, "head", Both("TDH", "TDH")))
    more, foot = shown.flow(BOTTOM + LINE + 3, (*LOSSES, *PIPE, *POWER))
    return Drawn(pieces + more, max(foot, BOTTOM + 9))


def _waters(surface: float) -> list[str]:
    """The lower water on the left, the tank on the right."""
    return [
        rect(0, surface, SUMP, BOTTOM - surface, fill=WATER, fill_opacity=0.35),
        across(0, path((0, surface), (SUMP, surface), stroke=WATER, width=2.5)),
        across(0, path((0, 32), (0, BOTTOM), (SUMP, BOTTOM), (SUMP, 32), width=3)),
        block(TANK, 100, HIGH, 44, fill=WATER, fill_opacity=0.35),
        line(TANK, 100, HIGH, stroke=WATER, stroke_width=2.5),
        line(TANK, 100, HIGH + 44, stroke_width=3),
        *(across(end, path((0, HIGH - 8), (0, HIGH + 44), width=3)) for end in (TANK, 100)),
    ]


def _machine() -> list[str]:
    """The pump beside the sump, its suction and the main up to the tank."""
    x = SUMP + 26
    return [
        across(0, path((SUMP - 16, BOTTOM - 8), (SUMP - 16, PUMP), (x, PUMP), width=5)),
        across(0, path((x, PUMP), (x, MAIN), (x + 10, MAIN), width=5)),
        line(0, TANK + 5, MAIN, x + 8, stroke_width=5),
        across(TANK + 5, path((0, MAIN), (0, HIGH + 8), width=5)),
        across(0, circle(x, PUMP, 12, fill=ACCENT), circle(x, PUMP, 3, fill=INK)),
    ]


PROFILE = Drawing(
    "From water to water, with the head in its parts",
    (
        *("static_head", "static_discharge_head", "suction_lift", "static_suction_head"),
        *("suction_elevation", "discharge_elevation", "head"),
        *(name for name, _ in (*LOSSES, *PIPE, *POWER)),
    ),
    _draw,
    ("static_head", "head"),
    (
        "static_head",
        "static_discharge_head",
        "suction_elevation",
        "friction_head",
        "minor_loss",
        "lifting_work",
    ),
)
