"""The wet well: its sizes and volumes, what flows in and out, and how often its pumps start."""

from collections.abc import Iterator

from ..quantity import Quantity, percent, same

__all__ = ["WET_WELL"]

SIDE = ("ft", "m", (2, 80), (0.6, 25))
DOWN = ("ft", "m", (1, 60), (0.3, 20))
UP = ("ft", "m", (0.3, 40), (0.1, 12))
VOLUME = ("gal", "m3", (20, 300_000), (0.08, 1200))
RATE = ("gpm", "L/s", (1, 12_000), (0.05, 800))
MINUTES = ("min", (0.2, 1500))
SECONDS = ("s", (10, 3600))


def timed(name: str, label: str, sign: str) -> Iterator[Quantity]:
    """A change of level: as measured, in the well's own unit, and as a volume in a timed while."""
    as_read = ("in", "cm", (0.5, 150), (1, 400))
    yield Quantity(f"{name}_read", f"{label} as measured", rf"z_\mathrm{{{sign}}}", *as_read)
    in_the_well = ("ft", "m", (0.04, 15), (0.01, 4))
    yield Quantity(f"{name}_level", label, rf"h_\mathrm{{{sign}}}", *in_the_well)
    yield Quantity(f"{name}_volume", f"volume of the {label}", rf"V_\mathrm{{{sign}}}", *VOLUME)
    yield same(f"{name}_time", f"time of the {label}", rf"t_\mathrm{{{sign}}}", *SECONDS)


def one_closed(pump: int) -> Iterator[Quantity]:
    """The same rise with the discharge valve of one pump closed."""
    when = f"with the valve of pump {pump} closed"
    yield same(f"rise_time_{pump}", f"time of the rise {when}", f"t_{pump}", *SECONDS)
    yield Quantity(f"rise_rate_{pump}", f"rate of rise {when}", f"Q_{pump}", *RATE)


WET_WELL = (
    # Sizes and volumes
    Quantity("well_diameter", "well diameter", "D", *SIDE),
    Quantity("well_length", "well length", "L", *SIDE),
    Quantity("well_width", "well width", "B", *SIDE),
    Quantity("well_area", "well area", "A", "ft2", "m2", (3, 6500), (0.25, 650)),
    Quantity("depth_to_floor", "depth to the floor", r"z_\mathrm{floor}", *DOWN),
    Quantity("depth_to_water", "depth to the water", r"z_\mathrm{water}", *DOWN),
    Quantity("depth_to_overflow", "depth to the overflow", r"z_\mathrm{over}", *DOWN),
    Quantity("water_depth", "water depth", "h", *UP),
    Quantity("well_volume", "volume in the well", "V", *VOLUME),
    Quantity(
        "volume_per_depth", "volume per depth", "v", "gal/ft", "m3/m", (20, 50_000), (0.25, 650)
    ),
    Quantity("on_level", "pump-on level", r"h_\mathrm{on}", *UP),
    Quantity("off_level", "pump-off level", r"h_\mathrm{off}", *UP),
    Quantity("working_depth", "depth between floats", r"h_\mathrm{w}", *UP),
    Quantity("working_volume", "volume between floats", r"V_\mathrm{w}", *VOLUME),
    # What flows in, out and back
    Quantity("inflow", "inflow", r"Q_\mathrm{in}", *RATE),
    *timed("drawdown", "drawdown", "d"),
    Quantity("drawdown_rate", "drawdown rate", r"Q_\mathrm{d}", *RATE),
    *timed("rise", "rise", "r"),
    Quantity("rise_rate", "rate of rise", r"Q_\mathrm{r}", *RATE),
    *timed("closed_rise", "rise with valves closed", "c"),
    Quantity("leakage", "leakage back", r"Q_\mathrm{leak}", "gpm", "L/s", (0.1, 900), (0.005, 60)),
    percent("leak_share", "share of the rise that leaks back", "k", (0.1, 100)),
    *(q for pump in (1, 2) for q in one_closed(pump)),
    Quantity("rated_flow", "rated flow", r"Q_\mathrm{n}", "gpm", "L/s", (10, 12_000), (0.5, 800)),
    percent("flow_share", "share of the rated flow", "q", (1, 200), most=1000.0),
    # Cycles and starts
    same("fill_time", "fill time", r"t_\mathrm{fill}", *MINUTES),
    same("pump_down_time", "pump-down time", r"t_\mathrm{down}", *MINUTES),
    same("cycle_time", "cycle time", "T", *MINUTES),
    same("starts_per_hour", "starts in an hour", "n", "starts/h", (0.05, 120)),
    same("alternating_pumps", "number of pumps taking turns", "N", "", (2, 6), least=1.0),
    same("pump_starts", "starts of each pump in an hour", r"n_\mathrm{p}", "starts/h", (0.02, 60)),
    same("motor_cycle", "time between starts", r"T_\mathrm{m}", *MINUTES),
    same("cycle_floor", "table's lower figure", r"T_1", *MINUTES),
    same("cycle_ceiling", "table's upper figure", r"T_2", *MINUTES),
    same("most_starts", "starts allowed in an hour", r"n_\mathrm{max}", "starts/h", (1, 30)),
    same("least_cycle", "least cycle time", r"T_\mathrm{min}", *MINUTES),
    Quantity("least_volume", "least volume between floats", r"V_\mathrm{min}", *VOLUME),
    Quantity("least_depth", "least depth between floats", r"h_\mathrm{min}", *UP),
    same("sweep_time", "pumping time without inflow", r"t_0", *MINUTES),
    same("shortest_cycle", "shortest cycle", r"T_\mathrm{s}", *MINUTES),
    # Hours, and storage when the power is lost
    Quantity(
        "daily_inflow", "inflow in a day", r"Q_\mathrm{day}", "gpd", "m3/day", (500, 15_000_000),
        (2, 60_000),
    ),
    same("pump_hours", "hours a day of each pump", r"t_\mathrm{p}", "h/day", (0.1, 24), most=24),
    Quantity("storage_depth", "depth up to the overflow", r"h_\mathrm{s}", *UP),
    Quantity("storage_volume", "storage in the well", r"V_\mathrm{s}", *VOLUME),
    Quantity("sewer_storage", "storage in the sewer", r"V_\mathrm{sew}", *VOLUME),
    Quantity("total_storage", "storage in all", r"V_\mathrm{all}", *VOLUME),
    same("storage_time", "time until overflow", r"t_\mathrm{over}", *MINUTES),
)  # fmt: skip
