"""A pump anywhere on its curve: head, efficiency, power and NPSHr, each against its best point."""

from solver.scenario import Place
from solver.station.sheet import Sheet, sheet_of
from solver.station.town import town_station
from solver.topics.limits import BEST_SHARE
from solver.units.unit import convert
from solver.vocabulary import quantity_named

from .chart import BLUE, GREEN, GREY, ORANGE, PINK, Axis, Bar, Chart, Dot, Line
from .view import Figure, Scale, Slide, Values, View, shown

__all__ = ["ON_CURVE"]

WHERE = Place("Pump 4", "the plant's influent building")
READ = ("head", "pump_efficiency", "brake_power", "npsh_required")
LOOKS = (
    ("head", BLUE, False),
    ("efficiency", GREEN, False),
    ("power", ORANGE, True),
    ("NPSHr", PINK, True),
)
FAR, TOP, TALL, SHOWN = 130, 175, 210, 52  # percent of the best flow, of the best values; px; steps


def at(sheet: Sheet, share: float, units: str) -> dict[str, float]:
    """What the pump does at a share (percent) of its best flow."""
    flow = sheet.best_flow * share / 100
    found = dict(zip(("flow", *READ), (flow, *sheet.at(flow)), strict=True))
    return {
        name: convert(value, quantity_named(name).us, quantity_named(name).unit(units))
        for name, value in found.items()
    }


def view(values: Values, units: str) -> View:
    """The pump at this flow, beside its best point."""
    sheet = sheet_of(town_station(WHERE))
    share = values["best_share"]
    best, now = at(sheet, 100, units), at(sheet, share, units)
    rows = [
        (label, shown(now, name, units), shown(best, name, units))
        for label, name in zip(("Flow", "Head", "Efficiency", "Power", "NPSHr"), now, strict=True)
    ]
    low, high = BEST_SHARE.at({})
    where = (
        "That is left of the preferred region: water recirculates inside, and the side load on the shaft grows."
        if share < low
        else "That is right of the preferred region: NPSHr is high, and so are the amps."
        if share > high
        else "That is in the preferred region."
    )
    says = (
        f"At {share:g}% of its best efficiency flow the pump moves {rows[0][1]} against {rows[1][1]}. {where}"
        if share
        else f"At shutoff the pump makes {rows[1][1]} and moves nothing. Its power only heats the water."
    )
    told = "; ".join(f"{label} {here}, at the best point {there}" for label, here, there in rows)
    alt = (
        f"Curves of head, efficiency, power and NPSHr in percent of the best point. {says} {told}."
    )
    known = {**values, **{f"{name} best": value for name, value in best.items()}, **now}
    return View(says, alt, ("", "Here", "Best point"), tuple(rows), known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """All four curves over one scale, with the preferred region behind them."""
    sheet, units = sheet_of(town_station(WHERE)), view.units
    best, share = at(sheet, 100, units), view.known["best_share"]
    chart = Chart(Axis(0, FAR, "Flow, % of best"), Axis(0, TOP, "% of best"), TALL, right=58)
    low, high = BEST_SHARE.at({})
    chart.put(Bar(low, 0, high - low, TOP, GREY, faint=True))
    points = [(x, at(sheet, x, units)) for x in (FAR * n / SHOWN for n in range(SHOWN + 1))]
    for name, (label, color, dashed) in zip(READ, LOOKS, strict=True):
        line = [(x, 100 * found[name] / best[name]) for x, found in points]
        chart.put(Line(line, color, label, dashed))
        chart.put(Dot(share, 100 * view.known[name] / best[name], color))
    return (chart,)


ON_CURVE = Figure(
    "on_curve",
    "Along a pump curve",
    (Slide("best_share", Scale(0, FAR, 5, 60), label="Flow, % of best efficiency flow"),),
    view,
    draw,
)
