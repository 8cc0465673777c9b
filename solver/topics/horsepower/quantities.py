"""What a pump does, the three horsepowers and the meter."""

from solver.units.quantity import Both, Quantity, same

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
)  # fmt: skip
