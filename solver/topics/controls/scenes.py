"""Small draws of control panels: transmitters, drives, timers, starters, batteries of sizes that are sold.

Ranges are common practice, no source; motors come from the published tables.
"""

from solver.engine.draw import Draw
from solver.engine.family import Small
from solver.topics.chapter import Chapter
from solver.topics.formulas import CONTROLS, NAMEPLATE
from solver.topics.nameplate.formulas import TABLE_VOLTS
from solver.topics.readings import noted
from solver.topics.scenes import AT_A_WELL
from solver.topics.tables import by_size, full_load_amps

__all__ = ["BATTERY", "CHAPTER", "DRIVE", "LEAD_LAG", "LEVEL", "OFF_DELAY", "PANEL", "START"]

CHAPTER = Chapter("controls", (*CONTROLS, *NAMEPLATE))

SPANS = {"us": (10, 12, 15, 20, 25, 30), "si": (3, 4, 5, 6, 8, 10)}  # ft | m
ZEROS = {"us": (0.5, 3), "si": (0.2, 1)}
PRESSURES = {"us": (5, 10, 15), "si": (25, 40, 60, 100)}  # psi | kPa
LOCKED = (5.8, 7.2)  # times full-load amps, where no table has locked-rotor amps
FLOWS = {"us": (150, 900), "si": (9, 57)}  # gpm | L/s, of one pump
DEPTHS = {"us": (0.5, 2.0, 0.25), "si": (0.15, 0.6, 0.05)}  # between two floats
PER_DEPTH = {"us": (210, 1200), "si": (2.6, 15)}  # gal/ft | m3/m


def level(draw: Draw, units: str) -> dict[str, float]:
    """A level transmitter with its range, and what it puts out."""
    span = float(draw.pick(SPANS[units]))
    share = draw.between(0.12, 0.93)
    return {
        "loop_current": round(4 + 16 * share, 1),
        "signal_span": span,
        "signal_zero": draw.step(*ZEROS[units], 0.5 if units == "us" else 0.1),
        "signal_level": round(span * share, 1 if units == "us" else 2),
        "pressure_span": float(draw.pick(PRESSURES[units])),
    }


def drive(draw: Draw, units: str) -> dict[str, float]:
    """A drive that follows a signal, and how its two ends are set."""
    most = {"us": 60.0, "si": 50.0}[units]
    low = draw.pick((15.0, 20.0, 25.0, 30.0))
    share = draw.between(0.4, 0.95)  # slower, most pumps move nothing
    return {
        "loop_current": round(4 + 16 * share, 1),
        "least_frequency": low,
        "most_frequency": most,
        "drive_frequency": round(low + share * (most - low), 1),
    }


def lead_lag(draw: Draw, units: str) -> dict[str, float]:
    """A wet well in a storm: the inflow is more than one pump moves, and less than two do."""
    one = noted(draw.between(*FLOWS[units]), 2)
    depth, per_depth = draw.step(*DEPTHS[units]), noted(draw.between(*PER_DEPTH[units]), 3)
    volume = noted(depth * per_depth)
    return {
        "flow": one,
        "inflow": noted(one * draw.between(1.12, 1.5)),
        "parallel_flow": noted(one * draw.between(1.7, 1.88)),
        "lag_depth": depth,
        "volume_per_depth": per_depth,
        "lag_volume": volume,
        "lag_pump_down": noted(volume * draw.between(2.5, 4.5)),
    }


def off_delay(draw: Draw, units: str) -> dict[str, float]:
    """A pump that runs on for some seconds below its off float, in dry weather."""
    one = noted(draw.between(*FLOWS[units]), 2)
    return {
        "flow": one,
        "inflow": noted(one * draw.between(0.15, 0.5)),
        "off_delay": draw.step(10, 60, 5),
        "volume_per_depth": noted(draw.between(*PER_DEPTH[units]), 3),
    }


def start(draw: Draw, units: str) -> dict[str, float]:
    """A motor of the tables that starts on less than full volts."""
    volts = TABLE_VOLTS[units]
    size = draw.pick(
        (15, 20, 25, 30, 40, 50, 60, 75, 100) if units == "us" else (11, 15, 22, 30, 37, 45, 55, 75)
    )
    full = full_load_amps(size, volts, units)
    if units == "us":
        locked = by_size("locked_rotor_amps_us", f"{volts}")[size]
    else:
        locked = noted(full * draw.between(*LOCKED))
    return {
        "full_load_amps": full,
        "locked_rotor_amps": locked,
        "current_limit": draw.step(250, 450, 25),
        "start_volts": draw.step(50, 85, 5),
        "tap": draw.pick((50.0, 65.0, 80.0)),
    }


def panel(draw: Draw, units: str) -> dict[str, float]:
    """Coils and pilot lights of a small panel, and the transformer that feeds them."""
    coil, coils = draw.pick((9.0, 12.0, 18.0, 20.0, 26.0, 33.0)), float(draw.pick((2, 3, 4, 5, 6)))
    lamp, lamps = draw.pick((1.5, 2.0, 2.5, 5.0)), float(draw.pick((4, 6, 8, 10, 12)))
    load = coil * coils + lamp * lamps
    sizes = [va for va in (50, 75, 100, 150, 250, 350) if va >= load]
    return {
        "coil_va": coil,
        "coil_count": coils,
        "lamp_va": lamp,
        "lamp_count": lamps,
        "secondary_volts": 120.0 if units == "us" else draw.pick((110.0, 230.0)),
        "transformer_va": float(draw.pick(sizes[:2])),
    }


def battery(draw: Draw, units: str) -> dict[str, float]:
    """A battery that keeps an alarm panel up when the power is out."""
    volts = draw.pick((12.0, 24.0))
    watts = draw.step(6, 30, 1)
    return {
        "battery_ah": draw.pick((7.0, 12.0, 18.0, 26.0, 33.0, 40.0)),
        "usable_share": draw.step(50, 80, 5),
        "battery_volts": volts,
        "standby_watts": watts,
        "standby_amps": noted(watts / volts, 2),
    }


LEVEL, LEAD_LAG, OFF_DELAY = (
    Small(each, AT_A_WELL.places) for each in (level, lead_lag, off_delay)
)
DRIVE, START, PANEL, BATTERY = map(Small, (drive, start, panel, battery))
