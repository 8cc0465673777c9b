"""A set of work as a file that a trainer writes: `set.toml` in the folder of the set; read.

`example.toml` in the trainer's room shows every key, with what it means. The same file gives the
same problems on any machine; only a time without an offset means another moment in another place.

>>> week = parse_set_file('draw = 48213\\nchapters = ["head"]\\ncount = 5', "week-3")
>>> week.title, week.work.count, week.points, week.due
('week-3', 5, 1.0, None)
>>> parse_set_file('draw = 48213\\nchapters = ["haed"]', "week-3")
Traceback (most recent call last):
workbook.trainer.sets.set_checks.SetFault: set.toml: chapters has “haed”, which isn't one. Did you mean “head”?
"""

import re
import tomllib
from datetime import datetime
from pathlib import Path
from typing import NamedTuple

from solver import Case, SolverError
from solver.sets.credit import Credit
from solver.sets.fault_part import fault_part
from solver.sets.own_plant import Plant, plant_of
from solver.sets.work_set import WorkSet, set_of
from solver.topics.catalogue import CATALOGUE, FIRST, since_of

from .set_checks import SET_FILE, SetFault, check_mistakes, got
from .set_keys import COUNTS_NOT, EACH, FAIR, FAIR_CREDIT, read_table

__all__ = [
    "SET_FILE",
    "Assigned",
    "FaultWork",
    "SetFault",
    "name_catalogue",
    "parse_set_file",
    "read_new_file",
    "read_set_file",
]

MOST = 200_000  # characters of a file
CHOSEN = (
    "chapters",
    "shares",
    "families",
    "level",
    "units",
    "count",
)  # keys that say what is asked
COMPARE = "Compare it with the example."
FAULTS = {  # what a fault is called by the reader of such files, and what to write
    "Expected '='": "Write = between a key and its value.",
    "Invalid value": 'Put words into straight quotation marks, like "us".',
    "Expected newline": "Write one value, such as 12.5, and nothing after it.",
    "Cannot overwrite": "A key is there twice; delete one.",
    "Cannot declare": "A heading in brackets is there twice; delete one.",
    "Unclosed array": "A bracket is open; close it with ].",
    "Unterminated": 'A quotation mark is missing; close the words with ".',
    "Unescaped": "In quotation marks, write a backslash twice.",
}


class FaultWork(NamedTuple):
    """What a case of find the fault earns: its points, and the share off for each step that was stopped.

    A set without cases has this as it is.
    """

    points: float = 10.0
    unsafe: float = 0.2


class Assigned(NamedTuple):
    """Work set to a class. `name` is that of its folder; `points` are for each problem.

    `tries` 0 is no limit; `choice_tries` is the same where there are choices, 0 as for the others.
    `counts` says which try does: "best", "last" or "first". `due` is in
    UTC. `late` is the share of the score that is taken off after that, 0 to 1.
    `group` is the part of the class it is for, as `people.csv` names it; "" is everybody.
    `minutes` is the time from when the questions are opened, 0 for no limit; `after_time` says what becomes of
    answers after it: "counts" or "doesn't count".
    """

    name: str
    title: str
    work: WorkSet
    points: float = 1.0
    tries: int = 0
    counts: str = "best"
    due: datetime | None = None
    late: float = 0.0
    credit: Credit = Credit()
    faults: FaultWork = FaultWork()
    choice_tries: int = 0
    group: str = ""
    minutes: int = 0
    after_time: str = COUNTS_NOT

    def worth(self, number: int) -> float:
        """The points of a question: a problem's, or after the problems a case's."""
        return self.points if number <= self.work.count else self.faults.points

    @property
    def out_of(self) -> float:
        """The points there are to have in the whole set."""
        return sum(self.worth(number) for number in range(1, self.work.asked + 1))

    def tries_for(self, case: Case) -> int:
        """How many tries a question has, 0 for no limit: a choice can be found by trying each."""
        few = case.choices and not case.ordered and self.choice_tries
        return self.choice_tries if few else self.tries


def read_set_file(path: Path, catalogue: int | None = None) -> Assigned:
    """The set in a file; its name is that of the folder the file is in.

    `catalogue` is taken where the file names none. Else that is the first which has all it asks
    for, as version 0.1.0 wrote none.

    Raises:
        SetFault: it cannot be read, or used; the sentence says what to write instead.
    """
    path = Path(path).absolute()
    try:
        text = path.read_bytes().decode("utf-8-sig")
    except FileNotFoundError:
        raise SetFault(
            f"There is no {path.name} in {path.parent}. Put one there, or check the folder."
        ) from None
    except UnicodeDecodeError:
        raise SetFault(f"{path} isn't plain text. Save it again as UTF-8.") from None
    except OSError as error:
        raise SetFault(f"{path} can't be read: {error.strerror or error}.") from error
    return parse_set_file(text, path.parent.name, catalogue)


def name_catalogue(path: Path, catalogue: int) -> None:
    """Write into a file that names no catalogue which one its questions are drawn from."""
    text = path.read_text(encoding="utf-8-sig")
    path.write_text(f"catalogue = {catalogue}  # keeps the questions as they are\n{text}", "utf-8")


def read_new_file(path: Path) -> Assigned:
    """The set in a file to make something new of: one that names no catalogue is given today's.

    A set whose notebook was made already keeps the catalogue that it has. Errors as in `read_set_file`,
    and OSError where the file can't be written to.
    """
    path = Path(path).absolute()
    if path.with_name(f"{path.parent.name}.ipynb").exists():
        return read_set_file(path)
    assigned = read_set_file(path, CATALOGUE)
    if read_set_file(path) != assigned:
        name_catalogue(path, CATALOGUE)
    return assigned


def parse_set_file(text: str, name: str, catalogue: int | None = None) -> Assigned:
    """The set that a file's text says, under this name; `catalogue` as for `read_set_file`.

    Raises:
        SetFault: it cannot be used; the sentence says what to write instead.
    """
    tables = _tables(text)
    found = read_table(tables)
    faults = read_table(found.pop("faults"), "faults")
    part = fault_part(faults.pop("count"), faults.pop("level"))
    plan = {key: found.pop(key) for key in CHOSEN}
    names = (*plan["chapters"], *plan["shares"], *plan["families"])
    if not names:
        raise SetFault(f'{SET_FILE}: nothing is chosen. Write chapters = ["horsepower"].')
    since = max(since_of(names), FIRST + 1) if plan["shares"] else since_of(names)
    of = found.pop("catalogue") or catalogue or (max(since, FIRST + 1) if part else since)
    plant, numbers, seed = found.pop("plant"), found.pop("numbers"), found.pop("draw")
    plan |= {"catalogue": of, "faults": part}
    work = _work(plan, numbers == EACH, seed, _plant(plant, plan["units"]))
    shares = read_table(found.pop("credit"), "credit")
    if of > FIRST:  # earlier sets keep what they were given out with
        found |= {key: each for key, each in FAIR.items() if key not in tables}
        shares |= {k: e for k, e in FAIR_CREDIT.items() if k not in tables.get("credit", {})}
    if shares["wrong_choice"] == shares["mistake"]:
        shares["wrong_choice"] = None  # as any other mistake
    credit = Credit(**shares)
    check_mistakes(work, credit.by_mistake)
    title = found.pop("title") or name
    earns = FaultWork(**faults) if part else FaultWork()
    return Assigned(name, title, work, credit=credit, faults=earns, **found)


def _tables(text: str) -> dict:
    """The text as data; a fault in it is told by its line."""
    if len(text) > MOST:
        raise SetFault(f"{SET_FILE} is {len(text):,} letters long. A set has up to {MOST:,}.")
    try:
        return tomllib.loads(text)
    except RecursionError:
        raise SetFault(f"{SET_FILE} has too many brackets in one another. {COMPARE}") from None
    except ValueError as fault:
        raise SetFault(_where(text, str(fault))) from None


def _where(text: str, fault: str) -> str:
    instead = next((says for kind, says in FAULTS.items() if kind in fault), COMPARE)
    at = re.search(r"at line (\d+)", fault)
    lines = text.split("\n")
    if not at or int(at[1]) > len(lines):
        return f"{SET_FILE} can't be read. {instead}"
    line = got(lines[int(at[1]) - 1].strip())
    return f"{SET_FILE}: line {at[1]}, {line}, can't be read. {instead}"


def _plant(found: dict | None, units: str) -> Plant | None:
    """The plant, whose ranges are in the set's units unless it says other ones."""
    if found is None:
        return None
    try:
        return plant_of({"units": units, **found})
    except SolverError as fault:
        raise SetFault(f"{SET_FILE}: {fault}") from None


def _work(plan: dict, each: bool, seed: int, plant: Plant | None) -> WorkSet:
    try:
        return set_of(**plan, each=each, seed=seed, plant=plant)
    except SolverError as fault:
        raise SetFault(f"{SET_FILE}: {fault}") from None
