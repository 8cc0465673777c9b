"""Standby power: fuel, generator, transfer switch and what it carries; and a bypass or trucks at a wet well."""

from solver.render.svg import (
    ACCENT,
    INK,
    LOOK,
    PAGE,
    SOFT,
    WATER,
    across,
    circle,
    element,
    line,
    path,
    rect,
)

from .drawing import Drawing, Drawn
from .shown import LEAST, Rows, Shown, words

__all__ = ["BYPASS", "GENERATOR"]

Y = 58.0  # px: the line from the generator to the pumps
FUEL: Rows = (
    ("fuel_tank", "tank"),
    ("fuel_level", "gauge"),
    ("fuel_reserve", "can't be drawn"),
    ("usable_fuel", "usable"),
    ("fuel_rate", "burns"),
    ("fuel_per_energy", "burns"),
    ("fuel_hours", "runs for"),
)
SET: Rows = (
    ("generator_rating", "rated"),
    ("generator_power_factor", "at a power factor of"),
    ("generator_kva", "that is"),
    ("generator_volts", "volts"),
    ("generator_amps", "full-load amps"),
    ("engine_speed", "engine"),
    ("generator_poles", "poles"),
    ("generator_frequency", "makes"),
    ("generator_load", "loaded"),
)
CARRIED: Rows = (
    ("running_pumps", "pumps running"),
    ("input_power", "each"),
    ("other_load", "all else"),
    ("running_load", "carries"),
    ("load_power_factor", "at a power factor of"),
    ("running_kva", "running"),
)
START: Rows = (
    ("starting_kva", "starts with"),
    ("rated_volts", "motor"),
    ("locked_rotor_amps", "locked rotor"),
    ("full_load_amps", "full load"),
    ("starting_percent", "starts at"),
    ("starting_peak", "in all"),
)


def _draw(shown: Shown) -> Drawn:
    fuel = shown.has(*(name for name, _ in FUEL))
    carried = shown.has(*(name for name, _ in (*CARRIED, *START)))
    pieces = [across(0, *_set(fuel)), words(0, 20, "generator", "middle", dx=106)]
    if carried:
        pieces += [across(0, *_switch()), words(0, 20, "transfer switch", "middle", dx=212)]
    foot = Y + 34
    for rows in (FUEL, SET, CARRIED, START):
        more, low = shown.flow(foot + 19, rows, room=LEAST)
        pieces += more
        foot = low if more else foot
    return Drawn(pieces, foot)


def _set(fuel: bool) -> list[str]:
    """The engine with its generator, on the tank where fuel is told of."""
    wave = "M92,58 q7,-16 14,0 t14,0"
    drawn = [
        circle(106, Y, 26, fill=PAGE, stroke=INK, stroke_width=3),
        element("path", d=wave, fill="none", stroke=ACCENT, stroke_width=2.5),
    ]
    if fuel:
        drawn += [
            rect(4, Y, 48, 26, fill=LOOK, fill_opacity=0.3),
            rect(4, Y - 18, 48, 44, fill="none", stroke=INK, stroke_width=2.5),
            path((52, Y + 14), (84, Y + 14), stroke=SOFT, width=3),
        ]
    return drawn


def _switch() -> list[str]:
    """Thrown to the generator; the utility's side is open."""
    return [
        path((132, Y), (190, Y), width=2.5),
        path((190, Y), (228, Y), stroke=ACCENT, width=3.5),
        path((190, Y - 22), (176, Y - 22), stroke=SOFT, width=2.5),
        *(circle(x, y, 4, fill=PAGE, stroke=INK, stroke_width=2) for x, y in ((192, Y), (192, Y - 22), (230, Y))),
        path((234, Y), (286, Y), width=2.5),
        *(path((286, Y), (286, y), (296, y), width=2.5) for y in (Y - 18, Y + 18)),
        *(circle(308, y, 12, fill=PAGE, stroke=INK, stroke_width=2.5) for y in (Y - 18, Y + 18)),
    ]  # fmt: skip


INFLOW: Rows = (("inflow", "inflow"), ("peaking_factor", "peaking factor"), ("peak_inflow", "peak"))
PUMPS: Rows = (("bypass_pump", "one pump"), ("bypass_pumps", "pumps"))
TRUCKS: Rows = (
    ("truck_volume", "truck"),
    ("round_trip", "round trip"),
    ("truck_rate", "one truck"),
    ("trucks_needed", "trucks"),
)


def _draw_bypass(shown: Shown) -> Drawn:
    trucks = shown.has(*(name for name, _ in TRUCKS))
    pieces = [
        line(0, 100, 40, stroke=SOFT, stroke_width=2),
        across(0, *_well()),
        words(0, 66, "wet well", dx=104),
        across(0, *(_truck() if trucks else _pump())),
    ]
    more, foot = shown.flow(132, (*INFLOW, *PUMPS, *TRUCKS), room=LEAST)
    return Drawn([*pieces, *more], foot)


def _well() -> list[str]:
    return [
        rect(42, 82, 52, 26, fill=WATER, fill_opacity=0.5),
        path((42, 40), (42, 108), (94, 108), (94, 40), width=3),
        path((2, 66), (40, 66), stroke=WATER, width=6),
        path((30, 60), (38, 66), (30, 72), stroke=WATER, width=2),
    ]


def _pump() -> list[str]:
    return [
        path((68, 96), (68, 22), (150, 22), stroke=SOFT, width=4),
        path((182, 22), (318, 22), stroke=SOFT, width=4),
        path((308, 16), (318, 22), (308, 28), stroke=SOFT, width=2),
        rect(146, 8, 40, 30, fill=PAGE, stroke=INK, stroke_width=2.5),
        circle(166, 23, 9, fill="none", stroke=ACCENT, stroke_width=2.5),
    ]


def _truck() -> list[str]:
    return [
        path((68, 96), (68, 20), (150, 20), stroke=SOFT, width=4),
        rect(150, 6, 92, 24, rx=10, fill=PAGE, stroke=INK, stroke_width=2.5),
        path((242, 30), (242, 12), (258, 12), (268, 22), (268, 30), (150, 30), width=2.5),
        *(circle(x, 33, 7, fill=PAGE, stroke=INK, stroke_width=2.5) for x in (170, 190, 252)),
    ]


GENERATOR = Drawing(
    "A generator and what it carries",
    tuple(name for name, _ in (*FUEL, *SET, *CARRIED, *START)),
    _draw,
    (),
    (
        *("running_load", "running_kva", "fuel_hours", "generator_rating"),
        *("generator_kva", "generator_frequency"),
    ),
)
BYPASS = Drawing(
    "Around a wet well that nothing pumps",
    tuple(name for name, _ in (*INFLOW, *PUMPS, *TRUCKS)),
    _draw_bypass,
    (),
    ("peak_inflow", "peaking_factor", "truck_volume"),
)
