"""Opening the workbook: the reader's folder, the port, the browser, and what is said."""

import http.server
import json
import os
import pathlib
import re
import shutil
import signal
import socket
import subprocess
import sys
import tempfile
import threading
import urllib.error
import urllib.request
import webbrowser

import pytest

from workbook.log import KEPT, Log, default_path, made
from workbook.start import folder, launcher, own_pages
from workbook.start.folder import CannotWrite, bring_up_to_date
from workbook.ui import pages

NEWER = "Your pages are now those of this version, and nothing you did is lost."


def write_page(path, *texts, kind="code"):
    cells = [{"cell_type": kind, "id": f"c{n}", "source": text} for n, text in enumerate(texts)]
    extra = {"metadata": {}, "outputs": [], "execution_count": None} if kind == "code" else {}
    page = {
        "cells": [cell | extra for cell in cells],
        "metadata": {"wire_to_water": {"page": True}},
    }
    path.write_text(json.dumps(page), encoding="utf-8")


def texts(path):
    return pages.code_cells(path)


def change(path, text):
    page = json.loads(path.read_text(encoding="utf-8"))
    page["cells"][0]["source"] = text
    path.write_text(json.dumps(page), encoding="utf-8")


@pytest.fixture
def shipped(tmp_path, monkeypatch):
    """A folder of stand-in chapters: one page, to be changed for a new edition."""
    chapters = tmp_path / "chapters"
    chapters.mkdir()
    write_page(chapters / "01-horsepower.ipynb", "first edition")
    monkeypatch.setattr(folder, "shipped_pages", lambda: pages.shipped_pages(chapters))
    return chapters / "01-horsepower.ipynb"


@pytest.fixture
def own(tmp_path, shipped):
    """The reader's copy of that page."""
    reader = tmp_path / "Wire to Water"
    assert [] == bring_up_to_date(reader)
    return reader / shipped.name


def test_pages_are_copied_to_a_folder_that_is_not_there_yet(own):
    assert ["first edition"] == texts(own)


def test_a_page_the_reader_deleted_comes_back(own):
    own.unlink()
    bring_up_to_date(own.parent)
    assert ["first edition"] == texts(own)


def test_a_page_the_reader_did_not_change_becomes_the_new_edition(own, shipped):
    write_page(shipped, "second edition")
    assert [NEWER] == bring_up_to_date(own.parent)
    assert [own.name] == [path.name for path in own.parent.iterdir()]
    assert ["second edition"] == texts(own)
    assert [] == bring_up_to_date(own.parent)


def test_results_saved_in_a_page_do_not_count_as_the_readers_change(own, shipped):
    page = json.loads(own.read_text(encoding="utf-8"))
    page["cells"][0] |= {"outputs": [{"output_type": "stream", "text": "7"}], "execution_count": 3}
    own.write_text(json.dumps(page, indent=4), encoding="utf-8")
    write_page(shipped, "second edition")
    assert [NEWER] == bring_up_to_date(own.parent)
    assert ["second edition"] == texts(own)


def test_a_page_the_reader_changed_is_put_back_and_their_copy_kept(own):
    change(own, "mine")
    [said] = bring_up_to_date(own.parent)
    assert 'Your copy is now "01-horsepower (yours).ipynb"' in said
    assert ["first edition"] == texts(own)
    assert ["mine"] == texts(own.with_name("01-horsepower (yours).ipynb"))
    assert [] == bring_up_to_date(own.parent)


def test_a_page_the_reader_changed_is_kept_beside_the_new_edition_and_said(own, shipped):
    change(own, "mine")
    write_page(shipped, "second edition")
    said = bring_up_to_date(own.parent)
    aside = "01-horsepower (yours).ipynb"
    expected = (
        f'{NEWER} You had changed "{own.name}". Your copy is now "{aside}", next to the new one.'
    )
    assert [expected] == said
    assert ["mine"] == texts(own.with_name(aside))
    assert ["second edition"] == texts(own)


def test_several_pages_the_reader_changed_are_told_of_in_one_piece(own, shipped):
    second = shipped.with_name("02-efficiency.ipynb")
    write_page(second, "first edition")
    assert [] == bring_up_to_date(own.parent)
    for page in (shipped, second):
        change(own.with_name(page.name), "mine")
        write_page(page, "second edition")
    expected = (
        f"{NEWER} You had changed 2 pages. Your copies are next to the new ones: "
        '"01-horsepower (yours).ipynb", "02-efficiency (yours).ipynb".'
    )
    assert [expected] == bring_up_to_date(own.parent)
    assert ["mine"] == texts(own.with_name("02-efficiency (yours).ipynb"))


def test_a_page_that_a_new_version_adds_comes_without_a_word(own, shipped):
    write_page(shipped.with_name("02-efficiency.ipynb"), "new")
    assert [] == bring_up_to_date(own.parent)
    assert ["new"] == texts(own.with_name("02-efficiency.ipynb"))


def test_a_page_kept_aside_is_never_overwritten_by_the_next_one(own, shipped):
    for edition in ("second", "third", "fourth"):
        change(own, f"mine before the {edition}")
        write_page(shipped, f"{edition} edition")
        bring_up_to_date(own.parent)
    kept = {path.name: texts(path) for path in own.parent.glob("*(yours*")}
    expected = {
        "01-horsepower (yours).ipynb": ["mine before the second"],
        "01-horsepower (yours 2).ipynb": ["mine before the third"],
        "01-horsepower (yours 3).ipynb": ["mine before the fourth"],
    }
    assert expected == kept


def test_a_page_changed_back_to_the_new_edition_is_not_kept_twice(own, shipped):
    change(own, "second edition")
    write_page(shipped, "second edition")
    assert [] == bring_up_to_date(own.parent)
    assert [own.name] == [path.name for path in own.parent.iterdir()]


@pytest.mark.parametrize(
    "damage", ["", "{", "[]", '{"cells": [1]}', '{"cells": [], "metadata": 1}']
)
def test_a_damaged_page_is_kept_aside_as_it_is(own, shipped, damage):
    own.write_text(damage, encoding="utf-8")
    assert 1 == len(bring_up_to_date(own.parent))
    aside = own.with_name("01-horsepower (yours).ipynb")
    assert damage == aside.read_text(encoding="utf-8")
    assert ["first edition"] == texts(own)


def test_a_failed_write_leaves_the_readers_page_whole(own, shipped, monkeypatch):
    write_page(shipped, "second edition")
    monkeypatch.setattr(folder.os, "replace", refuse)
    with pytest.raises(CannotWrite, match="Read-only file system"):
        bring_up_to_date(own.parent)
    assert ["first edition"] == texts(own)


def refuse(*_):
    raise OSError(30, "Read-only file system")


def test_a_folder_that_cannot_be_made_is_named_with_the_reason(tmp_path, shipped):
    (tmp_path / "a file").write_text("in the way")
    with pytest.raises(CannotWrite, match=r"a file.pumps: (Not a directory|.*path)"):
        bring_up_to_date(tmp_path / "a file" / "pumps")


def test_when_documents_cannot_be_written_the_home_folder_is_used(tmp_path, shipped, monkeypatch):
    (tmp_path / "documents").write_text("in the way")
    places = [tmp_path / "documents" / "Wire to Water", tmp_path / "home" / "Wire to Water"]
    monkeypatch.setattr(launcher, "default_folders", lambda: places)
    said = []
    assert places[1] == launcher._prepare(None, said.append)
    assert said[0].startswith(f"The workbook can't write to this folder. {places[0]}")


def test_a_folder_asked_for_that_cannot_be_written_says_one_that_works(
    tmp_path, shipped, monkeypatch, capsys
):
    (tmp_path / "a file").write_text("in the way")
    places = [tmp_path / "a file" / "Wire to Water", tmp_path / "Wire to Water"]
    monkeypatch.setattr(launcher, "default_folders", lambda: places)
    assert 1 == launcher.open_workbook(str(tmp_path / "a file" / "pumps"), None)
    told = f'like this: python3 -m workbook --folder "{places[1]}"\n'
    assert capsys.readouterr().err.endswith(told)
    assert not places[1].exists()


def test_where_only_the_computers_own_folder_is_left_a_sentence_warns_of_it(
    tmp_path, shipped, monkeypatch
):
    (tmp_path / "home").write_text("in the way")
    monkeypatch.setattr(tempfile, "gettempdir", lambda: str(tmp_path))
    places = [tmp_path / "home" / "Wire to Water", tmp_path / "Wire to Water"]
    monkeypatch.setattr(launcher, "default_folders", lambda: places)
    said = []
    assert places[1] == launcher._prepare(None, said.append)
    assert launcher.LAST_RESORT == said[-1]


@pytest.fixture
def home(tmp_path, monkeypatch):
    """A reader's home as a new computer has it, and all the usual folders in it."""
    home = tmp_path / "home"
    home.mkdir()
    for name in ("HOME", "USERPROFILE", "APPDATA", "LOCALAPPDATA"):
        monkeypatch.setenv(name, str(home))
    for name in [name for name in os.environ if name.startswith("XDG_")]:
        monkeypatch.delenv(name)
    monkeypatch.setenv(KEPT, "")
    return home


def shut(home):
    """Let nothing be written in a home; even an administrator could not, so all tests can see it."""
    home.rename(home.with_name("shut"))
    home.write_text("in the way")


def open_again(home):
    home.unlink()
    home.with_name("shut").rename(home)


def answer(typed):
    return made(code="BP-2U1-7-68", family="brake_power", level=1, typed=typed, status="wrong")


def test_in_a_usual_home_answers_are_kept_where_they_were(home, tmp_path):
    usual, said = default_path(), []
    folder.settle(tmp_path, said.append)
    assert usual == default_path()
    assert [] == said
    assert {} == folder.environment_of()


def test_in_a_home_that_cannot_be_written_answers_are_kept_with_the_pages_and_said(home, tmp_path):
    shut(home)
    own, said = tmp_path / "pages", []
    own.mkdir()
    folder.settle(own, said.append)
    expected = "The workbook can't write to your home folder, so your answers are kept with your pages, in "
    assert [f"{expected}{own / '.kept'}"] == said
    Log(default_path()).keep(answer("9"))
    assert (own / ".kept" / "attempts.jsonl").exists()
    inside = [*map(pathlib.Path, folder.environment_of().values()), folder.settings_of()]
    assert all(folder.is_relative_to(own) for folder in inside)


def test_answers_given_meanwhile_are_in_the_usual_log_once_it_can_be_written(home, tmp_path):
    Log(default_path()).keep(answer("1"))
    shut(home)
    own, said = tmp_path / "pages", []
    own.mkdir()
    folder.settle(own, said.append)
    Log(default_path()).keep(answer("2"))
    open_again(home)
    for _ in range(2):
        said.clear()
        folder.settle(own, said.append)
    log = Log(default_path())
    log.read()
    assert {"1", "2"} == {attempt.typed for attempt in log.attempts}
    assert default_path().is_relative_to(home)
    assert [] == said


@pytest.fixture
def reserved():
    """A port that no other program is given while the test runs, and a server of ours can take."""
    with socket.socket() as kept:
        kept.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        kept.bind((launcher.HOST, 0))
        yield kept.getsockname()[1]


@pytest.fixture
def busy():
    """A port that another program holds."""
    with socket.socket() as taken:
        taken.bind((launcher.HOST, 0))
        taken.listen()
        yield taken.getsockname()[1]


@pytest.fixture
def ports(busy, reserved, monkeypatch):
    """Let the workbook look at these two ports alone: one that is taken, one that is not."""
    monkeypatch.setattr(launcher, "PORTS", Ports([busy, reserved]))
    return busy, reserved


class Ports(list):
    start = property(lambda self: self[0])


def test_when_the_usual_port_is_busy_the_next_free_one_is_used_and_said(ports):
    busy, free = ports
    said = []
    assert free == launcher._choose_port(None, said.append)
    assert [f"Port {busy} is in use, so the workbook uses port {free}."] == said


def test_a_busy_port_that_was_asked_for_says_what_to_type(ports):
    busy, free = ports
    told = f"Port {busy} is in use by another program. Type: python3 -m workbook --port {free}"
    with pytest.raises(launcher.CannotOpen, match=re.escape(told)):
        launcher._choose_port(busy, print)


def test_when_every_port_is_busy_another_number_is_asked_for(busy, monkeypatch):
    monkeypatch.setattr(launcher, "PORTS", range(busy, busy + 1))
    with pytest.raises(launcher.CannotOpen, match=r"type another number: .* --port 9400"):
        launcher._choose_port(None, print)


class Browser:
    name = "firefox"

    def __init__(self):
        self.opened = []

    def open(self, address):
        self.opened.append(address)
        return True


def test_the_browser_opens_the_page(monkeypatch):
    browser, said = Browser(), []
    monkeypatch.setattr(webbrowser, "get", lambda: browser)
    launcher._show("ADDRESS", True, said.append)
    assert ["ADDRESS"] == browser.opened
    assert ["The workbook is opening in your browser. If it doesn't, open ADDRESS"] == said


def test_without_a_browser_the_address_is_said(monkeypatch):
    def none_found():
        raise webbrowser.Error("could not locate runnable browser")

    said = []
    monkeypatch.setattr(webbrowser, "get", none_found)
    launcher._show("ADDRESS", True, said.append)
    assert ["No browser was found. Open one and type this address: ADDRESS"] == said


def test_a_browser_that_draws_in_the_terminal_is_not_used(monkeypatch):
    browser, said = Browser(), []
    browser.name = "/usr/bin/w3m"
    monkeypatch.setattr(webbrowser, "get", lambda: browser)
    launcher._show("ADDRESS", True, said.append)
    assert [] == browser.opened
    assert said[0].startswith("No browser was found.")


def test_no_browser_is_looked_for_when_none_is_wanted(monkeypatch):
    monkeypatch.setattr(webbrowser, "get", lambda: pytest.fail("a browser was looked for"))
    said = []
    launcher._show("ADDRESS", False, said.append)
    assert ["Open this address in a browser: ADDRESS"] == said


def test_a_server_that_stops_at_once_is_reported_with_its_log(tmp_path, monkeypatch, reserved):
    monkeypatch.setattr(launcher, "settings_of", lambda: tmp_path)
    monkeypatch.setattr(launcher.sys, "executable", shutil.which("false") or "false")
    log = re.escape(str(tmp_path / f"port-{reserved}.log"))
    with (
        pytest.raises(launcher.CannotOpen, match=rf"couldn't start\. The reason is in {log}"),
        launcher.served(tmp_path, reserved),
    ):
        pytest.fail("it was served")


class Stranger(http.server.BaseHTTPRequestHandler):
    """Another program's server, which lets nobody in without a key of its own."""

    def do_GET(self):
        self.send_error(403)

    def log_message(self, *_):
        pass


def test_a_port_that_another_server_takes_meanwhile_is_given_up_for_the_next(
    home, tmp_path, monkeypatch, reserved
):
    with http.server.ThreadingHTTPServer((launcher.HOST, 0), Stranger) as stranger:
        threading.Thread(target=stranger.serve_forever, daemon=True).start()
        ports = iter([stranger.server_address[1], reserved])
        monkeypatch.setattr(launcher, "_choose_port", lambda wanted, say: next(ports))
        with launcher._served_somewhere(tmp_path, None, print) as (server, address):
            assert f":{reserved}/" in address
            server.terminate()
        stranger.shutdown()


def test_only_pages_of_ours_are_named_as_those_that_may_run(root):
    listed = own_pages.pages_under(str(root))
    ours = {
        "workbook/chapters": pages.shipped_pages(),
        "workbook/trainer/pages": pages.shipped_pages(pages.TRAINERS),
    }
    beside = {f"{folder}/{path.name}" for folder, paths in ours.items() for path in paths}
    assert beside | {path.name for paths in ours.values() for path in paths} == set(listed)


def test_the_server_keeps_to_this_computer_and_wants_its_key(serve):
    served = serve()
    with urllib.request.urlopen(f"{served.base}/api/contents?token={served.token}") as answer:
        names = {item["name"] for item in json.load(answer)["content"]}
    assert {path.name for path in pages.shipped_pages()} <= names
    with pytest.raises(urllib.error.HTTPError, match="403"):
        urllib.request.urlopen(f"{served.base}/api/contents").close()


@pytest.mark.skipif(sys.platform == "win32", reason="Windows has no SIGTERM to send")
def test_when_the_command_is_told_to_stop_its_server_ends_too(root, tmp_path, reserved):
    command = [sys.executable, "-m", "workbook", "--no-browser", "--folder", str(tmp_path)]
    command += ["--port", str(reserved)]
    environment = launcher.environment(
        HOME=str(tmp_path), PYTHONUNBUFFERED="", WIRE_TO_WATER_SET_UP_FOR="requirements.txt"
    )
    with subprocess.Popen(
        command, cwd=root, env=environment, text=True, stdout=subprocess.PIPE
    ) as running:
        said = iter(running.stdout.readline, "")
        address = next(line for line in said if "token=" in line).split()[-1]
        assert f":{reserved}/" in address
        running.send_signal(signal.SIGTERM)
        assert 128 + signal.SIGTERM == running.wait(30)
    with pytest.raises(ConnectionRefusedError), socket.create_connection((launcher.HOST, reserved)):
        pytest.fail("something still answers")
