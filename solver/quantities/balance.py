"""Amps and volts of three legs, and what follows from them."""

from collections.abc import Iterator

from ..quantity import Quantity, percent, same

__all__ = ["BALANCE"]

AMPS = ("A", (1, 300))
VOLTS = ("V", (180, 620))


def rolled(turn: int, when: str) -> Iterator[Quantity]:
    """The amps of the same three legs after the motor leads are rolled."""
    for leg in "ABC":
        yield same(f"amps_{leg.lower()}_{turn}", f"leg {leg}, {when}", f"I_{{{leg}{turn}}}", *AMPS)
    yield same(f"amps_average_{turn}", f"average, {when}", rf"\bar I_{turn}", *AMPS)
    away, share = f"largest deviation, {when}", f"current unbalance, {when}"
    yield same(f"amps_deviation_{turn}", away, rf"\Delta I_{turn}", "A", (0.01, 60))
    yield percent(f"current_unbalance_{turn}", share, f"u_{{I{turn}}}", (0.05, 40))


BALANCE = (
    # Phase balance
    *(same(f"amps_{x}", f"amps on leg {x.upper()}", f"I_{x.upper()}", *AMPS) for x in "abc"),
    same("amps_average", "average amps", r"\bar I", *AMPS),
    same("amps_deviation", "largest deviation in amps", r"\Delta I", "A", (0.01, 60)),
    same("amps_range", "range of amps", "R_I", "A", (0.01, 90)),
    same("amps_highest", "highest leg", r"I_\mathrm{hi}", *AMPS),
    percent("current_unbalance", "current unbalance", r"u_I", (0.05, 40)),
    percent("current_spread", "current spread", r"s_I", (0.1, 60)),
    *(
        same(f"volts_{x}", f"volts {x[0].upper()} to {x[1].upper()}", f"U_{{{x.upper()}}}", *VOLTS)
        for x in ("ab", "bc", "ca")
    ),
    same("volts_average", "average volts", r"\bar U", *VOLTS),
    same("volts_deviation", "largest deviation in volts", r"\Delta U", "V", (0.1, 40)),
    percent("voltage_unbalance", "voltage unbalance", r"u_U", (0.1, 8)),
    percent("derating", "derating", r"k_\mathrm{d}", (74, 100)),
    Quantity("derated_power", "derated power", r"P_\mathrm{d}", "hp", "kW", (0.3, 400), (0.2, 315)),
    same("full_load_amps", "nameplate full-load amps", r"I_\mathrm{fl}", "A", (1, 600)),
    same("service_factor", "service factor", "k_s", "", (1.0, 1.5), least=1.0, most=2.0),
    same("service_factor_amps", "service-factor amps", r"I_\mathrm{sf}", "A", (1, 800)),
    percent("load_amps", "share of full-load amps", r"i", (20, 140), most=1000.0),
    same("balanced_rise", "temperature rise, balanced", r"\Delta T", "°C rise", (30, 130)),
    percent("extra_rise", "extra temperature rise", r"x_T", (0.1, 130), most=1000.0),
    same("added_rise", "degrees added", r"\Delta T_+", "°C rise", (0.05, 100)),
    same("unbalanced_rise", "temperature rise, unbalanced", r"\Delta T_u", "°C rise", (30, 230)),
    *rolled(2, "rolled once"),
    *rolled(3, "rolled twice"),
)
