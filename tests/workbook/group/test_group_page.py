"""Group study without a browser: a set made and opened, answers kept, results put together."""

import csv
import io
import json
import re
from base64 import b64decode
from datetime import UTC, datetime
from html import unescape
from itertools import permutations
from urllib.parse import quote

import pytest

from solver import case_from_code
from solver.paper import CHAPTERS
from tests.workbook.group.members import (
    CASES,
    FAR,
    GROUP,
    MULTIPLIED,
    RIGHT,
    SLIPPED,
    WEDNESDAY,
    answer_text,
    member,
    results,
    saved,
    work,
)
from workbook.group.facts import facts
from workbook.group.make_panel import MakePanel
from workbook.group.own_group import OwnGroup
from workbook.group.posed import questions_of
from workbook.group.result import MOST_LINES, read_result
from workbook.group.results_panel import MOST_FILES, ResultsPanel
from workbook.group.set_text import ProblemSet, read_set, set_of
from workbook.group.words import names_for
from workbook.group.work_panel import WorkPanel
from workbook.log import Log, line_of, made
from workbook.online import address

EVE = "=Eve<script>alert(1)</script>"


def words(html):
    return " ".join(unescape(re.sub(r"<[^>]*>", " ", html)).split())


def slow(panel):
    """The panel with a clock by which no click is half of a double one."""
    panel.clock = iter(range(0, 100_000, 5)).__next__
    return panel


@pytest.fixture
def own(tmp_path):
    return OwnGroup(Log(tmp_path / "mine" / "attempts.jsonl"))


@pytest.fixture
def page(own):
    """The panel to work at a set, with the set of Wednesday open."""
    panel = slow(WorkPanel(own))
    paste(panel, WEDNESDAY.text)
    return panel


def paste(panel, text):
    panel.pasted.box.value = text
    panel.open.click()


def answer(panel, number, text):
    card = list(panel.cards.values())[number - 1]
    card.answer.box.value = text
    card.check.click()
    return words(card.said.value)


def typed(own):
    return [(each.code, each.typed, each.of, each.who) for each in own.kept.attempts]


# A set is opened


def test_a_set_opens_as_cards_in_its_order(page):
    heads = [words(card.problem.value) for card in page.cards.values()]
    titles = [f"Question {n}. {case.family.title}" for n, case in enumerate(CASES, 1)]
    assert all(head.startswith(title) for head, title in zip(heads, titles, strict=True))
    assert "“Wednesday pumps” is open below, with 3 questions." in page.said.value
    assert WEDNESDAY.mark in page.head.value


def test_a_message_around_the_text_does_no_harm(own):
    panel = slow(WorkPanel(own))
    paste(panel, f"Hi all – until Wednesday:\n\n> {WEDNESDAY.text.replace('-', '–')}\n\nBen")
    assert WEDNESDAY == own.problems


def test_a_broken_text_leaves_the_open_set_with_all_answers(page, own):
    answer(page, 1, "12.5")
    paste(page, WEDNESDAY.text[:-3])
    assert "The set breaks off." in page.said.value
    assert "The set that was open still is." in page.said.value
    assert WEDNESDAY == own.problems
    assert 1 == len(typed(own))


def test_a_title_is_shown_as_it_was_typed_and_runs_nothing(own):
    panel = slow(WorkPanel(own))
    paste(panel, set_of("<img src=x onerror=alert(1)>", WEDNESDAY.codes).text)
    for html in (panel.head.value, panel.said.value):
        assert "<img" not in html
        assert "<img src=x onerror=alert(1)>" in words(html.replace("&lt;", "«")).replace("«", "<")


def test_problems_of_another_edition_are_told_and_the_others_open(own):
    older = case_from_code(WEDNESDAY.codes[0]).code.replace("2U1", "2U2")
    from solver.code import Code

    codes = [str(Code("BP", 2, "us", 2, 7)), WEDNESDAY.codes[1], str(Code("ZZ", 1, "us", 1, 7))]
    assert older[:6] == codes[0][:6]
    panel = slow(WorkPanel(own))
    paste(panel, set_of("Mixed editions", codes).text)
    assert [WEDNESDAY.codes[1]] == list(panel.cards)
    told = words(panel.faults.value)
    assert "Question 1: This code is from edition 2 of “Brake power at the pump shaft”" in told
    assert "Question 3: This workbook has no problem ZZ at level 1." in told
    assert "The others are below." in told
    assert "Question 2." in panel.cards[WEDNESDAY.codes[1]].problem.value


def test_what_was_typed_and_not_checked_is_told_when_another_set_takes_its_place(page):
    card = page.cards[WEDNESDAY.codes[0]]
    card.answer.box.value = "12 or <i>13"
    paste(page, set_of("Other", WEDNESDAY.codes[1:]).text)
    assert f"You had typed, and not checked: “12 or &lt;i&gt;13” for {CASES[0].code}." in (
        page.said.value.replace("<p>", "")
    )


def test_the_set_in_the_address_opens_by_itself_once(own, monkeypatch):
    monkeypatch.setattr(address, "_told", {})
    query = f"path=17-group-study.ipynb&set={quote(WEDNESDAY.text)}"
    address.tell(quote("https://example.org/", safe=""), quote(query, safe=""))
    panel = slow(WorkPanel(own))
    assert 3 == len(panel.cards)
    paste(panel, set_of("Other", WEDNESDAY.codes[1:]).text)
    assert 2 == len(WorkPanel(own).cards)


@pytest.mark.parametrize(
    "text", ["<script>alert(1)</script>", "W2W[" * 30, "W2W[a] %00 [1-56C829]"]
)
def test_a_hostile_address_gives_a_sentence_and_opens_nothing(own, monkeypatch, text):
    monkeypatch.setattr(address, "_told", {})
    address.tell("", quote(f"set={quote(text)}", safe=""))
    panel = WorkPanel(own)
    assert "The link holds no set to open." in panel.said.value
    assert "<script" not in panel.said.value
    assert own.problems is None
    assert "none" == panel.working.layout.display


# Answers are kept, under a name or none


def test_an_answer_goes_into_the_log_as_of_the_set_and_by_the_name(page, own):
    page.name.box.value = "  Ana\n"
    told = answer(page, 1, f"{CASES[0].answer:.5g}")
    assert "This was your first try." in told
    assert [(CASES[0].code, f"{CASES[0].answer:.5g}", WEDNESDAY.key, "Ana")] == typed(own)
    assert "You have answered 1 of 3 questions. Not answered yet: 2 and 3." in page.stands.value


def test_what_was_answered_shows_again_in_a_new_page(page, own, tmp_path):
    page.name.box.value = "Ana"
    answer(page, 1, "987654321")
    answer(page, 2, answer_text(CASES[1], RIGHT))
    fresh = OwnGroup(Log(own.kept.path))
    again = slow(WorkPanel(fresh))
    paste(again, WEDNESDAY.text)
    assert "Ana" == again.name.box.value
    first, second, third = again.cards.values()
    assert "987654321" == first.answer.box.value
    assert "This answer is kept. It was your first try." in first.said.value
    assert "w2w-right" in second.said.value
    assert "" == third.answer.box.value
    assert "You gave this answer before" in answer(again, 1, "987654321")
    assert "This was your second try." in answer(again, 1, "12345678")
    assert "You have the right answer already" in answer(again, 2, "1")


def test_a_worked_solution_that_was_opened_still_counts_after_a_restart(page, own):
    next(iter(page.cards.values())).worked.click()
    again = slow(WorkPanel(OwnGroup(Log(own.kept.path))))
    paste(again, WEDNESDAY.text)
    assert "The worked solution has been shown" in answer(again, 1, "12")
    assert ["shown"] == [each.status for each in again.own.kept.attempts] or again.own.kept.read()


def test_two_people_on_one_computer_each_have_their_own_answers(page, own):
    page.name.box.value = "Ana"
    answer(page, 1, "987654321")
    page.name.box.value = "Ben"
    first = next(iter(page.cards.values()))
    assert ("", True) == (first.answer.box.value, 'aria-live="polite"></div>' in first.said.value)
    assert "Answers are kept under “Ben” from now on." in page.named.value
    assert "Answers under “Ana” are kept too." in page.named.value
    answer(page, 1, "12345678")
    page.name.box.value = "Ana"
    assert "987654321" == first.answer.box.value


def test_what_was_answered_before_a_name_was_typed_goes_with_it(page, own):
    answer(page, 1, "987654321")
    page.name.box.value = "Ana"
    first = next(iter(page.cards.values()))
    assert ("987654321", True) == (first.answer.box.value, "w2w-wrong" in first.said.value)
    _, data = saved(own)
    assert {"Ana"} == {json.loads(line)["who"] for line in data.splitlines()}


def test_hints_stay_in_sight_when_a_name_is_typed(page):
    first = next(iter(page.cards.values()))
    first.more.click()
    page.name.box.value = "Ana"
    assert "Hint 1 of" in first.hints.value


def test_time_is_told_from_the_answer_before_as_all_questions_show_at_once(own):
    now = iter([0.0, 100.0, 160.0])
    own.clock = lambda: next(now)
    own._since = 0.0
    own.problems, own.questions = WEDNESDAY, questions_of(WEDNESDAY)
    from workbook.group.posed import Posed

    for case, seconds in zip(CASES, (0, 100, 160), strict=True):
        clock = iter([0.0, float(seconds)])
        Posed(case, own.keep, lambda clock=clock: next(clock)).answer("987654321")
    assert [0.0, 100.0, 60.0] == [each.seconds for each in own.kept.attempts]


def test_a_full_disk_is_told_on_the_card(page, own):
    own.kept.path.parent.mkdir(parents=True, exist_ok=True)
    own.kept.path.symlink_to("/dev/full")
    assert "The disk is full." in answer(page, 1, "987654321")


# A result is saved


def held(html):
    """The name and the bytes of the file that a link holds."""
    name, data = re.search(r'download="([^"]*)" href="data:[^,]*,([^"]*)"', html).groups()
    return name, b64decode(data)


def test_a_result_has_the_lines_of_the_set_and_no_other(page, own):
    own.kept.keep(
        made(code="WP-1U1-7-60", family="water_power", level=1, typed="1", status="wrong")
    )
    page.name.box.value = "Ana R."
    answer(page, 1, "987654321")
    page.save.click()
    name, data = held(page.saved.value)
    assert f"wire-to-water-group-{WEDNESDAY.mark.lower()}-ana-r.jsonl" == name
    assert ["987654321"] == [json.loads(line)["typed"] for line in data.splitlines()]
    assert "Your result is ready." in page.keeping.value
    answer(page, 2, "12")
    assert "" == page.saved.value  # that file would lack the new answer


def test_without_an_answer_there_is_nothing_to_save(page):
    page.save.click()
    assert "There is nothing to save yet." in page.keeping.value
    assert "" == page.saved.value


# A set is made


@pytest.fixture
def maker(own):
    return slow(MakePanel(own, pick=lambda most: 7))


def test_problems_are_drawn_of_a_chapter_and_a_level_and_added_to_what_stands_there(maker):
    maker.codes.box.value = "BP-2U1-7-68"
    maker.chapter.value, maker.level.value, maker.units.value = ("balance",), 1, "si"
    maker.count.box.value = "4"
    maker.add.click()
    first, *drawn = maker.codes.box.value.split()
    cases = [case_from_code(code) for code in drawn]
    assert "BP-2U1-7-68" == first
    assert {("balance", 1, "si")} == {(c.family.chapter, c.level, c.units) for c in cases}
    assert 4 == len({case.code for case in cases})
    assert "4 added. The set has 5 problems now" in maker.said.value


def test_a_set_gives_a_text_a_list_of_its_problems_and_opens_here(maker, own):
    maker.codes.box.value = ", ".join(WEDNESDAY.codes)
    maker.title.box.value = "Pumps ]<b>"
    maker.make.click()
    shown = re.search(r"<textarea[^>]*>(.*?)</textarea>", maker.made.value)[1]
    problems = read_set(unescape(shown))
    assert ("Pumps ]<b>", WEDNESDAY.codes) == problems
    assert "<b>" not in maker.made.value.replace("<b></b>", "")
    assert "href" not in maker.made.value
    assert "Brake power at the pump shaft, level 2" in maker.made.value
    maker.here.click()
    assert problems == own.problems


def test_a_link_is_made_of_the_address_that_was_typed(maker):
    maker.codes.box.value = CASES[0].code
    maker.site.box.value = "https://example.org/pumps/index.html?path=00-start-here.ipynb#a"
    maker.make.click()
    href = unescape(re.search(r'href="([^"]*)"', maker.made.value)[1])
    assert href.startswith("https://example.org/pumps/?path=17-group-study.ipynb&set=W2W%5B%5D+BP-")


def test_inside_the_static_site_the_link_is_to_the_site_itself(own, monkeypatch):
    monkeypatch.setattr(address, "_told", {"base": "https://plant.example/w2w/", "query": ""})
    maker = slow(MakePanel(own))
    maker.codes.box.value = CASES[0].code
    maker.make.click()
    assert 'href="https://plant.example/w2w/?path=17-group-study.ipynb&amp;set=' in maker.made.value


MAKING_FAULTS = [
    ("codes", "", "There is no code in this set."),
    ("codes", "BP-2U1-7-69", "Problem 1: “BP-2U1-7-69” has a wrong character somewhere."),
    ("codes", "BP-2U2-7-13", "Problem 1: This code is from edition 2"),
    ("title", "a" * 61, "A title has up to 60 characters; yours has 61."),
    ("site", "javascript:alert(1)", "“javascript:alert(1)” is no address of a site."),
]


@pytest.mark.parametrize(("box", "value", "told"), MAKING_FAULTS)
def test_what_cannot_be_sent_is_told_before_it_is_sent(maker, box, value, told):
    from solver.code import Code

    maker.codes.box.value = CASES[0].code
    getattr(maker, box).box.value = value.replace("BP-2U2-7-13", str(Code("BP", 2, "us", 2, 7)))
    maker.make.click()
    assert told in words(maker.said.value)
    assert "" == maker.made.value


@pytest.mark.parametrize(
    ("count", "told"),
    [("0", "Type a whole number from 1 to 40."), ("40", "at most 40 problems; 1 stand there.")],
)
def test_how_many_to_draw_is_a_number_that_fits(maker, count, told):
    maker.codes.box.value, maker.count.box.value = CASES[0].code, count
    maker.add.click()
    assert told in maker.said.value
    assert CASES[0].code == maker.codes.box.value


def test_every_chapter_draws(maker):
    for chapter in CHAPTERS:
        maker.chapter.value, maker.level.value = (chapter,), 3
        maker.codes.box.value, maker.count.box.value = "", "3"
        maker.add.click()
        assert 3 == len(maker.codes.box.value.split()), chapter


# Results are put together


@pytest.fixture(scope="module")
def files(tmp_path_factory):
    """What the five members of the group saved."""
    return results(tmp_path_factory.mktemp("group"))


@pytest.fixture
def together(page, own):
    return slow(ResultsPanel(own))


def bring(panel, files):
    """What is said when a browser hands these files over."""
    panel.upload.value = [
        {
            "name": name,
            "type": "",
            "size": len(data),
            "content": memoryview(data),
            "last_modified": datetime.now(UTC),
        }
        for name, data in files.items()
    ]
    return words(panel.said.value)


def test_five_files_show_by_question_who_got_what_and_which_mistake(together, files):
    assert "5 files looked at; 5 new." in bring(together, files)
    assert "5 members, 3 questions: 8 of 15 right, 5 of them at once." in together.top.value
    first = words(together.all.value).split("Question 2.")[0]
    assert "1. Brake power at the pump shaft, level 2: 2 of 5 right" in first
    says = next(one.says for one in CASES[0].mistakes if one.id == MULTIPLIED)
    assert "Ana : ✓ right at once" in first
    assert f"Ben : ✓ right after 2 tries {says}" in first
    assert f"Dee : ✗ opened the worked solution after one try {says}" in first
    assert f"{EVE} : ✗ not right yet after 2 tries {says}" in first
    assert "Cy : ✓ right after one try, with 1 hint" in words(together.all.value)
    assert "Ben : – not tried" in words(together.all.value)


def test_the_commonest_mistake_comes_first_with_the_chapter_to_read_again(together, files):
    bring(together, files)
    told = words(together.flaws.value)
    assert told.startswith("Brake power 4 of 5 members, in question 1.")
    assert "Read again: 1. Three horsepowers" in told
    assert 'href="01-three-horsepowers.ipynb"' in together.flaws.value


def test_the_table_counts_what_plain_counting_counts(together, files):
    bring(together, files)
    rows = re.findall(r"<tr><th[^>]*>(\d)\..*?</tr>", together.counts.value)
    cells = [
        [int(number) for number in re.findall(r"<td>(\d)</td>", row)]
        for row in re.findall(r"<tr><th[^>]*>\d.*?</tr>", together.counts.value)
    ]
    assert ["1", "2", "3"] == rows
    assert [[1, 1, 3, 0], [2, 2, 0, 1], [2, 0, 2, 1]] == cells


def test_files_in_any_order_and_any_number_of_times_say_the_same(files):
    questions = questions_of(WEDNESDAY)
    read = [read_result(data, WEDNESDAY) for data in files.values()]
    first = facts(questions, read)
    for order in list(permutations(read))[::17]:
        assert first == facts(questions, [*order, *order[:2]])


def test_the_same_file_twice_and_a_longer_one_of_the_same_member_count_once(together, tmp_path):
    own = member(tmp_path, "Ana", [[FAR]])
    early = dict([saved(own)])
    work(own, [[], [RIGHT]])
    later = {"later.jsonl": saved(own)[1]}
    bring(together, early)
    assert "1 file looked at; 0 new." in bring(together, early)
    assert "1 file looked at; 1 new." in bring(together, later)
    assert "1 member, 3 questions: 1 of 3 right" in together.top.value


def test_a_result_saved_before_a_name_was_typed_is_of_the_same_member(together, tmp_path):
    own = member(tmp_path, "", [[FAR]])
    nameless = {"a.jsonl": saved(own)[1]}
    bring(together, nameless)
    assert "No name 1" in together.all.value
    own.call("Ana")
    bring(together, {"b.jsonl": saved(own)[1]})
    assert "No name" not in together.all.value
    assert "1 member" in together.top.value


def test_members_without_a_name_are_told_apart(together, tmp_path):
    for at in (1, 2):
        bring(together, {f"{at}": saved(member(tmp_path / f"{at}", "", [[FAR]]))[1]})
    assert all(f"No name {at}" in together.all.value for at in (1, 2))


def test_a_name_written_in_another_way_is_the_same_name(together, tmp_path):
    for at, name in enumerate(["Ana", "ana", " ANA "]):
        bring(together, {f"{at}": saved(member(tmp_path / f"{at}", name, [[FAR]]))[1]})
    assert "1 member" in together.top.value


def test_without_names_no_name_is_anywhere_and_the_numbers_stay(together, files):
    bring(together, files)
    together.hidden.value = True
    together.save.click()
    shown = "".join(
        part.value for part in (together.top, together.flaws, together.counts, together.all)
    )
    _, table = held(together.saved.value)
    told = bring(together, {"ana.jsonl": b"nothing"})
    assert "File 1 was left out: it holds no answers." in told
    for name in GROUP:
        found = re.search(rf"\b{re.escape(name.strip('='))}", shown + table.decode() + told)
        assert found is None, name
    assert ["Member 1", "Member 2", "Member 3"] == re.findall(r"Member \d", together.all.value)[:3]
    before = together.all.value
    other = ResultsPanel(together.own)
    other.hidden.value = True
    bring(other, dict(reversed(files.items())))
    assert before == other.all.value


def test_no_names_are_in_no_order_of_names(files):
    told = facts(questions_of(WEDNESDAY), [read_result(d, WEDNESDAY) for d in files.values()])
    orders = {tuple(names_for(told, ProblemSet("", (code,)), True)) for code in WEDNESDAY.codes * 2}
    assert 1 < len(orders)


def test_a_file_for_a_spreadsheet_has_a_row_for_each_question_and_member(together, files):
    bring(together, files)
    together.save.click()
    name, data = held(together.saved.value)
    rows = list(csv.DictReader(io.StringIO(data.decode("utf-8-sig"))))
    assert f"wire-to-water-group-{WEDNESDAY.mark.lower()}.csv" == name
    assert 15 == len(rows)
    assert "'" + EVE in {row["member"] for row in rows}  # else a spreadsheet would work it
    assert ("later", "2", "0") == tuple(
        next(
            (row["state"], row["tries"], row["hints"])
            for row in rows
            if (row["member"], row["question"]) == ("Ben", "1")
        )
    )


def test_ones_own_answers_are_in_it_unless_they_are_left_out(page, together, files):
    answer(page, 1, "987654321")
    bring(together, files)
    assert "6 members" in together.top.value
    together.mine.value = False
    assert "5 members" in together.top.value


def test_nothing_of_a_result_is_believed_but_what_was_typed(together, tmp_path):
    own = member(tmp_path, "Zoe", [[FAR]])
    lie = own.made()[0]._replace(status="right", mistake="<script>", level=10**9)
    bring(together, {"zoe": line_of(lie).encode()})
    assert "0 of 3 right" in together.top.value
    assert "script" not in together.all.value + together.flaws.value


def test_begin_again_puts_aside_what_was_brought_in(together, files):
    bring(together, files)
    together.again.click()
    assert "Nothing is brought in yet." in together.top.value
    assert "none" == together.shown.layout.display


def test_another_set_opened_puts_the_results_of_this_one_aside(page, together, files):
    bring(together, files)
    paste(page, set_of("Other", WEDNESDAY.codes[1:]).text)
    assert [] == together.results
    assert "none" == together.shown.layout.display


def test_without_a_set_nothing_is_taken(own, files):
    panel = slow(ResultsPanel(own))
    assert "Open the set first" in bring(panel, files)
    assert [] == panel.results


def hostile(tmp_path, files):
    """Files that are no results, each with what must be said of it."""
    good = next(iter(files.values()))
    line = json.loads(good.splitlines()[0])
    two = good + files[list(files)[1]]
    other = saved(member(tmp_path, "Ana", [[FAR]], set_of("", WEDNESDAY.codes[::-1])))[1]
    yield b" " * 2_000_001, "it is larger than 2 MB."
    yield b"x\n" * 100_000, f"it has more than {MOST_LINES:,} lines."
    yield good * 2_000, f"it has more than {MOST_LINES:,} lines."
    yield b"", "it holds no answers."
    yield b"<script>alert(1)</script>", "it holds no answers."
    yield b"[" * 100_000, "it holds no answers."
    yield b"\x89PNG\r\n\x1a\n\x00\xff", "it holds no answers."
    yield json.dumps({**line, "v": 99}).encode(), "it holds no answers."
    yield json.dumps({**line, "status": "splendid"}).encode(), "it holds no answers."
    yield json.dumps({**line, "of": ["GROUP"]}).encode(), "it holds no answers."
    yield json.dumps({**line, "code": "BP-2U1-8-66"}).encode(), "it has no answers of this set."
    yield json.dumps({**line, "of": ""}).encode(), "it has no answers of this set."
    yield other, "it has no answers of this set."
    yield two, "it has answers of 2 names."


def test_hostile_files_give_a_sentence_each_and_change_nothing(together, files, tmp_path):
    for data, told in hostile(tmp_path, files):
        said = bring(together, {"<img src=x>.jsonl": data})
        assert "1 file looked at; 0 new." in said
        assert f"“<img src=x>.jsonl” was left out: {told}" in said
        assert "<img" not in together.said.value
        assert [] == together.results


def test_lines_that_cannot_be_read_stay_out_and_are_told(together, files):
    good = next(iter(files.values()))
    told = bring(together, {"a": good + b'{"v": 1, "id\n'})
    assert "“a”: 1 line of it could not be read and stayed out." in told
    assert "1 member" in together.top.value


def test_more_files_than_a_group_has_are_left_out_and_counted(together, tmp_path):
    own = member(tmp_path, "", [[FAR]])
    (attempt,) = own.made()
    crowd = {
        f"{at}": line_of(attempt._replace(id=f"{at}", who=f"Member of {at}")).encode()
        for at in range(MOST_FILES + 20)
    }
    told = bring(together, crowd)
    assert f"{MOST_FILES + 20} files looked at; {MOST_FILES} new." in told
    assert f"“{MOST_FILES}” was left out: {MOST_FILES} results are here already." in told
    assert "And 12 more files." in told
    assert f"{MOST_FILES} members" in together.top.value


def test_a_member_who_tries_without_end_is_looked_at_only_so_far(together, tmp_path):
    (attempt,) = member(tmp_path, "Ana", [[SLIPPED]]).made()
    many = [attempt._replace(id=f"{at:04}", typed=f"{at + 1000}") for at in range(4999)]
    bring(together, {"a": "\n".join(map(line_of, many)).encode()})
    assert "not right yet after 20 tries" in words(together.all.value)
