"""What people send a trainer, by mistake or on purpose, and what must come of each.

Ben (op02) sends something; Ana's honest work (op03) lies in the same folder. Each case says what of
Ben's counts, and a piece of the sentence that the trainer reads. Nothing may ever change Ana's points.
"""

import json
import os
import stat
import struct
from collections.abc import Callable, Iterator, Mapping
from pathlib import Path
from typing import NamedTuple
from zipfile import ZIP_BZIP2, ZIP_DEFLATED, ZIP_STORED, ZipFile, ZipInfo

from solver.topics.catalogue import CATALOGUE
from tests.workbook.trainer.sheets import line, number, right, sheet, wrong
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.sets.set_file import Assigned, parse_set_file

__all__ = [
    "ANA",
    "BEN",
    "DUE",
    "FULL",
    "MARIA",
    "NAME",
    "PARTS",
    "WEEK",
    "Case",
    "Part",
    "packed",
    "right_sheet",
]

NAME, MARIA, BEN, ANA = "week-3", "op01", "op02", "op03"
WEEK = parse_set_file(
    f'draw = 48213\ncatalogue = {CATALOGUE}\nchapters = ["horsepower"]\ncount = 3\npoints = 2\nlate = 0.5\n'
    "due = 2025-11-26T12:00:00Z",
    NAME,
)
FULL = 6.0
DUE = 1_764_158_400  # that time, in seconds
IN_TIME, TOO_LATE = DUE - 3_600, DUE + 3_600


class Case(NamedTuple):
    """What is sent and what must come of it.

    `counts` are Ben's points before anything is taken off for being late, None where nothing of it
    is taken; `says` is a piece of what the trainer reads, and `hint` of what is said when graded.
    """

    about: str
    send: Callable[[Path], object]
    counts: float | None
    says: str = ""
    hint: str = ""
    late: bool = False
    said_as: Mapping[str, str] = {}
    whose: str = BEN
    week: Assigned = WEEK


class Part(NamedTuple):
    """Cases of one sort."""

    title: str
    cases: tuple[Case, ...]


def right_sheet(person: str, which=(1, 2, 3)) -> bytes:
    return sheet(*(line(WEEK, person, n, right) for n in which))


def packed(
    path: Path, files: Mapping[str, bytes | str], at: int = IN_TIME, how: int = ZIP_DEFLATED
) -> Path:
    with ZipFile(path, "w", how) as pack:
        for name, data in files.items():
            pack.writestr(name, data)
    os.utime(path, (at, at))
    return path


def of_ben(more: Mapping[str, bytes | str] = {}, person: str = BEN) -> dict[str, bytes | str]:
    """Ben's right work in the form that the page of a set makes, and more files beside it."""
    within = f"{person}/{NAME}/"
    return {f"{within}{SHEET}": right_sheet(person), **{within + k: v for k, v in more.items()}}


def _ben(more: Mapping[str, bytes | str] = {}, name: str = f"{NAME}-{BEN}.zip"):
    return lambda mail: packed(mail / name, of_ben(more))


def _bytes(data: bytes, name: str = f"{NAME}-{BEN}.zip"):
    def send(mail: Path) -> None:
        path = mail / name
        path.write_bytes(data)
        os.utime(path, (IN_TIME, IN_TIME))

    return send


def bomb(mail: Path) -> None:
    """A notebook of 100 MB of blanks, which claims to have 1,000 bytes."""
    path = mail / f"{NAME}-{BEN}.zip"
    info = ZipInfo(f"{BEN}/{NAME}/{NAME}.ipynb")
    info.compress_type = ZIP_DEFLATED
    with ZipFile(path, "w") as pack, pack.open(info, "w", force_zip64=False) as file:
        for _ in range(100):
            file.write(b" " * 1_000_000)
    data = path.read_bytes()
    claimed = data.replace(struct.pack("<L", 100_000_000), struct.pack("<L", 1_000))
    path.write_bytes(claimed)


def _of_others_way(mail: Path) -> None:
    packed(mail / f"{NAME}-{BEN}.zip", of_ben({f"{NAME}.ipynb": "{}" * 900}), how=ZIP_BZIP2)


def _many_names(mail: Path) -> None:
    packed(mail / f"{NAME}-{BEN}.zip", {f"{n}": "" for n in range(30_000)}, how=ZIP_STORED)


def _locked(mail: Path) -> None:
    """A zip file with a password: its flag stands in both places of each name."""
    path = packed(mail / f"{NAME}-{BEN}.zip", of_ben(), how=ZIP_STORED)
    data = bytearray(path.read_bytes())
    for mark, at in ((b"PK\x03\x04", 6), (b"PK\x01\x02", 8)):
        data[data.find(mark) + at] |= 1
    path.write_bytes(bytes(data))


def _half(mail: Path) -> None:
    path = packed(mail / f"{NAME}-{BEN}.zip", of_ben())
    path.write_bytes(path.read_bytes()[:300])


def _link_inside(mail: Path) -> None:
    info = ZipInfo(f"{BEN}/{NAME}/{NAME}.ipynb")
    info.external_attr = (stat.S_IFLNK | 0o777) << 16
    with ZipFile(mail / f"{NAME}-{BEN}.zip", "w") as pack:
        pack.writestr(f"{BEN}/{NAME}/{SHEET}", right_sheet(BEN))
        pack.writestr(info, "/etc/passwd")
    os.utime(mail / f"{NAME}-{BEN}.zip", (IN_TIME, IN_TIME))


def _deep(mail: Path) -> None:
    packed(mail / f"{NAME}-{BEN}.zip", {"/".join(["d"] * 90) + f"/{SHEET}": right_sheet(BEN)})


def _twice(mail: Path) -> None:
    """Two entries of one name: unpackers differ in which they take."""
    path = mail / f"{NAME}-{BEN}.zip"
    with ZipFile(path, "w") as pack:
        pack.writestr(f"{BEN}/{NAME}/{SHEET}", right_sheet(BEN, (1,)))
        other = ZipInfo(f"{BEN}/{NAME}/{SHEET[:-1]}X")
        pack.writestr(other, right_sheet(BEN))
    data = path.read_bytes().replace(f"{SHEET[:-1]}X".encode(), SHEET.encode())
    path.write_bytes(data)
    os.utime(path, (IN_TIME, IN_TIME))


def _replacing(mail: Path) -> None:
    bad = sheet(line(WEEK, ANA, number(WEEK, ANA), wrong))
    packed(mail / "download (4).zip", {f"{ANA}/{NAME}/{SHEET}": bad}, DUE - 10)


def _before_hers(mail: Path) -> None:
    bad = sheet(line(WEEK, ANA, number(WEEK, ANA), wrong))
    packed(mail / "download (5).zip", {f"{ANA}/{NAME}/{SHEET}": bad}, DUE - 600)


def _said(when: str, at: int = IN_TIME):
    return lambda mail: packed(mail / f"{NAME}-{BEN}.zip", of_ben({"timestamp.txt": when}), at)


def _locks_out(mail: Path) -> None:
    packed(
        mail / f"{NAME}-{BEN}.zip",
        {f"{BEN}/{NAME}/{SHEET}": right_sheet(BEN, (1,)), f"{BEN}/{NAME}/timestamp.txt": "9999-12-31 23:59:59 UTC"},
        IN_TIME - 600,
    )  # fmt: skip
    packed(mail / f"{BEN}.zip", of_ben())


def _typed_maria(mail: Path) -> None:
    packed(mail / "download.zip", of_ben(person="maria"))


def _plain(sheet_of_ben: bytes, more: Mapping[str, bytes | str] = {}):
    return lambda mail: packed(mail / f"{BEN}.zip", {SHEET: sheet_of_ben, **more})


def _tricks_with_files() -> Iterator[Case]:
    yield Case(
        "A zip entry with a name of 300 letters",
        _ben({"x" * 300 + ".txt": "a"}),
        FULL,
        "not taken: “",
    )
    yield Case("Zip entries “a” and “a/b”", _ben({"a": "1", "a/b": "2"}), FULL, "not taken: “")
    yield Case(
        "A zip that claims 1,000 bytes and unpacks to 100 MB", bomb, None, "isn't what it says"
    )
    yield Case(
        "A 300-times packed zip, in an unusual packing", _of_others_way, None, "in an unusual way"
    )
    yield Case("A file called CON", _ben({"CON": "a"}), FULL, "not taken: “op02/week-3/CON”")
    config = {"nbgrader_config.py": "import os; os.abort()"}
    yield Case("nbgrader_config.py inside the set", _ben(config), FULL, "nbgrader_config.py”")
    up = {"../../../op03/week-3/answer-sheet.jsonl": "x"}
    yield Case("A name that leads out of the folder (../..)", _ben(up), FULL, "not taken: “")
    yield Case(
        "The same with backslashes", _ben({"..\\..\\op03\\week-3\\x": "x"}), FULL, "not taken: “"
    )
    yield Case("A zip of 30,000 empty files", _many_names, None, "more than 200 files")
    yield Case("A zip with a password", _locked, None, "it has a password")
    yield Case("Half of a zip file", _half, None, "Ask for it again")
    yield Case("A text file called .zip", _bytes(b"my homework"), None, "isn't a whole zip file")
    yield Case("An empty file", _bytes(b""), None, "Ask for it again")
    yield Case("A zip with nothing in it", _ben_nothing, None, "no answer sheet")
    yield Case("A link inside the zip to /etc/passwd", _link_inside, FULL, "not taken: “")
    yield Case("A link in place of a file", _link_for_file, None, "is a link or a device")
    yield Case("A pipe that never ends, in place of a file", _pipe, None, "is a link or a device")
    yield Case("Folders 90 deep", _deep, FULL)
    yield Case("Two entries of one name in a zip", _twice, 2.0, "not taken")
    two = {f"{NAME} (1).ipynb": "{}", f"{NAME} (2).ipynb": "{}"}
    yield Case("Two notebooks, neither with the right name", _ben(two), None, "Ask which one")
    odd = "op02\n=1+1.zip"
    yield Case("A file name with a line break and a formula", _ben(name=odd), FULL)


def _ben_nothing(mail: Path) -> None:
    packed(mail / f"{NAME}-{BEN}.zip", {})


def _link_for_file(mail: Path) -> None:
    (mail / f"{BEN}.zip").symlink_to("/etc/passwd")


def _pipe(mail: Path) -> None:
    os.mkfifo(mail / f"{BEN}.zip")


def _whose_it_is() -> Iterator[Case]:
    of_ana = {f"{ANA}/{NAME}/{SHEET}": right_sheet(ANA, (1,))}
    yield Case(
        "Ben's file with Ana's folder inside",
        lambda mail: packed(mail / f"{NAME}-{BEN}.zip", of_ana),
        None, "Nothing of it was taken. Ask who sent it.",
    )  # fmt: skip
    yield Case(
        "Ana's folder with worse answers, sent as download (4).zip",
        _replacing,
        None,
        "doesn't have, so it was left out",
    )
    yield Case("The same, sent before Ana's own", _before_hers, None, "takes the place of the work")
    yield Case(
        "A zip with the folders of two people",
        lambda mail: packed(mail / "both.zip", {**of_ben(), **of_ana}),
        None, "has the work of 2 people in it",
    )  # fmt: skip
    yield Case("An id typed wrong: maria", _typed_maria, None, "type: --as maria=op01", whose=MARIA)
    yield Case(
        "The same, and the trainer says who it is",
        _typed_maria, FULL, "typed as “maria” and is graded as op01",
        said_as={"maria": MARIA}, whose=MARIA,
    )  # fmt: skip
    yield Case(
        "Ana's answer sheet under Ben's name",
        _plain(right_sheet(ANA)),
        0.0,
        hint="were not counted",
    )
    forged = sheet(*(line(WEEK, ANA, n, right, who=BEN) for n in (1, 2, 3)))
    yield Case(
        "Ana's answers with Ben's id written in",
        _plain(forged),
        0.0,
        hint="didn't get that problem",
    )
    yield Case("Somebody who isn't on the list", _stranger, None, "isn't on the list of this class")


def _stranger(mail: Path) -> None:
    packed(mail / f"{NAME}-zed.zip", of_ben(person="zed"))


def _times() -> Iterator[Case]:
    yield Case(
        "A time before the deadline, in a file that came after it",
        _said("2025-11-26 11:00:00 UTC", TOO_LATE), FULL, late=True,
    )  # fmt: skip
    yield Case("A time in the year 9999, then the real file", _locks_out, FULL, "hasn't come yet")
    yield Case("A file saved in the year 2096", _future, FULL, "hasn't come yet")
    yield Case(
        "A time before its own last answer",
        _said("2025-11-20 08:00:00 UTC"), FULL, "before its own last answer",
    )  # fmt: skip
    yield Case("A time of a million digits", _said("9" * 900), FULL)
    yield Case("A time that is none", _said("before the deadline!"), FULL)


def _future(mail: Path) -> None:
    said = {"timestamp.txt": "2025-11-26 11:00:00 UTC"}
    packed(mail / f"{NAME}-{BEN}.zip", of_ben(said), 4_000_000_000)


def _what_is_in_it() -> Iterator[Case]:
    n = number(WEEK, BEN)
    called = sheet(line(WEEK, BEN, n, wrong, status="right"))
    yield Case("Wrong answers that the sheet calls right", _plain(called), 0.0, hint="it is wrong")
    third = sheet(line(WEEK, BEN, n, right, 3))
    yield Case("Earlier tries taken out", _plain(third), 1.0, hint="An earlier try is missing")
    own = {"set.toml": "draw = 1\npoints = 900"}
    yield Case("A set.toml worth 900 points", _ben(own), FULL)
    code = {"cell_type": "code", "metadata": {}, "source": "open('../../../stolen', 'w')"}
    page = json.dumps({"cells": [code]})
    yield Case("Code in the notebook", _ben({f"{NAME}.ipynb": page}), FULL)
    nested = "[" * 200_000
    yield Case("A notebook of 200,000 brackets", _ben({f"{NAME}.ipynb": nested}), FULL)
    yield Case(
        "A sheet of zeros and half letters", _plain(b"\0\xff" * 5_000), 0.0, hint="was not counted"
    )
    yield Case(
        "A sheet of 3 MB", _plain(right_sheet(BEN) + b"\n" * 3_000_000), None, "is bigger than"
    )
    many = sheet(*(line(WEEK, BEN, n, wrong, t) for t in range(1, 400)))
    yield Case("400 tries at one question", _plain(many), 0.0)


PARTS = (
    Part("Files", tuple(_tricks_with_files())),
    Part("Whose it is", tuple(_whose_it_is())),
    Part("Times", tuple(_times())),
    Part("What is in it", tuple(_what_is_in_it())),
)
