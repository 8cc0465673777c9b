"""Electricity from first principles: what a circuit does, what the wire costs it, and the bill.

`ELECTRICITY` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level
from solver.topics.questions import in_words

from .scenes import (
    BRANCHES,
    CHAPTER,
    CONTROL,
    FEEDER,
    FEEDER_PLATE,
    HEATER,
    LOOP,
    LOW_VOLTS,
    MONTH,
    RUN,
    SINGLE,
    SINGLE_RUN,
)

__all__ = ["ELECTRICITY"]

LOOP_OF = (
    "The level transmitter at {station} is on a 4 to 20 mA loop. In series with it are the input card "
    "({series_ohms_1}), a display ({series_ohms_2}) and the wire ({series_ohms_3}). "
)
THREE = ("series_ohms_1", "series_ohms_2", "series_ohms_3")
SMALL_MOTOR = "A single-phase sump pump at {station} runs on {single_volts}. "
WIRE_RUN = (
    "The run from the panel to {place} is {run_length} one way, in copper wire with {wire_ohms}. "
)

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

SUPPLIES = (
    CHAPTER.numeric(
        "voltage_drop",
        "LD",
        "Voltage drop in a run of wire",
        "voltage_drop",
        RUN,
        Level(
            ("run_length", "wire_ohms", "single_amps"),
            "A single-phase circuit at {station} runs {run_length} one way, in copper wire with "
            "{wire_ohms}. It carries {single_amps}. What is the voltage drop?",
            scene=SINGLE_RUN,
        ),
        Level(
            ("run_length", "wire_ohms", "line_amps"),
            WIRE_RUN + "The three-phase motor draws {line_amps}. What is the voltage drop, line to "
            "line?",
        ),
        Level(
            ("run_length", "wire_area", "line_amps"),
            "The three-phase run from the panel to {place} is {run_length} one way, in copper of "
            "{wire_area}. The motor draws {line_amps}. What is the voltage drop, line to line?",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "drop_percent",
        "LV",
        "Voltage drop in percent",
        "drop_percent",
        RUN,
        Level(
            ("supply_volts", "far_volts"),
            "With {place} running, a qualified person reads {supply_volts} at the panel and "
            "{far_volts} at the motor. What is the voltage drop, in percent?",
        ),
        Level(
            ("supply_volts", "run_length", "wire_ohms", "line_amps"),
            WIRE_RUN + "The panel has {supply_volts}, and the three-phase motor draws {line_amps}. "
            "What is the voltage drop, in percent?",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "transformer_ratio",
        "LT",
        "A transformer's volts and amps",
        "secondary_volts",
        CONTROL,
        Level(
            ("primary_volts", "turns_ratio"),
            "A control transformer at {station} has a turns ratio of {turns_ratio} to 1. Its primary "
            "is connected to {primary_volts}. What is its secondary voltage?",
        ),
        Level(
            ("primary_volts", "secondary_volts", "secondary_amps"),
            "A control transformer at {station} takes {primary_volts} down to {secondary_volts}. "
            "The controls draw {secondary_amps}. Ignoring losses, how many amps does the primary draw?",
            asked="primary_amps",
        ),
        Level(
            ("turns_ratio", "secondary_amps"),
            "A control transformer at {station} steps the voltage down by {turns_ratio} to 1. The "
            "controls draw {secondary_amps}. Ignoring losses, how many amps does the primary draw?",
            asked="primary_amps",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "transformer_amps",
        "LW",
        "What a transformer can carry",
        "transformer_amps",
        FEEDER,
        Level(
            ("transformer_va", "secondary_volts"),
            "The control transformer in the panel of {place} is rated {transformer_va}, with a "
            "secondary of {secondary_volts}. How many amps can the secondary carry?",
            scene=CONTROL,
            asked="control_amps",
        ),
        Level(
            ("transformer_kva", "line_volts"),
            "A {transformer_kva} three-phase transformer feeds {station} at {line_volts}. "
            "What are its full-load amps on each leg?",
            scene=FEEDER_PLATE,
        ),
        Level(
            ("transformer_kva", "line_volts", "line_amps"),
            "A {transformer_kva} three-phase transformer feeds {station}. A qualified person reads "
            "{line_volts} line to line and {line_amps} on each leg. What percent of its rating does "
            "it carry?",
            asked="transformer_load",
        ),
        since=2,
    ),
    in_words(
        CHAPTER, "overcurrent", "LO", "Breaker, fuse and overload: what each protects", since=2
    ),
    in_words(CHAPTER, "grounding", "LG", "Grounding and bonding", since=2),
)

BILLS = (
    CHAPTER.numeric(
        "kva_billing",
        "LB",
        "Demand billed by the kVA",
        "billed_kva",
        MONTH,
        Level(
            ("peak_demand", "power_factor"),
            "The peak demand at {station} was {peak_demand} at a power factor (PF) of "
            "{power_factor}. The utility bills demand in kVA. How many kVA does it bill?",
        ),
        Level(
            ("peak_demand", "power_factor", "kva_price"),
            "The peak demand at {station} was {peak_demand} at a power factor (PF) of "
            "{power_factor}. The utility bills kVA of demand at {kva_price}. "
            "What is the demand charge?",
            asked="kva_charge",
        ),
        Level(
            ("peak_demand", "power_factor", "required_power_factor"),
            "The peak demand at {station} was {peak_demand} at a power factor (PF) of "
            "{power_factor}. Below {required_power_factor}, the utility multiplies the kW by "
            "{required_power_factor} and divides by the actual PF. How many kW of demand does it bill?",
            asked="adjusted_demand",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "load_factor",
        "LF",
        "Load factor",
        "load_factor",
        MONTH,
        Level(
            ("energy", "peak_demand", "period_hours"),
            "In a billing period of {period_hours}, {station} used {energy}. Its peak demand was "
            "{peak_demand}. What is the load factor?",
        ),
        Level(
            ("energy", "peak_demand", "days"),
            "The bill for {station} covers {days}. It shows {energy} and a peak demand of "
            "{peak_demand}. What is the load factor?",
        ),
        Level(
            ("energy", "load_factor", "days"),
            "In {days}, {station} used {energy} at a load factor of {load_factor}. "
            "What was its peak demand?",
            asked="peak_demand",
        ),
        since=2,
    ),
)

ELECTRICITY = (*CIRCUITS, *SUPPLIES, *BILLS)
