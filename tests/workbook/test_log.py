"""The attempt log: kept once it is said to be kept, whole after any accident, one when merged."""

import re
import subprocess
import sys
import textwrap
import time
from concurrent.futures import ThreadPoolExecutor

import pytest
from hypothesis import given
from hypothesis import strategies as st
from jupyter_client.manager import start_new_kernel

from workbook.log import (
    SHOWN,
    Attempt,
    Log,
    NotAnAttempt,
    NotKept,
    NotRead,
    add_lines,
    line_of,
    made,
    merged,
    parse,
    read_line,
)

WORDS = st.text(st.characters(exclude_categories=("Cs",)), max_size=20)
TIMES = st.datetimes().map(lambda moment: moment.isoformat(timespec="milliseconds") + "Z")
ATTEMPTS = st.builds(
    Attempt,
    id=st.sampled_from("abcdef"),  # few, so that logs share attempts and differ in some
    when=TIMES,
    code=st.just("BP-2U1-7-68"),
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
FIELDS = {"code": "BP-2U1-7-68", "family": "brake_power", "level": 2, "status": "wrong"}


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
        ("{", "it is not whole"),
        ("[" * 9_000, "it is not whole"),
        ("7", "it is not a line of a log"),
        ('{"v": "1"}', "it is not a line of a log"),
        ('{"v": 2}', "a later edition of the workbook wrote it"),
        ('{"v": true}', "it is not a line of a log"),
        ('{"v": 0}', "no edition wrote version 0"),
        ('{"v": 1, "id": "a"}', "it lacks when, code, family, level, typed, status"),
        (line_of(one())[:-1] + ', "more": 1}', "it has more too many"),
        (line_of(one(level=True)), "its level is not as it should be"),
        (line_of(one()._replace(when="yesterday")), "its time is not one in UTC"),
        (line_of(one()._replace(when="2026-11-25T18:04:31")), "its time is not one in UTC"),
        (line_of(one(seconds=float("nan"))), "a number in it is below what it can be"),
        (line_of(one(seconds=10**400)), "its seconds is not as it should be"),
        (line_of(one(level=0)), "a number in it is below what it can be"),
        (line_of(one(status="great")), "its status is not one of right, mistake"),
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
    assert ("BP-2U1-7-68", "12.5 hp", 41.0) == (attempt.code, attempt.typed, attempt.seconds)
    assert attempt.unaided


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
    assert [(2, "it is not whole")] == [(s.number, s.why) for s in later.strange]


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
    with pytest.raises(NotRead, match=r"Your log could not be read.*attempts\.jsonl"):
        Log(path).read()


class Slow(list):
    """A list after whose growth much else can happen."""

    def extend(self, more):
        super().extend(more)
        time.sleep(0.1)


def test_two_threads_of_one_page_that_answer_at_once_lose_nothing(path, monkeypatch):
    def slowly(path, lines):
        lines = list(lines)
        time.sleep(0.2)
        add_lines(path, lines)

    monkeypatch.setattr("workbook.log.store.add_lines", slowly)
    log = Log(path)
    log.waiting = Slow()
    with ThreadPoolExecutor(2) as pool:
        first = pool.submit(log.keep, one("1"))
        time.sleep(0.25)  # its lines are on their way, and then forgotten
        pool.submit(log.keep, one("2")).result()
        first.result()
    assert ["1", "2"] == typed(Log(path))


PART = """
import errno, pathlib, resource, signal, sys
from workbook.log import Log, NotKept, made
path = pathlib.Path(sys.argv[1])
fields = dict(code="BP-2U1-7-68", family="brake_power", level=2, status="wrong")
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
    assert "The folder does not allow it. Allow writing there" in said, told.stderr
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


KILLED = """
import os, pathlib, random, signal, sys, time
from workbook.log import Log, made

path, times = pathlib.Path(sys.argv[1]), int(sys.argv[2])
chance = random.Random(7)
fields = dict(code="BP-2U1-7-68", family="brake_power", level=2, status="wrong")

def write_for_ever(out):
    log = Log(path)
    while True:
        attempt = made(typed="9" * chance.randrange(1, 3000), **fields)
        log.keep(attempt)
        os.write(out, attempt.id.encode())

for turn in range(times):
    heard, out = os.pipe()
    if not (writer := os.fork()):
        write_for_ever(out)
    os.close(out)
    time.sleep(chance.uniform(0, 0.08))
    os.kill(writer, signal.SIGKILL)
    os.waitpid(writer, 0)
    while ids := os.read(heard, 32 * 1024):
        sys.stdout.write(ids.decode())
    os.close(heard)
"""


def test_nothing_kept_is_lost_though_the_program_is_killed_two_hundred_times(root, path):
    told = python(KILLED, path, 200, cwd=root)
    assert "" == told.stderr
    kept = {told.stdout[n : n + 32] for n in range(0, len(told.stdout), 32)}
    log = Log(path)
    log.read()
    assert len(kept) > 100
    assert kept <= {attempt.id for attempt in log.attempts}
    # What is torn is only ever one line a killing, and none of it was said to be kept.
    assert len(log.strange) <= 200


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
