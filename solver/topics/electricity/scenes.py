"""Small draws of what the station model does not have: circuits, wire, transformers, bills by the kVA.

Heaters, signal loops and transformers are of sizes that are sold (common practice, no source); wire
comes from the published tables.
"""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Small
from solver.errors import Unfit
from solver.topics.chapter import Chapter
from solver.topics.formulas import COST, ELECTRICITY, NAMEPLATE, POWER
from solver.topics.readings import by, noted
from solver.topics.tables import named_rows

__all__ = [
    "BRANCHES",
    "CHAPTER",
    "CONTROL",
    "FEEDER",
    "FEEDER_PLATE",
    "HEATER",
    "LOOP",
    "LOW_VOLTS",
    "MONTH",
    "RUN",
    "SINGLE",
    "SINGLE_RUN",
    "worked",
]

CHAPTER = Chapter("electricity", (*ELECTRICITY, *POWER, *COST, *NAMEPLATE))
worked = by(CHAPTER.formulas)

HEATERS: Mapping[str, Mapping[int, tuple[int, ...]]] = {  # watts sold, by volts
    "us": {120: (250, 375, 500, 750, 1000, 1500), 240: (750, 1000, 1500, 2000, 3000, 4000, 5000)},
    "si": {230: (250, 500, 750, 1000, 1500, 2000, 3000)},
}
LOW = {
    "us": (240, (203, 214)),
    "si": (230, (202, 216)),
}  # rated volts, and what is there: 208 V in the US
SINGLE_PANEL = {"us": (120, 240, 240), "si": (230,)}
SINGLE_SIZES = {"us": (0.5, 0.75, 1, 1.5, 2, 3, 5), "si": (0.37, 0.55, 0.75, 1.1, 1.5, 2.2)}
SINGLE_VOLTS = {"us": (226, 246), "si": (222, 240)}
PANEL = {"us": (480, 480, 208, 240), "si": (400,)}  # volts, three-phase
CONTROLS = {
    "us": ((480, 120), (480, 24), (240, 120), (240, 24), (600, 120)),
    "si": ((400, 230), (400, 110), (400, 24), (230, 24)),
}
VA_SIZES = (50, 75, 100, 150, 250, 350, 500, 750, 1000)
MOST_VA = {24: 350}  # at few volts, nobody wires more
KVA_SIZES = {"us": (45, 75, 112.5, 150, 225, 300, 500), "si": (50, 63, 100, 160, 250, 400)}
FEEDER_VOLTS = {"us": (480, 480, 208), "si": (400,)}
MOST_AMPS = 600  # more is read through a current transformer
DAYS = (28.0, 29.0, 30.0, 31.0, 32.0)  # from one reading of the meter to the next
STEP = {"us": 5, "si": 1}  # of a length


def heater(draw: Draw, units: str) -> dict[str, float]:
    """A heater's volts, ohms, amps and watts, and how long it is on."""
    volts = draw.pick(tuple(HEATERS[units]))
    ohms = noted(volts**2 / draw.pick(HEATERS[units][volts]))
    there = float(round(volts * draw.between(0.97, 1.03)))
    return {
        "load_volts": there,
        "load_ohms": ohms,
        "circuit_amps": noted(there / ohms),
        "run_time": float(round(draw.between(20, 400))),
    }


def low_volts(draw: Draw, units: str) -> dict[str, float]:
    """A heater on fewer volts than it is rated for."""
    rated, there = LOW[units]
    return {
        "rated_volts": float(rated),
        "rated_watts": float(draw.pick(HEATERS[units][rated])),
        "load_volts": float(round(draw.between(*there))),
    }


def loop(draw: Draw, units: str) -> dict[str, float]:
    """A 4 to 20 mA loop: its supply, and the ohms of an input, a recorder or display, and the wire."""
    return {
        "series_ohms_1": float(draw.pick((100, 250, 250))),
        "series_ohms_2": float(draw.pick((50, 100, 125, 250))),
        "series_ohms_3": float(round(draw.between(12, 75))),
        "loop_current": draw.step(8, 20, 0.5),
        "loop_supply": draw.pick((24.0, 24.0, 28.0)),
    }


def branches(draw: Draw, units: str) -> dict[str, float]:
    """Heater elements side by side on one circuit."""
    volts = max(HEATERS[units])
    watts = draw.shuffled(HEATERS[units][volts])[:3]
    ohms = {f"parallel_ohms_{n}": noted(volts**2 / each) for n, each in enumerate(watts, 1)}
    return {**ohms, "load_volts": float(volts)}


def single(draw: Draw, units: str) -> dict[str, float]:
    """A small single-phase motor at work, such as a sump pump's or a grinder pump's."""
    size = draw.pick(SINGLE_SIZES[units])
    seen = {
        "brake_power": noted(size * draw.between(0.6, 1.0)),
        "motor_efficiency": float(round(draw.between(70, 82))),
        "power_factor": round(draw.between(0.72, 0.93), 2),
        "single_volts": float(round(draw.between(*SINGLE_VOLTS[units]))),
    }
    seen["input_power"] = noted(worked(seen, "input_power", units))
    seen["single_amps"] = noted(worked(_for_amps(seen), "single_amps", units))
    return seen


def _for_amps(seen: Mapping[str, float]) -> dict[str, float]:
    return {name: seen[name] for name in ("input_power", "power_factor", "single_volts")}


def run(draw: Draw, units: str, panel: float, load: str, amps: float) -> dict[str, float]:
    """A run of copper that may carry its load (A), from a panel of some volts."""
    fitting = [row for row in named_rows(f"wire_{units}").values() if row[2] >= 1.25 * amps]
    area, ohms, _ = draw.pick(fitting[:3])
    drop = panel * draw.between(0.01, 0.055)
    seen = {"wire_ohms": ohms, load: amps}
    exact = worked({"voltage_drop": drop, **seen}, "run_length", units)
    length = float(round(exact / STEP[units]) * STEP[units])
    if not 12 * STEP[units] <= length <= 200 * STEP[units]:
        raise Unfit("nobody would pull wire that short or that far for this load")
    return {"run_length": length, "wire_area": area, **seen}


def single_phase_run(draw: Draw, units: str) -> dict[str, float]:
    """A single-phase circuit: its length, its wire and its amps."""
    panel, amps = draw.pick(SINGLE_PANEL[units]), noted(draw.between(5, 26))
    return run(draw, units, panel, "single_amps", amps)


def three_phase_run(draw: Draw, units: str) -> dict[str, float]:
    """A feeder of a motor: its length, its wire, its amps, and the volts at both ends."""
    panel, amps = draw.pick(PANEL[units]), noted(draw.between(8, 90 if units == "us" else 70))
    return {
        **run(draw, units, panel, "line_amps", amps),
        "supply_volts": float(round(panel * draw.between(0.99, 1.02))),
        "far_volts": float(round(panel * draw.between(0.93, 0.975))),
    }


def control(draw: Draw, units: str) -> dict[str, float]:
    """A control transformer: its volts, its rating, and a load on it."""
    high, low = draw.pick(CONTROLS[units])
    size = float(draw.pick([va for va in VA_SIZES if va <= MOST_VA.get(low, max(VA_SIZES))]))
    return {
        "primary_volts": float(round(high * draw.between(0.96, 1.03))),
        "secondary_volts": float(low),
        "turns_ratio": noted(high / low),
        "secondary_amps": noted(size * draw.between(0.4, 0.95) / low),
        "transformer_va": size,
    }


def feeder_plate(draw: Draw, units: str) -> dict[str, float]:
    """The plate of a three-phase transformer that feeds a station."""
    volts, size = draw.pick(FEEDER_VOLTS[units]), draw.pick(KVA_SIZES[units])
    plate = {"transformer_kva": float(size), "line_volts": float(volts)}
    if worked(plate, "transformer_amps", units) > 1.3 * MOST_AMPS:
        raise Unfit("that much takes more volts")
    return plate


def feeder(draw: Draw, units: str) -> dict[str, float]:
    """A three-phase transformer that feeds a station, and what it carries."""
    plate = feeder_plate(draw, units)
    amps = noted(worked(plate, "transformer_amps", units) * draw.between(0.35, 1.08))
    if amps > MOST_AMPS:
        raise Unfit("that is read through a current transformer")
    line = float(round(plate["line_volts"] * draw.between(0.98, 1.03)))
    return {**plate, "line_volts": line, "line_amps": amps}


def month(draw: Draw, units: str) -> dict[str, float]:
    """The bill of a station for a month: its peak, its energy, and how its utility bills the demand."""
    peak = noted(18 * 9 ** draw.between(0, 1))
    days, share = draw.pick(DAYS), draw.between(0.22, 0.72)
    return {
        "peak_demand": peak,
        "power_factor": round(draw.between(0.7, 0.88), 2),
        "kva_price": draw.step(6, 16, 0.25),
        "required_power_factor": draw.pick((0.9, 0.92, 0.95)),
        "days": days,
        "period_hours": 24 * days,
        "energy": noted(share * peak * 24 * days),
        "load_factor": noted(100 * share),
    }


HEATER, LOW_VOLTS, LOOP, BRANCHES, SINGLE = map(Small, (heater, low_volts, loop, branches, single))
RUN, SINGLE_RUN = Small(three_phase_run), Small(single_phase_run)
CONTROL, FEEDER, FEEDER_PLATE, MONTH = map(Small, (control, feeder, feeder_plate, month))
