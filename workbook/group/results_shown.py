"""The results of a group in sentences, tables, HTML and a file, with names or without."""

from collections import Counter
from collections.abc import Mapping, Sequence
from hashlib import sha256
from urllib.parse import quote

from solver import Case
from solver.units.show import counted
from workbook.figures import View, table_html
from workbook.ui.flaws import Flaw
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pages import chapters, titles
from workbook.ui.pieces import listed
from workbook.ui.spreadsheet import csv_of

from .members import fold
from .results import AT_ONCE, LATER, NOT_YET, STATES, UNTRIED, Cell, GroupFacts
from .set_text import ProblemSet, Question

__all__ = [
    "alike",
    "flaws_html",
    "names_for",
    "questions_html",
    "results_csv",
    "summary",
    "table_of_counts",
]

HEADS = ("Question", "First try", "Later", "Not yet", "Not tried")
CSV_HEADS = (
    "member",
    "question",
    "kind",
    "code",
    "state",
    "tries",
    "hints",
    "in words",
    "mistakes",
)
MOST = 5  # mistakes told; a group makes many that one member makes
LOOKS = {
    AT_ONCE: ("✓", "right"),
    LATER: ("✓", "right"),
    NOT_YET: ("✗", "wrong"),
    UNTRIED: ("–", "plain"),
}
NO_FLAWS = "Nobody made a mistake that this workbook knows by name."


def names_for(told: GroupFacts, problems: ProblemSet, hidden: bool) -> dict[str, str]:
    """What each member is called, by key, in the order to show them.

    Without names it is a number that says nothing of them: the same each time for the same
    results, and in no order of names.
    """
    keys = [member.key for member in told.members]
    if hidden:
        keys.sort(
            key=lambda key: sha256(f"{problems.key} {key}".encode("utf-8", "replace")).digest()
        )
        return {key: f"Member {number}" for number, key in enumerate(keys, 1)}
    called = [member.name or "No name" for member in told.members]
    many, given = Counter(map(fold, called)), Counter[str]()
    names: dict[str, str] = {}
    for member, name in zip(told.members, called, strict=True):
        shown = name if member.name and many[fold(name)] == 1 else ""
        while not shown or shown in names.values():  # somebody may have typed “Ana 2”
            given[fold(name)] += 1
            shown = f"{name} {given[fold(name)]}"
        names[member.key] = shown
    return names


def alike(told: GroupFacts, names: Mapping[str, str]) -> dict[str, list[str]]:
    """What the members are called whose name has results with no answer in common, by that name."""
    found: dict[str, list[str]] = {}
    for member in told.members:
        if member.alike:
            found.setdefault(member.alike, []).append(names[member.key])
    return {name: sorted(called) for name, called in found.items()}


def summary(told: GroupFacts) -> str:
    """How many members there are, and how much they got."""
    many, members = len(told.questions) * len(told.members), len(told.members)
    states = Counter(cell.state for row in told.cells for cell in row)
    right = states[AT_ONCE] + states[LATER]
    return (
        f"{counted(members, 'member')}, {counted(len(told.questions), 'question')}: "
        f"{right:,} of {many:,} right, {states[AT_ONCE]:,} of them on the first try."
    )


def _table(told: GroupFacts) -> View:
    """How many members stand how with each question."""
    rows = tuple(
        (f"{question.number}. {question.title}", *_counts(row))
        for question, row in zip(told.questions, told.cells, strict=True)
    )
    return View("How each member did on each question", "", HEADS, rows, {}, "")


def _counts(row: Sequence[Cell]) -> list[str]:
    states = Counter(cell.state for cell in row)
    return [str(states[state]) for state in STATES]


def _by_member(
    told: GroupFacts, names: Mapping[str, str], row: Sequence[Cell]
) -> list[tuple[str, Cell]]:
    """How each member stands with a question, by what they are called, in the order to show them."""
    places = {member.key: place for place, member in enumerate(told.members)}
    return [(name, row[places[key]]) for key, name in names.items()]


def _state(cell: Cell) -> str:
    """How a member stands with a question.

    >>> _state(Cell(LATER, 2, 1)), _state(Cell("not yet", 1)), _state(Cell("not yet", shown=True))
    ('right after 2 tries, with 1 hint', 'not right yet after one try', 'opened the worked solution')
    """
    if cell.state == AT_ONCE:
        return "right on the first try"
    if cell.state == UNTRIED:
        return "not tried"
    after = f" after {'one try' if cell.tries == 1 else f'{cell.tries} tries'}" * bool(cell.tries)
    hints = f", with {counted(cell.hints, 'hint')}" if cell.hints else ""
    seen = "opened the worked solution" if cell.shown else "not right yet"
    return f"{'right' if cell.state == LATER else seen}{after}{hints}"


def _mistakes_in(question: Question, cell: Cell) -> list[str]:
    """A sentence for each mistake of a member that has a name."""
    known = question.case.mistakes if isinstance(question.case, Case) else ()
    says = {mistake.id: mistake.says for mistake in known}
    return [says[mistake] for mistake in cell.mistakes if mistake in says]


def _flaw_lines(flaw: Flaw, members: int) -> list[str]:
    """How many made a mistake and where, what was done, and why that is wrong."""
    where = f"question{'s' * (len(flaw.questions) > 1)} {listed(flaw.questions)}"
    why = f"{flaw.why[:1].upper()}{flaw.why[1:]}"
    return [f"{len(flaw.people)} of {counted(members, 'member')}, in {where}.", flaw.says, why]


def results_csv(told: GroupFacts, names: Mapping[str, str]) -> bytes:
    """A row for each question and member, for a spreadsheet."""
    rows = [
        _row(name, question, cell)
        for question, row in zip(told.questions, told.cells, strict=True)
        for name, cell in _by_member(told, names, row)
    ]
    return csv_of([CSV_HEADS, *rows])


def _row(name: str, question: Question, cell: Cell) -> list[object]:
    asked = question.number, question.title, question.code
    mistakes = " ".join(_mistakes_in(question, cell))
    return [name, *asked, cell.state, cell.tries, cell.hints, _state(cell), mistakes]


def table_of_counts(told: GroupFacts) -> Markup:
    """How many members stand how with each question."""
    view = _table(told)
    return table_html(view, view.headline)


def flaws_html(told: GroupFacts) -> Markup:
    """The mistakes most members made, the commonest first, each with what to read again."""
    if not told.flaws:
        return tag("p", NO_FLAWS)
    items = (_flaw(flaw, len(told.members)) for flaw in told.flaws[:MOST])
    return tag("ol", items, cls="w2w-flaws")


def _flaw(flaw: Flaw, members: int) -> Markup:
    what = f"{flaw.what[:1].upper()}{flaw.what[1:]}"
    lines = (tag("p", line) for line in _flaw_lines(flaw, members))
    return tag("li", tag("b", what), lines, tag("p", "Read again: ", _chapter(flaw.chapter)))


def _chapter(name: str) -> str:
    title = titles().get(name, "")
    file = next((each.file for each in chapters() if each.title == title), "")
    if not file:
        return name
    return tag("a", title, cls="w2w-save", href=quote(file), target="_blank")


def questions_html(told: GroupFacts, names: Mapping[str, str]) -> Markup:
    """Every question to open: how each member stands with it, and their mistakes."""
    return joined(
        _question(question, _by_member(told, names, row))
        for question, row in zip(told.questions, told.cells, strict=True)
    )


def _question(question: Question, standing: Sequence[tuple[str, Cell]]) -> Markup:
    right = sum(cell.state in (AT_ONCE, LATER) for _, cell in standing)
    items = (_member(question, name, cell) for name, cell in standing)
    got = tag("b", f"{right} of {len(standing)} right")
    return tag(
        "details",
        tag("summary", f"Question {question.number}. {question.title}: ", got),
        tag("ul", items, cls="w2w-flaws"),
        cls="w2w-marked",
    )


def _member(question: Question, name: str, cell: Cell) -> Markup:
    mark, look = LOOKS[cell.state]
    return tag(
        "li",
        tag("b", name),
        ": ",
        tag("span", mark, cls="w2w-mark", aria_hidden="true"),
        _state(cell),
        (tag("p", line) for line in _mistakes_in(question, cell)),
        cls=f"w2w-member w2w-{look}",
    )
