"""Belts and torque: sheaves, speeds, what a belt loses, and the twist of a shaft."""

from solver.algebra.expression import Constant, Figure, Fraction, Known, Number
from solver.algebra.formula import Formula, Slip

__all__ = ["BELTS", "TURNING"]

motor_sheave, pump_sheave = map(Known, ("motor_sheave", "pump_sheave"))
running_speed, pump_speed, new_speed = map(Known, ("running_speed", "pump_speed", "new_speed"))

BELTS_SOURCE = "Sarkar, Theory of Machines, ch. 2 (belt drives): both rims move with the belt"

PI = Constant(
    "pi",
    "pi",
    us=Figure(3.14, "", also=(3.1416, 3.142), exact=3.14159265),
    si=Figure(3.14, "", also=(3.1416, 3.142), exact=3.14159265),
    source="definition of a circle's circumference",
)
RIM_SPEED = Constant(
    "rim_speed",
    "turns of a rim made a belt speed",
    us=Figure(12, "in rpm / ft/min", exact=12.0),
    si=Figure(60_000, "mm rpm / m/s", exact=60_000.0),
    source="arithmetic: 12 inches per foot; 60 seconds per minute times 1,000 millimeters per meter",
)
TORQUE = Constant(
    "torque_constant",
    "torque constant",
    us=Figure(5252, "lb-ft rpm / hp", also=(5250, 5252.1), exact=5252.113),
    si=Figure(9549, "N·m rpm / kW", also=(9550, 9549.3), exact=9549.297),
    source="Hubert, Electric Machines, Ex 5.3 (5252); 60,000 over two pi (9549)",
)
kept = Number(1) - Fraction(Known("belt_slip"))
SWAPPED = "You put the sheaves in the wrong way around. The bigger sheave turns slower."
SAME_BELT = "Diameter times speed is the same on both sheaves, because one belt runs around both."

BELTS = (
    Formula(
        "pump_sheave",
        motor_sheave * running_speed / pump_speed,
        BELTS_SOURCE,
        SAME_BELT,
        slips=(
            Slip(
                "swapped",
                motor_sheave * pump_speed / running_speed,
                "You put the speeds in the wrong way around. A slower pump takes a bigger sheave.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "pump_speed",
        motor_sheave * running_speed / pump_sheave,
        BELTS_SOURCE,
        SAME_BELT,
        slips=(Slip("swapped", pump_sheave * running_speed / motor_sheave, SWAPPED),),
        unless=("belt_slip",),
        back=SAME_BELT,
    ),
    Formula(
        "pump_speed",
        motor_sheave * running_speed / pump_sheave * kept,
        "Sarkar, Theory of Machines, ch. 2: N2 = N1 D1 / D2 times (1 - slip)",
        "The sheaves set the speed, and slipping belts pass on a little less of it.",
        slips=(
            Slip(
                "slip_left_out",
                motor_sheave * running_speed / pump_sheave,
                "You left out the slip. Take its percent off the speed.",
            ),
            Slip("swapped", pump_sheave * running_speed / motor_sheave * kept, SWAPPED),
        ),
        back="The sheaves set the speed, and slipping belts pass on a little less of it.",
    ),
    Formula(
        "new_motor_sheave",
        motor_sheave * new_speed / pump_speed,
        BELTS_SOURCE,
        "The pump's speed goes up and down with the motor sheave. Faster takes much more power, so check the motor first.",
        slips=(
            Slip(
                "swapped",
                motor_sheave * pump_speed / new_speed,
                "You used old speed over new speed. A faster pump takes a bigger motor sheave: new speed on top.",
            ),
        ),
    ),
    Formula(
        "belt_speed",
        PI * motor_sheave * running_speed / RIM_SPEED,
        "Wentzell, Machine Design, Ex 14.2",
        "In one turn the belt moves one circumference of the sheave.",
        slips=(
            Slip(
                "radius",
                PI * motor_sheave / 2 * running_speed / RIM_SPEED,
                "You used half the diameter. The circumference is pi times the whole diameter.",
            ),
            Slip(
                "pi_left_out",
                motor_sheave * running_speed / RIM_SPEED,
                "You left out pi. In one turn the belt moves pi times the diameter.",
            ),
        ),
    ),
    Formula(
        "belt_speed",
        PI * pump_sheave * pump_speed / RIM_SPEED,
        "Wentzell, Machine Design, Ex 14.2",
        "In one turn the belt moves one circumference of the sheave.",
        slips=(
            Slip(
                "other_sheave",
                PI * motor_sheave * pump_speed / RIM_SPEED,
                "You paired the motor's sheave with the pump's speed. Use the diameter and the speed of "
                "one sheave.",
            ),
            Slip(
                "pi_left_out",
                pump_sheave * pump_speed / RIM_SPEED,
                "You left out pi. In one turn the belt moves pi times the diameter.",
            ),
        ),
        turns=(),
    ),
)

TURNING = (
    Formula(
        "brake_power",
        Known("shaft_torque") * pump_speed / TORQUE,
        TORQUE.source,
        "Power is torque times speed. The constant makes the units fit.",
        slips=(
            Slip(
                "divided_by_speed",
                TORQUE * Known("shaft_torque") / pump_speed,
                "You divided by the speed and multiplied by the constant. For power it is the other way around.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "shaft_torque",
        TORQUE * Known("brake_power") / pump_speed,
        TORQUE.source,
        "Power is torque times speed. For the same power, a slower shaft has to twist harder.",
        slips=(
            Slip(
                "multiplied_by_speed",
                Known("brake_power") * pump_speed / TORQUE,
                "You multiplied by the speed and divided by the constant. For torque it is the other "
                "way around.",
            ),
        ),
        back="Power is torque times speed. The constant makes the units fit.",
    ),
    Formula(
        "rated_torque",
        TORQUE * Known("motor_size") / Known("rated_speed"),
        TORQUE.source,
        "The nameplate gives full-load power at full-load speed, so this is full-load torque.",
        slips=(
            Slip(
                "multiplied_by_speed",
                Known("motor_size") * Known("rated_speed") / TORQUE,
                "You multiplied by the speed and divided by the constant. For torque it is the other "
                "way around.",
            ),
        ),
    ),
)
