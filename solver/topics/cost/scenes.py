"""Duty schedules, prices, upgrades and bills that a small utility could have.

Hours, prices and costs are common practice, no source; pumps are those of topics/drawn, motors
those of the published table.
"""

from solver.engine.draw import Draw
from solver.engine.family import Scene
from solver.topics.chapter import Chapter
from solver.topics.constants import HOURLY_VOLUME
from solver.topics.drawn.pumps import larger_pump, pump
from solver.topics.drawn.readings import by, in_kilowatts, noted
from solver.topics.formulas import COST, POWER
from solver.topics.tables import motors

__all__ = [
    "CHAPTER",
    "YEAR",
    "better_motor",
    "better_pump",
    "demand_bill",
    "duty",
    "energy_price",
    "time_of_use",
    "worked",
]

CHAPTER = Chapter("cost", (*POWER, *COST))
worked = by(CHAPTER.formulas)
MONTH = (28, 30, 31)
YEAR = (365,)
# Motors and loads whose kilowatts, and in US units horsepower, lie well up their decade (5.5 to
# 9.9, 55 to 99): a step rounded to three figures then hardly moves a small difference.
COMPARED = {
    "us": {7.5: (70, 100), 10: (60, 80), 75: (70, 100), 100: (60, 80)},
    "si": {7.5: (70, 100), 75: (70, 100), 90: (60, 85)},
}


def energy_price(draw: Draw) -> float:
    """Dollars a kilowatt-hour."""
    return draw.step(0.07, 0.22, 0.005)


def duty(days: tuple[int, ...] = MONTH) -> Scene:
    """A pump with its hours and its price; `days` are those the schedule may run."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        machine = pump(draw, units)
        hours = draw.step(4, 20, 0.5)
        total = float(round(hours * draw.pick(MONTH)))
        return {
            **machine,
            "run_time": hours,
            "hours_per_day": hours,
            "days": float(draw.pick(days)),
            "energy_price": energy_price(draw),
            "energy": noted(machine["input_power"] * total),
            "volume_pumped": noted(machine["flow"] * total / HOURLY_VOLUME.figure(units).value),
        }

    return scene


def saving(draw: Draw, kilowatts: float) -> dict[str, float]:
    """What a number of kilowatts less comes to in a year."""
    hours = draw.step(2000, 7000, 250)
    return {
        "yearly_hours": hours,
        "energy_price": energy_price(draw),
        "saved_energy": noted(kilowatts * hours),
    }


def round_kilowatts(value: float) -> float:
    """To a half below ten, to a five above: an even percentage of it then has three figures."""
    step = 0.5 if value < 10 else 5
    return round(value / step) * step


def better_pump(draw: Draw, units: str) -> dict[str, float]:
    """A worn pump and a new one for the same work."""
    machine = larger_pump(draw, units)
    old, new = draw.step(48, 60, 2), draw.step(71, 82, 1)
    shaft = machine["water_power"] / old * 100
    wire = in_kilowatts(shaft / machine["motor_efficiency"] * 100, units)
    wire = round_kilowatts(wire)
    better = noted(wire * old / new)
    return {
        **machine,
        "pump_efficiency": old,
        "new_pump_efficiency": new,
        "input_power": wire,
        "new_input_power": better,
        "installed_cost": noted(2500 + wire * draw.between(180, 400), 2),
        **saving(draw, wire - better),
    }


def better_motor(draw: Draw, units: str) -> dict[str, float]:
    """A motor rewound more than once, and the new one of the published table."""
    size = draw.pick(tuple(COMPARED[units]))
    premium = next(m.efficiency for m in motors(units) if m.size == size)
    old = 2.0 * round((premium - draw.between(8, 11)) / 2)
    load = draw.step(*COMPARED[units][size], 5)
    shaft = size * load / 100
    wire = round_kilowatts(in_kilowatts(shaft / old * 100, units))
    return {
        "motor_size": size,
        "motor_load": load,
        "brake_power": shaft,
        "input_power": wire,
        "motor_efficiency": old,
        "new_motor_efficiency": premium,
        "installed_cost": noted(500 + wire * draw.between(70, 130), 2),
        **saving(draw, wire * (1 - old / premium)),
    }


def demand_bill(draw: Draw, units: str) -> dict[str, float]:
    """A month of one station: energy, its highest kilowatts and a fixed charge."""
    kilowatts = noted(draw.between(6, 60), 2 if draw.between(0, 1) < 0.5 else 3)
    hours, days, price = draw.step(6, 18, 0.5), float(draw.pick(MONTH)), energy_price(draw)
    energy = noted(kilowatts * hours * days)
    peak = float(round(kilowatts * draw.between(1.1, 2.2)))
    demand_price = draw.step(6, 18, 0.5)
    charged = noted(energy * price + peak * demand_price)
    fixed = round(charged * draw.between(0.035, 0.07) / 5) * 5.0
    total = round(energy * price + peak * demand_price + fixed, 2)
    return {
        "input_power": kilowatts,
        "hours_per_day": hours,
        "days": days,
        "energy": energy,
        "energy_price": price,
        "energy_cost": round(energy * price, 2),
        "peak_demand": peak,
        "demand_price": demand_price,
        "demand_charge": round(peak * demand_price, 2),
        "fixed_charge": fixed,
        "bill": total,
    }


def time_of_use(draw: Draw, units: str) -> dict[str, float]:
    """A month under two prices: afternoons are dear, the other hours cheap."""
    machine = larger_pump(draw, units)
    dear, cheap = draw.step(40, 120, 5), draw.step(160, 420, 10)
    power = machine["input_power"]
    moved = draw.step(20, dear - 5, 5)
    return {
        **machine,
        "on_peak_hours": dear,
        "off_peak_hours": cheap,
        "hours_moved": moved,
        "on_peak_price": draw.step(0.15, 0.32, 0.005),
        "off_peak_price": draw.step(0.06, 0.11, 0.005),
        "on_peak_energy": noted(power * dear),
        "off_peak_energy": noted(power * cheap),
        "energy_moved": noted(power * moved),
    }
