"""The same flow, pressure, volume or power in another unit, and shares of a whole."""

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["CONVERSIONS"]

VOLUME = ("gal", "m3", (20, 5_000_000), (0.1, 20_000))

CONVERSIONS = (
    # Flow
    Quantity(
        "flow_per_second", "flow per second", r"Q_\mathrm{s}", "cfs", "m3/s", (0.02, 27), (5e-4, 0.8), also="flow a second, cubic feet per second, flow in cfs"),
    Quantity(
        "flow_per_hour", "flow per hour", r"Q_\mathrm{h}", "gph", "m3/h", (600, 720_000), (1.8, 2900), also="flow an hour, gallons per hour"),
    Quantity(
        "flow_per_day",
        "flow per day",
        r"Q_\mathrm{day}",
        "gpd",
        "ML/day",
        (14_000, 18_000_000),
        (0.04, 70), also="flow a day, gallons per day"),
    Quantity("earlier_flow", "earlier flow", r"Q_1", "gpm", "L/s", (10, 12_000), (0.5, 800),
        also="flow before, old flow"),
    Quantity("flow_drop", "drop in flow", r"\Delta Q", "gpm", "L/s", (0.2, 4000), (0.01, 250),
        also="loss of flow"),
    percent("flow_drop_share", "percent drop in flow", r"d_Q", (1, 60),
        also="drop in percent, flow lost in percent"),
    # Pressure
    Quantity(
        "gauge_pressure", "gauge pressure", r"p_\mathrm{g}", "psi", "kPa", (2, 220), (14, 1500), also="psig"),
    Quantity("second_scale", Both("pressure in kPa", "pressure in bar"), r"p_2", "kPa", "bar", (14, 1500), (0.14, 15),
        also="second scale"),
    Quantity("water_height", "height of water", r"h", "ft", "m", (4, 500), (1.4, 150),
        also="height of the water, feet of water"),
    Quantity("tank_depth", "water depth in the tank", r"h_\mathrm{w}", "ft", "m", (4, 500), (1.4, 150),
        also="depth in the tank, tank level"),
    Quantity("tap_height", "height of the gauge above the tank floor", r"h_\mathrm{g}", "ft", "m", (0.5, 30), (0.1, 10),
        also="height of the gauge, gauge height"),
    # Volume and weight
    Quantity("water_volume", "volume of water", r"V_\mathrm{w}", *VOLUME,
        also="volume of the water"),
    Quantity("tank_volume", "tank capacity", r"V_\mathrm{t}", *VOLUME,
        also="volume of the full tank"),
    Quantity("empty_volume", "empty volume", r"V_\mathrm{e}", *VOLUME,
        also="empty space in the tank"),
    Quantity(
        "volume_converted",
        Both("volume in cubic feet", "volume in liters"),
        r"V_2",
        "ft3",
        "L",
        (3, 700_000),
        (100, 20_000_000), also="volume in the other unit"),
    Quantity(
        "water_weight",
        "weight of water",
        "W",
        "lb",
        "kg",
        (150, 45_000_000),
        (100, 20_000_000), also="weight of the water, pounds of water"),
    percent("percent_full", "percent full", "f", (1, 99), also="share that is full"),
    # Power
    same("horsepower_rating", "horsepower rating", Both(r"\mathrm{HP}", r"P_\mathrm{hp}"), "hp", (0.4, 450),
        also="rating in horsepower"),
    same("kilowatt_rating", "kilowatt rating", r"P_\mathrm{kW}", "kW", (0.3, 330),
        also="rating in kilowatts"),
    Quantity(
        "shaft_work",
        "rate of work at the shaft",
        r"\dot W_\mathrm{s}",
        "ft-lb/min",
        "W",
        (13_000, 15_000_000),
        (300, 330_000), also="foot-pounds per minute at the shaft"),
    Quantity("weight_flow", Both("weight of water moved per minute", "weight of water moved per second"), r"\dot W", "lb/min", "N/s", (80, 100_000), (5, 8000),
        also="weight moved, pounds per minute"),
    Quantity(
        "lifting_work",
        "rate of work on the water",
        r"\dot W_\mathrm{w}",
        "ft-lb/min",
        "W",
        (1600, 14_000_000),
        (40, 320_000), also="foot-pounds per minute on the water"),
)  # fmt: skip
