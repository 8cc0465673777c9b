"""One picture of a station with its values: well or tank, floats, pump, valves, gauges, main and panel.

It is 390 px wide with letters of 13.5 px, so a phone shows it as it is; wider pages may scale it. What is
shown are texts by the names of their readings, so that a page can leave some out and put "?" for what it asks.
"""

from collections.abc import Mapping
from html import escape

from solver.station.readings import NotRead
from solver.station.station import Station
from solver.units.show import exact, with_unit
from solver.vocabulary import quantity_named

from .picture_pieces import FLOOR, PIPE
from .picture_scenes import RISER, source
from .picture_words import captions, picture_words
from .svg import INK, check_valve, element, gate_valve, label, path, rect

__all__ = ["SHOWN", "picture", "texts_of"]

Texts = Mapping[str, str]
WIDTH = 390
RIGHT = 386.0  # where labels of the main end
BESIDE, BELOW = (
    (212.0, 175.0),
    (8.0, 374.0),
)  # left and width of the panel beside a well, under a tank
TOP, ROW = 150.0, 20.0
Cell = tuple[str, str]
EMPTY: Cell = ("", "")
SHOWN = (
    *("flow", "head", "static_head", "delivery_pressure", "pipe_diameter", "pipe_length"),
    *(
        "discharge_gauge",
        "suction_gauge",
        "suction_vacuum",
        "discharge_gauge_height",
        "suction_gauge_height",
    ),
    *("suction_lift", "static_suction_head", "inflow", "water_depth", "on_level", "off_level"),
    *("motor_size", "rated_volts", "full_load_amps", "service_factor", "running_speed"),
    *("amps_a", "amps_b", "amps_c", "volts_ab", "volts_bc", "volts_ca"),
    *("input_power", "power_factor"),
)


def texts_of(station: Station) -> dict[str, str]:
    """Every reading that the picture has a place for, as noted, with its unit."""
    texts = {}
    for name in SHOWN:
        try:
            value = station.noted(name)
        except NotRead:
            continue
        unit = quantity_named(name).unit(station.system.name)
        texts[name] = with_unit(exact(value, unit), unit)
    return texts


def picture(station: Station, texts: Texts | None = None, name: str = "station") -> str:
    """The station as SVG, with these texts, or all that it reads; `name` makes its ids its own."""
    said = texts_of(station) if texts is None else texts
    lines = captions(station, said)
    panel, end = _panel(station, said)
    bottom = max(end, FLOOR + 5) if station.well else end
    drawn = [*source(station, said), *_main(said), *panel]
    drawn += [label(8, bottom + 21 + 18 * row, line) for row, line in enumerate(lines)]
    height = bottom + 11 + 18 * len(lines)
    place = f"{station.place.name} at {station.place.station}"
    return element(
        "svg",
        element("title", escape(place), id=f"{name}-title"),
        element("desc", escape(picture_words(station, said)), id=f"{name}-words"),
        *drawn,
        xmlns="http://www.w3.org/2000/svg",
        viewBox=f"0 0 {WIDTH} {height:g}",
        width="100%",
        role="img",
        aria_labelledby=f"{name}-title {name}-words",
        class_="w2w-station",
        style=f"max-width: {1.6 * WIDTH:g}px; color: var(--w2w-text, CanvasText)",
    )


def _main(texts: Texts) -> list[str]:
    """The discharge from the riser to the right edge, with its valves, its flow and where it ends."""
    drawn = [
        path((RISER, PIPE), (WIDTH, PIPE), width=6),
        check_valve(222, PIPE),
        gate_valve(250, PIPE),
    ]
    if "flow" in texts:
        drawn.append(label(RIGHT, PIPE - 10, "", f"{texts['flow']} →", "end"))
    pipe = [texts[part] for part in ("pipe_diameter", "pipe_length") if part in texts]
    rows = [
        (" main, ".join(pipe), "") if len(pipe) == 2 else ("", ""),
        (texts.get("static_head", ""), "above the water"),
        (texts.get("delivery_pressure", ""), "at its end"),
    ]
    said = [(value, what) for value, what in rows if value]
    return drawn + [
        label(RIGHT, PIPE + 22 + 16 * row, value, what, "end", first_bold=True)
        for row, (value, what) in enumerate(said)
    ]


def _panel(station: Station, texts: Texts) -> tuple[list[str], float]:
    """The panel with nameplate, legs and power, and where it ends (px from the top)."""
    plate, amps, volts = columns = _columns(station, texts)
    if not any(value for cells in (plate[1:], amps, volts) for _, value in cells):
        return [], TOP  # the pump's name alone
    rows: list[tuple[Cell, ...]]
    places: tuple[float, ...]
    if station.well:
        left, width = BESIDE
        rows = [(plate[0], plate[1]), (plate[2], plate[4]), (plate[3], EMPTY)]
        rows += zip(amps, volts, strict=True)
        places = (left + 9, left + 87)
    else:
        left, width = BELOW
        rows = [*zip(*columns, strict=False), (plate[4], EMPTY, EMPTY)]
        places = (left + 12, left + 136, left + 256)
    tall = 14 + ROW * len(rows)
    drawn = [rect(left, TOP, width, tall, rx=6, fill="none", stroke=INK, stroke_width=2.5)]
    for number, row in enumerate(rows):
        y = TOP + 21 + ROW * number
        drawn += [label(x, y, *cell) for x, cell in zip(places, row, strict=True) if any(cell)]
    return drawn, TOP + tall


def _columns(station: Station, texts: Texts) -> tuple[list[Cell], list[Cell], list[Cell]]:
    """What the panel says: the nameplate, the amps of the legs and kW, their volts and PF."""
    plate = [
        ("", station.place.name),
        ("", texts.get("motor_size", "")),
        ("", texts.get("rated_volts", "")),
        ("FLA", texts.get("full_load_amps", "")),
        ("SF", texts.get("service_factor", "")),
    ]
    amps = [(leg.upper(), texts.get(f"amps_{leg}", "")) for leg in "abc"]
    volts = [(pair.upper(), texts.get(f"volts_{pair}", "")) for pair in ("ab", "bc", "ca")]
    amps.append(("", texts.get("input_power", "")))
    volts.append(("PF", texts.get("power_factor", "")))
    return _filled(plate), _filled(amps), _filled(volts)


def _filled(cells: list[Cell]) -> list[Cell]:
    """The cells with a value; a name alone is not shown."""
    return [cell if cell[1] else EMPTY for cell in cells]
