"""How fast a set becomes sheets on paper, and answers typed back become marks.

    python -m pytest tests/benchmarks/test_paper_rate.py --benchmark-enable -q

What is asserted are ratios within one run. Setting pages that are empty but for their foot is what
typst takes at the least; the table shows the seconds of this machine beside it.
"""

import csv
import io
import time

import pytest

from solver.engine.grading import as_typed
from solver.sets.paper import CHAPTERS
from solver.sets.work_set import cases_for, set_of
from workbook.trainer.on_paper.marks import marks_of
from workbook.trainer.on_paper.printed import pdf_of
from workbook.trainer.on_paper.sheets import answers_csv, numbered, sheets_of
from workbook.trainer.on_paper.typed import TypedFile
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.printing import compiled

WEEK = Assigned("week-3", "Week 3", set_of(chapters=CHAPTERS, count=10, seed=48213))
MANY = 500
EMPTY = """
#set page(footer: foot-of-all("Sheet"))
#for number in range(data.pages) { [#number]; pagebreak(weak: true) }
"""


def seconds(work, *given) -> float:
    """The least that some work took, of two times."""
    took = []
    for _ in range(2):
        started = time.perf_counter()
        work(*given)
        took.append(time.perf_counter() - started)
    return min(took)


def printed(count: int) -> bytes:
    """Problems drawn, set and in the file."""
    return pdf_of(WEEK, sheets_of(WEEK, numbered(count)))


@pytest.fixture
def empty(tmp_path):
    """A function that sets so many pages with a number and a foot."""
    template = tmp_path / "empty.typ"
    template.write_text(EMPTY)
    return lambda pages: compiled(template, {"pages": pages})


def test_500_sheets_with_their_key_take_no_more_than_12_times_1500_empty_pages(empty, table):
    bare, whole = seconds(empty, 3 * MANY), seconds(printed, MANY)
    table["500 sheets of 10 questions, printed"] = (
        f"{whole:10.2f} s  {whole / bare:5.1f} x empty pages"
    )
    assert whole < 12 * bare


def test_drawing_the_problems_is_less_than_a_third_of_printing_them(table):
    drawn = seconds(lambda: sheets_of(WEEK, numbered(100)))
    whole = seconds(printed, 100)
    table["of that, drawing"] = f"{100 * drawn / whole:10.0f} %"
    assert drawn < whole / 3


def test_four_times_the_sheets_take_about_four_times_as_long():
    printed(10)
    assert seconds(printed, 200) < 8 * seconds(printed, 50)


def typed(count: int) -> bytes:
    """The file of so many sheets, filled in."""
    sheets = sheets_of(WEEK, numbered(count))
    made = io.StringIO(newline="")
    head, *rows = csv.reader(io.StringIO(answers_csv(sheets).decode("utf-8-sig")))
    answers = ([as_typed(case, case.answer) for case in sheet.cases] for sheet in sheets)
    filled = (row[:3] + more for row, more in zip(rows, answers, strict=True))
    csv.writer(made).writerows([head, *filled])
    return made.getvalue().encode()


def marked(data: bytes) -> int:
    """Every row read, given to its person and marked."""
    rows = list(marks_of(WEEK, TypedFile(io.BytesIO(data), WEEK.work.count)))
    assert all(row.marked.points == 10 for row in rows)
    return len(rows)


def test_marking_a_row_takes_less_than_three_times_drawing_its_problems(table):
    data = typed(200)
    drawn = seconds(lambda: [cases_for(WEEK.work, f"sheet-{n:03}") for n in range(1, 201)])
    took = seconds(marked, data)
    table["a row of 10 answers typed back, marked"] = f"{200 / took:10,.0f} a second"
    assert took < 3 * drawn


def test_ten_times_the_rows_take_about_ten_times_as_long():
    few, many = typed(40), typed(400)
    assert seconds(marked, many) < 20 * seconds(marked, few)
