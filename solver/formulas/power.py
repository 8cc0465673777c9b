"""From the water back to the meter: the three horsepowers and the efficiencies between them."""

from ..expression import Expr, Fraction, Known, Mean, Number, Percent
from ..formula import Formula, Slip
from .constants import (
    GPM_PER_MGD,
    HEAD_PER_PRESSURE,
    KW_PER_HP,
    M3_DAY_PER_LITRE_SECOND,
    WATER_POWER,
    WATER_WEIGHT,
)
from .sizing import DRIVE, SIZING

__all__ = ["POWER"]

flow, daily_flow, head, pressure = map(Known, ("flow", "daily_flow", "head", "pressure"))
water_power, brake_power, motor_output, motor_power = map(
    Known, ("water_power", "brake_power", "motor_output", "motor_power")
)
pump, motor, drive, overall = (
    Fraction(Known(f"{part}_efficiency")) for part in ("pump", "motor", "drive", "overall")
)

LOSSES = "common practice, no source: motor power ≥ brake power ≥ water power"
# With the pump's own efficiency known, the work goes from shaft to wire one machine at a time.
ONE_BY_ONE = ("pump_efficiency",)
WIRE = "The motor wastes part of what the wire gives it, so the wire must carry more."
EXTENSION = "Alabama Extension ANR-0548"
CHAIN = "Univ. of Nebraska CropWatch, Dorn 2008: motor times pump efficiency is wire to water"


def averaged(*parts: str) -> Slip:
    """The efficiencies averaged where they multiply."""
    return Slip(
        "averaged",
        Mean(tuple(Known(f"{part}_efficiency") for part in parts)),
        "The efficiencies are averaged. Each takes its share of the one before: multiply.",
    )


def used_twice(expr: Expr, which: str) -> Slip:
    """One efficiency put in again, as if a second machine had it."""
    return Slip(
        "used_twice",
        expr,
        f"The {which} efficiency went in twice. Each efficiency goes in once.",
    )


POWER = (
    Formula(
        "flow",
        daily_flow * GPM_PER_MGD,
        GPM_PER_MGD.source,
        "The power formula wants the flow in gallons per minute.",
        systems=("us",),
    ),
    Formula(
        "flow",
        daily_flow / M3_DAY_PER_LITRE_SECOND,
        M3_DAY_PER_LITRE_SECOND.source,
        "The power formula wants the flow in litres per second.",
        systems=("si",),
    ),
    Formula(
        "head",
        pressure * HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "A gauge shows pressure; the power formula wants the height of water it holds up.",
    ),
    Formula(
        "water_power",
        flow * head / WATER_POWER,
        WATER_POWER.source,
        "Lifting more water, or lifting it higher, takes more power.",
        slips=(
            Slip(
                "weight_counted_twice",
                flow * head * WATER_WEIGHT / WATER_POWER,
                "The weight of water is counted twice. The constant under the line already holds it.",
            ),
            Slip(
                "added",
                (flow + head) / WATER_POWER,
                "Flow and head are added. Power takes flow times head.",
            ),
        ),
    ),
    Formula(
        "brake_power",
        water_power / pump,
        EXTENSION,
        "The pump wastes part of what the shaft gives it, so the shaft must carry more.",
        slips=(used_twice(water_power / pump / pump, "pump"),),
    ),
    Formula(
        "motor_output",
        brake_power / drive,
        LOSSES,
        "Belts or gears waste part of what the motor gives, so the motor must give more.",
    ),
    Formula(
        "motor_power",
        motor_output / motor,
        LOSSES,
        WIRE,
        slips=(
            Slip(
                "drive_left_out",
                brake_power / motor,
                "The drive is left out. The motor must give what the belts or gears waste too.",
            ),
        ),
    ),
    Formula(
        "motor_power",
        brake_power / motor,
        LOSSES,
        WIRE,
        unless=DRIVE,
    ),
    Formula(
        "input_power",
        motor_power * KW_PER_HP,
        KW_PER_HP.source,
        "The meter counts the motor's input in kilowatts.",
        slips=(
            Slip(
                "converted_twice",
                motor_power * KW_PER_HP * KW_PER_HP,
                "The 0.746 went in twice. Each horsepower becomes kilowatts once.",
            ),
        ),
        systems=("us",),
    ),
    Formula(
        "input_power",
        motor_power,
        "the same quantity, already in kilowatts",
        "Motor power is what the meter counts; both are in kilowatts.",
        systems=("si",),
    ),
    Formula(
        "overall_efficiency",
        Percent(pump * drive * motor),
        CHAIN,
        "Motor, drive and pump stand in a row, so all three efficiencies multiply.",
        slips=(averaged("pump", "drive", "motor"),),
    ),
    Formula(
        "overall_efficiency",
        Percent(pump * motor),
        CHAIN,
        "Each machine passes on only its share, so the efficiencies multiply.",
        slips=(averaged("pump", "motor"),),
        unless=DRIVE,
    ),
    Formula(
        "overall_efficiency",
        Percent(water_power / motor_power),
        LOSSES,
        "Wire to water compares what the water gets with what the wire gives.",
        yields_to=(*ONE_BY_ONE, "overall_efficiency"),
    ),
    Formula(
        "motor_power",
        water_power / overall,
        LOSSES,
        "Wire to water already holds every loss, so this one efficiency is enough.",
        slips=(
            used_twice(water_power / overall / overall, "wire-to-water"),
            Slip(
                "second_invented",
                water_power / (overall * Number(0.9)),
                "A 90% motor was added that nobody gave. Wire to water already holds the motor.",
            ),
        ),
        yields_to=ONE_BY_ONE,
    ),
    *SIZING,
)
