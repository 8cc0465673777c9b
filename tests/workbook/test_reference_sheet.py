"""The formula sheet on paper: what stands on it, its pages, its letters, its command."""

import json
from collections import Counter
from io import BytesIO

import pytest
import typst
from pypdf import PdfReader

from solver.render.print import formula_marked
from solver.topics.formulas import FORMULAS
from solver.units.unit import find_unit
from workbook.commands import main
from workbook.reference.formulas import by_chapter
from workbook.reference.reference_panel import ReferencePanel
from workbook.reference.sheet import (
    CONVERSIONS,
    MOST_PAGES,
    TEMPLATE,
    NoChapter,
    laid_out,
    sheet_of,
)
from workbook.ui.chapter import formulas_of
from workbook.ui.printing import CannotPrint

SYSTEMS = ["us", "si"]
ALL = tuple(by_chapter())
LEAST = 8  # points
PAPERS = {"us": (612, 792), "si": (595.28, 841.89)}  # letter, and A4 by ISO 216, in points


def read(sheet):
    return PdfReader(BytesIO(sheet.pdf))


def text_of(pdf):
    return " ".join(" ".join(page.extract_text() for page in pdf.pages).split())


def letters(pdf):
    """How much text there is in each size, as it comes out on the paper."""
    sizes = Counter()

    def visit(text, at, within, font, size):
        scale = abs(at[3] * within[3] - at[2] * within[1]) * size
        sizes[round(scale, 2)] += len(text.strip())

    for page in pdf.pages:
        page.extract_text(visitor_text=visit)
    return {size: count for size, count in sizes.items() if count}


@pytest.fixture(scope="module", params=SYSTEMS)
def whole(request):
    """A system, and the sheet of every chapter in it."""
    return request.param, sheet_of(ALL, request.param)


def test_the_sheet_of_all_chapters_has_two_pages_of_its_paper_and_no_small_letter(whole):
    units, sheet = whole
    pdf = read(sheet)
    assert MOST_PAGES == len(pdf.pages)
    for page in pdf.pages:
        assert PAPERS[units] == pytest.approx(tuple(map(float, page.mediabox[2:])), abs=0.01)
    sizes = letters(pdf)
    assert LEAST == min(sizes)
    assert sum(sizes.values()) > 8000


def test_what_finds_no_room_is_counted_on_the_sheet_and_is_used_last(whole):
    units, sheet = whole
    wanted = {f for chapter in ALL for f in formulas_of(chapter) if units in f.systems}
    on_it = sum(len(part["formulas"]) for part in sheet.data["parts"])
    assert len(wanted) == on_it + len(sheet.left)
    assert f"Left out because there was no room: {len(sheet.left)} formulas" in text_of(read(sheet))
    # The ones everybody needs: each is asked at level 1.
    kept = {formula.result for formula in wanted - set(sheet.left)}
    assert {"water_power", "brake_power", "motor_power", "energy_cost"} <= kept


@pytest.mark.parametrize("units", SYSTEMS)
@pytest.mark.parametrize("chapters", [ALL[at : at + 5] for at in range(0, len(ALL), 5)])
def test_a_sheet_of_five_chapters_leaves_out_nothing(chapters, units):
    sheet = sheet_of(chapters, units)
    assert () == sheet.left
    assert MOST_PAGES >= len(read(sheet).pages)
    wanted = {f for chapter in chapters for f in formulas_of(chapter) if units in f.systems}
    assert len(wanted) == sum(len(part["formulas"]) for part in sheet.data["parts"])


def test_a_sheet_of_few_formulas_has_larger_letters():
    sheet = sheet_of(("horsepower",), "us")
    assert 10 == max(letters(read(sheet)), key=letters(read(sheet)).get)
    assert 1 == len(read(sheet).pages)


def test_a_sheet_says_what_the_handbooks_say():
    text = text_of(read(sheet_of(("horsepower",), "us")))
    # Water horsepower as Alabama Extension ANR-0548 has it: gpm times feet over 3,960.
    assert "water horsepower (hp) = flow (gpm) × total dynamic head (ft) 3,960" in text.replace(
        "\xa0", " "
    )
    # NIST SP 811 App. B: 1 hp (550 ft lbf/s) is 0.7456999 kW; 1 psi 6.894757 kPa; 1 gal 3.785412 L.
    for said in ("1 hp = 0.7457 kW", "1 psi = 6.895 kPa", "1 gal = 3.785 L", "1 ft³ = 7.481 gal"):
        assert said in text


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_conversion_is_between_two_units_of_one_kind(units):
    assert [] == [p for p in CONVERSIONS[units] if find_unit(p[0]).kind != find_unit(p[1]).kind]


@pytest.mark.parametrize("units", SYSTEMS)
def test_every_formula_of_the_library_is_set_without_a_warning(units):
    rows = [list(formula_marked(f, units)) for f in FORMULAS if units in f.systems]
    data = laid_out((), (), (), units, LEAST, 3)
    data["parts"] = [{"title": "All", "formulas": rows}]
    pdf, warnings = typst.compile_with_warnings(
        TEMPLATE.read_bytes(),
        format="pdf",
        ignore_system_fonts=True,
        sys_inputs={"data": json.dumps(data)},
    )
    assert [] == list(warnings)
    text = text_of(PdfReader(BytesIO(pdf))).replace("\xa0", " ")
    assert len(rows) <= text.count(" = ")
    assert "<" not in text


def test_marked_text_is_set_as_it_stands_whatever_it_says():
    data = laid_out((), (), (), "us", 10, 2)
    said = '#panic("run") $x$ \\ */ //'
    data["parts"] = [{"title": said, "formulas": [[said, f"<x><w>{said}</w></x>"]]}]
    pdf = typst.compile(
        TEMPLATE.read_bytes(),
        format="pdf",
        ignore_system_fonts=True,
        sys_inputs={"data": json.dumps(data)},
    )
    assert 3 == text_of(PdfReader(BytesIO(pdf))).count("#panic")


def test_the_same_sheet_is_the_same_file():
    assert sheet_of(("head",), "us").pdf == sheet_of(("head",), "us").pdf


def test_the_button_makes_the_sheet_of_what_is_ticked_and_a_link_that_saves_it():
    panel = ReferencePanel()
    for name, box in panel.printing.chapters.boxes.items():
        box.value = name == "head"
    panel.printing.make.click()
    html = panel.printing.said.value
    assert 'download="formula-sheet-us.pdf" href="data:application/pdf;base64,JVBERi0' in html
    assert "It has 1 page and" in html
    panel.units.value = "si"
    assert "download" not in panel.printing.said.value, "made for other units"


def test_without_a_chapter_the_button_says_what_to_tick():
    panel = ReferencePanel()
    panel.printing.chapters.none.click()
    panel.printing.make.click()
    assert "Check at least one chapter first." in panel.printing.said.value


def test_where_typst_is_missing_the_panel_says_what_to_type(monkeypatch):
    def missing():
        raise CannotPrint("A PDF needs the package typst, which isn't installed.")

    panel = ReferencePanel()
    monkeypatch.setattr("workbook.ui.printing.needed", missing)
    sheet_of.cache_clear()
    panel.printing.make.click()
    assert "A PDF needs the package typst" in panel.printing.said.value


def test_a_chapter_that_is_not_there_is_named_with_those_that_are():
    with pytest.raises(NoChapter, match=r"no chapter pumps with formulas\. Choose from hor"):
        sheet_of(("head", "pumps"), "us")


@pytest.fixture
def sheet_command(monkeypatch, capsys):
    """Runs the command as if all were set up; gives its status and what it said."""
    monkeypatch.setenv("WIRE_TO_WATER_SET_UP_FOR", "requirements.txt")

    def run(*words):
        try:
            status = main(["sheet", *words])
        except SystemExit as ended:
            status = ended.code
        return status, *capsys.readouterr()

    return run


def test_the_command_writes_the_sheet_of_the_chapters_named(sheet_command, tmp_path):
    out = tmp_path / "sheet.pdf"
    status, said, _ = sheet_command(
        "--units", "si", "--chapters", "head, horsepower", "--pdf", str(out)
    )
    assert 0 == status
    assert f"{out} is written. It has 1 page and 39 formulas, in type of 10 points.\n" == said
    text = text_of(PdfReader(out))
    assert text.index("1. Three horsepowers") < text.index("6. Head")
    assert "metric units" in text


@pytest.mark.parametrize(
    ("words", "said"),
    [
        (["--pdf", "x.pdf", "--chapters", "pumps"], "There is no chapter pumps with formulas."),
        (["--pdf", "x.pdf", "--chapters", " , "], "Type at least one chapter after --chapters: "),
        (["--pdf", "no/such/x.pdf", "--chapters", "head"], "no/such/x.pdf: No such file"),
        ([], "The following arguments are required: --pdf."),
    ],
)
def test_the_command_refuses_in_one_line_that_says_what_to_type(
    sheet_command, words, said, tmp_path, monkeypatch
):
    monkeypatch.chdir(tmp_path)
    status, out, told = sheet_command(*words)
    assert (2, "") == (status, out)
    assert told.startswith(said)
    assert 1 == told.count("\n")
