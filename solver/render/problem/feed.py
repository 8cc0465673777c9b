"""Chemical feed: the tank of solution, the drawdown cylinder, the pump and the water; and a dilution."""

from solver.render.svg import ACCENT, INK, PAGE, SOFT, WATER, across, circle, line, path, rect

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown, words

__all__ = ["DILUTION", "FEED"]

FLOOR, MAIN = 96.0, 128.0  # px
TANK: Rows = (
    ("solution_on_hand", "holds"),
    ("days_of_supply", "lasts"),
    ("solution_strength", "strength"),
    ("specific_gravity", "specific gravity"),
    ("solution_weight", "weighs"),
)
CYLINDER: Rows = (("cylinder_volume", "drops by"), ("cylinder_time", "in"))
PUMP: Rows = (
    ("feeder_capacity", "up to"),
    ("stroke_setting", "stroke"),
    ("speed_setting", "speed"),
    ("new_speed_setting", "new speed"),
    ("solution_flow", "feeds"),
    ("solution_hour", "feeds"),
    ("solution_minute", "feeds"),
    ("wanted_minute", "should feed"),
    ("capacity_share", "of its capacity"),
)
MAIN_PIPE: Rows = (
    ("daily_flow", "flow"),
    ("flow", "flow"),
    ("chlorine_demand", "demand"),
    ("chlorine_residual", "residual"),
    ("dose", "dose"),
    ("chemical_feed", "chemical"),
)
PARTS = (("Tank", TANK), ("Cylinder", CYLINDER), ("Feed pump", PUMP), ("Water", MAIN_PIPE))


def _draw(shown: Shown) -> Drawn:
    pieces = [
        line(0, 100, MAIN, stroke=WATER, stroke_width=12),
        across(0, *_scene(shown.has(*(name for name, _ in CYLINDER)))),
    ]
    pieces += [
        words(0, FLOOR - 70, "tank", "middle", dx=38),
        words(0, FLOOR - 40, "feed pump", "middle", dx=216),
    ]
    foot = MAIN + 10
    for _, rows in PARTS:
        more, low = shown.flow(foot + 19, rows, room=LEAST)
        pieces += more
        foot = low if more else foot
    return Drawn(pieces, foot)


def _scene(cylinder: bool) -> list[str]:
    drawn = [
        rect(6, FLOOR - 44, 64, 44, fill=ACCENT, fill_opacity=0.25),
        path((6, FLOOR - 62), (6, FLOOR), (70, FLOOR), (70, FLOOR - 62), width=3.5),
        path((70, FLOOR - 10), (200, FLOOR - 10), stroke=SOFT, width=4),
        path((216, FLOOR - 10), (262, FLOOR - 10), (262, MAIN - 6), stroke=SOFT, width=4),
        path((257, MAIN - 13), (262, MAIN - 6), (267, MAIN - 13), stroke=SOFT, width=2),
        circle(216, FLOOR - 14, 18, fill=PAGE, stroke=INK, stroke_width=3),
        path((208, FLOOR - 22), (228, FLOOR - 14), (208, FLOOR - 6), (208, FLOOR - 22), width=2),
    ]
    if cylinder:
        drawn += [
            path((138, FLOOR - 10), (138, FLOOR - 20), stroke=SOFT, width=4),
            rect(128, FLOOR - 50, 20, 32, fill=ACCENT, fill_opacity=0.25),
            rect(128, FLOOR - 80, 20, 62, fill="none", stroke=INK, stroke_width=2.5),
            *(path((128, FLOOR - y), (134, FLOOR - y), width=1.2) for y in (30, 40, 50, 60, 70)),
        ]
    return drawn


STRONG: Rows = (("strong_strength", "strength"), ("strong_volume", "volume"))
WATERED: Rows = (("added_water", "volume"),)
MIXED: Rows = (("mixed_strength", "strength"), ("mixed_volume", "volume"))


def _draw_dilution(shown: Shown) -> Drawn:
    drawn: list[str] = []
    low = 0.0
    for x, title, rows, depth in (
        (50.0, "strong", STRONG, 0.7),
        (160.0, "water", WATERED, 0.0),
        (274.0, "mixed", MIXED, 0.3),
    ):
        fill = WATER if not depth else ACCENT
        drawn += [
            across(0, *_jar(x, fill, depth or 0.35)),
            words(0, 14, title, "middle", dx=x),
        ]
        more, foot = shown.column(0, 104, rows, "middle", dx=x)
        drawn += more
        low = max(low, foot)
    drawn += [words(0, 58, "+", "middle", dx=105), words(0, 58, "→", "middle", dx=217)]
    return Drawn(drawn, low)


def _jar(x: float, fill: str, deep: float) -> list[str]:
    return [
        rect(x - 28, 40, 56, 44, fill=fill, fill_opacity=deep),
        path((x - 28, 24), (x - 28, 84), (x + 28, 84), (x + 28, 24), width=3),
    ]


FEED = Drawing(
    "A chemical feed pump",
    tuple(name for _, rows in PARTS for name, _ in rows),
    _draw,
    (),
    (
        *("dose", "solution_flow", "solution_hour", "solution_minute", "chemical_feed"),
        *("cylinder_volume", "new_speed_setting", "speed_setting", "days_of_supply"),
    ),
)
DILUTION = Drawing(
    "A strong solution and water",
    tuple(name for name, _ in (*STRONG, *WATERED, *MIXED)),
    _draw_dilution,
)
