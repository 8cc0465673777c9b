"""The pumps of a station on its generator: started one after the other, and all at once."""

from solver.algebra.expression import Known
from solver.topics.formulas import FORMULAS
from solver.topics.limits import GENERATOR_LOAD
from solver.topics.standby.stations import SETS
from solver.units.show import exact

from .chart import BLUE, GREY, ORANGE, Axis, Bar, Chart, Line
from .view import Figure, Scale, Slide, Values, View, told, valued, worked

__all__ = ["STARTING"]

LOAD_FACTOR, RATED_FACTOR = (
    0.85,
    0.8,
)  # power factors: of the load, and that of sets (common practice)
EACH = 42  # px a bar
START = ("rated_volts", "full_load_amps", "starting_percent")


def running(pumps: float, known: Values, units: str) -> dict[str, float]:
    """What so many pumps and the other loads take."""
    given = {name: known[name] for name in ("input_power", "other_load", "load_power_factor")}
    return worked({**given, "running_pumps": pumps}, "running_kva", FORMULAS, units)


def started(values: Values, units: str) -> dict[str, float]:
    """The power of a pump at its full-load amps, and what its start takes."""
    at = {"line_volts": values["rated_volts"], "line_amps": values["full_load_amps"]}
    known = {**values, "load_power_factor": LOAD_FACTOR}
    known |= worked({**at, "power_factor": LOAD_FACTOR}, "input_power", FORMULAS, units)
    return known | worked({name: values[name] for name in START}, "soft_start_kva", FORMULAS, units)


def one_by_one(known: Values, units: str) -> list[tuple[float, float]]:
    """For each start in turn, the kVA that run already and those of the start."""
    already = (running(n, known, units)["running_kva"] for n in range(int(known["running_pumps"])))
    return [(kva, known["soft_start_kva"]) for kva in already]


def at_once(known: Values, units: str) -> tuple[float, float]:
    """The same where all start together."""
    start = valued(Known("running_pumps") * Known("soft_start_kva"), known, units)
    return running(0, known, units)["running_kva"], start


def smallest(kva: float, load: float, units: str) -> float:
    """The smallest set that is sold and carries these kVA, and this load in kW."""
    for size in map(float, SETS):
        given = {"generator_rating": size, "generator_power_factor": RATED_FACTOR}
        rated = worked(given, "generator_kva", FORMULAS, units)["generator_kva"]
        if rated >= kva and size >= load:
            return size
    raise ValueError(f"No set is sold for {kva:g} kVA.")


def ways(known: Values, units: str) -> dict[str, tuple[float, float]]:
    """The kVA and the set for each way: all running, started in turn, and all at once."""
    load = running(known["running_pumps"], known, units)
    most = {
        "All running": load["running_kva"],
        "Started in turn": max(map(sum, one_by_one(known, units))),
        "All at once": sum(at_once(known, units)),
    }
    # However they start, the set has to carry them running too.
    return {
        way: (kva, smallest(max(kva, load["running_kva"]), load["running_load"], units))
        for way, kva in most.items()
    }


def view(values: Values, units: str) -> View:
    """What each way of starting takes, the set for it, and how far that set is loaded then."""
    known = started(values, units)
    load = running(known["running_pumps"], known, units)["running_load"]
    rows, sets, shares = [], {}, {}
    for way, (kva, size) in ways(known, units).items():
        given = {"running_load": load, "generator_rating": size}
        shares[way] = worked(given, "generator_load", FORMULAS, units)["generator_load"]
        sets[way] = told(size, "generator_rating", units, exact)
        share = told(shares[way], "generator_load", units)
        rows.append((way, told(kva, "running_kva", units), sets[way], share))
    says = _verdict(sets, shares, int(values["running_pumps"]))
    listed = "; ".join(
        f"{way}: {kva}, set {size}, {share} loaded" for way, kva, size, share in rows
    )
    running_kw = told(load, "running_load", units)
    alt = f"Bars of kVA, one for each start. {listed}. All running take {running_kw}. {says}"
    return View(says, alt, ("", "kVA", "Set", "Load, all running"), tuple(rows), known, units)


def _verdict(sets: dict[str, str], shares: dict[str, float], pumps: int) -> str:
    """The sets for both ways of starting, and whether they run with enough load."""
    turn, once = "Started in turn", "All at once"
    low, _ = GENERATOR_LOAD.at({})
    says = (
        f"{turn}, these pumps take a set of {sets[turn]}. With all running, it is loaded to "
        f"{shares[turn]:.0f}%. {once} they take {sets[once]}, then loaded to {shares[once]:.0f}%."
    )
    if pumps == 1:
        says = (
            f"To start, this pump takes a set of {sets[turn]}. Once it runs, the set is loaded to "
            f"{shares[turn]:.0f}%."
        )
    if shares["All at once"] <= low:
        says += f" At {low:g}% or less a diesel can wet stack."
    return says


def draw(view: View) -> tuple[Chart, ...]:
    """A bar for each start in turn, one for all running, one for all at once; the set's kVA across."""
    known, units = view.known, view.units
    found = ways(known, units)
    bars = [(*pair, f"start {n}") for n, pair in enumerate(one_by_one(known, units), 1)]
    bars.append((found["All running"][0], 0.0, "all running"))
    bars.append((*at_once(known, units), "all at once"))
    set_size = {
        "generator_rating": found["Started in turn"][1],
        "generator_power_factor": RATED_FACTOR,
    }
    rated = worked(set_size, "generator_kva", FORMULAS, units)["generator_kva"]
    far = 1.04 * max(rated, *(kva + start for kva, start, _ in bars))
    ticks = [(row, text) for row, (*_, text) in enumerate(bars)]
    chart = Chart(
        Axis(0, far, "kVA"), Axis(len(bars) - 0.4, -0.6, ticks=ticks), EACH * len(bars), right=16
    )
    for row, (kva, start, _) in enumerate(bars):
        first = row == 0
        chart.put(Bar(0, row - 0.3, kva, 0.6, BLUE, "running" if first else ""))
        if start:
            chart.put(
                Bar(kva, row - 0.3, start, 0.6, ORANGE, "starting" if first else "", hatched=True)
            )
    label = f"a set of {told(set_size['generator_rating'], 'generator_rating', units, exact)}"
    chart.put(Line([(rated, -0.6), (rated, len(bars) - 0.4)], GREY, label, dashed=True, width=3))
    return (chart,)


STARTING = Figure(
    "starting",
    "Pumps on a generator: in turn or at once",
    (
        Slide("running_pumps", Scale(1, 4, 1, 3), label="Pumps"),
        Slide("full_load_amps", Scale(8, 100, 1, 34), label="Full-load amps of each"),
        Slide("starting_percent", Scale(100, 650, 25, 600), label="Starting amps, % of full load"),
        Slide("other_load", Scale(1, 40, 1, 6)),
        Slide("rated_volts", Scale(200, 480, 5, 460), label="Volts"),
    ),
    view,
    draw,
    systems=("us",),
)
