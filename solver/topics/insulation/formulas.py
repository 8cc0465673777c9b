"""Insulation to ground, corrected to 40 °C and compared over time; and three windings in balance."""

from solver.algebra.expression import Constant, Exponential, Expr, Figure, Known, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.balance.formulas import balance

__all__ = ["GROUND_TIMES", "INSULATION", "at_40"]

IEEE = "IEEE 43 (from memory): the one-minute reading halves for every 10 °C warmer"
OLDER = "IEEE 43 (from memory; read in an equipment maker's manual): kV + 1 megohms at 40 °C"
INDEX = "IEEE 43-2000 (read in a tester's manual): ten-minute reading over one-minute reading"
RATIO = "an insulation tester's manual: 60-second reading over 30-second reading"
OHM = "arithmetic: Ohm's law; volts divided by microamps are megohms"
EASA = "ANSI/EASA AR100-2020: largest deviation from the average, divided by the average"
TREND = "common practice, no source: compare two years' readings at one temperature"
DISCHARGE = "After the test, keep the winding grounded for four times as long."


def same(name: str, label: str, value: float, unit: str, source: str) -> Constant:
    """A constant that is the same in both systems."""
    figure = Figure(value, unit, exact=value)
    return Constant(name, label, figure, figure, source)


BASE_TEMPERATURE = same("base_temperature", "40 °C", 40, "°C", IEEE)
HALVING = same("halving", "10 °C per halving", 10, "K", IEEE)
VOLTS_PER_KILOVOLT = same("volts_per_kilovolt", "1,000 volts per kV", 1000, "V / kV", "arithmetic")
GROUND_TIMES = same(
    "ground_times", "4 times the test", 4, "", "IEEE 43 (from memory): at least four times the test"
)


def below_40(temperature: Known) -> Expr:
    """How many halvings lie between a temperature and 40 °C."""
    return (BASE_TEMPERATURE - temperature) / HALVING


def at_40(turn: str = "") -> Formula:
    """A one-minute reading (megohms) brought to 40 °C; `turn` is "_before" for an earlier one."""
    reading, temperature = Known(f"insulation{turn}"), Known(f"winding_temperature{turn}")
    return Formula(
        f"insulation_at_40{turn}",
        reading * Exponential(0.5, below_40(temperature)),
        IEEE,
        "Insulation reads about half for every 10 °C warmer, so correct each reading to 40 °C.",
        back="Insulation reads about double for every 10 °C colder.",
        slips=(
            Slip(
                "not_corrected",
                reading,
                "You gave the reading as it was. Correct it to 40 °C: insulation reads about half "
                "for every 10 °C warmer.",
            ),
            Slip(
                "to_20_degrees",
                reading * Exponential(0.5, (BASE_TEMPERATURE - Number(20) - temperature) / HALVING),
                "You corrected the reading to 20 °C. IEEE 43 sets its limits at 40 °C.",
            ),
            Slip(
                "times_not_power",
                reading * Number(0.5) * below_40(temperature),
                "You multiplied 0.5 by the number of 10 °C steps. Every step cuts what is left in "
                "half, so raise 0.5 to that power.",
            ),
        ),
    )


def ratio(result: str, over: Known, under: Known, source: str, why: str, *slips: Slip) -> Formula:
    """A later reading over an earlier one, or leakage the other way round."""
    return Formula(result, over / under, source, f"{why} {DISCHARGE}", slips)


half_minute, minute, ten_minutes = map(
    Known, ("insulation_30s", "insulation_1min", "insulation_10min")
)
test_volts, leakage = Known("test_volts"), Known("leakage_current")
leakage_30s, leakage_1min, leakage_10min = map(
    Known, ("leakage_30s", "leakage_1min", "leakage_10min")
)
ohms = ("ohms_12", "ohms_23", "ohms_31")

INDEX_WHY = "Dry, clean insulation keeps rising for ten minutes, and the index shows by how much."
RATIO_WHY = (
    "Dry, clean insulation is still rising after 30 seconds, and the ratio shows by how much."
)
CURRENT_WHY = "As the resistance rises, the leakage falls, so the earlier current goes on top."

READINGS = (
    Formula(
        "insulation",
        test_volts / leakage,
        OHM,
        f"By Ohm's law, volts divided by microamps of leakage give megohms. {DISCHARGE}",
    ),
    at_40(),
    at_40("_before"),
    Formula(
        "insulation_kept",
        Percent(Known("insulation_at_40") / Known("insulation_at_40_before")),
        TREND,
        "You can compare readings from year to year only at the same temperature.",
        slips=(
            Slip(
                "raw_readings",
                Percent(Known("insulation") / Known("insulation_before")),
                "You compared the readings as they were. Correct both to 40 °C first: insulation "
                "reads about half for every 10 °C warmer.",
            ),
            Slip(
                "raw_against_corrected",
                Percent(Known("insulation") / Known("insulation_at_40_before")),
                "You corrected only last year's reading. Correct both to 40 °C first: insulation "
                "reads about half for every 10 °C warmer.",
            ),
        ),
    ),
    Formula(
        "rated_kilovolts",
        Known("rated_volts") / VOLTS_PER_KILOVOLT,
        VOLTS_PER_KILOVOLT.source,
        "The rule uses kilovolts, and one kilovolt is 1,000 volts.",
    ),
    Formula(
        "least_insulation",
        Known("rated_kilovolts") + Number(1),
        OLDER,
        "One megohm per kilovolt plus one is for windings before about 1970; later ones need 5 or 100.",
        slips=(
            Slip(
                "volts_plus_one",
                Known("rated_volts") + Number(1),
                "You used volts. The rule uses kilovolts, so divide the volts by 1,000 first.",
            ),
            Slip(
                "one_left_out",
                Known("rated_kilovolts"),
                "You left out the 1. The rule is one megohm per kilovolt, plus one.",
            ),
            Slip(
                "times_a_thousand",
                (Known("rated_kilovolts") + Number(1)) * Number(1000),
                "You multiplied by 1,000, so your number is in kilohms. The rule gives megohms.",
            ),
        ),
        empirical=True,
    ),
    Formula(
        "ground_time",
        GROUND_TIMES * Known("test_time"),
        GROUND_TIMES.source,
        "The charge bleeds off slowly and it can kill, so multiply the test time by four.",
    ),
    Formula(
        "times_grounded",
        Known("time_grounded") / Known("test_time"),
        GROUND_TIMES.source,
        "The charge bleeds off slowly and it can kill, so compare the time grounded with the test time.",
    ),
    Formula(
        "ohms_share",
        Percent(Known("ohms_average") / Known("ohms_healthy")),
        "common practice, no source: compare with the ohms when healthy, at the same temperature",
        "Shorted turns lower the ohms; a bad connection or an open phase raises them.",
    ),
)

WITHIN_ONE_TEST = (
    ratio(
        "polarization_index", ten_minutes, minute, INDEX, INDEX_WHY,
        Slip(
            "from_half_a_minute",
            ten_minutes / half_minute,
            "You divided by the 30-second reading. The polarization index divides by the "
            "one-minute reading.",
        ),
        Slip(
            "absorption_for_index",
            minute / half_minute,
            "You found the absorption ratio, 60 seconds over 30 seconds. The polarization index is "
            "10 minutes over 1 minute.",
        ),
    ),
    ratio("polarization_index", leakage_1min, leakage_10min, INDEX,
          CURRENT_WHY),
    ratio(
        "absorption_ratio", minute, half_minute, RATIO, RATIO_WHY,
        Slip(
            "index_for_absorption",
            ten_minutes / minute,
            "You found the polarization index, 10 minutes over 1 minute. The absorption ratio is "
            "60 seconds over 30 seconds.",
        ),
        Slip(
            "to_ten_minutes",
            ten_minutes / half_minute,
            "You used the 10-minute reading. The absorption ratio uses the 60-second reading, "
            "over the one at 30 seconds.",
        ),
    ),
    ratio("absorption_ratio", leakage_30s, leakage_1min, RATIO,
          CURRENT_WHY),
)  # fmt: skip

INSULATION = (*READINGS, *WITHIN_ONE_TEST, *balance("ohms", ohms, source=EASA))
