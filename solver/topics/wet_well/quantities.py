"""The wet well: its sizes and volumes, what flows in and out, and how often its pumps start."""

from collections.abc import Iterator

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["WET_WELL"]

SIDE = ("ft", "m", (2, 80), (0.6, 25))
DOWN = ("ft", "m", (1, 60), (0.3, 20))
APART = ("ft", "m", (0.5, 40), (0.15, 12))  # floats any nearer would chatter
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
    volume = f"volume of the {label}" if " " in label else f"{label} volume"
    time = f"time of the {label}" if " " in label else f"{label} time"
    yield Quantity(f"{name}_volume", volume, rf"V_\mathrm{{{sign}}}", *VOLUME)
    yield same(f"{name}_time", time, rf"t_\mathrm{{{sign}}}", *SECONDS)


def one_closed(pump: int) -> Iterator[Quantity]:
    """The same rise with the discharge valve of one pump closed."""
    when = f"with Pump {pump} valved off"
    yield same(f"rise_time_{pump}", f"rise time {when}", f"t_{pump}", *SECONDS)
    yield Quantity(
        f"rise_rate_{pump}", f"fill rate {when}", f"Q_{pump}", *RATE, also=f"rate of rise {when}"
    )


WET_WELL = (
    # Sizes and volumes
    Quantity("well_diameter", "wet well diameter", "D", *SIDE, also="well diameter"),
    Quantity("well_length", "wet well length", "L", *SIDE, also="well length"),
    Quantity("well_width", "wet well width", "B", *SIDE, also="well width"),
    Quantity("well_area", "wet well area", "A", "ft2", "m2", (3, 6500), (0.25, 650),
        also="well area, surface area of the wet well"),
    Quantity("depth_to_floor", "depth to the floor", r"z_\mathrm{floor}", *DOWN,
        also="distance to the floor"),
    Quantity("depth_to_water", "depth to the water", r"z_\mathrm{water}", *DOWN,
        also="distance to the water"),
    Quantity("depth_to_overflow", "depth to the overflow", r"z_\mathrm{over}", *DOWN,
        also="distance to the overflow"),
    Quantity("water_depth", "water depth", "h", *UP, also="water level, wet well level"),
    Quantity("well_volume", "volume in the wet well", "V", *VOLUME, also="volume in the well"),
    Quantity(
        "volume_per_depth", Both("gallons per foot", "volume per meter of depth"), "v", "gal/ft", "m3/m", (20, 50_000), (0.25, 650), also="volume per depth, gallons per foot of depth"),
    Quantity("on_level", "pump-on level", r"h_\mathrm{on}", *UP,
        also="on float, on level, start level, pump on level"),
    Quantity("off_level", "pump-off level", r"h_\mathrm{off}", *UP,
        also="off float, off level, stop level, pump off level"),
    Quantity("working_depth", "depth between floats", r"h_\mathrm{w}", *UP,
        also="operating depth, depth between on and off"),
    Quantity("working_volume", "volume between floats", r"V_\mathrm{w}", *VOLUME,
        also="operating volume, active volume"),
    # What flows in, out and back
    Quantity("inflow", "inflow", r"Q_\mathrm{in}", *RATE,
        also="influent flow, inflow rate, flow coming in"),
    *timed("drawdown", "drawdown", "d"),
    Quantity("drawdown_rate", "drawdown rate", r"Q_\mathrm{d}", *RATE, also="rate of drawdown"),
    *timed("rise", "rise", "r"),
    Quantity("rise_rate", "fill rate", r"Q_\mathrm{r}", *RATE, also="rate of rise, rise rate"),
    *timed("closed_rise", "rise with valves closed", "c"),
    Quantity("leakage", "check valve leakage", r"Q_\mathrm{leak}", "gpm", "L/s", (0.1, 900), (0.005, 60),
        also="leakage back, backflow, leak-back"),
    percent("leak_share", "percent of the fill rate that leaks back", "k", (0.1, 100),
        also="share of the rise that leaks back"),
    *(q for pump in (1, 2) for q in one_closed(pump)),
    Quantity("rated_flow", "rated flow", r"Q_\mathrm{n}", "gpm", "L/s", (10, 12_000), (0.5, 800),
        also="design flow, nameplate flow"),
    percent("flow_share", "percent of rated flow", "q", (1, 200), most=1000.0,
        also="share of the rated flow"),
    # Cycles and starts
    same("fill_time", "fill time", r"t_\mathrm{fill}", *MINUTES, also="time to fill"),
    same("pump_down_time", "pump-down time", r"t_\mathrm{down}", *MINUTES,
        also="pumpdown time, time to pump down, emptying time"),
    same("cycle_time", "cycle time", "T", *MINUTES, also="pump cycle"),
    same("starts_per_hour", "starts per hour", "n", "starts/h", (0.05, 120),
        also="starts in an hour, starts an hour, cycles per hour"),
    same("alternating_pumps", "number of alternating pumps", "N", "", (2, 6), least=1.0,
        also="number of pumps taking turns"),
    same("pump_starts", "starts per hour for each pump", r"n_\mathrm{p}", "starts/h", (0.02, 60),
        also="starts of each pump in an hour"),
    same("motor_cycle", "time between starts", r"T_\mathrm{m}", *MINUTES,
        also="minutes between starts"),
    same("cycle_floor", "lower cycle time in the table", r"T_1", *MINUTES,
        also="table's lower figure"),
    same("cycle_ceiling", "upper cycle time in the table", r"T_2", *MINUTES,
        also="table's upper figure"),
    same("most_starts", "starts allowed per hour", r"n_\mathrm{max}", "starts/h", (1, 30),
        also="starts allowed in an hour, maximum starts per hour"),
    same("least_cycle", "minimum cycle time", r"T_\mathrm{min}", *MINUTES, also="least cycle time"),
    Quantity("least_volume", "minimum volume between floats", r"V_\mathrm{min}", *VOLUME,
        also="least volume between floats"),
    Quantity("least_depth", "minimum depth between floats", r"h_\mathrm{min}", *APART,
        also="least depth between floats"),
    same("sweep_time", "pump-down time with no inflow", r"t_0", *MINUTES,
        also="pumping time without inflow"),
    same("shortest_cycle", "shortest cycle", r"T_\mathrm{s}", *MINUTES, also="shortest cycle time"),
    # Hours, and storage when the power is lost
    Quantity(
        "daily_inflow", "daily inflow", r"Q_\mathrm{day}", "gpd", "m3/day", (500, 15_000_000),
        (2, 60_000), also="inflow in a day, inflow per day"),
    same("pump_hours", "hours per day for each pump", r"t_\mathrm{p}", "h/day", (0.1, 24), most=24,
        also="hours a day of each pump"),
    Quantity("storage_depth", "depth from the water up to the overflow", r"h_\mathrm{s}", *UP,
        also="depth up to the overflow"),
    Quantity("storage_volume", "storage in the wet well", r"V_\mathrm{s}", *VOLUME,
        also="storage in the well"),
    Quantity("sewer_storage", "storage in the sewer", r"V_\mathrm{sew}", *VOLUME,
        also="storage in the pipe"),
    Quantity("total_storage", "total storage", r"V_\mathrm{all}", *VOLUME, also="storage in all"),
    same("storage_time", "time until overflow", r"t_\mathrm{over}", *MINUTES,
        also="time to overflow, overflow time"),
)  # fmt: skip
