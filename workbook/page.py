"""The one-line calls that the notebooks use. Each shows one panel.

Everything is imported when it is called: a page that shows one card loads no more than that. `chapter_calls.py`
has those of what stands beside the problems, and `class_calls.py` those of work that others share; notebooks
call all of them here.
"""

from .chapter_calls import (
    cautions,
    cautions_in_full,
    contents,
    figure,
    formulas,
    own_numbers,
    reference,
    worked_example,
)
from .class_calls import (
    class_report,
    course,
    group,
    sent_set,
    set_fault,
    set_mark,
    set_question,
    set_work,
    setting,
)

__all__ = [
    "cautions",
    "cautions_in_full",
    "class_report",
    "contents",
    "course",
    "exam",
    "fault",
    "figure",
    "formulas",
    "get_ready",
    "group",
    "home",
    "log_copies",
    "mixed",
    "own_numbers",
    "plant",
    "practice",
    "progress",
    "record",
    "reference",
    "sent_set",
    "set_fault",
    "set_mark",
    "set_question",
    "set_work",
    "setting",
    "study",
    "worked_example",
]


def get_ready() -> None:
    """Load what the first problem needs: its program starts while the browser still loads."""
    from .exam import earlier  # noqa: F401
    from .practice import wanted  # noqa: F401
    from .study import home_panel  # noqa: F401
    from .ui import chapter  # noqa: F401


def practice(name: str):
    """A practice card over the problem families of a chapter, or over one family."""
    from .practice import Card, Practice, codes_today
    from .ui.chapter import families_of

    families = families_of(name)
    practice = Practice(families, on_try=_keep)
    return _ready(Card(practice, done=codes_today, explains=families[0].chapter))


def _ready(card):
    """The card that its page opens with: the keyboard leads to its answer."""
    card.focus()
    return card


def mixed():
    """A practice card over chapters and levels to choose, which brings back what went wrong."""
    from solver import FAMILIES

    from .practice import past, units_of
    from .practice.mixed import Mixed
    from .practice.wanted import mixed_card

    before = past()
    return _ready(mixed_card(Mixed(FAMILIES, on_try=_keep, past=before, units=units_of(before))))


def home():
    """The first page: the next problem, and how the study stands beside it."""
    from solver import FAMILIES

    from .practice import own_log
    from .study.goal import own_goal_path
    from .study.home_panel import HomePanel

    return HomePanel(FAMILIES, own_log(), own_goal_path(), _guided, _begun)


def study():
    """A practice card that knows what to do next, and says why."""
    return _guided(_keep)


def _guided(on_try):
    from solver import FAMILIES

    from .practice import past, units_of
    from .practice.guided import Guided
    from .practice.wanted import guided_card

    return _ready(guided_card(Guided(FAMILIES, on_try=on_try, past=past, units=units_of(past()))))


def _begun():
    """The exams that are begun and the sets that a trainer sent, for the first page."""
    from pathlib import Path

    from .exam.earlier import begun_in
    from .exam.lines import folder
    from .study.home_shown import Begun
    from .ui.pages import sets_of_work

    exams = begun_in(folder())
    return [
        *(Begun("Practice exam", says, "15-practice-exam.ipynb") for says in exams),
        *(Begun(title, _standing(Path(at).parent), at) for at, title in sets_of_work(Path.cwd())),
    ]


def _standing(folder) -> str:
    """How a set from a trainer stands, as far as its folder says."""
    from .log import NotRead
    from .trainer.learner.standing import set_in, standing

    try:
        said = standing(set_in(folder))
    except NotRead as fault:
        said = [str(fault)]
    return " ".join(["From your trainer.", *said])


def exam():
    """A practice exam: set up, sat against the clock and kept as it goes, graded when turned in."""
    from pathlib import Path

    from .exam.lines import folder
    from .exam.practice_exam import ExamPanel
    from .practice import own_log, past, units_of
    from .study.goal import own_goal_path, read_goal

    goal = read_goal(own_goal_path())
    mark = goal.pass_mark if goal.asked else None
    return ExamPanel(folder(), own_log().merge, Path.cwd(), units_of(past()), mark)


def fault():
    """Find the fault: a station that misbehaves, measured, named, and looked back on."""
    from pathlib import Path

    from .fault.fault_panel import FaultPanel
    from .fault.story import folder
    from .practice import own_log, past, units_of

    return FaultPanel(folder(), own_log().keep, Path.cwd(), units_of(past()))


def progress():
    """How the study stands: the plan, the chapters, mistakes that come back, days of work."""
    from solver import FAMILIES

    from .practice import own_log
    from .study.goal import own_goal_path
    from .study.progress_panel import ProgressPanel

    return ProgressPanel(FAMILIES, own_log(), own_goal_path())


def log_copies():
    """A copy of the log to save, and copies to bring in."""
    from .practice import own_log
    from .practice.log_copies import LogCopies

    return LogCopies(own_log())


def _keep(told) -> str:
    """Every try is kept in the reader's log."""
    from .practice import keep

    return keep(told)


def record():
    """One pump's day typed in: worked and judged."""
    from .record.record_panel import RecordPanel

    return RecordPanel()


def plant():
    """Many pumps from a file: the whole plant, and each followed over the years."""
    from .record.plant_panel import PlantPanel

    return PlantPanel()
