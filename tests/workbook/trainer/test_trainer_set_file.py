"""A set's file: what it says is what is set, what it gets wrong is told, and it writes itself."""

import datetime
import re
import time
from collections import Counter
from datetime import UTC, timedelta, timezone
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

import workbook
from solver import FAMILIES
from solver.sets.credit import Credit
from solver.sets.fault_part import MOST_FAULTS, FaultPart
from solver.sets.own_plant import plant_of
from solver.sets.paper import CHAPTERS
from solver.sets.work_set import cases_for, plan_of, set_of
from solver.topics.catalogue import CATALOGUE
from workbook.trainer.sets.as_toml import toml_of
from workbook.trainer.sets.set_file import (
    Assigned,
    FaultWork,
    SetFault,
    parse_set_file,
    read_set_file,
)
from workbook.trainer.sets.set_keys import CREDIT, PLAN

EXAMPLE = Path(workbook.__file__).parent / "trainer" / "example.toml"
LEAST = 'draw = 48213\nchapters = ["head"]\n'


def parsed(*lines):
    return parse_set_file(LEAST + "\n".join(lines), "week-3")


def test_what_is_left_out_is_as_the_example_says_of_a_plain_set():
    work = set_of(chapters=["head"], seed=48213, catalogue=1)
    assert Assigned("week-3", "week-3", work) == parsed()


def test_a_file_that_names_no_catalogue_is_of_the_first_that_has_all_it_asks_for():
    text = 'draw = 48213\nchapters = ["head"]'
    assert 1 == parse_set_file(text, "week-3").work.catalogue
    assert 2 == parse_set_file(text, "week-3", 2).work.catalogue
    assert 2 == parse_set_file(f"catalogue = 2\n{text}", "week-3").work.catalogue
    assert 1 == parse_set_file(f"catalogue = 1\n{text}", "week-3", 2).work.catalogue


def test_a_file_of_a_newer_version_is_refused_and_says_so():
    text = f'draw = 1\nchapters = ["head"]\ncatalogue = {CATALOGUE + 1}'
    with pytest.raises(SetFault, match="a newer version of the workbook, so update this one"):
        parse_set_file(text, "week-3")


def test_every_key_says_what_it_says():
    found = parse_set_file(
        """
        title = "  Week 3: power "
        units = "si"
        level = 2
        count = 7
        chapters = ["head", "horsepower"]
        families = ["wire_to_water", "brake_power"]
        numbers = "the same for all"
        draw = 7
        points = 2.5
        tries = 3
        counts = "first"
        due = 2026-12-01T18:00:00-06:00
        late = 0.25
        [credit]
        right = 0.9
        close = 0.7
        mistake = 0
        each_try = 0.05
        by_mistake = { "brake_power.used_twice" = 0.25 }
        """,
        "week-3",
    )
    work = set_of(
        chapters=["head", "horsepower"],
        families=["wire_to_water"],
        catalogue=1,
        level=2,
        units="si",
        count=7,
        each=False,
        seed=7,
    )
    due = datetime.datetime(2026, 12, 2, tzinfo=UTC)
    credit = Credit(0.9, 0.7, 0.0, {"brake_power.used_twice": 0.25}, 0.05)
    expected = Assigned("week-3", "Week 3: power", work, 2.5, 3, "first", due, 0.25, credit)
    assert expected == found


def test_shares_say_how_many_of_each_chapter_there_are_and_stay_in_the_file():
    text = 'draw = 7\ncount = 12\nshares = "wet well 20, head 30, order 10"'
    week = parse_set_file(text, "week-3")
    asked = Counter(asked.kind.chapter for asked in plan_of(week.work))
    assert {"head": 6, "wet_well": 4, "order": 2} == asked
    assert 'shares = "head 30, wet well 20, order 10"' in toml_of(week)
    assert week == parse_set_file(toml_of(week), "week-3")
    with pytest.raises(SetFault, match="shares: There is no chapter"):
        parse_set_file('draw = 7\nshares = "haed 30"', "week-3")


def test_the_same_file_gives_the_same_problems():
    one, other = (cases_for(parsed().work, "ana.r") for _ in range(2))
    assert one == other
    changed = parse_set_file(LEAST.replace("48213", "48214"), "week-3")
    assert one != cases_for(changed.work, "ana.r")


# The example.


def test_the_example_shows_every_key_and_every_chapter():
    text = EXAMPLE.read_text(encoding="utf-8")
    keys = set(re.findall(r"^(\w+) =", text, re.MULTILINE))
    tables = set(re.findall(r"^\[+([\w.]+)\]", text, re.MULTILINE))
    assert "# catalogue = " in text  # which the workbook writes by itself
    assert "# shares = " in text  # which goes without chapters and families
    assert set() == {*PLAN, *CREDIT} - {"catalogue", "shares"} - keys - {
        name.split(".")[-1] for name in tables
    }
    listed = re.search(r"Chapters: (.+?)\.", text.replace("\n# ", " "))
    assert CHAPTERS == tuple(listed[1].split(", "))


def test_the_example_is_a_set_of_its_folder_and_can_be_asked_of_anyone(tmp_path):
    path = tmp_path / "week-3" / "set.toml"
    path.parent.mkdir()
    path.write_bytes(EXAMPLE.read_bytes())
    found = read_set_file(path)
    assert ("week-3", "Week 3: power and head", 12) == (found.name, found.title, found.work.count)
    assert 12 == len(cases_for(found.work, "ana.r"))
    assert found == parse_set_file(toml_of(found), "week-3")


# When it is due.


@pytest.mark.parametrize(
    ("due", "expected"),
    [
        ("2026-12-01T18:00:00-06:00", "2026-12-02T00:00:00+00:00"),
        ("2026-12-01 18:00:00Z", "2026-12-01T18:00:00+00:00"),
        ('"2026-12-01T18:00+01:00"', "2026-12-01T17:00:00+00:00"),
        ('"2026-12-01 18:00Z"', "2026-12-01T18:00:00+00:00"),
    ],
)
def test_a_time_with_its_offset_is_the_same_moment_everywhere(due, expected):
    assert expected == parsed(f"due = {due}").due.isoformat()


@pytest.mark.skipif(not hasattr(time, "tzset"), reason="this system has no way to change its zone")
@pytest.mark.parametrize(
    ("due", "expected"),
    [
        ("2026-12-01T18:00:00", "2026-12-02T00:00:00+00:00"),
        ('"2026-07-01 18:00"', "2026-07-01T23:00:00+00:00"),
        ("2026-12-01", "2026-12-02T05:59:59+00:00"),
        ('"2026-12-01"', "2026-12-02T05:59:59+00:00"),
    ],
)
def test_a_time_without_an_offset_is_that_of_the_trainers_computer(monkeypatch, due, expected):
    monkeypatch.setenv("TZ", "America/Chicago")
    time.tzset()
    try:
        assert expected == parsed(f"due = {due}").due.isoformat()
    finally:
        monkeypatch.undo()
        time.tzset()


# What is wrong is told.


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("pionts = 5", "there is no key “pionts”. Did you mean “points”?"),
        ("zzz = 5", "there is no key “zzz”. There are: title, units, level,"),
        ("close = 0.5", "there is no key “close”. Write it below [credit]."),
        ("[credit]\ntries = 2", "there is no key “tries” in [credit]. Write it above [credit]."),
        ("[credit]\nrigth = 1", "there is no key “rigth” in [credit]. Did you mean “right”?"),
        ("title = 7", "title is 7. Write up to 100 characters, such as title ="),
        ('title = " "', "title is “ ”. Write up to 100 characters"),
        ('title = "a\\nb"', "title is “a?b”. Write up to 100 characters"),
        (f'title = "{"x" * 200}"', f"title is “{'x' * 39}…”. Write up to 100"),
        ('units = "metric"', 'units is “metric”. Write units = "us" or units = "si".'),
        ("units = []", 'units is []. Write units = "us" or units = "si".'),
        ("level = 12", "level is 12. Write level = 0 for any level, or one from 1 to"),
        ("level = -1", "level is -1. Write level = 0 for any level"),
        ('level = "two"', "level is “two”. Write level = 0 for any level"),
        ("level = true", "level is True. Write level = 0 for any level"),
        ("count = 0", "count is 0. Write a whole number from 1 to 60, such as count = 10."),
        ("count = 61", "count is 61. Write a whole number from 1 to 60"),
        ("count = 7.5", "count is 7.5. Write a whole number from 1 to 60"),
        ("count = 1979-05-27", "count is 1979-05-27. Write a whole number from 1 to 60"),
        ('families = "head"', "families is “head”. Write names in brackets, such as"),
        ("families = [1]", "families is [1]. Write names in brackets"),
        (
            'families = ["brake_pwoer"]',
            "families has “brake_pwoer”, which isn't one. Did you mean “b",
        ),
        ('families = ["head"]', "families has “head”, which isn't one."),
        ('families = ["zz"]', "To list them, type: python -m solver families"),
        ('numbers = "own"', "numbers is “own”. Write numbers = "),
        ("points = 0", "points is 0. Write a number from 0.01 to 1000, such as points = 5."),
        ("points = -3", "points is -3. Write a number from 0.01"),
        ("points = nan", "points is nan. Write a number from 0.01"),
        ("points = inf", "points is inf. Write a number from 0.01"),
        ("tries = -1", "tries is -1. Write tries = 0 for no limit"),
        ('counts = "median"', 'counts is “median”. Write counts = "best", "last" or "first".'),
        ('due = "Friday"', "due is “Friday”. Write a day and time, such as due = 2026-12-01T18:00"),
        ("due = 18:00:00", "due is 18:00:00. Write a day and time"),
        ("due = 7", "due is 7. Write a day and time"),
        ("due = 0001-01-01T00:00:00+23:00", "due is 0001-01-01"),
        ("due = 9999-12-31T23:59:59-23:00", "due is 9999-12-31"),
        ("due = 1999-01-01", "due is 1999-01-01. Write a day and time"),
        ("late = 10", "late is 10. Write a share from 0 to 1, such as late = 0.1."),
        ('late = "10%"', "late is “10%”. Write a share from 0 to 1"),
        ("credit = 1", "credit is 1. Write [credit] on a line of its own, and its keys below it."),
        ("credit.close = 80", "credit.close is 80. Write a share from 0 to 1, such as close = 0.8"),
        ("credit.by_mistake = 1", "credit.by_mistake is 1. Write [credit.by_mistake] on a line"),
        ("credit.by_mistake.a.b = 7", "credit.by_mistake.a.b is 7. Type a share from 0 to 1"),
        (f"credit.by_mistake.{'a.' * 90}b = 1", "credit.by_mistake is a table."),
        ("plant = 1", "plant is 1. Write [plant] on a line of its own, and its keys below it."),
        ("[plant]\nnmae = 1", "plant has “nmae”. It may have: name, units, pumps, people."),
        ("[plant]\nname = 'A'", "Write plant.pumps as a list"),
    ],
)
def test_a_fault_names_its_key_what_was_got_and_what_to_write(line, says):
    with pytest.raises(SetFault, match="^" + re.escape("set.toml: ")) as fault:
        parsed(line)
    assert says in str(fault.value)
    assert len(str(fault.value)) < 260


@pytest.mark.parametrize(
    ("text", "says"),
    [
        ('chapters = ["head"]', "draw is missing. Write a whole number up to 999,999,999, such as"),
        ("draw = 1", 'nothing is chosen. Write chapters = ["horsepower"].'),
        ("draw = 1\nchapters = []", "nothing is chosen."),
        (
            'draw = 1\nchapters = ["horspower"]',
            "chapters has “horspower”, which isn't one. Did you mean “horsepower”?",
        ),
        ('draw = 1\nchapters = ["x"]', "which isn't one. There are: horsepower, efficiency,"),
        ('draw = -1\nchapters = ["head"]', "draw is -1. Write a whole number up to"),
    ],
)
def test_what_no_set_can_do_without_is_asked_for(text, says):
    with pytest.raises(SetFault, match=re.escape(says)):
        parse_set_file(text, "week-3")


@pytest.mark.parametrize(
    ("line", "says"),
    [
        ("count 10", "line 3, “count 10”, can't be read. Write = between a key and its value."),
        ("title = Week 3", "line 3, “title = Week 3”, can't be read. Put words into straight"),
        ("title = “Week 3”", "line 3, “title = “Week 3””, can't be read. Put words into straight"),
        ("late = 10%", "line 3, “late = 10%”, can't be read. Write one value, such as 12.5"),
        ("draw = 1", "set.toml can't be read. A key is there twice; delete one."),
        ("draw = 1\ncount = 2", "A key is there twice; delete one."),
        ("[credit]\n[credit]", "line 4, “[credit]”, can't be read. A heading in brackets is there"),
        ('families = ["brake_power"', "set.toml can't be read. A bracket is open; close it with"),
        ('title = "Week', "A quotation mark is missing; close the words with"),
        ('title = "C:\\q"', "In quotation marks, write a backslash twice."),
        ("\x00", "line 3, “?”, can't be read. Compare it with the example."),
        ("x = " + "[" * 5_000, "set.toml has too many brackets in one another."),
        ("count = 1" + "0" * 5_000, "set.toml can't be read. Compare it with the example."),
        ("#" * 200_000, "set.toml is 200,033 letters long. A set has up to 200,000."),
    ],
)
def test_what_is_not_written_as_such_files_are_is_told_by_its_line(line, says):
    with pytest.raises(SetFault, match=re.escape(says)):
        parsed(line)


def test_a_misspelt_mistake_is_told_with_the_nearest_there_is():
    with pytest.raises(SetFault, match=re.escape("Did you mean “brake_power.used_twice”?")):
        parse_set_file(
            'draw = 1\nfamilies = ["brake_power"]\n'
            '[credit.by_mistake]\n"brake_power.used_twise" = 0.2',
            "week-3",
            CATALOGUE,
        )


def test_a_mistake_that_no_problem_of_the_set_has_is_told():
    with pytest.raises(SetFault, match="no problem of this set has the mistake “qqq” of credit"):
        parse_set_file(f"{LEAST}credit.by_mistake.qqq = 0.2", "week-3", CATALOGUE)


def test_a_mistake_without_quotation_marks_is_the_same_mistake():
    found = parse_set_file(
        'draw = 1\nfamilies = ["brake_power"]\n[credit.by_mistake]\nbrake_power.used_twice = 0.2',
        "week-3",
        CATALOGUE,
    )
    assert {"brake_power.used_twice": 0.2} == found.credit.by_mistake


def test_the_mistake_of_a_judgement_can_have_its_share():
    text = 'draw = 1\nfamilies = ["which_power"]\ncredit.by_mistake.reversed = 0.2'
    assert {"reversed": 0.2} == parse_set_file(text, "week-3", CATALOGUE).credit.by_mistake


def test_the_ranges_of_a_plant_are_in_the_units_of_the_set():
    plant = '[plant]\nname = "A"\n[[plant.pumps]]\nname = "Pump 1"\nstation = "the mill"'
    found = parsed('units = "si"', plant, "ranges = { flow = [10, 90] }")
    assert "si" == found.work.plant.units


# The file itself.


def test_a_file_that_is_not_there_is_told(tmp_path):
    with pytest.raises(SetFault, match=re.escape(f"There is no set.toml in {tmp_path}.")):
        read_set_file(tmp_path / "set.toml")


def test_a_file_in_other_letters_is_told(tmp_path):
    (tmp_path / "set.toml").write_bytes(LEAST.encode("utf-16"))
    with pytest.raises(SetFault, match=re.escape("isn't plain text. Save it again as UTF-8.")):
        read_set_file(tmp_path / "set.toml")


def test_a_folder_in_place_of_the_file_is_told(tmp_path):
    (tmp_path / "set.toml").mkdir()
    with pytest.raises(SetFault, match="can't be read"):
        read_set_file(tmp_path / "set.toml")


def test_a_file_as_other_editors_save_it_is_read(tmp_path):
    path = tmp_path / "set.toml"
    path.write_bytes(b"\xef\xbb\xbf" + LEAST.replace("\n", "\r\n").encode())
    assert parse_set_file(LEAST, tmp_path.name) == read_set_file(path)


@given(st.text(max_size=200) | st.text("[]{}=.\"'\\\n#a1", max_size=60))
def test_any_text_is_a_set_or_a_fault_in_words(text):
    said = ""
    try:
        found = parse_set_file(LEAST + text, "week-3")
    except SetFault as fault:
        said = str(fault)
    if said:
        assert said.startswith("set.toml")
        assert said.isprintable()
    else:
        assert found == parse_set_file(toml_of(found), "week-3")


# A set writes itself.

NAMES = tuple(family.name for family in FAMILIES)
SHARES = st.floats(0, 1)
TITLES = st.text(min_size=1, max_size=100).filter(
    lambda t: t.isprintable() and t == t.strip() != ""
)
SLIPS = ("brake_power.used_twice", "water_power.added", "brake_power.left_out.pump_efficiency")
PLANTS = st.builds(
    lambda name, people, low, units: plant_of(
        {
            "name": name,
            "units": units,
            "people": people,
            "pumps": [
                {"name": name, "station": "the mill", "ranges": {"flow": [low, 300.25]}},
                {"name": "Pump 2", "station": 'the "old" lift \\ station'},
            ],
        }
    ),
    st.text(min_size=1, max_size=30).filter(lambda t: t.isprintable() and t.strip() != ""),
    st.lists(st.sampled_from(["Inez", "Tobias", "Zoë"]), unique=True),
    st.floats(100, 200),
    st.just("us"),
)
WORKS = st.builds(
    lambda chapters, families, **keys: set_of(
        chapters=chapters, families=["brake_power", *families], **keys
    ),
    st.lists(st.sampled_from(CHAPTERS), max_size=3),
    st.lists(st.sampled_from(NAMES), max_size=5),
    level=st.integers(0, 2),
    units=st.sampled_from(["us", "si"]),
    count=st.integers(1, 60),
    each=st.booleans(),
    seed=st.integers(0, 999_999_999),
    faults=st.none() | st.builds(FaultPart, st.integers(1, MOST_FAULTS), st.integers(1, 3)),
)
OF_A_PLANT = st.builds(
    lambda plant, seed: set_of(families=["brake_power"], plant=plant, seed=seed, count=1),
    PLANTS,
    st.integers(0, 99),
)
ZONES = st.integers(-23, 23).map(lambda hours: timezone(timedelta(hours=hours)))
MOMENTS = st.datetimes(
    datetime.datetime(2001, 1, 1), datetime.datetime(8000, 1, 1), timezones=ZONES
).map(lambda moment: moment.astimezone(UTC))


def as_written(assigned: Assigned) -> Assigned:
    """What a file keeps of a set: nothing on cases it does not have, nor on a time limit."""
    faults = assigned.faults if assigned.work.faults else FaultWork()
    after = assigned.after_time if assigned.minutes else "doesn't count"
    return assigned._replace(faults=faults, after_time=after)


SETS = st.builds(
    Assigned,
    st.just("week-3"),
    TITLES,
    WORKS | OF_A_PLANT,
    st.floats(0.01, 1000) | st.integers(1, 9).map(float),
    st.integers(0, 99),
    st.sampled_from(["best", "last", "first"]),
    st.none() | MOMENTS,
    SHARES,
    st.builds(
        Credit,
        SHARES,
        SHARES,
        SHARES,
        st.dictionaries(st.sampled_from(SLIPS), SHARES),
        SHARES,
        st.none(),
    ),
    st.builds(FaultWork, st.floats(0.01, 1000), SHARES),
    st.integers(0, 99),
    st.sampled_from(["", "night"]),
    st.integers(0, 600),
    st.sampled_from(["counts", "doesn't count"]),
).map(as_written)


@settings(max_examples=200)
@given(SETS)
def test_a_set_writes_itself_and_is_read_again_the_same(assigned):
    text = toml_of(assigned)
    again = parse_set_file(text, "week-3")
    assert assigned == again
    assert assigned.work.code == again.work.code
    assert text == toml_of(again)
