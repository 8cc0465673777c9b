"""A set of work as a file that a trainer writes: `set.toml` in the folder of the set.

`example.toml` beside this file shows every key, with what it means. The same file gives the same
problems on any machine; only a time without an offset means another moment in another place.

>>> week = parse_set_file('draw = 48213\\nchapters = ["head"]\\ncount = 5', "week-3")
>>> week.title, week.work.count, week.points, week.due
('week-3', 5, 1.0, None)
>>> parse_set_file('draw = 48213\\nchapters = ["haed"]', "week-3")
Traceback (most recent call last):
workbook.trainer.set_checks.SetFault: set.toml: chapters has “haed”, which isn't one. Did you mean “head”?
"""

import re
import tomllib
from pathlib import Path

from solver import SolverError
from solver.sets.credit import Credit
from solver.sets.own_plant import Plant, plant_of
from solver.sets.work_set import WorkSet, set_of
from solver.topics.catalogue import since_of

from .assigned import Assigned
from .mistake_names import check_mistakes
from .set_checks import SET_FILE, SetFault, got
from .set_keys import EACH, read_table
from .set_text import toml_of

__all__ = ["SET_FILE", "Assigned", "SetFault", "parse_set_file", "read_set_file", "toml_of"]

MOST = 200_000  # characters of a file
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


def parse_set_file(text: str, name: str, catalogue: int | None = None) -> Assigned:
    """The set that a file's text says, under this name; raises as `read_set_file` does."""
    found = read_table(_tables(text))
    plan = {key: found.pop(key) for key in ("chapters", "families", "level", "units", "count")}
    if not plan["chapters"] and not plan["families"]:
        raise SetFault(f'{SET_FILE}: nothing is chosen. Write chapters = ["horsepower"].')
    of = found.pop("catalogue") or catalogue or since_of((*plan["chapters"], *plan["families"]))
    plant, numbers, seed = found.pop("plant"), found.pop("numbers"), found.pop("draw")
    work = _work({**plan, "catalogue": of}, numbers == EACH, seed, _plant(plant, plan["units"]))
    credit = Credit(**read_table(found.pop("credit"), "credit"))
    check_mistakes(work, credit.by_mistake)
    return Assigned(name, found.pop("title") or name, work, credit=credit, **found)


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
