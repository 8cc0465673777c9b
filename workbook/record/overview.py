"""A plant on one screen: its pumps by what is checked, a mark for each year."""

from collections.abc import Sequence

from solver.own.record import CHECKS, Examined, Finding, examine
from solver.units.show import capital
from workbook.ui.markup import Markup, joined, tag

from .findings import MARKS, value_said
from .fleet import Fleet, when
from .reading import Pump

__all__ = ["plant_html"]

# What tells most of a pump in one word each, by the names of their checks.
SHOWN = (
    *("insulation_at_40", "polarization_index", "resistance_unbalance", "voltage_unbalance"),
    *("current_unbalance", "amps_highest", "motor_load", "flow_share", "overall_efficiency"),
)
MOST_PUMPS, MOST_DAYS = 60, 6
NOT_THERE = "·"
LABELS = {check.name: check for check in CHECKS}


def plant_html(fleet: Fleet) -> Markup:
    """A row for each pump, a column for each check; the marks go from the oldest day to the newest.

    Only checks that some pump had are there, of the first 60 pumps and their last 6 days.
    """
    pumps = [(name, _newest(fleet.years(key))) for name, key in fleet.pumps[:MOST_PUMPS]]
    days = [(name, [examine(one.record) for one in records]) for name, records in pumps]
    there = [at for at in SHOWN if any(_found(day, at) for _, row in days for day in row)]
    if not there:
        return Markup()
    units = days[0][1][0].record.units
    heads = (tag("th", capital(LABELS[at].label(units)), scope="col") for at in there)
    rows = (
        tag("tr", tag("th", name, scope="row"), [_cell(row, at) for at in there])
        for name, row in days
    )
    left = len(fleet.pumps) - len(pumps)
    more = f"The first {MOST_PUMPS} pumps are shown; {left} more are in the list." if left else ""
    return joined(
        tag("h4", "The whole plant"),
        tag("p", _legend(), cls="w2w-about"),
        tag(
            "div",
            tag("table", tag("thead", tag("tr", tag("td"), heads)), tag("tbody", rows)),
            cls="w2w-plant", tabindex="0", role="region", aria_label="The whole plant",
        ),
        tag("p", more, cls="w2w-about") if more else None,
    )  # fmt: skip


def _newest(years: Sequence[Pump]) -> list[Pump]:
    return sorted(years, key=lambda one: when(one.record))[-MOST_DAYS:]


def _found(day: Examined, check: str) -> Finding | None:
    """What came of a check on a day; None where nothing was worked."""
    found = day.finding(check)
    return found if found and found.value is not None else None


def _cell(days: Sequence[Examined], check: str) -> Markup:
    """The marks of the days, and the newest value under them; in words for who can't see them.

    The words begin with the check: on a telephone the columns have no heads to be read.
    """
    found = [(day.record.texts.get("date", "no date"), _found(day, check)) for day in days]
    marks = (_mark(one, newest=at == len(found)) for at, (_, one) in enumerate(found, 1))
    last = next((one for _, one in reversed(found) if one), None)
    spoken = "; ".join(f"{date}: {one.state}, {value_said(one)}" for date, one in found if one)
    return tag(
        "td",
        tag("span", marks, aria_hidden="true", cls="w2w-marks"),
        tag(
            "span",
            value_said(last) if last else "not measured",
            aria_hidden="true",
            cls="w2w-newest",
        ),
        tag(
            "span",
            f"{LABELS[check].label(days[0].record.units)}: {spoken or 'not measured'}",
            cls="w2w-heard",
        ),
        title=spoken,
    )


def _mark(found: Finding | None, *, newest: bool) -> Markup:
    sign, color = MARKS[found.state] if found else (NOT_THERE, "w2w-plain")
    return tag("b" if newest else "span", sign, cls=color)


def _legend() -> Markup:
    states = (f"{sign} {state}" for state, (sign, _) in MARKS.items())
    return joined(
        f"{', '.join(states)}, {NOT_THERE} not measured. The newest day is last",
        tag("span", ", its value under it", cls="w2w-newest"),
        ". Choose a pump below to see its values.",
    )
