"""Insulation to ground, and the resistance of the windings themselves.

Winding temperatures are in °C in both systems: IEEE 43 and the meters work in it.
"""

from collections.abc import Iterator

from solver.units.quantity import Both, Quantity, percent, same

__all__ = ["INSULATION"]

MEGOHMS = ("megohm", (0.1, 20_000))
CELSIUS = ("°C", (1, 95))
OHMS = ("ohm", (0.02, 60))


def tested(turn: str) -> Iterator[Quantity]:
    """A one-minute reading, its winding temperature, and the reading brought to 40 °C."""
    sign, earlier = ("b", "earlier ") if turn else ("", "")
    resistance, temperature = f"{earlier}insulation resistance", f"{earlier}winding temperature"
    yield same(
        f"insulation{turn}",
        resistance,
        f"R_{{{sign or 'i'}}}",
        *MEGOHMS,
        also=f"{earlier}resistance to ground, {earlier}megohm reading, {earlier}insulation reading",
    )
    yield same(
        f"winding_temperature{turn}", temperature, f"T_{{{sign or 'w'}}}", *CELSIUS,
        least=-273.15, also=f"{earlier}motor temperature",
    )  # fmt: skip
    yield same(
        f"insulation_at_40{turn}",
        f"{resistance} at 40 °C",
        f"R_{{40{sign}}}",
        *MEGOHMS,
        also=f"{earlier}insulation at 40 °C, {earlier}corrected insulation resistance",
    )


def between_leads(one: str, other: str) -> Quantity:
    """The winding resistance between two leads, such as "1" and "2"."""
    leads = one + other
    also = f"ohms {one} to {other}, ohms {one}-{other}, T{one} to T{other}"
    label = f"winding resistance {one} to {other}"
    return same(f"ohms_{leads}", label, f"R_{{{leads}}}", *OHMS, also=also)


INSULATION = (
    *tested(""),
    *tested("_before"),
    percent("insulation_kept", "percent of the earlier reading", "k_R", (2, 400), most=100_000.0,
        also="share of the earlier reading, percent of last year's reading"),
    # The test
    same("test_volts", "test voltage", Both(r"V_\mathrm{t}", r"U_\mathrm{t}"), "V", (250, 10_000),
        also="test volts, dc test voltage"),
    same("leakage_current", "leakage current", r"I_\mathrm{L}", "µA", (0.05, 5000),
        also="insulation leakage, current to ground"),
    same("rated_kilovolts", "nameplate voltage in kV", Both(r"V_\mathrm{kV}", r"U_\mathrm{kV}"), "kV", (0.18, 14),
        also="nameplate kilovolts, rated kV, kV rating"),
    same("least_insulation", "minimum insulation resistance, kV + 1 rule", r"R_\mathrm{min}", "megohm", (1, 16),
        also="least insulation by kV + 1, minimum insulation resistance, minimum megohms"),
    same("test_time", "test time", r"t_\mathrm{t}", "min", (0.5, 10), also="time of the test"),
    same("ground_time", "minimum time grounded", r"t_\mathrm{g}", "min", (2, 40),
        also="least time on ground, discharge time"),
    same("time_grounded", "time grounded", "t", "min", (0.5, 90), also="time on ground"),
    same("times_grounded", "time grounded divided by test time", "n_t", "", (0.3, 10),
        also="time on ground over test time"),
    # Readings within one test
    same("insulation_30s", "insulation resistance at 30 seconds", "R_{30}", *MEGOHMS,
        also="insulation at 30 s, 30 second reading"),
    same("insulation_1min", "insulation resistance at 1 minute", "R_1", *MEGOHMS,
        also="insulation at 1 min, one minute reading"),
    same("insulation_10min", "insulation resistance at 10 minutes", "R_{10}", *MEGOHMS,
        also="insulation at 10 min, ten minute reading"),
    same("leakage_1min", "leakage current at 1 minute", "I_1", "µA", (0.05, 5000),
        also="leakage at 1 min"),
    same("leakage_10min", "leakage current at 10 minutes", "I_{10}", "µA", (0.02, 5000),
        also="leakage at 10 min"),
    same("leakage_30s", "leakage current at 30 seconds", "I_{30}", "µA", (0.05, 5000),
        also="leakage at 30 s"),
    same("polarization_index", "polarization index", r"\mathrm{PI}", "", (0.4, 10), shorts="PI",
        also="polarisation index"),
    same("absorption_ratio", "dielectric absorption ratio", r"\mathrm{DAR}", "", (0.4, 3), shorts="DAR"),
    # Winding resistance, between two leads each time
    *map(between_leads, "123", "231"),
    same("ohms_average", "average winding resistance", r"\bar R", *OHMS,
        also="average ohms, average resistance"),
    same("ohms_deviation", "largest deviation from average ohms", r"\Delta R", "ohm", (0.0001, 10),
        also="largest deviation in ohms, greatest deviation in ohms, maximum ohm deviation"),
    same("ohms_healthy", "healthy winding resistance", r"R_\mathrm{h}", *OHMS,
        also="ohms when healthy, healthy ohms, winding resistance when new"),
    percent("ohms_share", "percent of healthy resistance", "k_h", (5, 400), most=100_000.0,
        also="average ohms over the healthy"),
    percent("resistance_unbalance", "resistance unbalance", Both(r"\%_R", "u_R"), (0.05, 60),
        also="resistance imbalance, ohm unbalance, winding resistance unbalance"),
)  # fmt: skip
