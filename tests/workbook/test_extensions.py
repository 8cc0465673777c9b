"""A new version of the page's own scripts and looks reaches a browser that had the old one."""

import json
import shutil

import pytest
from playwright.sync_api import expect

from tests.workbook.name_extensions import EXTENSIONS, name_files

FIRST, SECOND = "rgb(1, 2, 3)", "rgb(4, 5, 6)"
OURS = "workbook/start/settings/labextensions/wire-to-water"
MARK = "document.documentElement.dataset.edition"


@pytest.mark.parametrize("extension", EXTENSIONS, ids=lambda path: path.name)
def test_each_file_is_named_after_what_is_in_it(extension, tmp_path):
    copy = shutil.copytree(extension, tmp_path / "copy")
    assert [] == name_files(copy), "Run: python -m tests.workbook.name_extensions"
    assert list(copy.glob("static/*.js"))


def test_another_letter_gives_other_names_and_each_is_known_where_it_is_named(root, tmp_path):
    copy = shutil.copytree(root / OURS, tmp_path / "copy")
    (looks,) = copy.glob("static/page.*.css")
    before = {path.name for path in copy.glob("static/*")}
    looks.write_bytes(looks.read_bytes() + b"\n")
    named, script = name_files(copy)
    assert {named, script} == {path.name for path in copy.glob("static/*")} - before
    assert named in (copy / "static" / script).read_text("utf-8")
    load = json.loads((copy / "package.json").read_text("utf-8"))["jupyterlab"]["_build"]["load"]
    assert f"static/{script}" == load
    assert [] == name_files(copy)


@pytest.fixture
def project(root, tmp_path):
    """A copy of the workbook with one page, whose next version is made in it."""
    copy = tmp_path / "project"
    leave = shutil.ignore_patterns("__pycache__", "[!0]*.ipynb", "0[!0]*.ipynb")
    for name in ("workbook", "binder"):
        shutil.copytree(root / name, copy / name, ignore=leave)
    return copy


def make_edition(project, name, color):
    """Another version: its script says its name, and its looks have a color."""
    extension = project / OURS
    (script,) = extension.glob("static/remoteEntry.*.js")
    (looks,) = extension.glob("static/page.*.css")
    put_first(script, MARK, f'{MARK} = "{name}";')
    put_first(looks, "html { accent", f"html {{ accent-color: {color}; }}")
    name_files(extension)


def put_first(path, begins, line):
    """A line at the top of a file, in place of one that begins so."""
    rest = [old for old in path.read_text("utf-8").splitlines() if not old.startswith(begins)]
    path.write_text("\n".join([line, *rest, ""]), "utf-8")


@pytest.mark.browser
def test_a_browser_that_had_one_version_runs_the_next(project, serve, page):
    make_edition(project, "first", FIRST)
    served = serve(project)
    for name, color in (("first", FIRST), ("second", SECOND)):
        make_edition(project, name, color)
        served.open(page)
        expect(page.locator("html")).to_have_attribute("data-edition", name)
        expect(page.locator("html")).to_have_css("accent-color", color)
