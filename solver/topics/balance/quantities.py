"""Amps and volts of three legs, and what follows from them."""

from collections.abc import Iterator

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["BALANCE"]

AMPS = ("A", (1, 300))
VOLTS = ("V", (180, 620))


def rolled(turn: int, when: str) -> Iterator[Quantity]:
    """The amps of the same three legs after the motor leads are rolled."""
    for leg in "ABC":
        label, also = f"amps on leg {leg}, {when}", f"leg {leg} {when}"
        yield same(f"amps_{leg.lower()}_{turn}", label, f"I_{{{leg}{turn}}}", *AMPS, also=also)
    average, away = f"average amps, {when}", f"largest deviation from average amps, {when}"
    yield same(f"amps_average_{turn}", average, rf"\bar I_{turn}", *AMPS)
    yield same(f"amps_deviation_{turn}", away, rf"\Delta I_{turn}", "A", (0.01, 60))
    share, sign = f"current unbalance, {when}", Both(rf"\%_{{I{turn}}}", f"u_{{I{turn}}}")
    yield percent(f"current_unbalance_{turn}", share, sign, (0.05, 40))


def leg_amps(leg: str) -> Quantity:
    """The amps of one leg, such as "a"."""
    label, also = f"amps on leg {leg.upper()}", f"leg {leg} amps, leg {leg}, phase {leg} amps"
    return same(f"amps_{leg}", label, f"I_{leg.upper()}", *AMPS, also=also)


def leg_volts(one: str, other: str) -> Quantity:
    """The volts between two legs, such as "a" and "b"."""
    legs, one, other = one + other, one.upper(), other.upper()
    also = f"volts {one}-{other}, {one}-{other} volts, {legs} volts, volts {legs}"
    symbol = Both(f"V_{{{one}{other}}}", f"U_{{{one}{other}}}")
    return same(f"volts_{legs}", f"volts {one} to {other}", symbol, *VOLTS, also=also)


BALANCE = (
    # Phase balance
    *map(leg_amps, "abc"),
    same("amps_average", "average amps", r"\bar I", *AMPS,
        also="average current, average of the legs"),
    same("amps_deviation", "largest deviation from average amps", r"\Delta I", "A", (0.01, 60),
        also="largest deviation in amps, greatest deviation in amps, maximum amp deviation"),
    same("amps_range", "difference between high and low leg", "R_I", "A", (0.01, 90),
        also="amp spread, range of amps, high leg minus low leg, spread of the legs"),
    same("amps_highest", "amps on the highest leg", r"I_\mathrm{hi}", *AMPS,
        also="highest leg, high leg, highest amps"),
    percent("current_unbalance", "current unbalance", Both(r"\%_I", r"u_I"), (0.05, 40),
        also="amp unbalance, current imbalance, amp imbalance, percent current unbalance"),
    percent("current_spread", "current spread", r"s_I", (0.1, 60),
        also="percent spread, spread in percent"),
    *map(leg_volts, "abc", "bca"),
    same("volts_average", "average volts", Both(r"\bar V", r"\bar U"), *VOLTS,
        also="average voltage"),
    same("volts_deviation", "largest deviation from average volts", Both(r"\Delta V", r"\Delta U"), "V", (0.1, 40),
        also="largest deviation in volts, greatest deviation in volts, maximum volt deviation"),
    percent("voltage_unbalance", "voltage unbalance", Both(r"\%_V", r"u_U"), (0.1, 8),
        also="volt unbalance, voltage imbalance, percent voltage unbalance"),
    percent("derating", "derating factor", r"k_\mathrm{d}", (74, 100),
        also="derating, motor derating"),
    Quantity("derated_power", Both("derated horsepower", "derated power"), Both(r"\mathrm{HP}_\mathrm{d}", r"P_\mathrm{d}"), "hp", "kW", (0.3, 400), (0.2, 315),
        also="derated hp"),
    same("full_load_amps", "full-load amps", Both(r"\mathrm{FLA}", r"I_\mathrm{fl}"), "A", (1, 600), shorts="FLA",
        also="nameplate full-load amps, full load amps, nameplate amps, rated amps"),
    same("service_factor", "service factor", Both(r"\mathrm{SF}", "k_s"), "", (1.0, 1.5), least=1.0, most=2.0, shorts="SF",
        also="motor service factor"),
    same("service_factor_amps", "service-factor amps", Both(r"\mathrm{SFA}", r"I_\mathrm{sf}"), "A", (1, 800), shorts="SFA",
        also="service factor amps"),
    percent("load_amps", "percent of full-load amps", r"i", (20, 140), most=1000.0,
        also="share of full-load amps, percent of FLA, percent of nameplate amps"),
    same("balanced_rise", "temperature rise with balanced voltage", r"\Delta T", "°C rise", (30, 130),
        also="temperature rise, balanced temperature rise"),
    percent("extra_rise", "extra temperature rise", r"x_T", (0.03, 130), most=1000.0,
        also="percent extra temperature rise"),
    same("added_rise", "added temperature rise", r"\Delta T_+", "°C rise", (0.01, 100),
        also="degrees added"),
    same("unbalanced_rise", "temperature rise with unbalanced voltage", r"\Delta T_u", "°C rise", (30, 230),
        also="unbalanced temperature rise"),
    *rolled(2, "rolled once"),
    *rolled(3, "rolled twice"),
)  # fmt: skip
