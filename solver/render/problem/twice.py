"""One pump before and after: another speed or another impeller, and what follows of each."""

from solver.render.svg import ACCENT, PAGE, SOFT, across, circle, path, wide
from solver.units.quantity import Both, Text

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown, words

__all__ = ["TWICE"]

PAIRS: tuple[tuple[str, str, Text], ...] = (
    ("pump_speed", "new_speed", "speed"),
    ("impeller_diameter", "new_diameter", "impeller"),
    ("flow", "new_flow", "flow"),
    ("head", "new_head", "TDH"),
    ("brake_power", "new_shaft_power", Both("BHP", "shaft")),
    ("input_power", "slowed_power", "power"),
    ("energy_per_volume", "new_energy_per_volume", "energy"),
)
UNDER: Rows = (
    ("static_head", "static head"),
    ("shutoff_head", "shutoff head"),
    ("yearly_hours", "runs"),
    ("power_cut", "power saved"),
    ("slowing_saved_energy", "saved"),
)
BEFORE, AFTER = 0.0, 54.0  # percent
ROOM = 160.0  # px for one of the two
ICON, MIDDLE, TOP = 26.0, 26.0, 70.0  # px: the impellers' middle, the first row's foot
WHOLE, TRIMMED = 22.0, 17.0  # px: the impellers' radius


def _draw(shown: Shown) -> Drawn:
    pieces = [
        _impeller(BEFORE, WHOLE),
        _impeller(AFTER, TRIMMED if shown.works("new_diameter") else WHOLE),
        across(
            36,
            path((0, ICON), (40, ICON), stroke=SOFT),
            path((32, ICON - 6), (40, ICON), (32, ICON + 6), stroke=SOFT),
        ),
        words(BEFORE, ICON + 5, "now", dx=58),
        words(AFTER, ICON + 5, "after", dx=58),
    ]
    if shown.has("speed_cut"):
        pieces.append(shown.note(36, ICON - 12, "speed_cut", "slowed", "start", dx=-26))
    y = TOP
    for before, after, called in PAIRS:
        if shown.has(before, after):
            both = ((BEFORE, before), (AFTER, after))
            pieces += [_note(shown, x, y, name, called) for x, name in both if shown.has(name)]
            y += LINE
    more, foot = shown.flow(y, UNDER)
    return Drawn(pieces + more, foot)


def _note(shown: Shown, share: float, y: float, name: str, called: Text) -> str:
    """A value with its caption, unless the value is too long for one beside it."""
    said = f"{shown.said(called)} {shown.text(name)}"
    return shown.note(share, y, name, called if wide(said, True) < ROOM else "")


def _impeller(share: float, r: float) -> str:
    """An impeller seen from its eye."""
    vanes = (
        ((0, -0.45), (0.5, -0.7)),
        ((0.4, 0.2), (0.4, 0.75)),
        ((-0.4, 0.2), (-0.85, 0)),
    )
    drawn = [path(*((MIDDLE + r * x, r * y) for x, y in vane), stroke=PAGE) for vane in vanes]
    eye = circle(MIDDLE, 0, r * 0.35, fill=PAGE)
    return across(share, circle(MIDDLE, 0, r, fill=ACCENT), *drawn, eye, y=ICON)


TWICE = Drawing(
    "One pump before and after",
    (
        *(name for before, after, _ in PAIRS for name in (before, after)),
        "speed_cut",
        *(name for name, _ in UNDER),
    ),
    _draw,
    (),
    (*(after for _, after, _ in PAIRS), "speed_cut", "power_cut"),
)
