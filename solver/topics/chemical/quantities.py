"""Chemical feed: doses, pounds a day, solutions, and what a feed pump is set to."""

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["CHEMICAL"]

PER_DAY = ("lb/day", "kg/day", (1, 30_000), (0.5, 14_000))
SOLUTION = ("gal", "L", (0.2, 12_000), (1, 45_000))

CHEMICAL = (
    same("dose", "dose", "C", "mg/L", (0.3, 300), also="dosage, chemical dose, feed concentration"),
    same("chlorine_demand", "chlorine demand", r"C_\mathrm{d}", "mg/L", (0.2, 60), also="demand of the water"),
    same("chlorine_residual", "chlorine residual", r"C_\mathrm{r}", "mg/L", (0.1, 20), also="residual"),
    Quantity("chemical_feed", Both("pounds of chemical per day", "chemical per day"), r"W", *PER_DAY,
        also="chemical feed, pounds per day, feed rate in pounds, active chemical per day"),
    percent("solution_strength", "strength of the solution", "s", (0.05, 100),
        also="solution strength, percent strength, strength, active strength"),
    same("specific_gravity", "specific gravity", r"\mathrm{SG}", "", (0.8, 1.9), shorts="SG", also="sp gr"),
    Quantity("solution_weight", Both("weight of the solution per gallon", "density of the solution"),
        Both("w", r"\rho_\mathrm{s}"), "lb/gal", "kg/m3", (6.7, 16), (800, 1900), also="pounds per gallon, weight of the solution"),
    Quantity("solution_feed", Both("pounds of solution per day", "weight of solution per day"), r"W_\mathrm{s}", *PER_DAY,
        also="solution per day by weight"),
    Quantity("solution_flow", "solution fed per day", r"Q_\mathrm{s}", "gpd", "L/day", (0.5, 6000), (2, 23_000),
        also="solution per day, gallons of solution per day, solution used per day"),
    Quantity("solution_hour", "solution fed per hour", r"Q_\mathrm{h}", "gph", "L/h", (0.02, 250), (0.08, 950),
        also="solution per hour, gallons per hour of solution, feed pump output"),
    same("solution_minute", "solution fed per minute", r"Q_\mathrm{m}", "mL/min", (1, 16_000),
        also="solution per minute, milliliters per minute, feed pump setting"),
    Quantity("feeder_capacity", "feed pump capacity", r"Q_\mathrm{max}", "gph", "L/h", (0.2, 300), (0.8, 1200),
        also="capacity of the feed pump, maximum output, rated output of the feed pump"),
    percent("stroke_setting", "stroke setting", r"k_\mathrm{s}", (10, 100), also="percent stroke, stroke of the feed pump"),
    percent("speed_setting", "speed setting", r"k_\mathrm{n}", (5, 100),
        also="stroking speed, percent speed, frequency setting"),
    percent("new_speed_setting", "new speed setting", r"k_\mathrm{n}'", (5, 100), most=1000.0,
        also="new stroking speed, new percent speed"),
    same("wanted_minute", "solution wanted per minute", r"Q_\mathrm{m}'", "mL/min", (1, 16_000),
        also="wanted output, wanted milliliters per minute"),
    percent("capacity_share", "percent of the pump's capacity", r"k", (1, 300), most=1000.0,
        also="share of the capacity"),
    same("cylinder_volume", "volume drawn from the cylinder", r"V_\mathrm{c}", "mL", (5, 5000),
        also="cylinder drop, calibration volume, milliliters drawn"),
    same("cylinder_time", "time of the drawdown", r"t_\mathrm{c}", "s", (10, 600), also="calibration time"),
    Quantity("solution_on_hand", "solution on hand", r"V_\mathrm{s}", *SOLUTION,
        also="solution in the tank, solution left, solution in storage"),
    same("days_of_supply", "days of supply", r"n_\mathrm{s}", "day", (0.2, 200), also="days on hand, days until empty"),
    # Dilution
    percent("strong_strength", "strength of the strong solution", r"s_1", (1, 60), also="stock strength"),
    percent("mixed_strength", "strength of the mixed solution", r"s_2", (0.1, 40), also="diluted strength"),
    Quantity("strong_volume", "volume of the strong solution", r"V_1", *SOLUTION, also="stock volume"),
    Quantity("mixed_volume", "volume of the mixed solution", r"V_2", *SOLUTION, also="diluted volume, batch volume"),
    Quantity("added_water", "water to add", r"V_\mathrm{w}", *SOLUTION, also="dilution water"),
)  # fmt: skip
