"""Static lift, gauges turned into head, what pipes and fittings take, and the suction side."""

from collections.abc import Iterator

from ..quantity import Quantity, Range, same

__all__ = ["HEAD"]


# Below zero it is the other one: a lift is a flooded suction, a gauge on the suction a vacuum, a
# gauge over the pump is one under it.
ANY = -float("inf")


def head(name: str, label: str, symbol: str, feet: Range, metres: Range, **limits) -> Quantity:
    """A height of water."""
    return Quantity(name, label, symbol, "ft", "m", feet, metres, **limits)


def pressure(name: str, label: str, symbol: str, psi: Range, kpa: Range, **limits) -> Quantity:
    """What a gauge shows."""
    return Quantity(name, label, symbol, "psi", "kPa", psi, kpa, **limits)


def side(name: str, sign: str, below: bool) -> Iterator[Quantity]:
    """One side of a pump: its gauge, where that sits, its pipe, and its head at the pump.

    `below` tells whether its readings may lie below zero, as a vacuum does.
    """
    psi, kpa = ((-14, 250), (-95, 1700)) if below else ((0.5, 250), (3, 1700))
    feet, metres = ((-32, 580), (-10, 180)) if below else ((1, 580), (0.3, 180))
    least = ANY if below else 0.0
    gauge = f"p_\\mathrm{{{sign}}}"
    yield pressure(f"{name}_gauge", f"{name} gauge", gauge, psi, kpa, least=least)
    yield pressure(f"{name}_gauge_now", f"{name} gauge now", f"{gauge}'", psi, kpa, least=least)
    yield head(
        f"{name}_gauge_head",
        f"{name} gauge as head",
        f"H_\\mathrm{{g,{sign}}}",
        feet,
        metres,
        least=least,
    )
    yield head(
        f"{name}_gauge_height",
        f"height of the {name} gauge over the pump",
        f"z_\\mathrm{{{sign}}}",
        (-6, 20),
        (-2, 6),
        least=ANY,
    )
    yield Quantity(
        f"{name}_diameter", f"{name} pipe", f"d_\\mathrm{{{sign}}}", "in", "mm", (1, 48), (25, 1200)
    )
    yield Quantity(
        f"{name}_velocity",
        f"velocity in the {name} pipe",
        f"v_\\mathrm{{{sign}}}",
        "ft/s",
        "m/s",
        (0.3, 25),
        (0.1, 8),
    )
    yield head(
        f"{name}_velocity_head",
        f"velocity head in the {name} pipe",
        f"h_\\mathrm{{v,{sign}}}",
        (0.002, 10),
        (0.0006, 3),
    )
    yield head(f"{name}_head", f"{name} head", f"H_\\mathrm{{{sign}}}", feet, metres, least=least)


SUCTION = (0.3, 35), (0.1, 11)

HEAD = (
    # Levels
    head("discharge_elevation", "discharge elevation", r"z_2", (10, 9000), (3, 2800), least=ANY),
    head(
        "suction_elevation",
        "water elevation at the suction",
        r"z_1",
        (5, 9000),
        (1, 2800),
        least=ANY,
    ),
    head("static_head", "static head", r"H_\mathrm{st}", (2, 450), (0.6, 140)),
    head(
        "static_discharge_head", "static discharge head", r"H_\mathrm{st,d}", (2, 450), (0.6, 140)
    ),
    head("suction_lift", "static suction lift", r"h_\mathrm{sl}", *SUCTION, least=ANY),
    head(
        "static_suction_head",
        "static suction head",
        r"h_\mathrm{ss}",
        (0.5, 60),
        (0.2, 18),
        least=ANY,
    ),
    # Gauges
    *side("discharge", "d", below=False),
    *side("suction", "s", below=True),
    Quantity("pressure_now", "pressure rise now", r"p'", "psi", "kPa", (1, 260), (7, 1800)),
    Quantity("suction_vacuum", "suction vacuum", r"p_\mathrm{v}", "inHg", "kPa", (1, 28), (3, 95)),
    # Pipes and fittings
    Quantity("pipe_diameter", "inside diameter", "d", "in", "mm", (1, 48), (25, 1200)),
    Quantity("pipe_length", "length of the pipe", "L", "ft", "m", (10, 60_000), (3, 18_000)),
    same("c_factor", "C factor", "C", "", (40, 160), most=200),
    Quantity("velocity", "velocity in the pipe", "v", "ft/s", "m/s", (0.3, 20), (0.1, 6)),
    head("velocity_head", "velocity head", r"h_\mathrm{v}", (0.002, 6), (0.0006, 2)),
    Quantity(
        "friction_rate", "friction rate", r"J", "ft/100 ft", "m/100 m", (0.02, 40), (0.02, 40)
    ),
    head("friction_head", "friction head", r"h_\mathrm{f}", (0.3, 400), (0.1, 120)),
    same("elbows", "elbows", "n", "", (1, 30)),
    same("elbow_coefficient", "K of one elbow", r"K_\mathrm{e}", "", (0.1, 2)),
    same("elbows_coefficient", "K of the elbows", r"nK_\mathrm{e}", "", (0.1, 40)),
    same("check_valve_coefficient", "K of the check valve", r"K_\mathrm{c}", "", (0.3, 12)),
    same("gate_valve_coefficient", "K of the gate valve", r"K_\mathrm{v}", "", (0.05, 10)),
    same("outlet_coefficient", "K of the outlet", r"K_\mathrm{o}", "", (0.3, 1.5)),
    same("loss_coefficient", "sum of the K", r"\Sigma K", "", (0.2, 60)),
    head("minor_loss", "minor losses", r"h_\mathrm{m}", (0.02, 80), (0.006, 25)),
    # Parts of the total
    Quantity(
        "outlet_velocity",
        "velocity at the outlet",
        r"v_\mathrm{o}",
        "ft/s",
        "m/s",
        (0.5, 40),
        (0.2, 12),
    ),
    head(
        "outlet_velocity_head",
        "velocity head at the outlet",
        r"h_\mathrm{v,o}",
        (0.004, 25),
        (0.002, 8),
    ),
    pressure(
        "delivery_pressure", "pressure at the delivery", r"p_\mathrm{del}", (0.5, 250), (3, 1700)
    ),
    head("delivery_head", "delivery pressure as head", r"H_\mathrm{del}", (1, 560), (0.3, 175)),
    # The suction side
    head("suction_loss", "loss in the suction pipe", r"h_\mathrm{f,s}", (0.1, 25), (0.03, 8)),
    head("dynamic_suction_lift", "dynamic suction lift", r"h_\mathrm{dsl}", (1, 34), (0.3, 10.5)),
    Quantity("altitude", "altitude", "z", "ft", "m", (0, 9000), (0, 2800), least=ANY),
    head("atmospheric_head", "head of the atmosphere", r"H_\mathrm{a}", (24, 34.5), (7.3, 10.5)),
    head("vapor_head", "vapor head", r"H_\mathrm{vp}", (0.15, 4), (0.04, 1.3)),
    head("npsh_available", "NPSH available", r"\mathrm{NPSH}_\mathrm{a}", (1, 70), (0.3, 21)),
    head("npsh_required", "NPSH required", r"\mathrm{NPSH}_\mathrm{r}", (2, 45), (0.6, 14)),
    head("npsh_margin", "NPSH margin", r"m", (1, 10), (0.3, 3)),
    head("npsh_usable", "NPSH less the margin", r"\mathrm{NPSH}_\mathrm{u}", (0.3, 66), (0.1, 20)),
    head("greatest_lift", "greatest suction lift", r"h_\mathrm{max}", (1, 26), (0.3, 8)),
)
