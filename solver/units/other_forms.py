"""The other ways people write a number with its unit, each by a strict pattern of its own.

- 62 ft 6 in, 62' 6", 1 hr 15 min: parts in falling units of one ladder, each less than one above.
- 1:15 is hours and minutes where hours are asked, minutes and seconds where those are; 2.1:1 is a
  ratio where a plain number is asked.
- 12k, 1.2 million kWh, 500 M where megohms are asked; k is refused where kW or the like is asked.
- 6 per hour, where starts an hour are asked.
- 150*66/3960: see worked_sum.py.

Each gives None for text that it does not know, and a refusal for text that may mean two things.
"""

import re
from itertools import pairwise

from solver.errors import Unreadable

from .show import exact, with_unit
from .typed import NUMBER, Typed, one, ordinary, quoted
from .unit import Unit, convert, find_unit, unit
from .worked_sum import worked_sum

__all__ = ["other_form", "without_hedge"]

_BEFORE = re.compile(
    r"(?:[~≈≅=]|(?:about|around|approx(?:imately|\.)?|roughly|say|circa|ca\.?)(?![a-z])"
    r"|(?:my )?(?:answer|ans)\b(?: is)?[:=]?) ?",
    re.IGNORECASE,
)
_AFTER = re.compile(r" ?(?:[?!]+|\b(?:approx(?:imately)?|or so))\.?", re.IGNORECASE)
_CLOCK = re.compile(
    r"(-?)([0-9]{1,4}):([0-9]{2})(?::([0-9]{2}))?(\.[0-9]+)?(?: ?([a-z]+)\.?)?", re.I
)
_TO_ONE = re.compile(r"((?:[0-9]+(?:\.[0-9]*)?|\.[0-9]+)) ?(?::|to) ?1(?:\.0*)?")
_LADDERS = (("week", "day", "h", "min", "s"), ("ft", "in"), ("$", "cents"), ("m", "cm", "mm"))
_PART = re.compile(
    r" ?(?:and |, ?|- ?)?"
    r"((?:[0-9]+[ -])?[0-9]+/[0-9]+|(?:[1-9][0-9]{0,2}(?:,[0-9]{3})+|[0-9]+)(?:\.[0-9]+)?)"
    r"(?![0-9.,/])"
    r"[ -]?('{1,2}|\"|[a-z]+\.?)?(?![a-z])",
    re.IGNORECASE,
)
_SCALED = re.compile(r"(k|K|M|thousand|million)\b ?(.*)")
_SCALES = {"k": 1e3, "K": 1e3, "thousand": 1e3, "M": 1e6, "million": 1e6}
_PREFIXED = re.compile(r"k|M|G|µ|c(?=m)|m(?=[mAVWL])|(?:milli|kil|meg|gig)ohm|lb/|\$/M|\$/1000")
_PER = re.compile(r"(?:times )?(?:/|(?:per|an?|each|every)\b) ?(.+)", re.IGNORECASE)


def without_hedge(plain: str) -> str:
    """The text without "about", ~, = or "?" around it; text without a figure stays as it is.

    >>> without_hedge("about 12.5 hp?"), without_hedge("= 12.5"), without_hedge("12.5")
    ('12.5 hp', '12.5', '12.5')
    """
    if not any(map(str.isdigit, plain)):
        return plain
    for _ in range(2):
        if before := _BEFORE.match(plain):
            plain = plain[before.end() :]
    after = _AFTER.search(plain)
    return plain[: after.start()] if after and after.end() == len(plain) else plain


def other_form(plain: str, wanted: Unit) -> Typed | None:
    """What the text says as one number, or in one of these forms; None where it is none of them.

    Raises:
        Unreadable: it is one, and may mean two things.
    """
    forms = (ordinary, _clock, _to_one, _parts, _scaled, _per, worked_sum)
    return next((found for form in forms if (found := form(plain, wanted))), None)


def _clock(plain: str, wanted: Unit) -> Typed | None:
    """1:15, or 1:15:30."""
    match = _CLOCK.fullmatch(plain)
    if not match:
        return None
    sign, first, second, third, part, said = match.groups()
    timed = wanted.name.partition("/")[0]
    found = find_unit(said) if said else None
    top = found.name if found else "" if said else "min" if timed == "s" else timed
    if wanted.kind not in ("time", "run schedule"):
        return None
    spread = third == "00" and timed in ("min", "s")  # a spreadsheet makes 1:52:00 of 1:52
    if top not in ("h", "min") or spread or (top == "h" and part and not third):
        mm, ss = f"{first} hr {second} min", f"{first} min {second} s"
        raise Unreadable(f"{quoted(plain)} could be {mm} or {ss}. Type the one you mean.")
    if int(second) > 59 or int(third or 0) > 59:
        raise Unreadable(f"{quoted(plain)} has 60 or more after a colon. Type {one(wanted)}.")
    units = ("h", "min", "s")[0 if top == "h" or third else 1 :]
    numbers = [float(first), float(second), *([float(third)] if third else [])]
    numbers[-1] += float(part or 0)
    return _joined(sign, list(zip(numbers, units, strict=False)))


def _joined(sign: str, parts: list[tuple[float, str]]) -> Typed:
    """Parts in falling units, as one number in the first of them."""
    top = parts[0][1]
    value = sum(convert(number, name, top) for number, name in parts)
    between = " and " if top == "$" else " "
    said = between.join(with_unit(exact(number, name), name) for number, name in parts)
    return Typed(-value if sign else value, unit(top), said=f"{sign}{said}")


def _to_one(plain: str, wanted: Unit) -> Typed | None:
    """2.1:1, or 2.1 to 1."""
    match = _TO_ONE.fullmatch(plain)
    if not match or wanted.name:
        return None
    return Typed(float(match[1]), said=f"{exact(float(match[1]))}:1")


def _parts(plain: str, wanted: Unit) -> Typed | None:
    """62 ft 6 in, and the same for each day: 1 hr 15 min a day."""
    sign = "-" if plain[0] == "-" else ""
    at = len(sign)
    parts: list[tuple[float, str]] = []
    while match := _PART.match(plain, at):
        if not _took(match, parts, wanted):
            return None
        at = match.end()
    if len(parts) < 2:
        return None
    if any(number % 1 for number, _ in parts[:-1]):
        return None
    for (_, above), (number, name) in pairwise(parts):
        if number >= round(convert(1, above, name), 9):
            said, whole = with_unit(exact(number, name), name), with_unit("1", above)
            raise Unreadable(
                f"{quoted(plain)} has {said}, which is {whole} or more. Type {one(wanted)}."
            )
    found = _joined(sign, parts)
    if not (rest := plain[at:].strip()):
        return found
    per = find_unit(f"{parts[0][1]} {rest}")
    return (
        found._replace(unit=per, said=f"{found.said} a {per.name.partition('/')[2]}")
        if per
        else None
    )


def _took(match: re.Match[str], parts: list[tuple[float, str]], wanted: Unit) -> bool:
    """Whether this part belongs below those before it; if so it is put with them."""
    number, said = ordinary(match[1], wanted), match[2]
    before = parts[-1][1] if parts else ""
    timed = before == "h" or wanted.kind in ("time", "run schedule")
    if not said:  # 62'6 is feet and inches
        name = "in" if before == "ft" and re.fullmatch("[0-9]{1,2}", match[1]) else ""
        name = name if match.string[match.start() - 1] == "'" else ""
    elif timed and said.casefold() == "m":
        name = "min"
    else:
        name = found.name if (found := find_unit(said)) else ""
    fits = any(
        name in ladder and (not parts or before in ladder[: ladder.index(name)])
        for ladder in _LADDERS
    )
    if fits and number:
        parts.append((number.value, name))
    return fits and number is not None


def _scaled(plain: str, wanted: Unit) -> Typed | None:
    """12k, 12k gal, 1.2 million kWh, $1.2M; 500 M where megohms are asked."""
    front = NUMBER.match(plain)
    scaled = front and _SCALED.fullmatch(plain[front.end() :].removesuffix("."))
    if not front or not scaled:
        return None
    number = ordinary(plain[: front.end()].strip(), wanted)
    if not number:
        return None
    dollar, (by, tail) = front["dollar"], scaled.groups()
    said = find_unit(f"{dollar} {tail}".strip()) if tail or dollar else None
    if by == "M" and wanted.kind == "resistance" and not tail:
        return Typed(number.value, unit("megohm"))
    if (tail and not said) or (by == "M" and not dollar):
        return None
    if tail and said and not dollar and len(by) == 1 and _PREFIXED.match(said.name):
        return None  # 12 k kW
    if not said and (_PREFIXED.match(wanted.name) or wanted.kind == "temperature"):
        few, many = exact(number.value), exact(number.value * _SCALES[by])
        raise Unreadable(
            f"{quoted(plain)} could mean {few} or {many} here. "
            f"Type all the digits and the unit, such as {with_unit(many, wanted.name)}."
        )
    return Typed(number.value * _SCALES[by], said)


def _per(plain: str, wanted: Unit) -> Typed | None:
    """6 per hour, where the question says of what."""
    front = NUMBER.match(plain)
    half, stroke, _ = wanted.name.partition("/")
    if not front or not stroke:
        return None
    per = _PER.fullmatch(plain[front.end() :].removesuffix("."))
    found = find_unit(f"{half}/{per[1]}") if per else None
    if found is None or found.kind != wanted.kind:
        return None
    number = ordinary(plain[: front.end()].strip(), wanted)
    return Typed(number.value, found) if number else None
