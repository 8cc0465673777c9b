"""The same flow, pressure, volume or power in another unit, and shares of a whole."""

from ..quantity import Quantity, percent, same

__all__ = ["CONVERSIONS"]

VOLUME = ("gal", "m3", (20, 5_000_000), (0.1, 20_000))

CONVERSIONS = (
    # Flow
    Quantity(
        "flow_per_second", "flow a second", r"Q_\mathrm{s}", "cfs", "m3/s", (0.02, 27), (5e-4, 0.8)
    ),
    Quantity(
        "flow_per_hour", "flow an hour", r"Q_\mathrm{h}", "gph", "m3/h", (600, 720_000), (1.8, 2900)
    ),
    Quantity(
        "flow_per_day",
        "flow a day",
        r"Q_\mathrm{day}",
        "gpd",
        "ML/day",
        (14_000, 18_000_000),
        (0.04, 70),
    ),
    Quantity("earlier_flow", "flow before", r"Q_1", "gpm", "L/s", (10, 12_000), (0.5, 800)),
    Quantity("flow_drop", "drop in flow", r"\Delta Q", "gpm", "L/s", (0.2, 4000), (0.01, 250)),
    percent("flow_drop_share", "drop in percent", r"d_Q", (1, 60)),
    # Pressure
    Quantity(
        "gauge_pressure", "gauge pressure", r"p_\mathrm{g}", "psi", "kPa", (2, 220), (14, 1500)
    ),
    Quantity("second_scale", "second scale", r"p_2", "kPa", "bar", (14, 1500), (0.14, 15)),
    Quantity("water_height", "height of the water", r"h", "ft", "m", (4, 500), (1.4, 150)),
    Quantity("tank_depth", "depth in the tank", r"h_\mathrm{w}", "ft", "m", (4, 500), (1.4, 150)),
    Quantity("tap_height", "height of the gauge", r"h_\mathrm{g}", "ft", "m", (0.5, 30), (0.1, 10)),
    # Volume and weight
    Quantity("water_volume", "volume of the water", r"V_\mathrm{w}", *VOLUME),
    Quantity("tank_volume", "volume of the full tank", r"V_\mathrm{t}", *VOLUME),
    Quantity("empty_volume", "empty volume", r"V_\mathrm{e}", *VOLUME),
    Quantity(
        "volume_converted",
        "volume in the other unit",
        r"V_2",
        "ft3",
        "L",
        (3, 700_000),
        (100, 20_000_000),
    ),
    Quantity(
        "water_weight",
        "weight of the water",
        "W",
        "lb",
        "kg",
        (150, 45_000_000),
        (100, 20_000_000),
    ),
    percent("percent_full", "share that is full", "f", (1, 99)),
    # Power
    same("horsepower_rating", "rating in horsepower", r"P_\mathrm{hp}", "hp", (0.4, 450)),
    same("kilowatt_rating", "rating in kilowatts", r"P_\mathrm{kW}", "kW", (0.3, 330)),
    Quantity(
        "shaft_work",
        "rate of work at the shaft",
        r"\dot W_\mathrm{s}",
        "ft-lb/min",
        "W",
        (13_000, 15_000_000),
        (300, 330_000),
    ),
    Quantity("weight_flow", "weight moved", r"\dot W", "lb/min", "N/s", (80, 100_000), (5, 8000)),
    Quantity(
        "lifting_work",
        "rate of work on the water",
        r"\dot W_\mathrm{w}",
        "ft-lb/min",
        "W",
        (1600, 14_000_000),
        (40, 320_000),
    ),
)
