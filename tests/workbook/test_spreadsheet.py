"""One writer for every CSV: nothing typed becomes a formula, and all reads back as it was typed."""

import ast
import csv
import io
from argparse import Namespace
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from solver.own.record import examine
from workbook.record import PumpFile
from workbook.record.command import run
from workbook.record.results import as_csv, template
from workbook.trainer.course import Course, Person, keep_people, read_people
from workbook.ui.spreadsheet import as_typed, csv_of, harmless

LIVE = ("=1+1", "+1-1", "-1 ft", "@sum", "\t1", "\r1", "＝1", "＠a", " =1", "'=1", "''=1", "\x00=1")
CUT_AGAIN = ("\t=1", "\r=1", "\n@a", "x;=1+1", "x\t=1+1", "x|@sum", "x\r\n=1+1", "x; ;+1;")
NUMBERS = ("-3.2", "+7", "-.5", "-1e-05", "12.", "0")
PLAIN = ("a = b", "x-1", "the pump's", "'quoted'", "12;3", "a\tb", "Pump 2 - new", "")
PIECES = st.text("=+-@'＝;|\t\r\n \x0b\x001.ea", max_size=12)
FOREIGN = {"": ",", "semicolons": ";", "tabs": "\t", "bars": "|"}


def is_live(cell):
    """Whether a spreadsheet would work it, told in another way than by the writer's own rule."""
    try:
        float(cell)
    except ValueError:
        return cell[:1] in set("\t\r\n") or cell.strip("\x00 \t\r\n\x0b")[:1] in set("=+-@＝＋－＠")
    return False


def cells_of(data):
    return list(csv.reader(io.StringIO(data.decode("utf-8-sig"), newline="")))


def alive(data, separator=","):
    """The live cells that a spreadsheet finds which parts cells by this, and knows no quotes."""
    if separator == ",":
        return [cell for row in cells_of(data) for cell in row if is_live(cell)]
    text = (
        data.decode("utf-8-sig").replace("\r\n", "\n").replace("\r", "\n").replace("\n", separator)
    )
    return [cell for cell in text.split(separator) if cell.strip() and is_live(cell)]


@pytest.mark.parametrize("text", LIVE)
def test_what_would_be_a_formula_has_an_apostrophe_before_it(text):
    assert f"'{text}" == harmless(text)
    assert not is_live(harmless(text))


@pytest.mark.parametrize("text", NUMBERS + PLAIN)
def test_a_number_and_a_plain_text_stay_as_they_are(text):
    assert text == harmless(text) == as_typed(text)


@given(PIECES | st.text(max_size=20))
def test_whatever_was_typed_comes_back_from_its_cell(text):
    assert text == as_typed(harmless(text))
    assert not is_live(harmless(text))


@pytest.mark.parametrize("separator", FOREIGN.values(), ids=FOREIGN)
def test_nothing_comes_alive_where_a_spreadsheet_parts_the_cells_otherwise(separator):
    data = csv_of([["who", "says"], *([text, 1] for text in CUT_AGAIN)])
    assert [] == alive(data, separator)
    assert list(CUT_AGAIN) == [as_typed(row[0]) for row in cells_of(data)[1:]]


# A record that somebody wrote to do harm

HOSTILE = {
    "Station": "=cmd|' /C calc'!A0",
    "Pump": "@SUM(A1:A9)",
    "Date": "=TODAY()",
    "Notes": '-2+3+cmd|"x"',
    "Insulation class": "+F",
    "Flow (gpm)": "-450 gpm gpm",
    "Amps A (A)": "=25",
    "Head (ft)": "@7",
    "Seat": "-3.2",
    "=HYPERLINK(1)": "\t=1",
    "+more": "'=1",
}


@pytest.fixture
def hostile():
    text = io.StringIO(newline="")
    csv.writer(text).writerows([HOSTILE, HOSTILE.values()])  # as another program writes it
    return text.getvalue().encode()


def pump_in(data):
    (pump,) = PumpFile(io.BytesIO(data))
    return pump


def held(pump):
    """All that a record holds of what was typed."""
    record = pump.record
    others = {name: text for name, text in record.others.items() if name != "kept besides"}
    return dict(record.texts), dict(record.values), dict(record.unread), others


def test_a_hostile_record_saved_from_the_page_has_no_live_cell_and_reads_back_as_it_was(hostile):
    assert len(alive(hostile)) > 9
    pump = pump_in(hostile)
    data = as_csv(pump, examine(pump.record))
    assert [] == alive(data)
    assert held(pump) == held(pump_in(data))
    assert "-3.2" == dict(zip(*cells_of(data), strict=True))["Seat"]


def test_a_hostile_record_from_the_command_has_none_either(hostile, tmp_path, capsys):
    source, out = tmp_path / "in.csv", tmp_path / "out.csv"
    source.write_bytes(hostile)
    options = {"template": False, "demo": False, "file": source, "csv": out, "units": "us"}
    assert 0 == run(Namespace(**options, json=None, pdf=None, out=None))
    assert [] == alive(out.read_bytes())
    assert held(pump_in(hostile)) == held(pump_in(out.read_bytes()))


@pytest.mark.parametrize("units", ["us", "si"])
def test_the_empty_file_with_headings_has_no_live_cell(units):
    assert [] == alive(template(units) + b"\r\n")


def test_a_name_in_a_class_that_begins_like_a_formula_comes_back_from_its_list(tmp_path):
    people = [Person("ana.r", "=1+1", "-Reyes", "@ana"), Person("bo", "Bo")]
    path = keep_people(Course(tmp_path, "Pumps", tmp_path / "gradebook.db"), people)
    assert [] == alive(path.read_bytes())
    assert people == read_people(path)


# No other writer

WRITERS = {"writer", "DictWriter"}


def other_writers(text):
    """The lines of a program at which it writes CSV by itself: by a library, or cells joined."""
    found = []
    for node in ast.walk(ast.parse(text)):
        called = node.func if isinstance(node, ast.Call) else None
        if isinstance(node, ast.ImportFrom) and node.module == "csv":
            found += [node.lineno for name in node.names if name.name in WRITERS | {"*"}]
        elif isinstance(node, ast.Attribute):
            of_csv = isinstance(node.value, ast.Name) and "csv" in node.value.id
            if node.attr in ("to_csv", "savetxt") or (of_csv and node.attr in WRITERS):
                found.append(node.lineno)
        elif isinstance(called, ast.Attribute) and called.attr == "join":
            between = called.value
            if isinstance(between, ast.Constant) and between.value in (",", ";", "\t", '","'):
                found.append(node.lineno)
    return found


@pytest.mark.parametrize(
    "text",
    [
        "import csv\ncsv.writer(file)",
        "import csv as csv_\nwrite = csv_.DictWriter",
        "from csv import writer as w",
        "frame.to_csv(path)",
        "numpy.savetxt(path, rows)",
        "print(','.join(row))",
        "'\\t'.join(row)",
    ],
)
def test_another_writer_would_be_found(text):
    assert other_writers(text)


def test_no_program_writes_csv_but_by_the_one_writer(root):
    found = {
        f"{path.relative_to(root)}:{line}"
        for folder in ("workbook", "solver", ".ci")
        for path in Path(root / folder).rglob("*")
        if path.suffix in (".py", "") and path.is_file() and is_python(path)
        for line in other_writers(path.read_text("utf-8"))
    }
    assert {"workbook/ui/spreadsheet.py"} == {place.partition(":")[0] for place in found}


def is_python(path):
    return path.suffix == ".py" or b"python" in path.read_bytes().partition(b"\n")[0]
