"""What the problems share: windings under test, and the words on who tests and how safely.

The scenes draw megohms, ohms, volts and °C that a motor could show, the same in both systems. Ranges
are common practice, no source. Ratings are those of US and IEC supplies.
"""

from solver.engine.draw import Draw
from solver.engine.family import Scene
from solver.topics.chapter import Chapter
from solver.topics.drawn.readings import Range, by, noted, offsets
from solver.topics.formulas import INSULATION, NAMEPLATE

__all__ = [
    "CAUTION",
    "CHAPTER",
    "LIKELY",
    "OHMS",
    "RATED",
    "TESTED",
    "at_40",
    "brought_to",
    "rated",
    "reading_at",
    "two_years",
    "windings",
    "within_one_test",
    "worked",
]

CHAPTER = Chapter("insulation", (*INSULATION, *NAMEPLATE))
worked = by(CHAPTER.formulas)

TESTED = (
    "A qualified person has isolated {place}, verified that it is dead, and disconnected any "
    "drive and surge protection. "
)
CAUTION = "Before anyone touches the winding, ground it for four times as long as the test."
OHMS = ("ohms_12", "ohms_23", "ohms_31")
LOW_VOLTS = {"us": (208, 230, 460, 575), "si": (400, 415, 440)}
RATED = {
    "us": (208, 230, 460, 575, 2300, 2400, 4000, 4160, 6900),
    "si": (400, 690, 3000, 3300, 6000, 6600, 11_000),
}
TENS = (10, 20, 30, 50, 60)
COOL, WARM = (6, 33), (47, 66)
LIKELY: tuple[Range, ...] = ((8, 40), (40, 300), (300, 1500))


def reading_at(at_40: float, temperature: float, units: str) -> float:
    """Megohms that a meter shows at a temperature (°C) for so many at 40 °C, to three figures."""
    known = {"insulation_at_40": at_40, "winding_temperature": temperature}
    return noted(worked(known, "insulation", units))


def at_40(draw: Draw, units: str) -> dict[str, float]:
    """A one-minute reading of a winding at a round temperature, and at 40 °C."""
    return brought_to(*LIKELY, temperatures=TENS)(draw, units)


def brought_to(*ranges: Range, temperatures: tuple[int, ...] = ()) -> Scene:
    """A winding that would read so many megohms at 40 °C, tested cool or warm."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        sound = draw.between(*draw.pick(ranges))
        if temperatures:
            temperature = float(draw.pick(temperatures))
        else:
            temperature = draw.step(*draw.pick((COOL, COOL, WARM)), 1)
        volts = draw.pick((500.0, 1000.0))
        reading = reading_at(sound, temperature, units)
        return {
            "rated_volts": float(draw.pick(LOW_VOLTS[units])),
            "insulation_at_40": noted(sound),
            "winding_temperature": temperature,
            "insulation": reading,
            "test_volts": volts,
            "leakage_current": noted(volts / reading),
        }

    return scene


def within_one_test(indexes: tuple[Range, ...], ratios: tuple[Range, ...]) -> Scene:
    """Readings at 30 s, 1 min and 10 min, with an index and a ratio out of these ranges."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        minute = noted(draw.between(*draw.pick(((40, 200), (200, 900)))))
        index, ratio = draw.between(*draw.pick(indexes)), draw.between(*draw.pick(ratios))
        half, ten = noted(minute / ratio), noted(minute * index)
        volts = draw.pick((500.0, 1000.0))
        return {
            "insulation_30s": half,
            "insulation_1min": minute,
            "insulation_10min": ten,
            "polarization_index": round(index, 2),
            "absorption_ratio": round(ratio, 2),
            "test_volts": volts,
            "leakage_30s": noted(volts / half),
            "leakage_1min": noted(volts / minute),
            "leakage_10min": noted(volts / ten),
        }

    return scene


def two_years(*kept: Range) -> Scene:
    """A winding tested in two years at two temperatures; `kept` is now over before, at 40 °C."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        before = draw.between(120, 900)
        now = before * draw.between(*draw.pick(kept))
        then, today = draw.shuffled((draw.step(8, 16, 1), draw.step(22, 34, 1)))
        return {
            "insulation_before": reading_at(before, then, units),
            "winding_temperature_before": then,
            "insulation_at_40_before": noted(before),
            "insulation": reading_at(now, today, units),
            "winding_temperature": today,
            "insulation_at_40": noted(now),
        }

    return scene


def rated(draw: Draw, units: str) -> dict[str, float]:
    """A winding by its nameplate volts."""
    volts = float(draw.pick(RATED[units]))
    return {"rated_volts": volts, "rated_kilovolts": volts / 1000}


def windings(*unbalances: Range) -> Scene:
    """Ohms between each two leads, about an average of three figures."""

    def scene(draw: Draw, units: str) -> dict[str, float]:
        count = round(draw.between(500, 950))
        grid = draw.pick((0.001, 0.001, 0.01))
        steps = offsets(draw, count, draw.between(*draw.pick(unbalances)), (0.2, 0.5))
        side = draw.pick((1, -1))
        readings = [round((count + side * away) * grid, 4) for away in draw.shuffled(steps)]
        return {
            **dict(zip(OHMS, readings, strict=True)),
            "ohms_average": round(count * grid, 4),
            "ohms_deviation": round(abs(steps[0]) * grid, 4),
        }

    return scene
