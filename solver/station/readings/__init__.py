"""Every reading of a station by its quantity's name, one module a topic.

`NOT_READ` are the quantities that no station shows, each with the reason.
"""

from collections.abc import Mapping
from types import MappingProxyType

from .by_hand import BY_HAND, SIGNS, Sign
from .insulation import INSULATION
from .legs import LEGS
from .mains import MAINS
from .money import MONEY
from .power import POWER
from .read import NotRead, Read, Reads
from .shutoff import SHUTOFF
from .speed import SPEED
from .units import UNITS
from .water import WATER
from .wet_well import WET_WELL

__all__ = ["NOT_READ", "READINGS", "SIGNS", "NotRead", "Read", "Sign"]

READINGS: Reads = MappingProxyType(
    {
        **POWER,
        **LEGS,
        **MONEY,
        **INSULATION,
        **WET_WELL,
        **WATER,
        **SPEED,
        **SHUTOFF,
        **MAINS,
        **UNITS,
        **BY_HAND,
    }
)
_TANK = "a tank has its own small draw"
_PAIR = "two pumps drawn for each other, not for a main"
_STROKES = "a displacement pump has its own small draw"
_STOPPED = "what stops the water in the main has its own small draw"
_OPEN = "a weir, a flume or a meter has its own small draw"
_RULE = "a rule of thumb from another reading"
NOT_READ: Mapping[str, str] = MappingProxyType(
    {
        "tank_depth": _TANK,
        "tap_height": _TANK,
        "water_volume": _TANK,
        "tank_volume": _TANK,
        "empty_volume": _TANK,
        "volume_converted": _TANK,
        "water_weight": _TANK,
        "percent_full": _TANK,
        **dict.fromkeys(("impeller_estimate", "shutoff_estimate"), _RULE),
        **dict.fromkeys(("second_head", "series_head", "series_gauge"), _PAIR),
        **dict.fromkeys(("second_flow", "combined_flow"), _PAIR),
        **dict.fromkeys(("plunger_diameter", "plunger_stroke", "stroke_volume"), _STROKES),
        **dict.fromkeys(("stroke_rate", "plungers", "turn_volume", "rotor_speed"), _STROKES),
        **dict.fromkeys(("theoretical_output", "volumetric_efficiency"), _STROKES),
        **dict.fromkeys(("wave_speed", "wave_time", "closing_time", "closing_ratio"), _STOPPED),
        **dict.fromkeys(("surge_head", "surge_pressure", "slow_surge"), _STOPPED),
        **dict.fromkeys(("weir_head", "upstream_depth", "crest_height", "notch_angle"), _OPEN),
        **dict.fromkeys(("notch_constant", "crest_length", "contracted_crest"), _OPEN),
        **dict.fromkeys(("effective_crest", "weir_flow", "flume_head", "flume_throat"), _OPEN),
        **dict.fromkeys(("flume_constant", "flume_exponent"), _OPEN),
        **dict.fromkeys(("downstream_head", "submergence", "flume_flow", "throat_diameter"), _OPEN),
        **dict.fromkeys(("meter_ratio", "differential_head", "throat_velocity"), _OPEN),
        **dict.fromkeys(("discharge_coefficient", "meter_flow", "full_flow"), _OPEN),
        **dict.fromkeys(("differential_share",), _OPEN),
        **dict.fromkeys(("pd_output", "pump_slip", "slip_flow"), _STROKES),
    }
)
