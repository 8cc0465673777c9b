"""Force mains and measuring flow: volumes and times, surge, weirs, flumes and meters."""

from solver.units.quantity import Quantity, Range, percent, same

__all__ = ["MAINS"]

FLOW = ("gpm", "L/s", (5, 24_000), (0.3, 1600))
ANY = -float("inf")


def length(
    name: str, label: str, symbol: str, feet: Range, metres: Range, also: str = ""
) -> Quantity:
    """A length or a height of water."""
    return Quantity(name, label, symbol, "ft", "m", feet, metres, also=also)


HEAD_ABOVE = (0.05, 3), (0.015, 0.9)

MAINS = (
    # The main and what is in it
    Quantity("main_volume", "volume of the force main", r"V_\mathrm{m}", "gal", "m3", (30, 500_000), (0.1, 2000),
        also="volume in the main, pipe volume"),
    same("main_time", "time in the force main", r"t_\mathrm{m}", "min", (0.2, 3000),
        also="detention time in the main, travel time"),
    Quantity("cycle_volume", "volume pumped each cycle", r"V_\mathrm{cyc}", "gal", "m3", (20, 150_000), (0.08, 600),
        also="volume per pump cycle"),
    same("clearing_cycles", "cycles to clear the force main", r"N_\mathrm{c}", "", (0.7, 400), also="pump cycles to clear the main"),
    # Surge
    Quantity("wave_speed", "speed of the pressure wave", "a", "ft/s", "m/s", (600, 4900), (180, 1500),
        also="wave speed, celerity, surge wave speed"),
    same("wave_time", "time of the pressure wave there and back", r"t_\mathrm{w}", "s", (0.05, 120),
        also="critical time, critical closing time, wave period"),
    same("closing_time", "closing time of the valve", r"t_\mathrm{cl}", "s", (0.05, 600), also="valve closing time, time to close"),
    same("closing_ratio", "closing ratio", r"r_\mathrm{cl}", "", (0.02, 200), also="closing time over the wave's time"),
    length("surge_head", "surge as head", r"h_\mathrm{s}", (10, 1500), (3, 460), "surge head"),
    Quantity("surge_pressure", "full surge pressure", r"p_\mathrm{s}", "psi", "kPa", (4, 650), (30, 4500),
        also="surge pressure, water hammer pressure"),
    Quantity("slow_surge", "surge pressure of a slow closing", r"p_\mathrm{s}'", "psi", "kPa", (0.5, 600), (4, 4200),
        also="slow closing surge"),
    # Weirs and flumes
    length("weir_head", "head on the weir", r"H_\mathrm{w}", *HEAD_ABOVE, "head over the weir"),
    length("upstream_depth", "depth upstream of the weir", r"y_\mathrm{u}", (0.3, 8), (0.1, 2.5), "upstream depth"),
    length("crest_height", "height of the crest above the floor", r"P", (0.2, 6), (0.06, 1.9), "crest height, weir height"),
    same("notch_angle", "notch angle in degrees", r"\theta", "", (22.5, 120), also="angle of the notch, v-notch angle"),
    same("notch_constant", "constant of the notch", r"K_\theta", "", (200, 2500), also="v-notch constant"),
    length("crest_length", "crest length", r"L_\mathrm{w}", (0.5, 20), (0.15, 6), "weir length, suppressed crest length"),
    length("contracted_crest", "crest length with end contractions", r"L_\mathrm{c}", (0.5, 20), (0.15, 6), "contracted crest length"),
    length("effective_crest", "effective crest length", r"L_\mathrm{e}", (0.3, 20), (0.1, 6), "effective weir length"),
    Quantity("weir_flow", "flow of the weir", r"Q_\mathrm{w}", *FLOW, also="weir flow"),
    Quantity("flume_throat", "throat width of the flume", r"W_\mathrm{t}", "in", "mm", (1, 100), (25, 2500), also="flume size, throat width"),
    same("flume_constant", "constant of the flume", r"C_\mathrm{f}", "", (100, 8000), also="Parshall constant, flume coefficient"),
    same("flume_exponent", "exponent of the flume", r"n_\mathrm{f}", "", (1.5, 1.6), also="Parshall exponent"),
    length("flume_head", "head in the flume", r"h_\mathrm{a}", *HEAD_ABOVE, "upstream head in the flume, ha"),
    length("downstream_head", "downstream head in the flume", r"h_\mathrm{b}", *HEAD_ABOVE, "hb"),
    percent("submergence", "submergence", r"s_\mathrm{b}", (5, 99), also="percent submergence"),
    Quantity("flume_flow", "flow through the flume", r"Q_\mathrm{f}", *FLOW, also="flume flow, Parshall flume flow"),
    # Meters
    Quantity("throat_diameter", "throat or orifice diameter", r"d_\mathrm{t}", "in", "mm", (0.5, 30), (12, 760),
        also="throat diameter, orifice diameter, bore of the orifice"),
    same("meter_ratio", "beta ratio of the meter", r"\beta", "", (0.1, 0.9), also="beta ratio"),
    length("differential_head", "differential head of the meter", r"\Delta h", (0.1, 60), (0.03, 18),
        "differential, meter differential"),
    Quantity("throat_velocity", "ideal velocity in the throat", r"v_\mathrm{t}", "ft/s", "m/s", (2, 70), (0.6, 21)),
    same("discharge_coefficient", "discharge coefficient", r"C_\mathrm{d}", "", (0.55, 1), most=1.1, also="meter coefficient, cd"),
    Quantity("meter_flow", "flow through the meter", r"Q_\mathrm{v}", *FLOW, also="flow by the meter"),
    Quantity("full_flow", "flow at full scale", r"Q_\mathrm{fs}", *FLOW, also="full-scale flow"),
    percent("differential_share", "percent of the full-scale differential", r"x_\mathrm{dp}", (2, 100),
        also="differential in percent, percent differential"),
    Quantity("metered_flow", "flow that the meter reads", r"Q_\mathrm{r}", *FLOW, also="meter reading, metered flow"),
    percent("meter_error", "percent error of the meter", r"e", (-60, 60), least=ANY, most=1000.0, also="meter error"),
)  # fmt: skip
