"""Cases of find the fault in a set: worked on their card, kept line by line, marked from the lines, reported."""

import csv
import io

import pytest

from solver import SolverError
from solver.fault.remedies import ACTIONS, RIGHT
from solver.fault.review import sure_way
from solver.fault.way import way_of
from solver.sets.work_set import cases_for, faults_for, read_set
from solver.station.faults import FAULTS
from workbook.fault import attempt_of_way
from workbook.log import line_of
from workbook.trainer.coming_in.handed_in import read_handed
from workbook.trainer.course import Person, make_course
from workbook.trainer.learner.answer_sheet import SHEET, AnswerSheet, read_sheet
from workbook.trainer.learner.fault_card import OVER, FaultCard
from workbook.trainer.learner.own_case import OwnCase
from workbook.trainer.learner.own_set import OwnSet
from workbook.trainer.learner.standing import standing
from workbook.trainer.marking.feedback import comment_of, feedback_html
from workbook.trainer.marking.marked import mark, mark_handed, mark_typed
from workbook.trainer.marking.paper_case import LETTERS, answer_on_paper
from workbook.trainer.on_paper.keeping import keep_answers
from workbook.trainer.on_paper.marks import marks_of
from workbook.trainer.on_paper.printed import pdf_of, printed
from workbook.trainer.on_paper.sheets import answers_csv, sheets_of
from workbook.trainer.on_paper.typed import TypedFile
from workbook.trainer.report.facts import facts
from workbook.trainer.report.files import FILES
from workbook.trainer.report.sections import report, report_text
from workbook.trainer.sets.notebook import notebook_of
from workbook.trainer.sets.set_file import parse_set_file

LEAST = 'draw = 48213\nchapters = ["head"]\ncount = 2\ntries = 2\n'
CASES = "[credit]\neach_try = 0.1\n[faults]\ncount = 2\nlevel = 1\npoints = 10\nunsafe = 0.2\n"
WEEK = parse_set_file(LEAST + CASES, "week-3")
ANA = "ana.r"
FIRST, SECOND = faults_for(WEEK.work, ANA)
CODE = str(FIRST.code)
SURE = sure_way(CODE).words
NAME, CALL = SURE[-2:]
WRONG = next(f"name:{name}" for name in FIRST.suspects if name != FIRST.fault)
OTHER = next(f"do:{one}" for one in ACTIONS if one not in RIGHT[FIRST.fault][0])


BEST = answer_on_paper(FIRST)  # number and letter
NOT_SO = next(letter for letter, act in LETTERS.items() if act == OTHER.removeprefix("do:"))


def lines(*words: str, who: str = ANA, code: str = CODE) -> bytes:
    """A sheet with a line for each of these words, as the card keeps them."""
    ways = [way_of(code, words[:many]) for many in range(1, len(words) + 1)]
    kept = [attempt_of_way(way, WEEK.work.code, who) for way in ways]
    return "".join(f"{line_of(each)}\n" for each in kept).encode()


def first_of(sheet: bytes, assigned=WEEK):
    """The mark of the first case."""
    return mark(assigned, ANA, sheet).questions[2]


def test_cases_come_after_the_problems_and_leave_them_as_they_were():
    plain = parse_set_file("catalogue = 2\n" + LEAST, "week-3")
    assert "SET-32-0U-2-E-2-48213-F112-FVV" == WEEK.work.code
    assert WEEK.work == read_set("set 32 ou 2 e 2 48213 f1l2 fvv")
    assert cases_for(plain.work, ANA) == cases_for(WEEK.work, ANA)
    assert (2, 4) == (WEEK.work.count, WEEK.work.asked)
    assert FIRST.fault != SECOND.fault
    assert faults_for(WEEK.work, "ben") != (FIRST, SECOND)


def test_these_are_the_cases_of_a_code_in_every_version():
    assert ["FF-1U1-42645-APC", "FF-1U1-35622-KTC"] == [str(case.code) for case in (FIRST, SECOND)]


@pytest.mark.parametrize(
    ("words", "points", "status"),
    [
        (SURE, 10, "right"),
        ((*SURE[:-1], OTHER), 8, "close"),
        (SURE[:-1], 8, "close"),
        ((WRONG, *SURE), 9, "right"),
        ((WRONG, WRONG, *SURE), 9, "right"),
        (("insulation", *SURE), 8, "right"),
        (("insulation", "ohms", WRONG, *SURE), 5, "right"),
        (("gauges", "review"), 0, "wrong"),
        (("gauges",), 0, "wrong"),
        ((), 0, "blank"),
    ],
)
def test_the_fault_the_call_and_unsafe_steps_earn_the_points(words, points, status):
    found = first_of(lines(*words))
    assert (points, 10, status) == (found.points, found.out_of, found.status)
    assert not found.needs_person
    assert found.reason in ("", "No fault was named.")


def test_a_name_after_the_tries_that_count_earns_nothing():
    others = [f"name:{name}" for name in FIRST.suspects if name != FIRST.fault]
    found = first_of(lines(*others[:2], *SURE))
    assert (0, "wrong") == (found.points, found.status)
    assert "after the 2 tries" in found.reason


def test_what_a_line_says_of_itself_is_never_believed():
    way = way_of(CODE, (WRONG,))
    forged = attempt_of_way(way, WEEK.work.code, ANA)._replace(status="right", tries=1)
    found = first_of(f"{line_of(forged)}\n".encode())
    assert (0, True) == (found.points, found.needs_person)
    assert "The sheet calls this case found after step 1; it is not found yet." in found.reason


def test_a_step_that_cannot_be_done_there_is_left_out_and_looked_at():
    honest = attempt_of_way(way_of(CODE, ("gauges",)), WEEK.work.code, ANA)
    forged = honest._replace(id="another", typed="gauges the_answer " + NAME)
    found = first_of("".join(f"{line_of(one)}\n" for one in (honest, forged)).encode())
    assert ("gauges",) == found.way.words
    assert found.needs_person


def test_two_ways_of_one_case_count_the_first_and_are_looked_at():
    found = first_of(lines("gauges", WRONG) + lines("listen", *SURE))
    assert ("gauges", WRONG) == found.way.words
    assert "don't follow each other" in found.reason
    assert found.needs_person


def test_the_same_line_twice_changes_nothing():
    assert 10 == first_of(lines(*SURE) * 2).points


def test_another_persons_case_is_not_ones_own():
    theirs = faults_for(WEEK.work, "ben")[0]
    words = sure_way(str(theirs.code)).words
    marked = mark(WEEK, ANA, lines(*words, code=str(theirs.code)))
    assert 0 == marked.points
    assert "this person didn't get that problem" in marked.reason


def on_paper(text):
    """The mark of the first case, of what was written on paper."""
    return mark_typed(WEEK, ANA, {3: text}).questions[2]


@pytest.mark.parametrize(
    ("text", "points", "status", "look"),
    [
        (BEST, 10.0, "right", False),
        (f" {BEST[:-1]} - {BEST[-1].lower()}.", 10.0, "right", False),
        (BEST[:-1], 8.0, "close", False),
        (f"{BEST[:-1]}{NOT_SO}", 8.0, "close", False),
        (f"{FIRST.suspects.index(WRONG[5:]) + 1}B", 0.0, "wrong", False),
        ("99A", 0.0, "unreadable", True),
        ("1E5", 0.0, "unreadable", True),
        ("worn", 0.0, "unreadable", True),
        ("", 0.0, "blank", False),
    ],
)
def test_a_case_on_paper_is_a_number_and_a_letter(text, points, status, look):
    found = on_paper(text)
    assert (points, status, look) == (found.points, found.status, found.needs_person)
    assert (10.0, None) == (found.out_of, found.way)
    assert not look or "such as 2B" in found.reason


def test_the_feedback_of_a_case_on_paper_says_what_was_meant_and_which_readings_tell():
    page = feedback_html(on_paper(BEST))
    assert f"You typed “{BEST}”, which was read as {FAULTS[FIRST.fault].label}" in page
    assert "With these readings alone you can be sure: " in page


def test_sheets_have_each_persons_cases_and_their_answers_reach_the_gradebook(tmp_path):
    course = make_course(tmp_path / "pumps")
    sheets = sheets_of(WEEK, [Person(ANA), Person("ben")])
    held = printed(WEEK, sheets, [ANA])
    assert [FIRST.report, SECOND.report] == [each["report"] for each in held["questions"][0][2:]]
    assert BEST == held["key"]["rows"][0][2][2][0]
    assert BEST in held["solved"][0]["questions"][2]["answer"]
    assert pdf_of(WEEK, sheets[:1], [ANA]).startswith(b"%PDF")
    row = [str(sheets[0].code), ANA, "", "", "", BEST, ""]
    heads, *_ = answers_csv(sheets).decode("utf-8-sig").splitlines()
    assert "sheet,person,name,1,2,3,4" == heads
    file = io.BytesIO(f"{heads}\n{','.join(row)}\n".encode())
    marks = list(marks_of(WEEK, TypedFile(file, WEEK.work.asked)))
    said = list(keep_answers(course, WEEK, marks))
    assert "1 sheet is new in the course; 0 were there already." == said[0]
    handed = read_handed(course.folder("submitted", "week-3", ANA), "week-3", ANA)
    assert 10.0 == mark_handed(WEEK, handed).points


def test_the_feedback_is_the_review():
    found = first_of(lines("gauges", "insulation", *SURE))
    page = feedback_html(found)
    assert "Your readings, one by one" in page
    assert "29 CFR 1910.147" in page
    assert "You used" in comment_of(found)
    assert "Question 3: right, 8 of 10 points." in comment_of(found)


def test_the_notebook_has_a_card_and_a_grade_cell_for_each():
    cells = {cell["id"]: cell for cell in notebook_of(WEEK)["cells"]}
    assert "page.set_fault(3)" in cells["card-03"]["source"]
    assert "answer-03" not in cells
    assert 10 == cells["question-04"]["metadata"]["nbgrader"]["points"]
    assert 1 == cells["question-02"]["metadata"]["nbgrader"]["points"]
    assert "2 cases of find the fault, worth 10 points each" in cells["title"]["source"]
    assert '"wet_well"' in cells["cautions"]["source"]


# The learner's card.


@pytest.fixture
def own(tmp_path):
    from workbook.trainer.sets.notebook import write_source

    folder = write_source(WEEK, tmp_path).parent.rename(tmp_path / "week-3")
    found = OwnSet(folder)
    found.begin_as(ANA)
    return found


def test_each_thing_done_is_on_the_sheet_at_once(own):
    card = FaultCard(own, 3)
    card.stand._do("gauges")
    card.stand._do("insulation")
    again = FaultCard(OwnSet(own.folder), 3)
    assert ("gauges", "insulation") == again.stand.story.way.words
    assert card.stand.clipboard.value == again.stand.clipboard.value
    sheet = read_sheet((own.folder / SHEET).read_bytes())
    assert [CODE, CODE] == [line.code for line in sheet.lines]
    assert 4 == len(own.unanswered())


def test_a_case_that_is_done_is_answered_and_earns_its_points(own):
    card = FaultCard(own, 3)
    for word in SURE[:-2]:
        card.stand._do(word)
    card.stand.fault.value = FIRST.fault
    card.stand._name()
    card.stand.action.value = CALL.removeprefix("do:")
    card.stand._act()
    assert OVER.split(",")[0] in card.said.value
    assert [1, 2, 4] == own.unanswered()
    assert "You have answered 1 of 4 questions." in standing(own)
    assert 10 == mark(WEEK, ANA, (own.folder / SHEET).read_bytes()).points
    assert "It was:" not in card.said.value + card.stand.told.value


def test_the_tries_of_the_set_hold_for_names(tmp_path):
    case = OwnCase(AnswerSheet(tmp_path / SHEET, WEEK, ANA), 3, FIRST)
    others = [f"name:{name}" for name in FIRST.suspects if name != FIRST.fault]
    case.do(others[0])
    case.do(others[1])
    with pytest.raises(SolverError, match="You have used 2 tries"):
        case.do(NAME)
    case.do("review")
    assert case.way.ended


def test_before_the_name_is_known_and_at_a_wrong_number_the_card_says_what_to_do(own, tmp_path):
    assert "isn&#39;t a case of find the fault" in FaultCard(own, 2).why.value
    (own.folder / "person.txt").unlink()
    assert "First type who you are" in FaultCard(OwnSet(own.folder), 3).why.value


# The class.


def a_class():
    marks = [
        mark(WEEK, ANA, lines("gauges", *SURE)),
        mark(WEEK, "ben", b""),
        mark(WEEK, "cleo", _of("cleo", ("insulation", "gauges", "review"))),
    ]
    return facts(marks)


def _of(person: str, words) -> bytes:
    code = str(faults_for(WEEK.work, person)[0].code)
    return lines(*words, who=person, code=code)


def test_the_report_puts_the_ways_side_by_side_unsafe_ones_first():
    told = a_class()
    text = report_text(report(told, WEEK.title))
    part = text[text.index("Find the fault\n") :]
    rows = [line for line in part.splitlines() if line.startswith(("ana", "cleo"))][:2]
    assert rows[0].startswith("cleo")
    assert "Insulation" in rows[0].partition("✗")[2].capitalize() or "insulation" in rows[0]
    assert "Pressure gauges" in rows[1]
    assert "2 cases worked. In 1 the fault was found, in 1 at the first name." in part
    assert "Read first most often: pressure gauges (2)." in part
    assert "Stopped as unsafe most often: insulation, 1 and 10 min (1)." in part


def test_without_names_the_ways_have_none():
    told = a_class()
    text = report_text(report(told, WEEK.title, hidden=True))
    made = next(each.made for each in FILES if each.name == "cases")
    hidden = made(told, True).decode("utf-8-sig")
    for name in (ANA, "cleo", CODE):
        assert name not in text + hidden
    assert "Person" in text


def test_the_file_of_ways_has_all_of_each():
    made = next(each.made for each in FILES if each.name == "cases")
    rows = list(csv.DictReader(io.StringIO(made(a_class()).decode("utf-8-sig"))))
    ana = next(row for row in rows if row["person"] == ANA)
    assert (CODE, "yes", "yes", "0", "10.0") == tuple(
        ana[key] for key in ("case", "found", "right call", "unsafe steps", "points")
    )
    assert ana["in order"].startswith("pressure gauges")
    assert f"{way_of(CODE, ('gauges', *SURE)).minutes}" == ana["minutes"]


def test_a_set_without_cases_has_no_such_part():
    plain = parse_set_file(LEAST, "week-3")
    told = facts([mark(plain, ANA, b"")])
    assert "Find the fault" not in report_text(report(told, plain.title))


@pytest.mark.parametrize(
    ("more", "said"),
    [
        ("[faults]\ncount = 99", "faults.count is 99. Write a whole number up to 9"),
        ("[faults]\nlevel = 7", "faults.level is 7. Write level = 1"),
        ("[faults]\npoint = 7", "Did you mean “points”"),
        ("unsafe = 0.1", "Write it below [faults]."),
        ("catalogue = 1\n[faults]\ncount = 1", "A set of catalogue 1 has no cases"),
    ],
)
def test_a_file_whose_cases_cannot_be_says_what_to_write(more, said):
    with pytest.raises(SolverError, match=said.replace("[", r"\[").replace("]", r"\]")):
        parse_set_file(LEAST + more, "week-3")
