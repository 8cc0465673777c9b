"""Insulation to ground, and the resistance of the windings themselves.

Winding temperatures are in °C in both systems: IEEE 43 and the meters work in it.
"""

from collections.abc import Iterator

from ..quantity import Quantity, percent, same

__all__ = ["INSULATION"]

MEGOHMS = ("megohm", (0.1, 20_000))
CELSIUS = ("°C", (1, 95))
OHMS = ("ohm", (0.02, 60))


def tested(turn: str, when: str) -> Iterator[Quantity]:
    """A one-minute reading, its winding temperature, and the reading brought to 40 °C."""
    sign = "b" if turn else ""
    yield same(
        f"insulation{turn}", f"insulation resistance{when}", f"R_{{{sign or 'i'}}}", *MEGOHMS
    )
    yield same(
        f"winding_temperature{turn}", f"winding temperature{when}", f"T_{{{sign or 'w'}}}", *CELSIUS,
        least=-273.15,
    )  # fmt: skip
    yield same(f"insulation_at_40{turn}", f"insulation at 40 °C{when}", f"R_{{40{sign}}}", *MEGOHMS)


INSULATION = (
    *tested("", ""),
    *tested("_before", " before"),
    percent("insulation_kept", "share of the earlier reading", "k_R", (2, 400), most=100_000.0),
    # The test
    same("test_volts", "test volts", r"U_\mathrm{t}", "V", (250, 10_000)),
    same("leakage_current", "leakage current", r"I_\mathrm{L}", "µA", (0.05, 5000)),
    same("rated_kilovolts", "nameplate kilovolts", r"U_\mathrm{kV}", "kV", (0.18, 14)),
    same("least_insulation", "least insulation by kV + 1", r"R_\mathrm{min}", "megohm", (1, 16)),
    same("test_time", "test time", r"t_\mathrm{t}", "min", (0.5, 10)),
    same("ground_time", "least time on ground", r"t_\mathrm{g}", "min", (2, 40)),
    same("time_grounded", "time on ground", "t", "min", (0.5, 90)),
    same("times_grounded", "time on ground over test time", "n_t", "", (0.3, 10)),
    # Readings within one test
    same("insulation_30s", "insulation at 30 s", "R_{30}", *MEGOHMS),
    same("insulation_1min", "insulation at 1 min", "R_1", *MEGOHMS),
    same("insulation_10min", "insulation at 10 min", "R_{10}", *MEGOHMS),
    same("leakage_1min", "leakage at 1 min", "I_1", "µA", (0.05, 5000)),
    same("leakage_10min", "leakage at 10 min", "I_{10}", "µA", (0.02, 5000)),
    same("leakage_30s", "leakage at 30 s", "I_{30}", "µA", (0.05, 5000)),
    same("polarization_index", "polarization index", r"\mathrm{PI}", "", (0.4, 10)),
    same("absorption_ratio", "dielectric absorption ratio", r"\mathrm{DAR}", "", (0.4, 3)),
    # Winding resistance, between two leads each time
    *(same(f"ohms_{x}", f"ohms {x[0]} to {x[1]}", f"R_{{{x}}}", *OHMS) for x in ("12", "23", "31")),
    same("ohms_average", "average ohms", r"\bar R", *OHMS),
    same("ohms_deviation", "largest deviation in ohms", r"\Delta R", "ohm", (0.0001, 10)),
    same("ohms_healthy", "ohms when healthy", r"R_\mathrm{h}", *OHMS),
    percent("ohms_share", "average ohms over the healthy", "k_h", (5, 400), most=100_000.0),
    percent("resistance_unbalance", "resistance unbalance", "u_R", (0.05, 60)),
)
