"""Efficiencies in a row, what each machine loses, and the standard motor that carries a load."""

from collections.abc import Callable

from solver.algebra.expression import Expr, Fraction, Known, Lookup, Mean, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.tables import largest_motor_below, next_motor_size, second_motor_above

__all__ = ["DRIVE", "EFFICIENCY", "LOSSES", "used_twice"]

water_power, brake_power, motor_output, motor_power = map(
    Known, ("water_power", "brake_power", "motor_output", "motor_power")
)
pump, motor, drive, overall = (
    Fraction(Known(f"{part}_efficiency")) for part in ("pump", "motor", "drive", "overall")
)

LOSSES = "common practice, no source: no machine gives out more than it takes in"
CHAIN = "Univ. of Nebraska CropWatch, Dorn 2008: motor times pump efficiency is wire to water"
# With a drive between them, the motor gives more than the shaft of the pump takes.
DRIVE = ("drive_efficiency", "motor_output")
# With the pump's own efficiency known, the work goes from shaft to wire one machine at a time.
ONE_BY_ONE = ("pump_efficiency",)


def averaged(*parts: str) -> Slip:
    """The efficiencies averaged where they multiply."""
    return Slip(
        "averaged",
        Mean(tuple(Known(f"{part}_efficiency") for part in parts)),
        "You averaged the efficiencies. Each machine passes on only part of what it gets from the "
        "one before, so multiply them.",
    )


def used_twice(expr: Expr, which: str) -> Slip:
    """One efficiency put in again, as if a second machine had it."""
    return Slip(
        "used_twice",
        expr,
        f"You used the {which} efficiency twice. Use it once.",
    )


OVERALL = (
    Formula(
        "overall_efficiency",
        Percent(pump * drive * motor),
        CHAIN,
        "Motor, drive and pump pass the power on one after another, so all three efficiencies multiply.",
        slips=(averaged("pump", "drive", "motor"),),
    ),
    Formula(
        "overall_efficiency",
        Percent(pump * motor),
        CHAIN,
        "The pump gets only what the motor passes on, so the two efficiencies multiply.",
        slips=(averaged("pump", "motor"),),
        unless=DRIVE,
    ),
    Formula(
        "overall_efficiency",
        Percent(water_power / motor_power),
        LOSSES,
        "Wire-to-water efficiency compares what the water gets with what the motor takes in.",
        yields_to=(*ONE_BY_ONE, "overall_efficiency"),
    ),
    Formula(
        "motor_power",
        water_power / overall,
        LOSSES,
        "Wire-to-water efficiency includes every loss, so it takes you from the water straight to the wire.",
        slips=(
            used_twice(water_power / overall / overall, "wire-to-water"),
            Slip(
                "second_invented",
                water_power / (overall * Number(0.9)),
                "You put in a 90% motor efficiency that isn't in the problem. Wire-to-water "
                "efficiency already includes the motor.",
            ),
        ),
        yields_to=ONE_BY_ONE,
        back="Wire-to-water efficiency is the share of the motor's input that reaches the water.",
    ),
)

SIZES = "standard motor sizes: NEMA and IEC ratings"
FIRST_SIZE = "Motors come in standard sizes. Take the first one that can carry the load."
# A motor that is there already may be larger than its load needs.
NAMEPLATE = ("motor_size",)


def size_for(load: Expr, read: Callable[[float, str], float] = next_motor_size) -> Lookup:
    """The standard motor for a shaft load, read from the table by `read`."""
    return Lookup(load, read, "the next standard size at or above", ("hp", "kW"), ("hp", "kW"))


def wrong_sizes(load: Expr) -> tuple[Slip, ...]:
    """One size too small, and one too large."""
    return (
        Slip(
            "rounded_down",
            size_for(load, largest_motor_below),
            "You took a size below the load. That motor would run overloaded, so go to the next "
            "standard size up.",
        ),
        Slip(
            "one_size_over",
            size_for(load, second_motor_above),
            "You went one size too big. A smaller standard size already carries this load.",
        ),
    )


SIZING = (
    Formula(
        "motor_size",
        size_for(motor_output),
        SIZES,
        FIRST_SIZE,
        slips=(
            Slip(
                "drive_left_out",
                size_for(brake_power),
                "You left out the drive. The motor also has to supply what the belts or gears waste.",
            ),
            *wrong_sizes(motor_output),
        ),
        unless=NAMEPLATE,
    ),
    Formula(
        "motor_size",
        size_for(brake_power),
        SIZES,
        FIRST_SIZE,
        slips=(
            Slip(
                "sized_on_input",
                size_for(brake_power / motor),
                "You sized the motor by its input. The nameplate gives what the shaft can deliver, so "
                "the motor's own efficiency doesn't count here.",
            ),
            *wrong_sizes(brake_power),
        ),
        unless=(*DRIVE, *NAMEPLATE),
    ),
)

LOST = tuple(
    Formula(
        f"{machine}_loss",
        takes_in - passes_on,
        LOSSES,
        "What a machine takes in and doesn't pass on is lost, mostly as heat.",
        turns=(),
    )
    for machine, takes_in, passes_on in (
        ("motor", motor_power, motor_output),
        ("drive", motor_output, brake_power),
        ("pump", brake_power, water_power),
    )
)

EFFICIENCY = (*OVERALL, *SIZING, *LOST)
