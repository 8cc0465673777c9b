"""Small draws of what a mechanic measures: sheaves, couplings, bearings, wear rings, vibration.

Sheaves are of sizes that are sold, by pitch diameter (common practice, no source); bearings from the
published table. Motor speeds are those of ordinary motors of 4 and 6 poles. None of them is under
water, so the pumps are those that can have belts.
"""

from solver.engine.draw import Draw
from solver.engine.family import Small
from solver.topics.chapter import Chapter
from solver.topics.formulas import COST, DRIVES, POWER
from solver.topics.readings import by, noted
from solver.topics.scenes import BELTED
from solver.topics.tables import table_rows

__all__ = [
    "ALIGNED",
    "CHAPTER",
    "GREASED",
    "RINGS",
    "SHAKING",
    "SHEAVES",
    "SHEAVES_EXACT",
    "SHEAVES_SLIPPING",
    "ZONES",
    "worked",
]

CHAPTER = Chapter("drives", (*DRIVES, *POWER, *COST))
worked = by(CHAPTER.formulas)
SOLD = {
    "us": (4.2, 4.6, 5.0, 5.4, 5.8, 6.2, 6.6, 7.0, 7.4, 8.0, 8.6, 9.4, 11.0, 12.4, 13.6, 15.4, 18.4, 20.0),
    "si": (112, 125, 140, 150, 160, 180, 200, 212, 224, 250, 280, 315, 355, 400, 450, 500),
}  # fmt: skip
SPEEDS = {
    "us": ((1740, 1775, 5), (1160, 1180, 5)),
    "si": ((1450, 1480, 5), (965, 985, 5)),
}
RATIOS = (1.15, 3.2)  # pump sheave over motor sheave
ANOTHER = (
    0.75,
    1.14,
)  # a new motor sheave over the old one: a third more speed takes twice the power
RIM = {"us": (1800, 6000), "si": (9, 30)}  # ft/min | m/s


def sheaves(draw: Draw, units: str) -> dict[str, float]:
    """A motor and a pump with their sheaves, and another motor sheave that the motor may stand."""
    sold, speed = SOLD[units], draw.step(*draw.pick(SPEEDS[units]))
    drivers = [size for size in sold[1:-4] if _on_a_belt(size, speed, units)]
    motor = float(draw.pick(drivers))
    pump = float(draw.pick([s for s in sold if RATIOS[0] <= s / motor <= RATIOS[1]]))
    seen = {"motor_sheave": motor, "running_speed": speed, "pump_sheave": pump}
    turned = worked(seen, "pump_speed", units)
    other = draw.pick([s for s in sold if s != motor and ANOTHER[0] <= s / motor <= ANOTHER[1]])
    return {
        **seen,
        "pump_speed": float(round(turned)),
        "new_speed": float(round(turned * other / motor / 5) * 5),
    }


def _on_a_belt(sheave: float, speed: float, units: str) -> bool:
    """Whether a belt likes that speed at its rim."""
    low, high = RIM[units]
    rim = worked({"motor_sheave": float(sheave), "running_speed": speed}, "belt_speed", units)
    return low <= rim <= high


def slipping(draw: Draw, units: str) -> dict[str, float]:
    """The same, with belts that slip more than sound ones do."""
    return {**sheaves(draw, units), "belt_slip": draw.step(2.5, 6, 0.5)}


def wanted(draw: Draw, units: str) -> dict[str, float]:
    """The same, with a pump speed that is wanted: a round one."""
    seen = sheaves(draw, units)
    return {**seen, "pump_speed": float(round(seen["pump_speed"] / 10) * 10)}


def aligned(draw: Draw, units: str) -> dict[str, float]:
    """A coupling between two indicator readings or feeler gauges."""
    if units == "us":
        narrow = draw.step(90, 190, 1)
        return {
            "rim_reading": draw.step(6, 44, 1),
            "narrow_gap": narrow,
            "wide_gap": narrow + draw.step(4, 20, 1),
            "coupling_diameter": draw.step(4, 9, 0.5),
            "foot_spacing": draw.step(10, 24, 0.5),
        }
    narrow = draw.step(2.3, 4.8, 0.05)
    return {
        "rim_reading": draw.step(0.16, 1.1, 0.02),
        "narrow_gap": narrow,
        "wide_gap": round(narrow + draw.step(0.1, 0.5, 0.05), 2),
        "coupling_diameter": draw.step(100, 230, 10),
        "foot_spacing": draw.step(250, 600, 10),
    }


INTERVALS = (1000.0, 1500.0, 2000.0, 2500.0, 3000.0, 4000.0, 5000.0, 8000.0)


def greased(draw: Draw, units: str) -> dict[str, float]:
    """A bearing of the table, a grease gun, and what the hour meter says."""
    row = draw.pick(table_rows("bearing_sizes"))
    inches = units == "us"
    outside, width = (row[n] / 25.4 if inches else row[n] for n in ("outside", "width"))
    interval = draw.pick(INTERVALS)
    then = draw.step(2000, 40_000, 1)
    amount = worked({"bearing_diameter": outside, "bearing_width": width}, "grease_amount", units)
    return {
        "bearing_diameter": round(outside, 2),
        "bearing_width": round(width, 2),
        "grease_amount": noted(amount, 2),
        "grease_per_stroke": draw.step(0.03, 0.06, 0.01) if inches else draw.step(0.8, 1.6, 0.1),
        "grease_interval": interval,
        "hours_per_day": draw.step(3, 22, 0.5),
        "hour_meter_greased": then,
        "hour_meter": then + round(interval * draw.between(0.2, 0.85)),
    }


NEW_GAPS = {"us": (0.012, 0.020, 0.001), "si": (0.3, 0.5, 0.02)}
RING_BORES = {"us": (5, 12), "si": (125, 310)}


def rings(draw: Draw, units: str) -> dict[str, float]:
    """A case ring and an impeller ring, worn to up to three times their clearance."""
    new = draw.step(*NEW_GAPS[units])
    places = 3 if units == "us" else 2
    gap = round(new * draw.between(1.15, 3.2), places)
    impeller = round(draw.between(*RING_BORES[units]), places)
    return {
        "impeller_ring_diameter": impeller,
        "case_ring_bore": round(impeller + gap, places),
        "ring_gap": gap,
        "new_ring_gap": new,
    }


# Tops of zones A, B and C, rms (in/s | mm/s): ISO 20816-3, group 2 (15 to 300 kW) on a rigid base, from memory.
ZONES = {"us": (0.055, 0.11, 0.18), "si": (1.4, 2.8, 4.5)}


def shaking(draw: Draw, units: str) -> dict[str, float]:
    """A reading in any zone, and an earlier one: a little lower, or much."""
    tops = ZONES[units]
    low, high = draw.pick(((0.35, 0.93), (1.08, 1.9), (2.15, 3.05), (3.4, 5.2)))
    now = tops[0] * draw.between(low, high)
    then = max(
        now - tops[1] * draw.pick((0.04, 0.12, 0.4, 0.6)) * draw.between(0.8, 1.2), 0.2 * now
    )
    places = 3 if units == "us" else 1
    return {
        "bearing_vibration": round(now, places),
        "earlier_vibration": round(min(then, 0.98 * tops[1]), places),
    }


PLACES = BELTED.places
SHEAVES, SHEAVES_SLIPPING, SHEAVES_EXACT, ALIGNED, GREASED, RINGS, SHAKING = (
    Small(of, PLACES) for of in (sheaves, slipping, wanted, aligned, greased, rings, shaking)
)
