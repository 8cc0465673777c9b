"""A length of pipe with the water in it: size, flow and speed, the head lost along it, fittings."""

from solver.render.svg import ACCENT, INK, SOFT, WATER, across, block, element, height, line, path

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown, words

__all__ = ["PIPE"]

TOP, TALL = 44.0, 46.0  # px: the pipe
FLOWS: Rows = (("flow", ""), ("daily_flow", ""))
SPEEDS: Rows = (("velocity", "velocity"),)
STAYS: Rows = (
    ("main_volume", "holds"),
    ("main_time", "time in it"),
    ("cycle_volume", "a cycle"),
    ("clearing_cycles", "cycles"),
    ("wave_speed", "wave at"),
    ("wave_time", "there and back"),
    ("closing_time", "closes in"),
    ("surge_pressure", "surge"),
    ("slow_surge", "surge"),
)
LOST: Rows = (("friction_head", "lost"), ("minor_loss", "lost"))
ALONG: Rows = (("velocity_head", "velocity head"), ("friction_rate", "loses"), ("c_factor", "C"))
FITTINGS: Rows = (
    ("loss_coefficient", "fittings, total K"),
    ("elbows", "elbows"),
    ("elbow_coefficient", "K of each"),
    ("check_valve_coefficient", "check valve K"),
    ("gate_valve_coefficient", "gate valve K"),
    ("outlet_coefficient", "outlet K"),
)


def _draw(shown: Shown) -> Drawn:
    loses = shown.works("friction_head", "minor_loss", "friction_rate")
    top = TOP if loses else 22.0
    foot = top + TALL
    pieces = [
        block(0, 100, top, TALL, fill=WATER, fill_opacity=0.35),
        line(0, 100, top, stroke_width=4),
        line(0, 100, foot, stroke_width=4),
        across(0, *height(14, top + 3, foot - 3)),
        shown.note(0, (top + foot) / 2 + 5, "pipe_diameter", dx=22),
    ]
    flow, speed = shown.first(FLOWS), SPEEDS[0]
    inside = () if shown.asks("pipe_diameter") else (flow,)  # what is asked has its name there
    pieces += [shown.note(36, (top + foot) / 2 + 5, *one, dx=6) for one in inside]
    pieces.append(across(35, _arrow(), y=(top + foot) / 2))
    # A long flow leaves no room beside it.
    above = [speed] if shown.works(speed[0]) and not shown.has(flow[0]) else []
    pieces += [shown.note(100, (top + foot) / 2 + 5, *one, "end", dx=-8) for one in above]
    if loses:
        pieces += _grade_line(shown)
    y = foot + 20
    if shown.has("pipe_length"):
        pieces.append(line(0, 100, y - 5, stroke=SOFT, stroke_width=1))
        pieces += [across(x, path((0, y - 10), (0, y), stroke=SOFT, width=1)) for x in (0, 100)]
        pieces.append(shown.note(50, y, "pipe_length", "", "middle"))
        y += LINE + 2
    rest = [row for row in (*FLOWS, *SPEEDS) if row not in (*inside, *above)]
    more, y = shown.flow(y, (*ALONG, *FITTINGS, *rest, *STAYS))
    return Drawn(pieces + more, max(y, foot + 4))


def _arrow() -> str:
    return element(
        "g",
        path((-22, 0), (0, 0), width=2.5, stroke=INK),
        path((-7, -6), (0, 0), (-7, 6), width=2.5),
    )


def _grade_line(shown: Shown) -> list[str]:
    """The head along the pipe, which falls by what is lost."""
    name, called = shown.first(LOST)
    falls = element(
        "line", x1="0%", y1=8, x2="100%", y2=TOP - 10, stroke=ACCENT, stroke_width=2, stroke_dasharray="6 4"
    )  # fmt: skip
    level = line(0, 100, 8, stroke=SOFT, stroke_width=0.8)
    return [
        level,
        falls,
        words(0, 30, "head in the pipe"),
        shown.note(100, 24, name, called, "end"),
    ]


PIPE = Drawing(
    "A pipe and what is lost in it",
    (
        *("pipe_diameter", "pipe_length"),
        *(name for rows in (FLOWS, SPEEDS, LOST, ALONG, FITTINGS, STAYS) for name, _ in rows),
    ),
    _draw,
    ("flow", "velocity", "friction_head"),
    (
        "pipe_diameter",
        "velocity",
        "velocity_head",
        "c_factor",
        "friction_rate",
        "loss_coefficient",
        "elbows",
        "wave_speed",
    ),
)
