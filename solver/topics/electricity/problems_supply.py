"""What comes before the load: wire, transformers, and the bill for demand."""

from solver.engine.family import Level
from solver.topics.questions import in_words

from .scenes import CHAPTER, CONTROL, FEEDER, FEEDER_PLATE, MONTH, RUN, SINGLE_RUN

__all__ = ["BILLS", "SUPPLIES"]

WIRE_RUN = (
    "The run from the panel to {place} is {run_length} one way, in copper wire with {wire_ohms}. "
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
