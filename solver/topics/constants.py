"""The constants of the trade, each once: its value as taught, its other roundings, the exact one.

The exact ones that depend on water take it at 62.4 lb/ft3 (999.552 kg/m3), as the handbooks do.
A test holds each within its rounding of the exact value (pint, scipy.constants).
"""

from solver.algebra.expression import Constant, Figure

__all__ = [
    "CENTIMETRES_PER_METRE",
    "CIRCLE_IN_SQUARE",
    "GALLONS_PER_CUBIC_FOOT",
    "GPM_PER_MGD",
    "HEAD_PER_PRESSURE",
    "HOURLY_VOLUME",
    "INCHES_PER_FOOT",
    "KW_PER_HP",
    "LITRES_PER_CUBIC_METRE",
    "M3_DAY_PER_LITRE_SECOND",
    "MINUTES_PER_HOUR",
    "NONE",
    "PER_PRESSURE",
    "SECONDS_PER_MINUTE",
    "WATER_POWER",
    "WATER_WEIGHT",
]

NONE = Figure(1, "", exact=1.0)
PER_PRESSURE = "It takes 2.31 ft of water to make 1 psi, or 0.102 m to make 1 kPa."

WATER_POWER = Constant(
    "water_power_constant",
    "water power constant",
    us=Figure(3960, "gpm ft / hp", also=(3957, 3956), exact=3956.044),
    si=Figure(102, "L/s m / kW", also=(101.97, 101.94), exact=102.0173),
    source="Merkley & Allen, Sprinkle & Trickle Irrigation lecture notes, Utah State University, "
    "p. 123 (102 and 3956); Alabama Extension ANR-0548 (3960)",
)
_ELECTRIC_HORSEPOWER = Figure(0.746, "kW / hp", also=(0.7457,), exact=0.74569987)
KW_PER_HP = Constant(
    "kilowatts_per_horsepower",
    "kilowatts per horsepower",
    us=_ELECTRIC_HORSEPOWER,
    si=_ELECTRIC_HORSEPOWER,
    source="NIST SP 811 App. B (745.6999 W; the electric horsepower is 746 W exactly)",
)
HEAD_PER_PRESSURE = Constant(
    "head_per_pressure",
    "head per unit of pressure",
    us=Figure(2.31, "ft / psi", also=(2.307, 2.3077, 2.3095, 2.311), exact=2.307692),
    si=Figure(0.102, "m / kPa", also=(0.10197, 0.10194, 0.10204, 0.10215), exact=0.1020173),
    source="NIST SP 811 App. B (2989.067 Pa per foot of water); 2.31 in common practice",
)
GPM_PER_MGD = Constant(
    "gpm_per_mgd",
    "gallons per minute in one MGD",
    us=Figure(694.4, "gpm / MGD", also=(694, 694.44), exact=694.44444),
    si=NONE,
    source="arithmetic: 1,000,000 gallons over 1,440 minutes",
)
M3_DAY_PER_LITRE_SECOND = Constant(
    "m3_day_per_litre_second",
    "cubic meters per day in a liter per second",
    us=NONE,
    si=Figure(86.4, "m3/day / L/s", exact=86.4),
    source="arithmetic: 86,400 seconds a day, 1,000 liters a cubic meter",
)
HOURLY_VOLUME = Constant(
    "hourly_volume",
    "flow that pumps one volume unit in an hour",
    us=Figure(16_667, "gpm h / MG", also=(16_666.7, 16_700), exact=16_666.667),
    si=Figure(277.8, "L/s h / ML", also=(277.78, 278), exact=277.77778),
    source="arithmetic: 1,000,000 gallons over 60 minutes; 1,000,000 liters over 3,600 seconds",
)
WATER_WEIGHT = Constant(
    "water_weight",
    "weight of water",
    us=Figure(8.34, "lb/gal", also=(8.333, 8.345), exact=8.341667),
    si=Figure(9.81, "kN / m3", also=(9.8, 9.807), exact=9.802258),
    source="common practice, no source: 8.34 lb/gal; 9.81 kN/m3",
)
GALLONS_PER_CUBIC_FOOT = Constant(
    "gallons_per_cubic_foot",
    "gallons per cubic foot",
    us=Figure(7.48, "gal / ft3", also=(7.4805, 7.481, 7.5), exact=7.480519),
    si=NONE,
    source="NIST SP 811 App. B (a cubic foot is 7.480519 gallons)",
)
LITRES_PER_CUBIC_METRE = Constant(
    "litres_per_cubic_metre",
    "liters per cubic meter",
    us=NONE,
    si=Figure(1000, "L / m3", exact=1000.0),
    source="definition of the liter",
)
INCHES_PER_FOOT = Constant(
    "inches_per_foot",
    "inches per foot",
    us=Figure(12, "in / ft", exact=12.0),
    si=NONE,
    source="definition of the foot",
)
CENTIMETRES_PER_METRE = Constant(
    "centimetres_per_metre",
    "centimeters per meter",
    us=NONE,
    si=Figure(100, "cm / m", exact=100.0),
    source="definition of the centimeter",
)
SECONDS_PER_MINUTE = Constant(
    "seconds_per_minute",
    "seconds per minute",
    us=Figure(60, "s / min", exact=60.0),
    si=Figure(60, "s / min", exact=60.0),
    source="definition of the minute",
)
MINUTES_PER_HOUR = Constant(
    "minutes_per_hour",
    "minutes per hour",
    us=Figure(60, "min / h", exact=60.0),
    si=Figure(60, "min / h", exact=60.0),
    source="definition of the hour",
)
CIRCLE_IN_SQUARE = Constant(
    "circle_in_square",
    "0.785 of a circle",
    us=Figure(0.785, "", also=(0.7854, 0.7853982), exact=0.78539816),
    si=Figure(0.785, "", also=(0.7854, 0.7853982), exact=0.78539816),
    source="geometry: a quarter of pi",
)
