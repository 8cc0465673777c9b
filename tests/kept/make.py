"""Files as this version gives them out, kept so that every later version is tried on them.

    python -m tests.kept.make 0.2.0

Run it once, with the version that is about to be released, and never again for that version.
"""

import json
import sys
from dataclasses import replace
from pathlib import Path
from random import Random
from tempfile import TemporaryDirectory

from solver import FAMILIES, draw, grade
from solver.fault.case import fault_case
from solver.fault.review import sure_way
from solver.sets.fault_part import FaultPart
from solver.sets.paper import CHAPTERS, Paper
from solver.sets.work_set import TOP, cases_for, faults_for, set_of
from tests.solver.sets import PLANT
from tests.workbook.trainer.sheets import line, mistaken, right, sheet, shown, wrong
from workbook.exam.sitting import begin
from workbook.fault import attempt_of_way
from workbook.group.own_group import OwnGroup
from workbook.group.posed import Posed
from workbook.group.results import result_file
from workbook.group.set_text import set_of as group_set_of
from workbook.log import Log, made
from workbook.record.demo import demo_csv
from workbook.trainer.course import Person
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.on_paper.sheets import sheets_of
from workbook.trainer.sets.notebook import write_source
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.spreadsheet import csv_of

from .facts import of_kept

__all__ = ["keep", "main"]

HERE = Path(__file__).parent
WORK = set_of(chapters=["horsepower", "head"], count=6, seed=48213, faults=FaultPart(1, 1))
WEEK = Assigned("week-3", "Week 3: power and head", WORK, points=2.0)
PEOPLE = (Person("ana.r", "Ana", "Rivet"), Person("ben.k", "Ben", "Keel"), Person("cy.p", "Cy"))
DRAWN = 12  # codes of exams, and as many of sets


def keep(where: Path) -> None:
    """Write every kind of file that this version gives out into a folder."""
    where.mkdir(parents=True)
    _exams(where)
    _set(where)
    _group(where)
    _log(where)
    _paper(where)
    _codes(where)
    record = demo_csv().splitlines()[:8]
    (where / "record.csv").write_text("".join(f"{row}\n" for row in record), "utf-8")
    text = json.dumps(of_kept(where), ensure_ascii=False, indent=1)
    (where / "expected.json").write_text(f"{text}\n", "utf-8")
    for lock in where.rglob("*.lock"):
        lock.unlink()


def _exams(where: Path) -> None:
    """One in progress with typed answers, and one of choices that is handed in."""
    ticks = iter(range(0, 100_000, 7))
    log = Log(where / "attempts.jsonl")
    for choices, level, answered in ((False, 2, 5), (True, 0, 9)):
        paper = Paper(("horsepower", "head", "speed"), level, "us", 10, 30, choices, 4821)
        paper = replace(paper, faults=FaultPart(1, 1) if choices else None)
        sitting = begin(paper, where / "exams", lambda: next(ticks))
        sitting.go_on()
        for each in sitting.questions[:answered]:
            sitting.answer(each.number, _answer(each.case, each.choices, each.number % 3 > 0), 20.0)
        for number, case in sitting.ways.cases.items():
            sitting.did(number, *sure_way(str(case.code)).words)
        sitting.flag(3, True)
        if choices:
            sitting.end()
            for attempt in sitting.attempts():
                log.keep(attempt)
        else:
            sitting.pause()


def _answer(case, choices, good: bool) -> str:
    if choices:
        told = (n for n, one in enumerate(choices, 1) if bool(one.mistake) != good)
        return str(next(told))
    return right(case) if good else mistaken(case)


def _set(where: Path) -> None:
    """A set of work in its course, and what three people handed in."""
    page = write_source(WEEK, where)
    ana = [line(WEEK, "ana.r", n, right) for n in range(1, 7)]
    way = sure_way(str(faults_for(WORK, "ana.r")[0].code))
    ana.append(attempt_of_way(way, WORK.code, "ana.r"))
    ben = [
        line(WEEK, "ben.k", 1, mistaken),
        line(WEEK, "ben.k", 1, right, 2),
        shown(WEEK, "ben.k", 2),
        line(WEEK, "ben.k", 3, right),
    ]
    for person, lines in (("ana.r", ana), ("ben.k", ben), ("cy.p", [])):
        folder = where / "submitted" / person / "week-3"
        folder.mkdir(parents=True)
        (folder / "person.txt").write_text(f"{person}\n", "utf-8")
        if lines:
            (folder / SHEET).write_bytes(sheet(*lines))
    notebook = json.loads(page.read_text("utf-8"))
    answers = [right(case) for case in cases_for(WORK, "cy.p")]
    for cell in notebook["cells"]:
        if number := cell["metadata"].get("wire_to_water", {}).get("answer", 0):
            cell["source"] = f"{''.join(cell['source'])} {answers[number - 1]}"
    page = where / "submitted" / "cy.p" / "week-3" / "week-3.ipynb"
    page.write_text(json.dumps(notebook, ensure_ascii=False, indent=1), "utf-8")


def _group(where: Path) -> None:
    """The text of a set for a group, and the results of two."""
    drawn = [draw(FAMILIES[n], n + 7, "us", 2) for n in (1, 0, 14)]
    found = fault_case(1, "us", 7)
    codes = [*(case.code for case in drawn), str(found.code)]
    problems = group_set_of("Wednesday pumps", codes)
    (where / "group.txt").write_text(f"Here is ours:\n{problems.text}\n", "utf-8")
    for name, good in (("Ana", (True, True, True)), ("Ben", (False, True))):
        with TemporaryDirectory() as folder:
            own = OwnGroup(Log(Path(folder) / "attempts.jsonl"))
            own.open(problems)
            own.call(name)
            for case, fine in zip(drawn, good, strict=False):
                posed = Posed(case, own.keep)
                posed.answer(right(case) if fine else mistaken(case))
                posed.answer(right(case))
            own.keep_way(sure_way(str(found.code)))
            data = result_file(problems, name, own.made())[1]
        (where / f"group-{name.lower()}.jsonl").write_bytes(data)


def _log(where: Path) -> None:
    """Practice of a few kinds, beside what the exam left in the log."""
    log = Log(where / "attempts.jsonl")
    for n in (0, 1, 1, 5, 60, 61):
        case = draw(FAMILIES[n], 100 + n, "us", 1)
        for tries, how in enumerate((mistaken, right) if n % 2 else (right,), 1):
            log.keep(_try(case, how(case), tries))
    again = draw(FAMILIES[1], 101, "us", 1)
    log.keep(_try(again, wrong(again), 3))


def _try(case, typed: str, tries: int):
    verdict = grade(case, typed)
    return made(
        code=case.code,
        family=case.family.name,
        level=case.level,
        typed=typed,
        status=verdict.status,
        mistake=verdict.mistake or "",
        seconds=30.0,
        tries=tries,
    )


def _paper(where: Path) -> None:
    """Answers typed back from the sheets of the set, one of them wrong and one row of nobody."""
    rows = []
    for each in sheets_of(WEEK, PEOPLE):
        typed = [right(case) for case in each.cases]
        if each.person == "ben.k":
            typed[0] = mistaken(each.cases[0])
        rows.append([str(each.code), each.person, each.name, *typed])
    heads = ["sheet", "person", "name", *range(1, WORK.count + 1)]
    (where / "typed.csv").write_bytes(csv_of([heads, *rows]))
    people = [["id", "first_name", "last_name", "email"], *PEOPLE]
    (where / "people.csv").write_bytes(csv_of(people))


def _codes(where: Path) -> None:
    """Codes of many kinds of exams and sets, those with a plant among them."""
    chance = Random(5)
    exams, sets = [], []
    for n in range(DRAWN):
        chapters = tuple(c for c in CHAPTERS if chance.random() < 0.4) or CHAPTERS
        level, units, seed = (
            chance.randint(0, 4),
            chance.choice(["us", "si"]),
            chance.randint(0, 99_999),
        )
        part = FaultPart(n, n) if n in (1, 2, 3) else None
        paper = Paper(chapters, level, units, 40, 60, n % 2 == 0, seed)
        exams.append(replace(paper, faults=part).code)
        names = chance.sample([f.name for f in FAMILIES], 3)
        keys = {"level": min(level, TOP), "units": units, "count": 30, "seed": seed, "faults": part}
        if n % 4 == 3:
            keys |= {"units": "us", "plant": PLANT}
            chapters, names = ("horsepower", "head"), ()
        work = set_of(chapters=chapters, families=names, each=n % 3 > 0, **keys)
        sets.append([work.code, f"person-{n}"])
    (where / "codes.json").write_text(json.dumps({"exams": exams, "sets": sets}, indent=1), "utf-8")


def main(arguments: list[str]) -> int:
    """Keep the files of the version that is named; 1 where that was done before."""
    where = HERE / arguments[0]
    if where.exists():
        print(f"{where} is there already, and what was given out stays as it was.")
        return 1
    keep(where)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
