"""Copies of the log: saved whole, brought in once, and refused in a sentence."""

import json
import re
from base64 import b64decode
from datetime import UTC, date, datetime
from html import unescape
from urllib.parse import quote

import pytest

from workbook.log import Log, line_of, made
from workbook.practice import log_copies
from workbook.practice.log_copies import LogCopies
from workbook.ui import static_site

FIELDS = {"code": "BP-2U1-7-KMZ", "family": "brake_power", "level": 2, "status": "wrong"}


def one(typed):
    return made(typed=typed, **FIELDS)


def text(html):
    return unescape(" ".join(re.sub(r"<[^>]*>", " ", html).split()))


@pytest.fixture
def log(tmp_path):
    return Log(tmp_path / "mine" / "attempts.jsonl")


@pytest.fixture
def copies(log):
    panel = LogCopies(log, today=lambda: date(2026, 11, 25))
    panel.clock = iter(range(0, 10_000, 5)).__next__  # no click is half of a double one
    return panel


def saved(copies):
    """The name and the bytes of the copy that the link holds."""
    copies.save.click()
    name, data = re.search(
        r'download="([^"]*)" href="data:application/jsonl;base64,([^"]*)"', copies.saved.value
    ).groups()
    return name, b64decode(data)


def bring(copies, data, *names):
    """What is said when a browser hands over files of these names, each with these bytes."""
    copies.upload.value = [
        {
            "name": name,
            "type": "",
            "size": len(data),
            "content": memoryview(data),
            "last_modified": datetime.now(UTC),
        }
        for name in names or ("copy.jsonl",)
    ]
    return text(copies.said.value)


def lines(*attempts):
    return "".join(line_of(attempt) + "\n" for attempt in attempts).encode()


def test_a_copy_holds_every_line_and_the_day(log, copies):
    log.keep(one("1"), one("12,5 “hp” µ"))
    name, data = saved(copies)
    assert "wire-to-water-answers-2026-11-25.jsonl" == name
    assert log.path.read_bytes() == data
    assert "Save 2 answers" in copies.saved.value


def test_a_copy_holds_what_another_page_wrote_and_what_still_waits(log, copies, monkeypatch):
    Log(log.path).keep(one("theirs"))
    monkeypatch.setattr("workbook.log.store.add_lines", _full)
    with pytest.raises(OSError, match="full"):
        log.keep(one("waits"))
    _, data = saved(copies)
    assert [b"theirs", b"waits"] == re.findall(rb'"typed": "(\w+)"', data)


def _full(path, lines):
    raise OSError("full")


def test_an_empty_log_gives_no_link(copies):
    copies.save.click()
    assert "Your log is empty, so there is nothing to save yet." in copies.said.value
    assert "" == copies.saved.value


def test_a_copy_brought_in_twice_is_there_once(log, copies, tmp_path):
    log.keep(one("mine"))
    there = LogCopies(Log(tmp_path / "theirs" / "attempts.jsonl"))
    there.kept.keep(one("theirs"))
    _, data = saved(copies)
    assert "“copy.jsonl”: 1 answer brought in, 0 were here already." in bring(there, data)
    assert "“copy.jsonl”: 0 answers brought in, 1 was here already." in bring(there, data)
    again = Log(there.kept.path)
    again.read()
    assert {"mine", "theirs"} == {attempt.typed for attempt in again.attempts}
    assert [] == again.strange


def test_two_machines_that_bring_in_each_others_copies_have_the_same(log, copies, tmp_path):
    other = LogCopies(Log(tmp_path / "theirs" / "attempts.jsonl"))
    other.clock = copies.clock
    log.keep(one("mine"))
    other.kept.keep(one("theirs"))
    bring(copies, saved(other)[1])
    bring(other, saved(copies)[1])
    assert log.attempts == other.kept.attempts
    assert saved(copies)[1] == saved(other)[1]


def test_several_copies_are_brought_in_at_once_and_each_is_told(log, copies):
    told = bring(copies, lines(one("1")), "a", "b")
    assert "“a”: 1 answer brought in, 0 were here already." in told
    assert "“b”: 0 answers brought in, 1 was here already." in told
    assert 1 == len(log.attempts)


def test_a_broken_line_stays_out_with_its_number_and_the_others_come_in(log, copies):
    data = lines(one("1")) + b'{"v": 1, "id\n' + lines(one("2"))
    told = bring(copies, data)
    assert "2 answers brought in" in told
    assert "1 line of it couldn't be read and was left out (line 2)." in told
    assert ["1", "2"] == [attempt.typed for attempt in log.attempts]


@pytest.mark.parametrize("data", [b"", b"\x89PNG\r\n\x1a\n", b"Pump,Flow\n1,2\n", b'{"v": 9}\n'])
def test_a_file_that_is_no_copy_is_refused_by_its_name_and_changes_nothing(log, copies, data):
    told = bring(copies, data, "<i>pump.csv")
    assert "“<i>pump.csv” doesn't hold any answers. Choose a copy this page made." in told
    assert "<i>" not in copies.said.value
    assert not log.path.exists()


def test_a_file_that_is_too_large_is_not_read(log, copies, monkeypatch):
    monkeypatch.setattr(log_copies, "MOST_BYTES", 1_000_000)
    told = bring(copies, lines(one("1")) + b" " * 1_000_000)
    assert "“copy.jsonl” is larger than 1 MB, so it wasn't read." in told
    assert [] == log.attempts


def test_the_server_lets_through_the_largest_copy_that_is_read(root):
    # Without this setting it cuts the connection at 10 MiB, and the page says nothing.
    settings = json.loads((root / "workbook/start/settings/jupyter_server_config.json").read_text())
    most = settings["ServerApp"]["tornado_settings"]["websocket_max_message_size"]
    assert log_copies.MOST_BYTES < most


def test_a_copy_brought_in_on_a_full_disk_is_said_and_kept_for_later(log, copies):
    log.path.parent.mkdir()
    log.path.symlink_to("/dev/full")
    told = bring(copies, lines(one("1")))
    assert "“copy.jsonl” was read. This was not saved. The disk is full." in told
    log.path.unlink()
    log.keep(one("2"))
    assert ["1", "2"] == [attempt.typed for attempt in log.attempts]
    assert 2 == len(log.path.read_bytes().splitlines())


def test_a_log_that_cannot_be_read_says_so_and_gives_no_copy(log, copies):
    log.path.mkdir(parents=True)
    copies.save.click()
    assert "Your log couldn't be read." in text(copies.said.value)
    assert "Your log couldn't be read." in bring(copies, lines(one("1")))


def test_a_browser_that_promises_nothing_is_told_of_where_copies_are_made(log, monkeypatch):
    monkeypatch.setattr(static_site, "_told", {})
    assert "may clear your answers" not in text(LogCopies(log).children[1].value)
    static_site.tell("", "", "no")
    assert "This browser may clear your answers" in text(LogCopies(log).children[1].value)
    static_site.tell("", "", "yes")
    assert "" == text(LogCopies(log).children[1].value)


def test_a_copy_that_was_shared_to_the_site_is_brought_in(log):
    static_site.receive(quote(json.dumps([["a.txt", line_of(one("7"))]])))
    panel = LogCopies(log)
    assert "“a.txt”: 1 answer brought in" in text(panel.said.value)
    assert ["7"] == [each.typed for each in log.attempts]


def test_a_file_has_a_button_to_share_it_where_the_site_runs(log, copies, monkeypatch):
    log.keep(one("7"))
    copies.save.click()
    assert "Share" not in copies.saved.value
    monkeypatch.setattr("workbook.ui.saving.in_browser", lambda: True)
    copies.save.click()
    assert "w2w-share" in copies.saved.value
