"""A case as HTML: what is reported, the station, the clipboard, what came of a step, the review."""

from collections.abc import Iterator
from pathlib import Path

from solver.fault.case import LEVELS, FaultCase
from solver.fault.finding import Finding
from solver.fault.record import last_year
from solver.fault.review import Turn, turns
from solver.fault.safety import STEPS
from solver.fault.way import NAME, Told, Way
from solver.render.fault import best_text, grouped, summary
from solver.render.picture import picture, texts_of
from solver.render.station import plates
from solver.station.faults import FAULTS
from solver.units.show import capital, counted
from workbook.ui.markup import Markup, joined, style, tag
from workbook.ui.pieces import say, state_line, table

__all__ = [
    "LOOK",
    "clipboard_html",
    "head_html",
    "records_html",
    "review_html",
    "said_of",
    "standing",
    "station_html",
]

LOOK = style(Path(__file__).with_name("fault.css"))
ON_THE_DRAWING = (
    *("static_head", "pipe_diameter", "pipe_length", "on_level", "off_level"),
    *("motor_size", "rated_volts", "full_load_amps", "service_factor"),
)
NOT_READ = ("amps_a", "amps_b", "amps_c", "discharge_gauge")


def head_html(way: Way) -> Markup:
    """The small line, the report, and what is known of the pump."""
    case = way.case
    place = case.station.place
    above = f"Level {case.level} · {place.name} at {place.station} · {case.code}"
    return joined(
        tag("p", above, cls="w2w-above"),
        tag("h3", case.title),
        tag("p", case.report, cls="w2w-question"),
    )


def station_html(way: Way) -> Markup:
    """The drawing, with the nameplate and what was read so far; "?" at what wasn't."""
    case = way.case
    known = texts_of(case.station)
    texts = {name: known[name] for name in ON_THE_DRAWING if name in known}
    texts |= dict.fromkeys(NOT_READ, "?")
    for one in way.found:
        texts |= {s.signal.name: s.text(case.units) for s in one.shown if s.signal.name in known}
    names = [name for name in known if name in texts]
    return Markup(
        picture(
            case.station, {name: texts[name] for name in names}, f"fault-station-{case.code.seed}"
        )
    )


def records_html(case: FaultCase) -> Markup:
    """What is on the clipboard from the start: nameplates and last year's record, each folded."""
    recorded = [(capital(one.signal.label), one.text(case.units)) for one in last_year(case)]
    parts = [_folded("Last year's record", table(recorded))]
    plated = [table(rows, caption=title) for title, rows in plates(case.station)]
    return joined(*parts, _folded("Nameplates and drawings", plated))


def _folded(title: str, *inside: object) -> Markup:
    return tag("details", tag("summary", title), *inside, cls="w2w-known")  # type: ignore[arg-type]


def clipboard_html(way: Way) -> Markup:
    """What was read, beside last year's; with what else was told."""
    units = way.case.units
    before = {one.signal.name: one.text(units) for one in last_year(way.case)}
    rows = [
        (capital(s.signal.label), tag("b", s.text(units)), before.get(s.signal.name, "–"))
        for one in way.found
        for s in one.shown
    ]
    said = [tag("p", one.says) for one in way.found if one.says]
    if not rows:
        return joined(tag("p", "Nothing read yet.", cls="w2w-small"), said)
    return joined(table(rows, heads=("", "now", "last year"), cls="w2w-givens w2w-clip"), said)


def standing(way: Way, untold: bool = False) -> str:
    """Minutes used, and how many suspects the readings leave; level 3 and an exam leave that to the reader."""
    used = f"{counted(way.minutes, 'minute')} used."
    if untold or way.case.level == 3:
        return f"{used} {len(way.case.suspects)} faults could be behind this."
    left = len(way.left())
    if not way.taken:
        return f"{used} One of {left} faults is behind this."
    return f"{used} Your readings leave {left} of {len(way.case.suspects)} faults."


def said_of(way: Way, told: Told) -> Markup:
    """What came of the last step."""
    case = way.case
    if told.stopped:
        return say("notice", f"Stopped. {told.stopped.says}", foot=told.stopped.source)
    if told.found:
        return _found(way, told.found, told.minutes)
    if told.word in STEPS:
        step = STEPS[told.word]
        return say("note", f"{step.label}: done, {counted(told.minutes, 'minute')}.")
    if told.word.startswith(NAME):
        name = told.word.removeprefix(NAME)
        if name != case.fault:
            return say("wrong", told.says)
        return say("right", f"It's “{FAULTS[name].label}”. Now say what you do about it.")
    return say("note")


def _found(way: Way, found: Finding, minutes: int) -> Markup:
    act, units = way.case.acts[found.act], way.case.units
    now = next(one for one in way.found if one.act == found.act)
    readings = "; ".join(one.named(units) for one in now.shown)
    return tag(
        "div",
        state_line("✓", f"{capital(act.label)}, {counted(minutes, 'minute')}"),
        tag("p", " ".join(filter(None, (f"{capital(readings)}." if readings else "", found.says)))),
        tag("p", act.how, cls="w2w-foot"),
        cls="w2w-say w2w-note",
        role="status",
        aria_live="polite",
    )


def review_html(way: Way) -> Markup:
    """The lesson: the outcome, then each reading with what it ruled out and what would have told more."""
    items = [tag("li", line) for line in summary(way)]
    unsafe = [
        tag("li", f"{told.stopped.says} ", tag("cite", told.stopped.source))
        for told in way.unsafe
        if told.stopped
    ]
    return joined(
        tag("h3", f"It was: {FAULTS[way.case.fault].label}"),
        tag("ul", items[1:]),
        joined(tag("h4", "What was stopped"), tag("ul", dict.fromkeys(unsafe))) if unsafe else None,
        tag("h4", "Your readings, one by one"),
        list(_turns(way)) or tag("p", "You took no reading. A name without one is a guess."),
        tag(
            "p",
            f"Level {way.case.level}: {LEVELS[way.case.level]}. Case {way.case.code}.",
            cls="w2w-small",
        ),
    )


def _turns(way: Way) -> Iterator[Markup]:
    before = len(way.case.suspects)
    for number, turn in enumerate(turns(way), 1):
        label = capital(way.case.acts[turn.found.act].label)
        yield tag(
            "section",
            tag(
                "p",
                tag("b", f"{number}. {label}"),
                f": from {before} to {len(turn.left)} left",
                cls="w2w-want",
            ),
            _ruled_out(turn),
            tag("p", best_text(way.case, turn), cls="w2w-why"),
            cls="w2w-turn",
        )
        before = len(turn.left)


def _ruled_out(turn: Turn) -> Markup:
    parts = [
        (tag("p", read), tag("ul", [_out(who, would) for would, who in by_would.items()]))
        for read, by_would in grouped(turn).items()
    ]
    return joined(parts) if parts else tag("p", "It ruled nothing out.")


def _out(faults: list[str], would: str) -> Markup:
    return tag("li", tag("b", capital("; ".join(faults))), f". {would}")
