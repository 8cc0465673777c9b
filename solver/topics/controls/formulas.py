"""Lead, lag and delay, starting on less, the control load, and hours on a battery.

`CONTROLS` has every formula of the chapter; those of a signal are in `formulas_signals.py`.
"""

from solver.algebra.expression import Fraction, Known, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import LITRES_PER_CUBIC_METRE, SECONDS_PER_MINUTE
from solver.topics.wet_well.formulas_drawdown import minutes

from .formulas_signals import SIGNALS

__all__ = ["CONTROLS"]

FLOWS = "arithmetic: a volume over the difference of two flows is a time"
MOTOR = "EASA Electrical Engineering Handbook: reduced-voltage starting; Hubert, Electric Machines, ch 5"
SUMMED = "arithmetic: volt-amps of coils and lights, added as if they had one power factor"
CAPACITY = "arithmetic: amp-hours over amps"

flow, inflow, both_flow = map(Known, ("flow", "inflow", "parallel_flow"))
per_depth, delay = Known("volume_per_depth"), Known("off_delay")
coils = Known("coil_va") * Known("coil_count")
lamps = Known("lamp_va") * Known("lamp_count")

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
