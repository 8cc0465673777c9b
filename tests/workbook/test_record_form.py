"""The form of one pump's day: what comes of what is typed, and that nothing of it is lost."""

import re

import pytest

from solver.own.record import ALWAYS, FIELDS, GROUPS, STATES, examine, read_entries
from tests.workbook.said import words
from workbook import page
from workbook.log import KEPT
from workbook.record.findings import examined_html, pressing_first

LEGS = {"amps_a": "25.5", "amps_b": "23", "amps_c": "26.5 A"}


def typed(**texts):
    """The panel after these texts were typed, each in its opened group."""
    panel = page.record()
    for group in panel.form.groups.values():
        if any(field.name in texts for field in group.fields):
            group.show()
    for name, text in texts.items():
        panel.form.controls[name].value = text
    return panel


def worked(**texts):
    panel = typed(**texts)
    panel.run.click()
    return panel


@pytest.fixture(autouse=True)
def _nothing_kept(monkeypatch, tmp_path):
    monkeypatch.setenv(KEPT, str(tmp_path))


# The form


def test_every_field_has_a_box_in_its_group_and_only_the_first_group_is_open():
    form = page.record().form
    assert [GROUPS[0]] == [name for name, group in form.groups.items() if group.open]
    for group in form.groups.values():
        group.show()
    assert [field.name for field in FIELDS] == list(form.controls)


def test_a_closed_group_makes_no_boxes_so_that_the_page_is_light():
    assert {field.name for field in FIELDS if field.group == "pump"} == set(
        page.record().form.controls
    )


def test_a_group_says_whether_it_is_open_and_how_much_of_it_is_filled():
    form = typed(flow="450", input_power="16").form
    group = form.groups["flow meter and power"]
    assert "Hide flow meter and power: 2 of 5 filled" == group.button.description
    group.button.click()
    assert "Show flow meter and power: 2 of 5 filled" == group.button.description
    assert "none" == group.body.layout.display


def test_boxes_name_the_unit_of_the_chosen_system():
    panel = typed(flow="450")
    assert "Flow by meter, in gpm" == panel.form.controls["flow"].description
    panel.units.value = "si"
    assert "Flow by meter, in L/s" == panel.form.controls["flow"].description


def test_what_stands_in_a_closed_group_is_worked_too():
    panel = typed(**LEGS)
    panel.form.groups["volts and amps"].show(False)
    panel.run.click()
    assert 8 == pytest.approx(panel.examined.finding("current_unbalance").value)


def test_a_word_of_the_nameplate_is_chosen_from_a_list_and_counts():
    assert "form-wound" == worked(winding_kind="form-wound").examined.record.texts["winding_kind"]


# Faults


def test_a_fault_stands_beside_its_box_and_the_rest_is_worked():
    panel = worked(**LEGS, flow="plenty")
    assert "? Not read. " in words(panel.form.faults["flow"].value) + " "
    assert "12.5 gpm" in words(panel.form.faults["flow"].value)
    assert "plenty" == panel.form.controls["flow"].value
    assert all(not place.value for name, place in panel.form.faults.items() if name != "flow")
    assert "1 entry couldn't be read." in words(panel.said.value)
    assert "Current unbalance 8%" in words(panel.outcome.result.value)


def test_a_fault_in_a_closed_group_opens_it():
    panel = typed(flow="plenty")
    group = panel.form.groups["flow meter and power"]
    group.show(False)
    panel.run.click()
    assert group.open


def test_a_fault_that_is_mended_goes():
    panel = worked(flow="plenty")
    panel.form.controls["flow"].value = "450"
    panel.run.click()
    assert "" == panel.form.faults["flow"].value


def test_what_was_read_with_a_remark_is_told_apart_from_what_was_not_read():
    panel = worked(insulation_1min=">2000")
    assert "› Note." in words(panel.form.faults["insulation_1min"].value)
    assert "! Please check" in words(panel.said.value)


def test_an_empty_form_says_what_to_do():
    assert "Type one reading or more" in words(worked().said.value)


@pytest.mark.parametrize("text", ["<script>alert(1)</script>", '"><img src=x onerror=alert(1)>'])
def test_nothing_typed_reaches_the_page_as_html(text):
    panel = worked(pump=text, station=text, date=text, flow=text, **LEGS)
    shown = panel.outcome.result.value + panel.said.value + panel.form.faults["flow"].value
    assert "<script" not in shown
    assert "<img" not in shown


# Units


def test_a_change_of_units_keeps_what_was_typed_and_what_it_means():
    panel = worked(flow="450", head="62", **LEGS)
    before = panel.examined.finding("water_power").value
    panel.units.value = "si"
    assert ("450 gpm", "62 ft") == tuple(panel.form.text(n) for n in ("flow", "head"))
    assert "25.5" == panel.form.text("amps_a")  # amps are amps in both
    panel.run.click()
    # 1 hp = 0.745 699 87 kW (NIST SP 811, B.8); the 3960 of the US formula is rounded by 0.1 %.
    assert (
        pytest.approx(before * 0.74569987, rel=0.002) == panel.examined.finding("water_power").value
    )


@pytest.mark.parametrize(
    ("typed", "kept"),
    [("62 tdh", "62 ft"), ("62?", "62 ft"), ("104 - 42", "104 - 42 ft"), ("~62", "~62 ft"),
     ("62 ft 6 in", "62 ft 6 in")],
)  # fmt: skip
def test_a_number_typed_in_another_form_keeps_its_unit_after_a_change_of_units(typed, kept):
    panel = worked(head=typed)
    panel.units.value = "si"
    assert kept == panel.form.text("head")


def test_numbers_that_were_of_the_other_system_all_along_get_their_units_taken_away():
    panel = typed(flow="30", head="19")
    panel.units.value = "si"
    assert "Were they really metric?" in words(panel.units_said.value)
    panel.take_away.click()
    assert ("30", "19") == tuple(panel.form.text(n) for n in ("flow", "head"))
    assert "none" == panel.take_away.layout.display


def test_what_has_a_unit_or_cannot_be_read_stays_as_it_stands():
    panel = typed(flow="0.7 MGD", head="high")
    panel.units.value = "si"
    assert ("0.7 MGD", "high") == tuple(panel.form.text(n) for n in ("flow", "head"))
    assert "none" == panel.take_away.layout.display


@pytest.mark.parametrize("field", [f for f in FIELDS if f.unit("us") != f.unit("si")],
                         ids=lambda field: field.name)  # fmt: skip
def test_every_bare_number_means_the_same_after_a_change_of_units(field):
    panel = typed(**{field.name: "10"})
    before = read_entries(panel.form.texts, "us")[0].values
    panel.units.value = "si"
    panel.units.value = "us"
    assert before == read_entries(panel.form.texts, "us")[0].values


# What came of it


def test_the_most_pressing_findings_come_first():
    panel = worked(**LEGS, volts_ab="480", volts_bc="440", volts_ca="460", rated_volts="460")
    states = [STATES.index(found.state) for found in pressing_first(panel.examined)]
    assert states == sorted(states)
    assert len(set(states)) > 1
    heads = re.findall(
        r'<span class="w2w-state">.*?</span> ([^<]*)</span>', panel.outcome.result.value
    )
    assert [STATES[at].capitalize() for at in states] == heads


def test_each_finding_says_its_state_in_a_word_its_verdict_its_limit_and_its_source():
    text = words(worked(**LEGS).outcome.result.value)
    row = "Current unbalance 8% limit up to 5% ! Look into it The current unbalance is 8%, over 5%."
    assert row in text
    verdict = examine(read_entries(LEGS)[0]).finding("current_unbalance").verdict
    assert f"Limit: {verdict.limit}. Source: {verdict.source}." in text


def test_what_has_no_known_limit_comes_after_what_was_judged():
    text = words(worked(**LEGS, flow="450", head="62").outcome.result.value)
    assert text.index("Current unbalance 8%") < text.index("Water horsepower 7.045 hp – ")


def test_each_result_opens_to_its_worked_solution():
    html = worked(**LEGS).outcome.result.value
    opened = html.partition("Current unbalance")[2]
    assert "Step 3: current unbalance" in words(opened.partition("</details>")[0])


def test_contradictions_what_to_check_next_cautions_and_what_was_not_measured_are_there():
    record = {"flow": "450", "head": "62", "input_power": "4"}
    examined = examine(read_entries(record)[0])
    text = words(examined_html(examined))
    assert examined.contradictions
    for line in (*examined.contradictions, *examined.next_checks):
        assert line in text
    assert f"Not measured Nameplate; {'; '.join(examined.not_measured)[11:]}." in text
    assert "can kill. Read this first." in text


@pytest.mark.parametrize(
    ("texts", "heading"),
    [({}, "A pump without a name, no date"), ({"pump": "2"}, "Pump 2, no date")],
)
def test_the_heading_of_a_record_begins_with_a_capital(texts, heading):
    examined = examine(read_entries({**LEGS, **texts}, "us")[0])
    assert f"<h3>{heading}</h3>" in examined_html(examined)


def test_every_record_says_that_it_never_replaces_a_qualified_person():
    assert ALWAYS in words(worked(pump="Pump 2").outcome.result.value)


# What is kept


def test_what_is_typed_is_there_again_when_the_page_comes_back():
    typed(**LEGS, station="Tannery Lane", flow="ten").units.value = "si"
    again = page.record()
    assert "si" == again.units.value
    assert LEGS | {"station": "Tannery Lane", "flow": "ten"} == again.form.texts
    assert "What you typed last time is still here." in words(again.said.value)
    assert again.form.groups["volts and amps"].open


def test_a_form_is_emptied_and_what_was_in_it_brought_back():
    panel = typed(**LEGS)
    panel.empty.click()
    assert {} == panel.form.texts == page.record().form.texts
    panel.clock = lambda: 1e9
    panel.empty.click()
    assert LEGS == panel.form.texts == page.record().form.texts


@pytest.mark.parametrize(
    "kept", ["", "{", "[]", '{"units": "furlongs", "texts": {"flow": "1"}}', "null"]
)
def test_a_file_that_holds_no_draft_is_an_empty_form(kept, tmp_path):
    (tmp_path / "record-draft.json").write_text(kept)
    assert {} == page.record().form.texts


def test_a_computer_that_keeps_nothing_is_told_of_and_the_form_works(tmp_path, monkeypatch):
    monkeypatch.setenv(KEPT, str(tmp_path / "file"))
    (tmp_path / "file").write_text("in the way")
    panel = worked(**LEGS)
    assert "can't be kept on this computer" in words(panel.units_said.value)
    assert "Current unbalance 8%" in words(panel.outcome.result.value)


def test_an_entry_that_was_not_read_has_a_way_to_its_box():
    panel = worked(**LEGS, flow="plenty")
    assert ["Go to flow by meter"] == [way.description for way in panel.unread.children]
    panel.form.groups["flow meter and power"].show(False)
    panel.unread.children[0].click()
    assert panel.form.groups["flow meter and power"].open
