"""What a trainer filled in, as typed, and the set that it makes, or everything that keeps it from one.

How each box is read is in typed_in.py. There are no widgets here;
form.py fills a draft, and fills the form from one.
"""

from collections.abc import Callable, Mapping
from datetime import UTC, datetime
from types import MappingProxyType
from typing import NamedTuple, TypeVar

from solver import SolverError
from solver.sets.credit import Credit
from solver.sets.fault_part import FaultPart, fault_part
from solver.sets.own_plant import Plant
from solver.sets.shares import shares_text
from solver.sets.work_set import MOST, WorkSet, set_of
from solver.topics.catalogue import CATALOGUE, FIRST, chapters_at, kinds_at
from solver.units.show import exact
from workbook.trainer.sets.as_toml import chosen_names
from workbook.trainer.sets.set_file import Assigned, FaultWork
from workbook.trainer.sets.set_keys import COUNTS_NOT, FAIR, FAIR_CREDIT, MOST_MINUTES
from workbook.ui.entry import whole_number
from workbook.ui.kept_mixtures import mixture_asked

from .typed_in import cases_in, name_in, points_in, share_in, title_in

__all__ = ["Draft", "assigned_from", "draft_of"]

T = TypeVar("T")
MOST_TRIES = 99
LATE_FOR_WHAT = "Something is taken off for being late, but no due time is set. Set one."


class Draft(NamedTuple):
    """A form as it stands. Numbers are as typed; shares are percentages, and empty tries no limit.

    `name` may be empty, which takes it from the title. `right`, `by_mistake` and `catalogue` have no
    box; they stay as the file of the set had them.
    """

    title: str = ""
    name: str = ""
    chapters: tuple[str, ...] = ()
    families: tuple[str, ...] = ()
    level: int = 0
    units: str = "us"
    questions: str = "10"
    each: bool = True
    points: str = "1"
    tries: str = str(FAIR["tries"])
    counts: str = "best"
    due: datetime | None = None
    late: str = ""
    close: str = "80"
    mistake: str = "50"
    each_try: str = f"{FAIR_CREDIT['each_try']:.0%}".rstrip("%")
    seed: int = 0
    plant: Plant | None = None
    right: float = 1.0
    by_mistake: Mapping[str, float] = MappingProxyType({})
    catalogue: int = CATALOGUE
    cases: str = ""
    case_level: int = 1
    case_points: str = "10"
    unsafe: str = "20"
    choice_tries: str = str(FAIR["choice_tries"])
    wrong_choice: str = "0"
    group: str = ""
    shares: str = ""
    minutes: str = ""
    after_time: str = COUNTS_NOT


def assigned_from(draft: Draft) -> tuple[Assigned | None, list[str]]:
    """The set that a draft makes, or None with a sentence for each thing that is in the way."""
    tried = _Tried()
    title = tried("", title_in, draft.title)
    name = tried("", name_in, draft.name, title) if title else ""
    count = tried(1, whole_number, draft.questions, "questions", MOST)
    cases = tried(0, cases_in, draft.cases)
    work = tried(None, _work, draft, count, fault_part(cases, draft.case_level))
    points = tried(0.0, points_in, "each question", draft.points)
    faults = _fault_work(draft, tried) if cases else FaultWork()
    tries = tried(0, whole_number, draft.tries, "tries", MOST_TRIES) if draft.tries.strip() else 0
    choice = draft.choice_tries.strip()
    choice_tries = tried(0, whole_number, choice, "tries", MOST_TRIES) if choice else 0
    late = tried(0.0, share_in, "Taken off for being late", draft.late or "0")
    credit = _credit(draft, tried)
    limit = draft.minutes.strip()
    minutes = tried(0, whole_number, limit, "minutes", MOST_MINUTES) if limit else 0
    due = draft.due and draft.due.astimezone(UTC)
    if late and not due:
        tried.faults.append(LATE_FOR_WHAT)
    if tried.faults or work is None:
        return None, tried.faults
    made = Assigned(
        name, title, work, points, tries, draft.counts, due, late, credit, faults, choice_tries,
        " ".join(draft.group.split()), minutes, draft.after_time,
    )  # fmt: skip
    return made, []


class _Tried:
    """Reads one thing after another, and keeps the sentence of each that cannot be read."""

    def __init__(self) -> None:
        self.faults: list[str] = []

    def __call__(self, instead: T, reading: Callable[..., T], *words: object) -> T:
        """What reading these words gives; `instead` where they cannot be read."""
        try:
            return reading(*words)
        except SolverError as fault:
            self.faults.append(str(fault))
            return instead


def _fault_work(draft: Draft, tried: _Tried) -> FaultWork:
    return FaultWork(
        tried(0.0, points_in, "each case", draft.case_points),
        tried(0.0, share_in, "Taken off for each unsafe step", draft.unsafe),
    )


def _credit(draft: Draft, tried: _Tried) -> Credit:
    return Credit(
        right=draft.right,
        close=tried(0.0, share_in, "A close answer earns", draft.close),
        mistake=tried(0.0, share_in, "A known slip earns", draft.mistake),
        by_mistake=dict(draft.by_mistake),
        each_try=tried(0.0, share_in, "Taken off for each earlier try", draft.each_try),
        wrong_choice=tried(0.0, share_in, "A wrong choice earns", draft.wrong_choice)
        if draft.wrong_choice.strip()
        else None,
    )


def _work(draft: Draft, count: int, faults: FaultPart | None) -> WorkSet:
    shares = mixture_asked(draft.shares) if draft.shares.strip() else {}
    if not (draft.chapters or draft.families or shares):
        raise SolverError("Nothing is chosen yet. Check a chapter or a kind of problem.")
    return set_of(
        chapters=() if shares else draft.chapters,
        families=draft.families,
        level=draft.level,
        units=draft.units,
        count=count,
        each=draft.each,
        seed=draft.seed,
        plant=draft.plant,
        catalogue=draft.catalogue
        if _had(draft) and not ((faults or shares) and draft.catalogue == FIRST)
        else CATALOGUE,
        faults=faults,
        shares=shares,
    )


def _had(draft: Draft) -> bool:
    """Whether the catalogue that the set was made from has all that is ticked now."""
    there = {*chapters_at(draft.catalogue), *(kind.name for kind in kinds_at(draft.catalogue))}
    return there.issuperset((*draft.chapters, *draft.families))


def draft_of(assigned: Assigned) -> Draft:
    """The form that makes this set again."""
    work, credit = assigned.work, assigned.credit
    names, part = chosen_names(work.families, work.catalogue), work.faults
    return Draft(
        assigned.title,
        assigned.name,
        tuple(names.get("chapters", ())),
        tuple(names.get("families", ())),
        work.level,
        work.units,
        str(work.count),
        work.each,
        exact(assigned.points).replace(",", ""),
        str(assigned.tries or ""),
        assigned.counts,
        assigned.due,
        _percent(assigned.late),
        _percent(credit.close),
        _percent(credit.mistake),
        _percent(credit.each_try),
        work.seed,
        work.plant,
        credit.right,
        credit.by_mistake,
        work.catalogue,
        str(part.count) if part else "",
        part.level if part else 1,
        exact(assigned.faults.points).replace(",", ""),
        _percent(assigned.faults.unsafe),
        str(assigned.choice_tries or ""),
        "" if credit.wrong_choice is None else _percent(credit.wrong_choice),
        assigned.group,
        shares_text(work.by_share),
        str(assigned.minutes or ""),
        assigned.after_time,
    )


def _percent(share: float) -> str:
    return f"{round(100 * share, 4):g}"
