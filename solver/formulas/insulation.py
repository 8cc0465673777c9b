"""Insulation to ground, brought to 40 °C and set against time; and three windings in balance."""

from ..constant import Constant, Figure
from ..expression import Exponential, Expr, Known, Number, Percent
from ..formula import Formula, Slip
from .balance import balance

__all__ = ["GROUND_TIMES", "INSULATION", "at_40"]

IEEE = "IEEE 43 (from memory): resistance halves for each 10 °C, after one minute, to 40 °C"
OLDER = "IEEE 43 (Carrier 17/19EX manual): volts in kV, megohms at 40 °C"
INDEX = "IEEE 43-2000 (Hioki 3455 manual, App. 3): ten minutes over one minute"
RATIO = "UEI DMEG3 manual, p. 22: 60 seconds over 30 seconds"
OHM = "arithmetic: Ohm's law; volts over microamps are megohms"
EASA = "ANSI/EASA AR100-2020: a reading's deviation from the average, over the average"
TREND = "common practice, no source: readings of two years compared at one temperature"
DISCHARGE = "After the test, keep the winding on ground four times as long."


def both(name: str, label: str, value: float, unit: str, source: str) -> Constant:
    """A constant that is the same in both systems."""
    figure = Figure(value, unit, exact=value)
    return Constant(name, label, figure, figure, source)


BASE_TEMPERATURE = both("base_temperature", "40 °C", 40, "°C", IEEE)
HALVING = both("halving", "10 °C of one halving", 10, "K", IEEE)
VOLTS_PER_KILOVOLT = both("volts_per_kilovolt", "1,000 volts in a kV", 1000, "V / kV", "arithmetic")
GROUND_TIMES = both(
    "ground_times", "4 times the test", 4, "", "IEEE 43 (from memory): at least four times the test"
)


def below_40(temperature: Known) -> Expr:
    """How many halvings lie between a temperature and 40 °C."""
    return (BASE_TEMPERATURE - temperature) / HALVING


def at_40(turn: str = "") -> Formula:
    """A one-minute reading brought to 40 °C."""
    reading, temperature = Known(f"insulation{turn}"), Known(f"winding_temperature{turn}")
    return Formula(
        f"insulation_at_40{turn}",
        reading * Exponential(0.5, below_40(temperature)),
        IEEE,
        "A cool winding reads high, so it comes down; each 10 °C below 40 halves it.",
        slips=(
            Slip("not_corrected", reading, "The reading is not brought to 40 °C yet."),
            Slip(
                "to_20_degrees",
                reading * Exponential(0.5, (BASE_TEMPERATURE - Number(20) - temperature) / HALVING),
                "This brings the reading to 20 °C. IEEE 43 judges at 40 °C.",
            ),
            Slip(
                "times_not_power",
                reading * Number(0.5) * below_40(temperature),
                "Each 10 °C halves what is left. Raise 0.5 to the power; do not multiply.",
            ),
        ),
    )


def ratio(result: str, over: Known, under: Known, source: str, why: str, *slips: Slip) -> Formula:
    return Formula(result, over / under, source, f"{why} {DISCHARGE}", slips)


half_minute, minute, ten_minutes = map(
    Known, ("insulation_30s", "insulation_1min", "insulation_10min")
)
test_volts, leakage = Known("test_volts"), Known("leakage_current")
leakage_30s, leakage_1min, leakage_10min = map(
    Known, ("leakage_30s", "leakage_1min", "leakage_10min")
)
ohms = ("ohms_12", "ohms_23", "ohms_31")

INDEX_WHY = "Dry, clean insulation goes on rising for ten minutes."
RATIO_WHY = "Dry, clean insulation is still rising after half a minute."

READINGS = (
    Formula(
        "insulation",
        test_volts / leakage,
        OHM,
        f"The meter pushes with volts and reads the leak in microamps. {DISCHARGE}",
    ),
    at_40(),
    at_40("_before"),
    Formula(
        "insulation_kept",
        Percent(Known("insulation_at_40") / Known("insulation_at_40_before")),
        TREND,
        "Only readings at one temperature can be compared from year to year.",
        slips=(
            Slip(
                "raw_readings",
                Percent(Known("insulation") / Known("insulation_before")),
                "This compares the readings as they were. Bring both to 40 °C first.",
            ),
            Slip(
                "raw_against_corrected",
                Percent(Known("insulation") / Known("insulation_at_40_before")),
                "Only one reading is at 40 °C. Bring both to 40 °C first.",
            ),
        ),
    ),
    Formula(
        "rated_kilovolts",
        Known("rated_volts") / VOLTS_PER_KILOVOLT,
        VOLTS_PER_KILOVOLT.source,
        "The rule counts the nameplate's volts in thousands.",
    ),
    Formula(
        "least_insulation",
        Known("rated_kilovolts") + Number(1),
        OLDER,
        "For windings made before about 1970; later ones must read 5 or 100 megohms.",
        slips=(
            Slip(
                "volts_plus_one",
                Known("rated_volts") + Number(1),
                "The volts went in whole. The rule wants kilovolts.",
            ),
            Slip(
                "one_left_out",
                Known("rated_kilovolts"),
                "This is a megohm for each kilovolt. One more megohm is added.",
            ),
            Slip(
                "times_a_thousand",
                (Known("rated_kilovolts") + Number(1)) * Number(1000),
                "This is in kilohms, a thousand times too many. The rule gives megohms.",
            ),
        ),
        empirical=True,
    ),
    Formula(
        "ground_time",
        GROUND_TIMES * Known("test_time"),
        GROUND_TIMES.source,
        "The charge soaks back out slowly, and it can kill.",
    ),
    Formula(
        "times_grounded",
        Known("time_grounded") / Known("test_time"),
        GROUND_TIMES.source,
        "The charge soaks back out slowly, and it can kill: wait four times the test.",
    ),
    Formula(
        "ohms_share",
        Percent(Known("ohms_average") / Known("ohms_healthy")),
        "common practice, no source: ohms compared with those of a healthy day, at one temperature",
        "Shorted turns take ohms away; a poor joint or an open phase adds them.",
    ),
)

WITHIN_ONE_TEST = (
    ratio(
        "polarization_index", ten_minutes, minute, INDEX, INDEX_WHY,
        Slip(
            "from_half_a_minute",
            ten_minutes / half_minute,
            "This divides by the reading at 30 s. The index divides by the one at 1 min.",
        ),
        Slip(
            "absorption_for_index",
            minute / half_minute,
            "This is the absorption ratio, 60 s over 30 s. The index takes 10 min over 1 min.",
        ),
    ),
    ratio("polarization_index", leakage_1min, leakage_10min, INDEX,
          "At one voltage the current falls as the resistance rises."),
    ratio(
        "absorption_ratio", minute, half_minute, RATIO, RATIO_WHY,
        Slip(
            "index_for_absorption",
            ten_minutes / minute,
            "This is the polarization index, 10 min over 1 min. The ratio takes 60 s over 30 s.",
        ),
        Slip(
            "to_ten_minutes",
            ten_minutes / half_minute,
            "This takes the reading at 10 min. The ratio takes the one at 60 s.",
        ),
    ),
    ratio("absorption_ratio", leakage_30s, leakage_1min, RATIO,
          "At one voltage the current falls as the resistance rises."),
)  # fmt: skip

INSULATION = (*READINGS, *WITHIN_ONE_TEST, *balance("ohms", ohms, source=EASA))
