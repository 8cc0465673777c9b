"""The one-line calls that the notebooks use. Each shows one panel.

Everything is imported when it is called: a page that shows one card loads no more than that.
"""

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


def group(part: str = "work"):
    """Group study: "work" at a set, "make" one, or put the "results" of all members together."""
    from .group.own_group import own_group

    own = own_group()
    if part == "make":
        from .group.make_panel import MakePanel
        from .practice import past, units_of

        return MakePanel(own, units_of(past()))
    if part == "results":
        from .group.results_panel import ResultsPanel

        return ResultsPanel(own)
    from .group.work_panel import WorkPanel

    return WorkPanel(own)


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


def worked_example(code: str):
    """The worked solution of the problem with this code, opened step by step."""
    from solver import case_from_code

    from .practice.card import WorkedExample

    return WorkedExample(case_from_code(code))


def own_numbers(chapter: str):
    """A reader's own readings, worked by the formulas of a chapter."""
    from .practice.own_numbers import OwnNumbers
    from .ui.chapter import asked_in, quantities_of

    return OwnNumbers(quantities_of(chapter), asked_in(chapter))


def formulas(chapter: str):
    """The formulas of a chapter, with their units, reasons and sources."""
    from .reference.reference_panel import FormulaSheet
    from .ui.chapter import formulas_of

    return FormulaSheet(formulas_of(chapter))


def reference():
    """Every formula turned round, constants, units, tables, limits: to find and to print."""
    from .practice import past, units_of
    from .reference.reference_panel import ReferencePanel
    from .ui.static_site import words_of_address

    wanted = (words_of_address() or {}).get("find", "")
    return ReferencePanel(units_of(past()), wanted)


def set_work(part: str = "top"):
    """Work set by a trainer: who works here and how it stands; or "end", how to hand it in."""
    from pathlib import Path

    if _is_marked():
        return None
    from .trainer.learner.own_set import own_set
    from .trainer.learner.set_panel import HandIn, SetTop

    own = own_set(Path.cwd())
    if part == "end":
        return HandIn(own)
    own.read()
    return SetTop(own)


def sent_set():
    """A set that a trainer sent as a link or a text: opened, worked, and sent back as a file."""
    from .trainer.learner.sent_panel import SentPanel

    return SentPanel()


def set_question(number: int):
    """The card of one question of the set of work in this folder, from 1."""
    from pathlib import Path

    if _is_marked():
        return None
    from .trainer.learner.own_set import own_set
    from .trainer.learner.set_card import SetCard

    return SetCard(own_set(Path.cwd()), number)


def set_fault(number: int):
    """The case of find the fault that is this question of the set of work in this folder."""
    from pathlib import Path

    if _is_marked():
        return None
    from .trainer.learner.fault_card import FaultCard
    from .trainer.learner.own_set import own_set

    return FaultCard(own_set(Path.cwd()), number)


def _is_marked() -> bool:
    """Whether nbgrader marks this page, so that nobody is there to answer."""
    from .trainer.marking.grade_cell import AUTOGRADE, nbgrader_step

    return nbgrader_step() == AUTOGRADE


def set_mark(number: int):
    """The feedback and the points of one question, where nbgrader runs it; else nothing."""
    from .trainer.marking.grade_cell import set_mark

    return set_mark(number)


def setting():
    """Set work to the class whose course this folder is: chosen, seen as anybody, written."""
    from pathlib import Path

    from .trainer.setting.setting_panel import SettingPanel

    return SettingPanel(Path.cwd())


def course():
    """The steps of the course whose folder this is: list, work given out and taken in, grades, records."""
    from pathlib import Path

    from .trainer.doing.course_panel import CoursePanel

    return CoursePanel(Path.cwd())


def class_report():
    """How the class of this course did in a set: marks, mistakes to teach, who needs a hand."""
    from pathlib import Path

    from .trainer.report.class_panel import ClassPanel

    return ClassPanel(Path.cwd())


def cautions(*topics: str):
    """The usual cautions for these topics in one line, which opens to the rules they come from."""
    from .ui.cautions import caution_line

    return caution_line(*topics)


def cautions_in_full(*topics: str):
    """The same in a box: once a chapter, and wherever readings of a real machine are typed in."""
    from .ui.cautions import caution_box

    return caution_box(*topics)


def contents():
    """The chapters, as links, with what each covers."""
    from .ui.contents import list_of_chapters

    return list_of_chapters()


def figure(name: str):
    """A figure to explore, by its name in figures/explorer.py."""
    from .figures import show

    return show(name)
