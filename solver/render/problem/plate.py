"""The nameplates of a motor and of a pump, and beside them what was measured or is to be set."""

from functools import partial

from solver.render.svg import SOFT, across, block, circle
from solver.units.quantity import Both

from .drawing import Drawing, Drawn
from .shown import Rows, Shown

__all__ = ["PLATE", "PUMP_PLATE"]

ON_IT: Rows = (
    ("motor_size", Both("horsepower", "power")),
    ("rated_volts", "volts"),
    ("rated_kilovolts", "kilovolts"),
    ("full_load_amps", "FLA"),
    ("service_factor", "SF"),
    ("rated_speed", "speed"),
    ("frequency", "frequency"),
    ("poles", "poles"),
    ("rated_rise", "temp. rise"),
    ("locked_rotor_amps", "LRA"),
    ("starting_kva", "starting kVA"),
    ("starting_kva_per_hp", "kVA per hp"),
)
BESIDE: Rows = (
    ("table_amps", "FLC, from the table"),
    ("nameplate_share", "nameplate of table"),
    ("overload_setting", "relay set to"),
    ("overload_percent", "overload percentage"),
    ("overload_limit", "overload limit"),
    ("raised_limit", "raised limit"),
    ("service_factor_amps", "SFA"),
    ("current_limit", "current limit"),
    ("soft_amps", "starting amps"),
    ("tap", "tap"),
    ("tap_amps", "line amps on the tap"),
    ("line_volts", "measured"),
    ("line_amps", "measured"),
    ("amps_a", "A"),
    ("amps_b", "B"),
    ("amps_c", "C"),
    ("amps_highest", "highest leg"),
    ("power_factor", "PF"),
    ("motor_efficiency", "motor"),
    ("input_power", "kW at the meter"),
    ("brake_power", Both("BHP", "shaft")),
    ("load_amps", "of FLA"),
    ("load_by_amps", "load by amps"),
    ("motor_load", "motor load"),
    ("least_insulation", "minimum, kV + 1"),
)
PUMP: Rows = (
    ("pump_speed", "speed"),
    ("flow", "flow"),
    ("head", "TDH"),
    ("pressure", "pressure rise"),
    ("impeller_diameter", "impeller"),
    ("stages", "stages"),
)
OF_PUMP: Rows = (("specific_speed", "specific speed"),)
TOP, ROW, RIM, COLUMNS = 4.0, 42.0, 12.0, 3


def _plate(shown: Shown, on_it: Rows, beside: Rows) -> Drawn:
    """What is on the plate in three columns, and the rest under it."""
    cells = [row for row in on_it if shown.has(row[0])]
    rows = max(1, -(-len(cells) // COLUMNS))
    tall = 14 + ROW * rows
    pieces = [
        block(0, 100, TOP, tall, rx=8, fill="none", stroke=SOFT, stroke_width=2.5),
        *(across(0, circle(7, y, 2, fill=SOFT), y=TOP) for y in (8, tall - 8)),
        *(across(100, circle(-7, y, 2, fill=SOFT), y=TOP) for y in (8, tall - 8)),
    ]
    for place, (name, called) in enumerate(cells):
        down, along = divmod(place, COLUMNS)
        pieces.append(shown.stacked(along * 31, TOP + 24 + ROW * down, name, called, dx=RIM + 6))
    more, foot = shown.flow(TOP + tall + 20, beside)
    return Drawn(pieces + more, foot)


PLATE = Drawing(
    "A motor nameplate and what goes with it",
    tuple(name for name, _ in (*ON_IT, *BESIDE)),
    partial(_plate, on_it=ON_IT, beside=BESIDE),
    core=tuple(name for name, _ in ON_IT),
)
PUMP_PLATE = Drawing(
    "A pump at its best efficiency point",
    tuple(name for name, _ in (*PUMP, *OF_PUMP)),
    partial(_plate, on_it=PUMP, beside=OF_PUMP),
    core=("pump_speed", "specific_speed", "stages"),
)
