"""More of what people send: names, times, orders, cases of find the fault, other sets, numbers, scripts.

The people and the form of a case are those of tamper_cases.py. `RICH` is a set with an order to put right
and a case of find the fault; its case is question 3.
"""

import json
import os
from collections.abc import Iterator
from pathlib import Path
from zipfile import ZipFile

from solver.fault.review import sure_way
from solver.fault.way import way_of
from solver.sets.work_set import cases_for, faults_for
from solver.topics.catalogue import CATALOGUE
from tests.workbook.trainer.sheets import line, number, right, sheet, wrong
from tests.workbook.trainer.tamper_cases import (
    ANA,
    BEN,
    FULL,
    IN_TIME,
    NAME,
    TOO_LATE,
    WEEK,
    Case,
    Part,
    packed,
    right_sheet,
)
from tests.workbook.trainer.tampering import SCRIPT
from workbook.fault import attempt_of_way
from workbook.log import line_of
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.sets.set_file import parse_set_file

__all__ = ["MORE", "RICH"]

RICH = parse_set_file(
    f'draw = 48214\ncatalogue = {CATALOGUE}\nfamilies = ["brake_power", "lock_and_try"]\ncount = 2\n'
    "points = 2\nlate = 0.5\ndue = 2025-11-26T12:00:00Z\n"
    "[faults]\ncount = 1\nlevel = 1\npoints = 10\nunsafe = 0.2\n",
    NAME,
)
ORDER = next(n for n, case in enumerate(cases_for(RICH.work, BEN), 1) if case.ordered)
(CASE,), (HERS,) = faults_for(RICH.work, BEN), faults_for(RICH.work, ANA)
assert CASE.fault != HERS.fault
CODE = str(CASE.code)
SURE = sure_way(CODE).words
N = number(WEEK, BEN)


def _zip(data: bytes | str, name: str = f"{BEN}.zip", at: int = IN_TIME, **more: bytes | str):
    return lambda mail: packed(mail / name, {SHEET: data, **more}, at)


def _typed(text: str, n: int = N, **other):
    """One answer in these words, of which the sheet says whatever it says."""
    return _zip(sheet(line(WEEK, BEN, n, text, status="right", **other)))


def _names() -> Iterator[Case]:
    up = {f"OP02/{NAME}/{SHEET}": right_sheet(BEN)}
    yield Case("Ben's id in capitals", lambda mail: packed(mail / "a.zip", up), FULL)
    wide = {f"ｏｐ０２/{NAME}/{SHEET}": right_sheet(BEN)}
    yield Case("Ben's id in wide letters", lambda mail: packed(mail / "a.zip", wide), FULL)
    other = {f"ор02/{NAME}/{SHEET}": right_sheet(BEN)}
    yield Case(
        "Ben's id in letters of another alphabet that look the same",
        lambda mail: packed(mail / "a.zip", other), None, "isn't on the list of this class",
    )  # fmt: skip
    hidden = {f"op\u200b02/{NAME}/{SHEET}": right_sheet(BEN)}
    yield Case(
        "Ben's id with an invisible sign in it", lambda mail: packed(mail / "a.zip", hidden), None
    )
    yield Case(
        "A file name written from right to left",
        _zip(right_sheet(BEN), f"{NAME}-{BEN}\u202epiz.exe.zip"),
        None,
        "week-3-op02?piz.exe.zip",
    )
    color = "\x1b[31mop03\x1b[0m.zip"
    yield Case("A file name that colors the terminal", _zip(right_sheet(ANA), color), None, "?[31m")
    command = f"{NAME}-{BEN}; touch stolen; .zip"
    yield Case(
        "A file name with a command in it, to be copied",
        _zip(right_sheet(BEN), command),
        None,
        "rename the file to ID.zip",
    )
    yield Case("Two files from Ben, op02.zip and OP02.zip", _two_of_ben, FULL, "takes the place")
    both = {f"{who}/{NAME}/{SHEET}": right_sheet(BEN, (n,)) for n, who in ((1, BEN), (2, "OP02"))}
    yield Case(
        "Two folders in one file, op02 and OP02",
        lambda mail: packed(mail / "a.zip", both),
        2.0,
        "not taken",
    )
    yield Case(
        "A note inside that says it is Ana's", _zip(right_sheet(BEN), **{"person.txt": ANA}), FULL
    )
    yield Case("The same work from Ana and from Ben", _the_same_twice, 0.0, hint="were not counted")


def _two_of_ben(mail: Path) -> None:
    packed(mail / "OP02.zip", {SHEET: right_sheet(BEN, (1,))}, IN_TIME - 60)
    packed(mail / f"{BEN}.zip", {SHEET: right_sheet(BEN)})


def _the_same_twice(mail: Path) -> None:
    (mail / f"{BEN}.zip").write_bytes((mail / f"{NAME}-{ANA}.zip").read_bytes())
    with ZipFile(mail / f"{BEN}.zip", "w") as pack:
        pack.writestr(SHEET, right_sheet(ANA))
    os.utime(mail / f"{BEN}.zip", (IN_TIME, IN_TIME))


def _files() -> Iterator[Case]:
    inner = f"{NAME}-{BEN}.zip"
    yield Case("A zip inside a zip", _nested, None, "has no answer sheet and no notebook")
    program = b"MZ\x90\0" * 5_000
    yield Case("A program with a zip at its end", lambda mail: _after(mail / inner, program), FULL)
    yield Case("A changed byte inside the zip", _spoilt, None, "isn't what it says")
    yield Case("A folder with a link to Ana's answers", _linked, None, "no answer sheet")
    yield Case("A tar file called .zip", _tar, None, "isn't a whole zip file")
    twin = {
        f"{BEN}/{NAME}/Answer-Sheet.JSONL": right_sheet(BEN, (1,)),
        f"{BEN}/{NAME}/{SHEET}": right_sheet(BEN),
    }
    yield Case(
        "Two sheets whose names differ by capitals",
        lambda mail: packed(mail / inner, twin),
        FULL,
        "not taken",
    )
    disks = {"C:/windows/answer-sheet.jsonl": "x", "//server/share/answer-sheet.jsonl": "x"}
    yield Case("Names on other disks and computers", _zip(right_sheet(BEN), **disks), FULL)
    yield Case(
        "An answer sheet as Windows' Notepad saves it",
        _zip(b"\xef\xbb\xbf" + right_sheet(BEN).replace(b"\n", b"\r\n")),
        FULL,
    )
    yield Case(
        "An answer sheet in UTF-16",
        _zip(right_sheet(BEN).decode().encode("utf-16")),
        0.0,
        hint="was not counted",
    )


def _nested(mail: Path) -> None:
    inner = packed(mail / "inner", {SHEET: right_sheet(BEN)}).read_bytes()
    (mail / "inner").unlink()
    packed(mail / f"{BEN}.zip", {"work.zip": inner})


def _after(path: Path, begins: bytes) -> None:
    data = packed(path, {SHEET: right_sheet(BEN)}).read_bytes()
    path.write_bytes(begins + data)
    os.utime(path, (IN_TIME, IN_TIME))


def _spoilt(mail: Path) -> None:
    path = mail / f"{BEN}.zip"
    with ZipFile(path, "w") as pack:  # not packed, so its words can be read in the file
        pack.writestr(SHEET, right_sheet(BEN))
    path.write_bytes(path.read_bytes().replace(b"right", b"wrong"))


def _linked(mail: Path) -> None:
    (mail / BEN).mkdir()
    (mail / BEN / SHEET).symlink_to(mail / f"{NAME}-{ANA}.zip")


def _tar(mail: Path) -> None:
    (mail / f"{BEN}.zip").write_bytes(b"week-3/".ljust(257, b"\0") + b"ustar".ljust(1_000, b"\0"))


def _when() -> Iterator[Case]:
    for about, said in (
        (
            "A time in the year 1, in a time zone that makes it the year 0",
            "0001-01-01T00:00:00+14:00",
        ),
        ("A time before its own answers, with a time zone", "2025-11-26T12:00:00+23:59"),
    ):
        yield Case(about, _zip(right_sheet(BEN), **{"timestamp.txt": said}), FULL)
    said = {"timestamp.txt": "2025-11-26 11:59:59 UTC\n2025-11-20 08:00:00 UTC"}
    yield Case(
        "Two times in one file, sent late",
        _zip(right_sheet(BEN), at=TOO_LATE, **said),
        FULL,
        late=True,
    )
    future = sheet(line(WEEK, BEN, N, right, when="2199-01-01T00:00:00.000000Z"))
    yield Case("An answer from the year 2199", _zip(future), 2.0)
    turned = sheet(
        line(WEEK, BEN, N, right, 2, when="2025-11-25T18:00:00.000000Z"),
        line(WEEK, BEN, N, wrong, 1, when="2025-11-25T19:00:00.000000Z"),
    )
    yield Case(
        "A second try dated before the first", _zip(turned), 1.5, hint="An earlier try is missing"
    )


def _other_sets() -> Iterator[Case]:
    for about, draw in (
        ("Answers to last year's set", 48212),
        ("Answers to the set of another group", 77),
    ):
        other = WEEK._replace(work=parse_set_file(
            f'draw = {draw}\ncatalogue = {CATALOGUE}\nchapters = ["horsepower"]\ncount = 3', NAME
        ).work)  # fmt: skip
        theirs = sheet(*(line(other, BEN, n, right) for n in (1, 2, 3)))
        yield Case(about, _zip(theirs), 0.0, hint="were not counted; this set is")
        named = sheet(*(line(other, BEN, n, right, of=WEEK.work.code) for n in (1, 2, 3)))
        yield Case(
            f"{about}, with this set's code written in",
            _zip(named),
            0.0,
            hint="didn't get that problem",
        )
    later = right_sheet(BEN).replace(b'{"v": 2', b'{"v": 99')
    yield Case(
        "A sheet of a version that doesn't exist yet", _zip(later), 0.0, hint="was not counted"
    )
    first = right_sheet(BEN).replace(b'"v": 2', b'"v": 1')
    yield Case(
        "Lines without a check that call themselves old", _zip(first), 0.0, hint="was not counted"
    )


def _numbers() -> Iterator[Case]:
    said = "The sheet calls"
    for about, text in (
        ("An answer of 5,000 nines", "9" * 5_000),
        ("An answer of 1e9999", "1e9999"),
        ("The answers infinity and not-a-number", "nan"),
        ("A formula that would run for days: 9**9**9", "9**9**9"),
        ("Python in the place of an answer", "__import__('os').abort()"),
    ):
        yield Case(about, _typed(text), 0.0, hint=said)
    yield Case("A formula for the spreadsheet", _typed("=HYPERLINK(1)"), 0.0, hint=said)
    yield Case("A script in the place of an answer", _typed(SCRIPT), 0.0, hint=said)
    yield Case(
        "A script as the name of a person",
        _zip(sheet(line(WEEK, BEN, N, right, who=SCRIPT))),
        0.0,
        hint="were not counted",
    )
    tries = right_sheet(BEN, (N,)).replace(b'"tries": 1', b'"tries": 1' + b"0" * 300)
    yield Case(
        "A try with a number of 300 digits, no check", _zip(tries), 0.0, hint="was not counted"
    )
    huge = sheet(line(WEEK, BEN, N, right, 10**300))
    yield Case("The same with a right check", _zip(huge), 0.0, hint="An earlier try is missing")
    yield Case(
        "A line of 15,000 brackets",
        _zip(b'{"v": 2, "a": ' + b"[" * 15_000 + b"\n" + right_sheet(BEN)),
        FULL,
        hint="was not counted",
    )
    yield Case(
        "A sheet of 900,000 empty lines",
        _zip(b"\n" * 900_000 + right_sheet(BEN)),
        0.0,
        hint="too long",
    )
    two = (line(WEEK, BEN, N, wrong), line(WEEK, BEN, N, right))
    yield Case("Two answers under one id", _zip(sheet(*two)), 2.0, hint="say different things")
    later = {"id": "another", "when": "2025-11-25T19:00:00.000000Z"}
    again = (line(WEEK, BEN, N, wrong), line(WEEK, BEN, N, right, **later))
    yield Case("Two answers that both say they are the first try", _zip(sheet(*again)), 1.5)


def _orders() -> Iterator[Case]:
    best = right(cases_for(RICH.work, BEN)[ORDER - 1])
    letters = best.split()
    for about, text, points in (
        ("An order with a step twice", " ".join([*letters, letters[0]]), 0.0),
        ("An order in wide letters", "".join(chr(ord(one) + 0xFEE0) for one in letters), 2.0),
        ("An order in letters of another alphabet", best.replace("A", "А"), 0.0),
        (
            "An order as the number it is kept as",
            "".join(str("ABCDEFGHI".index(one) + 1) for one in letters),
            0.0,
        ),
        ("An order of 10,000 letters", best * 1_000, 0.0),
    ):
        status = "right"
        sent = sheet(line(RICH, BEN, ORDER, text, status=status))
        yield Case(about, _zip(sent), points, hint="" if points else "can't be read", week=RICH)


def _way(*words: str, **other) -> bytes:
    """The lines of Ben's case, as its card keeps them."""
    ways = [way_of(CODE, words[:many]) for many in range(1, len(words) + 1)]
    kept = [attempt_of_way(way, RICH.work.code, BEN)._replace(**other) for way in ways]
    return "".join(f"{line_of(each)}\n" for each in kept).encode()


def _cases() -> Iterator[Case]:
    def case(about: str, data: bytes, points: float, hint: str = "") -> Case:
        return Case(about, _zip(data), points, hint=hint, week=RICH)

    start = SURE[0]
    other = next(f"name:{one}" for one in CASE.suspects if f"name:{one}" != SURE[-2])
    yield case("Find the fault: the way as it should be", _way(*SURE), 10.0)
    yield case(
        "A case called found that isn't", _way(start, status="right"), 0.0, "it is not found yet"
    )
    yield case(
        "A case worked twice, the second time knowing the fault",
        _way(start, other) + _way(*SURE[1:]),
        0.0,
        "don't follow each other",
    )
    made_up = attempt_of_way(way_of(CODE, (start,)), RICH.work.code, BEN)._replace(
        typed="open_sesame"
    )
    yield case(
        "A step that doesn't exist", f"{line_of(made_up)}\n".encode(), 0.0, "can't be done there"
    )
    long = made_up._replace(typed=" ".join([start] * 2_500))
    yield case(
        "A way of 2,500 steps in each of 90 lines",
        b"".join(f"{line_of(long._replace(id=str(n)))}\n".encode() for n in range(90)),
        0.0,
    )
    theirs = str(HERS.code)
    words = sure_way(theirs).words
    hers = attempt_of_way(way_of(theirs, words), RICH.work.code, BEN)
    yield case(
        "Ana's case, solved by Ben", f"{line_of(hers)}\n".encode(), 0.0, "didn't get that problem"
    )
    moved = hers._replace(code=CODE)
    yield case("Ana's way written into Ben's case", f"{line_of(moved)}\n".encode(), 0.0)


def _notebooks() -> Iterator[Case]:
    page = f"{NAME}.ipynb"

    def cell(text: str, **more) -> dict:
        meta = {"wire_to_water": {"answer": N}}
        return {"cell_type": "markdown", "metadata": meta, "source": f"Answer: {text}", **more}

    def sent(*cells: dict):
        return lambda mail: packed(mail / f"{BEN}.zip", {page: json.dumps({"cells": cells})})

    yield Case(
        "A script as a plain answer in the notebook",
        sent(cell(SCRIPT)),
        0.0,
        hint="No answer sheet",
    )
    yield Case(
        "Two different plain answers to one question",
        sent(cell("1"), cell("2")),
        0.0,
        hint="can't be read",
    )
    output = {"output_type": "display_data", "data": {"text/html": SCRIPT}, "metadata": {}}
    code = {"cell_type": "code", "metadata": {}, "source": "1", "outputs": [output]}
    yield Case(
        "A notebook with a script in what its cells put out",
        _zip(right_sheet(BEN), **{page: json.dumps({"cells": [code]})}),
        FULL,
    )
    odd = [{"cell_type": 5}, None, [], {"metadata": {"wire_to_water": {"answer": 10**400}}}]
    yield Case(
        "A notebook whose cells are none",
        _zip(right_sheet(BEN), **{page: json.dumps({"cells": odd})}),
        FULL,
    )


MORE = (
    Part("Names and ids", tuple(_names())),
    Part("Files again", tuple(_files())),
    Part("Times again", tuple(_when())),
    Part("Other sets and versions", tuple(_other_sets())),
    Part("Numbers, scripts and lines", tuple(_numbers())),
    Part("Steps to put in order", tuple(_orders())),
    Part("Find the fault", tuple(_cases())),
    Part("Notebooks", tuple(_notebooks())),
)
