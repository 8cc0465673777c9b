"""An invented group of five and the results they saved, for the tests of group study."""

from collections.abc import Iterable, Sequence
from pathlib import Path

from solver import draw
from solver.engine.grading import as_typed
from workbook.group.own_group import OwnGroup
from workbook.group.posed import Posed
from workbook.group.results import result_file
from workbook.group.set_text import ProblemSet, set_of
from workbook.log import Log

CASES = [draw("brake_power", 7, level=2), draw("water_power", 7), draw("energy_cost", 5)]
WEDNESDAY = set_of("Wednesday pumps", [case.code for case in CASES])
MULTIPLIED = "brake_power.multiplied_by.pump_efficiency"
RIGHT, SLIPPED, FAR, UNREAD = "right", "slipped", "far", "unread"
# What each did with the three questions, in order; a number is so many hints.
GROUP = {
    "Ana": [[RIGHT], [RIGHT], [RIGHT]],
    "Ben": [[SLIPPED, RIGHT], [FAR, RIGHT], []],
    "Cy": [[SLIPPED], [1, RIGHT], [RIGHT]],
    "Dee": [[SLIPPED, "solution"], [UNREAD], [FAR]],
    "=Eve<script>alert(1)</script>": [[FAR, SLIPPED], [RIGHT], [FAR, FAR]],
}


def answer_text(case, how: str) -> str:
    """An answer that is right, the one mistake with a name here, far off, or not to be read."""
    if how == SLIPPED:
        return f"{next(one.value for one in case.mistakes if one.id == MULTIPLIED):.6g}"
    return {RIGHT: as_typed(case, case.answer), FAR: "987654321", UNREAD: "about twelve"}[how]


def work(own: OwnGroup, done: Iterable[Sequence[object]]) -> None:
    """Work at the set that is open, as a member does with its cards."""
    for question, acts in zip(own.questions, done, strict=False):
        posed = Posed(question.case, own.keep)
        for act in acts:
            if isinstance(act, int):
                assert all(posed.hint() for _ in range(act))
            elif act == "solution":
                assert "" == posed.reveal()
            else:
                posed.answer(answer_text(question.case, act))


def member(
    folder: Path, name: str, done: Iterable[Sequence[object]], problems=WEDNESDAY
) -> OwnGroup:
    """A member who has a log of their own in this folder, and has worked at a set."""
    own = OwnGroup(Log(folder / "attempts.jsonl"))
    own.open(problems)
    own.call(name)
    work(own, done)
    return own


def saved(own: OwnGroup) -> tuple[str, bytes]:
    """The result that a member saves: its file's name and its bytes."""
    return result_file(own.problems, own.name, own.made())


def results(folder: Path, problems: ProblemSet = WEDNESDAY) -> dict[str, bytes]:
    """What all five saved, by the names of the files."""
    people = enumerate(GROUP.items())
    return dict(saved(member(folder / str(at), *person, problems)) for at, person in people)
