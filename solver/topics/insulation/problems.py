"""Insulation and windings: megohms brought to 40 °C, their ratios, their trend, three ohms.

The families here ask for a number; what is to be judged is in `judgments_*.py`. `INSULATION` has
the whole chapter, in the order of teaching.
"""

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.station.scene import Readings
from solver.station.station import Station

from .judgments_megohms import LEAST, TREND
from .judgments_readings import RATIOS
from .judgments_test import GROUND, VOLTS
from .judgments_windings import OHMS_LIMIT, WINDING_FAULTS
from .windings import (
    CHAPTER,
    LIKELY,
    OHMS,
    OLDER,
    SOUND,
    TESTED,
    altered,
    damp_to,
    kept,
    ohms_within,
)

__all__ = ["INSULATION"]

likely = damp_to("insulation_at_40", *LIKELY)
any_temperature = Readings(change=likely)


def at_tens(station: Station, draw: Draw) -> Station:
    """Any winding at a round temperature other than 40 °C."""
    return altered(likely(station, draw), temperature=draw.pick((10.0, 20.0, 30.0, 50.0, 60.0)))


at_40 = Readings(change=at_tens)
EARLIER = (
    "Last year {place} read {insulation_before} with the winding at {winding_temperature_before}. "
)
NOW = "Today it reads {insulation} with the winding at {winding_temperature}. "

AT_40 = (
    CHAPTER.numeric(
        "insulation_at_40",
        "GC",
        "A reading corrected to 40 °C",
        "insulation_at_40",
        at_40,
        Level(
            ("insulation", "winding_temperature"),
            f"{TESTED}After one minute the winding reads {{insulation}} at "
            "{winding_temperature}. What is that reading, corrected to 40 °C?",
        ),
        Level(
            ("insulation", "winding_temperature"),
            f"{TESTED}After one minute the winding reads {{insulation}} at "
            "{winding_temperature}. What is that reading, corrected to 40 °C?",
            scene=any_temperature,
        ),
        Level(
            ("test_volts", "leakage_current", "winding_temperature"),
            f"{TESTED}At a test voltage of {{test_volts}}, the winding leaks {{leakage_current}} "
            "after one minute. The winding is at {winding_temperature}. "
            "What is its insulation resistance, corrected to 40 °C?",
            scene=any_temperature,
        ),
    ),
    CHAPTER.numeric(
        "insulation_reading",
        "GR",
        "What the megohmmeter reads",
        "insulation",
        at_40,
        Level(
            ("test_volts", "leakage_current"),
            f"{TESTED}At a test voltage of {{test_volts}}, the winding leaks {{leakage_current}}. "
            "What is its insulation resistance?",
        ),
        Level(
            ("insulation_at_40", "winding_temperature"),
            "The records for {place} show {insulation_at_40}, corrected to 40 °C. Today the "
            "winding is at {winding_temperature}. If nothing has changed, what will the meter read?",
            scene=any_temperature,
        ),
    ),
    CHAPTER.numeric(
        "least_insulation",
        "GM",
        "Minimum resistance for an older winding",
        "least_insulation",
        OLDER,
        Level(
            ("rated_kilovolts",),
            "{person} tests the motor of {place}, wound before 1970 and rated {rated_kilovolts}. "
            "IEEE 43 asks for kV + 1 megohms at 40 °C. What is the minimum insulation resistance?",
        ),
        Level(
            ("rated_volts",),
            "{person} tests the motor of {place}, wound before 1970 and rated {rated_volts}. "
            "IEEE 43 asks for kV + 1 megohms at 40 °C. What is the minimum insulation resistance?",
        ),
    ),
)

ONE_TEST = (
    CHAPTER.numeric(
        "absorption_ratio",
        "GA",
        "Dielectric absorption ratio",
        "absorption_ratio",
        Readings(change=damp_to("absorption_ratio", (1.12, 1.3), SOUND)),
        Level(
            ("insulation_30s", "insulation_1min"),
            f"{TESTED}The winding reads {{insulation_30s}} after 30 s and {{insulation_1min}} "
            "after 1 min. What is the dielectric absorption ratio (DAR)?",
        ),
        Level(
            ("insulation_30s", "insulation_1min", "insulation_10min"),
            f"{TESTED}The winding reads {{insulation_30s}} after 30 s, {{insulation_1min}} after "
            "1 min and {insulation_10min} after 10 min. "
            "What is the dielectric absorption ratio (DAR)?",
        ),
        Level(
            ("leakage_30s", "leakage_1min"),
            f"{TESTED}At a steady test voltage, the winding leaks {{leakage_30s}} after 30 s and "
            "{leakage_1min} after 1 min. What is the dielectric absorption ratio (DAR)?",
        ),
    ),
    CHAPTER.numeric(
        "polarization_index",
        "GP",
        "Polarization index",
        "polarization_index",
        Readings(change=damp_to("polarization_index", (1.3, 2.1), SOUND)),
        Level(
            ("insulation_1min", "insulation_10min"),
            f"{TESTED}The winding reads {{insulation_1min}} after 1 min and {{insulation_10min}} "
            "after 10 min. What is the polarization index (PI)?",
        ),
        Level(
            ("insulation_30s", "insulation_1min", "insulation_10min"),
            f"{TESTED}The winding reads {{insulation_30s}} after 30 s, {{insulation_1min}} after "
            "1 min and {insulation_10min} after 10 min. What is the polarization index (PI)?",
        ),
        Level(
            ("leakage_1min", "leakage_10min"),
            f"{TESTED}At a steady test voltage, the winding leaks {{leakage_1min}} after 1 min "
            "and {leakage_10min} after 10 min. What is the polarization index (PI)?",
        ),
    ),
)

OVER_YEARS = (
    CHAPTER.numeric(
        "insulation_kept",
        "GK",
        "Insulation, this year and last",
        "insulation_kept",
        Readings(change=kept((0.35, 0.62), (0.68, 0.85), (1.18, 1.3))),
        Level(
            ("insulation_at_40_before", "insulation_at_40"),
            "Corrected to 40 °C, {place} read {insulation_at_40_before} last year. Today it reads "
            "{insulation_at_40}. What percent of last year's reading is that?",
        ),
        Level(
            ("insulation_at_40_before", "insulation", "winding_temperature"),
            "Last year {place} read {insulation_at_40_before}, corrected to 40 °C. "
            f"{NOW}Corrected to 40 °C, what percent of last year's reading is that?",
        ),
        Level(
            (
                "insulation_before",
                "winding_temperature_before",
                "insulation",
                "winding_temperature",
            ),
            f"{EARLIER}{NOW}With both corrected to 40 °C, what percent of last year's reading "
            "is today's?",
        ),
    ),
)

BALANCE = (
    CHAPTER.numeric(
        "resistance_unbalance",
        "GB",
        "Unbalance of the winding resistances",
        "resistance_unbalance",
        ohms_within((1.7, 4.5)),
        Level(
            ("ohms_average", "ohms_deviation"),
            f"{TESTED}The three lead-to-lead readings average {{ohms_average}}. The largest "
            "deviation from the average is {ohms_deviation}. What is the unbalance, in percent?",
        ),
        Level(
            OHMS,
            f"{TESTED}Lead to lead, the motor reads {{ohms_12}}, {{ohms_23}} and {{ohms_31}}. "
            "What is the largest deviation from the average, as a percent of the average?",
        ),
    ),
)

INSULATION = (*VOLTS, *AT_40, *LEAST, *ONE_TEST, *RATIOS, *OVER_YEARS, *TREND, *GROUND,
              *BALANCE, *OHMS_LIMIT, *WINDING_FAULTS)  # fmt: skip
