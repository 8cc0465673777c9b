"""From the water back to the meter: the three horsepowers, one machine at a time.

`POWER` has those of the efficiency topic too: chapters that use the one use the other.
"""

from solver.algebra.expression import Fraction, Known
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import (
    GPM_PER_MGD,
    HEAD_PER_PRESSURE,
    KW_PER_HP,
    M3_DAY_PER_LITRE_SECOND,
    WATER_POWER,
    WATER_WEIGHT,
)
from solver.topics.efficiency.formulas import DRIVE, EFFICIENCY, LOSSES, used_twice

__all__ = ["POWER"]

flow, daily_flow, head, pressure = map(Known, ("flow", "daily_flow", "head", "pressure"))
water_power, brake_power, motor_output, motor_power = map(
    Known, ("water_power", "brake_power", "motor_output", "motor_power")
)
pump, motor, drive = (Fraction(Known(f"{part}_efficiency")) for part in ("pump", "motor", "drive"))

WIRE = (
    "The motor wastes part of what it takes in, so {motor_power:short} must be bigger than "
    "{brake_power:short}."
)
WIRE_BACK = "The motor wastes part of what it takes in, so its shaft delivers less."
DRIVEN = "The motor wastes part of what it takes in, so its input must be bigger than its output."
ALL_DAY = "The flow for the day is the pumping rate kept up around the clock."
EXTENSION = "Alabama Extension ANR-0548"


POWER = (
    Formula(
        "flow",
        daily_flow * GPM_PER_MGD,
        GPM_PER_MGD.source,
        "1 MGD is a million gallons spread over 1,440 minutes.",
        systems=("us",),
        back=ALL_DAY,
    ),
    Formula(
        "flow",
        daily_flow / M3_DAY_PER_LITRE_SECOND,
        M3_DAY_PER_LITRE_SECOND.source,
        "A day has 86,400 seconds, and a cubic meter has 1,000 liters.",
        systems=("si",),
        back=ALL_DAY,
    ),
    Formula(
        "head",
        pressure * HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "The gauges read pressure. Pump formulas take head, the height of water that pressure can hold up.",
        back="The gauges show head as a pressure.",
    ),
    Formula(
        "water_power",
        flow * head / WATER_POWER,
        WATER_POWER.source,
        "Pumping more water, or pumping it higher, takes more power. The constant turns flow times "
        "head into {water_power:name}.",
        slips=(
            Slip(
                "weight_counted_twice",
                flow * head * WATER_WEIGHT / WATER_POWER,
                "You put in the weight of water too. The constant you divide by already includes it.",
            ),
            Slip(
                "added",
                (flow + head) / WATER_POWER,
                "You added the flow and the head. For power, multiply them.",
            ),
        ),
        back="The same power pumps more water at a low head, or less water at a high head.",
    ),
    Formula(
        "brake_power",
        water_power / pump,
        EXTENSION,
        "The pump wastes part of what the shaft gives it, so {brake_power:short} must be bigger than "
        "{water_power:short}.",
        slips=(used_twice(water_power / pump / pump, "pump"),),
        back="The pump wastes part of what the shaft gives it, so the water gets less.",
    ),
    Formula(
        "motor_output",
        brake_power / drive,
        LOSSES,
        "Belts or gears waste part of what the motor delivers, so the motor has to deliver more.",
        back="Belts or gears waste part of what the motor delivers, so the pump shaft gets less.",
    ),
    Formula(
        "motor_power",
        motor_output / motor,
        LOSSES,
        DRIVEN,
        slips=(
            Slip(
                "drive_left_out",
                brake_power / motor,
                "You left out the drive. The motor also has to supply what the belts or gears waste.",
            ),
        ),
        back=WIRE_BACK,
    ),
    Formula(
        "motor_power",
        brake_power / motor,
        LOSSES,
        WIRE,
        unless=DRIVE,
        back=WIRE_BACK,
    ),
    Formula(
        "input_power",
        motor_power * KW_PER_HP,
        KW_PER_HP.source,
        "The meter reads what goes into the motor, in kilowatts: 0.746 kW for each horsepower.",
        slips=(
            Slip(
                "converted_twice",
                motor_power * KW_PER_HP * KW_PER_HP,
                "You multiplied by 0.746 twice. The first time already gave you kilowatts.",
            ),
        ),
        systems=("us",),
        back="The meter reads kilowatts. Each 0.746 kW going into the motor is one horsepower.",
    ),
    Formula(
        "input_power",
        motor_power,
        "the same quantity, already in kilowatts",
        "{motor_power:Name} is what the meter reads. Both are in kilowatts.",
        systems=("si",),
        back="The meter reads what goes into the motor. Both are in kilowatts.",
    ),
    *EFFICIENCY,
)
