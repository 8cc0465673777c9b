"""An invented class of thirty and what each hands in: honest work, spoilt work, and tampering.

What each must get is written down here, question by question, and not worked out by the marking.
"""

from collections.abc import Iterator

from solver.engine.grading import as_typed
from solver.sets.work_set import cases_for
from tests.workbook.trainer import tampering
from tests.workbook.trainer.sheets import line, mistaken, right, sheet, shown, wrong
from tests.workbook.trainer.week_three import (
    ALL,
    COUNT,
    FULL,
    NOTHING,
    SET,
    WEEK,
    Person,
    answers,
    at,
    close,
    kind_of,
    numeric,
)

__all__ = ["CLASS", "SLIPPING"]

SLIPPING = ("edo.f", "fay.g", "gil.h", "hana.i", "ivo.j")


def slips() -> Iterator[tuple[str, bytes]]:
    """A sheet for each who slips: at every question a kind that was not yet, where there is one."""
    used: set[str] = set()
    for person in SLIPPING:
        lines = []
        for number, case in enumerate(cases_for(WEEK.work, person), 1):
            single = case.single_mistakes
            slip = next((m for m in single if kind_of(m) not in used), single[0])
            used.add(kind_of(slip))
            lines.append(line(WEEK, person, number, as_typed(case, slip.value)))
        yield person, sheet(*lines)


def _honest() -> Iterator[Person]:
    yield Person("ada.b", "all right", answers("ada.b", right), FULL, way="exchange", late=True)
    half = answers("ben.c", right, which=range(1, 7))
    yield Person("ben.c", "half of it", half, at(range(1, 7), 2.0), way="exchange", late=True)
    second = answers("cleo.d", mistaken, right)
    scripts = {"notebook": tampering.with_scripts}
    yield Person("cleo.d", "right at the second try", second, (1.8,) * COUNT, **scripts)
    numbers = numeric("dov.e")
    yield Person("dov.e", "all wrong", answers("dov.e", wrong, which=numbers), NOTHING)
    for person, slipped in slips():
        yield Person(person, "known mistakes", slipped, (1.0,) * COUNT)
    numbers = numeric("kit.l")
    near = answers("kit.l", close, which=numbers)
    yield Person("kit.l", "close", near, at(numbers, 1.6), way="folder")
    none = "No answer sheet was turned in."
    yield Person("lou.m", "nothing at all", None, NOTHING, (1,), none)
    yield Person("mia.n", "late", answers("mia.n", right), FULL, late=True)
    seen = sheet(
        *(each for n in ALL for each in (shown(WEEK, "ned.o", n), line(WEEK, "ned.o", n, right, 2)))
    )
    yield Person("ned.o", "looked first", seen, NOTHING)


def _spoilt_on_the_way() -> Iterator[Person]:
    torn = answers("oda.p", right)[:-30]
    last = "Line 12 of the sheet was not counted"
    yield Person("oda.p", "a torn sheet", torn, at(range(1, COUNT), 2.0), (COUNT,), last)
    yield Person("pim.q", "a torn notebook", answers("pim.q", right), FULL, notebook=tampering.torn)
    yield Person("quin.r", "no notebook", answers("quin.r", right), FULL, notebook=None)
    words = tampering.typed_in_words(WEEK, "rosa.s")
    yield Person("rosa.s", "plain answers alone", None, FULL, notebook=words)


def _tampering() -> Iterator[Person]:
    def wrongly(person: str) -> bytes:
        return answers(person, wrong, which=numeric(person))

    def honestly(person: str) -> bytes:
        return answers(person, right)

    yield Person(
        "sol.t", "edited grade cells", wrongly("sol.t"), NOTHING, notebook=tampering.edited
    )
    own = {"set.toml": SET.replace("points = 2", "points = 900").encode()}
    yield Person(
        "tess.u",
        "edited points",
        wrongly("tess.u"),
        NOTHING,
        notebook=tampering.worth_more,
        files=own,
    )
    yield Person("ugo.v", "deleted cells", honestly("ugo.v"), FULL, notebook=tampering.deleted)
    yield Person("vera.w", "copied cells", honestly("vera.w"), FULL, notebook=tampering.copied)
    yield Person(
        "wim.x",
        "strange metadata",
        honestly("wim.x"),
        FULL,
        notebook=tampering.strange,
        way="folder",
    )
    theirs = answers("ada.b", right)
    of_ada = "Answers of “ada.b” were not counted; this is the work of xia.y."
    yield Person("xia.y", "another's sheet", theirs, NOTHING, (1,), of_ada)
    forged = sheet(*(line(WEEK, "ada.b", n, right, who="yan.z") for n in ALL))
    not_set = "but this person didn't get that problem"
    yield Person("yan.z", "a forged id", forged, NOTHING, (1,), not_set)
    numbers = numeric("zoë.a")
    called = sheet(*(line(WEEK, "zoë.a", n, wrong, status="right") for n in numbers))
    yield Person("zoë.a", "a forged verdict", called, NOTHING, tuple(numbers), "right; it is wrong")
    third = sheet(*(line(WEEK, "abe.b", n, right, 3) for n in ALL))
    missing = "An earlier try is missing from the sheet."
    yield Person("abe.b", "earlier tries taken out", third, (1.6,) * COUNT, tuple(ALL), missing)


def _with_programs() -> Iterator[Person]:
    loud = tampering.with_code(
        "import sys\nprint('all', 100)\nprint('wrong', file=sys.stderr)\n1/0"
    )
    ends = tampering.with_code("import os\nos._exit(1)")
    loops = tampering.with_code("while True:\n    pass")
    steals = tampering.with_code(tampering.STEALS)
    shadows = {
        name: f"open('../../../{tampering.STOLEN}', 'w')".encode()
        for name in ("workbook.py", "ipykernel_launcher.py", "sitecustomize.py")
    }
    for person, about, notebook, files in (
        ("bob.c", "code that prints and fails", loud, {}),
        ("cat.d", "code that ends the program", ends, {}),
        ("don.e", "code that never ends", loops, {}),
        ("eve.f", "code that steals the gradebook", steals, shadows),
    ):
        yield Person(
            person, about, answers(person, right, which=range(1, 4)), at(range(1, 4), 2.0),
            notebook=notebook, files=files,
        )  # fmt: skip


CLASS = (*_honest(), *_spoilt_on_the_way(), *_tampering(), *_with_programs())
