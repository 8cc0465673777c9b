"""The attempt log: kept once it is said to be kept, whole after any accident, one when merged."""

import re
import subprocess
import sys
import textwrap
from concurrent.futures import ThreadPoolExecutor
from datetime import UTC, datetime, timedelta
from threading import Event

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jupyter_client.manager import start_new_kernel

from tests.benchmarks.damage import (
    LOG,
    SITTING,
    killed,
    read_log,
    read_sitting,
    turned,
    unchecked,
)
from workbook.log import (
    SHOWN,
    Attempt,
    Log,
    NotALine,
    NotAnAttempt,
    NotKept,
    NotRead,
    add_lines,
    checked_line,
    fields_of,
    line_of,
    made,
    merged,
    parse,
    read_line,
)

WORDS = st.text(st.characters(exclude_categories=("Cs",)), max_size=20)
TIMES = st.datetimes(datetime(1970, 1, 1), datetime(2199, 12, 31)).map(
    lambda moment: moment.isoformat(timespec="milliseconds") + "Z"
)
ATTEMPTS = st.builds(
    Attempt,
    id=st.sampled_from("abcdef"),  # few, so that logs share attempts and differ in some
    when=TIMES,
    code=st.just("BP-2U1-7-KMZ"),
    family=st.just("brake_power"),
    level=st.integers(1, 4),
    typed=WORDS,
    status=st.sampled_from(["right", "mistake", "close", "wrong", SHOWN]),
    mistake=WORDS,
    seconds=st.floats(0, 1e6),
    tries=st.integers(1, 20),
    hints=st.integers(0, 9),
    solution=st.booleans(),
    of=WORDS,
    who=WORDS,
)
LOGS = st.lists(ATTEMPTS, max_size=6)
FIELDS = {"code": "BP-2U1-7-KMZ", "family": "brake_power", "level": 2, "status": "wrong"}


def one(typed="9 hp", **fields):
    return made(**FIELDS | {"typed": typed} | fields)


def typed(log):
    log.read()
    return [attempt.typed for attempt in log.attempts]


@pytest.fixture
def path(tmp_path):
    return tmp_path / "kept" / "attempts.jsonl"


@given(ATTEMPTS)
def test_an_attempt_comes_back_from_its_line_as_it_was(attempt):
    assert "\n" not in line_of(attempt)
    assert attempt == read_line(line_of(attempt))


@given(LOGS, LOGS, LOGS)
def test_logs_merge_in_any_order_any_number_of_times_to_the_same(one, two, three):
    assert merged(one, two) == merged(two, one)
    assert merged(merged(one, two), three) == merged(one, merged(two, three))
    assert merged(one) == merged(one, one) == merged(merged(one))
    assert {a.id for a in one + two} == {a.id for a in merged(one, two)}


@given(st.binary(max_size=300))
def test_bytes_of_any_kind_are_read_or_set_aside_by_their_number(data):
    attempts, strange = parse(data)
    full = [n for n, line in enumerate(data.split(b"\n"), 1) if line.strip()]
    assert [] == attempts
    assert full == [line.number for line in strange]


@pytest.mark.parametrize(
    ("line", "why"),
    [
        ("{", "part of it is missing"),
        ("[" * 9_000, "part of it is missing"),
        ('{"v": 1, "id": ' + "[" * 100_000 + "]" * 100_000 + "}", "it is longer than any attempt"),
        ("7", "it isn't a line of a log"),
        ('{"v": "1"}', "it isn't a line of a log"),
        ('{"v": 2}', "its check is missing, so something in it changed"),
        ('{"v": 3}', "a newer version of the workbook wrote it"),
        (checked_line(3, {"id": "a"}), "a newer version of the workbook wrote it"),
        (line_of(one("12.5")).replace("12.5", "12.6"), "something in it changed after it was"),
        (line_of(one()).replace("check", "chuck"), "its check is missing"),
        ('{"v": true}', "it isn't a line of a log"),
        ('{"v": 0}', "no version of the workbook wrote format 0"),
        ('{"v": 1, "id": "a"}', "it has no when, code, family, level, typed, status"),
        (checked_line(2, one()._asdict() | {"more": 1}), "it has an extra more"),
        (line_of(one())[:-1] + ', "more": 1}', "something in it changed after it was written"),
        (line_of(one(level=True)), "its level isn't what it should be"),
        (line_of(one()._replace(when="yesterday")), "its time isn't in UTC"),
        (line_of(one()._replace(when="2026-11-25T18:04:31")), "its time isn't in UTC"),
        (line_of(one()._replace(when="9999-12-31T23:59:59Z")), "its year is 9999"),
        (line_of(one()._replace(when="0001-01-01T00:00:00Z")), "its year is 0001"),
        (line_of(one(seconds=float("nan"))), "a number in it is too small"),
        (line_of(one(seconds=10**400)), "its seconds isn't what it should be"),
        (line_of(one(level=0)), "a number in it is too small"),
        (line_of(one(status="great")), "its status isn't one of right, mistake"),
        ('"' + "x" * 30_000 + '"', "it is longer than any attempt"),
    ],
)
def test_a_line_that_is_no_attempt_says_what_it_is(line, why):
    with pytest.raises(NotAnAttempt, match=re.escape(why)):
        read_line(line)


def test_a_line_of_the_first_edition_still_reads():
    # Written once by the first edition that kept a log; it must never be changed.
    line = (
        '{"v": 1, "id": "0b7ce1", "when": "2026-11-25T18:04:31.250Z", "code": "BP-2U1-7-68",'
        ' "family": "brake_power", "level": 2, "typed": "12.5 hp", "status": "right",'
        ' "mistake": "", "seconds": 41, "tries": 1, "hints": 0, "solution": false,'
        ' "of": "", "who": ""}'
    )
    attempt = read_line(line)
    assert ("BP-2U1-7-KMZ", "12.5 hp", 41.0) == (attempt.code, attempt.typed, attempt.seconds)
    assert attempt.unaided


def test_a_line_that_another_program_ended_otherwise_still_has_its_check():
    attempt = one('½ \N{PRIME}, "check": "')
    assert attempt == read_line(line_of(attempt).encode() + b"\r")


@given(st.dictionaries(WORDS.map("_{}".format), WORDS | st.integers() | st.lists(WORDS)))
def test_what_has_a_check_comes_back_and_with_another_letter_does_not(fields):
    line = checked_line(2, fields).encode()
    assert {"v": 2, **fields} == fields_of(line, 2)
    for at in range(len(line)):
        with pytest.raises(NotALine, match=r"changed|missing|line of a log"):
            fields_of(line[:at] + bytes([line[at] ^ 0x81]) + line[at + 1 :], 2)


def moment(days):
    when = datetime.now(UTC) + timedelta(days)
    return when.isoformat(timespec="microseconds").replace("+00:00", "Z")


def test_a_time_ahead_of_now_counts_as_that_of_the_next_answer_written_or_as_now(path):
    ahead, past = moment(365), moment(-3)
    lines = [("1", moment(-9)), ("2", ahead), ("3", ahead), ("4", past), ("5", ahead)]
    add_lines(path, [line_of(one(text)._replace(when=when)) for text, when in lines])
    log = Log(path)
    log.read()
    when = {attempt.typed: attempt.when for attempt in log.attempts}
    assert (past, past, past) == (when["2"], when["3"], when["4"])
    assert past < when["5"] <= moment(0)
    assert 3 == path.read_text("utf-8").count(ahead)  # the file stays as it was written
    assert 0 == log.merge(parse(path.read_bytes())[0])


def test_what_one_page_keeps_another_reads(path):
    here, there = Log(path), Log(path)
    here.keep(one("1"))
    there.keep(one("2"))
    here.keep(one("3"))
    assert ["1", "2", "3"] == typed(here) == typed(there)


def test_reading_again_takes_in_only_what_is_new(path):
    log = Log(path)
    log.keep(one("1"))
    assert ["1"] == typed(log)
    Log(path).keep(one("2"))
    assert ["1", "2"] == typed(log) == typed(log)


def test_a_torn_last_line_is_set_aside_and_the_next_attempt_is_whole(path):
    log = Log(path)
    log.keep(one("1"))
    with path.open("ab") as file:
        file.write(line_of(one("lost")).encode()[:40])
    log.keep(one("2"))
    later = Log(path)
    assert ["1", "2"] == typed(later)
    assert [(2, "part of it is missing")] == [(s.number, s.why) for s in later.strange]


def test_a_last_line_without_its_end_counts_if_it_is_whole(path):
    log = Log(path)
    log.keep(one("1"))
    path.write_bytes(path.read_bytes().rstrip())
    Log(path).keep(one("2"))
    assert ["1", "2"] == typed(Log(path))


def test_lines_are_numbered_as_in_the_file_however_often_it_is_read(path):
    log = Log(path)
    log.keep(one("1"))
    log.read()
    with path.open("ab") as file:
        file.write(b"what is this\n")
    log.keep(one("2"))
    log.read()
    assert [2] == [line.number for line in log.strange]


def test_a_full_disk_is_said_and_the_attempt_is_written_later(path):
    path.parent.mkdir()
    path.symlink_to("/dev/full")  # every write there fails as on a full disk
    log = Log(path)
    with pytest.raises(NotKept, match="The disk is full"):
        log.keep(one("1"))
    assert ["1"] == [attempt.typed for attempt in log.attempts]
    path.unlink()
    log.keep(one("2"))
    assert ["1", "2"] == typed(Log(path))


def test_a_log_that_stands_at_a_device_without_end_is_read_as_empty(path):
    path.parent.mkdir()
    path.symlink_to("/dev/full")
    assert [] == typed(Log(path))


def test_a_log_that_cannot_be_read_says_so_and_where_it_stands(path):
    path.mkdir(parents=True)
    with pytest.raises(NotRead, match=r"Your log couldn't be read.*attempts\.jsonl"):
        Log(path).read()


def test_two_threads_of_one_page_that_answer_at_once_lose_nothing(path, monkeypatch):
    on_its_way, asked_again = Event(), Event()

    def slowly(path, lines):
        lines = list(lines)
        on_its_way.set()
        assert asked_again.wait(60)
        add_lines(path, lines)

    def keep_second(log):
        asked_again.set()
        log.keep(one("2"))

    monkeypatch.setattr("workbook.log.store.add_lines", slowly)
    log = Log(path)
    with ThreadPoolExecutor(2) as pool:
        first = pool.submit(log.keep, one("1"))
        assert on_its_way.wait(60)  # its lines are on their way, and then forgotten
        pool.submit(keep_second, log).result()
        first.result()
    assert ["1", "2"] == typed(Log(path))


PART = """
import errno, pathlib, resource, signal, sys
from workbook.log import Log, NotKept, made
path = pathlib.Path(sys.argv[1])
fields = dict(code="BP-2U1-7-KMZ", family="brake_power", level=2, status="wrong")
log = Log(path)
log.keep(made(typed="1", **fields))
size = path.stat().st_size
signal.signal(signal.SIGXFSZ, signal.SIG_IGN)
resource.setrlimit(resource.RLIMIT_FSIZE, (size + 50, size + 50))
try:
    log.keep(made(typed="2", **fields))
except NotKept as told:
    print(told.__cause__.errno == errno.EFBIG, path.stat().st_size == size)
"""


def python(text, *words, **how):
    command = [sys.executable, "-c", textwrap.dedent(text), *map(str, words)]
    return subprocess.run(command, capture_output=True, text=True, check=False, **how)


def test_a_write_that_stops_half_way_leaves_the_file_as_it_was(root, path):
    told = python(PART, path, cwd=root)
    assert "True True" == told.stdout.strip(), told.stderr


READ_ONLY = """
import os, pathlib, sys
from workbook.log import Log, NotKept, made
if os.getuid() == 0:
    os.setgroups([])
    os.setuid(65534)
log = Log(pathlib.Path(sys.argv[1]))
log.read()
try:
    log.keep(made(code="c", family="f", level=1, typed="2", status="wrong"))
except NotKept as told:
    print(told)
print([attempt.typed for attempt in log.attempts])
"""


def test_a_log_that_may_only_be_read_is_read_and_what_is_new_is_held(root, path):
    Log(path).keep(one("1"))
    path.with_name("attempts.jsonl.lock").unlink(missing_ok=True)
    path.chmod(0o444)
    path.parent.chmod(0o555)
    for above in path.parent.parents:  # the folders that pytest makes are its own alone
        if "pytest" in str(above.parent) or "pytest" in above.name:
            above.chmod(above.stat().st_mode | 0o555)
    told = python(READ_ONLY, path, cwd=root)
    path.parent.chmod(0o755)
    said, kept = told.stdout.splitlines()
    assert "This folder doesn't allow it. Allow writing there" in said, told.stderr
    assert "['1', '2']" == kept


def test_a_changed_copy_of_an_attempt_is_taken_or_left_once_and_for_all(path):
    mine = one("b")
    first, last = sorted([mine, mine._replace(typed="a")], key=line_of)
    for held, other, news in ((first, last, [0, 0]), (last, first, [1, 0])):
        log = Log(path.with_name(f"{held.typed}.jsonl"))
        log.keep(held)
        assert news == [log.merge([other]), log.merge([other])]
        assert [first] == log.attempts


def test_merging_adds_what_is_missing_and_nothing_twice(path):
    log = Log(path)
    mine, theirs = one("mine"), one("theirs")
    log.keep(mine)
    assert 1 == log.merge([mine, theirs])
    assert 0 == log.merge([theirs, mine])
    assert 2 == len(path.read_text().splitlines())


def test_nothing_kept_is_lost_though_the_program_is_killed_two_hundred_times(path):
    kept, lost, torn = killed(path, 200)
    assert kept > 100
    assert 0 == lost
    assert torn <= 200  # only ever one line a killing, and none of it was said to be kept


@pytest.mark.parametrize(("lines", "read"), [(LOG, read_log), (SITTING, read_sitting)])
def test_a_bit_that_turned_is_noticed_wherever_it_is(lines, read):
    became = turned(lines, read)
    assert 0 == became["taken as another"]
    assert (
        became["taken as another"] < turned(tuple(map(unchecked, lines)), read)["taken as another"]
    )


@pytest.mark.parametrize(("lines", "read"), [(LOG, read_log), (SITTING, read_sitting)])
def test_lines_written_before_there_was_a_check_read_as_they_were(lines, read):
    old = read(b"\n".join(map(unchecked, lines)))
    new = read(b"\n".join(lines))
    assert len(lines) == len(old)
    assert new == [one if isinstance(one, Attempt) else one | {"v": 2} for one in old]


MANY = 2_000


def test_two_kernels_writing_at_once_lose_nothing(root, path):
    text = f"""
import sys
sys.path.insert(0, {str(root)!r})
import pathlib
from workbook.log import Log, made
log = Log(pathlib.Path({str(path)!r}))
for n in range({MANY}):
    log.keep(made(code="c", family="f", level=1, typed=f"{{who}} {{n}}", status="wrong"))
"""
    kernels = [start_new_kernel(kernel_name="python3") for _ in range(2)]
    try:
        asked = [
            client.execute(f"who = {who!r}\n{text}")
            for who, (_, client) in zip("ab", kernels, strict=True)
        ]
        for request, (_, client) in zip(asked, kernels, strict=True):
            reply = client.get_shell_msg(timeout=300)
            while request != reply["parent_header"]["msg_id"]:  # a late answer to its start
                reply = client.get_shell_msg(timeout=300)
            assert "ok" == reply["content"]["status"], reply["content"]
    finally:
        for manager, client in kernels:
            client.stop_channels()
            manager.shutdown_kernel(now=True)
    wanted = {f"{who} {n}" for who in "ab" for n in range(MANY)}
    log = Log(path)
    assert wanted == set(typed(log))
    assert 2 * MANY == len(log.attempts)
    assert [] == log.strange
