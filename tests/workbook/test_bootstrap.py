"""Setting up on a new computer: once, in one folder, and repaired when it was interrupted.

Making the folder and running pip are replaced here by quick stand-ins; `.ci/run` does both in
earnest each time, for it runs the tests by the command the README gives.
"""

import ast
import importlib.util
import json
import os
import runpy
import sys
from importlib import metadata

import pytest

from workbook import bootstrap, child, commands

OK = "print('Collecting one==1.0')"
BROKEN = "print('ERROR: No matching distribution found for one==1.0'); raise SystemExit(1)"


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
            bootstrap._python().parent.mkdir(parents=True, exist_ok=True)
            bootstrap._python().touch()

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
    run = [sys.executable, "-c"]
    monkeypatch.setattr(bootstrap, "_pip_command", lambda needs: [*run, project.pip])
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


def test_an_interrupted_update_is_made_again_from_nothing(project, cut_short):
    project.python()
    (project.lists / bootstrap.READER).write_text("one==1.1\n")
    cut_short()
    project.python()
    assert 2 == project.made
    assert bootstrap._is_ready(bootstrap.READER)


def test_without_the_internet_a_sentence_says_what_to_do_and_where_to_look(project):
    project.pip = BROKEN
    with pytest.raises(bootstrap.SetupFailed) as failed:
        project.python()
    said = str(failed.value)
    assert "Check that this computer is on the internet" in said
    assert said.endswith("In short: ERROR: No matching distribution found for one==1.0")
    assert "No matching distribution" in bootstrap.LOG.read_text(encoding="utf-8")
    assert not bootstrap._is_ready(bootstrap.READER)


def test_a_failed_update_leaves_the_old_set_up_standing(project):
    project.python()
    before = (project.lists / bootstrap.READER).read_text()
    (project.lists / bootstrap.READER).write_text("one==1.1\n")
    project.pip = BROKEN
    with pytest.raises(bootstrap.SetupFailed, match="could not be fetched"):
        project.python()
    (project.lists / bootstrap.READER).write_text(before)
    project.said.clear()
    project.python()
    assert [] == project.said


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


def test_a_read_only_project_says_where_to_copy_it(project, monkeypatch):
    def refuse():
        raise OSError(30, "Read-only file system")

    monkeypatch.setattr(bootstrap, "_make_home", refuse)
    with pytest.raises(bootstrap.SetupFailed, match=r"Read-only .*\. Copy the whole folder"):
        project.python()


def test_a_python_without_venv_says_what_to_install(monkeypatch):
    def find(name):
        return None if name == "ensurepip" else object()

    monkeypatch.setattr(importlib.util, "find_spec", find)
    with pytest.raises(bootstrap.SetupFailed, match="type: sudo apt install python3-venv"):
        bootstrap._make_home()


def test_a_folder_that_cannot_be_made_is_named_with_pythons_reason(monkeypatch, tmp_path):
    (tmp_path / "file").write_text("in the way")
    monkeypatch.setattr(bootstrap, "HOME", tmp_path / "file" / ".venv")
    with pytest.raises(bootstrap.SetupFailed, match=r"could not be made. Python said: .*file"):
        bootstrap._make_home()


def test_pip_is_told_the_exact_versions_alone_and_this_project():
    command = bootstrap._pip_command(bootstrap.READER)
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


@pytest.mark.parametrize("name", ["__init__", "__main__", "bootstrap", "child", "commands"])
def test_what_runs_before_the_set_up_imports_the_standard_library_alone(root, name):
    tree = ast.parse((root / "workbook" / f"{name}.py").read_text(encoding="utf-8"))
    names = {"workbook." + alias.name for node in tree.body if (alias := _own(node))}
    outside = {name for name in _imported(tree.body) if name not in sys.stdlib_module_names}
    assert outside <= {"workbook"}
    allowed = {"workbook.bootstrap", "workbook.child", "workbook.commands"}
    assert names <= allowed


def _imported(body):
    for node in body:
        if isinstance(node, ast.Import):
            yield from (alias.name.split(".")[0] for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            yield node.module.split(".")[0]


def _own(node):
    if isinstance(node, ast.ImportFrom) and node.module == "workbook":
        return node.names[0]
    return None


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
        (["--port", "80"], "Argument --port: 80 is not a port; type a number from 1024 to 65535. "),
        (["--prot", "9400"], "Unrecognized arguments: --prot 9400. "),
    ],
)
def test_a_mistyped_command_says_what_was_got_and_what_to_type(words, told, capsys):
    with pytest.raises(SystemExit, match="2"):
        commands._read(words)
    help_line = "For all that can be typed: python3 -m workbook --help\n"
    assert told + help_line == capsys.readouterr().err


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (["-k", "nothing"], ["-k", "nothing"]),
        ([], ["-n", "3", "--dist", "loadfile", "--no-loadscope-reorder"]),  # the whole run
    ],
)
def test_the_exit_status_of_the_tests_is_passed_on(monkeypatch, words, told):
    monkeypatch.setenv(commands.SET_UP_FOR, bootstrap.TESTER)
    ran = []
    monkeypatch.setattr(child, "run", lambda command, **options: ran.append(command) or 5)
    assert 5 == commands.main(["test", *words])
    assert [[sys.executable, "-m", "pytest", *told]] == ran


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
    waiting = [sys.executable, "-c", "import time; time.sleep(60)"]
    with pytest.raises(ZeroDivisionError, match="division"), child.started(waiting) as process:
        raise ZeroDivisionError("division")
    assert process.returncode is not None
