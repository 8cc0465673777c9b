"""What a signal of 4 to 20 mA says, lead, lag and delay, starting on less, and hours on a battery."""

from solver.algebra.expression import Constant, Figure, Fraction, Known, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import HEAD_PER_PRESSURE, LITRES_PER_CUBIC_METRE, SECONDS_PER_MINUTE
from solver.topics.wet_well.formulas_drawdown import minutes

__all__ = ["CONTROLS"]

SIGNAL = "ISA 50.00.01: signals of 4 to 20 mA"
FLOWS = "arithmetic: a volume over the difference of two flows is a time"
MOTOR = "EASA Electrical Engineering Handbook: reduced-voltage starting; Hubert, Electric Machines, ch 5"
SUMMED = "arithmetic: volt-amps of coils and lights, added as if they had one power factor"
CAPACITY = "arithmetic: amp-hours over amps"


def milliamps(name: str, label: str, value: float) -> Constant:
    """A fixed end of the signal, or its span."""
    figure = Figure(value, "mA", exact=value)
    return Constant(name, label, figure, figure, SIGNAL)


BOTTOM = milliamps("signal_bottom", "4 mA, the bottom of the signal", 4.0)
RANGE = milliamps("signal_range", "16 mA from bottom to top", 16.0)
TOP = milliamps("signal_top", "20 mA, the top of the signal", 20.0)

current, share = Known("loop_current"), Fraction(Known("signal_percent"))
span, level, zero = map(Known, ("signal_span", "signal_level", "signal_zero"))
least, most = Known("least_frequency"), Known("most_frequency")
flow, inflow, both_flow = map(Known, ("flow", "inflow", "parallel_flow"))
per_depth, delay = Known("volume_per_depth"), Known("off_delay")
coils = Known("coil_va") * Known("coil_count")
lamps = Known("lamp_va") * Known("lamp_count")

SIGNALS = (
    Formula(
        "signal_percent",
        Percent((current - BOTTOM) / RANGE),
        SIGNAL,
        "The signal starts at 4 mA, so take off 4 and divide by the 16 mA of its range.",
        slips=(
            Slip(
                "from_zero",
                Percent(current / TOP),
                "You divided by 20 mA. The signal starts at 4 mA, not at 0: take off 4, divide by 16.",
            ),
            Slip(
                "four_forgotten",
                Percent(current / RANGE),
                "You forgot to take off the 4 mA that the signal starts at.",
            ),
            Slip(
                "range_of_twenty",
                Percent((current - BOTTOM) / TOP),
                "You divided by 20 mA. From 4 to 20 the range is 16 mA.",
            ),
        ),
        back="The signal starts at 4 mA and has 16 mA to go up.",
    ),
    Formula(
        "signal_level",
        zero + share * span,
        f"{SIGNAL}; the transmitter's range",
        "The range starts above the floor, so add the level at 4 mA to the share of the range.",
        slips=(
            Slip(
                "zero_forgotten",
                share * span,
                "You left out the level at 4 mA. The range starts from there.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "signal_level",
        share * span,
        f"{SIGNAL}; the transmitter's range",
        "Level goes up evenly with the signal, so take the same share of the range.",
        unless=("signal_zero",),
        back="The level is a share of the range, and the signal is at the same share.",
    ),
    Formula(
        "signal_pressure",
        share * Known("pressure_span"),
        f"{SIGNAL}; the transmitter's range",
        "Pressure goes up evenly with the signal, so take the same share of the range.",
        turns=(),
    ),
    Formula(
        "signal_level",
        Known("signal_pressure") * HEAD_PER_PRESSURE,
        HEAD_PER_PRESSURE.source,
        "The transmitter feels the height of water above it as pressure.",
        turns=(),
    ),
    Formula(
        "drive_frequency",
        least + share * (most - least),
        f"{SIGNAL}; the drive's own scaling",
        "The drive goes evenly from its low end at 4 mA to its high end at 20 mA.",
        slips=(
            Slip(
                "from_standstill",
                share * most,
                "You scaled from 0 Hz. This drive starts at its low end and goes up from there.",
            ),
            Slip(
                "low_end_forgotten",
                share * (most - least),
                "You forgot to add the low end, which the drive runs at when the signal is 4 mA.",
            ),
        ),
        back="The signal is at the same share of its range as the drive is of its own.",
    ),
    Formula(
        "drive_frequency",
        share * most,
        f"{SIGNAL}; the drive's own scaling",
        "The drive goes evenly from 0 Hz at 4 mA to its high end at 20 mA.",
        unless=("least_frequency",),
        turns=(),
    ),
)

LEAD_AND_LAG = (
    Formula(
        "lag_volume",
        per_depth * Known("lag_depth"),
        "geometry: volume per depth times depth",
        "This much fits between the level that starts the lead pump and the one that calls the lag.",
    ),
    *minutes(
        "lag_time",
        Known("lag_volume"),
        inflow - flow,
        FLOWS,
        "The lead pump takes part of the inflow away. Only the rest raises the level.",
        wrong=(
            (
                "inflow_alone",
                inflow,
                "You divided by the inflow alone. The lead pump takes part of it away.",
            ),
            (
                "pump_alone",
                flow,
                "You divided by what the pump moves. The level rises by the rest of the inflow.",
            ),
        ),
    ),
    *minutes(
        "both_time",
        Known("lag_pump_down"),
        both_flow - inflow,
        FLOWS,
        "Water keeps coming in, so only what the pumps move beyond that lowers the level.",
        wrong=(
            (
                "inflow_left_out",
                both_flow,
                "You divided by what the pumps move. Water keeps coming in, so subtract the inflow.",
            ),
        ),
    ),
    *(
        Formula(
            "delay_volume",
            (flow - inflow) * delay / a_unit,
            FLOWS,
            "While the timer runs, the pump goes on taking more than comes in.",
            slips=(
                Slip(
                    "inflow_left_out",
                    flow * delay / a_unit,
                    "You left out the inflow. It replaces part of what the pump takes.",
                ),
            ),
            systems=(units,),
        )
        for units, a_unit in (("us", SECONDS_PER_MINUTE), ("si", LITRES_PER_CUBIC_METRE))
    ),
    Formula(
        "delay_drop",
        Known("delay_volume") / per_depth,
        "geometry: volume over volume per depth",
        "Divide by what the well holds in each foot (or meter) to get the drop.",
    ),
)

STARTING = (
    Formula(
        "soft_amps",
        Known("full_load_amps") * Fraction(Known("current_limit")),
        "common practice, no source: the limit is a percent of the motor's full-load amps",
        "The soft starter holds the amps at this percent of full-load amps while the motor speeds up.",
    ),
    Formula(
        "start_torque",
        Percent(Fraction(Known("start_volts")) ** 2),
        MOTOR,
        "Fewer volts also mean fewer amps in the winding, so torque changes with the square of the volts.",
        slips=(
            Slip(
                "in_proportion",
                Percent(Fraction(Known("start_volts"))),
                "You let the torque drop in step with the volts. It drops with their square.",
            ),
        ),
    ),
    Formula(
        "tap_amps",
        Known("locked_rotor_amps") * Fraction(Known("tap")) ** 2,
        MOTOR,
        "Fewer volts mean fewer amps in the motor. On the line side, the transformer steps those down once more.",
        slips=(
            Slip(
                "once",
                Known("locked_rotor_amps") * Fraction(Known("tap")),
                "You multiplied by the tap once. That's the motor's amps. In the line it counts twice.",
            ),
        ),
    ),
)

PANEL = (
    Formula(
        "control_load",
        coils + lamps,
        SUMMED,
        "Everything that is on at the same time counts, each one with its own volt-amps.",
        slips=(
            Slip(
                "one_of_each",
                Known("coil_va") + Known("lamp_va"),
                "You counted one of each. Multiply by how many there are first.",
            ),
            Slip("lights_left_out", coils, "You left out the pilot lights. They're on as well."),
        ),
    ),
    Formula(
        "control_load_amps",
        Known("control_load") / Known("secondary_volts"),
        "arithmetic: single-phase volt-amps over volts",
        "A control circuit is single-phase: divide its volt-amps by its volts.",
    ),
    Formula(
        "control_share",
        Percent(Known("control_load") / Known("transformer_va")),
        "arithmetic: the load over the rating",
        "The transformer is rated in volt-amps, so compare volt-amps with volt-amps.",
    ),
)

BATTERY = (
    Formula(
        "standby_amps",
        Known("standby_watts") / Known("battery_volts"),
        "DOE Fundamentals Handbook, Electrical Science (DOE-HDBK-1011), vol. 1: watts are volts times amps",
        "On direct current, watts are volts times amps, so divide by the volts.",
    ),
    Formula(
        "battery_time",
        Known("battery_ah") * Fraction(Known("usable_share")) / Known("standby_amps"),
        f"{CAPACITY}; the battery's data for how far it may go down",
        "Only part of the amp-hours can be used. Each amp uses up one amp-hour every hour.",
        slips=(
            Slip(
                "all_of_it",
                Known("battery_ah") / Known("standby_amps"),
                "You counted on the whole battery. Only part of it can be used.",
            ),
        ),
    ),
    Formula(
        "battery_time",
        Known("battery_ah") / Known("standby_amps"),
        CAPACITY,
        "Each amp uses up one amp-hour every hour, so divide.",
        unless=("usable_share",),
        slips=(
            Slip(
                "multiplied",
                Known("battery_ah") * Known("standby_amps"),
                "You multiplied. A bigger load empties it sooner: divide.",
            ),
        ),
    ),
)

CONTROLS = (*SIGNALS, *LEAD_AND_LAG, *STARTING, *PANEL, *BATTERY)
