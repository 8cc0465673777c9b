"""The pages are whole: their parts, their words, their links, their codes; and each one runs."""

import ast
import json
import os
import re
import subprocess
import sys
from itertools import chain

import nbformat
import pytest

from solver import FAMILIES, case_from_code
from workbook.figures.explorer import FIGURES
from workbook.ui.chapter import formulas_of
from workbook.ui.pages import OPENING, TRAINERS, chapters, shipped_pages

PAGES = shipped_pages()
EVERY = [*PAGES, *shipped_pages(TRAINERS)]  # a trainer's pages keep the same rules
# The pages between the first chapters and the later ones, each with what it calls.
AFTER = {
    "12-mixed-practice.ipynb": ["mixed", "cautions"],
    "13-pump-day-record.ipynb": ["cautions_in_full", "record", "plant"],
    "14-your-study.ipynb": ["progress", "log_copies", "cautions"],
    "15-practice-exam.ipynb": ["exam", "cautions"],
    "16-formulas-and-tables.ipynb": ["reference", "cautions"],
    "17-group-study.ipynb": ["group", "group", "group", "cautions"],
    "18-find-the-fault.ipynb": ["fault", "cautions"],
    "27-from-your-trainer.ipynb": ["sent_set", "cautions"],
}
MIXED = "12-mixed-practice.ipynb"
CHAPTERS = [path for path in PAGES if path.name not in (OPENING, *AFTER)]
# What stands in every chapter, in the order of reading.
PARTS = [
    *("title", "practice", "why", "idea", "explore", "figure", "cautions-first", "cautions"),
    *("example", "worked-example", "your-own", "own-numbers"),
    *("formulas-first", "formulas", "remember", "onward"),
]
# A chapter without formulas has nothing to move or to put numbers into; each is read instead.
PARTS_IN_WORDS = {
    "11-around-the-machine.ipynb": [
        *("title", "practice", "why", "cautions-first", "cautions", "order", "rotation", "signs"),
        *("example", "worked-example", "remember", "onward"),
    ],
    "26-order-of-steps.ipynb": [
        *("title", "practice", "why", "how", "cautions-first", "cautions", "questions", "pairs"),
        *("example", "worked-example", "remember", "onward"),
    ],
}
LONGEST = 19  # words in a sentence: under 20
FORMULA = re.compile(r"[=×÷√]|\$\$|\\[a-z]+|\d\s*[*/^]\s*\d|\w \* \w")


def by_name(pages):
    return pytest.mark.parametrize("path", pages, ids=[path.stem for path in pages])


def read(path):
    return nbformat.read(path, as_version=nbformat.NO_CONVERT)


def cells(path, kind):
    return [cell for cell in read(path).cells if cell.cell_type == kind]


def prose(path):
    """The words of a page without its marks, a paragraph or a list item at a time."""
    for cell in cells(path, "markdown"):
        for line in cell.source.splitlines():
            line = re.sub(r"\[([^]]*)\]\([^)]*\)", r"\1", line)
            line = re.sub(r"^(#+|-|\d+\.) ", "", line).replace("**", "").strip()
            if line and " | " not in line:
                yield line


def links(path):
    return [
        m for cell in cells(path, "markdown") for m in re.findall(r"\]\(([^)]+)\)", cell.source)
    ]


def calls(path):
    """Each call of the workbook as (function, its words)."""
    for cell in cells(path, "code"):
        match ast.parse(cell.source).body[-1]:
            case ast.Expr(ast.Call(ast.Attribute(attr=name), args)):
                yield name, [ast.literal_eval(argument) for argument in args]


def has_formulas(path):
    return bool(formulas_of(*dict(calls(path))["practice"]))


@by_name(EVERY)
def test_a_page_is_a_valid_notebook_that_may_run_by_itself(path):
    nbformat.validate(json.loads(path.read_text(encoding="utf-8")))
    page = read(path)
    assert {"page": True} == page.metadata.wire_to_water
    assert "python3" == page.metadata.kernelspec.name


@by_name(EVERY)
def test_cells_have_names_that_say_what_they_are(path):
    ids = [cell.id for cell in read(path).cells]
    assert [] == [name for name in ids if not re.fullmatch(r"[a-z]+(-[a-z]+)*", name)]
    assert len(set(ids)) == len(ids)


@by_name(EVERY)
def test_code_is_one_hidden_line_under_a_friendly_comment_and_keeps_no_output(path):
    for number, cell in enumerate(cells(path, "code")):
        comment, *lines = cell.source.splitlines()
        assert re.fullmatch(r"# [A-Z][^.!]*\.", comment), comment
        # Only the first brings in the workbook: a cell without output would be an empty stop.
        assert ["from workbook import page", ""][: 2 * (number == 0)] == lines[:-1]
        assert 1 == len(ast.parse(lines[-1]).body), lines
        assert ([], None) == (cell.outputs, cell.execution_count)
        assert cell.metadata.jupyter.source_hidden
        assert ["hide-input"] == cell.metadata.tags


@by_name(CHAPTERS)
def test_a_chapter_has_every_part_in_the_order_of_reading(path):
    parts = PARTS if has_formulas(path) else PARTS_IN_WORDS[path.name]
    assert parts == [cell.id for cell in read(path).cells]


@by_name(EVERY)
def test_a_page_has_one_title_and_no_heading_out_of_order(path):
    text = "\n".join(cell.source for cell in cells(path, "markdown"))
    levels = [len(marks) for marks in re.findall(r"^(#+) ", text, flags=re.MULTILINE)]
    assert [1] + [2] * (len(levels) - 1) == levels


@by_name(EVERY)
def test_sentences_are_under_twenty_words_and_calm(path):
    for line in prose(path):
        assert "!" not in line, line
        for sentence in re.split(r"(?<=[.?:])\s+", line):
            assert len(sentence.split()) <= LONGEST, sentence


@by_name(EVERY)
def test_no_formula_is_typed_into_the_prose(path):
    assert [] == [line for line in prose(path) if FORMULA.search(line)]


@by_name(EVERY)
def test_links_lead_to_pages_that_ship(path):
    assert set() == set(links(path)) - {page.name for page in EVERY}


def test_the_opening_page_leads_to_the_chapters_and_every_chapter_on_and_back():
    assert [CHAPTERS[0].name] == links(PAGES[0])
    assert ["home", "cautions_in_full", "contents"] == [name for name, _ in calls(PAGES[0])]
    in_a_row = [*CHAPTERS, *(path for path in PAGES if path.name == MIXED)]
    for number, path in enumerate(in_a_row):
        beside = in_a_row[number + 1 : number + 2] + in_a_row[max(0, number - 1) : number]
        assert {*(page.name for page in beside), OPENING} == set(links(path))


def test_the_chapters_are_numbered_in_a_row_and_no_other_page_has_a_number():
    titles = [one.title for one in chapters()]
    assert [f"{n}." for n in range(1, len(CHAPTERS) + 1)] == [
        title.split()[0] for title in titles[: len(CHAPTERS)]
    ]
    assert [] == [title for title in titles[len(CHAPTERS) :] if title[0].isdigit()]


def test_a_link_to_a_chapter_says_its_number():
    number = {path.name: f"chapter {at}" for at, path in enumerate(CHAPTERS, 1)}
    texts = [cell.source for path in PAGES for cell in cells(path, "markdown")]
    said = re.findall(r"(chapter \d+)\]\(([^)]+)\)", "\n".join(texts))
    assert [] == [(words, page) for words, page in said if number[page] != words]


def test_the_pages_that_are_no_chapters_stay_where_they_were_given_out():
    assert list(AFTER) == [page.name for page in (*PAGES[12:19], PAGES[27])]


@by_name([path for path in PAGES if path.name in AFTER])
def test_a_page_after_the_chapters_has_its_panels_and_leads_back(path):
    assert AFTER[path.name] == [name for name, _ in calls(path)]
    assert OPENING == links(path)[-1]


@by_name(CHAPTERS)
def test_the_worked_example_opens_and_belongs_to_the_chapter(path):
    said = dict(calls(path))
    family = case_from_code(*said["worked_example"]).family
    assert said["practice"] == [family.chapter]


@by_name(CHAPTERS)
def test_practice_formulas_and_own_numbers_are_of_one_chapter_that_has_problems(path):
    said = dict(calls(path))
    assert said["practice"][0] in {family.chapter for family in FAMILIES}
    if has_formulas(path):
        assert said["practice"] == said["formulas"] == said["own_numbers"]
        assert said.get("figure", ["losses"])[0] in FIGURES


def test_only_the_chapters_in_words_have_no_formulas():
    without = [path.name for path in CHAPTERS if not has_formulas(path)]
    assert list(PARTS_IN_WORDS) == without


def test_the_chapters_together_practise_every_family():
    practiced = {dict(calls(path))["practice"][0] for path in CHAPTERS}
    assert {family.chapter for family in FAMILIES} == practiced


@by_name(EVERY)
def test_dangers_are_named_on_every_page_and_before_readings_of_a_machine_are_asked_for(path):
    names = [name for name, _ in calls(path)]
    readings = [names.index(name) for name in ("own_numbers", "record") if name in names]
    in_full = bool(readings) or path in CHAPTERS or path.name == OPENING
    shown = "cautions_in_full" if in_full else "cautions"
    assert [shown] == [name for name in names if name.startswith("cautions")]
    assert names.index(shown) < min(readings, default=len(names))
    assert "electrical" in dict(calls(path))[shown]


def in_a_row():
    """Every page's code as one notebook, in which none knows what another named."""
    pages = [cells(path, "code") for path in EVERY]
    for first, *_ in pages:
        first.source = f"%reset -f\n{first.source}"
    row = read(EVERY[0])
    row.cells = list(chain.from_iterable(pages))
    for number, cell in enumerate(row.cells):
        cell.id = f"cell-{number}"  # its own is that of other pages too
    return row


def test_every_page_runs_from_top_to_bottom_without_an_error(root, tmp_path):
    # nbval runs each cell, all in one kernel as a reader's are; lax, for the names of widgets
    # differ each time.
    row = in_a_row()
    nbformat.write(row, tmp_path / "row.ipynb")
    command = [sys.executable, "-m", "pytest", "--nbval-lax", "-p", "no:cacheprovider"]
    kept = {name: value for name, value in os.environ.items() if not name.startswith("XDG_")}
    told = subprocess.run(
        [*command, f"--rootdir={tmp_path}", tmp_path / "row.ipynb"],
        cwd=tmp_path,
        env={**kept, "HOME": str(tmp_path), "PYTHONPATH": str(root), "PYTEST_ADDOPTS": ""},
        capture_output=True,
        text=True,
    )
    assert re.search(rf"\b{len(row.cells)} passed in", told.stdout), told.stdout + told.stderr


def test_every_chapter_is_told_by_a_sentence_in_the_list_of_pages():
    assert [] == [one.file for one in chapters() if not re.match(r"[A-Z].*\.$", one.about)]
