"""A set on paper: what stands on the sheets and in the key, and that a text is never code there."""

import json
import re
from dataclasses import replace
from io import BytesIO

import pytest
import typst
from pypdf import PdfReader

from solver.render.text import one_line_text, steps_text
from solver.sets.paper import CHAPTERS
from solver.sets.work_set import MOST, case_for, set_of
from solver.units.show import figures, with_unit
from workbook.trainer.course import Person
from workbook.trainer.on_paper import printed
from workbook.trainer.on_paper.printed import MOST_ASKED, TooMany, pdf_of
from workbook.trainer.on_paper.sheets import answers_csv, numbered, sheets_of
from workbook.trainer.sets.set_file import Assigned
from workbook.ui.printing import SHARED

WEEK = Assigned(
    "week-3", "Week 3: power", set_of(chapters=CHAPTERS[:11], count=7, seed=1), points=2.0
)
PEOPLE = [Person("ana.r", "Ana", "Rivet"), Person("ben.k", "Ben"), Person("00123")]
HOSTILE = '#panic("run") $x$ *b* = h <l> \\ #read("/etc/hosts") ]#[ //'


def pages(pdf):
    return [page.extract_text() for page in PdfReader(BytesIO(pdf)).pages]


def flat(text):
    return re.sub(r"[\s\u200b]+", "", text)


def parts(texts, name):
    """The texts of the pages of one part: those of a sheet, or from a title on."""
    return [text for text in texts if flat(f"{name}Page") in flat(text)]


@pytest.fixture(scope="module")
def made():
    """Five numbered sheets, the third worked in full, and the text of their pages."""
    sheets = sheets_of(WEEK, numbered(5))
    return sheets, pages(pdf_of(WEEK, sheets, {"sheet-003"}))


def test_each_page_of_a_sheet_has_its_code_number_place_for_name_and_date_and_page(made):
    sheets, texts = made
    for sheet in sheets:
        of_it = parts(texts, f"Sheet {sheet.number}")
        assert len(of_it) >= 2
        for number, text in enumerate(of_it, 1):
            assert str(sheet.code) in text
            assert flat(f"Sheet {sheet.number}Page {number} of {len(of_it)}") in flat(text)
            assert "Name:" in text
            assert "Date:" in text


def test_a_sheet_has_its_own_questions_with_choices_and_the_unit_asked_and_no_answer(made):
    sheets, texts = made
    for sheet in sheets:
        text = flat("".join(parts(texts, f"Sheet {sheet.number}")))
        for case in sheet.cases:
            assert flat(case.lead) in text
            assert all(flat(said) in text for row in case.table for said in row)
            assert all(flat(choice) in text for choice in case.choices)
        assert "7questions,2pointseach,USunits." in text
        assert "Chooseone,1to4:" in text


def test_nothing_on_a_sheet_leads_to_its_solution(made):
    sheets, texts = made
    for sheet in sheets:
        text = "".join(parts(texts, f"Sheet {sheet.number}"))
        assert "SET-" not in text
        assert all(case.code not in text for case in sheet.cases)


def test_two_sheets_have_the_same_kinds_of_question_with_other_numbers(made):
    (one, two, *_), _ = made
    assert [case.family for case in one.cases] == [case.family for case in two.cases]
    assert [case.code for case in one.cases] != [case.code for case in two.cases]


def test_the_key_has_every_answer_with_its_unit_and_what_is_accepted(made):
    sheets, texts = made
    (key,) = parts(texts, WEEK.work.code)
    assert key.startswith("Key")
    for sheet in sheets:
        for case in sheet.cases:
            shown = figures(case.answer, "" if case.unit == "choice" else case.unit)
            assert flat(shown if case.choices else with_unit(shown, case.unit)) in flat(key)
            if not case.choices:
                low, high = figures(case.low, case.unit), figures(case.high, case.unit)
                assert flat(f"{low} to {high}") in flat(key)


def test_a_row_of_the_key_is_in_the_order_of_the_questions(made):
    sheets, _ = made
    key = printed.printed(WEEK, sheets)["key"]
    for sheet, (number, who, answers) in zip(sheets, key["rows"], strict=True):
        assert (str(sheet.number), "") == (number, who)
        for at, (answer, _) in enumerate(answers, 1):
            case = case_for(WEEK.work, sheet.person, at)
            assert answer.startswith(figures(case.answer, case.unit)) or "$" in answer


def test_a_sheet_worked_in_full_has_every_step_and_the_others_have_none(made):
    sheets, texts = made
    text = flat("".join(parts(texts, "Sheet 3, solved")))
    for case in sheets[2].cases:
        steps = steps_text(case.steps, case.known, case.given, case.units).splitlines()
        assert [] == [line for line in steps if flat(line) not in text]
        assert flat(one_line_text(case)) in text
        assert flat(case.code) in text
    assert any(map(one_line_text, sheets[2].cases))
    assert [] == parts(texts, "Sheet 2, solved")


def test_each_part_ends_with_the_caution(made):
    _, texts = made
    for name in ("Sheet 1", "Sheet 5", WEEK.work.code, "Sheet 3, solved"):
        assert flat("Follow your local codes, your plant's rules") in flat(parts(texts, name)[-1])


def test_the_sheets_of_known_people_bear_their_names_or_their_ids():
    texts = pages(pdf_of(WEEK, sheets_of(WEEK, PEOPLE)))
    for number, name in enumerate(("Ana Rivet", "Ben", "00123"), 1):
        for text in parts(texts, f"Sheet {number}"):
            assert f"Name: {name}" in text
    assert flat("1Ana Rivet") in flat(parts(texts, WEEK.work.code)[0])


def test_where_all_have_the_same_numbers_the_key_has_one_row():
    same = WEEK._replace(work=replace(WEEK.work, each=False))
    sheets = sheets_of(same, numbered(3))
    key = printed.printed(same, sheets, {"sheet-001"})
    assert [["all", ""]] == [row[:2] for row in key["key"]["rows"]]
    assert ["All sheets, solved"] == [each["title"] for each in key["solved"]]
    texts = pages(pdf_of(same, sheets))
    assert 3 == len({str(sheet.code) for sheet in sheets})
    for sheet in sheets:
        assert flat(sheets[0].cases[0].question) in flat(parts(texts, f"Sheet {sheet.number}")[0])


def test_some_of_the_sheets_can_be_printed_and_are_the_same_as_among_all():
    assert sheets_of(WEEK, numbered(9))[3:6] == sheets_of(WEEK, numbered(6), 4, 6)
    assert sheets_of(WEEK, PEOPLE)[1:] == sheets_of(WEEK, PEOPLE, 2, 3)


@pytest.mark.parametrize(
    ("units", "inches"), [("us", (8.5, 11)), ("si", (8.27, 11.69))], ids=["letter", "A4"]
)
def test_the_paper_is_that_of_the_units_and_the_key_lies_across(units, inches):
    # US letter is 8.5 by 11 in (ANSI/ASME Y14.1), A4 is 210 by 297 mm (ISO 216); from memory.
    work = WEEK._replace(work=replace(WEEK.work, units=units))
    found = PdfReader(BytesIO(pdf_of(work, sheets_of(work, numbered(1))))).pages
    sizes = [(float(p.mediabox.width) / 72, float(p.mediabox.height) / 72) for p in found]
    assert inches == pytest.approx(sizes[0], abs=0.01)
    assert inches[::-1] == pytest.approx(sizes[-1], abs=0.01)


def test_sixty_questions_of_every_chapter_are_set_in_parts_and_none_is_lost():
    long = WEEK._replace(work=replace(WEEK.work, count=MOST))
    sheets = sheets_of(long, PEOPLE[:2])
    texts = pages(pdf_of(long, sheets))
    key = flat("".join(parts(texts, long.work.code)))
    for number in range(1, MOST + 1):
        assert str(number) in key
        case = sheets[1].cases[number - 1]
        assert flat(figures(case.answer, case.unit)) in key
    assert flat(sheets[1].cases[-1].question) in flat("".join(parts(texts, "Sheet 2")))


def test_a_name_and_a_title_are_printed_as_they_stand_and_never_run():
    week = WEEK._replace(title=HOSTILE)
    texts = pages(pdf_of(week, sheets_of(week, [Person("ana.r", HOSTILE, "<b>")])))
    first = flat(texts[0])
    assert 2 == first.count(flat(HOSTILE)[:50])
    assert flat("Name: #panic") in first


def test_a_long_name_breaks_and_runs_over_nothing():
    long = [Person("ana.r", "W" * 128, "V" * 128)]
    (page, *_) = PdfReader(BytesIO(pdf_of(WEEK, sheets_of(WEEK, long)))).pages
    text = page.extract_text()
    assert max(map(len, re.findall(r"[W\u200b]+", text))) < 45
    assert "Date:" in text
    assert flat("WWWWWWWWWWWWWW") in flat(text)


def test_the_template_gives_no_warning_and_takes_in_nothing_from_outside(made):
    sheets, _ = made
    source = SHARED.read_text("utf-8") + printed.TEMPLATE.read_text("utf-8")
    data = json.dumps({**printed.printed(WEEK, sheets, {"sheet-001"}), "two-sided": True})
    _, warnings = typst.compile_with_warnings(
        source.encode(), format="pdf", ignore_system_fonts=True, sys_inputs={"data": data}
    )
    assert [] == list(warnings)
    assert [] == re.findall(r"(?:read|eval|plugin|csv|toml|yaml|xml)\(|import|include", source)


def test_the_same_set_and_people_give_the_same_file_without_a_date():
    first = pdf_of(WEEK, sheets_of(WEEK, PEOPLE))
    assert first == pdf_of(WEEK, sheets_of(WEEK, list(PEOPLE)))
    assert "/CreationDate" not in (PdfReader(BytesIO(first)).metadata or {})


def test_a_reader_of_the_file_finds_each_sheet_and_the_key_in_its_contents(made):
    sheets, _ = made
    outline = PdfReader(BytesIO(pdf_of(WEEK, sheets, {"sheet-003"}))).outline
    titles = [f"Sheet {sheet.number}" for sheet in sheets]
    assert [*titles, "Key", "Sheet 3, solved"] == [each["/Title"] for each in outline]


def test_printed_on_both_sides_each_part_begins_a_leaf_and_is_numbered_as_before(made):
    sheets, single = made
    double = pages(pdf_of(WEEK, sheets, {"sheet-003"}, two_sided=True))
    assert len(single) < len(double)
    assert single == [text for text in double if text.strip()]
    firsts = [at for at, text in enumerate(double) if flat("Page 1 of") in flat(text)]
    assert len(sheets) + 2 == len(firsts)
    assert [] == [at for at in firsts if at % 2]


def test_no_sheets_at_all_are_a_key_without_rows():
    assert ["Key"] == [text.split("\n")[0] for text in pages(pdf_of(WEEK, ()))]


def test_too_many_sheets_for_one_file_are_refused_with_how_many_it_holds():
    most = MOST_ASKED // WEEK.work.count
    (sheet,) = sheets_of(WEEK, numbered(1))
    said = f"One PDF holds {most:,} sheets of this set. Print them in parts: --sheets 1-{most}."
    with pytest.raises(TooMany, match=re.escape(said)):
        pdf_of(WEEK, [sheet] * (most + 1))


def test_the_file_to_type_into_has_a_row_for_each_sheet_and_a_column_for_each_question():
    sheets = sheets_of(WEEK, [*PEOPLE, Person("eve", "=1+1")])
    lines = answers_csv(sheets).decode("utf-8-sig").splitlines()
    assert "sheet,person,name,1,2,3,4,5,6,7" == lines[0]
    assert f"{sheets[0].code},ana.r,Ana Rivet,,,,,,," == lines[1]
    assert "eve,'=1+1,," in lines[4]
