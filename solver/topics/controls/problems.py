"""Controls: what a signal says, when the lag pump comes on, how a motor starts softly, what a rung does.

`CONTROLS` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level
from solver.topics.questions import in_words
from solver.topics.scenes import AT_A_WELL

from .scenes import BATTERY, CHAPTER, DRIVE, LEAD_LAG, LEVEL, OFF_DELAY, PANEL, START

__all__ = ["CONTROLS"]

TRANSMITTER = "The level transmitter at {station} puts out 4 mA at "
STORM = "In a storm, {inflow} comes into {station}, and the lead pump moves {flow}. "
RUNS_ON = (
    "{place} moves {flow} while {inflow} comes in. When the off float drops, a timer keeps the pump "
    "on for another {off_delay}. "
)
IN_PANEL = (
    "At {station}, {coil_count} control coils are pulled in, {coil_va} each, and {lamp_count} pilot lights "
    "are on, {lamp_va} each. "
)
LOADS = ("coil_va", "coil_count", "lamp_va", "lamp_count")

SIGNALS = (
    CHAPTER.numeric(
        "signal_level",
        "TS",
        "A 4 to 20 mA signal, and the level it shows",
        "signal_level",
        LEVEL,
        Level(
            ("loop_current", "signal_span"),
            TRANSMITTER + "an empty well and 20 mA at {signal_span}. Its signal is {loop_current}. "
            "What is the level?",
        ),
        Level(
            ("signal_level", "signal_span"),
            TRANSMITTER + "an empty well and 20 mA at {signal_span}. The level is {signal_level}. "
            "What signal should it put out, in {unit}?",
            asked="loop_current",
        ),
        Level(
            ("loop_current", "signal_span", "signal_zero"),
            TRANSMITTER + "{signal_zero} and 20 mA at {signal_span} above that. Its signal is "
            "{loop_current}. What is the level?",
        ),
        Level(
            ("loop_current", "pressure_span"),
            "A pressure transmitter is at the bottom of the wet well at {station}. It puts out 4 mA at no "
            "pressure and 20 mA at {pressure_span}. Its signal is {loop_current}. How deep is the water above it?",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "drive_signal",
        "TV",
        "A drive that follows a signal",
        "drive_frequency",
        DRIVE,
        Level(
            ("loop_current", "most_frequency"),
            "The drive of {place} is set for 0 Hz at 4 mA and {most_frequency} at 20 mA. Its signal is "
            "{loop_current}. What is its output frequency?",
        ),
        Level(
            ("loop_current", "least_frequency", "most_frequency"),
            "The drive of {place} is set for {least_frequency} at 4 mA and {most_frequency} at 20 mA. "
            "Its signal is {loop_current}. What is its output frequency?",
        ),
        Level(
            ("drive_frequency", "least_frequency", "most_frequency"),
            "The drive of {place} is set for {least_frequency} at 4 mA and {most_frequency} at 20 mA. "
            "What signal makes it run at {drive_frequency}, in {unit}?",
            asked="loop_current",
        ),
        since=2,
    ),
)

LEVELS = (
    in_words(
        CHAPTER,
        "hand_off_auto",
        "TH",
        "Hand-off-auto, floats, lead and lag",
        since=2,
        scene=AT_A_WELL,
    ),
    CHAPTER.numeric(
        "lag_call",
        "TL",
        "When the lag pump comes on, and how long both pump",
        "lag_time",
        LEAD_LAG,
        Level(
            ("inflow", "flow", "lag_volume"),
            STORM + "The wet well takes {lag_volume} from the lead-on level to the lag-on level. "
            "How many minutes after the lead pump does the lag pump start?",
        ),
        Level(
            ("inflow", "flow", "lag_depth", "volume_per_depth"),
            STORM
            + "Lag-on is {lag_depth} above lead-on, and the wet well holds {volume_per_depth}. "
            "How many minutes after the lead pump does the lag pump start?",
        ),
        Level(
            ("inflow", "parallel_flow", "lag_pump_down"),
            "The lag pump at {station} has just come on. Both pumps together move {parallel_flow}, and "
            "{inflow} comes in. From here down to pump-off the wet well holds {lag_pump_down}. "
            "How many minutes do both pumps run?",
            asked="both_time",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "off_delay",
        "TO",
        "What an off delay pumps",
        "delay_volume",
        OFF_DELAY,
        Level(
            ("flow", "inflow", "off_delay"),
            RUNS_ON + "How much does the wet well lose in that time?",
        ),
        Level(
            ("flow", "inflow", "off_delay", "volume_per_depth"),
            RUNS_ON
            + "The wet well holds {volume_per_depth}. How far below the float does the level "
            "get?",
            asked="delay_drop",
        ),
        since=2,
    ),
)

STARTERS = (
    in_words(CHAPTER, "ladder", "TA", "Reading a short ladder drawing", since=2),
    in_words(CHAPTER, "starters", "TW", "Contactor, soft starter or drive", since=2),
    CHAPTER.numeric(
        "reduced_start",
        "TR",
        "Starting on less than full volts",
        "soft_amps",
        START,
        Level(
            ("full_load_amps", "current_limit"),
            "The soft starter of {place} is set to a current limit of {current_limit} of full-load "
            "amps (FLA). The full-load amps are {full_load_amps}. How many amps does it let the motor draw?",
        ),
        Level(
            ("start_volts",),
            "A soft starter begins with {start_volts} of full volts on the motor of {place}. "
            "What percent of its full-voltage starting torque does the motor make?",
            asked="start_torque",
        ),
        Level(
            ("locked_rotor_amps", "tap"),
            "The motor of {place} draws {locked_rotor_amps} when it starts on full volts. An "
            "autotransformer starter uses its {tap} tap. How many amps does the line carry at the start?",
            asked="tap_amps",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "control_load",
        "TC",
        "What the control circuit takes",
        "control_load",
        PANEL,
        Level(LOADS, IN_PANEL + "What is the control load, in VA?"),
        Level(
            (*LOADS, "secondary_volts"),
            IN_PANEL + "The control circuit is {secondary_volts}. How many amps does it draw?",
            asked="control_load_amps",
        ),
        Level(
            (*LOADS, "transformer_va"),
            IN_PANEL
            + "The control transformer is rated {transformer_va}. What percent of its rating "
            "does it carry?",
            asked="control_share",
        ),
        since=2,
    ),
    in_words(CHAPTER, "fail_safe", "TF", "Timers, alarms and fail-safe", since=2, scene=AT_A_WELL),
    CHAPTER.numeric(
        "alarm_battery",
        "TB",
        "How long the alarm battery lasts",
        "battery_time",
        BATTERY,
        Level(
            ("battery_ah", "standby_amps"),
            "The alarm panel at {station} draws {standby_amps} from its {battery_ah} battery when the "
            "power is out. If all of it could be used, how many hours would it last?",
        ),
        Level(
            ("battery_ah", "battery_volts", "standby_watts"),
            "The alarm panel and radio at {station} take {standby_watts} from a battery of "
            "{battery_volts} and {battery_ah}. If all of it could be used, how many hours would it last?",
        ),
        Level(
            ("battery_ah", "battery_volts", "standby_watts", "usable_share"),
            "The alarm panel and radio at {station} take {standby_watts} from a battery of "
            "{battery_volts} and {battery_ah}. Only {usable_share} of it can be used. "
            "How many hours does it last?",
        ),
        since=2,
    ),
)

CONTROLS = (*SIGNALS, *LEVELS, *STARTERS)
