"""Speed and impeller: the affinity laws, slowing down, specific speed, and where curves cross."""

from solver.units.quantity import Both, Quantity, Range, Text, percent, same

__all__ = ["AFFINITY"]

FLOW = ("gpm", "L/s", (5, 24_000), (0.25, 1600))
DIAMETER = ("in", "mm", (2.5, 48), (60, 1200))
POWERS = ("hp", "kW", (0.02, 500), (0.015, 400))
FASTER = -float("inf")  # a pump sped up is cut by less than nothing
RPM = ("rpm", (120, 4300))


def head(
    name: str, label: Text, symbol: Text, feet: Range, metres: Range, also: str = ""
) -> Quantity:
    """A height of water."""
    return Quantity(name, label, symbol, "ft", "m", feet, metres, also=also)


ANY_HEAD = (1, 700), (0.3, 210)
SMALL_HEAD = (0.3, 450), (0.1, 140)

AFFINITY = (
    # Another speed, or another impeller
    same("pump_speed", "pump speed", "n", *RPM, also="old speed, pump rpm"),
    same("new_speed", "new speed", "n'", *RPM, also="new rpm, reduced speed"),
    same("speed_ratio", "speed ratio", "r_n", "", (0.25, 2.5), also="ratio of speeds"),
    Quantity("impeller_diameter", "impeller diameter", "D", *DIAMETER,
        also="impeller size, old diameter"),
    Quantity("new_diameter", "new impeller diameter", "D'", *DIAMETER,
        also="new diameter, trimmed diameter"),
    same("trim_ratio", "diameter ratio", "r_D", "", (0.6, 1.4), also="trim ratio, impeller ratio"),
    Quantity("new_flow", "new flow", "Q'", *FLOW, also="flow at the new speed"),
    head("new_head", "new head", "H'", *ANY_HEAD, also="pump head at the new speed"),
    Quantity("new_shaft_power", Both("new brake horsepower", "new shaft power"), Both(r"\mathrm{BHP}_2", r"P_\mathrm{b}'"), *POWERS,
        also="new bhp"),
    # Slowing down
    same("speed_cut", "speed reduction", r"x_n", "%", (0.5, 75), least=FASTER, most=100,
        also="cut in speed, percent speed reduction"),
    same("power_ratio", "power ratio", "r_P", "", (0.01, 2), also="ratio of powers"),
    same("power_cut", "percent of power saved", r"x_P", "%", (0.5, 99), least=FASTER, most=100,
        also="share of power saved, power reduction"),
    same("slowed_power", "input power at the new speed", Both(r"\mathrm{kW}_2", r"P_\mathrm{in}'"), "kW", (0.01, 320),
        also="input power when slowed"),
    same("slowing_saved_power", "power saved by slowing down", r"\Delta P_n", "kW", (0.01, 320),
        also="kW saved by slowing down"),
    same("slowing_saved_energy", "energy saved per year by slowing down", r"\Delta E_n", "kWh/year", (5, 2_000_000),
        also="kWh saved per year by slowing down"),
    same("slowing_saving", "savings per year from slowing down", r"S_n", "$/year", (0.5, 900_000),
        also="dollars saved per year by slowing down"),
    same("flow_ratio", "flow ratio", "r_Q", "", (0.2, 2), also="ratio of flows"),
    head("new_friction", "friction loss at the new flow", r"h_\mathrm{f}'", *SMALL_HEAD,
        also="friction at the new flow"),
    head("system_head", "system head at the new flow", r"H_\mathrm{sys}'", *ANY_HEAD,
        also="head at the new flow, system head"),
    Quantity(
        "new_energy_per_volume", Both("energy per million gallons at the new speed", "energy per 1,000 m³ at the new speed"), "e'",
        "kWh/MG", "kWh/1000 m3", (10, 6000), (2, 1600), also="energy per volume at the new speed"),
    head("shutoff_head", "shutoff head", "H_0", *ANY_HEAD,
        also="shut-off head, head at shutoff, dead head"),
    head("new_shutoff_head", "shutoff head at the new speed", "H_0'", *ANY_HEAD,
        also="new shut-off head"),
    same("least_speed", "minimum speed that moves water", r"n_\mathrm{min}", *RPM,
        also="least speed that lifts water, minimum speed"),
    percent("static_share", "percent of the head that is static", r"s", (0.5, 100),
        also="static share of the head"),
    # The shape of the impeller
    same("stages", "number of stages", "z", "", (1, 30), least=1.0, also="pump stages"),
    head("stage_head", "head per stage", r"H_\mathrm{st}", *ANY_HEAD, also="head of one stage"),
    Quantity("specific_speed", "specific speed", r"n_\mathrm{s}", "", "", (300, 20_000), (6, 390),
        also="ns"),
    # Curves, and where they cross
    head("rated_head", "rated head", r"H_\mathrm{n}", *ANY_HEAD,
        also="design head, nameplate head"),
    head("rated_friction", "friction loss at rated flow", r"h_\mathrm{n}", *SMALL_HEAD,
        also="friction at the rated flow"),
    Quantity("known_flow", "flow where the friction loss is known", r"Q_\mathrm{k}", *FLOW,
        also="flow of the known friction"),
    head("known_friction", "known friction loss", r"h_\mathrm{k}", *SMALL_HEAD,
        also="known friction"),
    head("spare_head", "shutoff head above static", r"\Delta H_0", *ANY_HEAD,
        also="shutoff head minus static head, shutoff head less static head, spare head"),
    head("curve_drop", "head drop from shutoff to rated flow", r"\Delta H", *SMALL_HEAD,
        also="fall of the pump curve, curve drop"),
    head("shared_drop", "head drop from shutoff with two pumps", r"\Delta H_2", (0.1, 120), (0.03, 40),
        also="fall of the curve for two pumps"),
    Quantity("parallel_flow", "flow with both pumps", "Q_2", *FLOW,
        also="flow of both pumps, parallel flow"),
    Quantity("added_flow", "flow the second pump adds", r"\Delta Q", *FLOW,
        also="flow that the second pump adds"),
    percent("parallel_gain", "percent gain in flow", "g", (0.5, 100), most=1000.0,
        also="gain in flow"),
    percent("head_share", "percent of rated head", "h", (1, 200), most=1000.0,
        also="share of the rated head"),
    head("static_now", "static head now", r"H_\mathrm{st}'", *ANY_HEAD, also="present static head"),
    head("static_rise", "rise in static head", r"\Delta H_\mathrm{st}", *SMALL_HEAD,
        also="rise of the static head"),
    percent("static_kept", "percent of the earlier static head", r"k_\mathrm{st}", (1, 1000), most=100_000.0,
        also="static head now over static head before"),
)  # fmt: skip
