"""The printed record: what stands on its pages, read back, and that typed text is never code."""

import builtins
import io
import re

import pypdf
import pytest

from solver.own.record import ALWAYS, NOT_MEASURED, by_pump, examine, read_entries
from solver.render.text import steps_text
from workbook.record import PumpFile, printed_data
from workbook.record.demo import FAULTS, FILE
from workbook.record.printed import MOST_PUMPS, MOST_ROWS, TEMPLATE, pdf_of, pictures_of
from workbook.record.printed_data import Sheet
from workbook.record.results import CannotWrite
from workbook.record.trends import plots_of

LEGS = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5"}
# What typst, LaTeX and HTML would act on; the first would end the compilation with an error.
HOSTILE = (
    '#panic("x")',
    "$x^2$",
    "\\ \\u{41} \\begin",
    "<b>bold</b>",
    '#read("/etc/passwd")',
    "= Heading",
    "]#[",
    "*strong* _emph_ `raw` @ref <label> // no comment",
    "{{{",
    '"',
    "#import",
)


def sheet(*messages, **entries):
    record, _ = read_entries({"pump": "Pump 1", "date": "2024-05-01"} | entries)
    return Sheet(examine(record), messages)


def pages(pdf):
    return [page.extract_text() for page in pypdf.PdfReader(io.BytesIO(pdf)).pages]


def plain(text):
    """Text without its line ends and spaces, which a PDF keeps as it likes."""
    return re.sub(r"\s+", "", text)


@pytest.fixture(scope="module")
def demo():
    """The sheets of each pump of the demo record, by its name."""
    with FILE.open("rb") as stream:
        pumps = by_pump([pump.record for pump in PumpFile(stream)])
    return {records[0].name: [Sheet(examine(one)) for one in records] for records in pumps.values()}


@pytest.fixture(scope="module")
def worn(demo):
    """The sheets of the pump that wears, and the text of their pages."""
    sheets = demo[f"{FAULTS[2].station}, {FAULTS[2].pump}"]
    return sheets, pages(pdf_of(sheets))


def test_each_finding_stands_there_with_its_verdict_limit_source_and_every_step(worn):
    sheets, text = worn
    newest, whole = sheets[-1].examined, plain(" ".join(text))
    work = [found for found in newest.findings if found.state != NOT_MEASURED]
    assert len(work) > 20
    for found in work:
        verdict = found.verdict
        for part in (
            found.check.label("us"),
            found.state,
            verdict.says,
            verdict.limit,
            verdict.source,
        ):
            assert plain(part) in whole
        steps = steps_text(found.steps, found.known, found.given, "us").splitlines()
        assert [] == [line for line in steps if plain(line) not in whole]


def test_what_was_read_what_to_check_and_what_was_not_measured_stand_there(worn):
    sheets, text = worn
    newest, whole = sheets[-1].examined, plain(" ".join(text))
    for said in (*newest.next_checks, *newest.not_measured):
        assert plain(said) in whole
    for said in ("motor size25 hp", "nameplate speed1,775 rpm", "well diameter10 ft", "Read by"):
        assert plain(said) in whole
    assert plain("Caution: each of these can kill") in whole
    assert plain("A wet well is usually a permit space.") in whole


def test_every_page_says_that_it_never_replaces_a_person_and_has_its_number_and_its_pump(worn):
    _, text = worn
    assert len(text) > 5
    for number, page in enumerate(text, 1):
        assert plain(ALWAYS) in plain(page)
        assert plain(f"Page {number} of {len(text)}") in plain(page)
        assert plain("Heron Slough lift station, Pump 1") in plain(page)


def test_the_years_stand_there_as_pictures_with_words_and_as_a_table(worn):
    sheets, text = worn
    whole = plain(" ".join(text))
    assert plain("Wire-to-water efficiency, %: falling") not in whole  # it is drawn, not set
    assert plain("The wire-to-water efficiency is falling, by 16.1 percentage points") in whole
    for one in sheets:
        efficiency = one.examined.finding("overall_efficiency").value
        row = f"{one.examined.record.texts['date']}"
        assert plain(row) in whole
        assert f"{efficiency:.4g}" in whole
    # Only the newest day is worked in full; the others have a line each.
    assert 1 == whole.count(plain("Step 1: wet well area"))
    (flow,) = (f for f in sheets[-2].examined.findings if f.name == "flow_share")
    assert "look into it" == flow.state
    assert plain(flow.verdict.says) in whole


def test_the_pictures_carry_their_words_for_who_cannot_see_them(demo):
    pdf = pdf_of(demo["Heron Slough lift station, Pump 3"])
    root = pypdf.PdfReader(io.BytesIO(pdf)).trailer["/Root"]
    alts = list(alternatives(root["/StructTreeRoot"]))
    plots = plots_of([one.examined for one in demo["Heron Slough lift station, Pump 3"]])
    assert 5 == len(plots)
    assert [plot.view.alt for plot in plots] == alts


def alternatives(part):
    """The texts in place of pictures, down the tree of a tagged PDF."""
    if "/Alt" in part:
        yield str(part["/Alt"])
    below = part.get("/K", [])
    for one in below if isinstance(below, list) else [below]:
        if isinstance(one.get_object(), dict):
            yield from alternatives(one.get_object())


@pytest.mark.parametrize("text", HOSTILE)
def test_what_was_typed_is_printed_as_it_stands_and_never_run(text):
    one = sheet(f"to be known: {text}", station=text, notes=text, person=text, flow=text)
    (first, *rest) = pages(pdf_of([one]))
    whole = plain(" ".join([first, *rest]))
    assert plain(f"{text}, Pump 1") in whole
    assert plain(f"notes{text}") in whole
    assert plain(f"Read by {text}.") in whole
    assert plain(f"to be known: {text}") in whole
    assert plain(f"{text} (not read)") in whole


def test_the_template_takes_in_nothing_from_outside():
    template = TEMPLATE.read_text("utf-8")
    assert [] == re.findall(r"(?:read|eval|plugin|csv|toml|yaml|xml)\(|import|include", template)


def test_the_same_records_give_the_same_pdf(demo):
    sheets = demo["Tannery Lane lift station, Pump 1"]
    assert pdf_of(sheets) == pdf_of(list(sheets))
    assert b"/CreationDate" not in pdf_of([sheet(**LEGS)])


def test_only_the_fonts_of_typst_are_in_it(worn):
    sheets, _ = worn
    reader = pypdf.PdfReader(io.BytesIO(pdf_of(sheets[-1:])))
    fonts = {
        font.get_object()["/BaseFont"].partition("+")[2].split("-")[0]
        for page in reader.pages
        for font in page["/Resources"]["/Font"].values()
    }
    assert {"LibertinusSerif"} == fonts


@pytest.mark.parametrize(("units", "width"), [("us", 612), ("si", 595.28)])
def test_the_paper_is_that_of_the_units(units, width):
    record, _ = read_entries(LEGS, units)
    page = pypdf.PdfReader(io.BytesIO(pdf_of([Sheet(examine(record))]))).pages[0]
    assert width == pytest.approx(float(page.mediabox.width), abs=0.1)


def test_one_record_has_no_years_and_a_record_without_a_clear_date_stands_in_full():
    (alone,) = [plain(" ".join(pages(pdf_of([sheet(**LEGS)]))))]
    assert plain("Over the years") not in alone
    days = [sheet(date=date, **LEGS) for date in ("2023-05-01", "2024-05-01", "spring")]
    text = plain(" ".join(pages(pdf_of(days))))
    assert plain("Over the years") in text
    assert 2 == text.count(plain("Step 3: current unbalance"))


def test_what_is_to_be_known_of_an_earlier_day_is_not_lost():
    days = [sheet("Row 2: odd", date="2023-05-01"), sheet("Row 3: plain", date="2024-05-01")]
    text = plain(" ".join(pages(pdf_of(days))))
    assert plain("Row 2: odd") in text
    assert plain("Row 3: plain") in text


def test_letters_that_the_fonts_lack_stop_nothing():
    assert plain("motor size20 hp") in plain(
        pages(pdf_of([sheet(station="泵站 مضخة", motor_size="20")]))[0]
    )


def test_no_record_at_all_is_said():
    assert plain("No pump was read.") in plain(pages(pdf_of([]))[0])


def test_the_pages_can_be_had_as_pictures():
    (first, *_) = pictures_of([sheet(**LEGS)], dots=40)
    assert first.startswith(b"\x89PNG\r\n")


def test_too_many_are_refused_in_a_sentence():
    one = sheet(**LEGS)
    many = [Sheet(examine(read_entries({"pump": f"{at}"})[0])) for at in range(MOST_PUMPS + 1)]
    for sheets in (many, [one] * (MOST_ROWS + 1)):
        with pytest.raises(CannotWrite, match="One PDF holds up to 100 pumps and 1,000 rows"):
            pdf_of(sheets)


def test_without_typst_one_sentence_says_what_to_do(monkeypatch):
    load = builtins.__import__

    def without(name, *rest):
        if name == "typst":
            raise ImportError(name)
        return load(name, *rest)

    monkeypatch.setattr(builtins, "__import__", without)
    with pytest.raises(CannotWrite, match="Type: python3 -m pip install typst"):
        pdf_of([sheet(**LEGS)])


def test_without_matplotlib_the_words_stand_in_place_of_the_pictures(monkeypatch, demo):
    def missing(plot):
        raise ImportError("matplotlib")

    monkeypatch.setattr(printed_data, "print_svg", missing)
    text = plain(" ".join(pages(pdf_of(demo["Tannery Lane lift station, Pump 2"]))))
    assert plain("Current unbalance, %: steady. 2020-05-") in text


def test_a_word_longer_than_a_line_stays_on_the_paper():
    (page,) = pages(pdf_of([sheet(notes="W" * 300, station="V" * 200)]))
    for letter, count in (("W", 300), ("V", 200)):
        runs = [run.replace("\u200b", "") for run in re.findall(f"[{letter}\u200b]+", page)]
        assert count <= sum(map(len, runs))
        # A line of 490 points has room for 80 letters of 6 points, and for fewer of these.
        assert max(map(len, runs)) < 80
