"""Hours, kilowatt-hours, money, two machines compared, and bills."""

from ..quantity import Quantity, percent, same

__all__ = ["COST"]

POWERS = ("hp", "kW", (0.05, 400), (0.04, 300))

COST = (
    # Hours, kilowatt-hours and money
    same("run_time", "run time", "t", "h", (0.25, 8784)),
    same("hours_per_day", "hours a day", r"t_\mathrm{d}", "h/day", (0.25, 24), most=24),
    same("days", "days", "n", "day", (1, 366)),
    same("energy", "energy", "E", "kWh", (0.1, 3_000_000)),
    same("energy_price", "energy price", "c", "$/kWh", (0.03, 0.60)),
    same("energy_cost", "energy cost", "C", "$", (0.01, 900_000)),
    Quantity("volume_pumped", "volume pumped", "V", "MG", "ML", (0.001, 6000), (0.004, 20000)),
    Quantity(
        "energy_per_volume",
        "energy per volume",
        "e",
        "kWh/MG",
        "kWh/1000 m3",
        (20, 6000),
        (5, 1600),
    ),
    Quantity(
        "cost_per_volume", "cost per volume", r"C_V", "$/MG", "$/1000 m3", (1, 1500), (0.2, 500)
    ),
    # Two machines compared
    percent("new_pump_efficiency", "new pump efficiency", r"\eta_\mathrm{p}'", (45, 85)),
    percent("new_motor_efficiency", "new motor efficiency", r"\eta_\mathrm{m}'", (70, 97)),
    Quantity("new_brake_power", "brake power with the new pump", r"P_\mathrm{b}'", *POWERS),
    Quantity("new_motor_power", "motor power with the new machine", r"P_\mathrm{m}'", *POWERS),
    same(
        "new_input_power", "input power with the new machine", r"P_\mathrm{in}'", "kW", (0.04, 320)
    ),
    same("saved_power", "power saved", r"\Delta P", "kW", (0.02, 150)),
    same("yearly_hours", "hours a year", r"t_\mathrm{y}", "h/year", (50, 8784), most=8784),
    same("saved_energy", "energy saved in a year", r"\Delta E", "kWh/year", (5, 900_000)),
    same("yearly_saving", "saving in a year", "S", "$/year", (1, 200_000)),
    same("installed_cost", "installed cost", "K", "$", (100, 500_000)),
    same("simple_payback", "simple payback", r"t_\mathrm{pb}", "year", (0.1, 40)),
    # Bills
    same("peak_demand", "peak demand", r"P_\mathrm{pk}", "kW", (1, 2000)),
    same("demand_price", "demand price", r"c_\mathrm{d}", "$/kW", (1, 40)),
    same("demand_charge", "demand charge", r"C_\mathrm{d}", "$", (1, 80_000)),
    same("fixed_charge", "fixed charge", r"C_\mathrm{f}", "$", (5, 2000)),
    same("bill", "bill", "B", "$", (5, 900_000)),
    same("average_price", "average price", r"\bar c", "$/kWh", (0.03, 1.50)),
    same("on_peak_hours", "on-peak hours", r"t_\mathrm{on}", "h", (0.5, 4400)),
    same("off_peak_hours", "off-peak hours", r"t_\mathrm{off}", "h", (0.5, 8000)),
    same("on_peak_energy", "on-peak energy", r"E_\mathrm{on}", "kWh", (1, 1_000_000)),
    same("off_peak_energy", "off-peak energy", r"E_\mathrm{off}", "kWh", (1, 2_000_000)),
    same("on_peak_price", "on-peak price", r"c_\mathrm{on}", "$/kWh", (0.08, 0.60)),
    same("off_peak_price", "off-peak price", r"c_\mathrm{off}", "$/kWh", (0.03, 0.30)),
    same("on_peak_cost", "on-peak cost", r"C_\mathrm{on}", "$", (0.1, 500_000)),
    same("off_peak_cost", "off-peak cost", r"C_\mathrm{off}", "$", (0.1, 500_000)),
    same("time_of_use_bill", "time-of-use bill", r"B_\mathrm{tou}", "$", (0.2, 900_000)),
    same("hours_moved", "hours moved off peak", r"t_\mathrm{mv}", "h", (0.5, 4400)),
    same("energy_moved", "energy moved off peak", r"E_\mathrm{mv}", "kWh", (1, 1_000_000)),
    same("price_gap", "price gap", r"\Delta c", "$/kWh", (0.01, 0.5)),
    same("shift_saving", "saving from the move", r"S_\mathrm{mv}", "$", (0.1, 400_000)),
)
