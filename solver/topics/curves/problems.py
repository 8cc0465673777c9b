"""Pump curves and kinds of pumps: the shutoff test, two pumps, strokes and turns.

`CURVES` has the whole chapter, in the order of teaching; what is read off a drawn curve is in
`judged_curves.py` and `judged_npsh.py`, the rest that is judged in `judgments.py`, and questions in words in the TOML files.
"""

from solver.engine.family import Level
from solver.topics.questions import in_words

from .judged_curves import CURVE_TO_POWER, READ_CURVE
from .judged_npsh import NPSH_OFF_CURVE
from .judgments import OPERATING_REGION, SHUTOFF_STORY_TOLD
from .stations import AS_BUILT, CHAPTER, DIAPHRAGM, PLUNGER, ROTOR, TESTED, TWO

__all__ = ["CURVES"]

GAUGES = (
    "For a few seconds, {person} closes the discharge valve of {place} while it runs. Both gauges are at "
    "the same height. They read {shutoff_gauge} on the discharge and {closed_suction} on the suction."
)

SHUTOFF_TEST = CHAPTER.numeric(
    "shutoff_test",
    "QS",
    "The shutoff test",
    "tested_shutoff",
    TESTED,
    Level(("shutoff_gauge", "closed_suction"), f"{GAUGES} What shutoff head does the pump make?"),
    Level(
        ("tested_shutoff", "curve_shutoff"),
        "At shutoff {place} makes {tested_shutoff} of head. Its curve says {curve_shutoff}. What percent of "
        "the curve's shutoff head is that?",
        asked="shutoff_share",
    ),
    Level(
        ("shutoff_gauge", "closed_suction", "curve_shutoff"),
        f"{GAUGES} The pump curve says {{curve_shutoff}} at shutoff. What percent of that does the pump make?",
        asked="shutoff_share",
    ),
    since=2,
)

IMPELLER = CHAPTER.numeric(
    "impeller_from_shutoff",
    "QI",
    "Impeller diameter from the shutoff head",
    "impeller_estimate",
    AS_BUILT,
    Level(
        ("tested_shutoff", "pump_speed"),
        "Nobody knows which impeller is in {place}. It runs at {pump_speed}, and its shutoff head is "
        "{tested_shutoff}. About what diameter is its impeller?",
    ),
    Level(
        ("impeller_diameter", "pump_speed"),
        "The impeller of {place} is {impeller_diameter} across and turns at {pump_speed}. About what "
        "shutoff head should it make?",
        asked="shutoff_estimate",
    ),
    Level(
        ("shutoff_gauge", "closed_suction", "pump_speed"),
        f"{GAUGES} The pump runs at {{pump_speed}}. About what diameter is its impeller?",
    ),
    since=2,
)

TOGETHER = CHAPTER.numeric(
    "pumps_together",
    "QR",
    "Pumps in series and in parallel",
    "series_head",
    TWO,
    Level(
        ("head", "second_head"),
        "Two pumps run in series at {station}. At the flow they share, one makes {head} of head and the "
        "other {second_head}. What head do they make together?",
    ),
    Level(
        ("flow", "second_flow"),
        "Two different pumps run side by side at {station}, both against the same head. At that head one "
        "moves {flow} and the other {second_flow}. What flow do they move together?",
        asked="combined_flow",
    ),
    Level(
        ("suction_gauge", "head", "second_head"),
        "The suction pressure at {station} is {suction_gauge}. Two pumps run in series. One adds {head} "
        "of head, the other {second_head}. What does the discharge gauge after the second pump read?",
        asked="series_gauge",
    ),
    since=2,
)

SIZES = (
    "A plunger pump for sludge has {plungers} plungers, each {plunger_diameter} across, with a stroke of "
    "{plunger_stroke}. It makes {stroke_rate}."
)

PLUNGERS = CHAPTER.numeric(
    "plunger_output",
    "QP",
    "What a plunger pump moves",
    "theoretical_output",
    PLUNGER,
    Level(
        ("stroke_volume", "plungers", "stroke_rate"),
        "Each of the {plungers} plungers of a sludge pump displaces {stroke_volume} a stroke and "
        "makes {stroke_rate}. What is its theoretical output?",
    ),
    Level(
        ("plunger_diameter", "plunger_stroke", "plungers", "stroke_rate"),
        f"{SIZES} What is its theoretical output?",
    ),
    Level(
        ("plunger_diameter", "plunger_stroke", "plungers", "stroke_rate", "volumetric_efficiency"),
        f"{SIZES} Its volumetric efficiency is {{volumetric_efficiency}}. What flow does it deliver?",
        asked="pd_output",
    ),
    since=2,
)

STROKES = CHAPTER.numeric(
    "stroke_output",
    "QD",
    "Output by the stroke or by the turn",
    "pd_output",
    DIAPHRAGM,
    Level(
        ("stroke_volume", "stroke_rate", "volumetric_efficiency"),
        "A diaphragm sludge pump displaces {stroke_volume} a stroke and makes {stroke_rate}. Its volumetric "
        "efficiency is {volumetric_efficiency}. What flow does it deliver?",
    ),
    Level(
        ("turn_volume", "rotor_speed", "volumetric_efficiency"),
        "A progressing-cavity pump displaces {turn_volume} a turn. It runs at {rotor_speed}, with a "
        "volumetric efficiency of {volumetric_efficiency}. What flow does it deliver?",
        scene=ROTOR,
    ),
    Level(
        ("turn_volume", "volumetric_efficiency", "pd_output"),
        "A progressing-cavity pump displaces {turn_volume} a turn, with a volumetric efficiency of "
        "{volumetric_efficiency}. It has to deliver {pd_output}. At what speed must it run?",
        scene=ROTOR,
        asked="rotor_speed",
    ),
    since=2,
)

SLIP = CHAPTER.numeric(
    "slip_of_a_pump",
    "QL",
    "Slip of a displacement pump",
    "pump_slip",
    ROTOR,
    Level(
        ("theoretical_output", "pd_output"),
        "By its size and speed, a progressing-cavity pump would move {theoretical_output} without slip. "
        "The flowmeter reads {pd_output}. What percent is its slip?",
    ),
    Level(
        ("turn_volume", "rotor_speed", "pd_output"),
        "A progressing-cavity pump displaces {turn_volume} a turn and runs at {rotor_speed}. The "
        "flowmeter reads {pd_output}. What percent is its slip?",
    ),
    Level(
        ("plunger_diameter", "plunger_stroke", "plungers", "stroke_rate", "pd_output"),
        f"{SIZES} The flowmeter reads {{pd_output}}. What percent is its slip?",
        scene=PLUNGER,
    ),
    since=2,
)

CURVES = (
    READ_CURVE,
    CURVE_TO_POWER,
    NPSH_OFF_CURVE,
    OPERATING_REGION,
    in_words(CHAPTER, "curve_sense", "QG", "What a pump curve tells you", since=2),
    SHUTOFF_TEST,
    SHUTOFF_STORY_TOLD,
    IMPELLER,
    TOGETHER,
    PLUNGERS,
    STROKES,
    SLIP,
    in_words(CHAPTER, "kinds_of_pumps", "QK", "Centrifugal or positive displacement", since=2),
    in_words(CHAPTER, "priming_cavitation", "QN", "Priming and cavitation", since=2),
)
