"""Controls that hear what somebody chooses, and pieces of pages that nothing typed can break."""

import pytest
from ipywidgets import HTML

from workbook.ui.chapter_ticks import ChapterTicks
from workbook.ui.controls import Panel, chooser, row, show, tick
from workbook.ui.pieces import say, state_line, table

HOSTILE = "<b onclick=x>&"


def test_a_list_tells_what_is_chosen_and_not_what_is_put_there():
    heard = []
    level = chooser("Level", [("1", 1), ("2", 2)], heard.append)
    level.value = 2
    level.put(7, [("6", 6), ("7", 7)])
    assert ([2], 7, (("6", 6), ("7", 7))) == (heard, level.value, level.options)
    level.value = 6
    assert [2, 6] == heard


def test_a_list_still_hears_after_a_value_that_it_could_not_take():
    heard = []
    level = chooser("Level", [("1", 1), ("2", 2)], heard.append)
    with pytest.raises(Exception, match="Invalid selection"):
        level.put(9)
    level.value = 2
    assert [2] == heard


def test_a_box_tells_when_it_is_checked_and_not_when_it_is_set():
    heard = []
    box = tick("Level 1", False, heard.append)
    box.put(True)
    assert ([], True) == (heard, box.value)
    box.value = False
    assert [False] == heard


def test_all_chapters_checked_at_once_are_one_change():
    heard = []
    boxes = ChapterTicks(Panel(), ("head", "balance"), (), lambda: heard.append(boxes.chosen))
    boxes.all.click()
    assert [{"head", "balance"}] == [set(each) for each in heard]


def test_a_part_is_shown_and_put_out_of_sight():
    part = row("w2w-ask", HTML())
    show(part, False)
    assert "none" == part.layout.display
    show(part)
    assert "" == part.layout.display


def test_what_is_said_is_text_and_html_only_where_it_is_marked():
    told = say("note", HOSTILE, spoken=HOSTILE, foot=HOSTILE, html=state_line("!", HOSTILE))
    assert "<b" not in told
    assert 4 == told.count("&lt;b onclick=x&gt;&amp;")


def test_a_table_names_its_rows_and_columns():
    shown = table([(HOSTILE, 1, HOSTILE)], HOSTILE, ("", "How many", HOSTILE))
    assert "<b" not in shown
    assert (2, 1, 3) == (
        shown.count('<th scope="col">'),
        shown.count('<th scope="row">'),
        shown.count("<td>"),
    )


def test_a_table_without_rows_is_nothing():
    assert "" == table([], "Nothing")
