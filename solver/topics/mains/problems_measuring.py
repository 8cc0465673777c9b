"""Measuring flow: weirs, Parshall flumes, Venturi tubes and orifices, and a meter against a test."""

from solver.engine.family import Level
from solver.topics.tables import table_rows
from solver.units.quantity import Both

from .judgments import FLUME_TOLD
from .stations import CHAPTER, CREST, FLUME, HIGH, NOTCH, ORIFICE, VENTURI

__all__ = ["MEASURING"]

NOTCHES = tuple(
    (
        f"constant at {row['angle']:g} degrees",
        Both(f"{row['us']:,g} for gpm and ft", f"{row['si']:,g} for L/s and m"),
    )
    for row in table_rows("v_notch")
)
FLUMES = tuple(
    (
        Both(f"throat of {row['us_throat']:g} in", f"throat of {row['si_throat']:g} mm"),
        Both(
            f"constant {row['us']:,g} for gpm and ft, exponent {row['exponent']:g}",
            f"constant {row['si']:,g} for L/s and m, exponent {row['exponent']:g}",
        ),
    )
    for row in table_rows("parshall")
)

V_NOTCH = CHAPTER.numeric(
    "v_notch",
    "YN",
    "Flow over a V-notch weir",
    "weir_flow",
    NOTCH,
    Level(
        ("notch_constant", "weir_head"),
        "Flow over a V-notch weir is its constant times the head to the power 2.5. This one has a "
        "constant of {notch_constant}. The head is {weir_head}. What is the flow?",
    ),
    Level(
        ("notch_angle", "weir_head"),
        "The head over a {notch_angle}-degree V-notch weir is {weir_head}. What is the flow?",
        table=NOTCHES,
    ),
    Level(
        ("notch_angle", "weir_flow"),
        "At what head does {weir_flow} go over a {notch_angle}-degree V-notch weir?",
        table=NOTCHES,
        asked="weir_head",
    ),
    since=2,
)

RECTANGULAR = CHAPTER.numeric(
    "rectangular_weir",
    "YR",
    "Flow over a rectangular weir",
    "weir_flow",
    CREST,
    Level(
        ("crest_length", "weir_head"),
        "A rectangular weir goes across the whole channel, without end contractions. Its crest is "
        "{crest_length} long, and the head is {weir_head}. What is the flow by the Francis formula?",
    ),
    Level(
        ("contracted_crest", "weir_head"),
        "A rectangular weir has contractions at both ends. Its crest is {contracted_crest} long, and the "
        "head is {weir_head}. What is the flow by the Francis formula?",
    ),
    Level(
        ("contracted_crest", "upstream_depth", "crest_height"),
        "A rectangular weir with contractions at both ends has a crest {contracted_crest} long, "
        "{crest_height} above the floor. Upstream the water is {upstream_depth} deep. What is the flow "
        "by the Francis formula?",
    ),
    since=2,
)

PARSHALL = CHAPTER.numeric(
    "parshall_flume",
    "YP",
    "Flow through a Parshall flume",
    "flume_flow",
    FLUME,
    Level(
        ("flume_constant", "flume_exponent", "flume_head"),
        "In free flow, a Parshall flume passes its constant times the upstream head to the power of its "
        "exponent. The constant of this one is {flume_constant}, and its exponent is {flume_exponent}. The "
        "head is {flume_head}. What is the flow?",
    ),
    Level(
        ("flume_throat", "flume_head"),
        "A Parshall flume has a throat of {flume_throat} and flows free. The upstream head is {flume_head}. "
        "What is the flow?",
        table=FLUMES,
    ),
    Level(
        ("flume_throat", "flume_flow"),
        "{flume_flow} goes through a Parshall flume with a throat of {flume_throat}, in free flow. What "
        "should the upstream head be?",
        table=FLUMES,
        asked="flume_head",
    ),
    since=2,
)

NARROW = (
    "pipe has an inside diameter of {pipe_diameter}, and the {what} is {throat_diameter} across. The "
    "differential is {differential_head} of water, and the discharge coefficient is {discharge_coefficient}."
)
GIVEN = ("pipe_diameter", "throat_diameter", "differential_head", "discharge_coefficient")

THROAT = CHAPTER.numeric(
    "throat_meter",
    "YO",
    "Venturi tubes and orifice plates",
    "meter_flow",
    VENTURI,
    Level(
        ("full_flow", "differential_share"),
        "A Venturi tube reads {full_flow} at full scale. Its transmitter shows {differential_share} of the "
        "full-scale differential. What is the flow?",
    ),
    Level(
        GIVEN,
        "A Venturi tube measures the plant's flow. The "
        + NARROW.replace("{what}", "throat")
        + " What is the flow?",
    ),
    Level(
        GIVEN,
        "An orifice plate measures clean plant water. The "
        + NARROW.replace("{what}", "orifice")
        + " What is the flow?",
        scene=ORIFICE,
    ),
    since=2,
)

AGAINST = CHAPTER.numeric(
    "meter_against_test",
    "YD",
    "A meter against a drawdown test",
    "meter_error",
    HIGH,
    Level(
        ("flow", "metered_flow"),
        "A drawdown test of {place} gives {flow}. Its flowmeter reads {metered_flow}. What percent high "
        "does the meter read?",
    ),
    Level(
        ("volume_per_depth", "drawdown_read", "drawdown_time", "inflow", "metered_flow"),
        "{person} tests the flowmeter of {place}. While the pump runs, the level drops {drawdown_read} in "
        "{drawdown_time}, and {inflow} keeps flowing in. The wet well holds {volume_per_depth} of depth. "
        "The meter reads {metered_flow}. What percent high is that?",
    ),
    since=2,
)

MEASURING = (V_NOTCH, RECTANGULAR, PARSHALL, FLUME_TOLD, THROAT, AGAINST)
