"""A pump slowed down where it lifts water: where it runs then, and what the cube law promises."""

from solver.algebra.expression import Known, Percent
from solver.errors import NotSolvable
from solver.scenario import Place
from solver.station.town import town_station
from solver.topics.formulas import FORMULAS
from solver.topics.speed.curves import Curve, crossing, points, pump_curve, system_curve
from solver.units.unit import convert
from solver.vocabulary import quantity_named

from .chart import BLUE, GREEN, ORANGE, PINK, Axis, Chart, Dot, Line
from .view import Figure, Scale, Slide, Values, View, shown, valued, worked

__all__ = ["SLOWING"]

# The pump of this chapter's story. At full speed it runs at its rated point whatever part of the head
# is static, so the slider compares systems, not pumps.
WHERE = Place("Pump 4", "the plant's influent building")
PUMP = ("shutoff_head", "rated_head", "rated_flow", "pump_speed")
EFFICIENCIES = ("pump_efficiency", "motor_efficiency")
LIFTED = ("input_power", "flow", "head", "static_head")
BOLD, TALL = 3.2, 150  # px: the curves that tell the story, each chart
SHOWN = 40  # steps of a curve
BY_LAW = ("input_power", "flow")  # no static head is known of, so the cube law is taken


def at_full(units: str) -> dict[str, float]:
    """The pump, and what it draws at full speed."""
    machine, pump = town_station(WHERE), {}
    for name in PUMP:
        quantity = quantity_named(name)
        pump[name] = convert(machine.noted(name), quantity.us, quantity.unit(units))
    duty = {"flow": pump["rated_flow"], "head": pump["rated_head"]}
    shares = {name: machine.noted(name) for name in EFFICIENCIES}
    return pump | worked(duty | shares, "input_power", FORMULAS, units)


def curves(known: Values) -> tuple[Curve, Curve, Curve]:
    """The pump's curve at full speed and slowed, and the system's."""
    flow, head, static = (known[name] for name in ("rated_flow", "rated_head", "static_head"))
    pump = pump_curve(known["shutoff_head"], flow, head)
    return pump, pump.at_speed(known["speed_ratio"]), system_curve(static, flow, head - static)


def at_flow(flow: float, known: Values, units: str, given: tuple[str, ...]) -> dict[str, float]:
    """The solver's way from these readings to the power at a lower flow."""
    values = {name: known[name] for name in given} | {"new_flow": flow}
    return worked(values, "slowed_power", FORMULAS, units)


def share(part: str, whole: str, known: Values, units: str) -> float:
    """A quantity in percent of another."""
    return valued(Percent(Known(part) / Known(whole)), known, units)


def percents(known: Values, units: str, head: str) -> tuple[str, str, str]:
    """Flow, head and power in whole percent of what they are at full speed."""
    pairs = (("new_flow", "flow"), (head, "head"), ("slowed_power", "input_power"))
    flow, lift, power = (f"{share(*pair, known, units):.0f}%" for pair in pairs)
    return flow, lift, power


def slowed(values: Values, units: str) -> dict[str, float]:
    """The pump at full speed and slowed; there is no `new_flow` where no water moves."""
    known = {**at_full(units), **values}
    for given, asked in (
        (("speed_cut",), "speed_ratio"),
        (("shutoff_head", "speed_ratio"), "new_shutoff_head"),
        (("pump_speed", "shutoff_head", "static_head"), "least_speed"),
    ):
        known |= worked({name: known[name] for name in given}, asked, FORMULAS, units)
    _, pump, system = curves(known)
    try:
        flow = crossing(pump, system).flow
    except NotSolvable:
        return known
    return known | at_flow(flow, known, units, LIFTED)


def by_law(known: Values, units: str) -> tuple[str, str, str]:
    """What the affinity laws promise for the same flow, as if there were no static head."""
    found = at_flow(known["new_flow"], known, units, BY_LAW)
    given = {name: known[name] for name in ("head", "flow", "new_flow")}
    law = worked(given, "new_head", FORMULAS, units)
    return percents({**known, **found, **law}, units, "new_head")


def view(values: Values, units: str) -> View:
    """The pump at full speed and slowed, and the promise of the cube law for that flow."""
    known = slowed(values, units)
    speed = f"{100 - values['speed_cut']:g}% speed"
    names = ("flow", "head", "input_power"), ("new_flow", "system_head", "slowed_power")
    full, now = ([shown(known, name, units) for name in row if name in known] for row in names)
    rows = [("Full speed", *full)]
    if now:
        found, law = percents(known, units, "system_head"), by_law(known, units)
        rows += [(speed, *now), ("In percent", *found), ("Cube law", *law)]
        says = (
            f"At {speed} the pump moves {found[0]} of its flow for {found[2]} of its power. "
            f"{_promise(known, law[2])}"
        )
        if not values["speed_cut"]:
            says = f"At full speed the pump moves {full[0]} against {full[1]}."
    else:
        held = shown(known, "new_shutoff_head", units)
        rows += [(speed, "none", f"{held} held", "")]
        says = (
            f"At {speed} the pump holds {held}, less than the "
            f"{shown(known, 'static_head', units)} of static head. No water moves. The water in the pump "
            "just gets hot."
        )
    if values["static_head"]:
        least = share("least_speed", "pump_speed", known, units)
        says += f" Water moves only above {least:.0f}% speed."
    told = ". ".join(f"{row[0]}: {', '.join(filter(None, row[1:]))}" for row in rows)
    alt = f"Curves of head against flow; below them, power against flow. {told}. {says}"
    return View(says, alt, ("", "Flow", "Head", "Power"), tuple(rows), known, units)


def _promise(known: Values, law: str) -> str:
    if not known["static_head"]:
        return "There is no static head, so the cube law holds."
    return f"For that flow the cube law promises {law}."


def draw(view: View) -> tuple[Chart, ...]:
    """Above, where the curves cross at both speeds; below, power by flow, and the cube law's."""
    return _heads(view), _powers(view)


def _heads(view: View) -> Chart:
    known, units = view.known, view.units
    most = 1.25 * known["rated_flow"]
    flow, head = (quantity_named(name).unit(units) for name in ("flow", "head"))
    chart = Chart(
        Axis(0, most, f"Flow, {flow}"), Axis(0, 1.06 * known["shutoff_head"], f"Head, {head}"), TALL
    )
    looks = (
        ("full speed", BLUE, True, 2),
        (f"{100 - known['speed_cut']:g}% speed", BLUE, False, BOLD),
        ("system", GREEN, False, BOLD),
    )
    for curve, (label, color, dashed, width) in zip(curves(known), looks, strict=True):
        chart.put(Line(points(curve, most, SHOWN), color, label, dashed, width))
    chart.put(Dot(known["flow"], known["head"], BLUE, "ring"))
    if "new_flow" in known:
        chart.put(Dot(known["new_flow"], known["system_head"], ORANGE, "diamond"))
    return chart


def _powers(view: View) -> Chart:
    known, units = view.known, view.units
    flows = [known["rated_flow"] * step / SHOWN for step in range(SHOWN + 1)]
    chart = Chart(Axis(0, 106, "Flow, %"), Axis(0, 106, "Power, %"), TALL)
    for label, given, color, dashed in (
        ("this system", LIFTED, ORANGE, False),
        ("cube law", BY_LAW, PINK, True),
    ):
        found = [_marks({**known, **at_flow(flow, known, units, given)}, units) for flow in flows]
        chart.put(Line(found, color, label, dashed, BOLD))
    chart.put(Dot(100, 100, BLUE, "ring"))
    if "new_flow" in known:
        at, power = _marks(known, units)
        _, law = _marks({**known, **at_flow(known["new_flow"], known, units, BY_LAW)}, units)
        chart.put(Line([(at, law), (at, power)], ORANGE, dashed=True, width=1))
        chart.put(Dot(at, power, ORANGE, "diamond"), Dot(at, law, PINK, "square"))
    return chart


def _marks(known: Values, units: str) -> tuple[float, float]:
    """Flow and power in percent of full speed."""
    pairs = (("new_flow", "flow"), ("slowed_power", "input_power"))
    flow, power = (share(*pair, known, units) for pair in pairs)
    return flow, power


SLOWING = Figure(
    "slowing",
    "A pump slowed down",
    (
        Slide("speed_cut", Scale(0, 50, 1, 20), label="Slowed by, % of full speed"),
        Slide("static_head", Scale(0, 50, 1, 30), Scale(0, 15, 0.5, 9)),
    ),
    view,
    draw,
)
