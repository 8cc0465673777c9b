"""A way through a case: safety first, in its order; nothing shown that was not earned; the review."""

import json

import pytest

from solver.__main__ import main
from solver.errors import BadDefinition
from solver.fault.case import fault_case
from solver.fault.review import sure_way, turns
from solver.fault.safety import LOCKOUT, PERMIT, QUALIFIED, RESTORE
from solver.fault.way import Way, way_of
from solver.render.fault import fault_json, fault_text, summary, told_text

CASE = fault_case(2, "us", 5)
CODE = str(CASE.code)
DEAD = [name for name, act in CASE.acts.items() if act.needs == "dead"]
LIVE = [name for name, act in CASE.acts.items() if act.needs == "live"]


def after(*words: str) -> Way:
    return way_of(CODE, words)


@pytest.mark.parametrize("act", LIVE)
def test_a_live_reading_needs_a_qualified_person(act):
    (stopped,) = after(act).told
    assert stopped.stopped
    assert "1910.333(c)" in stopped.stopped.source
    assert stopped.found is None
    assert 0 == stopped.minutes
    assert after(QUALIFIED, act).told[-1].found


@pytest.mark.parametrize("act", DEAD)
@pytest.mark.parametrize("missing", LOCKOUT)
def test_nothing_inside_before_every_step_of_lockout(act, missing):
    steps = [step for step in LOCKOUT if step != missing]
    told = after(*steps, PERMIT, act).told[-1]
    assert told.stopped
    assert told.found is None
    assert "1910.147" in told.stopped.source


@pytest.mark.parametrize("act", DEAD)
def test_locked_out_and_proved_dead_it_can_be_opened(act):
    way = after(*LOCKOUT, PERMIT, act)
    assert not way.unsafe
    assert way.told[-1].found


@pytest.mark.parametrize("place", range(1, len(LOCKOUT)))
def test_a_step_of_lockout_out_of_order_stops_with_its_rule(place):
    way = after(*LOCKOUT[: place - 1], LOCKOUT[place])
    assert way.told[-1].stopped
    assert LOCKOUT[place] not in way.done


def test_the_vault_needs_its_permit():
    told = after(*LOCKOUT, "check_valve").told[-1]
    assert "1910.146" in told.stopped.source
    assert "gauges" not in told.stopped.says


@pytest.mark.parametrize("act", ["gauges", "listen", *LIVE])
def test_what_is_locked_out_does_not_run(act):
    assert after(QUALIFIED, *LOCKOUT, act).told[-1].stopped
    assert after(QUALIFIED, *LOCKOUT[:2], act).told[-1].stopped
    assert after(QUALIFIED, *LOCKOUT, RESTORE, act).told[-1].found
    again = after(*LOCKOUT, RESTORE, DEAD[0])
    assert again.told[-1].stopped


def test_a_reading_taken_twice_takes_its_minutes_once():
    assert after("gauges").minutes == after("gauges", "gauges").minutes
    assert after(*LOCKOUT).minutes == after(*LOCKOUT, *LOCKOUT).minutes


def test_a_submersible_is_hoisted_once():
    way = after(*LOCKOUT)
    first, second = way.cost("oil"), way.then("impeller").cost("oil")
    assert 40 == first - second


def test_the_same_words_come_to_the_same_way():
    words = ("gauges", "amps", QUALIFIED, "amps", "review")
    assert after(*words) == after(*words)
    assert words == after(*words).words


def test_a_wrong_name_is_told_what_speaks_against_it():
    wrong = next(name for name in CASE.suspects if name != CASE.fault)
    before = after(f"name:{wrong}").told[-1].says
    assert "One more reading would show it" in before
    every = [QUALIFIED, *(a for a in CASE.acts if CASE.acts[a].needs != "dead")]
    for name in CASE.suspects:
        if name != CASE.fault:
            says = after(*every, f"name:{name}").told[-1].says
            assert says.startswith("Not “") or "One more reading" in says
    assert not after(f"name:{wrong}").ended


def test_a_case_is_over_once_it_is_named_and_acted_on():
    named = after(f"name:{CASE.fault}")
    assert named.named
    assert not named.ended
    over = named.then("do:call")
    assert over.ended
    with pytest.raises(BadDefinition, match="This case is over"):
        over.then("gauges")
    with pytest.raises(BadDefinition, match="First name the fault"):
        after("do:call")


def test_an_unknown_word_names_those_there_are():
    with pytest.raises(BadDefinition, match="Readings: gauges, listen"):
        after("smell")
    with pytest.raises(BadDefinition, match="isn't on this case's list"):
        after("name:rust")


def test_the_review_says_what_each_reading_ruled_out():
    way = sure_way(CODE)
    told = list(turns(way))
    assert len(way.taken) == len(told)
    out = [one.fault for turn in told for one in turn.out]
    assert set(CASE.suspects) - {CASE.fault} == set(out)
    assert (CASE.fault,) == told[-1].left
    assert all("you " in one.read or "size" in one.read for turn in told for one in turn.out)
    assert all("would" in one.would or "fits" in one.would for turn in told for one in turn.out)
    assert all(turn.best.bits >= turn.best.taken for turn in told)
    assert "Nothing you tried was unsafe." in summary(way)


def test_a_stopped_reading_never_gives_its_number():
    for act in (*LIVE, *DEAD):
        way = after(act)
        (line,) = (told_text(way, told) for told in way.told)
        assert line.startswith("  Stopped: ")
        assert {"word", "minutes", "stopped"} == set(fault_json(way)["steps"][0])


def test_the_fault_is_in_no_answer_before_the_way_is_over():
    data = fault_json(after("gauges", "listen"))
    assert not data["over"]
    assert "fault" not in data
    assert "sure_way" not in data
    assert "Review" not in fault_text(after("gauges"))


def test_the_command_shows_a_case_and_takes_readings(capsys):
    assert 0 == main(["fault", CODE, "--take", "gauges", "--take", "amps"])
    shown = capsys.readouterr().out
    assert "Last year's record" in shown
    assert "Pressure gauges, 2 min: discharge gauge" in shown
    assert "Stopped: amps by leg." in shown
    assert max(map(len, shown.splitlines())) < 260
    assert 0 == main(["fault", CODE, "--name", CASE.fault, "--do", "call", "--json"])
    data = json.loads(capsys.readouterr().out)
    assert CASE.fault == data["fault"]
    assert data["right_first"]


def test_the_command_refuses_with_one_line(capsys):
    assert 2 == main(["fault", CODE, "--take", "smell"])
    assert "Nothing here is called “smell”." in capsys.readouterr().err
    assert 2 == main(["fault", "--level", "9"])
    assert "Levels are 1 to 3" in capsys.readouterr().err
