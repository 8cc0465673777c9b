"""Setting work: what a form makes or why not, what anybody will get, a set written and kept."""

import json
import re
from dataclasses import replace
from datetime import UTC, datetime, timedelta, timezone
from html import unescape
from pathlib import Path

import pytest

from solver import FAMILIES, SolverError
from solver.sets.credit import Credit
from solver.sets.paper import CHAPTERS
from solver.sets.work_set import cases_for, plan_of, read_set, set_of
from workbook.start.folder import CannotWrite
from workbook.trainer.course import make_course
from workbook.trainer.sets.as_toml import toml_of
from workbook.trainer.sets.set_file import SET_FILE, read_set_file
from workbook.trainer.setting.draft import Draft, assigned_from, draft_of
from workbook.trainer.setting.keep import CannotPut, already_there, put, sets_in
from workbook.trainer.setting.plant import EXAMPLE, plant_from
from workbook.trainer.setting.preview import CARDS, LIST, preview_html
from workbook.trainer.setting.setting_panel import SettingPanel
from workbook.trainer.setting.summary import next_steps, summary
from workbook.trainer.setting.typed_in import folder_name
from workbook.ui.kept_mixtures import KeptMixtures

NOW = datetime(2026, 11, 25, 19, tzinfo=UTC)
GOOD = Draft(title="Week 3: power", chapters=("horsepower",), seed=48213)
WEEK = assigned_from(GOOD)[0]
PLANT = b"""
name = "Marlow Bend"
[[pumps]]
name = "Pump 2"
station = "the Quarry Road lift station"
"""


def text(html):
    return " ".join(re.sub(r"<[^>]*>", " ", html).split())


@pytest.fixture
def course(tmp_path):
    return make_course(tmp_path / "class").root


@pytest.fixture
def panel(course):
    ticks, picks = iter(range(0, 100_000, 5)), iter(range(1, 1000))
    return SettingPanel(course, lambda: NOW, lambda most: next(picks), ticks.__next__)


def fill(panel, title="Week 3: power", chapter="horsepower", **texts):
    panel.form.chapters.boxes[chapter].value = True
    for name, typed in {"title": title, **texts}.items():
        panel.form.texts[name].box.value = typed


# What a form makes


def test_a_title_and_a_chapter_are_enough():
    assigned, faults = assigned_from(GOOD)
    assert [] == faults
    work = set_of(chapters=["horsepower"], seed=48213)
    assert ("week-3-power", "Week 3: power", work) == assigned[:3]
    assert (3, 1, Credit(each_try=0.25, wrong_choice=0.0)) == (
        assigned.tries,
        assigned.choice_tries,
        assigned.credit,
    )


@pytest.mark.parametrize(
    ("changes", "fault"),
    [
        ({"title": " "}, "The title is empty. Type one, such as Week 3: power."),
        ({"title": "x" * 101}, "The title has 101 letters. Type up to 100 plain ones."),
        ({"title": "???"}, "The title doesn't give a folder name. Type one, such as week-3."),
        ({"name": "../up"}, "“../up” can't be a folder name."),
        ({"name": "week 3"}, "“week 3” can't be a folder name."),
        ({"chapters": ()}, "Nothing is chosen yet. Check a chapter or a kind of problem."),
        (
            {"questions": "61"},
            "You typed “61” for the questions. Type a whole number from 1 to 60.",
        ),
        ({"questions": ""}, "The number of questions is empty. Type a whole number from 1 to 60."),
        ({"points": "0"}, "You typed “0” for the points of each question. Type a number from"),
        ({"points": "1,5"}, 'Points of each question: "1,5" has a comma'),
        ({"tries": "1.5"}, "You typed “1.5” for the tries. Type a whole number from 1 to 99."),
        ({"mistake": "120"}, "A known slip earns: you typed “120”. Type a number from 0 to 100."),
        ({"close": "-5"}, "A close answer earns: you typed “-5”. Type a number from 0 to 100."),
        ({"each_try": "half"}, 'Taken off for each earlier try: "half" has no number in it'),
        ({"late": "10"}, "Something is taken off for being late, but no due time is set. Set one."),
    ],
)
def test_what_is_in_the_way_is_said_with_what_was_typed_and_what_to_type(changes, fault):
    assigned, faults = assigned_from(GOOD._replace(**changes))
    assert assigned is None
    (said,) = faults
    assert said.startswith(fault)


def test_all_that_is_in_the_way_is_said_at_once():
    _, faults = assigned_from(Draft(questions="x", points="y", late="z"))
    assert 5 == len(faults)


def test_a_mixture_that_is_kept_is_chosen_in_the_form_typed_by_its_name_and_named_in_a_set(
    course, tmp_path, monkeypatch
):
    monkeypatch.setattr("workbook.ui.kept_mixtures.default_path", lambda: tmp_path / "log.jsonl")
    KeptMixtures().keep({"Grade 2": {"head": 30, "wet_well": 20}})
    form = SettingPanel(course, lambda: NOW, lambda most: 7).form
    form.mixture.value = "Grade 2"
    assert "Grade 2: head 30, wet well 20" == form.draft().shares
    for typed in ("grade 2", "Grade 2: head 30, wet well 20"):
        assigned, faults = assigned_from(GOOD._replace(shares=typed))
        assert ([], {"head": 30, "wet_well": 20}) == (faults, assigned.work.by_share)
    _, faults = assigned_from(GOOD._replace(shares="Grade 3"))
    assert "There is no mixture “Grade 3”. The kept ones are “Grade 2”." in faults[0]


def test_shares_are_typed_in_percent_with_or_without_the_sign():
    typed = GOOD._replace(mistake="33.3 %", close="75%", each_try=" 5 ", late="12.5", due=NOW)
    assigned, _ = assigned_from(typed)
    assert Credit(close=0.75, mistake=0.333, each_try=0.05, wrong_choice=0.0) == assigned.credit
    assert 0.125 == assigned.late


def test_a_due_time_of_any_place_is_kept_in_utc():
    due = datetime(2026, 12, 1, 18, tzinfo=timezone(timedelta(hours=-6)))
    assert datetime(2026, 12, 2, 0, tzinfo=UTC) == assigned_from(GOOD._replace(due=due))[0].due


@pytest.mark.parametrize(
    "assigned",
    [
        WEEK,
        WEEK._replace(points=2.5, tries=3, counts="last", due=NOW, late=0.1),
        WEEK._replace(
            credit=Credit(0.9, 0.7, 0.4, {"brake_power.left_out.pump_efficiency": 0.2}, 0.125)
        ),
        WEEK._replace(work=set_of(families=["water_power", "energy_cost"], level=2, units="si")),
        WEEK._replace(work=set_of(chapters=["head"], families=["energy_cost"], each=False)),
        WEEK._replace(work=set_of(chapters=["horsepower"], plant=plant_from(PLANT))),
    ],
)
def test_a_set_that_is_opened_and_not_changed_is_the_same_set(assigned):
    assert (assigned, []) == assigned_from(draft_of(assigned))


def test_a_folder_name_is_made_of_any_title_and_never_leads_elsewhere():
    assert "a-b" == folder_name("../A\\b:")
    assert "x" * 60 == folder_name("x" * 99)
    assert "" == folder_name("日本")


# What anybody will get


@pytest.mark.parametrize("way", [LIST, CARDS])
def test_the_preview_has_each_persons_own_problems_and_answers(way):
    shown = text(preview_html(WEEK.work, ["inez", "tobias"], way))
    for person in ("inez", "tobias"):
        for case in cases_for(WEEK.work, person):
            assert case.code in shown
    shown = unescape(shown)
    assert all(asked.kind.title in shown for asked in plan_of(WEEK.work))


def test_the_cards_hold_the_question_and_the_whole_solution():
    shown = text(preview_html(WEEK.work, ["inez"], CARDS))
    for case in cases_for(WEEK.work, "inez"):
        assert text(case.question) in unescape(shown)
        assert text(case.steps[-1].why) in unescape(shown)


def test_where_all_have_the_same_numbers_one_column_stands_for_everybody():
    work = replace(WEEK.work, each=False)
    shown = preview_html(work, ["inez", "tobias"], LIST)
    assert "Everyone" in shown
    assert "tobias" not in shown
    assert {case.code for case in cases_for(work, "tobias")} <= set(
        re.findall(r"[A-Z]+-\w+-\d+-[A-Z]{3}", shown)
    )


def test_an_id_that_nobody_can_have_is_refused_before_it_is_shown():
    with pytest.raises(SolverError, match="An id has up to 40 letters"):
        preview_html(WEEK.work, ["<b>x</b>"], LIST)


# What it comes to, in words


def test_the_summary_says_every_choice():
    due = datetime(2026, 12, 2, 0, tzinfo=UTC)
    assigned = WEEK._replace(points=2.5, tries=3, counts="last", due=due, late=0.1)
    said = " ".join(summary(assigned, NOW))
    for part in (
        "10 questions at any level, in US units, from 7 kinds of problem.",
        "Each is worth 2.5 points, 25 in all.",
        "A known slip earns 50% of the points, and a close answer 80%.",
        "Up to 3 tries for each question; the last one counts.",
        "Due on Wednesday, December 2, 2026, at 00:00 UTC",
        "Turning it in late takes off 10% of the score.",
    ):
        assert part in said


def test_a_due_time_is_said_in_the_computers_time_and_in_utc_with_the_other_day():
    here = timezone(timedelta(hours=-6))
    due = datetime(2026, 12, 2, 0, tzinfo=UTC)
    said = " ".join(summary(WEEK._replace(due=due), NOW.astimezone(here)))
    assert (
        "Due on Tuesday, December 1, 2026, at 18:00 on this computer, "
        "which is 00:00 UTC on Wednesday." in said
    )


def test_a_due_time_that_has_passed_is_told():
    said = " ".join(summary(WEEK._replace(due=NOW - timedelta(days=1)), NOW))
    assert "That time has passed, so everything that comes in is late. Check the date." in said


def test_every_next_step_is_a_command_that_there_is():
    from workbook.commands import COMMANDS

    lines = [command for _, command in next_steps(WEEK, Path("/srv/my class"))]
    words = [line.partition("-m workbook ")[2].split() for line in lines]
    assert {each[0] for each in words} <= set(COMMANDS)
    assert all("--course '/srv/my class'" in line for line in lines)
    assert all("week-3-power" in each for each in words)


# Written, and never over another


def files(folder):
    return {
        path.relative_to(folder): path.read_bytes() for path in folder.rglob("*") if path.is_file()
    }


def test_a_set_is_written_with_its_notebook_and_reads_back_the_same(course):
    (said,) = put(course, WEEK, NOW)
    place = course / "source" / "week-3-power"
    assert str(place / SET_FILE) in said
    assert WEEK == read_set_file(place / SET_FILE)
    cells = json.loads((place / "week-3-power.ipynb").read_text("utf-8"))["cells"]
    assert WEEK.work.count == sum(cell["id"].startswith("question-") for cell in cells)
    assert ["week-3-power"] == sets_in(course)


def test_the_same_set_again_leaves_its_file_as_it_is_with_its_remarks(course):
    put(course, WEEK, NOW)
    file = course / "source" / "week-3-power" / SET_FILE
    file.write_text(f"# mine\n{file.read_text('utf-8')}", encoding="utf-8")
    before = files(course)
    assert already_there(course, WEEK).same
    put(course, WEEK, NOW)
    assert before == files(course)


@pytest.mark.parametrize(
    ("other", "told"),
    [
        (WEEK._replace(points=2.0), "The questions are the same. The points, tries"),
        (
            WEEK._replace(work=replace(WEEK.work, seed=9)),
            "Answers to the old questions would no longer count.",
        ),
        (
            WEEK._replace(name="Week-3-Power"),
            "This course already has another set called “week-3-power”.",
        ),
    ],
)
def test_another_set_of_the_name_is_refused_and_not_a_byte_is_changed(course, other, told):
    put(course, WEEK, NOW)
    before = files(course)
    with pytest.raises(CannotPut, match=re.escape(told)):
        put(course, other, NOW)
    assert before == files(course)


def test_it_is_told_how_many_have_handed_in_for_what_stands_there(course):
    put(course, WEEK, NOW)
    for person in ("inez", "tobias"):
        (course / "submitted" / person / "week-3-power").mkdir(parents=True)
    said = already_there(course, WEEK._replace(points=3.0)).says
    assert "2 sheets were turned in for it so far." == said[-1]


def _with_work_in(course):
    put(course, WEEK, NOW)
    (course / "submitted" / "inez" / "week-3-power").mkdir(parents=True)


def test_other_questions_never_take_the_place_of_those_that_work_is_in_for(course):
    _with_work_in(course)
    before = files(course)
    other = WEEK._replace(work=replace(WEEK.work, seed=9))
    with pytest.raises(
        CannotPut, match="People have already turned in work for “week-3-power”: 1 answer sheet"
    ):
        put(course, other, NOW, replace=True)
    assert before == files(course)


@pytest.mark.parametrize("damaged", [False, True])
def test_the_same_questions_may_be_set_anew_though_work_is_in_and_the_file_damaged(course, damaged):
    _with_work_in(course)
    path = course / "source" / "week-3-power" / SET_FILE
    if damaged:
        path.write_bytes(b"\x00 no set")
    put(course, WEEK._replace(points=3.0), NOW, replace=True)
    assert WEEK._replace(points=3.0) == read_set_file(path)


def test_a_damaged_set_keeps_no_other_set_of_the_course_from_being_written(course):
    put(course, WEEK, NOW)
    (course / "source" / "week-3-power" / SET_FILE).write_bytes(b"\x00 no set")
    put(course, WEEK._replace(name="week-4"), NOW)
    assert WEEK._replace(name="week-4") == read_set_file(course / "source" / "week-4" / SET_FILE)
    assert ["week-3-power", "week-4"] == sets_in(course)


def test_a_trainers_own_file_keeps_its_remarks_and_gets_the_line_of_its_catalogue(course):
    path = course / "source" / "week-3-power" / SET_FILE
    path.parent.mkdir(parents=True)
    line = f"catalogue = {WEEK.work.catalogue}\n"
    own = "# mine\n" + toml_of(WEEK).replace(line, "")
    path.write_text(own, "utf-8")
    put(course, WEEK, NOW)
    first, _, rest = path.read_text("utf-8").partition("\n")
    assert own == rest
    assert first.startswith(line.strip())
    assert WEEK == read_set_file(path)
    put(course, WEEK, NOW)
    assert own == path.read_text("utf-8").partition("\n")[2]


def test_what_is_replaced_is_kept_aside_whole(course):
    put(course, WEEK, NOW)
    place = course / "source" / "week-3-power"
    notebook = place / "week-3-power.ipynb"
    page = json.loads(notebook.read_text("utf-8"))
    page["cells"].append(page["cells"][0] | {"id": "mine"})  # changed by hand
    notebook.write_text(json.dumps(page), encoding="utf-8")
    before = files(place)
    said = put(course, WEEK._replace(points=2.0), NOW, replace=True)
    (aside,) = (course / "replaced").iterdir()
    assert before == files(aside)
    assert f"The set that was there is kept in {aside}." == said[0]
    assert 2.0 == read_set_file(place / SET_FILE).points
    with pytest.raises(CannotPut, match="couldn't be moved out of the way: File exists"):
        put(course, WEEK, NOW, replace=True)  # in the same second


def test_where_what_stood_there_is_kept_is_told_though_the_new_one_cannot_be_written(
    course, monkeypatch
):
    put(course, WEEK, NOW)

    def full(*_):
        raise CannotWrite("The disk is full.")

    monkeypatch.setattr("workbook.trainer.setting.keep.write_source", full)
    with pytest.raises(
        CannotPut, match=r"The disk is full\. The set that was there is kept in"
    ) as told:
        put(course, WEEK._replace(points=2.0), NOW, replace=True)
    (aside,) = (course / "replaced").iterdir()
    assert str(aside) in str(told.value)
    assert WEEK.work == read_set_file(aside / SET_FILE).work


def test_a_file_that_is_no_set_stands_in_the_way_too(course):
    place = course / "source" / "week-3-power"
    place.mkdir()
    (place / SET_FILE).write_text("draw =", encoding="utf-8")
    with pytest.raises(CannotPut, match="Its file can't be read"):
        put(course, WEEK, NOW)
    assert "draw =" == (place / SET_FILE).read_text("utf-8")


def test_a_notebook_changed_by_hand_is_left_and_named(course):
    put(course, WEEK, NOW)
    notebook = course / "source" / "week-3-power" / "week-3-power.ipynb"
    notebook.write_text("mine", encoding="utf-8")
    with pytest.raises(CannotPut, match="was changed by hand"):
        put(course, WEEK, NOW)
    assert "mine" == notebook.read_text("utf-8")


# A plant of one's own


def test_a_plant_is_read_with_its_keys_at_the_top_or_below_a_heading():
    below = b"[plant]\n" + PLANT.replace(b"[[pumps", b"[[plant.pumps")
    assert plant_from(PLANT) == plant_from(b"\xef\xbb\xbf" + below)


@pytest.mark.parametrize(
    ("data", "fault"),
    [
        (b"\xff\xfe", "This file doesn't describe a plant. Fill in the example from this page."),
        (b"a = ", "This file doesn't describe a plant"),
        (b"title = 'x'", "plant has “title”. It may have: name, units, pumps, people."),
        (b"#" * 200_001, "The file has 200,001 bytes; no plant needs 200,000."),
    ],
)
def test_a_file_that_is_no_plant_is_refused_with_the_reason(data, fault):
    with pytest.raises(SolverError, match=re.escape(fault)):
        plant_from(data)


def test_the_example_that_can_be_saved_is_a_plant_that_can_be_used(panel):
    example = panel.plant.example
    assert example in EXAMPLE.read_text("utf-8")
    plant = plant_from(example.encode())
    assert set_of(chapters=["horsepower"], plant=plant).plant == plant


def bring(part, name, data):
    part.upload.value = (
        {"name": name, "content": memoryview(data), "size": len(data), "type": "", "last_modified": NOW},
    )  # fmt: skip


def test_a_plant_brought_in_is_in_the_set_and_can_be_left_out(panel):
    fill(panel)
    bring(panel.plant, "plant.toml", PLANT)
    assert "“Marlow Bend”, 1 pump." in panel.plant.line.value
    panel.looking.see.click()
    assert panel.looking.seen.work.plant == plant_from(PLANT)
    assert "the Quarry Road lift station" in cases_for(panel.looking.seen.work, "inez")[0].question
    panel.plant.without.click()
    panel.looking.see.click()
    assert panel.looking.seen.work.plant is None


def test_a_plant_that_cannot_be_taken_leaves_the_one_before(panel):
    bring(panel.plant, "plant.toml", PLANT)
    bring(panel.plant, "<b>.toml", b"name = 1")
    assert "&lt;b&gt;.toml” wasn&#39;t accepted." in panel.plant.said.value
    assert "“Marlow Bend”" in panel.plant.line.value


# The panel


def test_an_empty_form_says_what_to_fill_in_and_writes_nothing(panel, course):
    panel.writing.write.click()
    assert "Nothing was saved. What is missing is shown above." in panel.writing.said.value
    assert "The title is empty." in panel.looking.said.value
    assert [] == sets_in(course)


def test_seeing_the_set_shows_its_code_and_two_people_beside_each_other(panel):
    fill(panel)
    panel.looking.see.click()
    work = panel.looking.seen.work
    assert work.code in panel.looking.said.value
    assert read_set(work.code) == work
    for person in ("inez", "tobias"):
        assert cases_for(work, person)[0].code in panel.looking.preview.value


def test_nothing_is_worked_out_while_somebody_types(panel):
    fill(panel)
    assert panel.looking.seen is None
    panel.looking.see.click()
    before = panel.looking.said.value, panel.looking.preview.value
    panel.form.texts["questions"].box.value = "3"
    assert before == (panel.looking.said.value, panel.looking.preview.value)


def test_a_person_is_typed_and_one_alone_is_enough(panel):
    fill(panel)
    first, second = panel.looking.people
    first.box.value, second.box.value = " Ana.R ", ""
    panel.looking.see.click()
    assert cases_for(panel.looking.seen.work, "ana.r")[0].code in panel.looking.preview.value
    assert "tobias" not in panel.looking.preview.value
    first.box.value = "<script>"
    panel.looking.see.click()
    assert "An id has up to 40 letters" in panel.looking.preview.value
    assert "<script>" not in panel.looking.preview.value


def test_other_questions_change_the_code_and_what_is_written_is_what_was_seen(panel, course):
    fill(panel)
    panel.looking.see.click()
    first = panel.looking.seen
    panel.looking.others.click()
    second = panel.looking.seen
    assert first.work.code != second.work.code
    panel.writing.write.click()
    assert second == read_set_file(course / "source" / "week-3-power" / SET_FILE)


def test_what_is_written_unseen_is_shown_with_all_that_was_chosen(panel, course):
    fill(panel)
    panel.writing.write.click()
    kept = read_set_file(course / "source" / "week-3-power" / SET_FILE)
    assert kept == panel.looking.seen
    assert "There is no due time, so nothing counts as late." in panel.looking.said.value
    assert ("week-3-power", kept.name) == (panel.sets.value, panel.sets.options[-1][1])


def test_single_kinds_of_several_chapters_are_set_beside_whole_chapters(panel):
    kinds = panel.form.kinds
    for chapter, name in (("cost", "energy_cost"), ("head", "velocity")):
        kinds.chapter.value = chapter
        title = next(family.title for family in FAMILIES if family.name == name)
        next(box for box in kinds.ticks.children if box.description == title).value = True
    fill(panel)
    panel.looking.see.click()
    chosen = set(panel.looking.seen.work.families)
    horsepower = {family.name for family in FAMILIES if family.chapter == "horsepower"}
    assert horsepower | {"energy_cost", "velocity"} == chosen
    assert "Single kinds chosen: " in kinds.line.value


def test_another_set_of_the_name_is_replaced_only_by_the_button_for_it(panel, course):
    fill(panel)
    panel.writing.write.click()
    assert "-m workbook set week-3-power" in panel.writing.said.value
    place = course / "source" / "week-3-power" / SET_FILE
    before = place.read_bytes()
    panel.form.texts["questions"].box.value = "x"
    panel.writing.write.click()
    assert "You typed “x” for the questions." in panel.looking.said.value
    panel.form.texts["questions"].box.value = "12"
    panel.writing.write.click()
    assert "12 questions" in panel.looking.said.value
    assert "Nothing was saved." in panel.writing.said.value
    assert ("", before) == (panel.writing.replace.layout.display, place.read_bytes())
    panel.form.texts["questions"].box.value = "14"  # changed after it was asked: it asks again
    panel.writing.replace.click()
    assert before == place.read_bytes()
    panel.writing.replace.click()
    assert 14 == read_set_file(place).work.count
    assert "none" == panel.writing.replace.layout.display


def test_a_set_is_opened_changed_and_another_is_begun(panel, course):
    kept = WEEK._replace(credit=Credit(right=0.9, by_mistake={}), tries=2, due=NOW)
    put(course, kept, NOW)
    panel = SettingPanel(course, lambda: NOW, lambda most: 77, iter(range(0, 999, 5)).__next__)
    panel.sets.value = "week-3-power"
    panel.open.click()
    assert "“Week 3: power” is open." in panel.said.value
    panel.looking.see.click()
    assert kept == panel.looking.seen
    panel.sets.value = ""
    panel.open.click()
    assert ("", ()) == (panel.form.texts["title"].box.value, panel.form.chapters.chosen)
    assert 77 == panel.form.draft().seed


def test_a_set_file_that_cannot_be_read_leaves_the_form_and_is_told(panel, course):
    place = course / "source" / "broken"
    place.mkdir()
    (place / SET_FILE).write_text('chapters = ["haed"]\ndraw = 1', encoding="utf-8")
    fill(panel)
    panel.sets.options = [*panel.sets.options, ("broken", "broken")]
    panel.sets.value = "broken"
    panel.open.click()
    assert "Did you mean “head”?" in panel.said.value
    assert "Week 3: power" == panel.form.texts["title"].box.value


def test_a_folder_that_is_no_course_is_told_with_the_command(tmp_path):
    panel = SettingPanel(tmp_path, lambda: NOW)
    assert "isn't a course yet" in unescape(panel.children[1].value)
    assert "python3 -m workbook trainer" in panel.children[1].value


def test_every_chapter_and_every_kind_can_be_chosen(panel):
    assert list(CHAPTERS) == sorted(panel.form.chapters.boxes, key=CHAPTERS.index)
    offered = set()
    for _, chapter in panel.form.kinds.chapter.options:
        panel.form.kinds.chapter.value = chapter
        offered |= {box.description for box in panel.form.kinds.ticks.children}
    assert {family.title for family in FAMILIES} == offered
