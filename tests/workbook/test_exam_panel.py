"""The practice exam on its panel, and on paper, without a browser."""

import re
from dataclasses import replace
from html import unescape
from io import BytesIO

import pytest
from pypdf import PdfReader

from solver import FAMILIES, BadCode, SolverError, grade
from solver.engine.grading import as_typed
from solver.render.text import one_line_text
from solver.sets.paper import CHAPTERS, Paper, read_paper
from solver.vocabulary import spoken
from tests.workbook.said import words
from workbook import page
from workbook.exam import printed
from workbook.exam.practice_exam import ExamPanel
from workbook.exam.question import questions_of
from workbook.exam.sitting import Sitting
from workbook.log import NotKept
from workbook.ui.chapter import formulas_of
from workbook.ui.entry import whole_number
from workbook.ui.printing import CannotPrint

PAPER = Paper(("horsepower", "balance"), 1, "us", 4, 10, True, 48214)
QUESTIONS = questions_of(PAPER)


class Clock:
    """A clock that moves by a second each time it is read."""

    now = 0.0

    def __call__(self):
        self.now += 1
        return self.now


@pytest.fixture
def logged():
    return []


@pytest.fixture
def panel(tmp_path, logged):
    return ExamPanel(tmp_path / "exams", logged.append, tmp_path, clock=Clock())


def shown(panel):
    return [view for view in panel.views if view.box.layout.display != "none"]


def open_code(panel, code=PAPER.code):
    panel.start.code.box.value = code
    panel.start.code.gate.click()


def send(panel, text):
    panel.sit.answer.value = text
    panel.sit.answer.press()


def number_of(question, *, is_right):
    found = (n for n, c in enumerate(question.choices, 1) if bool(c.mistake) != is_right)
    return str(next(found))


def sit_through(panel, right=3):
    open_code(panel)
    for question in QUESTIONS:
        send(panel, number_of(question, is_right=question.number <= right))
    panel.sit.hand_in.click()
    panel.sit.hand_in.click()


def test_the_page_call_opens_on_the_set_up_with_every_chapter_ticked(monkeypatch, tmp_path):
    monkeypatch.setenv("XDG_DATA_HOME", str(tmp_path))
    opened = page.exam()
    assert [opened.start] == shown(opened)
    assert set(CHAPTERS) == set(opened.start.chapters.chosen)


def test_an_exam_is_made_of_what_is_set_up(panel):
    start = panel.start
    for name, box in start.chapters.boxes.items():
        box.value = name == "balance"
    start.level.value, start.units.value, start.way.value = 2, "si", False
    start.count.fill("7")
    start.minutes.fill("25")
    start.begin.click()
    assert [panel.sit] == shown(panel)
    paper = panel.sit.desk.sitting.paper
    assert Paper(("balance",), 2, "si", 7, 25, False, paper.seed) == paper


@pytest.mark.parametrize(
    ("count", "minutes", "says"),
    [
        ("", "60", "The number of questions is empty. Type a whole number from 1 to 200."),
        ("many", "60", "You typed “many” for the questions. Type a whole number from 1 to 200."),
        ("201", "60", "You typed “201” for the questions. Type a whole number from 1 to 200."),
        ("20", "1½", "You typed “1½” for the minutes. Type a whole number from 1 to 600."),
        ("20", "0", "You typed “0” for the minutes. Type a whole number from 1 to 600."),
        ("20", "<b>", "You typed “&lt;b&gt;” for the minutes."),
    ],
)
def test_a_number_that_cannot_be_is_told_and_nothing_begins(panel, count, minutes, says):
    panel.start.count.fill(count)
    panel.start.minutes.fill(minutes)
    panel.start.begin.click()
    assert says in panel.start.said.value
    assert [panel.start] == shown(panel)
    assert not panel.where.exists()


@pytest.mark.parametrize("text", ["9" * 6000, "1" + " " * 50 + "x", "٣", "-1"])
def test_no_text_however_long_or_strange_is_taken_for_another_number(text):
    with pytest.raises(SolverError, match="Type a whole number from 1 to 200"):
        whole_number(text, "questions", 200)


def test_without_a_chapter_nothing_begins(panel):
    panel.start.chapters.none.click()
    panel.start.begin.click()
    assert "Choose at least one chapter." in panel.start.said.value


def test_a_wrong_code_is_told_where_it_was_typed(panel):
    typed = PAPER.code[:-1] + ("A" if PAPER.code[-1] != "A" else "B")
    open_code(panel, typed)
    with pytest.raises(BadCode, match="wrong character") as refusal:
        read_paper(typed)
    assert str(refusal.value) in words(panel.start.code_said.value)
    assert typed == panel.start.code.box.value


def test_each_question_is_shown_with_its_choices_and_without_what_kind_it_is(panel):
    open_code(panel)
    for question in QUESTIONS:
        html = panel.sit.question.value
        assert words(panel.sit.head.value) == f"Question {question.number} of 4"
        assert [choice.text for choice in question.choices] == panel.sit.answer.asked["choices"]
        assert question.case.family.title not in words(html)
        panel.sit.next.click()


@pytest.mark.parametrize("choices", [True, False])
def test_steps_are_put_in_order_in_an_exam_of_either_way_of_answering(panel, logged, choices):
    paper = Paper(("order",), 1, "us", 2, 10, choices, 48214)
    asked = questions_of(paper)
    open_code(panel, paper.code)
    for question in asked:
        assert panel.sit.answer.asked["ordered"]
        assert list(question.problem.choices) == panel.sit.answer.asked["choices"]
        send(panel, as_typed(question.problem, question.problem.answer))
        assert f"Question {question.number} is saved" in words(panel.sit.said.value)
    panel.sit.hand_in.click()
    panel.sit.hand_in.click()
    (kept,) = logged
    assert ["right", "right"] == [attempt.status for attempt in kept]


def test_nothing_tells_before_the_end_whether_an_answer_is_right(panel):
    open_code(panel)
    seen = []
    for question in QUESTIONS:
        send(panel, number_of(question, is_right=question.number % 2 == 0))
        seen.append(words(panel.sit.said.value))
    for text in seen:
        assert not re.search(r"\b(right|wrong|mistake|look at)\b", text, re.I), text


def test_an_answer_is_on_disk_when_it_is_said_to_be_kept(panel):
    open_code(panel)
    send(panel, "2")
    assert "Question 1 is saved: choice 2" in words(panel.sit.said.value)
    assert "2" == Sitting(panel.sit.desk.sitting.path).answers[1].typed
    assert "Question 2 of 4" == words(panel.sit.head.value)


def test_an_answer_that_could_not_be_kept_is_told_and_the_question_stays(panel, monkeypatch):
    open_code(panel)

    def full(path, lines):
        raise NotKept("The disk is full. Free up some space.")

    monkeypatch.setattr("workbook.exam.sitting.add_lines", full)
    send(panel, "2")
    assert "The disk is full. Free up some space." in words(panel.sit.said.value)
    assert "Question 1 of 4" == words(panel.sit.head.value)


def test_a_button_that_leads_away_takes_what_is_typed_with_it(panel):
    open_code(panel)
    for number, press in (
        (1, panel.sit.next),
        (2, panel.sit.previous),
        (1, panel.sit.overview.tiles.children[3]),
    ):
        panel.sit.answer.value = "3"
        press.click()
        assert "3" == panel.sit.desk.sitting.answers[number].typed
    assert 4 == panel.sit.desk.number


def test_the_overview_says_in_words_how_each_question_stands(panel):
    open_code(panel)
    send(panel, "1")
    panel.sit.flag.value = True
    panel.sit.answer.value = "banana"
    panel.sit.next.click()
    labels = [each.description for each in panel.sit.overview.tiles.children]
    assert ["1\n✓ answered", "2\n? come back", "3, here\n– empty", "4\n– empty"] == labels
    assert "1 of 4 answered, 1 to come back to." in panel.sit.overview.counts.value


def test_one_press_hands_nothing_in_and_says_what_is_not_done(panel, logged):
    open_code(panel)
    send(panel, "1")
    panel.sit.hand_in.click()
    assert "3 questions have no answer: 2, 3 and 4." in words(panel.sit.said.value)
    assert [panel.sit] == shown(panel)
    panel.sit.not_yet.click()
    assert "Turn it in" == panel.sit.hand_in.description
    panel.sit.hand_in.click()
    assert [] == logged


def test_the_result_is_told_and_logged_and_again_when_it_is_opened_later(panel, logged, tmp_path):
    sit_through(panel, right=3)
    assert [panel.result] == shown(panel)
    assert "3 of 4 right in time (75%)." in words(panel.result.top.value)
    assert PAPER.code in panel.result.code.value
    assert [4] == [len(attempts) for attempts in logged]
    later = ExamPanel(tmp_path / "exams", logged.append, tmp_path, clock=Clock())
    ended = later.start.earlier.ended
    ended.value = ended.options[1][1]
    assert panel.result.missed.value == later.result.missed.value
    assert panel.result.rest.value == later.result.rest.value
    assert logged[0] == logged[1]


def test_the_result_has_every_question_with_its_answer_and_solution(panel):
    sit_through(panel, right=3)
    missed, rest = panel.result.missed.value, panel.result.rest.value
    marked = [*rest.split("<details")[1:], missed]
    assert 4 == len(marked)
    for question, part in zip(QUESTIONS, marked, strict=True):
        at = int(number_of(question, is_right=True))
        answer = f"The answer is choice {at}, {question.choices[at - 1].text}."
        assert answer in words(part)
        assert question.case.question in words(part)
        assert question.case.steps[-1].why in words(part)
    assert ["right."] * 3 + ["not right."] == [
        re.search(r"Question \d: ([^<]*)<", part)[1] for part in marked
    ]


def test_a_missed_question_says_what_was_done_with_its_numbers(panel):
    typed = replace(PAPER, choices=False)
    open_code(panel, typed.code)
    asked = questions_of(typed)
    slip = next(q for q in asked if q.case.mistakes and not q.case.choices)
    mistake = slip.case.mistakes[0]
    for question in asked:
        send(panel, f"{mistake.value:.6g}" if question is slip else "")
        if question is not slip:
            panel.sit.next.click()
    panel.sit.hand_in.click()
    panel.sit.hand_in.click()
    missed = words(panel.result.missed.value)
    assert "What you missed: 4" in missed
    assert f"Question {slip.number}: not right. {slip.case.family.title} You answered" in missed
    assert grade(slip.case, f"{mistake.value:.6g}").says in missed
    assert 3 == missed.count("You didn't answer this one.")


def test_practice_these_opens_each_missed_kind_in_turn_with_the_mistake_that_was_made(
    panel, monkeypatch
):
    told = []
    monkeypatch.setattr("workbook.exam.done.keep", lambda tried: told.append(tried) or "")
    sit_through(panel, right=1)
    panel.result.practice.click()
    (card,) = panel.result.practicing.children
    missed = panel.result.outcome.to_practice
    seen = []
    for _ in range(2 * len(missed)):
        seen.append(card.practice.case.family.name)
        assert re.match(r"Question [234] on your exam was this kind\.", card.practice.why)
        card.practice.new()
    assert [one.family.name for one in missed] * 2 == seen
    card.practice.answer("1")
    assert 1 == len(told)
    card.practice.choose(level=1)
    assert "" == card.practice.why


def test_a_perfect_exam_has_nothing_to_practice(panel):
    sit_through(panel, right=4)
    assert "You got every question right." in words(panel.result.missed.value)
    assert "none" == panel.result.practice.layout.display


def test_the_result_is_held_against_the_pass_mark_where_there_is_one(panel, tmp_path, logged):
    sit_through(panel, right=3)
    assert "pass mark" not in words(panel.result.top.value)
    for mark, said in ((75, "at or above your pass mark of 75%"), (80, "below your pass mark of")):
        held = ExamPanel(tmp_path / str(mark), logged.append, tmp_path, "us", mark, Clock())
        sit_through(held, right=3)
        assert said in words(held.result.top.value)


def test_a_log_that_takes_nothing_is_told_and_the_result_is_there(panel, tmp_path):
    def full(attempts):
        raise NotKept("The disk is full.")

    later = ExamPanel(tmp_path / "exams", full, tmp_path, clock=Clock())
    sit_through(later)
    assert "The disk is full." in words(later.result.top.value)
    assert "3 of 4 right" in words(later.result.top.value)


def test_the_same_exam_again_has_its_code_and_a_fresh_one_all_but_its_questions(panel):
    sit_through(panel)
    panel.result.again.click()
    assert PAPER == panel.sit.desk.sitting.paper
    assert {} == panel.sit.desk.sitting.answers
    panel.sit.pause.click()
    sit_through(panel)
    panel.result.fresh.click()
    other = panel.sit.desk.sitting.paper
    assert PAPER == replace(other, seed=PAPER.seed)
    assert PAPER != other


def test_a_pause_leads_to_the_set_up_where_it_can_be_gone_on_with(panel):
    open_code(panel)
    send(panel, "1")
    panel.sit.pause.click()
    assert [panel.start] == shown(panel)
    assert not panel.sit.clock.pulse.playing
    text = words(panel.start.earlier.open.children[0].children[0].value)
    assert re.fullmatch(r"Started earlier: 4 questions, 1 answered, 9 min \d+ s left\.", text)
    panel.start.earlier.buttons[0].click()
    assert ([panel.sit], 2) == (shown(panel), panel.sit.desk.number)


def test_the_clock_can_be_hidden_and_still_says_calmly_when_the_time_is_nearly_over(panel):
    open_code(panel)
    clock = panel.sit.clock
    assert re.search(r"\d+ min \d+ s left", clock.time.value)
    clock.hide.click()
    assert "The clock is hidden." in clock.time.value
    said = []
    for _ in range(8):
        panel.clock.now += 100
        clock.pulse.value += 1
        said.append(words(clock.calm.value))
    assert "The clock is hidden." in clock.time.value
    assert "" == said[0]
    assert any("Less than 5 minutes are left." in text for text in said)
    assert "Time is up. You can go on" in said[-1]
    send(panel, "1")
    assert "Question 1 is saved" in words(panel.sit.said.value)


def test_no_screen_reader_is_told_each_second(panel):
    open_code(panel)
    assert not re.search("role|aria-live", panel.sit.clock.time.value)
    before = panel.sit.clock.calm.value
    panel.sit.clock.pulse.value += 1
    assert before == panel.sit.clock.calm.value


def test_the_formulas_shown_are_those_of_the_chapters_in_the_units_of_the_paper(panel):
    open_code(panel, replace(PAPER, units="si").code)
    assert "" == panel.sit.sheet.value
    panel.sit.formulas.click()
    text = panel.sit.sheet.value
    wanted = {f.why for name in PAPER.chapters for f in formulas_of(name) if "si" in f.systems}
    assert all(spoken(why, "si") in unescape(text) for why in wanted)
    assert "kW" in words(text)
    panel.sit.formulas.click()
    assert "" == panel.sit.sheet.value


def test_exams_of_another_edition_are_counted_and_left_alone(panel, tmp_path):
    sit_through(panel)
    strange = tmp_path / "exams" / "EXAM-old.jsonl"
    strange.write_text('{"v": 1, "event": "begin", "at": 0, "code": "EXAM-1-0U-1-1-C-9-1-00"}\n')
    panel.result.back.click()
    assert "1 exam can't be opened here" in words(panel.start.earlier.aside.value)
    assert strange.exists()


# On paper


@pytest.fixture(scope="module")
def pdf():
    return PdfReader(BytesIO(printed.pdf_of(PAPER)))


def flat(text):
    return re.sub(r"\s+", "", text)


def test_the_paper_has_each_question_then_the_key_with_its_answer_and_steps(pdf):
    texts = [each.extract_text() for each in pdf.pages]
    key = next(n for n, text in enumerate(texts) if text.strip().startswith("Key"))
    before, after = flat("".join(texts[:key])), flat("".join(texts[key:]))
    for question in QUESTIONS:
        assert flat(question.case.question) in before
        at = int(number_of(question, is_right=True))
        answer = f"Question {question.number}: choice {at}, {question.choices[at - 1].text}"
        assert flat(answer) in after
        assert flat(question.case.steps[-1].why) in after
        assert flat(question.case.steps[-1].why) not in before
        assert flat(one_line_text(question.case)) in after
    assert any(one_line_text(question.case) for question in QUESTIONS)


def test_the_code_stands_on_each_page(pdf):
    assert len(pdf.pages) > 1
    assert all(PAPER.code in each.extract_text() for each in pdf.pages)


@pytest.mark.parametrize(
    ("units", "inches"), [("us", (8.5, 11)), ("si", (8.27, 11.69))], ids=["letter", "A4"]
)
def test_pages_have_the_size_of_the_units(units, inches):
    # US letter is 8.5 by 11 in (ANSI/ASME Y14.1), A4 is 210 by 297 mm (ISO 216); from memory.
    box = PdfReader(BytesIO(printed.pdf_of(replace(PAPER, units=units)))).pages[0].mediabox
    assert inches == pytest.approx((float(box.width) / 72, float(box.height) / 72), abs=0.01)


def test_the_same_code_gives_the_same_file_without_a_date():
    first = printed.pdf_of(PAPER)
    assert first == printed.pdf_of(read_paper(PAPER.code))
    assert "/CreationDate" not in (PdfReader(BytesIO(first)).metadata or {})


def test_every_font_is_in_the_file(pdf):
    fonts = [
        font.get_object()
        for each in pdf.pages
        for font in each["/Resources"]["/Font"].get_object().values()
    ]
    assert fonts
    for font in fonts:
        inner = font["/DescendantFonts"][0].get_object() if "/DescendantFonts" in font else font
        assert any(name.startswith("/FontFile") for name in inner["/FontDescriptor"].get_object())


def test_a_text_is_never_code_for_the_printer(monkeypatch):
    data = printed.printed(PAPER)
    data["questions"][0]["text"] = (
        '#panic("run") $x$ *bold* = heading <label> \\ #read("/etc/hosts")'
    )
    made = printed.compiled(printed.TEMPLATE, data)
    text = flat(PdfReader(BytesIO(made)).pages[0].extract_text())
    assert flat('#panic("run") $x$ *bold* = heading <label>') in text


def test_every_family_can_be_printed():
    for chapters in (CHAPTERS[:9], CHAPTERS[9:]):
        count = sum(family.chapter in chapters for family in FAMILIES)
        made = PdfReader(BytesIO(printed.pdf_of(Paper(chapters, 0, "us", count, 60, True, 5))))
        assert len(made.pages) > count / 6


def test_a_printed_exam_is_in_the_reader_s_folder_and_there_to_save(panel, tmp_path):
    sit_through(panel)
    panel.result.print.click()
    assert (tmp_path / f"{PAPER.code}.pdf").read_bytes().startswith(b"%PDF")
    assert f'download="{PAPER.code}.pdf"' in panel.result.printed.value
    assert 'download="formula-sheet-us.pdf"' in panel.result.printed.value
    assert str(tmp_path) in words(panel.result.printed.value)


def test_a_folder_that_cannot_be_written_still_gives_the_link(tmp_path):
    told = printed.save_pdf(PAPER, tmp_path / "nowhere")
    assert "couldn't be saved in" in words(told)
    assert f'download="{PAPER.code}.pdf"' in told


def test_without_the_printer_a_sentence_says_what_to_type(panel, monkeypatch):
    def missing(template, data):
        raise CannotPrint("A PDF needs the package typst, which isn't installed.")

    monkeypatch.setattr(printed, "compiled", missing)
    panel.start.print.click()
    assert "A PDF needs the package typst" in words(panel.start.printed.value)


def test_shares_typed_make_the_exam_and_are_there_again(panel, tmp_path):
    start = panel.start
    start.mixture.text.box.value = "horsepower 3, balance 1"
    start.mixture.see.click()
    shown = words(start.mixture.said.value)
    assert "75%" in shown
    assert "15" in shown
    paper = start.paper()
    assert (("horsepower", "balance"), (3, 1)) == (paper.chapters, paper.shares)
    again = ExamPanel(panel.where, lambda made: None, tmp_path).start
    assert ("horsepower 3, balance 1", True) == (again.mixture.text.box.value, again.mixed.open)


def test_every_chapter_is_filled_in_beside_what_was_written(panel):
    mixture = panel.start.mixture
    mixture.text.box.value = "head 35"
    mixture.fill.click()
    assert "head 35" in mixture.text.box.value
    assert set(CHAPTERS) == set(mixture.shares())


def test_shares_that_cannot_be_read_are_told_and_stay(panel):
    start = panel.start
    start.mixture.text.box.value = "haed 3"
    start.begin.click()
    assert "There is no chapter “haed”." in words(start.said.value)
    assert "haed 3" == start.mixture.text.box.value


def test_mixtures_are_kept_by_name_chosen_sent_and_dropped(panel, tmp_path):
    mixture = panel.start.mixture
    mixture.text.box.value = "Grade 1: head 1\nGrade 2: head 30, wet well 20"
    mixture.store.click()
    assert "Kept: “Grade 1”, “Grade 2”." in words(mixture.said.value)
    again = ExamPanel(panel.where, lambda made: None, tmp_path).start.mixture
    assert ["", "Grade 1", "Grade 2", "*"] == [value for _, value in again.choose.options]
    again.choose.value = "Grade 2"
    assert "Grade 2: head 30, wet well 20" == again.text.box.value
    assert {"head": 30, "wet_well": 20} == again.shares()
    again.choose.value = "*"
    assert "Grade 1: head 1\nGrade 2: head 30, wet well 20" == again.text.box.value
    again.see.click()
    assert "These are 2 mixtures: Grade 1, Grade 2." in words(again.said.value)
    again.choose.value = "Grade 1"
    again.drop.click()
    assert ["Grade 2"] == list(again.kept.read())
    assert "Grade 1: head 1" == again.text.box.value
    again.text.box.value = "grade 2: head 5"
    again.store.click()
    assert "It takes the place of the earlier “Grade 2”." in words(again.said.value)
    assert {"grade 2": {"head": 5}} == again.kept.read()


def test_a_mixture_without_a_name_is_not_kept_and_a_strange_line_stays(panel, tmp_path):
    mixture = panel.start.mixture
    mixture.text.box.value = "head 30"
    mixture.store.click()
    assert "It has no name yet." in words(mixture.said.value)
    mixture.kept.path.write_text("what is this\nA: head 1\n", encoding="utf-8")
    again = ExamPanel(panel.where, lambda made: None, tmp_path).start.mixture
    assert "a line that can't be read: “what is this”" in words(again.said.value)
    again.text.box.value = "B: head 2"
    again.store.click()
    assert "A: head 1\nB: head 2\nwhat is this\n" == mixture.kept.path.read_text(encoding="utf-8")


def test_the_name_of_a_kept_mixture_is_enough_to_start_an_exam(panel):
    mixture = panel.start.mixture
    mixture.kept.keep({"Grade 2": {"balance": 3, "head": 1}})
    mixture.text.box.value = "grade 2"
    paper = panel.start.paper()
    assert (("balance", "head"), (3, 1)) == (paper.chapters, paper.shares)
    mixture.text.box.value = "Grade 2: balance 3"
    mixture.fill.click()
    assert mixture.text.box.value.startswith("Grade 2: ")
