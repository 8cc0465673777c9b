"""Signals, timers, starting and batteries, worked by hand in plain numbers; the tests hold answers to it.

4 mA is nothing and 20 mA is all; 1 psi holds up 2.31 ft of water; 1 m3 is 1,000 L.
"""

from solver.topics.by_hand import ByHand, Given
from solver.topics.horsepower.by_hand import PER_PRESSURE

__all__ = ["BY_HAND"]

A_MINUTE = {"us": 1, "si": 0.06}  # gal of a gpm, m3 of a L/s


def of_range(given: Given) -> float:
    """How far up the signal is, of 1."""
    return (given["loop_current"] - 4) / 16


def level(given: Given, units: str) -> float:
    """In ft or m; or the signal in mA."""
    if "signal_level" in given:
        return 4 + 16 * given["signal_level"] / given["signal_span"]
    if "pressure_span" in given:
        return of_range(given) * given["pressure_span"] * PER_PRESSURE[units]
    return given.get("signal_zero", 0) + of_range(given) * given["signal_span"]


def drive(given: Given, units: str) -> float:
    """In Hz; or the signal in mA."""
    low = given.get("least_frequency", 0)
    whole = given["most_frequency"] - low
    if "drive_frequency" in given:
        return 4 + 16 * (given["drive_frequency"] - low) / whole
    return low + of_range(given) * whole


def lag(given: Given, units: str) -> float:
    """In minutes: until the lag pump starts, or until both have pumped down."""
    if "parallel_flow" in given:
        net = given["parallel_flow"] - given["inflow"]
        return given["lag_pump_down"] / (net * A_MINUTE[units])
    volume = given.get("lag_volume") or given["volume_per_depth"] * given["lag_depth"]
    return volume / ((given["inflow"] - given["flow"]) * A_MINUTE[units])


def ran_on(given: Given, units: str) -> float:
    """In gal or m3; or the drop in ft or m."""
    volume = (given["flow"] - given["inflow"]) * A_MINUTE[units] * given["off_delay"] / 60
    return volume / given["volume_per_depth"] if "volume_per_depth" in given else volume


def start(given: Given, units: str) -> float:
    """Amps under a limit, torque in percent, or amps on a tap."""
    if "current_limit" in given:
        return given["full_load_amps"] * given["current_limit"] / 100
    if "tap" in given:
        return given["locked_rotor_amps"] * given["tap"] * given["tap"] / 10_000
    return given["start_volts"] ** 2 / 100


def panel(given: Given, units: str) -> float:
    """In VA, in amps, or in percent of the transformer."""
    load = given["coil_va"] * given["coil_count"] + given["lamp_va"] * given["lamp_count"]
    if "secondary_volts" in given:
        return load / given["secondary_volts"]
    return 100 * load / given["transformer_va"] if "transformer_va" in given else load


def battery(given: Given, units: str) -> float:
    """In hours."""
    amps = given.get("standby_amps") or given["standby_watts"] / given["battery_volts"]
    return given["battery_ah"] * given.get("usable_share", 100) / 100 / amps


BY_HAND: ByHand = {
    "signal_level": level,
    "drive_signal": drive,
    "lag_call": lag,
    "off_delay": ran_on,
    "reduced_start": start,
    "control_load": panel,
    "alarm_battery": battery,
}
