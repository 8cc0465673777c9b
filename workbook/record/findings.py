"""What came of one pump's day as HTML: what to check next first, then each finding with its work."""

from collections.abc import Iterable
from html import escape

from solver.own.record import (
    BEYOND,
    LOOK,
    NO_LIMIT,
    NOT_MEASURED,
    STATES,
    WITHIN,
    Examined,
    Finding,
)
from solver.render.html import step_html
from solver.units.show import capital, figures, with_unit
from workbook.ui.cautions import caution_box

from .page import summary
from .reading import Message

__all__ = ["examined_html", "pressing_first"]

# The mark that goes with each state's word, and the class that goes with its colour.
MARKS = {
    BEYOND: ("✗", "w2w-wrong"),
    LOOK: ("!", "w2w-notice"),
    WITHIN: ("✓", "w2w-right"),
    NO_LIMIT: ("–", "w2w-plain"),
}


def pressing_first(examined: Examined) -> list[Finding]:
    """What could be worked or is to be looked at, the most pressing first."""
    found = [one for one in examined.findings if one.state != NOT_MEASURED]
    return sorted(found, key=lambda one: STATES.index(one.state))


def examined_html(examined: Examined, messages: Iterable[Message] = ()) -> str:
    """One record as a reader wants it: in short, what to do, what was found, what to mind."""
    date = examined.record.texts.get("date", "no date")
    parts = [
        f"<h3>{escape(f'{examined.record.name}, {date}')}</h3>",
        f'<p class="w2w-always"><b>{escape(examined.always)}</b></p>',
        f"<p>In short: {escape(summary(examined))}.</p>",
        _listed("Check next", examined.next_checks, "ol"),
        _listed("These readings contradict each other", examined.contradictions),
        _listed("Notes on this row", map(str, messages)),
        _found(examined),
        _listed("Unusual", examined.notices),
        _in_a_row("Not measured", examined.not_measured),
        _cautions(examined.cautions),
    ]
    return f'<div class="w2w-record">{"".join(parts)}</div>'


def _found(examined: Examined) -> str:
    """Each finding; those for which no limit is known are there to open, or the page is too long."""
    found, units = pressing_first(examined), examined.record.units
    plain = [_finding(one, units) for one in found if one.state == NO_LIMIT]
    judged = [_finding(one, units) for one in found if one.state != NO_LIMIT]
    title = f"Calculated, with no limit to compare: {len(plain)}"
    shown = f'<ul class="w2w-findings">{"".join(judged)}</ul>' if judged else ""
    if plain:
        opened = " open" if not judged else ""
        shown += (
            f"<details{opened}><summary>{title}</summary>"
            f'<ul class="w2w-findings">{"".join(plain)}</ul></details>'
        )
    return f"<h4>What was found</h4>{shown}" if shown else ""


def _finding(found: Finding, units: str) -> str:
    """One finding: its state in a word and a mark, the verdict, the limit, the work to open."""
    (mark, colour), verdict = MARKS[found.state], found.verdict
    value = ""
    if found.value is not None:
        value = f": {with_unit(figures(found.value, found.unit), found.unit)}"
    label = found.check.label(units)
    limit = f"Limit: {verdict.limit}. Source: {verdict.source}." if verdict.limit else ""
    return (
        f'<li class="w2w-finding {colour}"><p class="w2w-want">{escape(label)}{escape(value)}</p>'
        f'<p class="w2w-state"><span class="w2w-mark" aria-hidden="true">{mark}</span>'
        f"{escape(capital(found.state))}</p><p>{escape(verdict.says)}</p>"
        + (f'<p class="w2w-source">{escape(limit)}</p>' if limit else "")
        + _work(found, units)
        + "</li>"
    )


def _work(found: Finding, units: str) -> str:
    if not found.steps:
        return ""
    steps = "".join(
        step_html(number, step, found.known, found.given, units)
        for number, step in enumerate(found.steps, 1)
    )
    title = f"The worked solution: {found.check.label(units)}"
    return (
        f'<details><summary>{escape(title)}</summary><ol class="w2w-steps">{steps}</ol></details>'
    )


def _listed(title: str, lines: Iterable[str], kind: str = "ul") -> str:
    items = "".join(f"<li>{escape(line)}</li>" for line in lines)
    return f"<h4>{title}</h4><{kind}>{items}</{kind}>" if items else ""


def _in_a_row(title: str, names: Iterable[str]) -> str:
    text = escape("; ".join(names))
    return f"<h4>{title}</h4><p>{text[:1].upper()}{text[1:]}.</p>" if text else ""


def _cautions(topics: tuple[str, ...]) -> str:
    if not topics:
        return ""
    return f'<div class="w2w-minded">{caution_box(*topics).html}</div>'
