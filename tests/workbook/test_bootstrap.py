"""Setting up on a new computer: once, in one folder, and repaired when it was interrupted.

Making the folder and running pip are replaced here by quick stand-ins; `.ci/run` does both in
earnest each time, for it runs the tests by the command the README gives.
"""

import ast
import errno
import importlib.util
import json
import os
import re
import runpy
import shutil
import subprocess
import sys
from importlib import metadata
from pathlib import Path
from typing import NamedTuple

import pytest

from workbook import commands
from workbook.start import bootstrap, child

OK = "print('Collecting one==1.0')"
FILES = ("__init__.py", "part.py")


def failing(*lines):
    """A pip that says this and fails."""
    return f"print({chr(10).join(lines)!r}); raise SystemExit(1)"


BROKEN = failing("ERROR: Nobody knows why.")


class Room(NamedTuple):
    free: int


@pytest.fixture
def project(tmp_path, monkeypatch):
    """A project that pins one package nobody has, with its set-up watched.

    `made` counts how often the folder was made anew, `pip` holds the program run as pip.
    """

    class Project:
        said, made, pip = [], 0, OK
        home = tmp_path / ".venv"
        lists = tmp_path / "binder"

        def python(self, needs=bootstrap.READER):
            return bootstrap.python_with(needs, self.said.append)

        def make(self):
            self.made += 1
            shutil.rmtree(self.home, ignore_errors=True)
            bootstrap._python().parent.mkdir(parents=True)
            bootstrap._python().touch()
            (self.home / "pyvenv.cfg").touch()

        def command(self, words):
            """What runs as pip; where it is a whole one, the packages are there after it."""
            if self.pip == OK and words[0] == "--requirement":
                self.put(bootstrap.pins(Path(words[1]).name))
            elif self.pip == OK:
                self.put(dict(word.split("==") for word in words[1:]))
            return [sys.executable, "-c", self.pip]

        def put(self, pins):
            """Put packages where .venv has them, each with a list of its files."""
            for name, version in pins.items():
                info = bootstrap._site() / f"{name}-{version}.dist-info"
                for folder in (info, self.package(name)):
                    folder.mkdir(parents=True, exist_ok=True)
                for file in FILES:
                    (self.package(name) / file).touch()
                files = [f"{name}/{file},sha256=abc,3" for file in FILES]
                listed = [*files, f"{name}/__pycache__/part.pyc,,", f"{info.name}/RECORD,,"]
                (info / "RECORD").write_text("\n".join(listed) + "\n", encoding="utf-8")

        def package(self, name):
            return bootstrap._site() / name

    project = Project()
    project.lists.mkdir()
    (project.lists / bootstrap.READER).write_text("one==1.0\n")
    (project.lists / bootstrap.CLASS).write_text("-r requirements.txt\nfive==5.0\n")
    (project.lists / bootstrap.SITE).write_text("-r requirements-class.txt\n")
    (project.lists / bootstrap.TESTER).write_text("-r requirements-site.txt\ntwo==2.0\n")
    monkeypatch.setattr(bootstrap, "BINDER", project.lists)
    monkeypatch.setattr(bootstrap, "HOME", project.home)
    monkeypatch.setattr(bootstrap, "STAMP", project.home / "stamp.json")
    monkeypatch.setattr(bootstrap, "LOG", project.home / "setting-up.log")
    monkeypatch.setattr(bootstrap, "_make_home", project.make)
    monkeypatch.setattr(bootstrap, "_pip_command", project.command)
    return project


def test_a_pin_for_another_system_is_left_out(project):
    other = "win32" if sys.platform != "win32" else "darwin"
    (project.lists / bootstrap.READER).write_text(
        f'# A remark.\none==1.0\nthree==3.0 ; sys_platform == "{other}"\n'
        f'four==4.0 ; sys_platform == "{sys.platform}"\n'
    )
    expected = {"one": "1.0", "four": "4.0", "five": "5.0", "two": "2.0"}
    assert expected == bootstrap.pins(bootstrap.TESTER)


def test_another_version_than_the_pinned_one_does_not_do(project):
    (project.lists / bootstrap.READER).write_text("pytest==0.1\n")
    assert ["pytest"] == bootstrap.unmet(bootstrap.READER)


def test_a_python_that_has_every_pin_is_used_as_it_is(project):
    pin = f"pytest=={metadata.version('pytest')}\n"
    (project.lists / bootstrap.READER).write_text(pin)
    assert sys.executable == project.python()
    assert [] == project.said
    assert not project.home.exists()


def test_the_first_start_sets_up_and_the_second_does_nothing(project):
    expected = str(project.home / ("Scripts/python.exe" if os.name == "nt" else "bin/python"))
    assert expected == project.python()
    assert "Setting up Wire to Water." in project.said[0]
    project.said.clear()
    project.pip = BROKEN
    assert expected == project.python()
    assert [] == project.said


def test_a_changed_list_is_installed_over_the_old_one(project):
    project.python()
    (project.lists / bootstrap.READER).write_text("one==1.1\n")
    project.said.clear()
    project.python()
    assert "Setting up Wire to Water." in project.said[0]
    assert 1 == project.made


def test_a_project_moved_to_another_folder_is_set_up_again(project, monkeypatch, tmp_path):
    project.python()
    monkeypatch.setattr(bootstrap, "ROOT", tmp_path / "elsewhere")
    project.said.clear()
    project.python()
    assert "Setting up Wire to Water." in project.said[0]


@pytest.mark.parametrize("more", [bootstrap.CLASS, bootstrap.TESTER])
def test_a_longer_list_is_installed_besides_what_a_reader_needs(project, more):
    project.python(bootstrap.READER)
    project.said.clear()
    project.python(more)
    assert "Everything is set up." == project.said[-1]
    project.said.clear()
    project.python(bootstrap.READER)
    assert [] == project.said


def test_what_tests_need_holds_what_a_class_needs(project):
    project.python(bootstrap.TESTER)
    project.said.clear()
    project.python(bootstrap.CLASS)
    assert [] == project.said


def test_a_changed_list_of_a_class_is_installed_for_the_tests_too(project):
    project.python(bootstrap.TESTER)
    (project.lists / bootstrap.CLASS).write_text("-r requirements.txt\nfive==5.1\n")
    project.said.clear()
    project.python(bootstrap.TESTER)
    assert "Everything is set up." == project.said[-1]


@pytest.fixture
def cut_short(project, monkeypatch):
    """A function that starts setting up and is stopped by Ctrl+C while pip is at work."""

    def stop(needs, say):
        raise KeyboardInterrupt("at the keyboard")

    def start():
        with monkeypatch.context() as patch:
            patch.setattr(bootstrap, "_install", stop)
            with pytest.raises(KeyboardInterrupt, match="at the keyboard"):
                project.python()

    return start


def test_an_interrupted_set_up_is_made_again_from_nothing(project, cut_short):
    cut_short()
    project.python()
    assert 2 == project.made
    assert bootstrap._is_ready(bootstrap.READER)


def test_a_set_up_that_was_interrupted_is_said_to_go_on(project, cut_short):
    cut_short()
    project.said.clear()
    project.python()
    expected = "Setting up didn't finish last time. It continues now and keeps what was downloaded."
    assert [expected, "Everything is set up."] == project.said


def test_an_interrupted_update_is_made_again_from_nothing(project, cut_short):
    project.python()
    (project.lists / bootstrap.READER).write_text("one==1.1\n")
    cut_short()
    project.python()
    assert 2 == project.made
    assert bootstrap._is_ready(bootstrap.READER)


# What pip 23.0 and 26.3 print when this happens to them, shortened.
NO_NAME = "Failed to establish a new connection: [Errno -3] Temporary failure in name resolution"
NONE = "ERROR: No matching distribution found for one==1.0"
CAUSES = {
    "no network": (
        [
            f"WARNING: Retrying (Retry(total=0)) after connection broken by 'NewConnectionError({NO_NAME})'",
            "ERROR: Could not find a version that satisfies the requirement one==1.0 (from versions: none)",
            NONE,
        ],
        "This computer couldn't reach the internet",
    ),
    "no version for this Python": (
        [
            "ERROR: Ignored the following versions that require a different python version: "
            "1.0 Requires-Python >=3.99",
            "ERROR: Could not find a version that satisfies the requirement one==1.0 (from versions: 0.9)",
            NONE,
        ],
        "A part of the workbook isn't available for Python {}.{}.{} ".format(*sys.version_info),
    ),
    "a part to be built here": (
        ["error: metadata-generation-failed"],
        "A part of the workbook isn't available for Python",
    ),
    "a full disk": (
        [
            "ERROR: Could not install packages due to an OSError: [Errno 28] No space left on device",
        ],
        "The disk is full.",
    ),
    "a full disk of Windows": (
        ["ERROR: ... [WinError 112] There is not enough space on the disk"],
        "The disk is full.",
    ),
    "a folder of somebody else's": (
        [
            "ERROR: Could not install packages due to an OSError: [Errno 13] Permission denied: '/x'",
        ],
        f"The workbook can't write to the folder {child.ROOT}. Copy the whole folder",
    ),
    "a file that Windows keeps": (
        [
            "ERROR: ... [WinError 32] The process cannot access the file because it is being used "
            "by another process",
            "ERROR: Check the permissions. Access is denied",
        ],
        "Another program is using the workbook's files.",
    ),
    "a download cut off, as an old pip says it": (
        ["ERROR: Wheel 'six' located at one-1.0-py3-none-any.whl is invalid."],
        "The download was cut off.",
    ),
    "a download cut off": (
        [
            "× Download failed after 6 attempts because not enough bytes were received (100 kB/5.0 MB)",
            "note: This is an issue with network connectivity, not pip.",
        ],
        "The download was cut off.",
    ),
    "a connection not trusted": (
        [
            "Could not fetch URL: There was a problem confirming the ssl certificate: Max retries "
            "exceeded (Caused by SSLError(SSLCertVerificationError(1, '[SSL: CERTIFICATE_VERIFY_FAILED]')))",
            "ERROR: Could not find a version that satisfies the requirement one==1.0 (from versions: none)",
            NONE,
        ],
        "This computer doesn't trust its connection to the internet. Check the date and time on it.",
    ),
}


@pytest.mark.parametrize(("lines", "told"), CAUSES.values(), ids=CAUSES)
def test_each_cause_of_a_failed_set_up_has_its_own_advice(project, lines, told):
    project.pip = failing(*lines)
    with pytest.raises(bootstrap.SetupFailed) as failed:
        project.python()
    said = str(failed.value)
    assert said.startswith(told)
    assert "delete the folder" not in said.lower()
    assert said.endswith(f"All the details are in {bootstrap.LOG}. In short: {lines[-1]}")
    assert lines[0] in bootstrap.LOG.read_text(encoding="utf-8")
    assert not bootstrap._is_ready(bootstrap.READER)


def test_a_cause_that_nobody_knows_says_what_to_try(project):
    project.pip = BROKEN
    with pytest.raises(
        bootstrap.SetupFailed, match=r"once more\. All the details are in .*: ERROR: Nobody knows"
    ):
        project.python()


def test_a_disk_with_too_little_room_is_told_before_anything_is_fetched(monkeypatch, tmp_path):
    monkeypatch.setattr(bootstrap, "HOME", tmp_path / ".venv")
    monkeypatch.setattr(shutil, "disk_usage", lambda folder: Room(free=250_000_000))
    with pytest.raises(bootstrap.SetupFailed, match="has 250 MB free, and setting up needs 700 MB"):
        bootstrap._make_home()
    assert not (tmp_path / ".venv").exists()


def test_a_failed_update_leaves_the_old_set_up_standing(project):
    project.python()
    before = (project.lists / bootstrap.READER).read_text()
    (project.lists / bootstrap.READER).write_text("one==1.1\n")
    project.pip = BROKEN
    with pytest.raises(bootstrap.SetupFailed, match="couldn't be installed"):
        project.python()
    (project.lists / bootstrap.READER).write_text(before)
    project.said.clear()
    project.python()
    assert [] == project.said


DAMAGE = {
    "the whole package": lambda folder, info: shutil.rmtree(folder),
    "a file of it": lambda folder, info: (folder / "part.py").unlink(),
    "its list of files": lambda folder, info: (info / "RECORD").unlink(),
    "what pip knows of it": lambda folder, info: shutil.rmtree(info),
}


@pytest.mark.parametrize("harm", DAMAGE.values(), ids=DAMAGE)
def test_a_package_that_lost_something_is_put_back_at_the_next_start(project, harm):
    (project.lists / bootstrap.READER).write_text("one==1.0\nthree==3.0\n")
    expected = project.python()
    harm(project.package("three"), bootstrap._site() / "three-3.0.dist-info")
    project.said.clear()
    assert expected == project.python()
    assert [
        "Some parts of the workbook are missing or damaged: three. "
        "They are being put back, which needs the internet.",
        "They are back.",
    ] == project.said
    assert {"__init__.py", "part.py"} <= {path.name for path in project.package("three").iterdir()}
    assert 1 == project.made
    project.said.clear()
    project.python()
    assert [] == project.said


def test_of_many_damaged_parts_three_are_named(project):
    names = ("one", "three", "six", "seven", "nine")
    (project.lists / bootstrap.READER).write_text("".join(f"{name}==1.0\n" for name in names))
    project.python()
    shutil.rmtree(bootstrap._site())
    project.said.clear()
    project.python()
    assert "missing or damaged: one, three, six and 2 more. " in project.said[0]


def test_what_python_makes_again_by_itself_is_no_damage(project):
    project.python()
    assert not list(bootstrap._site().rglob("*.pyc"))
    project.said.clear()
    project.python()
    assert [] == project.said


def test_where_putting_back_does_not_do_everything_is_made_anew(project, monkeypatch):
    project.python()
    shutil.rmtree(project.package("one"))
    whole = project.command

    def only_whole_lists(words):
        return whole(words) if words[0] == "--requirement" else [sys.executable, "-c", BROKEN]

    monkeypatch.setattr(bootstrap, "_pip_command", only_whole_lists)
    project.said.clear()
    project.python()
    assert "They are back." == project.said[-1]
    assert 2 == project.made
    assert bootstrap._is_ready(bootstrap.READER)


def test_damage_found_without_the_internet_is_told_and_put_back_later(project):
    project.python()
    shutil.rmtree(project.package("one"))
    project.pip = failing(NO_NAME)
    with pytest.raises(bootstrap.SetupFailed, match="This computer couldn't reach the internet"):
        project.python()
    project.pip = OK
    project.said.clear()
    project.python()
    assert "They are back." == project.said[-1]
    assert 1 == project.made


def test_an_environment_that_forgot_what_it_is_is_made_anew(project):
    project.python()
    (project.home / "pyvenv.cfg").unlink()
    project.python()
    assert 2 == project.made


def test_packages_of_another_python_are_not_trusted(project):
    project.python()
    stamp = json.loads(bootstrap.STAMP.read_text(encoding="utf-8"))
    bootstrap.STAMP.write_text(json.dumps({**stamp, "python": "3.10"}), encoding="utf-8")
    project.python()
    assert 2 == project.made


@pytest.mark.parametrize("stamp", ["", "[]", "{}", "\x00"])
def test_a_damaged_stamp_counts_as_none(project, stamp):
    project.python()
    bootstrap.STAMP.write_text(stamp, encoding="utf-8")
    project.python()
    assert 2 == project.made


@pytest.mark.parametrize(
    ("number", "told"),
    [
        (errno.EROFS, "Copy the whole folder to a place of your own"),
        (errno.EACCES, "Copy the whole folder to a place of your own"),
        (errno.ENOSPC, "The disk is full. Setting up needs about 1 GB."),
        (errno.EIO, f"Setting up stopped. The system says: {os.strerror(errno.EIO)}. Copy"),
    ],
)
def test_what_the_system_refuses_is_told_by_its_cause(project, monkeypatch, number, told):
    def refuse():
        raise OSError(number, os.strerror(number))

    monkeypatch.setattr(bootstrap, "_make_home", refuse)
    with pytest.raises(bootstrap.SetupFailed, match=re.escape(told)) as failed:
        project.python()
    assert "Delete the folder" not in str(failed.value)


def test_a_python_without_venv_says_what_to_install(monkeypatch):
    def find(name):
        return None if name == "ensurepip" else object()

    monkeypatch.setattr(importlib.util, "find_spec", find)
    with pytest.raises(bootstrap.SetupFailed, match="type: sudo apt install python3-venv"):
        bootstrap._make_home()


def test_a_folder_that_cannot_be_made_is_named_with_pythons_reason(monkeypatch, tmp_path):
    (tmp_path / "file").write_text("in the way")
    monkeypatch.setattr(bootstrap, "HOME", tmp_path / "file")
    with pytest.raises(FileExistsError, match="file"):
        bootstrap._make_home()


def test_a_folder_in_which_python_fails_is_named_with_its_reason(monkeypatch, tmp_path):
    monkeypatch.setattr(bootstrap, "HOME", tmp_path / ".venv")
    failing_python = tmp_path / "python"
    failing_python.write_text("#!/bin/sh\necho Something odd; exit 1\n")
    failing_python.chmod(0o755)
    monkeypatch.setattr(sys, "_base_executable", str(failing_python))
    with pytest.raises(
        bootstrap.SetupFailed, match=r"couldn't be made. Python said: Something odd"
    ):
        bootstrap._make_home()


def test_pip_is_told_the_exact_versions_alone_and_this_project(monkeypatch):
    asked = []
    monkeypatch.setattr(bootstrap, "_pip", lambda words, total, say: asked.extend(words))
    bootstrap._install(bootstrap.READER, print)
    command = bootstrap._pip_command(asked)
    assert ["-m", "pip", "install", "--no-deps"] == command[1:5]
    assert ["--requirement", str(child.ROOT / "binder" / "requirements.txt")] == command[6:8]
    assert ["--editable", str(child.ROOT)] == command[8:]


@pytest.mark.parametrize("name", ["__init__.py", "__main__.py"])
def test_what_an_old_python_reads_first_is_in_its_grammar(root, name):
    text = (root / "workbook" / name).read_text(encoding="ascii")
    tree = ast.parse(text, feature_version=(3, 4))
    assert not [node for node in ast.walk(tree) if isinstance(node, ast.JoinedStr)]


@pytest.mark.parametrize("version", [(2, 7), (3, 6), (3, 10)])
def test_an_old_python_is_turned_away_in_one_sentence(monkeypatch, version):
    monkeypatch.setattr(sys, "version_info", version)
    with pytest.raises(SystemExit) as refused:
        runpy.run_module("workbook.__main__")
    expected = "This is Python {}.{}. Wire to Water needs Python 3.11 or newer. ".format(*version)
    assert str(refused.value).startswith(expected)


FIRST = ["__init__", "__main__", "commands"]
FIRST += [f"start/{name}" for name in ("__init__", "bootstrap", "causes", "child", "whole")]


@pytest.mark.parametrize("name", FIRST)
def test_what_runs_before_the_set_up_imports_the_standard_library_alone(root, name):
    path = root / "workbook" / f"{name}.py"
    tree = ast.parse(path.read_text(encoding="utf-8"))
    outside = {name for name in _imported(tree.body) if name not in sys.stdlib_module_names}
    assert outside <= {"workbook"}
    rooms = {root / "workbook", root / "workbook" / "start"}  # a feature's command sees to its own
    own = {found for node in tree.body for found in _own(node, path.parent, root)}
    own = {found for found in own if found.parent in rooms}
    assert own <= {root / "workbook" / f"{first}.py" for first in FIRST}


def _imported(body):
    for node in body:
        if isinstance(node, ast.Import):
            yield from (alias.name.split(".")[0] for alias in node.names)
        elif isinstance(node, ast.ImportFrom) and not node.level:
            yield node.module.split(".")[0]


def _own(node, beside, root):
    """The files of ours that an import at the top brings in."""
    if not isinstance(node, ast.ImportFrom) or not (
        node.level or node.module.startswith("workbook")
    ):
        return
    folder = beside if node.level else root
    module = folder.joinpath(*(node.module or "").split("."))
    for path in (module, *(module / alias.name for alias in node.names)):
        if path.with_suffix(".py").exists():
            yield path.with_suffix(".py")
        elif (path / "__init__.py").exists() and path != root / "workbook":
            yield path / "__init__.py"


@pytest.mark.parametrize(
    ("words", "folder", "browser"),
    [
        ([], None, True),
        (["open"], None, True),
        (["--folder", "pumps"], "pumps", True),
        (["open", "--no-browser"], None, False),
    ],
)
def test_the_workbook_opens_without_any_word_too(words, folder, browser):
    options = commands._read(words)
    assert ("open", folder, browser) == (options.command, options.folder, not options.no_browser)


def test_what_follows_test_goes_to_pytest_as_it_is():
    options = commands._read(["test", "-k", "pump", "--", "-x", "tests/solver"])
    assert ["-k", "pump", "--", "-x", "tests/solver"] == options.rest


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["opne"], "There is no command opne. "),
        (["--port", "80"], "Argument --port: 80 isn't a port; type a number from 1024 to 65535. "),
        (["--prot", "9400"], "Unrecognized arguments: --prot 9400. "),
    ],
)
def test_a_mistyped_command_says_what_was_got_and_what_to_type(words, told, capsys):
    with pytest.raises(SystemExit, match="2"):
        commands._read(words)
    help_line = "To see what you can type: python3 -m workbook --help\n"
    assert told + help_line == capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["-k", "nothing"], ["-k", "nothing"]),
        ([], ["-n", "3", *commands.BY_FILE, "--rerun-show-tracebacks"]),  # the whole run
    ],
)
def test_the_exit_status_of_the_tests_is_passed_on(monkeypatch, words, told):
    monkeypatch.setenv(commands.SET_UP_FOR, bootstrap.TESTER)
    ran = []
    monkeypatch.setattr(child, "run", lambda command, **options: ran.append(command) or 5)
    assert 5 == commands.main(["test", *words])
    assert [[sys.executable, "-m", "pytest", *told]] == ran


def test_the_quick_tests_are_those_that_one_list_names(monkeypatch, root):
    monkeypatch.setenv(commands.SET_UP_FOR, bootstrap.TESTER)
    ran = []
    monkeypatch.setattr(child, "run", lambda command, **options: ran.append(command) or 0)
    commands.main(["test", "--quick", "-x"])
    listed = (root / "tests" / "quick.txt").read_text(encoding="utf-8").splitlines()
    files = [line for line in listed if line.startswith("tests/")]
    assert len(files) > 10
    assert [] == [file for file in files if not (root / file).is_file()]
    assert ["-x", *files] == ran[0][-len(files) - 1 :]
    assert commands.QUICK not in ran[0]


def test_a_set_up_that_failed_is_told_in_one_line_and_status_1(monkeypatch, capsys):
    def fail(needs):
        raise bootstrap.SetupFailed("What to do.")

    monkeypatch.delenv(commands.SET_UP_FOR, raising=False)
    monkeypatch.setattr(bootstrap, "python_with", fail)
    assert 1 == commands.main(["open"])
    assert "What to do.\n" == capsys.readouterr().err


def test_the_exit_status_of_a_program_run_in_our_place_is_ours():
    assert 7 == child.run([sys.executable, "-c", "raise SystemExit(7)"])


def test_a_program_that_was_started_has_ended_when_its_block_is_left():
    waiting = [sys.executable, "-c", "input()"]
    with (
        pytest.raises(ZeroDivisionError, match="division"),
        child.started(waiting, stdin=subprocess.PIPE) as process,
    ):
        raise ZeroDivisionError("division")
    assert process.returncode is not None
