"""Hours, kilowatt-hours and money; and better machines held against today's."""

from types import MappingProxyType
from typing import TYPE_CHECKING

from .power import input_power, motor_efficiency, water_power
from .read import NotRead, Reads
from .water import WATER
from .wet_well import hours_per_day

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["MONEY", "energy_per_volume", "yearly"]

flow = WATER["flow"]
LEAST_SAVED = 0.03  # kW
GAIN = 1.0  # points that a new machine must bring to be thought of
LONGEST = 40.0  # years in which an upgrade pays, or nobody thinks of it


def run_time(station: "Station") -> float:
    """Hours run in the days billed (h)."""
    return hours_per_day(station) * station.bill.days


def energy(station: "Station") -> float:
    """Energy used in that time (kWh)."""
    return input_power(station) * run_time(station)


def energy_per_volume(station: "Station") -> float:
    """kWh/MG | kWh/1000 m3."""
    return input_power(station) * station.system.hourly_volume / flow(station)


def cost(station: "Station") -> float:
    """Of the energy ($)."""
    return energy(station) * station.bill.energy_price


def peak(station: "Station") -> float:
    """Peak of everything on the meter (kW)."""
    return input_power(station) + station.bill.others


def bill(station: "Station") -> float:
    """Energy, demand and fixed charge ($)."""
    return cost(station) + peak(station) * station.bill.demand_price + station.bill.fixed


def on_peak(station: "Station") -> float:
    """On-peak energy (kWh)."""
    return energy(station) * station.bill.on_peak


def off_peak(station: "Station") -> float:
    """Off-peak energy (kWh)."""
    return energy(station) - on_peak(station)


def moved(station: "Station") -> float:
    """On-peak hours that could be moved (h)."""
    return run_time(station) * station.bill.on_peak * station.bill.moved


def gap(station: "Station") -> float:
    """On-peak price over off-peak price ($/kWh)."""
    return station.bill.on_price - station.bill.off_price


def new_pump(station: "Station") -> float:
    """Efficiency of the pump thought of (percent)."""
    if station.plans.upgrade == "motor":
        raise NotRead("only a new motor is thought of")
    today = 100 * water_power(station) / station.running.shaft
    if station.plans.pump_efficiency < today + GAIN:
        raise NotRead("today's pump is as good as a new one")
    return station.plans.pump_efficiency


def new_motor(station: "Station") -> float:
    """Efficiency of the motor thought of, at this load (percent)."""
    if station.plans.upgrade == "pump":
        raise NotRead("only a new pump is thought of")
    if station.plans.motor_efficiency < motor_efficiency(station) + GAIN / 2:
        raise NotRead("today's motor is as good as a new one")
    return station.plans.motor_efficiency


def new_brake(station: "Station") -> float:
    """Shaft power with the new pump (hp | kW)."""
    return water_power(station) * 100 / new_pump(station)


def new_motor_power(station: "Station") -> float:
    """Input after the upgrade (hp | kW)."""
    plan = station.plans.upgrade
    shaft = station.running.shaft if plan == "motor" else new_brake(station)
    motor = motor_efficiency(station) if plan == "pump" else new_motor(station)
    return shaft * 100 / motor / station.drive.efficiency


def new_input(station: "Station") -> float:
    """Input after the upgrade (kW)."""
    return new_motor_power(station) * station.system.kilowatts


def saved(station: "Station") -> float:
    """Power saved by the upgrade (kW)."""
    less = input_power(station) - new_input(station)
    if less < LEAST_SAVED:
        raise NotRead("the upgrade saves nothing")
    return less


def yearly(station: "Station") -> float:
    """Hours a year (h/year)."""
    return hours_per_day(station) * 365


def saving(station: "Station") -> float:
    """Saved a year ($/year)."""
    return saved(station) * yearly(station) * station.bill.energy_price


def payback(station: "Station") -> float:
    """Years until the savings have paid for it."""
    years = station.plans.cost / saving(station)
    if years > LONGEST:
        raise NotRead("the upgrade does not pay")
    return years


MONEY: Reads = MappingProxyType(
    {
        "run_time": run_time,
        "hours_per_day": hours_per_day,
        "days": lambda s: s.bill.days,
        "energy": energy,
        "energy_price": lambda s: s.bill.energy_price,
        "energy_cost": cost,
        "volume_pumped": lambda s: flow(s) * run_time(s) / s.system.hourly_volume,
        "energy_per_volume": energy_per_volume,
        "cost_per_volume": lambda s: energy_per_volume(s) * s.bill.energy_price,
        # Better machines
        "new_pump_efficiency": new_pump,
        "new_motor_efficiency": new_motor,
        "new_brake_power": new_brake,
        "new_motor_power": new_motor_power,
        "new_input_power": new_input,
        "saved_power": saved,
        "yearly_hours": yearly,
        "saved_energy": lambda s: saved(s) * yearly(s),
        "yearly_saving": saving,
        "installed_cost": lambda s: s.plans.cost,
        "simple_payback": payback,
        # Bills
        "peak_demand": peak,
        "demand_price": lambda s: s.bill.demand_price,
        "demand_charge": lambda s: peak(s) * s.bill.demand_price,
        "fixed_charge": lambda s: s.bill.fixed,
        "bill": bill,
        "average_price": lambda s: bill(s) / energy(s),
        "on_peak_hours": lambda s: run_time(s) * s.bill.on_peak,
        "off_peak_hours": lambda s: run_time(s) * (1 - s.bill.on_peak),
        "on_peak_energy": on_peak,
        "off_peak_energy": off_peak,
        "on_peak_price": lambda s: s.bill.on_price,
        "off_peak_price": lambda s: s.bill.off_price,
        "on_peak_cost": lambda s: on_peak(s) * s.bill.on_price,
        "off_peak_cost": lambda s: off_peak(s) * s.bill.off_price,
        "time_of_use_bill": lambda s: on_peak(s) * s.bill.on_price + off_peak(s) * s.bill.off_price,
        "hours_moved": moved,
        "energy_moved": lambda s: moved(s) * input_power(s),
        "price_gap": gap,
        "shift_saving": lambda s: moved(s) * input_power(s) * gap(s),
    }
)
