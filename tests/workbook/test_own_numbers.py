"""A reader's own readings, and the parts of a page that are read: examples, formulas, cautions."""

import json
import re
import subprocess
import sys

import pytest

from solver import BadCode, draw
from solver.vocabulary import spoken
from tests.workbook.said import words
from workbook import page
from workbook.practice.own_numbers import label_with_unit, nearest, work_readings
from workbook.ui.cautions import topics
from workbook.ui.chapter import MOST_READINGS, asked_in, formulas_of, quantities_of
from workbook.ui.pages import chapters

CHAPTERS = ("horsepower", "efficiency", "cost", "balance", "units", "head", "nameplate")


def worked(chapter, find, units="us", **typed):
    """The panel of a chapter after these readings were typed and worked out."""
    panel = page.own_numbers(chapter)
    panel.find.value, panel.units.value = find, units
    for name, text in typed.items():
        if name not in panel.entries:
            panel.added.append(name)
            panel._lay_out()
        panel.entries[name].box.value = text
    panel.run.click()
    return panel


# Published examples, read or transcribed as noted


def test_a_pump_efficiency_comes_out_as_published():
    # Cengel & Cimbala, Fluid Mechanics, Ex 5-12 (read in a copy): 15 kW in, motor 90 %, 50 L/s,
    # 100 to 300 kPa: 74.1 %.
    readings = {"input_power": "15 kW", "motor_efficiency": "90%", "flow": "50 L/s"}
    result = work_readings({**readings, "pressure": "200 kPa"}, "pump_efficiency", "si")
    assert pytest.approx(74.1, abs=0.05) == result.found.answer


def test_a_current_unbalance_comes_out_as_published():
    # A pump maker's manual (read): 25.5, 23 and 26.5 A give 8 %.
    legs = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5 A"}
    panel = worked("balance", "current_unbalance", **legs)
    assert "The current unbalance is 8%." in words(panel.said.value)


def test_a_total_head_comes_out_of_two_gauges_as_published():
    # Solberg, Elementary Heat Power, Ex 9.2 (read in a copy): 20 psi is 46.154 ft at 62.4 lb/ft3.
    gauges = {"discharge_gauge": "26 psi", "suction_gauge": "6 psi"}
    panel = worked("head", "head", **gauges)
    assert 46.154 == pytest.approx(work_readings(gauges, "head", "us").found.answer, rel=2e-3)
    assert "The total dynamic head is 46.2 ft." in words(panel.said.value)


def test_kilowatts_come_out_of_volts_amps_and_power_factor_as_published():
    # Hubert, Electric Machines, Ex 4.6 (read in a copy): 230 V, 248 A, PF 0.8298: 81,978 W.
    legs = {"line_volts": "230", "line_amps": "248", "power_factor": ".8298"}
    panel = worked("nameplate", "input_power", **legs)
    found = work_readings(legs, "input_power", "us").found
    assert 81.978 == pytest.approx(found.answer, rel=5e-4)
    assert "The input power is 81.98 kW." in words(panel.said.value)


def test_a_polarization_index_comes_out_of_two_readings_as_published():
    # electricalampere, polarization index (read): 500 and 2,000 megohms give 4.
    readings = {"insulation_1min": "500", "insulation_10min": "2 gigohm"}
    panel = worked("insulation", "polarization_index", **readings)
    assert "The polarization index is 4." in words(panel.said.value)
    assert "keep the winding grounded for four times as long" in words(panel.work.value)


def test_a_cycle_comes_out_of_the_volume_between_floats_as_published():
    # MIL-HDBK-1005/9A, form (read): 500 gal, pump 400 gpm, inflow 150 gpm: 5.333 min.
    readings = {"working_volume": "500", "flow": "400", "inflow": "150"}
    panel = worked("wet_well", "cycle_time", **readings)
    assert "The cycle time is 5.333 min." in words(panel.said.value)


def test_a_pump_rate_comes_out_of_tape_and_watch_and_sends_nobody_into_the_well():
    # By hand: 0.785 x 64 ft2 x 7.48 x 13/12 ft = 407.1 gal in 324 s: 75.39 gpm, and 108.6 come in.
    readings = {"well_diameter": "8", "drawdown_read": "13", "drawdown_time": "5.4 min"}
    panel = worked("wet_well", "flow", **readings, rise_read="10 in", rise_time="173")
    assert "The flow is 184 gpm." in words(panel.said.value)
    assert "Measure from outside" in words(panel.work.value)


# What comes back


def test_the_full_work_comes_back_with_what_was_read():
    panel = worked("horsepower", "water_power", flow="450 gpm", head="62 ft")
    assert "= Worked out The water horsepower is 7.045 hp." == words(panel.said.value)
    work = words(panel.work.value)
    assert "flow 450 gpm total dynamic head 62 ft" in work
    assert "Step 1: water horsepower (WHP)" in work
    assert "450 gpm × 62 ft" in work


def test_other_units_are_read_and_said():
    panel = worked("horsepower", "water_power", flow="100 L/s", head="62 ft")
    assert "100 L/s, which is 1,585 gpm" in words(panel.work.value)


def test_what_is_missing_is_named_and_gets_a_box():
    panel = worked("horsepower", "water_power", flow="450 gpm")
    assert "The water horsepower can't be calculated yet." in words(panel.said.value)
    assert "head" in words(panel.said.value)
    missing = {name for names in work_missing(panel) for name in names}
    assert missing <= set(panel.shown)


@pytest.mark.parametrize(
    ("chapter", "find", "typed", "ways"),
    [
        ("head", "head", {"discharge_gauge": "52 psi"}, ["suction gauge", "suction vacuum"]),
        (
            "nameplate",
            "input_power",
            {"line_volts": "466"},
            ["apparent power and the power factor", "line amps and the power factor"],
        ),
    ],
)
def test_what_is_missing_is_told_by_the_boxes_that_are_there(chapter, find, typed, ways):
    panel = worked(chapter, find, **typed)
    boxes = len(page.own_numbers(chapter).asked[find])
    assert [f"the {way}" for way in ways] == re.findall(r"<li>(.*?)</li>", panel.said.value)
    assert boxes == len(panel.boxes.children)


def work_missing(panel):
    texts = {name: entry.box.value for name, entry in panel.entries.items()}
    return work_readings(texts, panel.find.value, panel.units.value).found.missing


def test_readings_that_cannot_be_are_named():
    # Common practice, no source: motor power >= brake power >= water power.
    panel = worked("horsepower", "water_power", flow="450 gpm", head="62 ft", brake_power="6 hp")
    told = words(panel.said.value)
    assert "Readings disagree" in told
    assert "It can't be above 100%." in told


def test_readings_at_odds_are_named_once():
    gauges = {"discharge_gauge": "52 psi", "suction_gauge": "8 psi"}
    told = words(worked("head", "head", static_head="60", friction_head="20", **gauges).said.value)
    assert 1 == told.count("Two ways to get the total dynamic head disagree: 80 ft and 101.6 ft.")


def test_readings_with_which_the_arithmetic_fails_are_not_called_a_lack_of_formulas():
    panel = worked("nameplate", "reactive_power", input_power="40 kW", apparent_power="31 kVA")
    told = words(panel.said.value)
    assert "The reactive power can't be calculated: its formula would" in told
    assert "The power factor comes to 1.29. It can't be above 1." in told


def test_an_unusual_reading_is_worked_and_remarked_on():
    panel = worked("horsepower", "water_power", flow="450 gpm", head="1,200 ft")
    told = words(panel.said.value)
    assert told.startswith("! Please check The water horsepower is 136.4 hp.")
    assert "1,200 ft is unusual for the total dynamic head." in told


def test_every_reading_that_cannot_be_read_is_named_and_kept():
    panel = worked("horsepower", "water_power", flow="450 ft", head="tall")
    told = words(panel.said.value)
    assert told.startswith("? Not read Flow: ")
    assert "Total dynamic head: " in told
    assert ("450 ft", "tall") == tuple(panel.entries[n].box.value for n in ("flow", "head"))
    assert "" == panel.work.value


def test_nothing_typed_asks_for_a_reading():
    panel = page.own_numbers("horsepower")
    panel.run.click()
    assert "+ More is needed Type at least one reading, then work it out." == words(
        panel.said.value
    )


def test_a_readers_own_value_is_held_against_the_worked_one():
    panel = worked("horsepower", "water_power", flow="450 gpm", head="62 ft", water_power="9 hp")
    assert "Readings disagree" in words(panel.said.value)


def test_a_bare_decimal_is_an_efficiency_in_percent():
    typed = {"water_power": "10 hp", "pump_efficiency": ".5"}
    assert 20 == pytest.approx(work_readings(typed, "brake_power", "us").found.answer)


def test_what_was_typed_stays_when_the_question_or_the_units_change():
    panel = worked("horsepower", "water_power", flow="450 gpm")
    panel.find.value = "brake_power"
    panel.units.value = "si"
    assert "flow" in panel.shown
    box = panel.entries["flow"].box
    assert ("450 gpm", "Flow, in L/s") == (box.value, box.description)


def test_a_typed_reading_keeps_its_box_however_far_it_is_from_the_question():
    panel = worked("cost", "yearly_saving", installed_cost="9000")
    panel.find.value = "energy"
    assert "installed_cost" not in nearest(panel.find.value, panel.names)
    assert "installed_cost" in panel.shown


@pytest.mark.parametrize(
    ("chapter", "find", "readings"),
    [
        ("head", "head", ["discharge_gauge", "suction_gauge"]),
        ("nameplate", "input_power", ["line_volts", "line_amps", "power_factor"]),
        ("nameplate", "motor_load", ["line_volts", "amps_a", "amps_b", "amps_c", "motor_size"]),
        ("units", "gauge_pressure", ["water_height"]),
    ],
)
def test_what_is_read_at_the_machine_has_a_box_at_once(chapter, find, readings):
    panel = page.own_numbers(chapter)
    panel.find.value = find
    assert set(readings) <= set(panel.shown)


def test_boxes_are_few_enough_to_look_over_and_none_is_for_a_number_left_aside():
    for readings in asked_in("head").values():
        assert 1 <= len(readings) <= MOST_READINGS
    # Level 4 gives the table's amps too, which the overload does not go by.
    assert "table_amps" not in asked_in("nameplate")["overload_limit"]


def test_a_box_is_added_behind_the_others_so_that_none_is_made_anew():
    panel = page.own_numbers("cost")
    before = panel.boxes.children
    panel.other.value = "bill"
    panel.add.click()
    assert before == panel.boxes.children[: len(before)]
    assert panel.entries["bill"].box is panel.boxes.children[-1]


def test_adding_without_a_choice_says_what_to_do():
    panel = page.own_numbers("cost")
    panel.add.click()
    assert "Choose a reading from the list first." in words(panel.said.value)


def test_the_three_legs_of_a_motor_come_together():
    among = [quantity.name for quantity in quantities_of("balance")]
    assert {"amps_a", "amps_b", "amps_c"} <= set(nearest("amps_average", among))


@pytest.mark.parametrize("chapter", CHAPTERS)
def test_every_quantity_of_a_chapter_can_be_asked_for_and_given(chapter):
    panel = page.own_numbers(chapter)
    for _, name in panel.find.options:
        panel.find.value = name
        offered = {*panel.shown, *(value for _, value in panel.other.options)}
        assert set(panel.names) - {name} <= offered
        assert len(panel.boxes.children) >= 1


@pytest.mark.parametrize(
    ("units", "labels"),
    [
        ("us", {"Drawdown as measured, in inches", "Gallons per foot"}),
        ("si", {"Drawdown as measured, in cm", "Volume per meter of depth, in m³/m"}),
    ],
)
def test_a_box_says_its_unit_as_it_is_written(units, labels):
    panel = page.own_numbers("wet_well")
    panel.find.value, panel.units.value = "flow", units
    assert set() == labels - {box.description for box in panel.boxes.children}


def test_typed_text_is_shown_as_text_never_as_markup():
    panel = worked("horsepower", "water_power", flow="<img src=x onerror=alert(1)>")
    assert "<img" not in panel.said.value
    assert "&lt;img" in panel.said.value


# Examples, formulas, cautions, chapters


def test_a_worked_example_opens_step_by_step():
    example = page.worked_example(draw("motor_power", 10, "us", 2).code)
    seen = []
    for _ in example.case.steps:
        example.steps._next()
        seen.append(example.steps.shown.value.count('class="w2w-step"'))
    assert list(range(1, len(example.case.steps) + 1)) == seen
    assert "none" == example.steps.buttons.layout.display


def test_a_worked_example_says_each_new_step_aloud():
    example = page.worked_example(draw("water_power", 7).code)
    example.steps._next()
    heard = example.steps.shown.value.partition('role="status"')[2]
    assert "water horsepower = flow × total dynamic head / 3,960" in words(heard)


def test_an_example_without_a_problem_is_refused():
    with pytest.raises(BadCode, match="isn't a problem code"):
        page.worked_example("BP-2U1")


@pytest.mark.parametrize("chapter", CHAPTERS)
def test_each_formula_stands_with_its_reason_and_its_source(chapter):
    sheet = page.formulas(chapter)
    for units in ("us", "si"):
        sheet.units.value = units
        shown = words(sheet.sheet.value)
        for formula in formulas_of(chapter):
            if units in formula.systems:
                assert " ".join(spoken(formula.why, units).split()) in shown
                assert " ".join(formula.source.split()) in shown


@pytest.mark.parametrize(("chapter", "says"), [("efficiency", True), ("insulation", False)])
def test_the_word_on_decimals_stands_only_where_a_formula_takes_one(chapter, says):
    assert says is ("82% is 0.82" in page.formulas(chapter).sheet.value)


def test_formulas_follow_the_units():
    sheet = page.formulas("horsepower")
    assert "3,960" in sheet.sheet.value
    sheet.units.value = "si"
    assert "3,960" not in sheet.sheet.value
    assert "flow in L/s, total dynamic head (TDH) in m, water power in kW" in sheet.sheet.value


@pytest.mark.parametrize("chapter", CHAPTERS)
@pytest.mark.parametrize("units", ["us", "si"])
def test_units_and_sources_are_said_once_and_never_left_empty(chapter, units):
    sheet = page.formulas(chapter)
    sheet.units.value = units
    shown = words(sheet.sheet.value)
    assert "Units: ." not in shown
    assert not re.search(r"in (\S+) in \1\b", shown)
    assert len(shown.split("Source: ")) - 1 == sum(units in f.systems for f in formulas_of(chapter))


def test_a_box_says_its_unit_once():
    asks = [label_with_unit(quantity, "us") for quantity in quantities_of("nameplate")]
    assert {"Slip in rpm", "Percent slip", "Number of poles", "Line amps"} <= set(asks)


@pytest.mark.parametrize("show", [page.cautions, page.cautions_in_full])
def test_the_cautions_name_their_rules_and_defer_to_local_codes(show):
    box = show("electrical", "rotating", "wet_well")._repr_mimebundle_()
    for kind in ("text/html", "text/plain"):
        text = words(box[kind])
        for rule in ("29 CFR 1910.147", "29 CFR 1910.333", "29 CFR 1910.146", "NFPA 70E"):
            assert rule in text
        assert "Follow your local codes" in text
        assert "licensed practice" in text


def test_the_cautions_in_one_line_name_what_can_kill_and_open_to_all_of_it():
    html = page.cautions("electrical", "rotating", "wet_well").html
    line, rest = html.split("</summary>")
    said = "Caution: electricity, rotating machines and wet wells can kill."
    assert said in words(line)
    assert rest.startswith('<div class="w2w-columns">')
    assert "<details" not in page.cautions_in_full("electrical").html


def test_cautions_are_only_those_asked_for():
    assert "wet well" not in page.cautions("electrical").text.lower()
    every = ["electrical", "rotating", "wet_well", "insulation", "drives", "chemicals"]
    assert every == topics()
    with pytest.raises(LookupError, match="there are: electrical, rotating, wet_well, insulation"):
        page.cautions("steam")


def test_the_contents_come_from_the_chapters_themselves(tmp_path):
    cells = [{"cell_type": "markdown", "source": "# 1. Pumps <b>\n\nWhat a pump\ndoes.\n\nMore."}]
    for name in ("00-start-here.ipynb", "01 pumps.ipynb"):
        (tmp_path / name).write_text(json.dumps({"cells": cells}), encoding="utf-8")
    assert [("01 pumps.ipynb", "1. Pumps <b>", "What a pump does.")] == chapters(tmp_path)


def test_the_contents_link_every_chapter_beside_the_opening_page():
    html = page.contents().html
    assert [chapter.file for chapter in chapters()] == re.findall(r'href="([^"]*)"', html)


def test_the_list_of_pages_and_the_cautions_load_neither_the_solver_nor_controls(root):
    code = (
        "import sys; from workbook import page; page.contents(); page.cautions('rotating');"
        "sys.exit('solver' in sys.modules or 'ipywidgets' in sys.modules)"
    )
    assert 0 == subprocess.run([sys.executable, "-c", code], cwd=root).returncode


def test_a_figure_is_drawn_only_when_it_is_asked_for(root):
    code = (
        "import sys; from workbook import page; page.practice('horsepower');"
        "page.own_numbers('horsepower'); page.cautions('rotating'); page.contents();"
        "sys.exit('matplotlib' in sys.modules or 'pint' in sys.modules)"
    )
    assert 0 == subprocess.run([sys.executable, "-c", code], cwd=root).returncode
