"""Results of a group put together: who got what, names or none, and files that are no results."""

import csv
import io
import json
import re
from datetime import UTC, datetime
from itertools import permutations
from urllib.parse import quote

import pytest

from tests.workbook.group.members import (
    CASES,
    FAR,
    GROUP,
    MULTIPLIED,
    RIGHT,
    SLIPPED,
    WEDNESDAY,
    member,
    results,
    saved,
    work,
)
from tests.workbook.group.panels import answer, held, paste, slow
from tests.workbook.said import words
from workbook.group.results import MOST_LINES, facts, read_result
from workbook.group.results_panel import MOST_FILES, ResultsPanel
from workbook.group.results_shown import names_for
from workbook.group.set_text import ProblemSet, questions_of, set_of
from workbook.log import checked_line, line_of
from workbook.ui import static_site

EVE = "=Eve<script>alert(1)</script>"


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
    assert (
        "5 members, 3 questions: 8 of 15 right, 5 of them on the first try." in together.top.value
    )
    first = words(together.all.value).split("Question 2.")[0]
    assert "1. Brake horsepower at the pump shaft, level 2: 2 of 5 right" in first
    says = next(one.says for one in CASES[0].mistakes if one.id == MULTIPLIED)
    assert "Ana : ✓ right on the first try" in first
    assert f"Ben : ✓ right after 2 tries {says}" in first
    assert f"Dee : ✗ opened the worked solution after one try {says}" in first
    assert f"{EVE} : ✗ not right yet after 2 tries {says}" in first
    assert "Cy : ✓ right after one try, with 1 hint" in words(together.all.value)
    assert "Ben : – not tried" in words(together.all.value)


def test_the_commonest_mistake_comes_first_with_the_chapter_to_read_again(together, files):
    bring(together, files)
    told = words(together.flaws.value)
    assert told.startswith("Brake horsepower 4 of 5 members, in question 1.")
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


def test_two_people_of_one_name_are_kept_apart_and_asked_about(together, tmp_path):
    for at, (name, done) in enumerate({"Ana": [[FAR]], "ana": [[RIGHT]], "Ben": []}.items()):
        done = done or [[FAR]]
        bring(together, {f"{at}": saved(member(tmp_path / f"{at}", name, done))[1]})
    assert "3 members, 3 questions: 1 of 9 right" in together.top.value
    told, box = together.alike.children
    assert "the same name but no answer in common" in words(told.value)
    assert "Ana 1 and ana 2: one person" == box.description
    box.value = True
    assert "2 members, 3 questions: 1 of 6 right" in together.top.value
    assert [box] == list(together.alike.children[1:])
    assert ("Ana: one person", True) == (box.description, box.value)
    box.value = False
    assert "3 members" in together.top.value


def test_one_person_who_is_told_so_stays_one_until_the_results_are_cleared(together, tmp_path):
    for at in range(3):
        bring(together, {f"{at}": saved(member(tmp_path / f"{at}", "Ana", [[FAR]]))[1]})
        if at == 1:
            together.alike.children[1].value = True
    assert "1 member," in together.top.value
    together.again.click()
    for at in range(2):
        bring(together, {f"{at}": saved(member(tmp_path / f"{at}", "Ana", []))[1]})
    assert "2 members," in together.top.value


def test_a_name_that_looks_like_a_number_of_ours_hides_nobody(together, tmp_path):
    for at, name in enumerate(["", "No name 1", "Ana", "Ana", "Ana 1"]):
        bring(together, {f"{at}": saved(member(tmp_path / f"{at}", name, [[FAR]]))[1]})
    assert "5 members" in together.top.value
    assert 5 == words(together.all.value).split("Question 2.")[0].count(
        "not right yet after one try"
    )


def test_a_result_of_junk_alone_is_refused(together, tmp_path):
    (attempt,) = member(tmp_path, "Ana", [[FAR]]).made()
    junk = [attempt._replace(id=f"{at}", typed=typed) for at, typed in enumerate(["??", "", "a b"])]
    told = bring(together, {"junk": "\n".join(map(line_of, junk)).encode()})
    assert "“junk” was left out: none of its answers can be read" in told
    assert [] == together.own.results


def test_an_empty_list_says_which_button_fills_it(together):
    assert "Choose “Bring in results” above" in together.top.value
    assert "Bring in results" == together.upload.description


def test_without_names_no_name_is_anywhere_and_the_numbers_stay(together, files):
    bring(together, files)
    together.hidden.value = True
    together.save.click()
    shown = "".join(
        part.value for part in (together.top, together.flaws, together.counts, together.all)
    )
    _, table = held(together.saved.value)
    told = bring(together, {"ana.jsonl": b"nothing"})
    assert "File 1 was left out: it doesn't hold any answers." in told
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
    assert "Nothing has been brought in yet." in together.top.value
    assert "none" == together.shown.layout.display


def test_another_set_opened_puts_the_results_of_this_one_aside(page, together, files):
    bring(together, files)
    paste(page, set_of("Other", WEDNESDAY.codes[1:]).text)
    assert [] == together.own.results
    assert "none" == together.shown.layout.display


def test_results_stay_when_the_page_is_left_for_another_and_shown_again(together, files):
    bring(together, files)
    assert "5 members" in ResultsPanel(together.own).top.value


def test_the_same_problems_under_another_title_keep_the_results(page, together, files):
    bring(together, files)
    paste(page, set_of("Thursday", WEDNESDAY.codes).text)
    assert "Thursday</h3><p>5 members" in together.top.value


def test_without_a_set_nothing_is_taken(own, files):
    panel = slow(ResultsPanel(own))
    assert "Open the set first" in bring(panel, files)
    assert [] == panel.own.results


def hostile(tmp_path, files):
    """Files that are no results, each with what must be said of it."""
    good = next(iter(files.values()))
    line = json.loads(good.splitlines()[0])
    del line["v"], line["check"]
    two = good + files[list(files)[1]]
    other = saved(member(tmp_path, "Ana", [[FAR]], set_of("", WEDNESDAY.codes[::-1])))[1]
    yield b" " * 2_000_001, "it is larger than 2 MB."
    yield b"x\n" * 100_000, f"it has more than {MOST_LINES:,} lines."
    yield good * 2_000, f"it has more than {MOST_LINES:,} lines."
    yield b"", "it doesn't hold any answers."
    yield b"<script>alert(1)</script>", "it doesn't hold any answers."
    yield b"[" * 100_000, "it doesn't hold any answers."
    yield b"\x89PNG\r\n\x1a\n\x00\xff", "it doesn't hold any answers."
    yield checked_line(99, line).encode(), "it doesn't hold any answers."
    yield checked_line(2, {**line, "status": "splendid"}).encode(), "it doesn't hold any answers."
    yield checked_line(2, {**line, "of": ["GROUP"]}).encode(), "it doesn't hold any answers."
    yield good.splitlines()[0].replace(b"status", b"state"), "it doesn't hold any answers."
    yield (
        checked_line(2, {**line, "code": "BP-2U1-8-66"}).encode(),
        "it has no answers to this set.",
    )
    yield checked_line(2, {**line, "of": ""}).encode(), "it has no answers to this set."
    yield other, "it has no answers to this set."
    yield two, "it has answers of 2 names."


def test_hostile_files_give_a_sentence_each_and_change_nothing(together, files, tmp_path):
    for data, told in hostile(tmp_path, files):
        said = bring(together, {"<img src=x>.jsonl": data})
        assert "1 file looked at; 0 new." in said
        assert f"“<img src=x>.jsonl” was left out: {told}" in said
        assert "<img" not in together.said.value
        assert [] == together.own.results


def test_lines_that_cannot_be_read_stay_out_and_are_told(together, files):
    good = next(iter(files.values()))
    told = bring(together, {"a": good + b'{"v": 1, "id\n'})
    assert "“a”: 1 line of it couldn't be read and was left out." in told
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


def test_results_that_were_shared_to_the_site_wait_for_their_set(own, files):
    name, data = next(iter(files.items()))
    static_site.receive(quote(json.dumps([[name, data.decode()]])))
    panel = slow(ResultsPanel(own))
    assert [] == own.results
    own.open(WEDNESDAY)
    assert "1 member, 3 questions" in panel.top.value
    assert "1 file looked at; 1 new." in words(panel.said.value)
