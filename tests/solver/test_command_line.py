"""The command line, as another program drives it: keys, exit status, one line on standard error.

The shapes are those of the design's section "Command line". A key may be added to them; none of
these may go.
"""

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from solver import FAMILIES, case_from_code, draw
from solver.__main__ import main
from solver.vocabulary import quantity_named

ROOT = Path(__file__).resolve().parents[2]
FAMILY_KEYS = {"name", "chapter", "levels", "units", "given", "asked", "revision"}
CASE_KEYS = {
    "code", "family", "revision", "chapter", "level", "units", "question", "given", "asked",
    "answer", "accepted", "steps", "one_line", "mistakes",
}  # fmt: skip
STEP_KEYS = {"name", "formula", "substituted", "value", "unit", "why"}
WORK_KEYS = {"given", "asked", "answer", "steps", "missing", "contradictions"}
WATER = "WP-1U2-7-DHA"


@pytest.fixture
def run(capsys):
    """Run a command in this process: its exit status, standard output and standard error."""

    def command(*arguments: str) -> tuple[int, str, str]:
        try:
            status = main(arguments)
        except SystemExit as left:
            status = left.code
        return (status, *capsys.readouterr())

    return command


def answered(result: tuple[int, str, str]):
    """What a command that was answered printed, as data."""
    status, out, err = result
    assert (0, "") == (status, err)
    return json.loads(out)


def test_families_lists_every_family_with_what_it_gives_and_asks(run):
    found = answered(run("families", "--json"))
    assert [family.name for family in FAMILIES] == [row["name"] for row in found]
    for family, row in zip(FAMILIES, found, strict=True):
        assert set(row) >= FAMILY_KEYS
        assert list(range(1, len(family.levels) + 1)) == row["levels"]
        assert ["us", "si"] == row["units"]
        assert {name for level in family.levels for name in level.given} == set(row["given"])
        assert {str(n): family.asks(level) for n, level in enumerate(family.levels, 1)} == (
            row["asked_by_level"]
        )
        assert (family.asked, family.chapter, family.revision) == (
            row["asked"], row["chapter"], row["revision"],
        )  # fmt: skip


@pytest.mark.parametrize("units", ["us", "si"])
@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: family.name)
def test_a_case_has_every_key_and_the_values_of_the_case_itself(run, family, units):
    for level in range(1, len(family.levels) + 1):
        found = answered(
            run(
                "draw",
                family.name,
                "--seed",
                "7",
                "--units",
                units,
                "--level",
                str(level),
                "--json",
            )
        )
        case = draw(family, 7, units, level)
        assert set(found) >= CASE_KEYS
        assert (case.code, family.name, family.revision, family.chapter, level, units) == tuple(
            found[key] for key in ("code", "family", "revision", "chapter", "level", "units")
        )
        given = {
            n: {"value": v, "unit": quantity_named(n).unit(units)} for n, v in case.given.items()
        }
        assert given == found["given"]
        assert {"name": case.asked, "unit": case.unit} == found["asked"]
        assert {"value": case.answer, "unit": case.unit} == found["answer"]
        assert {"low": case.low, "high": case.high} == found["accepted"]
        assert [step.value for step in case.steps] == [step["value"] for step in found["steps"]]
        assert all(STEP_KEYS == set(step) for step in found["steps"])
        assert all(step["formula"] and step["why"] for step in found["steps"])
        assert [
            {"id": m.id, "value": m.value, "unit": case.unit, "says": m.says} for m in case.mistakes
        ] == found["mistakes"]


def test_show_gives_the_same_case_from_its_code(run):
    drawn = answered(run("draw", "water_power", "--seed", "7", "--json"))
    assert drawn == answered(run("show", drawn["code"], "--json"))


def test_us_and_level_1_are_taken_where_nothing_is_said(run):
    assert WATER == answered(run("draw", "water_power", "--seed", "7", "--json"))["code"]


@pytest.mark.parametrize(
    ("answer", "status", "mistake", "value", "unit"),
    [
        ("31.60 hp", "right", None, 31.6, "hp"),
        ("31.6", "right", None, 31.6, "hp"),
        ("23.56 kW", "right", None, 23.56 / 0.74569987, "hp"),
        ("125,125", "mistake", "water_power.left_out.water_power_constant", 125_125, "hp"),
        ("31 hp", "close", None, 31, "hp"),
        ("5 hp", "wrong", None, 5, "hp"),
        ("-5", "wrong", None, -5, "hp"),
        ("-5 hp", "wrong", None, -5, "hp"),
        ("-.5e1 hp", "wrong", None, -5, "hp"),
        ("−5 hp", "wrong", None, -5, "hp"),
    ],
)
def test_grade_gives_the_verdict_with_the_answer_as_read(run, answer, status, mistake, value, unit):
    found = answered(run("grade", WATER, answer, "--json"))
    assert (status, mistake, unit) == (found["status"], found["mistake"], found["unit"])
    assert value == pytest.approx(found["value"])
    assert found["says"].endswith(".")


def test_every_mistake_of_a_printed_case_is_graded_as_itself(run):
    case = answered(run("draw", "motor_power", "--seed", "3", "--level", "2", "--json"))
    for mistake in case["mistakes"]:
        text = f"{mistake['value']!r} {mistake['unit']}"
        found = answered(run("grade", case["code"], text, "--json"))
        assert ("mistake", mistake["id"]) == (found["status"], found["mistake"])
        assert found["says"].endswith(mistake["says"].removeprefix("This"))


def test_options_may_stand_before_or_after_a_negative_answer(run):
    expected = answered(run("grade", WATER, "-5 hp", "--json"))
    assert expected == answered(run("grade", "--json", WATER, "-5 hp"))
    assert expected == answered(run("grade", "--json", "--", WATER, "-5 hp"))


@pytest.mark.parametrize("answer", ["", "two", "2,4", "2.4 psi", "1 2", "9" * 10_000, "inf"])
def test_an_answer_that_cannot_be_read_leaves_with_2_and_says_so_in_both_places(run, answer):
    status, out, err = run("grade", WATER, answer, "--json")
    found = json.loads(out)
    assert 2 == status
    assert ("unreadable", None, None, None) == (
        found["status"], found["mistake"], found["value"], found["unit"],
    )  # fmt: skip
    assert f"{found['says']}\n" == err


def test_work_gives_the_answer_with_its_steps(run):
    found = answered(
        run("work", "--given", "flow=450 gpm", "--given", "head=62 ft", "--find", "water_power",
            "--units", "us", "--json")
    )  # fmt: skip
    assert set(found) >= WORK_KEYS
    assert 450 * 62 / 3960 == pytest.approx(found["answer"]["value"], rel=1e-12)
    assert "hp" == found["answer"]["unit"]
    assert [STEP_KEYS] == [set(step) for step in found["steps"]]
    assert {"value": 450.0, "unit": "gpm"} == found["given"]["flow"]
    assert ([], []) == (found["missing"], found["contradictions"])


def test_work_says_what_is_missing_and_was_still_answered(run):
    found = answered(run("work", "--given", "flow=450 gpm", "--find", "water_power", "--json"))
    assert found["answer"] is None
    assert ["head"] in found["missing"]


def test_work_says_what_cannot_be_true_and_was_still_answered(run):
    found = answered(
        run("work", "--given", "water_power=13 hp", "--given", "brake_power=10 hp", "--find",
            "pump_efficiency", "--json")
    )  # fmt: skip
    assert any("130%" in text for text in found["contradictions"])


def test_a_given_may_hold_an_equals_sign_only_to_part_name_and_value(run):
    status, _, err = run("work", "--given", "flow=x=450 gpm", "--find", "water_power")
    assert 2 == status
    assert err.startswith("flow: ")


REFUSED = {
    "no command": (),
    "unknown command": ("solve",),
    "no seed": ("draw", "water_power"),
    "seed not a number": ("draw", "water_power", "--seed", "seven"),
    "seed below nothing": ("draw", "water_power", "--seed", "-1"),
    "seed too large": ("draw", "water_power", "--seed", "1000000000"),
    "unknown family": ("draw", "watts", "--seed", "7"),
    "unknown level": ("draw", "water_power", "--seed", "7", "--level", "9"),
    "unknown units": ("draw", "water_power", "--seed", "7", "--units", "metric"),
    "unknown option": ("draw", "water_power", "--seed", "7", "--loud"),
    "not a code": ("show", "hello"),
    "mistyped code": ("show", "WP-1U1-8-60"),
    "empty code": ("show", ""),
    "code in lines": ("show", "a\nb"),
    "grade without answer": ("grade", WATER),
    "grade of a bad code": ("grade", "hello", "2.4"),
    "grade of two answers": ("grade", WATER, "2.4", "hp"),
    "nothing to find": ("work", "--given", "flow=450 gpm"),
    "given without a value": ("work", "--given", "flow", "--find", "water_power"),
    "given twice": ("work", "--given", "flow=1", "--given", "flow=2", "--find", "water_power"),
    "unknown given": ("work", "--given", "flwo=450 gpm", "--find", "water_power"),
    "unknown find": ("work", "--given", "flow=450 gpm", "--find", "watr_power"),
    "given unreadable": ("work", "--given", "flow=lots", "--find", "water_power"),
    "given of another kind": ("work", "--given", "flow=450 psi", "--find", "water_power"),
}


@pytest.mark.parametrize("arguments", REFUSED.values(), ids=REFUSED)
def test_bad_usage_leaves_with_2_and_one_line_on_standard_error(run, arguments):
    status, out, err = run(*arguments)
    assert (2, "") == (status, out)
    assert 1 == err.count("\n") == len(err.splitlines())
    assert err.endswith((".\n", "\n"))
    assert "Traceback" not in err


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("solve",), "For example, type: python -m solver draw water_power --seed 7"),
        (("draw", "water_power"), "For example, type: python -m solver draw water_power --seed 7"),
        (("draw", "watts", "--seed", "7"), "To list them all, type: python -m solver families"),
        (("show", "hello"), "A code looks like WP-1U2-7-DHA"),
        (("work", "--given", "flow", "--find", "head"), 'For example, type --given flow="450 gpm"'),
        (("work", "--given", "flwo=1", "--find", "head"), "Did you mean flow"),
        (("grade", WATER), 'For example, type: python -m solver grade WP-1U2-7-DHA "31.6 hp"'),
    ],
)
def test_the_line_says_what_to_type_instead(run, arguments, says):
    assert says in run(*arguments)[2]


@pytest.mark.parametrize(
    ("arguments", "says"),
    [
        (("families",), "water_power"),
        (("draw", "water_power", "--seed", "7"), f"Code: {WATER}"),
        (("show", WATER), "water horsepower = flow × total dynamic head / 3,960"),
        (("grade", WATER, "31.6"), "right: Right: 31.6 hp."),
        (("work", "--given", "flow=450", "--given", "head=62", "--find", "water_power"),
         "The water horsepower is 7.045 hp."),
    ],
)  # fmt: skip
def test_without_json_a_person_reads_the_same_in_words(run, arguments, says):
    status, out, err = run(*arguments)
    assert (0, "") == (status, err)
    assert says in out


@pytest.mark.parametrize("command", ["families", "draw", "show", "grade", "work"])
def test_help_says_what_a_command_takes(run, command):
    status, out, _ = run(command, "--help")
    assert 0 == status
    assert f"solver {command}" in out


def python(*arguments: str | bytes, **more: str) -> subprocess.CompletedProcess:
    plain = {"PATH": os.environ["PATH"], "PYTHONPATH": str(ROOT), "LANG": "C", "LC_ALL": "C"} | more
    command = [sys.executable, "-m", "solver", *arguments]
    return subprocess.run(command, capture_output=True, cwd=ROOT, env=plain, timeout=60)


def test_it_runs_as_a_program_in_the_plainest_surroundings():
    """No locale, nothing else set: JSON is still whole and is UTF-8."""
    done = python("draw", "water_power", "--seed", "7", "--json")
    assert (0, b"") == (done.returncode, done.stderr)
    assert case_from_code(WATER).question == json.loads(done.stdout.decode("utf-8"))["question"]


def test_a_code_page_that_lacks_our_signs_does_not_matter():
    """As a pipe on Windows has it: the minus sign is not in code page 1252."""
    code = draw("most_lost", 7).code
    done = python("show", code, "--json", PYTHONIOENCODING="cp1252", PYTHONUTF8="0")
    assert (0, b"") == (done.returncode, done.stderr)
    assert "−" in json.loads(done.stdout.decode("utf-8"))["steps"][-1]["formula"]


@pytest.mark.parametrize("answer", [b"\xff hp", b"2.4 \xe2\x82", b"\xed\xa0\x80"])
def test_bytes_that_are_no_text_are_unreadable_and_not_a_fault(answer):
    done = python("grade", WATER, answer, "--json")
    assert 2 == done.returncode
    assert b"Traceback" not in done.stderr
    assert 1 == done.stderr.count(b"\n")
    assert "unreadable" == json.loads(done.stdout)["status"]


def test_a_refusal_leaves_with_2_also_as_a_program():
    done = python("show", "hello")
    assert (2, b"", 1) == (done.returncode, done.stdout, done.stderr.count(b"\n"))
