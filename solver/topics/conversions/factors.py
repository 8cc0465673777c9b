"""The factors of conversion, each once, with the exact value beside the one the trade keeps."""

from solver.algebra.expression import Constant, Expr, Figure
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import NONE, WATER_WEIGHT

__all__ = [
    "FOOT_POUNDS",
    "GPM_PER_CFS",
    "KPA_PER_BAR",
    "KPA_PER_PSI",
    "M3_HOUR_PER_LITRE_SECOND",
    "MINUTES_AN_HOUR",
    "MINUTES_A_DAY",
    "ML_DAY_PER_LITRE_SECOND",
    "WATER_MASS",
    "WATTS",
    "WEIGHT_OF_FLOW",
    "factor",
]

NIST = "NIST SP 811 App. B"


def us_only(name: str, label: str, figure: Figure, source: str) -> Constant:
    """A constant that only US units need."""
    return Constant(name, label, us=figure, si=NONE, source=source)


def si_only(name: str, label: str, figure: Figure, source: str) -> Constant:
    """A constant that only metric units need."""
    return Constant(name, label, us=NONE, si=figure, source=source)


GPM_PER_CFS = us_only(
    "gpm_per_cfs",
    "gallons per minute for each cubic foot per second",
    Figure(448.8, "gpm / cfs", also=(449, 448.83, 450), exact=448.83117),
    "US EPA, EPANET 2.2 source: 448.831; the trade keeps 448.8 or 450",
)
MINUTES_AN_HOUR = us_only(
    "minutes_an_hour",
    "minutes per hour",
    Figure(60, "gph / gpm", exact=60),
    "arithmetic: 60 minutes per hour",
)
MINUTES_A_DAY = us_only(
    "minutes_a_day",
    "minutes per day",
    Figure(1440, "gpd / gpm", exact=1440),
    "arithmetic: 24 hours of 60 minutes",
)
M3_HOUR_PER_LITRE_SECOND = si_only(
    "m3_hour_per_litre_second",
    "cubic meters per hour for each liter per second",
    Figure(3.6, "m3/h / L/s", exact=3.6),
    "arithmetic: 3,600 seconds per hour, 1,000 liters per cubic meter",
)
ML_DAY_PER_LITRE_SECOND = si_only(
    "ml_day_per_litre_second",
    "megaliters per day for each liter per second",
    Figure(0.0864, "ML/day / L/s", exact=0.0864),
    "arithmetic: 86,400 seconds per day, 1,000,000 liters per megaliter",
)
WATER_MASS = Constant(
    "water_mass",
    "weight of one unit of water",
    us=WATER_WEIGHT.us,
    si=Figure(1000, "kg/m3", also=(998,), exact=999.552),
    source="common practice, no source: 8.34 lb/gal; 1 kg per liter",
)
WEIGHT_OF_FLOW = Constant(
    "weight_of_flow",
    "weight of one unit of water",
    us=WATER_WEIGHT.us._replace(unit="lb/min / gpm"),
    si=WATER_WEIGHT.si._replace(unit="N/s / L/s"),
    source=WATER_WEIGHT.source,
)
KPA_PER_PSI = us_only(
    "kpa_per_psi",
    "kilopascals per psi",
    Figure(6.895, "kPa / psi", also=(6.9, 6.89), exact=6.894757),
    f"{NIST}: 6.894757 kPa",
)
KPA_PER_BAR = si_only(
    "kpa_per_bar", "kilopascals per bar", Figure(100, "kPa / bar", exact=100), f"{NIST}: bar"
)
FOOT_POUNDS = us_only(
    "foot_pounds",
    "foot-pounds per minute for each horsepower",
    Figure(33_000, "ft-lb/min / hp", exact=33_000),
    "the definition of the horsepower: 33,000 ft-lb/min",
)
WATTS = si_only("watts", "watts per kilowatt", Figure(1000, "W / kW", exact=1000), f"{NIST}: kilo")


def factor(
    result: str,
    expr: Expr,
    system: str,
    constant: Constant,
    why: str,
    *slips: Slip,
    back: str = "",
) -> Formula:
    """A conversion that only one system of units needs, with the source of its constant."""
    return Formula(result, expr, constant.source, why, slips=slips, systems=(system,), back=back)
