"""A CSV of pumps, whole or broken: a message for each fault at its row and column, nothing lost."""

import csv
import io
from contextlib import suppress
from dataclasses import dataclass, field

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from solver.own.record import FIELDS, examine, field_named
from solver.units.unit import convert
from workbook.record import NoHeadings, PumpFile
from workbook.record.headings import heading_of
from workbook.record.results import template
from workbook.ui.spreadsheet import as_typed


def opened(data, units="us"):
    data = data.encode() if isinstance(data, str) else data
    return PumpFile(io.BytesIO(data), units)


def read(data, units="us"):
    """The pumps in a file, and all that is said of it."""
    file = opened(data, units)
    pumps = list(file)
    return pumps, [*file.messages, *(message for pump in pumps for message in pump.messages)]


def places(messages):
    return {(message.row, message.column) for message in messages}


# Whole files, as spreadsheets and loggers write them


@pytest.mark.parametrize("units", ["us", "si"])
def test_the_template_is_read_without_a_word(units):
    cells = ["7" if not one.is_text else "" for one in FIELDS]
    cells[0], cells[1] = "Heron Slough", "Pump 1"
    pumps, messages = read(template(units) + ",".join(cells).encode(), units)
    assert [] == messages
    (pump,) = pumps
    assert {one.name: 7.0 for one in FIELDS if not one.is_text} == pump.record.values
    assert {"station": "Heron Slough", "pump": "Pump 1"} == pump.record.texts


PLAIN = "Station,Pump,Flow (gpm),Amps A\r\nQuarry Road,Pump 2,450,25.5\r\n"
SAME = {
    "with line ends of Unix": PLAIN.replace("\r\n", "\n"),
    "with line ends of old Macs": PLAIN.replace("\r\n", "\r"),
    "without an end to the last line": PLAIN.rstrip(),
    "with blank lines": PLAIN.replace("\r\n", "\r\n\r\n,,,\r\n"),
    "with semicolons": PLAIN.replace(",", ";"),
    "with tabs": PLAIN.replace(",", "\t"),
    "with bars": PLAIN.replace(",", "|"),
    "with everything in quotation marks": PLAIN.replace(",", '","')
    .replace("\r\n", '"\r\n"')[:-1]
    .join(['"', ""]),
    "with a mark of UTF-8": ("\ufeff" + PLAIN).encode(),
    "in UTF-16": PLAIN.encode("utf-16"),
    "with a line for the separator": "sep=;\n" + PLAIN.replace(",", ";"),
    "with a heading over two lines": PLAIN.replace("Flow (gpm)", '"Flow\n(gpm)"'),
    "with spaces about the cells": PLAIN.replace(",", "  ,  "),
}


@pytest.mark.parametrize("data", SAME.values(), ids=SAME)
def test_a_file_is_read_as_well(data):
    pumps, messages = read(data)
    assert [] == messages
    (pump,) = pumps
    assert {"flow": 450.0, "amps_a": 25.5} == pump.record.values
    assert {"station": "Quarry Road", "pump": "Pump 2"} == pump.record.texts


@pytest.mark.parametrize(
    ("heading", "name", "value"),
    [
        ("Flow", "flow", 10),
        ("FLOW (L/s)", "flow", convert(10, "L/s", "gpm")),
        ("flow, MGD", "flow", convert(10, "MGD", "gpm")),
        ("Flow [m³/h]", "flow", convert(10, "m3/h", "gpm")),
        ("flow_gpm", "flow", 10),
        ("Flow rate gpm", "flow", 10),
        ("flow: gal per min", "flow", 10),
        ("FLA", "full_load_amps", 10),
        ("Amps L1", "amps_a", 10),
        ("Volts L1-L2", "volts_ab", 10),
        ("volts A-B", "volts_ab", 10),
        ("temp F", "winding_temperature", convert(10, "°F", "°C")),
        ("Megohms at 60 s", "insulation_1min", 10),
        ("insulation at 1 min (GΩ)", "insulation_1min", 10_000),
        ("Amps on leg B, rolled twice (A)", "amps_b_3", 10),
        ("level drop (in)", "drawdown_level", 10 / 12),
        ("price ($)", "energy_price", 10),
        ("price (cents/kWh)", "energy_price", 0.1),
        ("Discharge pressure (bar)", "discharge_gauge", convert(10, "bar", "psi")),
        ("hours run", "run_time", 10),
        ("motor_efficiency", "motor_efficiency", 10),
    ],
)
def test_headings_are_known_in_many_spellings_and_may_say_the_unit(heading, name, value):
    quoted = f'"{heading}"' if "," in heading else heading
    pumps, messages = read(f"Pump,{quoted}\nPump 1,10\n")
    assert [] == messages
    assert {name} == pumps[0].record.values.keys()
    assert value == pytest.approx(pumps[0].record.values[name])


def test_a_unit_in_the_cell_goes_before_the_one_in_the_heading():
    pumps, _ = read("Pump,Flow (gpm)\n1,0.648 MGD\n")
    assert 450 == pytest.approx(pumps[0].record.values["flow"])


def test_commas_are_decimal_marks_where_semicolons_part_the_cells():
    pumps, messages = read("Pump;Flow (L/s);Head (m)\n1;12,5;0,125\n2;1,25 L/s;3\n", "si")
    assert [{"flow": 12.5, "head": 0.125}, {"flow": 1.25, "head": 3}] == [
        p.record.values for p in pumps
    ]
    (said,) = messages
    assert 'Commas are decimal points here: "12,5" is read as "12.5"' in said.says


def test_a_comma_that_may_be_either_is_not_guessed_at():
    pumps, (said,) = read("Pump;Flow (L/s)\n1;1,250\n", "si")
    assert {"flow": "1,250"} == pumps[0].record.unread
    assert "could have a decimal comma or a thousands comma" in said.says


def test_results_written_here_are_worked_anew_and_not_read():
    pumps, (said,) = read("row,pump,flow (gpm),worked: flow (gpm),state: flow\n2,Pump 1,450,9,x\n")
    assert ({"flow": 450.0}, {}) == (pumps[0].record.values, pumps[0].record.others)
    assert "calculated again" in said.says


def test_a_column_of_ones_own_called_row_is_kept():
    pumps, _ = read("row,pump,flow\n9,Pump 1,450\n")
    assert {"row": "9"} == pumps[0].record.others


# Files that cannot be used


@pytest.mark.parametrize(
    ("data", "says"),
    [
        ("", "The file is empty"),
        ("\n\n , \n", "The file is empty|None of the first rows"),
        ("\ufeff", "The file is empty"),
        ("hello\nworld\n", 'The file begins with "hello"'),
        ("1,2,3\n4,5,6\n", 'The file begins with "1,2,3"'),
        (b"\x00\x01\x02\xff" * 50, "None of the first rows"),
        (b"PK\x03\x04" + bytes(range(256)) * 20, "None of the first rows"),
    ],
    ids=["empty", "blank", "only a mark", "prose", "numbers", "bytes", "a workbook"],
)
def test_a_file_without_headings_is_refused_with_what_to_type(data, says):
    with pytest.raises(NoHeadings, match=f"({says}).*record --template"):
        opened(data)


# Broken files: faults put into a whole file, each with the place where it must be told

KINDS = (
    "station",
    "pump",
    "date",
    "notes",
    "insulation_class",
    "amps_a",
    "amps_b",
    "flow",
    "head",
    "insulation_1min",
    "input_power",
)
UNREADABLE = ("ten", "12 lb", "1 2", "∞", "1e99", "5 gpm gpm", "1.2.3", "0x10", "#REF!", "3 1/0")
SAID_OTHERWISE = {"12 lb": "lb is a mass"}  # the others are quoted
WORDS = st.text("bcdfgh XYZ_äß", min_size=1, max_size=12).filter(lambda text: len(text.strip()) > 1)


@dataclass
class Sheet:
    """A table to be broken. `told` has the place of each message that must come: a row, a heading."""

    names: list[str]
    headings: list[str]
    rows: list[list[str]]
    raw: dict[int, bytes] = field(default_factory=dict)
    long: set[int] = field(default_factory=set)
    told: list[tuple[object, str, str]] = field(default_factory=list)
    kept: list[tuple[int, str]] = field(default_factory=list)
    before: bool = False
    blank: set[int] = field(default_factory=set)
    separator: str = ","
    newline: str = "\n"

    def number(self, row) -> int:
        """The row as a spreadsheet counts: the headings are row "head"."""
        before = 1 + self.before
        if row == "before":
            return 1
        if row == "head":
            return before
        return before + 1 + row + sum(blank <= row for blank in self.blank)

    def data(self) -> bytes:
        lines = [b"Report of the year"] * self.before + [self._line(self.headings)]
        for at, row in enumerate(self.rows):
            lines += [b""] * (at in self.blank) + [self.raw.get(at) or self._line(row)]
        return self.newline.encode().join(lines) + self.newline.encode()

    def _line(self, cells) -> bytes:
        text = io.StringIO()
        csv.writer(text, delimiter=self.separator, lineterminator="").writerow(cells)
        return text.getvalue().encode()


@st.composite
def sheets(draw):
    names = draw(st.lists(st.sampled_from(KINDS[4:]), min_size=2, unique=True))
    names = ["station", "pump", *names, "date", "notes"]
    headings = [heading_of(field_named(name), "us") for name in names]
    rows = [[draw(valid(name)) for name in names] for _ in range(draw(st.integers(2, 5)))]
    return Sheet(
        names, headings, rows,
        separator=draw(st.sampled_from([",", ";", "\t"])),
        newline=draw(st.sampled_from(["\n", "\r\n", "\r"])),
    )  # fmt: skip


def valid(name):
    if name in ("station", "pump"):
        return st.sampled_from(["Pump 1", "Quarry Road", "P-7", "Nähe Wehr"])
    if name == "notes":
        return WORDS.map(str.strip) | st.just("")
    if name == "date":
        return st.sampled_from(["2024-05-01", "1 May 2024", ""])
    if name == "insulation_class":
        return st.sampled_from(["A", "class F", "h", ""])
    return st.floats(1, 90).map(lambda value: f"{value:.3g}") | st.just("")


NUMERIC = ("amps_a", "amps_b", "flow", "head", "insulation_1min", "input_power")


def cell_fault(sheet, draw, row, name, text, says):
    at = sheet.names.index(name)
    sheet.rows[row][at] = text
    sheet.told.append((row, sheet.headings[at], says))


def unreadable(sheet, draw, row):
    name = draw(st.sampled_from([n for n in NUMERIC if n in sheet.names] or ["date"]))
    if name == "date":
        cell_fault(sheet, draw, row, name, "Monday", "isn't a date")
        return
    text = draw(st.sampled_from(UNREADABLE))
    cell_fault(sheet, draw, row, name, text, SAID_OTHERWISE.get(text, f'"{text}"'))


def over_range(sheet, draw, row):
    if "insulation_1min" in sheet.names:
        cell_fault(sheet, draw, row, "insulation_1min", ">2000", "top of the tester's range")


def no_choice(sheet, draw, row):
    if "insulation_class" in sheet.names:
        cell_fault(sheet, draw, row, "insulation_class", "Z", "Type A, B, F or H")


def unclear_date(sheet, draw, row):
    cell_fault(sheet, draw, row, "date", "5/1/2024", "Type the year first")


def nameless(sheet, draw, row):
    sheet.rows[row][0] = sheet.rows[row][1] = ""
    sheet.rows[row][2] = sheet.rows[row][2] or valid_now(sheet, 2)
    sheet.told.append((row, "", "doesn't name a pump"))


def valid_now(sheet, at):
    return "F" if sheet.names[at] == "insulation_class" else "7"


def cell_too_many(sheet, draw, row):
    sheet.rows[row] = [*sheet.rows[row], "extra"]
    sheet.told.append((row, f"column {len(sheet.rows[row])}", "has no heading"))


def ends_early(sheet, draw, row):
    sheet.rows[row] = sheet.rows[row][:-1]
    sheet.told.append((row, "", "ends early"))


def wrong_letter(sheet, draw, row):
    sheet.rows[row][0] = "Köln"
    sheet.raw[row] = sheet._line(sheet.rows[row]).decode().encode("cp1252", "replace")
    sheet.told.append((row, "", "isn't UTF-8"))


def open_quote(sheet, draw, row):
    sheet.rows[row][0] = '"8 in'
    plain = sheet.separator.join(sheet.rows[row])
    sheet.raw[row] = plain.encode()
    sheet.told.append((row, "", "quotation mark"))


def endless(sheet, draw, row):
    sheet.rows[row][-1] = "x" * 60_000
    sheet.long.add(row)
    sheet.told.append((row, "", "characters long"))


ROW_FAULTS = (
    unreadable,
    over_range,
    no_choice,
    unclear_date,
    nameless,
    cell_too_many,
    ends_early,
    wrong_letter,
    open_quote,
    endless,
)


def unknown_column(sheet, draw):
    put_column(
        sheet, draw, "Colour of the door", "Colour of the door", "This record has no reading called"
    )


def unit_of_another_kind(sheet, draw):
    put_column(sheet, draw, "Poles (psi)", "Poles (psi)", "psi is a pressure")


def unit_not_known(sheet, draw):
    put_column(sheet, draw, "Rated flow (barleycorns)", "Rated flow (barleycorns)", "isn't a unit")


def twice(sheet, draw):
    heading = sheet.headings[1]
    put_column(
        sheet, draw, heading, f"{heading} (column {len(sheet.headings) + 1})", "That one is read"
    )


def put_column(sheet, draw, heading, name, says):
    if heading in sheet.headings[2:] or heading in [n for _, n, _ in sheet.told]:
        return
    if sheet.headings.count(heading) > 1:
        return
    sheet.headings.append(heading)
    sheet.told.append(("head", name, says))
    for at, row in enumerate(sheet.rows):
        row.append("kept text")
        sheet.kept.append((at, name))


COLUMN_FAULTS = (unknown_column, unit_of_another_kind, unit_not_known, twice)


@st.composite
def broken(draw):
    """A sheet with faults in some rows, in some columns, and about the whole."""
    sheet = draw(sheets())
    for fault in draw(st.lists(st.sampled_from(COLUMN_FAULTS), unique=True, max_size=3)):
        fault(sheet, draw)
    rows = draw(st.lists(st.integers(0, len(sheet.rows) - 1), unique=True, min_size=1))
    for row in rows:
        draw(st.sampled_from(ROW_FAULTS))(sheet, draw, row)
    if draw(st.booleans()):
        sheet.before = True
        sheet.told.append(("before", "", "before the headings"))
    sheet.blank = set(draw(st.lists(st.integers(0, len(sheet.rows) - 1), max_size=2)))
    return sheet


@given(broken())
@settings(max_examples=500, suppress_health_check=[HealthCheck.too_slow])
def test_every_fault_is_told_at_its_place_and_nothing_is_lost(sheet):
    pumps, messages = read(sheet.data())
    expected = {(sheet.number(row), name): says for row, name, says in sheet.told}
    long = {sheet.number(row) for row in sheet.long}
    for (row, name), says in expected.items():
        said = [m.says for m in messages if (m.row, m.column) == (row, name)]
        assert any(says in text for text in said), (row, name, says, said)
    extra = {place for place in places(messages) - set(expected) if place[0] not in long}
    assert set() == extra  # nothing is told that is no fault
    numbers = [sheet.number(at) for at, row in enumerate(sheet.rows) if any(c.strip() for c in row)]
    assert numbers == [pump.row for pump in pumps]
    by_row = {pump.row: pump for pump in pumps}
    for at, row in enumerate(sheet.rows):
        if at not in sheet.long and any(row):
            keeps_all(by_row[sheet.number(at)].record, row)


def keeps_all(record, cells):
    """Every cell is a reading, or a text, or kept as it was typed."""
    kept = {*record.texts.values(), *record.unread.values(), *record.others.values()}
    kept = {" ".join(text.split()) for text in kept}
    values = {f"{value:.3g}" for value in record.values.values()}
    choices = {"class F": "F", "h": "H"}
    for cell in cells:
        plain = " ".join(choices.get(cell, cell).split())
        number = f"{float(plain):.3g}" if plain.replace(".", "", 1).isdigit() else plain
        assert not plain or plain in kept or number in values or plain == ">2000", cell


@given(broken(), st.sampled_from(["us", "si"]))
@settings(max_examples=100, suppress_health_check=[HealthCheck.too_slow])
def test_what_is_left_of_a_broken_file_is_worked(sheet, units):
    for pump in opened(sheet.data(), units):
        assert examine(pump.record).always


# Anything at all


@given(
    st.binary(max_size=400)
    | st.text(max_size=200).map(lambda text: text.encode("utf-8", "replace"))
)
@settings(max_examples=300)
def test_any_bytes_are_read_or_refused(data):
    with suppress(NoHeadings):
        pumps, messages = read(data)
        assert all(str(message).endswith(".") for message in messages)
        assert all(pump.row > 0 for pump in pumps)


@given(st.binary(max_size=400))
@settings(max_examples=300)
def test_any_bytes_under_good_headings_are_kept_or_told(data):
    head = b"Pump,Flow (gpm),Notes\n"
    pumps, _ = read(head + data)
    for pump in pumps:
        record = pump.record
        told = [m for m in pump.messages if m.row == pump.row]
        held = [*record.texts.values(), *record.unread.values(), *record.others.values()]
        assert held or record.values or told
        examine(record)


CELLS = st.text(
    st.characters(blacklist_characters='",;|\t\r\n\x00', blacklist_categories=["Cs"]), max_size=20
)


@given(st.lists(st.lists(CELLS, min_size=1, max_size=6), min_size=1, max_size=5))
@settings(max_examples=200)
def test_every_cell_of_any_text_is_kept(rows):
    lines = [",".join(row) for row in rows]
    pumps, _ = read("Pump,Flow (gpm),Notes\n" + "\n".join(lines))
    written = [row for row in rows if any(cell.strip() for cell in row)]
    assert len(written) == len(pumps)
    nothing = ("", "-", "--", "—", "n/a", "na", "none", "not measured", "not taken")
    for row, pump in zip(written, pumps, strict=True):
        record = pump.record
        held = {
            text.strip()
            for text in (*record.texts.values(), *record.unread.values(), *record.others.values())
        }
        for at, cell in enumerate(row):
            text = as_typed(cell).strip()
            assert (
                text in held or text.casefold() in nothing or (at == 1 and "flow" in record.values)
            )


# Faults that one test each is enough for


def test_two_open_quotation_marks_do_not_swallow_the_rows_between():
    pumps, messages = read('Pump,Flow,Notes\n"1,450,a\n2,451,b\n3,452,c\n"4,453,d\n')
    assert [450, 451, 452, 453] == [pump.record.values["flow"] for pump in pumps]
    assert {(2, ""), (5, "")} == places(messages)


def test_a_note_over_several_lines_is_one_cell():
    pumps, messages = read('Pump,Flow,Notes\n1,450,"one\ntwo\nthree"\n2,451,x\n')
    assert ["one\ntwo\nthree", "x"] == [pump.record.texts["notes"] for pump in pumps]
    assert [] == messages


def test_a_mark_for_inches_in_a_cell_is_no_quotation_mark():
    pumps, messages = read('Pump,Level drop\n1,18"\n2,18 in\n')
    assert [1.5, 1.5] == pytest.approx([pump.record.values["drawdown_level"] for pump in pumps])
    assert [] == messages


def test_a_line_without_end_is_read_as_far_as_it_goes_and_the_next_is_whole():
    pumps, messages = read("Pump,Notes,Flow\n1," + "x" * 3_000_000 + ",5\n2,y,451\n")
    assert {"flow": 451.0} == pumps[1].record.values
    assert any("3,000,004 characters long" in message.says for message in messages)


def test_a_near_miss_of_a_heading_is_answered_with_the_heading():
    _, messages = read("Pump,Flow,Amsp on leg A\n1,2,3\n")
    assert "Did you mean “amps on leg A”?" in messages[0].says


def test_a_file_that_does_not_say_its_coding_is_told_how_it_is_read():
    pumps, (said,) = read("Pump,Flow\nPump 1,450\n".encode("utf-16-le"))
    assert {"flow": 450.0} == pumps[0].record.values
    assert "It was read as UTF-16" in said.says


def test_a_file_in_which_nobody_is_named_is_told_so_once():
    _, messages = read("Flow,Head\n450,62\n451,63\n")
    assert ["No column gives the pump or its station."] == [message.says for message in messages]
