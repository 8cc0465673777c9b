"""Standard motors by size and poles: nominal full-load efficiency, and locked-rotor amps.

US: NEMA MG 1 Table 12-12 (premium) and Table 12-11 (energy efficient), enclosed motors, as 10 CFR
431.25 has them for 2, 4 and 6 poles (read in part, 8 poles from memory); locked-rotor amps at 460 V of
NEC (NFPA 70) Table 430.251(B), designs B, C and D (read in part, the rest from memory). Metric: IEC
60034-30-1, 50 Hz, IE3 and IE2 (from memory).
"""

from collections.abc import Mapping
from types import MappingProxyType

__all__ = ["EFFICIENCY", "LOCKED_ROTOR", "POLES", "efficiency_of"]

POLES = (2, 4, 6, 8)
Row = tuple[float, float, float, float]
_US_SIZES = (1, 1.5, 2, 3, 5, 7.5, 10, 15, 20, 25, 30, 40, 50, 60, 75, 100, 125, 150, 200)
_SI_SIZES = (
    *(0.75, 1.1, 1.5, 2.2, 3, 4, 5.5, 7.5, 11, 15, 18.5, 22, 30, 37, 45, 55, 75, 90, 110, 132, 160),
)
_US_PREMIUM = (
    (77.0, 84.0, 85.5, 86.5, 88.5, 89.5, 90.2, 91.0, 91.0, 91.7, 91.7, 92.4, 93.0, 93.6, 93.6, 94.1, 95.0, 95.0, 95.4),
    (85.5, 86.5, 86.5, 89.5, 89.5, 91.7, 91.7, 92.4, 93.0, 93.6, 93.6, 94.1, 94.5, 95.0, 95.4, 95.4, 95.4, 95.8, 96.2),
    (82.5, 87.5, 88.5, 89.5, 89.5, 91.0, 91.0, 91.7, 91.7, 93.0, 93.0, 94.1, 94.1, 94.5, 94.5, 95.0, 95.0, 95.8, 95.8),
    (75.5, 78.5, 84.0, 85.5, 86.5, 86.5, 89.5, 89.5, 90.2, 90.2, 91.7, 91.7, 92.4, 92.4, 93.6, 93.6, 94.1, 94.1, 94.5),
)  # fmt: skip
_US_STANDARD = (
    (75.5, 82.5, 84.0, 85.5, 87.5, 88.5, 89.5, 90.2, 90.2, 91.0, 91.0, 91.7, 92.4, 93.0, 93.0, 93.6, 94.5, 94.5, 95.0),
    (82.5, 84.0, 84.0, 87.5, 87.5, 89.5, 89.5, 91.0, 91.0, 92.4, 92.4, 93.0, 93.0, 93.6, 94.1, 94.5, 94.5, 95.0, 95.0),
    (80.0, 85.5, 86.5, 87.5, 87.5, 89.5, 89.5, 90.2, 90.2, 91.7, 91.7, 93.0, 93.0, 93.6, 93.6, 94.1, 94.1, 95.0, 95.0),
    (74.0, 77.0, 82.5, 84.0, 85.5, 85.5, 88.5, 88.5, 89.5, 89.5, 91.0, 91.0, 91.7, 91.7, 93.0, 93.0, 93.6, 93.6, 94.1),
)  # fmt: skip
_SI_PREMIUM = (
    (80.7, 82.7, 84.2, 85.9, 87.1, 88.1, 89.2, 90.1, 91.2, 91.9, 92.4, 92.7, 93.3, 93.7, 94.0, 94.3, 94.7, 95.0, 95.2, 95.4, 95.6),
    (82.5, 84.1, 85.3, 86.7, 87.7, 88.6, 89.6, 90.4, 91.4, 92.1, 92.6, 93.0, 93.6, 93.9, 94.2, 94.6, 95.0, 95.2, 95.4, 95.6, 95.8),
    (78.9, 81.0, 82.5, 84.3, 85.6, 86.8, 88.0, 89.1, 90.3, 91.2, 91.7, 92.2, 92.9, 93.3, 93.7, 94.1, 94.6, 94.9, 95.1, 95.4, 95.6),
    (75.0, 77.7, 79.7, 81.9, 83.5, 84.8, 86.2, 87.3, 88.6, 89.6, 90.1, 90.6, 91.3, 91.8, 92.2, 92.5, 93.1, 93.4, 93.7, 94.0, 94.3),
)  # fmt: skip
_SI_STANDARD = (
    (77.4, 79.6, 81.3, 83.2, 84.6, 85.8, 87.0, 88.1, 89.4, 90.3, 90.9, 91.3, 92.0, 92.5, 92.9, 93.2, 93.8, 94.1, 94.3, 94.6, 94.8),
    (79.6, 81.4, 82.8, 84.3, 85.5, 86.6, 87.7, 88.7, 89.8, 90.6, 91.2, 91.6, 92.3, 92.7, 93.1, 93.5, 94.0, 94.2, 94.5, 94.7, 94.9),
    (75.9, 78.1, 79.8, 81.8, 83.3, 84.6, 86.0, 87.2, 88.7, 89.7, 90.4, 90.9, 91.7, 92.2, 92.7, 93.1, 93.7, 94.0, 94.3, 94.6, 94.8),
    (66.2, 70.8, 74.1, 77.6, 80.0, 81.9, 83.8, 85.3, 86.9, 88.0, 88.6, 89.1, 89.8, 90.2, 90.6, 91.0, 91.6, 91.9, 92.3, 92.6, 93.0),
)  # fmt: skip
_LOCKED = (15, 20, 25, 32, 46, 64, 81, 116, 145, 183, 218, 290, 363, 435, 543, 725, 908, 1085, 1450)


def _by_size(
    sizes: tuple[float, ...], columns: tuple[tuple[float, ...], ...]
) -> Mapping[float, Row]:
    rows = zip(*columns, strict=True)
    return MappingProxyType({float(s): r for s, r in zip(sizes, rows, strict=True)})


# Percent at 2, 4, 6 and 8 poles, by system and grade (premium is today's), then by size (hp | kW).
EFFICIENCY: Mapping[tuple[str, str], Mapping[float, Row]] = MappingProxyType(
    {
        ("us", "premium"): _by_size(_US_SIZES, _US_PREMIUM),
        ("us", "standard"): _by_size(_US_SIZES, _US_STANDARD),
        ("si", "premium"): _by_size(_SI_SIZES, _SI_PREMIUM),
        ("si", "standard"): _by_size(_SI_SIZES, _SI_STANDARD),
    }
)
# Amps at 460 V with the rotor held, by size in hp.
LOCKED_ROTOR: Mapping[float, int] = MappingProxyType(
    {float(size): amps for size, amps in zip(_US_SIZES, _LOCKED, strict=True)}
)


def efficiency_of(size: float, poles: int, grade: str, units: str) -> float:
    """Nominal full-load efficiency (percent) of a standard motor (hp | kW).

    Raises:
        KeyError: no such size.

    >>> efficiency_of(100, 4, "premium", "us")
    95.4
    """
    return EFFICIENCY[units, grade][size][POLES.index(poles)]
