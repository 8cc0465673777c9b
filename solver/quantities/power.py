"""The pump, the three horsepowers and the efficiencies between them."""

from ..quantity import Quantity, percent, same

__all__ = ["POWER"]

POWERS = ("hp", "kW", (0.05, 400), (0.04, 300))

POWER = (
    # What the pump does
    Quantity("flow", "flow", "Q", "gpm", "L/s", (10, 12000), (0.5, 800)),
    Quantity("daily_flow", "daily flow", "Q_d", "MGD", "m3/day", (0.01, 18), (40, 70000)),
    Quantity("head", "head", "H", "ft", "m", (5, 500), (1.5, 150)),
    Quantity("pressure", "pressure rise", "p", "psi", "kPa", (2, 220), (14, 1500)),
    # The three horsepowers, and the meter
    Quantity("water_power", "water power", r"P_\mathrm{w}", *POWERS),
    Quantity("brake_power", "brake power", r"P_\mathrm{b}", *POWERS),
    Quantity("motor_output", "motor output", r"P_\mathrm{out}", *POWERS),
    Quantity("motor_power", "motor power", r"P_\mathrm{m}", *POWERS),
    same("input_power", "input power", r"P_\mathrm{in}", "kW", (0.04, 320)),
    Quantity("motor_size", "motor size", r"P_\mathrm{n}", "hp", "kW", (0.5, 400), (0.37, 315)),
    percent("motor_load", "motor load", r"\ell", (20, 115), most=200.0),
    # Efficiencies
    percent("pump_efficiency", "pump efficiency", r"\eta_\mathrm{p}", (45, 85)),
    percent("motor_efficiency", "motor efficiency", r"\eta_\mathrm{m}", (70, 97)),
    percent("drive_efficiency", "drive efficiency", r"\eta_\mathrm{d}", (65, 99)),
    percent("overall_efficiency", "wire-to-water efficiency", r"\eta_\mathrm{o}", (28, 82)),
)
