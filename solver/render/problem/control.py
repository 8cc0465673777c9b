"""Controls: a signal from 4 to 20 mA, the levels of lead and lag, a control panel's load, an alarm battery."""

from solver.render.svg import ACCENT, INK, SOFT, WATER, across, block, circle, line, path

from .drawing import Drawing, Drawn
from .shown import LINE, Rows, Shown, words

__all__ = ["ALARM_BATTERY", "CONTROL_LOAD", "LEAD_LAG", "SIGNAL"]

SCALE, MARK = 44.0, 60.0  # px down; percent along
AT_FOUR: Rows = (("signal_zero", ""), ("least_frequency", ""))
AT_TWENTY: Rows = (
    ("signal_span", "range"),
    ("pressure_span", "range"),
    ("most_frequency", ""),
)
AT_MARK: Rows = (("signal_level", "level"), ("drive_frequency", "drive"))
LEVELS = (("lag on", 34.0), ("lead on", 66.0), ("off", 112.0))  # px down
BETWEEN: Rows = (("lag_volume", ""), ("lag_depth", ""))
OF_WELL: Rows = (
    ("volume_per_depth", "per depth"),
    ("lag_pump_down", "lag on to off"),
    ("off_delay", "off delay"),
    ("delay_volume", "lost in the delay"),
    ("delay_drop", "drop in the delay"),
    ("lag_time", "lead on to lag on"),
    ("both_time", "both run"),
)
FLOWS: Rows = (("flow", "one pump"), ("parallel_flow", "both pumps"))
COILS: Rows = (("coil_count", ""), ("coil_va", "each"))
LIGHTS: Rows = (("lamp_count", ""), ("lamp_va", "each"))
OF_LOAD: Rows = (
    ("secondary_volts", "control volts"),
    ("transformer_va", "transformer"),
    ("control_load", "in all"),
    ("control_load_amps", "amps"),
    ("control_share", "load"),
)
OF_BATTERY: Rows = (
    ("usable_share", "usable"),
    ("standby_amps", "draws"),
    ("standby_watts", "load"),
    ("battery_time", "lasts"),
)


def _signal(shown: Shown) -> Drawn:
    """A scale with its two ends, and the signal at its place, or anywhere where that isn't given."""
    at = _place(shown.number("loop_current"))
    pieces = [
        line(0, 100, SCALE, stroke=INK, stroke_width=2.5),
        *(across(end, path((0, SCALE - 8), (0, SCALE + 8))) for end in (0, 100)),
        across(at, path((-6, SCALE - 13), (6, SCALE - 13), (0, SCALE - 2), (-6, SCALE - 13))),
        words(0, SCALE + 23, "4 mA"),
        words(100, SCALE + 23, "20 mA", "end"),
        shown.note(at, SCALE - 20, "loop_current", "signal", _anchor(at)),
    ]
    for rows, share, anchor in ((AT_FOUR, 0, "start"), (AT_TWENTY, 100, "end")):
        name, called = shown.first(rows)
        if shown.has(name):
            pieces.append(shown.note(share, SCALE + 23 + LINE, name, called, anchor))
    more, foot = shown.flow(SCALE + 25 + 2 * LINE, AT_MARK)
    return Drawn(pieces + more, foot)


def _place(current: float | None) -> float:
    """Percent along the scale from 4 to 20 mA."""
    return MARK if current is None else min(max((current - 4) / 16 * 100, 0), 100)


def _anchor(at: float) -> str:
    """A text near an end of the scale begins or ends at its mark."""
    return "start" if at < 20 else "end" if at > 80 else "middle"


def _lead_lag(shown: Shown) -> Drawn:
    left, right, foot = 34.0, 66.0, 128.0
    pieces = [block(left, right, LEVELS[1][1], foot - LEVELS[1][1], fill=WATER, fill_opacity=0.25)]
    pieces += [across(at, path((0, 14), (0, foot))) for at in (left, right)]
    pieces.append(line(left, right, foot))
    for level, y in LEVELS:
        pieces.append(line(left, right, y, stroke=SOFT, stroke_width=1.2, stroke_dasharray="4 3"))
        pieces.append(words(right + 2, y + 5, level))
    between, said = shown.first(BETWEEN)
    pieces.append(shown.note(50, 55, between, said, "middle"))
    pieces.append(shown.stacked(0, 34, "inflow", "inflow"))
    pump, called = shown.first(FLOWS)
    pieces.append(shown.stacked(0, 92, pump, called))
    rest = [row for row in (*BETWEEN, *FLOWS, *OF_WELL) if row[0] not in (between, pump)]
    more, last = shown.flow(foot + LINE, rest)
    return Drawn(pieces + more, last)


def _control_load(shown: Shown) -> Drawn:
    pieces = [line(0, 100, 14), line(0, 100, 74)]
    for share, rows, called in ((10, COILS, "coils"), (58, LIGHTS, "pilot lights")):
        pieces.append(
            across(
                share,
                path((0, 14), (0, 74)),
                circle(0, 44, 11, fill="var(--w2w-page, Canvas)", stroke=INK, stroke_width=2),
            )
        )
        (count, _), (each, said) = rows
        pieces.append(shown.note(share, 38, count, called, dx=17, first=True))
        pieces.append(shown.note(share, 58, each, said, dx=17))
    more, foot = shown.flow(74 + LINE, OF_LOAD)
    return Drawn(pieces + more, foot)


def _battery(shown: Shown) -> Drawn:
    pieces = [
        block(0, 40, 20, 60, fill="none", stroke=INK, stroke_width=2.5),
        *(across(at, path((-8, 20), (-8, 13), (8, 13), (8, 20), width=2.5)) for at in (9, 31)),
        shown.note(20, 46, "battery_ah", "", "middle"),
        shown.note(20, 66, "battery_volts", "", "middle"),
        line(40, 64, 50, stroke=ACCENT, stroke_width=2.5),
        block(64, 100, 30, 40, fill="none", stroke=SOFT, stroke_width=2),
        words(82, 55, "alarm panel", "middle"),
    ]
    more, foot = shown.flow(80 + LINE, OF_BATTERY)
    return Drawn(pieces + more, foot)


def _names(*rows: Rows) -> tuple[str, ...]:
    return tuple(name for each in rows for name, _ in each)


SIGNAL = Drawing(
    "A signal from 4 to 20 mA",
    ("loop_current", *_names(AT_FOUR, AT_TWENTY, AT_MARK)),
    _signal,
    core=_names(AT_TWENTY),
)
LEAD_LAG = Drawing(
    "Lead, lag and off",
    ("inflow", *_names(BETWEEN, FLOWS, OF_WELL)),
    _lead_lag,
    core=("lag_volume", "lag_depth", "lag_pump_down", "off_delay"),
)
CONTROL_LOAD = Drawing(
    "What the control circuit feeds",
    _names(COILS, LIGHTS, OF_LOAD),
    _control_load,
    core=("coil_va",),
)
ALARM_BATTERY = Drawing(
    "An alarm panel on its battery",
    ("battery_ah", "battery_volts", *_names(OF_BATTERY)),
    _battery,
    core=("battery_ah",),
)
