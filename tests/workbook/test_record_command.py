"""python -m workbook record: what it prints and writes, what it refuses, and its memory."""

import csv
import json
import os
import subprocess
import sys

import pypdf
import pytest

from solver.own.record import ALWAYS, CHECKS, FIELDS, STATES
from workbook.commands import SET_UP_FOR, main
from workbook.record import PumpFile
from workbook.record.demo import demo_csv
from workbook.record.headings import heading_of
from workbook.start import child

TWO = (
    "Station,Pump,Date,FLA,Amps A,Amps B,Amps C,insulation at 60 s,temp F,kW,flow gpm,TDH (ft),Door\r\n"
    "Tannery Lane,Pump 1,2024-05-01,25,25.5,23,26.5,>2000,77,16.2,476,70,blue\r\n"
    "Tannery Lane,Pump 2,5/1/2024,25,24,ten,25,3,104,,0.7 MGD,70,\r\n"
)


@pytest.fixture
def two(tmp_path):
    path = tmp_path / "pumps.csv"
    path.write_text(TWO, encoding="utf-8")
    return path


@pytest.fixture
def record(tmp_path, monkeypatch, capsys):
    """A function that runs the command as a reader types it, in a folder of its own, without its start."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv(SET_UP_FOR, "requirements.txt")  # what runs the tests has it all
    monkeypatch.setattr(child, "end_on_signals", lambda: None)

    def run(*words):
        try:
            status = main(["record", *map(str, words)])
        except SystemExit as left:
            status = left.code
        said = (text.replace("\r\n", "\n") for text in capsys.readouterr())
        return subprocess.CompletedProcess(words, status, *said)

    return run


def test_a_page_for_each_pump_is_printed_with_its_work_and_its_cautions(record, two):
    done = record(two)
    assert 0 == done.returncode
    first, second = done.stdout.split("Pump-day record: ")[1:]
    assert first.startswith("Tannery Lane, Pump 1, 2024-05-01\n")
    assert "[look into it] current unbalance: 8%" in first
    assert "Limit: up to 5% is good, up to 10% is acceptable" in first
    assert "current unbalance = largest deviation from average amps / average amps × 100%" in first
    assert "insulation at 60 s: over 2,000 megohms" in first
    assert "- Door: blue" in first
    assert "[beyond limit] insulation at 40 °C: 3 megohms" in second
    assert "- amps on leg B: ten (not read)" in second
    for page in (first, second):
        assert ALWAYS in page
        assert "Follow your local codes" in page


def test_what_is_to_be_known_is_told_by_row_and_column_beside_the_pages(record, two):
    told = record(two).stderr
    assert 'Row 1, column “Door”: This record has no reading called "Door".' in told
    assert 'Row 3, column “Amps B”: "ten" has no number in it' in told
    assert 'Row 3, column “Date”: "5/1/2024" could be 2024-05-01 or 2024-01-05.' in told
    assert "2 rows worked. 2 with a note." in told


def test_bare_numbers_are_said_to_count_in_the_units_asked_for(record, tmp_path):
    (tmp_path / "bare.csv").write_text("Pump,Flow,Head (ft),kW\n1,450,62,12\n", encoding="utf-8")
    assert "read in US units: flow by meter in gpm.\n" in record("bare.csv").stderr
    assert (
        "read in metric units: flow by meter in L/s.\n"
        in record("bare.csv", "--units", "si").stderr
    )


def test_the_csv_holds_every_reading_state_and_unread_cell(record, two, tmp_path):
    assert 0 == record(two, "--csv", "out.csv").returncode
    with (tmp_path / "out.csv").open(encoding="utf-8-sig", newline="") as file:
        first, second = csv.DictReader(file)
    assert ("25.5", "8", "look into it") == tuple(
        first[name]
        for name in (
            "amps on leg A (A)",
            "worked: current unbalance (%)",
            "state: current unbalance",
        )
    )
    assert (">2000", "blue") == (first["insulation at 60 s (megohm)"], first["Door"])
    assert ("ten", "not measured") == (
        second["amps on leg B (A)"],
        second["state: current unbalance"],
    )
    assert "beyond limit" == second["state of the record"]
    assert {ALWAYS} == {first["always"], second["always"]}
    assert '"ten" has no number in it' in second["to be known of this row"]


def test_what_was_written_reads_in_again_to_the_same(record, two, tmp_path):
    record(two, "--csv", "one.csv")
    record("one.csv", "--csv", "again.csv")
    with two.open("rb") as a, (tmp_path / "again.csv").open("rb") as b:
        first, again = list(PumpFile(a)), list(PumpFile(b))
    for one, other in zip(first, again, strict=True):
        for part in ("values", "texts", "over", "unread", "others"):
            assert getattr(one.record, part) == getattr(other.record, part)


def test_the_json_holds_everything_at_full_precision(record, two, tmp_path):
    assert 0 == record(two, "--json", "out.json", "--units", "si").returncode
    data = json.loads((tmp_path / "out.json").read_text("utf-8"))
    assert ("si", ALWAYS) == (data["units"], data["always"])
    first, second = data["records"]
    assert 476 * 3.785411784 / 60 == pytest.approx(first["readings"]["flow"]["value"], rel=1e-12)
    assert ["insulation_1min"] == first["at_top_of_range"]
    assert {"amps_b": "ten"} == second["unread"]
    found = {one["name"]: one for one in first["findings"]}
    assert {one["name"] for one in first["findings"]} <= {check.name for check in CHECKS}
    assert {one["state"] for one in first["findings"]} <= set(STATES)
    assert 8 == found["current_unbalance"]["value"]
    assert ["amps_average", "amps_deviation", "current_unbalance"] == [
        step["name"] for step in found["current_unbalance"]["steps"]
    ]
    assert found["current_unbalance"]["source"].startswith("common practice")


def test_pages_go_to_a_folder_with_a_name_for_each_row(record, two, tmp_path):
    assert 0 == record(two, "--out", "pages").returncode
    names = sorted(path.name for path in (tmp_path / "pages").iterdir())
    assert [
        "00002-Tannery-Lane-Pump-1-2024-05-01.txt",
        "00003-Tannery-Lane-Pump-2-5-1-2024.txt",
    ] == names
    assert ALWAYS in (tmp_path / "pages" / names[0]).read_text("utf-8")


def test_a_name_in_the_file_leads_to_no_other_folder(record, tmp_path):
    path = tmp_path / "odd.csv"
    path.write_text('Pump,Flow\n"../../etc/passwd",1\n"C:\\x",2\n"...",3\n', encoding="utf-8")
    assert 0 == record(path, "--out", "pages").returncode
    names = sorted(one.name for one in (tmp_path / "pages").iterdir())
    assert ["00002-etc-passwd.txt", "00003-C-x.txt", "00004-pump.txt"] == names


def test_the_pdf_holds_the_pumps_and_nothing_half_written_is_left(record, two, tmp_path):
    assert 0 == record(two, "--pdf", "out.pdf").returncode
    pages = pypdf.PdfReader(tmp_path / "out.pdf").pages
    text = " ".join(page.extract_text() for page in pages)
    for part in ("Tannery Lane, Pump 1", "Tannery Lane, Pump 2", "Door: blue", "Row 3, column"):
        assert part in text
    assert {"pumps.csv", "out.pdf"} == {path.name for path in tmp_path.iterdir()}


def test_more_pumps_than_a_pdf_holds_are_refused_before_any_is_printed(record, tmp_path):
    rows = "".join(f"Pump {at},450\n" for at in range(101))
    (tmp_path / "many.csv").write_text(f"Pump,Flow (gpm)\n{rows}", encoding="utf-8")
    done = record("many.csv", "--pdf", "out.pdf")
    assert (2, "") == (done.returncode, done.stdout)
    assert "One PDF holds up to 100 pumps and 1,000 rows, and here are more." in done.stderr
    assert ["many.csv"] == [path.name for path in tmp_path.iterdir()]


def test_several_results_come_of_one_reading(record, two, tmp_path):
    done = record(two, "--csv", "a.csv", "--json", "a.json", "--out", "pages")
    assert (0, "") == (done.returncode, done.stdout)
    made = {path.name for path in tmp_path.iterdir()}
    assert {"pumps.csv", "a.csv", "a.json", "pages"} == made  # and nothing half written


@pytest.mark.parametrize("units", ["us", "si"])
def test_the_template_has_every_heading_with_its_unit(record, units):
    (line,) = record("--template", "--units", units).stdout.splitlines()
    assert [heading_of(field, units) for field in FIELDS] == next(csv.reader([line]))


def test_the_demo_is_printed_and_reads_in_again_as_it_stands(record, tmp_path):
    (tmp_path / "demo.csv").write_text(record("--demo").stdout, encoding="utf-8")
    assert demo_csv() == (tmp_path / "demo.csv").read_text("utf-8")
    assert "40 rows worked. 0" in record("demo.csv", "--csv", "out.csv").stderr


@pytest.mark.parametrize(
    ("words", "says"),
    [
        (
            (),
            "Name the CSV file to read. Type --template for an empty one to fill in, or --demo for an example.",
        ),
        (("nowhere.csv",), "nowhere.csv: No such file or directory. Check the name"),
        (
            ("pumps.csv", "--csv", "pumps.csv"),
            "The result would overwrite the file you are reading.",
        ),
        (("pumps.csv", "--csv", "x", "--json", "x"), "Two results have the same name."),
        (("pumps.csv", "--csv", "no/such/place.csv"), "Check the name and the folder."),
        (("prose.csv",), "None of the first rows has a heading this record knows"),
        (("pumps.csv", "--units", "imperial"), "imperial"),
    ],
)
def test_what_cannot_be_done_is_refused_in_one_line_and_changes_nothing(record, two, words, says):
    (two.parent / "prose.csv").write_text("Dear all,\nno numbers yet\n", encoding="utf-8")
    before = {path.name: path.read_bytes() for path in two.parent.iterdir()}
    done = record(*words)
    assert (2, "") == (done.returncode, done.stdout)
    assert says in done.stderr
    assert 1 == done.stderr.count("\n")
    assert before == {path.name: path.read_bytes() for path in two.parent.iterdir()}


def test_ten_times_the_pumps_take_hardly_more_memory(root, tmp_path):
    small, large = (peak(root, tmp_path, count) for count in (200, 2_000))
    assert large < 1.06 * small, (small, large)
    with (tmp_path / "2000.out").open(encoding="utf-8-sig", newline="") as file:
        numbers = [int(row["row"]) for row in csv.DictReader(file)]
    assert list(range(2, 2_002)) == numbers


# Between it and the tests: the peak of a program is never told as less than what started it has.
PEAK = """
import resource, subprocess, sys
subprocess.run(sys.argv[1:], check=True)
print(resource.getrusage(resource.RUSAGE_CHILDREN).ru_maxrss)
"""


def peak(root, tmp_path, count):
    """The most memory that working so many pumps took, in a process of its own."""
    pytest.importorskip("resource", reason="memory of a process is measured on POSIX only")
    source, out = tmp_path / f"{count}.csv", tmp_path / f"{count}.out"
    with source.open("w", encoding="utf-8") as file:
        file.write(TWO.splitlines()[0] + "\n")
        for at in range(count):
            amps = f"{20 + at % 7},{21 + at % 5},{'ten' if at % 50 == 0 else 22}"
            file.write(f"Tannery Lane,Pump {at},2024-05-01,25,{amps},{at % 900},77,16.2,476,70,\n")
    words = [sys.executable, "-m", "workbook", "record", str(source), "--csv", str(out)]
    command = [sys.executable, "-c", PEAK, *words]
    ready = {"PYTHONPATH": str(root), SET_UP_FOR: "requirements.txt"}
    environment = os.environ | ready
    return int(subprocess.run(command, env=environment, capture_output=True, check=True).stdout)
