"""A file of many pumps on the page: what is read, what is refused, what is kept and shown."""

import csv
import json
import re
import sys
from base64 import b64decode
from datetime import UTC, datetime
from html import unescape
from io import BytesIO, StringIO

import pytest
from pypdf import PdfReader

from solver.own.record import CHECKS, examine
from tests.workbook.said import words
from workbook import page
from workbook.record import PumpFile
from workbook.record.demo import FAULTS, TASK, demo_csv
from workbook.record.fleet import MOST_BYTES, MOST_ROWS, BadFile, Fleet
from workbook.record.keep import file_name
from workbook.record.results import as_csv, as_json

TWO = (
    b"Station,Pump,Date,FLA,Amps A,Amps B,Amps C,Flow (gpm)\r\n"
    b"Tannery Lane,Pump 1,2023-05-01,25,25.5,23,26.5,450\r\n"
    b"Tannery Lane,Pump 1,2024-05-01,25,24,24,25,ten\r\n"
    b"Tannery Lane,2,,25,24,24,25,440\r\n"
)


def uploaded(data, name="pumps.csv", panel=None):
    """The panel after a file was chosen."""
    panel = panel or page.plant()
    panel.upload.value = (
        {"name": name, "type": "text/csv", "size": len(data), "content": memoryview(data),
         "last_modified": datetime(2024, 5, 1, tzinfo=UTC)},
    )  # fmt: skip
    return panel


@pytest.fixture
def example():
    panel = page.plant()
    panel.example.click()
    return panel


def saved(html):
    """Each file that a link holds: its name, and what is in it."""
    found = re.findall(r'download="([^"]*)" href="data:[^;]*;base64,([^"]*)"', html)
    return {unescape(name): b64decode(data) for name, data in found}


# Which pumps and which days


def test_pumps_and_days_are_listed_the_newest_day_first():
    fleet = Fleet(TWO)
    assert ["Tannery Lane, Pump 1", "Tannery Lane, pump 2"] == [name for name, _ in fleet.pumps]
    first, second = (key for _, key in fleet.pumps)
    assert [("2024-05-01", 3), ("2023-05-01", 2)] == fleet.days(first)
    assert [("no date", 4)] == fleet.days(second)


def test_two_days_of_one_date_are_told_apart_by_their_row():
    rows = b"Pump,Date,kW\n1,2024-05-01,10\n1,2024-05-01,11\n"
    fleet = Fleet(rows)
    key = fleet.pumps[0][1]
    assert ["2024-05-01, row 2", "2024-05-01, row 3"] == [name for name, _ in fleet.days(key)]
    assert 11 == fleet.day(key, 3).record.values["input_power"]


def test_the_day_chosen_is_worked_and_what_is_to_be_known_of_its_row_is_said():
    panel = uploaded(TWO)
    assert "Tannery Lane, Pump 1, 2024-05-01" in words(panel.outcome.result.value)
    assert 'Row 3, column “Flow (gpm)”: "ten" has no number in it' in words(
        panel.outcome.result.value
    )
    panel.day.value = 2
    assert "The current unbalance is 8%, over 5%." in words(panel.outcome.result.value)
    panel.pump.index = 1
    assert "Tannery Lane, pump 2, no date" in words(panel.outcome.result.value)


def test_messages_are_told_by_row_and_column_and_the_rest_is_read():
    panel = uploaded(TWO)
    told = words(panel.said.value)
    assert "“pumps.csv”: 2 pumps, 3 days." in told
    assert "1 note on this file. Everything else was read." in told
    assert "Row 3, column “Flow (gpm)”:" in told


def test_more_messages_than_a_screen_holds_are_there_to_open():
    rows = b"Pump,kW\n" + b"1,ten\n" * 30
    told = uploaded(rows).said.value
    assert "<summary>And 10 more</summary>" in told
    assert 30 == told.count("<li>")


# What is refused


@pytest.mark.parametrize(
    ("data", "why"),
    [
        (b"", "The file is empty."),
        (b"\x89PNG\r\n\x1a\n\x00\x00", "None of the first rows has a heading this record knows."),
        (b"Pump,kW\n", "The file has headings but no rows under them."),
        (b"Pump,kW\n" + b" " * MOST_BYTES, "The file is 2.0 MB, and this page takes up to 2 MB."),
    ],
)
def test_a_file_that_cannot_be_read_says_why_and_the_one_before_stays(data, why):
    panel = uploaded(TWO)
    uploaded(data, "other.csv", panel)
    told = words(panel.said.value)
    assert "“other.csv” couldn't be read." in told
    assert why in told
    assert "The file you had before is still open." in told
    panel.pump.index = 1
    assert "Tannery Lane, pump 2" in words(panel.outcome.result.value)


def test_a_file_one_byte_over_the_bound_is_refused_and_one_at_it_is_read():
    row = b"Pump,kW\n1,10\n"
    assert 1 == Fleet(row.ljust(MOST_BYTES, b"\n")).rows
    with pytest.raises(BadFile, match="takes up to 2 MB"):
        Fleet(row.ljust(MOST_BYTES + 1, b"\n"))


def test_no_more_rows_are_read_than_the_bound_and_it_is_said():
    fleet = Fleet(b"Pump,kW\n" + b"1,10\n" * (MOST_ROWS + 5))
    assert MOST_ROWS == fleet.rows
    assert ["Only the first 5,000 rows were read."] == [str(m)[:36] for m in fleet.messages]


@pytest.mark.parametrize("text", [b"<script>alert(1)</script>", b'"""><img src=x onerror=a>"'])
def test_nothing_of_a_file_reaches_the_page_as_html(text):
    rows = b"Pump,Station,Date,kW,%s\n%s,%s,%s,%s,%s\n" % ((text,) * 6)
    panel = uploaded(rows, "<img src=x>.csv")
    shown = panel.outcome.result.value + panel.said.value + panel.outcome.keep.links.value
    assert "<script" not in shown
    assert "<img" not in shown


# Nothing is lost


def test_a_change_of_units_works_the_same_day_in_the_other_units():
    panel = uploaded(TWO)
    panel.day.value = 2
    panel.units.value = "si"
    assert 2 == panel.day.value
    assert "si" == panel.outcome.examined.record.units
    # 1 gpm = 0.063 090 2 L/s (NIST SP 811, B.8)
    assert pytest.approx(450 * 0.0630902, rel=1e-6) == panel.outcome.examined.record.values["flow"]


# What is kept


@pytest.fixture
def kept():
    pump = next(iter(PumpFile(BytesIO(TWO))))
    return pump, examine(pump.record)


def test_the_csv_of_a_record_has_its_readings_and_every_check_and_reads_in_again(kept):
    data = as_csv(*kept)
    heads, row = csv.reader(StringIO(data.decode("utf-8-sig")))
    cells = dict(zip(heads, row, strict=True))
    assert {f"state: {check.label('us')}" for check in CHECKS} <= set(heads)
    assert "look into it" == cells["state: current unbalance"]
    assert kept[0].record.values == next(iter(PumpFile(BytesIO(data)))).record.values


def test_the_json_of_a_record_has_every_finding_and_says_what_it_is_not(kept):
    whole = json.loads(as_json(*kept))
    assert "never replaces a qualified person" in whole["always"]
    (record,) = whole["records"]
    found = {one["name"]: one for one in record["findings"]}
    assert pytest.approx(8) == found["current_unbalance"]["value"]


def test_links_hold_the_files_under_plain_names(kept):
    panel = uploaded(TWO)
    panel.day.value = 2
    name = "pump-day-Tannery-Lane-Pump-1-2023-05-01"
    files = saved(panel.outcome.keep.links.value)
    assert {f"{name}.csv", f"{name}.json"} <= set(files)
    assert as_csv(*kept) == files[f"{name}.csv"]
    assert f"{name}.csv" == file_name(kept[0], "csv")


def test_the_pdf_has_the_day_that_is_shown_in_full_and_no_later_one():
    pytest.importorskip("typst")
    panel = uploaded(TWO.replace(b"ten", b"450"))
    panel.day.value = 2
    panel.outcome.keep.make.click()
    ((name, data),) = saved(panel.outcome.keep.pdf.value).items()
    assert "pump-day-Tannery-Lane-Pump-1-2023-05-01.pdf" == name
    text = " ".join(page.extract_text() for page in PdfReader(BytesIO(data)).pages)
    assert "2023-05-01" in text
    assert "The current unbalance is 8%" in " ".join(text.split())
    assert "2024-05-01" not in text


def test_another_record_takes_the_pdf_of_the_one_before_away():
    pytest.importorskip("typst")
    panel = uploaded(TWO)
    panel.outcome.keep.make.click()
    panel.day.value = 2
    assert "" == panel.outcome.keep.pdf.value


def test_where_no_pdf_can_be_made_it_is_said_what_to_do(monkeypatch):
    monkeypatch.setitem(sys.modules, "typst", None)
    panel = uploaded(TWO)
    panel.outcome.keep.make.click()
    assert "A PDF needs the package typst" in words(panel.outcome.keep.pdf.value)


def test_an_empty_file_with_every_heading_is_offered_in_the_chosen_units():
    panel = page.plant()
    panel.units.value = "si"
    (data,) = saved(panel.template.value).values()
    assert "flow by meter (L/s)" in data.decode("utf-8-sig")


# The example plant


def test_the_example_plant_opens_with_its_pumps_its_task_and_its_trends(example):
    assert 8 == len(example.pump.options)
    assert 5 == len(example.day.options)
    assert TASK in words(example.task.value)
    assert "Over the years" in words(example.outcome.trends.value)
    assert len(demo_csv()) > MOST_ROWS


def test_its_faults_are_shown_only_when_they_are_asked_for(example):
    shown = example.answers.value + example.task.value + example.outcome.result.value
    assert all(fault.title not in unescape(shown) for fault in FAULTS)
    example.reveal.click()
    for fault in FAULTS:
        assert f"{fault.station}, {fault.pump}: {fault.title}" in words(example.answers.value)


def test_another_file_takes_the_task_away(example):
    uploaded(TWO, panel=example)
    assert "none" == example.hunt.layout.display


# The whole plant


def test_a_plant_is_on_one_screen_its_pumps_by_checks_by_days(example):
    html = example.plant.value
    for name, _ in example.fleet.pumps:
        assert f'<th scope="row">{name}</th>' in html
    for label in ("Current unbalance", "Winding resistance unbalance", "Wire-to-water efficiency"):
        assert f'<th scope="col">{label}</th>' in html


def test_a_cell_has_a_mark_for_each_day_the_newest_value_and_the_same_in_words():
    told = words(uploaded(TWO).plant.value)
    said = "current unbalance: 2023-05-01: look into it, 8%; 2024-05-01: within limit, 2.74%"
    assert f"! ✓ 2.74% {said}" in told


def test_what_was_never_checked_has_no_column_and_a_file_without_checks_no_table():
    assert "Polarization index" not in uploaded(TWO).plant.value
    assert "" == uploaded(b"Station,Pump,Date\nA,1,2024-05-01\n").plant.value
