"""What came of one pump's day, as plain text and as HTML.

Both say what to check next first, then each finding with its work, then what to mind.
"""

from collections import Counter
from collections.abc import Iterable, Iterator
from textwrap import indent

from solver.own.record import (
    BEYOND,
    COARSE,
    LOOK,
    NO_LIMIT,
    NOT_MEASURED,
    STATES,
    WITHIN,
    Examined,
    Finding,
    Record,
    field_named,
)
from solver.render.html import step_html
from solver.render.text import steps_text
from solver.units.show import capital, exact, figures, with_unit
from workbook.ui.cautions import caution_line, caution_lines
from workbook.ui.markup import Markup, joined, tag

from .reading import Message

__all__ = ["examined_html", "page_text", "pressing_first", "read_rows", "summary", "value_said"]

# The mark that goes with each state's word, and the class that goes with its color.
MARKS = {
    BEYOND: ("✗", "w2w-wrong"),
    LOOK: ("!", "w2w-notice"),
    COARSE: ("?", "w2w-notice"),
    WITHIN: ("✓", "w2w-right"),
    NO_LIMIT: ("–", "w2w-plain"),
}
STEP = "    "  # before each line of work


def page_text(examined: Examined, messages: Iterable[Message] = ()) -> str:
    """One record: what to check next, what was found with its work, and what to mind."""
    record = examined.record
    head = [_title(examined), examined.always, "", f"In short: {summary(examined)}."]
    work = [found for found in examined.findings if found.state != NOT_MEASURED]
    parts = [
        "\n".join(head),
        _numbered("Check next", examined.next_checks),
        _dashed("These readings contradict each other", examined.contradictions),
        _dashed("Notes on this row", map(str, messages)),
        _dashed("Unusual", examined.notices),
        _dashed("What was read", (f"{label}: {value}" for _, label, value in read_rows(record))),
        _titled("What was found", "\n\n".join(_found_text(one, record.units) for one in work)),
        _dashed("Not measured", examined.not_measured),
        _dashed(
            "Other columns, kept as they are",
            (f"{name}: {text}" for name, text in record.others.items()),
        ),
        _dashed("Cautions", caution_lines(*examined.cautions)),
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


def _found_text(found: Finding, units: str) -> str:
    verdict = found.verdict
    lines = [f"[{found.state}] {_headed(found, units)}", f"  {verdict.says}"]
    if verdict.limit:
        lines.append(f"  Limit: {verdict.limit}. Source: {verdict.source}.")
    if found.steps:
        lines.append(indent(steps_text(found.steps, found.known, found.given, units), STEP))
    return "\n".join(lines)


def value_said(found: Finding) -> str:
    """What was worked, to four figures with its unit; "" where nothing could be."""
    return "" if found.value is None else with_unit(figures(found.value, found.unit), found.unit)


def _headed(found: Finding, units: str) -> str:
    label, value = found.check.label(units), value_said(found)
    return f"{label}: {value}" if value else label


def _titled(title: str, body: str) -> str:
    return f"{title}\n{'-' * len(title)}\n{body}" if body else ""


def _dashed(title: str, lines: Iterable[str]) -> str:
    return _titled(title, "\n".join(f"- {line}" for line in lines))


def _numbered(title: str, lines: Iterable[str]) -> str:
    return _titled(title, "\n".join(f"{at}. {line}" for at, line in enumerate(lines, 1)))


def examined_html(examined: Examined, messages: Iterable[Message] = ()) -> Markup:
    """One record as a reader wants it: in short, what to do, what was found, what to mind."""
    date = examined.record.texts.get("date", "no date")
    return tag(
        "div",
        tag("h3", f"{capital(examined.record.name)}, {date}"),
        _found(examined),
        _listed("Check next", examined.next_checks, "ol"),
        _listed("These readings contradict each other", examined.contradictions),
        _listed("Notes on this row", map(str, messages)),
        _listed("Unusual", examined.notices),
        _in_a_row("Not measured", examined.not_measured),
        tag("p", tag("b", examined.always), cls="w2w-always"),
        _cautions(examined.cautions),
        cls="w2w-record",
    )


def pressing_first(examined: Examined) -> list[Finding]:
    """What could be worked or is to be looked at, the most pressing first."""
    found = [one for one in examined.findings if one.state != NOT_MEASURED]
    return sorted(found, key=lambda one: STATES.index(one.state))


def _found(examined: Examined) -> Markup | None:
    """One table: what was checked, the result, its limit and a mark; each row opens to its work.

    What has no limit comes last, as the rows are in the order of their states.
    """
    found, units = pressing_first(examined), examined.record.units
    if not found:
        return None
    heads = (tag("span", head) for head in ("Check", "Result", "Limit", ""))
    return joined(
        tag("div", heads, cls="w2w-checks-head", aria_hidden="true"),
        tag("ul", (_finding(one, units) for one in found), cls="w2w-checks"),
    )


def _finding(found: Finding, units: str) -> Markup:
    """One row, which opens to the verdict, the limit with its source, and the work."""
    (mark, color), verdict = MARKS[found.state], found.verdict
    bound = joined(tag("span", "limit ", cls="w2w-heard"), verdict.bound) if verdict.bound else "–"
    sign = tag("span", mark, cls="w2w-mark", aria_hidden="true")
    state = tag("span", sign, f" {capital(found.state)}", cls="w2w-state")
    cells = (capital(found.check.label(units)), value_said(found) or "–", bound)
    limit = f"Limit: {verdict.limit}. Source: {verdict.source}."
    return tag(
        "li",
        tag(
            "details",
            tag("summary", (tag("span", cell) for cell in cells), state),
            tag("p", verdict.says),
            tag("p", verdict.then) if verdict.then else None,
            tag("p", limit, cls="w2w-source") if verdict.limit else None,
            _work(found, units),
        ),
        cls=f"w2w-checked {color}",
    )


def _work(found: Finding, units: str) -> Markup | None:
    if not found.steps:
        return None
    steps = (
        Markup(step_html(number, step, found.known, found.given, units))
        for number, step in enumerate(found.steps, 1)
    )
    return tag("ol", steps, cls="w2w-steps")


def _listed(title: str, lines: Iterable[str], kind: str = "ul") -> Markup | None:
    items = [tag("li", line) for line in lines]
    return joined(tag("h4", title), tag(kind, items)) if items else None


def _in_a_row(title: str, names: Iterable[str]) -> Markup | None:
    text = "; ".join(names)
    return joined(tag("h4", title), tag("p", f"{text[:1].upper()}{text[1:]}.")) if text else None


def _cautions(topics: tuple[str, ...]) -> Markup | None:
    return tag("div", Markup(caution_line(*topics).html), cls="w2w-minded") if topics else None
