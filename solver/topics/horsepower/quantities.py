"""The pump, the three horsepowers and the efficiencies between them."""

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["POWER"]

POWERS = ("hp", "kW", (0.05, 400), (0.04, 300))

POWER = (
    # What the pump does
    Quantity("flow", "flow", "Q", "gpm", "L/s", (10, 12000), (0.5, 800),
        also="flow rate, capacity, pumping rate"),
    Quantity("daily_flow", "daily flow", "Q_d", "MGD", "m3/day", (0.01, 18), (40, 70000),
        also="flow in MGD, million gallons per day"),
    Quantity("head", "total dynamic head", Both(r"\mathrm{TDH}", "H"), "ft", "m", (5, 500), (1.5, 150), shorts="TDH",
        also="head, total head, pump head, dynamic head"),
    Quantity("pressure", "pressure rise", "p", "psi", "kPa", (2, 220), (14, 1500),
        also="differential pressure, pressure across the pump, pressure boost"),
    # The three horsepowers, and the meter
    Quantity("water_power", Both("water horsepower", "water power"), Both(r"\mathrm{WHP}", r"P_\mathrm{w}"), *POWERS, shorts=Both("WHP", ""),
        also="water hp, hydraulic horsepower, hydraulic power, output of the pump"),
    Quantity("brake_power", Both("brake horsepower", "shaft power"), Both(r"\mathrm{BHP}", r"P_\mathrm{b}"), *POWERS, shorts=Both("BHP", ""),
        also="brake hp, shaft horsepower, shaft hp, pump horsepower, power at the shaft"),
    Quantity("motor_output", Both("motor output horsepower", "motor output power"), Both(r"\mathrm{HP}_\mathrm{out}", r"P_\mathrm{out}"), *POWERS,
        also="motor shaft horsepower, motor shaft power"),
    Quantity("motor_power", Both("motor horsepower", "motor input power"), Both(r"\mathrm{MHP}", r"P_\mathrm{m}"), *POWERS, shorts=Both("MHP", ""),
        also="motor hp, input horsepower, electrical horsepower, ehp, horsepower into the motor"),
    same("input_power", "input power", Both(r"\mathrm{kW}", r"P_\mathrm{in}"), "kW", (0.04, 320), shorts=Both("kW", ""),
        also="input kilowatts, kilowatts at the meter, electric power, power draw"),
    Quantity("motor_size", Both("nameplate horsepower", "nameplate power"), Both(r"\mathrm{HP}_\mathrm{np}", r"P_\mathrm{n}"), "hp", "kW", (0.5, 400), (0.37, 315),
        also="rated horsepower, motor rating, rated power, nameplate hp"),
    percent("motor_load", "motor load", Both(r"\mathrm{Load}", r"\ell"), (20, 115), most=200.0,
        also="motor loading, percent load"),
    # Efficiencies
    percent("pump_efficiency", "pump efficiency", Both(r"\mathrm{Eff}_\mathrm{pump}", r"\eta_\mathrm{p}"), (45, 85),
        also="pump eff"),
    percent("motor_efficiency", "motor efficiency", Both(r"\mathrm{Eff}_\mathrm{motor}", r"\eta_\mathrm{m}"), (70, 97),
        also="motor eff"),
    percent("drive_efficiency", "drive efficiency", Both(r"\mathrm{Eff}_\mathrm{drive}", r"\eta_\mathrm{d}"), (65, 99),
        also="drive eff, belt efficiency, vfd efficiency"),
    percent("overall_efficiency", "wire-to-water efficiency", Both(r"\mathrm{Eff}_\mathrm{ww}", r"\eta_\mathrm{o}"), (28, 82),
        also="wire to water efficiency, overall plant efficiency, plant efficiency, ope, overall eff"),
)  # fmt: skip
