"""What comes before a motor: a run of wire from its panel, and a transformer."""

from solver.render.svg import ACCENT, INK, PAGE, SOFT, across, block, circle, line, path

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown, words

__all__ = ["RUN", "TRANSFORMER"]

WIRE, PANEL, MOTOR = 46.0, 7.0, 92.0  # px down; percent along
ON_IT: Rows = (("line_amps", ""), ("single_amps", ""))
OF_RUN: Rows = (
    ("wire_ohms", "wire"),
    ("wire_area", "copper"),
    ("voltage_drop", "drop"),
    ("drop_percent", "in percent"),
)
PRIMARY: Rows = (("primary_volts", "primary volts"), ("primary_amps", "primary amps"))
SECONDARY: Rows = (
    ("secondary_volts", "secondary volts"),
    ("secondary_amps", "secondary amps"),
    ("control_amps", "secondary, full load"),
    ("line_volts", "line to line"),
    ("line_amps", "each leg"),
    ("transformer_amps", "full load, each leg"),
)
OF_TRANSFORMER: Rows = (
    ("turns_ratio", "primary turns for each secondary turn"),
    ("transformer_va", "rated"),
    ("transformer_kva", "rated"),
    ("transformer_load", "load"),
)


def _run(shown: Shown) -> Drawn:
    name, _ = shown.first(ON_IT)
    pieces = [
        line(PANEL, 97, WIRE, stroke=INK, stroke_width=3),
        block(0, PANEL, WIRE - 18, 36, fill="none", stroke=INK, stroke_width=2.5),
        across(100, circle(-18, WIRE, 16, fill=PAGE, stroke=INK, stroke_width=2.5)),
        shown.note(0, 18, "supply_volts", "panel"),
        shown.note(100, 18, "far_volts", "far end", "end"),
        shown.note(50, WIRE - 8, name, "", "middle"),
        line(PANEL + 3, MOTOR, WIRE + 18, stroke=SOFT, stroke_width=1.2),
        *(
            across(share, path((0, WIRE + 13), (0, WIRE + 23), stroke=SOFT, width=1.2))
            for share in (PANEL + 3, MOTOR)
        ),
        shown.note(50, WIRE + 36, "run_length", "one way", "middle"),
    ]
    more, foot = shown.flow(WIRE + 40 + LINE, OF_RUN)
    return Drawn(pieces + more, foot)


def _transformer(shown: Shown) -> Drawn:
    """Two coils beside an iron core: the one with more turns is drawn longer in every problem."""
    pieces = [across(50, path((x, 14), (x, 86), stroke=SOFT, width=2.5)) for x in (-3, 3)]
    for x, turns, look in ((-15, 5, ACCENT), (15, 3, INK)):
        for turn in range(turns):
            y = 50 + 14 * (turn - (turns - 1) / 2)
            pieces.append(across(50, circle(x, y, 7, fill="none", stroke=look, stroke_width=2.5)))
    left, low = shown.column(0, 22, PRIMARY)
    right, deep = shown.column(100, 22, SECONDARY, "end")
    sides = left or [words(0, 22, "primary")]
    foot = max(92.0, low + 6, deep + 6)
    more, last = shown.flow(foot + LINE, OF_TRANSFORMER)
    return Drawn([*pieces, *sides, *right, *more], last)


RUN = Drawing(
    "A run of wire from the panel",
    (
        *("supply_volts", "far_volts", "run_length"),
        *(name for name, _ in (*ON_IT, *OF_RUN)),
    ),
    _run,
    core=("run_length", "voltage_drop", "drop_percent"),
)
TRANSFORMER = Drawing(
    "A transformer",
    tuple(name for name, _ in (*PRIMARY, *SECONDARY, *OF_TRANSFORMER)),
    _transformer,
    core=("turns_ratio", "primary_volts", "transformer_va", "transformer_kva"),
)
