"""Pump curves and kinds of pumps: the shutoff test, the best point, two pumps, strokes and turns."""

from solver.units.quantity import Quantity, Range, percent, same

__all__ = ["CURVES"]

FLOW = ("gpm", "L/s", (5, 24_000), (0.25, 1600))
DISPLACED = ("gpm", "L/s", (1, 900), (0.05, 60))  # by a displacement pump
SMALL = ("gal", "L", (0.05, 12), (0.2, 45))  # a stroke or a turn
HEADS = (5, 600), (1.5, 180)


def head(
    name: str, label: str, symbol: str, also: str, usual: tuple[Range, Range] = HEADS
) -> Quantity:
    """A height of water."""
    return Quantity(name, label, symbol, "ft", "m", *usual, also=also)


CURVES = (
    # The shutoff test
    Quantity("shutoff_gauge", "discharge gauge at shutoff", r"p_\mathrm{d,0}", "psi", "kPa", (3, 260), (20, 1800),
        also="shutoff pressure, discharge gauge with the valve closed"),
    Quantity("closed_suction", "suction gauge at shutoff", r"p_\mathrm{s,0}", "psi", "kPa", (0.1, 90), (0.7, 600),
        also="suction gauge with the discharge valve closed"),
    head("tested_shutoff", "measured shutoff head", r"H_\mathrm{0,t}", "tested shutoff head, shutoff head by test"),
    head("curve_shutoff", "shutoff head on the pump curve", r"H_\mathrm{0,c}",
        "curve shutoff head, shutoff head of the curve"),
    percent("shutoff_share", "percent of the curve's shutoff head", r"h_0", (10, 200), most=1000.0,
        also="measured shutoff head over the curve's"),
    Quantity("impeller_estimate", "estimated impeller diameter", r"D_\mathrm{est}", "in", "mm", (2.5, 48), (60, 1200),
        also="impeller diameter from the shutoff head"),
    head("shutoff_estimate", "estimated shutoff head", r"H_\mathrm{0,est}", "shutoff head from the impeller diameter"),
    # The best point
    Quantity("best_flow", "flow at the best efficiency point", r"Q_\mathrm{BEP}", *FLOW,
        also="best efficiency flow, BEP flow, best flow"),
    percent("best_share", "percent of the best efficiency flow", r"q_\mathrm{BEP}", (5, 300), most=1000.0,
        also="percent of BEP, percent of BEP flow"),
    # Two pumps
    head("second_head", "head of the second pump", r"H_\mathrm{II}", "second pump head"),
    head("series_head", "head of both pumps in series", r"H_\mathrm{ser}", "head in series", ((10, 1200), (3, 360))),
    Quantity("series_gauge", "discharge gauge after the second pump", r"p_\mathrm{ser}", "psi", "kPa", (10, 560), (70, 3900),
        also="discharge pressure of pumps in series"),
    Quantity("second_flow", "flow of the second pump", r"Q_\mathrm{II}", *FLOW, also="second pump flow"),
    Quantity("combined_flow", "flow of both pumps at the same head", r"Q_\mathrm{both}", *FLOW,
        also="flow in parallel at one head, combined flow"),
    # Strokes and turns
    Quantity("plunger_diameter", "plunger diameter", r"d_\mathrm{p}", "in", "mm", (1, 14), (25, 360),
        also="piston diameter, bore"),
    Quantity("plunger_stroke", "plunger stroke", r"s", "in", "mm", (0.5, 12), (10, 300), also="stroke"),
    Quantity("stroke_volume", "volume per stroke", r"V_\mathrm{s}", *SMALL,
        also="gallons per stroke, liters per stroke, displacement per stroke"),
    same("stroke_rate", "stroke rate", r"n_\mathrm{s}", "strokes/min", (5, 240), also="stroke speed, strokes per minute"),
    same("plungers", "number of plungers", r"N_\mathrm{p}", "", (2, 5), least=1.0, also="how many plungers"),
    Quantity("turn_volume", "volume per turn", r"V_\mathrm{t}", *SMALL,
        also="volume per revolution, displacement per revolution, gallons per revolution"),
    same("rotor_speed", "rotor speed", r"n_\mathrm{r}", "rpm", (10, 450), also="rotor rpm, turns per minute"),
    Quantity("theoretical_output", "theoretical output", r"Q_\mathrm{th}", *DISPLACED,
        also="output without slip, displacement rate, theoretical capacity"),
    percent("volumetric_efficiency", "volumetric efficiency", r"\eta_\mathrm{v}", (40, 100), also="vol eff"),
    Quantity("pd_output", "delivered flow", r"Q_\mathrm{out}", *DISPLACED,
        also="actual output, output of a displacement pump"),
    percent("pump_slip", "percent slip of the pump", r"x_\mathrm{s}", (0.5, 60), also="pump slip, slip of the pump"),
    Quantity("slip_flow", "flow that slips back", r"Q_\mathrm{s}", "gpm", "L/s", (0.02, 300), (0.001, 20),
        also="slip flow, flow lost to slip"),
)  # fmt: skip
