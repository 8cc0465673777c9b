"""How a study stands, in sentences, lists and tables."""

from collections.abc import Iterable, Mapping, Sequence
from datetime import date, datetime, timedelta

from solver.units.show import counted
from workbook.log import Log
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pages import Chapter as Page
from workbook.ui.pieces import table

from .home_shown import why
from .pieces import bar, day_in_words, page_link, short_day
from .progress import AHEAD, Chapter, Flaw, Kind, Progress

__all__ = [
    "NO_FLAWS",
    "calendar",
    "chapters_list",
    "coming",
    "flaw",
    "minutes",
    "summary",
]

NO_FLAWS = "You haven't made the same mistake twice lately. If you do, it shows here."
NOTHING_BACK = "Nothing more comes back today. Try a new kind any time."
HEADS = ("Kind of problem", "Right the first time", "Level", "Comes back", "Usual time")
NONE = "not tried"
SHOWN = 3  # lines of a log that could not be read and are named
WEEKS = 9  # of the calendar
SHADES = 4
DAYS = ("Mon", "Tue", "Wed", "Thu", "Fri", "Sat", "Sun")


def summary(told: Progress, log: Log) -> Markup:
    """How much was done, and what of the log could not be read."""
    if not told.problems:
        text = "Your log is empty so far. Every answer you give on any page is kept here."
    else:
        days = len(told.days)
        text = f"You have worked on {counted(told.problems, 'problem')}, on {counted(days, 'day')}."
    return joined(tag("p", text), _strange(log), _waiting(log))


def _strange(log: Log) -> Markup | None:
    if not log.strange:
        return None
    named = "; ".join(f"line {one.number}: {one.why}" for one in log.strange[:SHOWN])
    more = f"; and {len(log.strange) - SHOWN} more" * (len(log.strange) > SHOWN)
    return tag(
        "p",
        f"{counted(len(log.strange), 'line')} of your log couldn't be read "
        f"({named}{more}). All the others count, and nothing was removed from the file. "
        f"The file is {log.path}",
    )


def _waiting(log: Log) -> Markup | None:
    if not log.waiting:
        return None
    many = counted(len(log.waiting), "answer")
    they = "It is" if len(log.waiting) == 1 else "They are"
    return tag("p", f"{many} couldn't be saved yet. {they} kept and saved with your next one.")


def chapters_list(
    told: Progress,
    kinds: Mapping[str, Sequence[Kind]],
    pages: Mapping[str, Page],
    now: datetime,
) -> Markup:
    """Each chapter with how it stands, to open: a table of its kinds, and the way to its page."""
    back = {one.family.name for one in told.back}
    return joined(_chapter(one, kinds[one.name], pages, back, now) for one in told.chapters)


def _chapter(
    one: Chapter,
    kinds: Iterable[Kind],
    pages: Mapping[str, Page],
    back: Iterable[str],
    now: datetime,
) -> Markup:
    page = pages.get(one.name)
    title = page.title if page else one.name
    rows = [_kind_row(kind, back, now) for kind in kinds]
    return tag(
        "details",
        tag(
            "summary",
            tag("span", title),
            bar(one.sure / one.kinds, one.tried / one.kinds),
            tag("span", standing(one), cls="w2w-about"),
        ),
        _across(table(rows, "", HEADS, "w2w-rows"), title),
        tag("p", page_link(f"Go to {title}", page.file)) if page else None,
        cls="w2w-chapter",
    )


def _across(shown: Markup, title: str) -> Markup:
    """A wide table in a region of its own that moves sideways, by keyboard too."""
    return tag("div", shown, cls="w2w-across", role="region", tabindex=0, aria_label=title)


def standing(one: Chapter) -> str:
    """How a chapter stands, in words: the kinds tried, how much went right lately, what comes back."""
    if not one.tried:
        return f"not started, {counted(one.kinds, 'kind')}"
    said = [f"{one.tried} of {one.kinds} tried", f"{one.right} of {one.lately} right"]
    if one.back:
        said.append(f"{one.back} back today")
    return ", ".join(said)


def _kind_row(kind: Kind, back: Iterable[str], now: datetime) -> tuple[str, ...]:
    return (
        kind.family.title,
        f"{kind.right} of {kind.lately}" if kind.lately else NONE,
        str(kind.level),
        _when(kind, back, now),
        minutes(kind.seconds),
    )


def _when(kind: Kind, back: Iterable[str], now: datetime) -> str:
    if kind.due is None:
        return "–"
    today = kind.family.name in back
    return "today" if today else day_in_words(kind.due.astimezone(now.tzinfo).date())


def minutes(seconds: float | None) -> str:
    """A time as a person says it, to the nearest half minute.

    >>> minutes(44.2), minutes(190), minutes(None)
    ('44 s', '3 min', '–')
    """
    if seconds is None:
        return "–"
    return f"{seconds:.0f} s" if seconds < 59.5 else f"{round(seconds / 30) / 2:g} min"


def flaw(one: Flaw) -> Markup:
    """A mistake that recurs, in words, and where."""
    times = counted(one.recurring.times, "time")
    return tag("p", tag("b", one.family.title), f", {times} lately. {one.says}")


def coming(told: Progress, now: datetime) -> Markup:
    """What comes back today, each kind with why, and how many on which of the days to come."""
    if not told.back_on:
        return tag("p", f"Nothing comes back in the next {AHEAD} days. Try a new kind any time.")
    items = [tag("li", one.family.title, " ", tag("span", why(one, now))) for one in told.back]
    today = tag("div", tag("ul", items), cls="w2w-back") if items else tag("p", NOTHING_BACK)
    later = sorted((day, many) for day, many in told.back_on.items() if day != now.date())
    rows = [(day_in_words(day), many) for day, many in later]
    return joined(today, table(rows, "After today", ("Day", "Kinds"), "w2w-rows w2w-narrow"))


def calendar(told: Progress, today: date) -> Markup:
    """The last weeks, a column each: how many problems on which day; more of them, more color."""
    monday = today - timedelta(days=today.weekday())
    weeks = [monday - timedelta(days=7 * n) for n in reversed(range(WEEKS))]
    most = max((told.days[w + timedelta(days=d)] for w in weeks for d in range(7)), default=0)
    head = tag("tr", tag("td"), [_week_head(n, week) for n, week in enumerate(weeks)])
    body = (
        tag(
            "tr",
            tag("th", name, scope="row"),
            [_day(told, w + timedelta(days=n), most) for w in weeks],
        )
        for n, name in enumerate(DAYS)
    )
    caption = tag("caption", f"Problems you worked on, the last {WEEKS} weeks")
    return tag("table", caption, tag("thead", head), tag("tbody", body), cls="w2w-calendar")


def _week_head(place: int, week: date) -> Markup:
    """Every third week is named; the others are for a screen reader."""
    named = tag("span", short_day(week), cls="" if place % 3 == 0 else "w2w-heard")
    return tag("th", named, scope="col")


def _day(told: Progress, day: date, most: int) -> Markup:
    many = told.days[day]
    shade = -(-SHADES * many // most) if many else 0
    return tag("td", many or "", cls=f"w2w-shade-{shade}" if shade else "")
