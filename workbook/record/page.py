"""What came of one pump as a page of plain text."""

from collections import Counter
from collections.abc import Iterable, Iterator
from textwrap import indent

from solver.own.record import NOT_MEASURED, STATES, Examined, Finding, Record, field_named
from solver.render.text import steps_text
from solver.units.show import exact, figures, with_unit
from workbook.ui.cautions import caution_lines

from .reading import Message

__all__ = ["page_text", "read_rows", "summary"]

STEP = "    "


def page_text(examined: Examined, messages: Iterable[Message] = ()) -> str:
    """One record: what to check next, what was found with its work, and what to mind."""
    record = examined.record
    head = [_title(examined), examined.always, "", f"In short: {summary(examined)}."]
    work = [found for found in examined.findings if found.state != NOT_MEASURED]
    parts = [
        "\n".join(head),
        _numbered("Check next", examined.next_checks),
        _listed("These readings contradict each other", examined.contradictions),
        _listed("Notes on this row", map(str, messages)),
        _listed("Unusual", examined.notices),
        _listed("What was read", (f"{label}: {value}" for _, label, value in read_rows(record))),
        _titled("What was found", "\n\n".join(_found(one, record.units) for one in work)),
        _listed("Not measured", examined.not_measured),
        _listed(
            "Other columns, kept as they are",
            (f"{name}: {text}" for name, text in record.others.items()),
        ),
        _listed("Cautions", caution_lines(*examined.cautions)),
    ]
    return "\n\n".join(filter(None, parts)) + "\n"


def summary(examined: Examined) -> str:
    """How many findings there are in each state, the most pressing first."""
    count = Counter(found.state for found in examined.findings)
    return ", ".join(f"{count[state]} {state}" for state in STATES if count[state])


def _title(examined: Examined) -> str:
    texts = examined.record.texts
    said = [examined.record.name, texts.get("date", "no date")]
    by = [f"Read by {texts['person']}."] if "person" in texts else []
    title = f"Pump-day record: {', '.join(said)}"
    return "\n".join([title, "=" * len(title), *by])


def read_rows(record: Record) -> Iterator[tuple[str, str, str]]:
    """What was read besides who, where and when: the group, the label and the value as written."""
    words = ("station", "pump", "date", "person")
    for name, text in record.texts.items():
        if name not in words:
            yield field_named(name).group, field_named(name).label, text
    for name, value in record.values.items():
        field = field_named(name)
        unit = field.unit(record.units)
        over = "over " if name in record.over else ""
        yield field.group, field.label, over + with_unit(exact(value, unit), unit)
    for name, text in record.unread.items():
        yield field_named(name).group, field_named(name).label, f"{text} (not read)"


def _found(found: Finding, units: str) -> str:
    verdict = found.verdict
    value = (
        ""
        if found.value is None
        else f": {with_unit(figures(found.value, found.unit), found.unit)}"
    )
    lines = [f"[{found.state}] {found.check.label(units)}{value}", f"  {verdict.says}"]
    if verdict.limit:
        lines.append(f"  Limit: {verdict.limit}. Source: {verdict.source}.")
    if found.steps:
        lines.append(indent(steps_text(found.steps, found.known, found.given, units), STEP))
    return "\n".join(lines)


def _titled(title: str, body: str) -> str:
    return f"{title}\n{'-' * len(title)}\n{body}" if body else ""


def _listed(title: str, lines: Iterable[str]) -> str:
    return _titled(title, "\n".join(f"- {line}" for line in lines))


def _numbered(title: str, lines: Iterable[str]) -> str:
    return _titled(title, "\n".join(f"{at}. {line}" for at, line in enumerate(lines, 1)))
