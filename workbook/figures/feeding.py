"""What a feed pump can feed at its stroke, and what the plant's flow asks of it."""

from solver.topics.formulas import CHEMICAL
from solver.topics.limits import FEEDER_SHARE
from solver.units.show import exact
from solver.vocabulary import quantity_named

from .chart import GREEN, GREY, INK, ORANGE, Axis, Bar, Chart, Dot, Line
from .view import Figure, Scale, Slide, Values, View, shown, told, worked

__all__ = ["FEEDING"]

TALL = 210  # px
# Hypochlorite's specific gravity over water's, for each percent of strength: a fit to deliveries of
# 10% to 12.5% (makers' data sheets, from memory).
HEAVIER = 0.016
JOB = ("daily_flow", "dose", "solution_strength", "specific_gravity")
FLOW = Slide(
    "daily_flow",
    Scale(0.2, 6, 0.1, 2.4),
    Scale(800, 24_000, 100, 9000),
    label="Plant flow, {unit}",
)


def asked_of_it(values: Values, units: str) -> dict[str, float]:
    """What the dose takes, what the pump can feed, and the plant flows between the two."""
    known = {**values, "specific_gravity": 1 + HEAVIER * values["solution_strength"]}
    job = {name: known[name] for name in JOB}
    known |= worked(job, "solution_minute", CHEMICAL, units)
    pump = {name: known[name] for name in ("feeder_capacity", "stroke_setting")}
    hour = {"solution_hour": known["solution_hour"]}
    capacity = {"feeder_capacity": known["feeder_capacity"]}
    known |= worked(hour | capacity, "capacity_share", CHEMICAL, units)
    known |= worked(hour | pump, "speed_setting", CHEMICAL, units)
    full = {**pump, "speed_setting": 100.0}
    least = {**capacity, "capacity_share": float(FEEDER_SHARE.at({})[0])}
    for end, given in (("least", least), ("most", full)):
        fed = worked(given, "solution_hour", CHEMICAL, units)["solution_hour"]
        known[end] = fed
        at = {name: known[name] for name in JOB if name != "daily_flow"} | {"solution_hour": fed}
        known[f"{end} flow"] = worked(at, "daily_flow", CHEMICAL, units)["daily_flow"]
    return known


def verdict(known: Values, units: str) -> str:
    """Whether the pump reaches, and what to change where it doesn't."""
    needed, most, capacity = (
        told(known[name], "solution_hour", units)
        for name in ("solution_hour", "most", "feeder_capacity")
    )
    stroke = told(known["stroke_setting"], "stroke_setting", units, exact)
    speed = f"{known['speed_setting']:.0f}%"
    takes = f"The dose takes {needed}."
    if known["solution_hour"] > known["feeder_capacity"]:
        return f"{takes} The whole pump feeds {capacity}. Get a larger one or a stronger solution."
    if known["solution_hour"] > known["most"]:
        return f"{takes} At {stroke} stroke the pump feeds {most} at most. Lengthen the stroke."
    if known["solution_hour"] < known["least"]:
        return (
            f"{takes} That is under a tenth of what the pump can feed, so it comes in shots. Get a "
            "smaller pump or a weaker solution."
        )
    low, high = (told(known[f"{end} flow"], "daily_flow", units) for end in ("least", "most"))
    return (
        f"{takes} At {stroke} stroke, that is {speed} speed. At this stroke the pump keeps up from "
        f"{low} to {high}."
    )


def view(values: Values, units: str) -> View:
    """The feed that this plant needs, and the flows that the pump keeps up with."""
    known = asked_of_it(values, units)
    low, high = (told(known[f"{end} flow"], "daily_flow", units) for end in ("least", "most"))
    rows = (
        ("Solution needed", shown(known, "solution_hour", units)),
        ("In the cylinder", shown(known, "solution_minute", units)),
        ("Of its capacity", shown(known, "capacity_share", units)),
        ("Speed it takes", shown(known, "speed_setting", units)),
        ("Stroke", told(known["stroke_setting"], "stroke_setting", units, exact)),
        ("Least plant flow", low),
        ("Most plant flow", high),
    )
    says = verdict(known, units)
    listed = "; ".join(" ".join(row) for row in rows)
    alt = (
        "Solution against plant flow: a straight line up from zero, and a band that the pump can feed. "
        f"{listed}. {says}"
    )
    return View(says, alt, ("", "Now"), rows, known, units)


def draw(view: View) -> tuple[Chart, ...]:
    """The need as a line over the plant's flow; the pump's range as a band across."""
    known, units = view.known, view.units
    flow, hour = (quantity_named(name).unit(units) for name in ("daily_flow", "solution_hour"))
    far = FLOW.scale(units).high
    top = 1.15 * max(known["feeder_capacity"], known["solution_hour"])
    chart = Chart(
        Axis(0, far, f"Plant flow, {flow}"), Axis(0, top, f"Solution, {hour}"), TALL, right=20
    )
    least, most = known["least"], known["most"]
    steep = known["solution_hour"] / known["daily_flow"]
    chart.put(
        Bar(0, least, far, most - least, GREEN, "the pump at this stroke", faint=True),
        Line([(0, known["feeder_capacity"]), (far, known["feeder_capacity"])], GREY,
             "full stroke and speed", dashed=True),
        Line([(0, 0), (far, steep * far)], INK, "what the dose takes"),
        Dot(known["daily_flow"], known["solution_hour"], ORANGE, label="now"),
    )  # fmt: skip
    return (chart,)


FEEDING = Figure(
    "feeding",
    "Does the feed pump reach?",
    (
        FLOW,
        Slide("dose", Scale(1, 12, 0.5, 6)),
        Slide("solution_strength", Scale(1, 12.5, 0.5, 12.5)),
        Slide("stroke_setting", Scale(20, 100, 5, 60)),
        Slide("feeder_capacity", Scale(1, 60, 1, 12), Scale(4, 230, 1, 45)),
    ),
    view,
    draw,
)
