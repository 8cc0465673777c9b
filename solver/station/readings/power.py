"""From the wire to the water: power and efficiency of each machine, the motor's nameplate and its load."""

from math import sqrt
from types import MappingProxyType
from typing import TYPE_CHECKING

from solver.errors import NotSolvable
from solver.station.drive import DISPLACEMENT
from solver.station.motor import table_amps
from solver.topics.tables import derating_factor, table_rows

from .read import NotRead, Read, Reads

if TYPE_CHECKING:
    from solver.station.station import Station

__all__ = ["POWER", "amps", "input_power", "power_factor", "water_power"]


def water_power(station: "Station") -> float:
    """What the water gets (hp | kW)."""
    now = station.running
    return now.flow * now.head / station.system.water_power


def input_power(station: "Station") -> float:
    """What the meter sees (kW)."""
    taken = station.running.load.kilowatts
    return taken / station.drive.efficiency if station.drive.is_variable else taken


def power_factor(station: "Station") -> float:
    """Power factor at the meter."""
    if station.drive.is_variable:
        return DISPLACEMENT
    load = station.running.load
    return load.kilowatts / sqrt(load.kilowatts**2 + load.kvar**2)


def amps(station: "Station") -> float:
    """Average amps of the legs (A)."""
    apparent = input_power(station) / power_factor(station)
    even = 1000 * apparent / (sqrt(3) * station.supply.volts)
    return even * 2 / sqrt(3) if station.supply.open_leg else even  # two legs carry 1.732 times


def apparent_power(station: "Station") -> float:
    """kVA, from volts and the average amps."""
    return sqrt(3) * station.supply.volts * amps(station) / 1000


def reactive_power(station: "Station") -> float:
    """kvar."""
    return sqrt(apparent_power(station) ** 2 - input_power(station) ** 2)


def motor_output(station: "Station") -> float:
    """What the motor gives a belt or a gear (hp | kW)."""
    if station.drive.name not in ("belt", "gear"):
        raise NotRead("there is nothing between the motor and the pump")
    return station.running.shaft / station.drive.efficiency


def drive_efficiency(station: "Station") -> float:
    """Efficiency of belt, gear or drive (percent)."""
    if station.drive.is_direct:
        raise NotRead("there is no drive between the motor and the pump")
    return 100 * station.drive.efficiency


def motor_power(station: "Station") -> float:
    """Power into the motor, or into its drive (hp | kW)."""
    return input_power(station) / station.system.kilowatts


def on_the_shaft(station: "Station") -> float:
    """What the motor gives (hp | kW)."""
    drive = station.drive
    return station.running.shaft / (1 if drive.is_variable else drive.efficiency)


def motor_efficiency(station: "Station") -> float:
    """Motor output over motor input, as it is loaded (percent)."""
    taken = station.running.load.kilowatts / station.system.kilowatts
    return 100 * on_the_shaft(station) / taken


def corrected_kva(station: "Station") -> float:
    """kVA with the capacitor thought of."""
    if station.plans.power_factor < power_factor(station) + 0.03:
        raise NotRead("the power factor needs no capacitor")
    return input_power(station) / station.plans.power_factor


def corrected_kvar(station: "Station") -> float:
    """kvar with the capacitor thought of."""
    return sqrt(corrected_kva(station) ** 2 - input_power(station) ** 2)


def overload(column: str) -> Read:
    """The percent of NEC 430.32 for what the nameplate says."""

    def read(station: "Station") -> float:
        return table_rows("overload")[station.motor.has_margin][column]

    return read


def service_factor(station: "Station") -> float:
    """As the nameplate has it."""
    if station.motor.old:
        raise NotRead("the nameplate has no service factor")
    return station.motor.service_factor


def field(station: "Station") -> float:
    """Synchronous speed at the frequency there is (rpm)."""
    return station.motor.synchronous_speed * station.drive.turned


def rise(station: "Station") -> float:
    """Rise of the winding with even volts (°C): losses at this load over those at full load."""
    return station.motor.rated_rise * station.condition.rise_share * heat(station)


def heat(station: "Station") -> float:
    """Losses at this load with even volts over those at full load."""
    load, motor = station.running.load, station.motor
    uneven = 1 + 0.02 * station.supply.unbalance**2
    lost = load.kilowatts - on_the_shaft(station) * station.system.kilowatts
    return lost / uneven / (motor.rated_input * (1 - motor.efficiency / 100))


def derating(station: "Station") -> float:
    """Allowed load at this unbalance of the volts (percent of the nameplate)."""
    try:
        return derating_factor(station.supply.unbalance, station.system.name)
    except NotSolvable:
        raise NotRead("the graph ends at 5 percent; the motor must not run") from None


def in_the_table(station: "Station") -> float:
    """Full-load amps of the code's table at the nameplate's volts (A)."""
    motor = station.motor
    return table_amps(motor.size, motor.rated_volts, station.system.name)


def starting_kva(station: "Station") -> float:
    """kVA with the rotor held."""
    return sqrt(3) * station.motor.rated_volts * station.motor.locked_rotor_amps / 1000


POWER: Reads = MappingProxyType(
    {
        "water_power": water_power,
        "brake_power": lambda s: s.running.shaft,
        "motor_output": motor_output,
        "motor_power": motor_power,
        "input_power": input_power,
        "motor_loss": lambda s: motor_power(s) - motor_output(s),
        "drive_loss": lambda s: motor_output(s) - s.running.shaft,
        "pump_loss": lambda s: s.running.shaft - water_power(s),
        "motor_size": lambda s: s.motor.size,
        "motor_load": lambda s: 100 * s.running.load.share,
        "pump_efficiency": lambda s: 100 * water_power(s) / s.running.shaft,
        "motor_efficiency": motor_efficiency,
        "drive_efficiency": drive_efficiency,
        "overall_efficiency": lambda s: 100 * water_power(s) / motor_power(s),
        # Three-phase
        "line_volts": lambda s: s.supply.volts,
        "line_amps": amps,
        "apparent_power": apparent_power,
        "power_factor": lambda s: input_power(s) / apparent_power(s),
        "reactive_power": reactive_power,
        "corrected_power_factor": lambda s: input_power(s) / corrected_kva(s),
        "corrected_apparent_power": corrected_kva,
        "corrected_reactive_power": corrected_kvar,
        "capacitor_kvar": lambda s: reactive_power(s) - corrected_kvar(s),
        "rated_volts": lambda s: s.motor.rated_volts,
        "rated_kilovolts": lambda s: s.motor.rated_volts / 1000,
        "frequency": lambda s: s.system.hertz * s.drive.turned,
        # Nameplate and load
        "poles": lambda s: float(s.motor.poles),
        "synchronous_speed": field,
        "running_speed": lambda s: s.running.motor_speed,
        "slip_speed": lambda s: field(s) - s.running.motor_speed,
        "slip": lambda s: 100 * s.running.load.slip,
        "rated_speed": lambda s: s.motor.rated_speed,
        "rated_slip_speed": lambda s: s.motor.synchronous_speed - s.motor.rated_speed,
        "load_by_slip": lambda s: 100 * s.running.load.slip * s.drive.turned / s.motor.rated_slip,
        "load_by_amps": lambda s: (
            100 * amps(s) * s.supply.volts / (s.motor.full_load_amps * s.motor.rated_volts)
        ),
        "full_load_amps": lambda s: s.motor.full_load_amps,
        "service_factor": service_factor,
        "service_factor_amps": lambda s: s.motor.full_load_amps * service_factor(s),
        "service_power": lambda s: s.motor.size * service_factor(s),
        "table_amps": in_the_table,
        "conductor_amps": lambda s: 1.25 * in_the_table(s),  # NEC 430.22
        "nameplate_share": lambda s: 100 * s.motor.full_load_amps / in_the_table(s),
        # Overload and start
        "overload_percent": overload("percent"),
        "overload_limit": lambda s: s.motor.full_load_amps * overload("percent")(s) / 100,
        "raised_percent": overload("raised"),
        "raised_limit": lambda s: s.motor.full_load_amps * overload("raised")(s) / 100,
        "overload_setting": lambda s: s.condition.setting,
        "setting_share": lambda s: 100 * s.condition.setting / s.motor.full_load_amps,
        "locked_rotor_amps": lambda s: s.motor.locked_rotor_amps,
        "starting_kva": starting_kva,
        "starting_kva_per_hp": lambda s: starting_kva(s) / (s.motor.size * s.system.horsepower),
        # Heat
        "rated_rise": lambda s: s.motor.rated_rise,
        "balanced_rise": rise,
        "extra_rise": lambda s: 2 * s.supply.unbalance**2,
        "added_rise": lambda s: rise(s) * 0.02 * s.supply.unbalance**2,
        "unbalanced_rise": lambda s: rise(s) * (1 + 0.02 * s.supply.unbalance**2),
        "derating": derating,
        "derated_power": lambda s: s.motor.size * derating(s) / 100,
        "horsepower_rating": lambda s: s.motor.size * s.system.horsepower,
        "kilowatt_rating": lambda s: s.motor.size * s.system.kilowatts,
    }
)
