"""Where the power goes: what the wire brings, what each machine loses, what the water gets."""

from typing import NamedTuple

from solver.algebra.expression import Known
from solver.topics.formulas import POWER

from .chart import BLUE, ORANGE, Axis, Bar, Chart, Note
from .view import Figure, Scale, Slide, Values, View, shown, told, valued, worked

__all__ = ["LOSSES"]

THICK = 0.44  # of a bar, where the next one is 1 away


class Stage(NamedTuple):
    """A place where the power is told: `power` there, and the `machine` it has just come through."""

    power: str
    place: str
    machine: str = ""


WIRE = Stage("motor_power", "Wire")
DIRECT = (
    WIRE,
    Stage("brake_power", "Shaft", "motor"),
    Stage("water_power", "Water", "pump"),
)
DRIVEN = (
    WIRE,
    Stage("motor_output", "Motor shaft", "motor"),
    Stage("brake_power", "Pump shaft", "drive"),
    Stage("water_power", "Water", "pump"),
)


def stages(known: Values) -> tuple[Stage, ...]:
    """The stages from the wire to the water, with or without a drive between."""
    return DRIVEN if "motor_output" in known else DIRECT


def lost(before: Stage, after: Stage, known: Values, units: str) -> float:
    """The power that goes missing between two stages."""
    return valued(Known(before.power) - Known(after.power), known, units)


def _steps(known: Values) -> list[tuple[Stage, Stage]]:
    return list(zip(stages(known), stages(known)[1:], strict=False))


def view(values: Values, units: str) -> View:
    """Every power from the wire to the water for one pump."""
    # A coupling loses nothing worth telling, so no drive is worked into the chain.
    direct = values["drive_efficiency"] == 100
    given = {n: v for n, v in values.items() if not (direct and n == "drive_efficiency")}
    known = worked(given, "input_power", POWER, units)
    known |= worked(known, "overall_efficiency", POWER, units)
    rows = [(WIRE.place, shown(known, WIRE.power, units))]
    for before, after in _steps(known):
        loss = told(lost(before, after, known, units), after.power, units)
        rows += [(f"Lost in the {after.machine}", loss)]
        rows += [(after.place, shown(known, after.power, units))]
    whole = shown(known, "overall_efficiency", units)
    rows += [("The meter shows", shown(known, "input_power", units)), ("Wire to water", whole)]
    headline = (
        f"Of {shown(known, 'motor_power', units)} from the wire, the water gets "
        f"{shown(known, 'water_power', units)}. That is {whole}."
    )
    told_rows = "; ".join(" ".join(row) for row in rows)
    alt = f"Bars of power, from the wire to the water. {told_rows}."
    return View(headline, alt, ("Where", "Power"), tuple(rows), known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """One bar a stage; the hatched end is what the machine before it lost."""
    known, units = view.known, view.units
    chain = stages(known)
    most = known[WIRE.power]
    up = Axis(len(chain) - 0.7, -0.7, ticks=())
    chart = Chart(
        Axis(0, most, "Power, hp" if units == "us" else "Power, kW"), up, 56.0 * len(chain)
    )
    for row, stage in enumerate(chain):
        label = f"{stage.place}: {shown(known, stage.power, units)}"
        chart.put(
            Bar(0, row - THICK / 2, known[stage.power], THICK, BLUE), Note(0, row - 0.3, label)
        )
    for row, (before, after) in enumerate(_steps(known), 1):
        loss = lost(before, after, known, units)
        label = f"{after.machine} loses {told(loss, after.power, units)}"
        chart.put(
            Bar(known[after.power], row - THICK / 2, loss, THICK, ORANGE, hatched=True),
            Note(most, row - 0.3, label, "end"),
        )
    return (chart,)


LOSSES = Figure(
    "losses",
    "Where the power goes",
    (
        Slide("flow", Scale(50, 2000, 10, 620), Scale(3, 130, 0.5, 39)),
        Slide("head", Scale(10, 250, 1, 74), Scale(3, 75, 0.5, 22.5)),
        Slide("pump_efficiency", Scale(35, 88, 1, 68)),
        Slide("drive_efficiency", Scale(85, 100, 1, 100), label="Belts or gears, % (100 if none)"),
        Slide("motor_efficiency", Scale(70, 97, 0.5, 91)),
    ),
    view,
    draw,
)
