"""Electricity from first principles: what a circuit does.

`ELECTRICITY` has the whole chapter, in the order of teaching; wire, transformers and the bill are in
`problems_supply.py`.
"""

from solver.engine.family import Level
from solver.topics.questions import in_words

from .problems_supply import BILLS, SUPPLIES
from .scenes import BRANCHES, CHAPTER, HEATER, LOOP, LOW_VOLTS, SINGLE

__all__ = ["ELECTRICITY"]

LOOP_OF = (
    "The level transmitter at {station} is on a 4 to 20 mA loop. In series with it are the input card "
    "({series_ohms_1}), a display ({series_ohms_2}) and the wire ({series_ohms_3}). "
)
THREE = ("series_ohms_1", "series_ohms_2", "series_ohms_3")
SMALL_MOTOR = "A single-phase sump pump at {station} runs on {single_volts}. "

CIRCUITS = (
    CHAPTER.numeric(
        "ohms_law",
        "LA",
        "Ohm's law: volts, amps and ohms",
        "circuit_amps",
        HEATER,
        Level(
            ("load_volts", "load_ohms"),
            "An electric heater at {station} has a resistance of {load_ohms}. It is connected to "
            "{load_volts}. How many amps does it draw?",
        ),
        Level(
            ("load_volts", "circuit_amps"),
            "An electric heater at {station} draws {circuit_amps} at {load_volts}. "
            "What is its resistance?",
            asked="load_ohms",
        ),
        Level(
            ("circuit_amps", "load_ohms"),
            "A heater element at {station} has a resistance of {load_ohms}. A clamp meter shows "
            "{circuit_amps} through it. What is the voltage across the element?",
            asked="load_volts",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "heater_watts",
        "LP",
        "Watts of a heater",
        "load_watts",
        HEATER,
        Level(
            ("load_volts", "circuit_amps"),
            "The heater in the valve vault at {station} draws {circuit_amps} at {load_volts}. "
            "How many watts is that?",
        ),
        Level(
            ("load_volts", "load_ohms"),
            "A vault heater at {station} has a resistance of {load_ohms}. It is connected to "
            "{load_volts}. How many watts does it use?",
        ),
        Level(
            ("rated_watts", "rated_volts", "load_volts"),
            "A heater at {station} is rated {rated_watts} at {rated_volts}. The supply is only "
            "{load_volts}. How many watts does it make there?",
            scene=LOW_VOLTS,
        ),
        Level(
            ("load_volts", "circuit_amps", "run_time"),
            "The vault heater at {station} draws {circuit_amps} at {load_volts}. Last month it was "
            "on for {run_time}. How many kilowatt-hours did it use?",
            asked="energy",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "loop_ohms",
        "LS",
        "Ohms in series: a signal loop",
        "loop_ohms",
        LOOP,
        Level(THREE, LOOP_OF + "What is the total resistance of the three?"),
        Level(
            (*THREE, "loop_current"),
            LOOP_OF + "At {loop_current}, how many volts do the three use together?",
            asked="loop_drop",
        ),
        Level(
            (*THREE, "loop_current", "loop_supply"),
            LOOP_OF
            + "The power supply is {loop_supply} dc. At {loop_current}, how many volts are left "
            "for the transmitter?",
            asked="transmitter_volts",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "parallel_ohms",
        "LR",
        "Ohms in parallel: heater elements",
        "parallel_ohms",
        BRANCHES,
        Level(
            ("parallel_ohms_1", "parallel_ohms_2"),
            "Two heater elements at {station} are in parallel: {parallel_ohms_1} and "
            "{parallel_ohms_2}. What is their combined resistance?",
        ),
        Level(
            ("parallel_ohms_1", "parallel_ohms_2", "parallel_ohms_3"),
            "Three heater elements at {station} are in parallel: {parallel_ohms_1}, "
            "{parallel_ohms_2} and {parallel_ohms_3}. What is their combined resistance?",
        ),
        Level(
            ("load_volts", "parallel_ohms_1", "parallel_ohms_2"),
            "Two heater elements at {station} are in parallel on {load_volts}: {parallel_ohms_1} and "
            "{parallel_ohms_2}. How many amps do they draw together?",
            asked="circuit_amps",
        ),
        since=2,
    ),
    in_words(CHAPTER, "circuits", "LC", "What a circuit does", since=2),
    CHAPTER.numeric(
        "single_phase_kilowatts",
        "LK",
        "Single-phase power",
        "input_power",
        SINGLE,
        Level(
            ("single_volts", "single_amps", "power_factor"),
            SMALL_MOTOR + "It draws {single_amps} at a power factor (PF) of {power_factor}. "
            "What is the input power, in kilowatts?",
        ),
        Level(
            ("input_power", "single_volts", "power_factor"),
            SMALL_MOTOR + "It takes {input_power} at a power factor (PF) of {power_factor}. "
            "How many amps does it draw?",
            asked="single_amps",
        ),
        Level(
            ("brake_power", "motor_efficiency", "power_factor", "single_volts"),
            SMALL_MOTOR + "The {brake_power:full} is {brake_power}. The motor efficiency is "
            "{motor_efficiency} and the power factor (PF) is {power_factor}. "
            "How many amps does it draw?",
            asked="single_amps",
        ),
        since=2,
    ),
)

ELECTRICITY = (*CIRCUITS, *SUPPLIES, *BILLS)
