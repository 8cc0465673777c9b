"""Find the fault on its panel: kept as it goes, nothing given that was not earned, counted in the log."""

from io import BytesIO

import pytest
from pypdf import PdfReader

from solver.fault.case import FAMILY, fault_case
from solver.fault.review import sure_way
from workbook.fault.fault_panel import FaultPanel
from workbook.fault.printed import pdf_of
from workbook.fault.story import Story, begin, unfinished
from workbook.log import NotKept, line_of, read_line

CASE = fault_case(2, "us", 5)
CODE = str(CASE.code)
WRONG = next(name for name in CASE.suspects if name != CASE.fault)


class Bench:
    """A panel with a folder of its own, and what it put in the log."""

    def __init__(self, folder):
        self.folder, self.log = folder, []
        self.panel = self.opened()

    def opened(self) -> FaultPanel:
        return FaultPanel(self.folder, self.log.append, self.folder.parent)

    def start(self) -> FaultPanel:
        self.panel._open_code(CODE)
        return self.panel


@pytest.fixture
def bench(tmp_path):
    return Bench(tmp_path / "faults")


def name(panel, fault):
    panel.stand.fault.value = fault
    panel.stand._name()


def test_a_reading_is_shown_beside_last_years(bench):
    stand = bench.start().stand
    stand._do("gauges")
    shown = next(one for one in stand.story.way.found[0].shown)
    assert shown.text("us") in stand.clipboard.value
    assert shown.text("us") in stand.told.value
    assert shown.text("us") in stand.station.value
    assert "✓ Pressure gauges" == stand.readings.acts["gauges"].description
    assert "2 minutes used" in stand.standing.value


def test_a_stopped_reading_shows_its_rule_and_no_number(bench):
    stand = bench.start().stand
    before = stand.clipboard.value
    stand._do("insulation")
    assert "29 CFR 1910.147" in stand.told.value
    assert before == stand.clipboard.value
    assert "megohm" not in stand.told.value


def test_a_closed_page_loses_nothing(bench):
    bench.start().stand._do("gauges")
    bench.panel.stand._do("amps")
    again = bench.opened()
    assert ("gauges", "amps") == again.stand.story.way.words
    assert "none" != again.stand.box.layout.display
    assert bench.panel.stand.clipboard.value == again.stand.clipboard.value


def test_a_torn_line_or_a_strange_word_costs_nothing_else(bench, tmp_path):
    story = begin(CODE, tmp_path)
    story.do("gauges")
    with story.path.open("ab") as file:
        file.write(b'{"v": 1, "event": "did", "word": "amps", "check"')
    story.do("listen")
    assert ("gauges", "listen") == Story(story.path).way.words
    assert ("gauges", "listen") == unfinished(tmp_path).way.words


def test_what_cannot_be_kept_is_not_done(bench, monkeypatch):
    def full(*_):
        raise NotKept("The disk is full.")

    stand = bench.start().stand
    monkeypatch.setattr("workbook.fault.story.add_lines", full)
    stand._do("gauges")
    assert "The disk is full." in stand.told.value
    assert () == stand.story.way.words


def test_each_name_counts_in_the_log(bench):
    panel = bench.start()
    name(panel, WRONG)
    assert "Not yet" in panel.stand.told.value
    name(panel, CASE.fault)
    first, second = bench.log
    assert (FAMILY.name, 2, "wrong", 1) == (first.family, first.level, first.status, first.tries)
    assert (CODE, "right", 2) == (second.code, second.status, second.tries)
    assert [first, second] == [read_line(line_of(each)) for each in bench.log]


def test_the_review_ends_it_and_the_case_can_be_worked_again(bench):
    panel = bench.start()
    panel.stand._do("gauges")
    panel.stand._do("review")
    assert "none" == panel.stand.box.layout.display
    assert "1. Pressure gauges" in panel.lesson.value
    assert "shown" == bench.log[-1].status
    assert unfinished(bench.folder) is None
    panel._again()
    assert () == panel.stand.story.way.words
    assert CASE == panel.stand.story.way.case


def test_a_whole_case_by_the_sure_way(bench):
    panel = bench.start()
    for word in sure_way(CODE).words:
        if word.startswith("name:"):
            name(panel, word.removeprefix("name:"))
        elif word.startswith("do:"):
            panel.stand.action.value = word.removeprefix("do:")
            panel.stand._act()
        else:
            panel.stand._do(word)
    assert panel.stand.story.way.ended
    assert "That&#39;s the call." in panel.lesson.value
    assert bench.log[-1].unaided


def test_nothing_chosen_says_what_to_do(bench):
    panel = bench.start()
    panel.stand._name()
    assert "Choose a fault from the list" in panel.stand.told.value
    assert [] == bench.log


def test_a_code_that_is_none_says_what_to_type(bench):
    bench.panel._open_code("hello")
    assert (
        "isn&#39;t a problem code" in bench.panel.said.value
        or "isn&#39;t" in bench.panel.said.value
    )
    assert "none" != bench.panel.start.layout.display


@pytest.mark.parametrize(("level", "units"), [(1, "us"), (2, "si"), (3, "us"), (3, "si")])
def test_a_case_on_paper_has_its_readings_on_the_second_page_and_the_answer_on_the_third(
    level, units
):
    case = fault_case(level, units, 5)
    pages = [page.extract_text() for page in PdfReader(BytesIO(pdf_of(case))).pages]
    assert 3 == len(pages)
    said = [" ".join(page.split()) for page in pages]
    assert str(case.code) in said[0]
    assert "Last year" in said[0]
    for act in case.acts.values():
        assert act.label[1:] in said[1]
        assert act.label not in said[0]
    assert "It was:" in said[2]
    assert "It was:" not in said[0] + said[1]


def test_the_pdf_is_put_in_the_readers_folder(bench):
    panel = bench.start()
    panel.stand._on_paper()
    assert (bench.folder.parent / f"{CODE}.pdf").read_bytes().startswith(b"%PDF")
    assert "Save the PDF" in panel.stand.told.value
