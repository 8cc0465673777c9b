"""What a pump must overcome at one flow: the lift, the friction in the main, and the fittings."""

from typing import TYPE_CHECKING

from solver.algebra.expression import Known, Percent
from solver.topics.formulas import HEAD
from solver.vocabulary import quantity_named

from .drawing import INK
from .view import Figure, Scale, Slide, Values, View, shown, valued, worked

if TYPE_CHECKING:
    from matplotlib.axes import Axes

__all__ = ["LIFT"]

PARTS = {
    "static_head": "Static head",
    "friction_head": "Friction loss",
    "minor_loss": "Minor losses",
}
LOOKS = (("C0", None), ("C1", "////"), ("C2", "...."))  # color and hatch of each part
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


def draw(axes: "Axes", view: View) -> None:
    """Heights above the water of the wet well: the stack at the pump, the pipe, the tank."""
    known = view.known
    lift, friction = known["static_head"], known["friction_head"]
    length, head = known["pipe_length"], known["head"]
    width = POST * length
    axes.bar(-width, -0.1 * head, width, align="edge", color="C0", alpha=0.4)
    axes.bar(length, -0.2 * lift, width, lift, align="edge", color="C0", alpha=0.4)
    axes.fill_between((0, length), lift, (lift + friction, lift), color="C1", alpha=0.25, lw=0)
    axes.plot((0, length), (lift + friction, lift), color="C1")
    axes.plot((0, length), (lift, lift), color="C0", linestyle="--")
    below = 0.0
    for (label, value, *_), part, (color, hatch) in zip(view.rows, PARTS, LOOKS, strict=False):
        axes.bar(
            -width, known[part], width, below, align="edge", color=color, hatch=hatch,
            label=f"{label.lower()} {value}",
        )  # fmt: skip
        below += known[part]
    axes.plot((0, length), (0, 0.93 * lift), color=INK, linewidth=3.5, label="the pipe")
    axes.text(-width, head, f" total {view.rows[3][1]}", va="bottom", weight="bold")
    axes.set_ymargin(0.13)
    axes.locator_params(nbins=5, steps=[1, 2, 5, 10])
    unit = quantity_named("head").unit(view.units)
    # The upper end stays on a round number, so that the stack is seen to grow.
    axes.set(xlim=(-width, length + width), ylim=(-0.12 * head, axes.get_ylim()[1]))
    axes.set(xlabel=f"Along the pipe, {unit}", ylabel=f"Above the wet well, {unit}")
    axes.figure.legend(loc="outside upper left", ncols=2, columnspacing=1.2, handlelength=1.2)


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
    height=3.5,
)
