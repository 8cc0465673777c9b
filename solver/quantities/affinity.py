"""Speed and impeller: the affinity laws, slowing down, specific speed, and where curves cross."""

from ..quantity import Quantity, Range, percent, same

__all__ = ["AFFINITY"]

FLOW = ("gpm", "L/s", (5, 24_000), (0.25, 1600))
DIAMETER = ("in", "mm", (2.5, 48), (60, 1200))
POWERS = ("hp", "kW", (0.02, 500), (0.015, 400))
FASTER = -float("inf")  # a pump sped up is cut by less than nothing
RPM = ("rpm", (120, 4300))


def head(name: str, label: str, symbol: str, feet: Range, metres: Range) -> Quantity:
    """A height of water."""
    return Quantity(name, label, symbol, "ft", "m", feet, metres)


ANY_HEAD = (1, 700), (0.3, 210)
SMALL_HEAD = (0.3, 450), (0.1, 140)

AFFINITY = (
    # Another speed, or another impeller
    same("pump_speed", "pump speed", "n", *RPM),
    same("new_speed", "new speed", "n'", *RPM),
    same("speed_ratio", "speed ratio", "r_n", "", (0.25, 2.5)),
    Quantity("impeller_diameter", "impeller diameter", "D", *DIAMETER),
    Quantity("new_diameter", "new diameter", "D'", *DIAMETER),
    same("trim_ratio", "diameter ratio", "r_D", "", (0.6, 1.4)),
    Quantity("new_flow", "new flow", "Q'", *FLOW),
    head("new_head", "new head", "H'", *ANY_HEAD),
    Quantity("new_shaft_power", "new brake power", r"P_\mathrm{b}'", *POWERS),
    # Slowing down
    same("speed_cut", "cut in speed", r"x_n", "%", (0.5, 75), least=FASTER, most=100),
    same("power_ratio", "power ratio", "r_P", "", (0.01, 2)),
    same("power_cut", "share of power saved", r"x_P", "%", (0.5, 99), least=FASTER, most=100),
    same("slowed_power", "input power at the new speed", r"P_\mathrm{in}'", "kW", (0.01, 320)),
    same("flow_ratio", "flow ratio", "r_Q", "", (0.2, 2)),
    head("new_friction", "friction at the new flow", r"h_\mathrm{f}'", *SMALL_HEAD),
    head("system_head", "head at the new flow", r"H_\mathrm{sys}'", *ANY_HEAD),
    Quantity(
        "new_energy_per_volume", "energy per volume at the new speed", "e'",
        "kWh/MG", "kWh/1000 m3", (10, 6000), (2, 1600),
    ),
    head("shutoff_head", "shutoff head", "H_0", *ANY_HEAD),
    head("new_shutoff_head", "shutoff head at the new speed", "H_0'", *ANY_HEAD),
    same("least_speed", "least speed that lifts water", r"n_\mathrm{min}", *RPM),
    percent("static_share", "static share of the head", r"s", (0.5, 100)),
    # The shape of the impeller
    same("stages", "number of stages", "z", "", (1, 30), least=1.0),
    head("stage_head", "head of one stage", r"H_\mathrm{st}", *ANY_HEAD),
    Quantity("specific_speed", "specific speed", r"n_\mathrm{s}", "", "", (300, 20_000), (6, 390)),
    # Curves, and where they cross
    head("rated_head", "rated head", r"H_\mathrm{n}", *ANY_HEAD),
    head("rated_friction", "friction at the rated flow", r"h_\mathrm{n}", *SMALL_HEAD),
    Quantity("known_flow", "flow of the known friction", r"Q_\mathrm{k}", *FLOW),
    head("known_friction", "known friction", r"h_\mathrm{k}", *SMALL_HEAD),
    head("spare_head", "shutoff head less static head", r"\Delta H_0", *ANY_HEAD),
    head("curve_drop", "fall of the pump curve", r"\Delta H", *SMALL_HEAD),
    head("shared_drop", "fall of the curve for two pumps", r"\Delta H_2", (0.1, 120), (0.03, 40)),
    Quantity("parallel_flow", "flow of both pumps", "Q_2", *FLOW),
    Quantity("added_flow", "flow that the second pump adds", r"\Delta Q", *FLOW),
    percent("parallel_gain", "gain in flow", "g", (0.5, 100), most=1000.0),
    percent("head_share", "share of the rated head", "h", (1, 200), most=1000.0),
    head("static_now", "static head now", r"H_\mathrm{st}'", *ANY_HEAD),
    head("static_rise", "rise of the static head", r"\Delta H_\mathrm{st}", *SMALL_HEAD),
)  # fmt: skip
