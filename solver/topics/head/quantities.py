"""Static lift, gauges turned into head, what pipes and fittings take, and the suction side."""

from collections.abc import Iterator

from solver.units.quantity import Both, Quantity, Range, Text, same

__all__ = ["HEAD"]


# Below zero it is the other one: a lift is a flooded suction, a gauge on the suction a vacuum, a
# gauge over the pump is one under it.
ANY = -float("inf")


def head(
    name: str,
    label: Text,
    symbol: Text,
    feet: Range,
    metres: Range,
    least: float = 0.0,
    shorts: Text = "",
    also: str = "",
) -> Quantity:
    """A height of water."""
    return Quantity(
        name, label, symbol, "ft", "m", feet, metres, least=least, shorts=shorts, also=also
    )


def pressure(
    name: str,
    label: Text,
    symbol: Text,
    psi: Range,
    kpa: Range,
    least: float = 0.0,
    also: str = "",
) -> Quantity:
    """What a gauge shows."""
    return Quantity(name, label, symbol, "psi", "kPa", psi, kpa, least=least, also=also)


def side(name: str, sign: str, below: bool) -> Iterator[Quantity]:
    """One side of a pump: its gauge, where that sits, its pipe, and its head at the pump.

    `below` tells whether its readings may lie below zero, as a vacuum does.
    """
    psi, kpa = ((-14, 250), (-95, 1700)) if below else ((0.5, 250), (3, 1700))
    feet, metres = ((-32, 580), (-10, 180)) if below else ((1, 580), (0.3, 180))
    least = ANY if below else 0.0
    gauge = f"p_\\mathrm{{{sign}}}"
    also = f"{name} pressure, {name} gauge reading"
    yield pressure(f"{name}_gauge", f"{name} gauge", gauge, psi, kpa, least=least, also=also)
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
        f"height of the {name} gauge above the pump",
        f"z_\\mathrm{{{sign}}}",
        (-6, 20),
        (-2, 6),
        least=ANY,
    )
    yield Quantity(
        f"{name}_diameter",
        f"{name} pipe diameter",
        f"d_\\mathrm{{{sign}}}",
        "in",
        "mm",
        (1, 48),
        (25, 1200),
        also=f"{name} pipe, {name} pipe size",
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
    head("discharge_elevation", "discharge elevation", r"z_2", (10, 9000), (3, 2800), least=ANY,
        also="elevation of the discharge"),
    head(
        "suction_elevation",
        "suction water elevation",
        r"z_1",
        (5, 9000),
        (1, 2800),
        least=ANY, also="water elevation at the suction, suction elevation"),
    head("static_head", "static head", r"H_\mathrm{st}", (0.5, 450), (0.15, 140),
        also="total static head, static lift"),
    head(
        "static_discharge_head", "static discharge head", r"H_\mathrm{st,d}", (2, 450), (0.6, 140), also="discharge static head"),
    head("suction_lift", "static suction lift", r"h_\mathrm{sl}", *SUCTION, least=ANY, also="lift"),
    head(
        "static_suction_head",
        "static suction head",
        r"h_\mathrm{ss}",
        (0.5, 60),
        (0.2, 18),
        least=ANY, also="flooded suction, suction static head"),
    # Gauges
    *side("discharge", "d", below=False),
    *side("suction", "s", below=True),
    Quantity("pressure_now", "pressure rise now", r"p'", "psi", "kPa", (1, 260), (7, 1800),
        also="present pressure rise"),
    Quantity("suction_vacuum", "suction vacuum", r"p_\mathrm{v}", "inHg", "kPa", (1, 28), (3, 95),
        also="vacuum, vacuum reading, inches of mercury"),
    # Pipes and fittings
    Quantity("pipe_diameter", "pipe inside diameter", "d", "in", "mm", (1, 48), (25, 1200),
        also="inside diameter, pipe id, inside diameter of the pipe"),
    Quantity("pipe_length", "pipe length", "L", "ft", "m", (10, 60_000), (3, 18_000),
        also="length of the pipe, length of the main"),
    same("c_factor", "C factor", "C", "", (40, 160), most=200,
        also="hazen-williams C, hazen-williams coefficient, c value, roughness coefficient"),
    Quantity("velocity", "velocity in the pipe", "v", "ft/s", "m/s", (0.3, 20), (0.1, 6),
        also="pipe velocity, flow velocity"),
    head("velocity_head", "velocity head", r"h_\mathrm{v}", (0.002, 6), (0.0006, 2)),
    Quantity(
        "friction_rate", Both("friction loss per 100 ft", "friction loss per 100 m"), "h_{100}", "ft/100 ft", "m/100 m", (0.02, 40), (0.02, 40), also="friction rate, friction loss per 100 feet, loss per 100 ft, head loss per 100 feet"),
    head("friction_head", "friction loss", r"h_\mathrm{f}", (0.3, 400), (0.1, 120),
        also="friction head, head loss, pipe friction, friction losses"),
    same("elbows", "number of elbows", "n", "", (1, 30), also="how many elbows"),
    same("elbow_coefficient", "K of one elbow", r"K_\mathrm{e}", "", (0.1, 2), also="elbow k"),
    same("elbows_coefficient", "K of all the elbows", r"nK_\mathrm{e}", "", (0.1, 40),
        also="K of the elbows"),
    same("check_valve_coefficient", "K of the check valve", r"K_\mathrm{c}", "", (0.3, 12),
        also="check valve k"),
    same("gate_valve_coefficient", "K of the gate valve", r"K_\mathrm{v}", "", (0.05, 10),
        also="gate valve k"),
    same("outlet_coefficient", "K of the outlet", r"K_\mathrm{o}", "", (0.3, 1.5), also="outlet k"),
    same("loss_coefficient", "total K", r"\Sigma K", "", (0.2, 60),
        also="sum of the K, K factor, total loss coefficient"),
    head("minor_loss", "minor losses", r"h_\mathrm{m}", (0.02, 80), (0.006, 25),
        also="fitting losses, fittings and valves, losses in fittings"),
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
        "delivery_pressure", "delivery pressure", r"p_\mathrm{del}", (0.5, 250), (3, 1700), also="pressure at the delivery, pressure at the outlet"),
    head("delivery_head", "delivery pressure as head", r"H_\mathrm{del}", (1, 560), (0.3, 175),
        also="pressure head at the delivery"),
    # The suction side
    head("suction_loss", "losses in the suction pipe", r"h_\mathrm{f,s}", (0.1, 25), (0.03, 8),
        also="loss in the suction pipe, suction losses, suction friction loss"),
    head("dynamic_suction_lift", "dynamic suction lift", r"h_\mathrm{dsl}", (1, 34), (0.3, 10.5),
        also="total dynamic suction lift, TDSL"),
    Quantity("altitude", "altitude", "z", "ft", "m", (0, 9000), (0, 2800), least=ANY,
        also="height above sea level, feet above sea level"),
    head("atmospheric_head", Both("barometric pressure in feet of water", "barometric pressure in meters of water"), r"H_\mathrm{a}", (24, 34.5), (7.3, 10.5),
        also="head of the atmosphere, barometric pressure, atmospheric pressure, barometric head"),
    head("vapor_head", Both("vapor pressure in feet of water", "vapor pressure in meters of water"), r"H_\mathrm{vp}", (0.15, 4), (0.04, 1.3),
        also="vapor pressure, water vapor pressure"),
    head("npsh_available", "net positive suction head available", r"\mathrm{NPSH}_\mathrm{a}", (1, 70), (0.3, 21), shorts="NPSHa",
        also="NPSH available, available NPSH"),
    head("npsh_required", "net positive suction head required", r"\mathrm{NPSH}_\mathrm{r}", (2, 45), (0.6, 14), shorts="NPSHr",
        also="NPSH required, required NPSH"),
    head("npsh_margin", "NPSH margin", r"m", (1, 10), (0.3, 3), also="suction head margin"),
    head("npsh_usable", "NPSHa minus the margin", r"\mathrm{NPSH}_\mathrm{u}", (0.3, 66), (0.1, 20),
        also="NPSH less the margin"),
    head("greatest_lift", "maximum suction lift", r"h_\mathrm{max}", (1, 26), (0.3, 8),
        also="greatest suction lift, highest suction lift"),
)  # fmt: skip
