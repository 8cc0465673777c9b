"""A station's picture in words: the lines under it, and all of it for those who cannot see it."""

from collections.abc import Iterable, Mapping

from solver.station.readings import SIGNS
from solver.station.station import Station
from solver.units.show import capital
from solver.vocabulary import quantity_named

__all__ = ["captions", "picture_words"]

Texts = Mapping[str, str]
WIDE = 46  # letters in a line under the picture
# What stands in the picture by its place alone, and so is told under it.
GAUGES = (("discharge_gauge_height", "Discharge gauge"), ("suction_gauge_height", "suction gauge"))


def captions(station: Station, texts: Texts) -> list[str]:
    """The lines under the picture: total head, the main, gauge heights."""
    said = [
        f"{_short('head', station)} {texts['head']}" if "head" in texts else "",
        f"speed {texts['running_speed']}" if "running_speed" in texts else "",
    ]
    if station.well and "static_suction_head" in texts:
        said.append(f"water {texts['static_suction_head']} above the pump")
    heights = [
        f"{name} {_height(texts[reading], station)}"
        for reading, name in GAUGES
        if reading in texts and (reading != "suction_gauge_height" or station.suction)
    ]
    return [*_lines(", ".join(part for part in said if part)), *_lines(", ".join(heights))]


def _short(name: str, station: Station) -> str:
    """A quantity's abbreviation, or its label where the system has none."""
    quantity, units = quantity_named(name), station.system.name
    return quantity.short(units) or quantity.label(units)


def _height(text: str, station: Station) -> str:
    """A gauge's height: 2 ft above the pump, 1 ft below the pump, level with the pump."""
    datum = "water" if station.kind.submerged else "pump"
    if text.startswith(("-", "−")):
        return f"{text[1:]} below the {datum}"
    if text.split()[0] == "0":
        return f"level with the {datum}"
    return f"{text} above the {datum}"


def _lines(text: str) -> list[str]:
    """A sentence in lines that fit under the picture."""
    lines: list[str] = []
    for word in capital(text).split():
        if lines and len(lines[-1]) + 1 + len(word) <= WIDE:
            lines[-1] += f" {word}"
        else:
            lines.append(word)
    return lines


def picture_words(station: Station, texts: Texts) -> str:
    """The whole picture in sentences, each value with its name."""
    units = station.system.name
    what = f"{capital(station.kind.says)}, {station.place.name} at {station.place.station}."
    return f"{what} {_sentence(texts, units)}"


def _sentence(texts: Texts, units: str) -> str:
    named: Iterable[str] = (
        f"{SIGNS[name].label if name in SIGNS else quantity_named(name).label(units)} {text}"
        for name, text in texts.items()
    )
    return capital(f"{'; '.join(named)}.") if texts else ""
