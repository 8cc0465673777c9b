"""Opening the workbook: the reader's folder, the port, the browser, and what is said."""

import http.server
import json
import shutil
import signal
import socket
import subprocess
import sys
import threading
import urllib.error
import urllib.request
import webbrowser

import pytest

from workbook import folder, launcher, pages, server
from workbook.folder import CannotWrite, bring_up_to_date


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
    assert [] == bring_up_to_date(own.parent)
    assert [own.name] == [path.name for path in own.parent.iterdir()]
    assert ["second edition"] == texts(own)


def test_results_saved_in_a_page_do_not_count_as_the_readers_change(own, shipped):
    page = json.loads(own.read_text(encoding="utf-8"))
    page["cells"][0] |= {"outputs": [{"output_type": "stream", "text": "7"}], "execution_count": 3}
    own.write_text(json.dumps(page, indent=4), encoding="utf-8")
    write_page(shipped, "second edition")
    assert [] == bring_up_to_date(own.parent)
    assert ["second edition"] == texts(own)


def test_a_page_the_reader_changed_stays_while_no_new_edition_is_there(own):
    change(own, "mine")
    assert [] == bring_up_to_date(own.parent)
    assert ["mine"] == texts(own)


def test_a_page_the_reader_changed_is_kept_beside_the_new_edition_and_said(own, shipped):
    change(own, "mine")
    write_page(shipped, "second edition")
    said = bring_up_to_date(own.parent)
    aside = "01-horsepower (yours).ipynb"
    assert [f'You had changed "{own.name}". Yours is now "{aside}", beside the new one.'] == said
    assert ["mine"] == texts(own.with_name(aside))
    assert ["second edition"] == texts(own)


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
    assert said[0].startswith(f"This folder cannot be written to. {places[0]}")


def test_a_folder_asked_for_that_cannot_be_written_says_what_to_type(tmp_path, shipped, capsys):
    (tmp_path / "a file").write_text("in the way")
    assert 1 == launcher.open_workbook(str(tmp_path / "a file" / "pumps"), None)
    assert 'Type its name after --folder, like this: python3 -m workbook --folder "' in (
        capsys.readouterr().err
    )


@pytest.fixture
def busy():
    """A port that another program holds."""
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        yield taken.getsockname()[1]


def test_when_the_usual_port_is_busy_the_next_free_one_is_used_and_said(busy, monkeypatch):
    monkeypatch.setattr(launcher, "PORTS", range(busy, busy + 50))
    said = []
    port = launcher._choose_port(None, said.append)
    assert busy < port < busy + 50
    assert [f"Port {busy} is in use, so the workbook uses port {port}."] == said


def test_a_busy_port_that_was_asked_for_says_what_to_type(busy):
    with pytest.raises(launcher.CannotOpen) as refused:
        launcher._choose_port(busy, print)
    said, port = str(refused.value).rsplit(" ", 1)
    told = f"Port {busy} is in use by another program. Type: python3 -m workbook --port"
    assert told == said
    assert launcher._is_free(int(port))


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
    assert ["The workbook is opening in your browser. If it does not, open ADDRESS"] == said


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


def test_a_server_that_stops_at_once_is_reported_with_its_log(tmp_path, monkeypatch):
    monkeypatch.setattr(launcher, "_own_settings", lambda: tmp_path)
    monkeypatch.setattr(launcher.sys, "executable", shutil.which("false") or "false")
    port = launcher._choose_port(None, lambda said: None)
    log = tmp_path / f"port-{port}.log"
    with (
        pytest.raises(launcher.CannotOpen, match=r"could not start\. Why is written in") as refused,
        launcher.served(tmp_path, port),
    ):
        pytest.fail("it was served")
    assert str(log) in str(refused.value)


class Stranger(http.server.BaseHTTPRequestHandler):
    """Another program's server, which lets nobody in without a key of its own."""

    def do_GET(self):
        self.send_error(403)

    def log_message(self, *_):
        pass


def test_a_port_that_another_server_takes_meanwhile_is_given_up_for_the_next(tmp_path, monkeypatch):
    with http.server.ThreadingHTTPServer((launcher.HOST, 0), Stranger) as stranger:
        threading.Thread(target=stranger.serve_forever, daemon=True).start()
        taken = stranger.server_address[1]
        chosen = launcher._choose_port(None, lambda said: None)
        ports = iter([taken, chosen])
        monkeypatch.setattr(launcher, "_choose_port", lambda wanted, say: next(ports))
        with launcher._served_somewhere(tmp_path, None, print) as (server, address):
            assert f":{chosen}/" in address
            server.terminate()
        stranger.shutdown()


def test_only_pages_of_ours_are_named_as_those_that_may_run(root):
    listed = server.pages_under(root)
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
def test_when_the_command_is_told_to_stop_its_server_ends_too(root, tmp_path):
    command = [sys.executable, "-u", "-m", "workbook", "--no-browser", "--folder", str(tmp_path)]
    environment = launcher.environment(
        HOME=str(tmp_path), WIRE_TO_WATER_SET_UP_FOR="requirements.txt"
    )
    with subprocess.Popen(
        command, cwd=root, env=environment, text=True, stdout=subprocess.PIPE
    ) as running:
        said = iter(running.stdout.readline, "")
        address = next(line for line in said if "token=" in line).split()[-1]
        running.send_signal(signal.SIGTERM)
        assert 128 + signal.SIGTERM == running.wait(30)
    port = int(address.split(":")[2].split("/")[0])
    assert launcher._is_free(port)
