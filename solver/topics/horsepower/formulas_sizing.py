"""The standard motor that carries a shaft load, from the published table."""

from solver.algebra.expression import Expr, Fraction, Known, Lookup
from solver.algebra.formula import Formula, Slip
from solver.topics.tables import largest_motor_below, next_motor_size, second_motor_above

__all__ = ["DRIVE", "SIZING"]

brake_power, motor_output = Known("brake_power"), Known("motor_output")
motor = Fraction(Known("motor_efficiency"))

SOURCE = "standard motor sizes: NEMA and IEC ratings"
WHY = "Motors come in standard sizes. Take the first one that can carry the load."
# A motor that is there already may be larger than its load needs.
NAMEPLATE = ("motor_size",)
# With a drive between them, the motor gives more than the shaft of the pump takes.
DRIVE = ("drive_efficiency", "motor_output")


def size_for(load: Expr, read=next_motor_size) -> Lookup:
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
        SOURCE,
        WHY,
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
        SOURCE,
        WHY,
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
