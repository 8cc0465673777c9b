"""Stations, gauges and suction pipes that could exist, with every head that belongs to them.

Ranges are common practice, no source; C factors and K of fittings come from the published tables.
"""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Scene
from solver.scenario import WITH_WET_WELL
from solver.topics.chapter import Chapter
from solver.topics.drawn.readings import by, noted, only, round_flow
from solver.topics.formulas import HEAD, POWER
from solver.topics.tables import named_rows

__all__ = [
    "CHAPTER",
    "any_lift",
    "any_need",
    "at_any_speed",
    "flooded",
    "force_main",
    "friction_heavy",
    "gauges",
    "left_out_of",
    "low_lift_gauges",
    "old_or_new",
    "station",
    "suction",
    "worked",
]

CHAPTER = Chapter("head", (*POWER, *HEAD), WITH_WET_WELL)
worked = by(CHAPTER.formulas)
MAINS = {"us": (4, 6, 8, 10, 12, 16), "si": (100, 150, 200, 250, 300, 400)}
NOZZLES = {"us": ((4, 3), (5, 4), (10, 8)), "si": ((100, 80), (125, 100), (250, 200))}
C_FACTORS = (100, 110, 120, 130, 140, 150)
# Water of 50, 60, 68, 80 and 90 F, or of 10, 15, 20, 27 and 32 C.
VAPOR = {"us": (0.4, 0.6, 0.8, 1.2, 1.6), "si": (0.13, 0.17, 0.24, 0.37, 0.49)}
FOOT = {"us": 1, "si": 0.3}  # what a foot is in the unit of the system, roundly


def metres(draw: Draw, units: str, low: float, high: float) -> float:
    """A height from `low` to `high` feet: to half a foot, or to a tenth of a metre."""
    step = 0.5 if units == "us" else 0.1
    return round(round(draw.between(low, high) * FOOT[units] / step) * step, 1)


def force_main(draw: Draw, units: str) -> dict[str, float]:
    """A pipe with the flow in it, and what it takes of head."""
    diameter = float(draw.pick(MAINS[units]))
    speed = draw.between(2.7, 6.2) * FOOT[units]
    pipe = {"pipe_diameter": diameter}
    flow = round_flow(worked(pipe | {"velocity": speed}, "flow", units))
    pipe |= {"flow": flow, "c_factor": float(draw.pick(C_FACTORS))}
    rate = worked(pipe, "friction_rate", units)
    step = 50 if units == "us" else 10
    length = max(4, round(draw.between(12, 80) * FOOT[units] / rate * 100 / step)) * step
    pipe |= {"pipe_length": float(length)}
    return pipe | {
        "daily_flow": noted(worked(pipe, "daily_flow", units), 2),
        "velocity": noted(worked(pipe, "velocity", units), 2 if units == "us" else 3),
        "friction_rate": noted(rate),
        "friction_head": noted(worked(pipe, "friction_head", units)),
        **fittings(draw, pipe, units),
    }


def fittings(draw: Draw, pipe: Mapping[str, float], units: str) -> dict[str, float]:
    """Elbows, a check valve, a gate valve and an outlet, and what they take."""
    k = {name: value for name, (value,) in named_rows("fittings").items()}
    bend = draw.pick([name for name in k if name.endswith("elbow")])
    coefficients = {
        "elbows": draw.step(3, 9, 1),
        "elbow_coefficient": k[bend],
        "check_valve_coefficient": k["swing check valve"],
        "gate_valve_coefficient": k["gate valve"],
        "outlet_coefficient": k["outlet"],
    }
    sum_of_k = round(worked(coefficients, "loss_coefficient", units), 2)
    known = {**pipe, "loss_coefficient": sum_of_k}
    return {
        **coefficients,
        "loss_coefficient": sum_of_k,
        "velocity_head": noted(worked(pipe, "velocity_head", units)),
        "minor_loss": noted(worked(known, "minor_loss", units), 2),
    }


def lifted(draw: Draw, units: str, pipe: dict[str, float], static: float) -> dict[str, float]:
    """A pump on this pipe that lifts the water by `static`, and the power that takes."""
    low = round(draw.between(300, 1400) * FOOT[units], 1)
    lift, above = metres(draw, units, 5, 15), metres(draw, units, 4, 14)
    end = pipe["friction_head"] + static
    duty = {"flow": pipe["flow"], "head": end, "pump_efficiency": draw.step(58, 82, 1)}
    return pipe | {
        "static_head": static,
        "suction_elevation": low,
        "discharge_elevation": round(low + static, 1),
        "suction_lift": lift,
        "static_suction_head": above,
        "pump_efficiency": duty["pump_efficiency"],
        "head": noted(end),
        "water_power": noted(worked(duty, "water_power", units)),
        "brake_power": noted(worked(duty, "brake_power", units)),
        "outlet_velocity": noted(pipe["velocity"] * draw.between(2, 3), 2),
        "delivery_pressure": draw.step(15, 60, 1) if units == "us" else draw.step(100, 400, 5),
    }


def station(draw: Draw, units: str) -> dict[str, float]:
    """A station where the lift and the friction both count."""
    seen = lifted(draw, units, force_main(draw, units), metres(draw, units, 22, 95))
    return seen | {"static_discharge_head": round(seen["static_head"] - seen["suction_lift"], 1)}


def flooded(draw: Draw, units: str) -> dict[str, float]:
    """A station whose pump stands below the water it draws."""
    seen = station(draw, units)
    above = round(seen["static_head"] + seen["static_suction_head"], 1)
    return seen | {"static_discharge_head": above}


def friction_heavy(draw: Draw, units: str) -> dict[str, float]:
    """A station at the end of a long main, where friction takes the larger share."""
    pipe = force_main(draw, units)
    share = draw.between(0.3, 1.1) * pipe["friction_head"] / FOOT[units]
    return lifted(draw, units, pipe, metres(draw, units, share, share))


def gauges(lowest: float = 40, highest: float = 150) -> Scene:
    """A pump's gauges and pipes, for a head between these feet."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        us = units == "us"
        suction = draw.step(3, 18, 0.5) if us else draw.step(20, 120, 1)
        head = float(round(draw.between(lowest, highest) * FOOT[units], 0 if us else 1))
        rise = worked({"head": head}, "pressure", units)
        wide, narrow = map(float, draw.pick(NOZZLES[units]))
        speed = draw.between(11, 14) * FOOT[units]
        slower = speed * (narrow / wide) ** 2
        return {
            "head": head,
            "suction_gauge": suction,
            "discharge_gauge": float(round(suction + rise)),
            "suction_vacuum": draw.step(4, 18, 0.5) if us else draw.step(14, 60, 1),
            "discharge_gauge_height": metres(draw, units, 2.5, 6),
            "suction_gauge_height": metres(draw, units, 0.5, 1.5),
            "discharge_velocity_head": noted(
                worked({"velocity": speed}, "velocity_head", units), 2
            ),
            "suction_velocity_head": noted(worked({"velocity": slower}, "velocity_head", units), 2),
        }

    return scene


low_lift_gauges = gauges(24, 60)


def suction(loss: tuple[float, float] = (0.8, 4)) -> Scene:
    """A pump above its water; the loss in its suction pipe lies between these feet."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        us = units == "us"
        lift = metres(draw, units, 5, 15)
        lost = noted(draw.between(*loss) * FOOT[units], 2)
        vacuum = worked({"dynamic_suction_lift": lift + lost}, "suction_vacuum", units)
        return {
            "suction_lift": lift,
            "suction_loss": lost,
            "dynamic_suction_lift": round(lift + lost, 2),
            "suction_vacuum": round(vacuum * 2) / 2 if us else float(round(vacuum)),
            "atmospheric_head": noted(draw.between(28, 33.9) * (1 if us else 0.3048)),
            "vapor_head": draw.pick(VAPOR[units]),
            "static_suction_head": metres(draw, units, 3, 14),
            "npsh_required": metres(draw, units, 6, 12),
            "npsh_margin": metres(draw, units, 2, 5),
        }

    return scene


def left_out_of(*parts: str) -> Scene:
    """A scene in which somebody has added up all of these parts but one."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        seen = station(draw, units)
        gone = draw.pick(parts)
        seen["minor_loss"] = noted(draw.between(5, 14) * FOOT[units], 2)
        seen["delivery_head"] = worked(only(seen, "delivery_pressure"), "delivery_head", units)
        kept = sum(seen[part] for part in parts if part != gone)
        return seen | {"head": noted(kept), "gone": float(parts.index(gone))}

    return scene


def old_or_new(draw: Draw, units: str) -> dict[str, float]:
    """A main of one of the table's pipes, tested."""
    low, high = draw.pick(list(named_rows("c_factors").values()))
    pipe = only(force_main(draw, units), "flow", "pipe_diameter", "pipe_length")
    pipe["c_factor"] = draw.between(low, high)
    return pipe | {
        "friction_rate": noted(worked(pipe, "friction_rate", units)),
        "friction_head": noted(worked(pipe, "friction_head", units)),
    }


def at_any_speed(draw: Draw, units: str) -> dict[str, float]:
    """A main that may be far too wide for its flow, or far too narrow."""
    seen = force_main(draw, units)
    target = draw.between(*draw.pick(((0.9, 1.8), (2.3, 7), (8.6, 12)))) * FOOT[units]
    known = {**only(seen, "pipe_diameter"), "velocity": target}
    flow = noted(worked(known, "flow", units), 2)
    daily = noted(worked({"flow": flow}, "daily_flow", units), 2)
    return seen | {"flow": flow, "daily_flow": daily}


def any_lift(draw: Draw, units: str) -> dict[str, float]:
    """A dynamic suction lift within the usual, over it, or over what is practical."""
    seen = suction()(draw, units)
    total = draw.between(*draw.pick(((8, 14.5), (15.5, 21.5), (22.5, 27)))) * FOOT[units]
    step = 0.5 if units == "us" else 1
    vacuum = worked({"dynamic_suction_lift": total}, "suction_vacuum", units)
    lift = round(total - seen["suction_loss"], 1)
    return seen | {"suction_vacuum": round(vacuum / step) * step, "suction_lift": lift}


def any_need(draw: Draw, units: str) -> dict[str, float]:
    """A pump that needs less than is usable, part of the margin, or more than there is."""
    seen = suction()(draw, units)
    known = only(seen, "atmospheric_head", "vapor_head", "suction_lift", "suction_loss")
    available = round(worked(known, "npsh_available", units), 2 if units == "si" else 1)
    usable = available - seen["npsh_margin"]
    low, high = draw.pick(
        (
            (0.6 * usable, 0.95 * usable),
            (1.05 * usable, 0.96 * available),
            (1.05 * available, 1.4 * available),
        )
    )
    needed = round(draw.between(low, high), 1)
    return seen | {"npsh_available": available, "npsh_required": needed}
