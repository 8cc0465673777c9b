"""What a pump must overcome at one flow: the lift, the friction in the main, and the fittings."""

from solver.algebra.expression import Known, Percent
from solver.topics.formulas import HEAD
from solver.units.show import figures
from solver.vocabulary import quantity_named

from .chart import BLUE, GREEN, INK, ORANGE, Axis, Bar, Chart, Line, Note, steps
from .view import Figure, Scale, Slide, Values, View, shown, valued, worked

__all__ = ["LIFT"]

PARTS = {
    "static_head": "Static head",
    "friction_head": "Friction loss",
    "minor_loss": "Minor losses",
}
LOOKS = ((BLUE, False), (ORANGE, True), (GREEN, False))  # color and whether hatched
POST = 0.09  # how wide the wet well, the tank and the stack over the pump are, over the pipe


def share(part: str, known: Values, units: str) -> str:
    """A part in percent of the total."""
    percent = valued(Percent(Known(part) / Known("head")), known, units)
    return f"{round(percent, 1):g}%"


def view(values: Values, units: str) -> View:
    """The parts of the head at this flow, and their sum."""
    known = worked(values, "head", HEAD, units)
    rows = [
        (label, shown(known, part, units), share(part, known, units))
        for part, label in PARTS.items()
    ]
    head, velocity = (shown(known, name, units) for name in ("head", "velocity"))
    rows += [("Total", head, share("head", known, units))]
    rows += [("Velocity", velocity, "")]
    headline = (
        f"At {shown(known, 'flow', units)} the pump has to make {head} of head. "
        f"Static head is {rows[0][1]} of that."
    )
    listed = "; ".join(" ".join(row).rstrip() for row in rows)
    alt = (
        "A stack over the pump shows static head, friction loss and minor losses. From it a line "
        "slopes down along the pipe to the water in the upper tank, as friction uses up the head. "
        f"{listed}."
    )
    return View(headline, alt, ("Part", "Head", "Of the total"), tuple(rows), known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """Heights above the water of the wet well: the stack at the pump, the pipe, the tank."""
    known = view.known
    lift, friction = known["static_head"], known["friction_head"]
    length, head = known["pipe_length"], known["head"]
    width = POST * length
    unit = quantity_named("head").unit(view.units)
    # The upper end stays on a round number, so that the stack is seen to grow.
    top = steps(0, 1.14 * head)[-1] + steps(0, 1.14 * head)[1]
    marks = [(at, figures(at)) for at in steps(0, length)]
    across = Axis(-width, length + width, f"Along the pipe, {unit}", marks)
    rises = [(at, figures(at)) for at in steps(0, top)]
    chart = Chart(across, Axis(-0.12 * head, top, f"Above the wet well, {unit}", rises), 210)
    chart.put(
        Bar(-width, -0.1 * head, width, 0.1 * head, BLUE, faint=True),
        Bar(length, 0.8 * lift, width, 0.2 * lift, BLUE, faint=True),
        Line([(0, lift), (0, lift + friction), (length, lift)], ORANGE, area=True),
        Line([(0, lift + friction), (length, lift)], ORANGE),
        Line([(0, lift), (length, lift)], BLUE, dashed=True),
    )
    below = 0.0
    for (label, value, *_), part, (color, hatched) in zip(view.rows, PARTS, LOOKS, strict=False):
        name = f"{label.lower()} {value}"
        chart.put(Bar(-width, below, width, known[part], color, name, hatched))
        below += known[part]
    chart.put(Line([(0, 0), (length, 0.93 * lift)], INK, "the pipe", width=5))
    chart.put(Note(-width, head, f"total {view.rows[3][1]}", bold=True, dx=4, dy=-5))
    return (chart,)


LIFT = Figure(
    "lift",
    "What the pump has to overcome",
    (
        Slide("flow", Scale(50, 1500, 10, 620), Scale(3, 95, 0.5, 39)),
        Slide("static_head", Scale(5, 150, 1, 40), Scale(1.5, 45, 0.5, 12)),
        Slide("pipe_length", Scale(200, 6000, 50, 2400), Scale(60, 1800, 10, 730)),
        Slide("pipe_diameter", Scale(4, 16, 1, 8), Scale(100, 400, 25, 200)),
        Slide(
            "c_factor", Scale(80, 150, 5, 120), Scale(80, 150, 5, 120), label="C factor of the pipe"
        ),
        Slide("loss_coefficient", Scale(1, 40, 0.5, 12), label="Total K of the fittings"),
    ),
    view,
    draw,
)
