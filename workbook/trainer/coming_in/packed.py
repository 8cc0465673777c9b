"""A person's work as one file, packed for a trainer who collects work without a hub."""

from collections.abc import Sequence
from datetime import UTC, datetime
from io import BytesIO
from pathlib import Path
from zipfile import ZIP_DEFLATED, ZipFile

from workbook.log import NotRead
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.learner.who import PERSON
from workbook.trainer.sets.set_file import SET_FILE

from .handed_in import TIMESTAMP

__all__ = ["work_as_zip"]


def work_as_zip(folder: Path, person: str) -> tuple[bytes, Sequence[str]]:
    """The zip file, and what of the work it lacks: the page or the sheet.

    In it the files stand as a course has them, under the person and the set, so that unpacking it
    into the course's folder of what is handed in puts each where it belongs. The time is told as
    nbgrader tells it, by the clock of this computer.

    Raises:
        NotRead: a file is there and cannot be read; the sentence says why.
    """
    page = f"{folder.name}.ipynb"
    held, lacks = BytesIO(), []
    with ZipFile(held, "w", ZIP_DEFLATED) as packed:
        for name in (page, SHEET, SET_FILE, PERSON):
            try:
                data = (folder / name).read_bytes()
            except FileNotFoundError:
                lacks.append(name)
                continue
            except OSError as error:
                why = error.strerror or error
                raise NotRead(f"{folder / name} couldn't be read: {why}.") from error
            packed.writestr(f"{person}/{folder.name}/{name}", data)
        now = f"{datetime.now(UTC):%Y-%m-%d %H:%M:%S} UTC\n"
        packed.writestr(f"{person}/{folder.name}/{TIMESTAMP}", now)
    return held.getvalue(), [name for name in lacks if name in (page, SHEET)]
