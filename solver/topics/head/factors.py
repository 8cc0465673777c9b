"""The factors that turn gauges, speeds and friction into head."""

from solver.algebra.expression import Constant, Figure
from solver.topics.constants import HEAD_PER_PRESSURE

__all__ = ["FRICTION", "GRAVITY", "HEAD_PER_VACUUM", "HUNDRED", "PER_PRESSURE", "VELOCITY"]

PER_PRESSURE = "It takes 2.31 ft of water to make 1 psi, or 0.102 m to make 1 kPa."

HEAD_PER_VACUUM = Constant(
    "head_per_vacuum",
    "head per unit of vacuum",
    us=Figure(1.133, "ft / inHg", also=(1.13, 1.134), exact=1.133477),
    si=HEAD_PER_PRESSURE.si,
    source="NIST SP 811 App. B (3386.389 Pa per inch of mercury); 1.133 in common practice",
)
VELOCITY = Constant(
    "velocity_constant",
    "velocity constant",
    us=Figure(0.4085, "ft/s in2 / gpm", also=(0.408,), exact=0.4084977),
    si=Figure(1273, "m/s mm2 / L/s", also=(1270, 1273.2), exact=1273.2395),
    source="arithmetic: the flow over the area of a round pipe",
)
GRAVITY = Constant(
    "gravity",
    "acceleration of gravity",
    us=Figure(32.2, "ft/s2", also=(32.17, 32.174), exact=32.174049),
    si=Figure(9.81, "m/s2", also=(9.8, 9.807), exact=9.80665),
    source="NIST SP 811: standard gravity 9.80665 m/s2; 32.2 ft/s2 in common practice",
)
# `also` spans the other published forms, whose exponents are 1.85, 4.8655, 4.8704 or 4.871, for
# pipes of 3 to 16 in and 80 to 400 mm: 0.2083 (100/C)^1.852, 10.44 Q^1.85, 4.52 psi and 4.727 in
# cfs; 10.67 and 10.643 in m3/s. A test works each of them.
FRICTION = Constant(
    "hazen_williams",
    "Hazen-Williams constant",
    us=Figure(1050, "", also=(1035, 1067)),
    si=Figure(1.212e12, "", also=(1.205e12, 1.232e12)),
    source="Keller & Bliesner, Sprinkle and Trickle Irrigation (from memory): 1050 for gpm, "
    "inches and ft/100 ft; 1.212 x 10^12 for L/s, mm and m/100 m",
)
HUNDRED = Constant(
    "hundred",
    "100 in the table",
    us=Figure(100, "ft/100 ft", exact=100),
    si=Figure(100, "m/100 m", exact=100),
    source="arithmetic: the table gives the loss per 100 ft, or per 100 m, of pipe",
)
