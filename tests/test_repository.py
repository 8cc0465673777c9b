"""What must hold for every file of the project, whoever wrote it."""

import ast
import json
import re
import subprocess
import sys
import tomllib
from importlib import metadata
from pathlib import Path

import pytest
from packaging.markers import default_environment
from packaging.requirements import Requirement
from packaging.utils import canonicalize_name

TOP_LEVEL = {
    "DEVELOPERS.md",
    "LICENSE",
    "README.md",
    "binder",
    "pyproject.toml",
    "solver",
    "tests",
    "workbook",
}
# In pieces, or this file would be the first to break the rule.
REGISTRIES = [
    "py" + "pi.org",
    "python" + "hosted.org",
    "npm" + "js.org",
    "deb" + ".debian" + ".org",
]
MACHINES = ["/work" + "/main", "/work" + "/shared", "/tmp" + "/w2w", "/ro" + "ot/", "/ho" + "me/"]
LISTS = [
    "requirements.txt",
    "requirements-class.txt",
    "requirements-site.txt",
    "requirements-test.txt",
]
PIN = re.compile(r'[\w.-]+==[\w.!+]+( ; sys_platform == "\w+")?')
SYSTEMS = [
    {"sys_platform": "linux", "platform_system": "Linux", "os_name": "posix"},
    {"sys_platform": "darwin", "platform_system": "Darwin", "os_name": "posix"},
    {"sys_platform": "win32", "platform_system": "Windows", "os_name": "nt"},
]
PROJECT = Path(__file__).resolve().parent.parent / "pyproject.toml"
PYTHONS = re.findall(r"Python :: (3\.\d+)", PROJECT.read_text(encoding="utf-8"))


def listed(root, *patterns):
    """The files that are part of the project, or are about to be."""
    ask = ["git", "ls-files", "--cached", "--others", "--exclude-standard", "-z", "--", *patterns]
    named = subprocess.run(ask, cwd=root, check=True, stdout=subprocess.PIPE).stdout.decode()
    return [path for name in named.split("\0") if name and (path := root / name).is_file()]


def test_the_top_level_holds_what_it_may_and_nothing_else(root):
    names = {path.relative_to(root).parts[0] for path in listed(root)}
    assert set() == {name for name in names if not name.startswith(".")} - TOP_LEVEL


@pytest.mark.parametrize("words", [REGISTRIES, MACHINES], ids=["a registry", "a machine's path"])
def test_no_file_names(root, words):
    named = [
        f"{path.relative_to(root)}: {word}"
        for path in listed(root)
        for word in words
        if word.encode() in path.read_bytes()
    ]
    assert [] == named


def test_the_solver_never_imports_the_workbook(root):
    found = [
        f"{path.relative_to(root)}:{node.lineno}"
        for path in listed(root, "solver/*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if "workbook" in {name.split(".")[0] for name in _imported(node)}
    ]
    assert [] == found


def _imported(node):
    if isinstance(node, ast.Import):
        return [alias.name for alias in node.names]
    return [node.module or ""] if isinstance(node, ast.ImportFrom) else []


def test_no_code_runs_text_as_code(root):
    found = [
        f"{path.relative_to(root)}:{node.lineno}: {node.func.id}"
        for path in listed(root, "solver/*.py", "workbook/*.py")
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Call)
        and isinstance(node.func, ast.Name)
        and node.func.id in {"eval", "exec", "compile", "__import__"}
    ]
    assert [] == found


ELEMENT = re.compile(
    r"</?(?:a|b|body|br|caption|cite|code|details|div|em|h[1-6]|head|html|i|img|input|label|li|main|meta"
    r"|ol|p|pre|script|section|small|span|strong|style|summary|table|tbody|td|textarea|th|thead"
    r"|tr|ul)\b[^>]*>"
)
# It looks for an element in what is there already: a cell with an answer.
LOOKED_FOR = {"trainer/marking/grade_cell.py"}


def test_html_is_built_by_calls_and_not_written_by_hand(root):
    found = {
        path.relative_to(root / "workbook").as_posix()
        for path in listed(root, "workbook/*.py")
        for text in _texts(ast.parse(path.read_text(encoding="utf-8")))
        if ELEMENT.search(text)
    }
    assert LOOKED_FOR == found


def _texts(tree):
    """The texts in a module but for docstrings; of an f-string, with a gap for each value."""
    said = {id(node.value) for node in ast.walk(tree) if isinstance(node, ast.Expr)}
    for node in ast.walk(tree):
        if isinstance(node, ast.JoinedStr):
            yield "".join(p.value if isinstance(p, ast.Constant) else "…" for p in node.values)
        elif (
            isinstance(node, ast.Constant) and isinstance(node.value, str) and id(node) not in said
        ):
            yield node.value


def notebooks(root):
    pages = {path: json.loads(path.read_text(encoding="utf-8")) for path in listed(root, "*.ipynb")}
    assert pages, "the project has no notebooks"
    return pages


def test_notebooks_carry_no_results(root):
    left = [
        f"{path.name}: {cell.get('id')}"
        for path, page in notebooks(root).items()
        for cell in page["cells"]
        if cell.get("outputs") or cell.get("execution_count") is not None
    ]
    assert [] == left


def test_every_cell_has_a_name_of_its_own_that_says_what_it_is(root):
    # Names made up by a program change with every save; a name in words stays.
    for path, page in notebooks(root).items():
        names = [cell.get("id", "") for cell in page["cells"]]
        assert [] == [name for name in names if not re.fullmatch(r"[a-z][a-z0-9-]{1,63}", name)]
        assert [] == [name for name in names if re.fullmatch(r"[0-9a-f]{8}(-[0-9a-f-]+)?", name)]
        assert len(names) == len(set(names)), path.name


def test_the_opening_page_is_there_and_every_link_to_a_page_leads_to_one(root):
    chapters = root / "workbook" / "chapters"
    assert (chapters / "00-start-here.ipynb").is_file()
    broken = [
        f"{path.name}: {link}"
        for path, page in notebooks(root).items()
        for cell in page["cells"]
        if cell["cell_type"] == "markdown"
        for link in re.findall(r"\]\(([^):#]+\.ipynb)", "".join(cell["source"]))
        # A trainer's page is copied to stand beside the chapters.
        if not any((folder / link).is_file() for folder in (path.parent, chapters))
    ]
    assert [] == broken


def test_the_linter_finds_nothing(root):
    check = [sys.executable, "-m", "ruff", "check", "--no-cache", "--output-format=concise", "."]
    done = subprocess.run(check, cwd=root, stdout=subprocess.PIPE, text=True, check=False)
    assert "All checks passed!\n" == done.stdout


@pytest.mark.parametrize("name", LISTS)
def test_every_requirement_is_a_name_and_an_exact_version(root, name):
    lines = (root / "binder" / name).read_text(encoding="utf-8").splitlines()
    lines = [line for line in lines if not line.startswith(("#", "-r requirements"))]
    assert len(lines) > 3
    assert [] == [line for line in lines if not PIN.fullmatch(line)]


def pinned(root, *names):
    lines = [line for name in names for line in (root / "binder" / name).read_text().splitlines()]
    return {canonicalize_name(line.split("==")[0]) for line in lines if PIN.fullmatch(line)}


def wanted_by(name):
    """What a package asks for on any system and Python the project admits."""
    base = {**default_environment(), "extra": "", "implementation_name": "cpython"}
    for text in metadata.requires(name) or []:
        requirement = Requirement(text)
        environments = [
            {**base, **system, "python_version": python, "python_full_version": f"{python}.1"}
            for system in SYSTEMS
            for python in PYTHONS
        ]
        marker = requirement.marker
        if marker is None or any(marker.evaluate(each) for each in environments):
            yield canonicalize_name(requirement.name)


@pytest.mark.parametrize(
    "names",
    [LISTS[:1], LISTS[:2], LISTS[:3], LISTS],
    ids=["a reader", "a class", "a site", "tests"],
)
def test_the_exact_versions_are_complete_on_every_system_for(root, names):
    have = pinned(root, *names)
    # Not installed where this runs, and without needs of their own.
    elsewhere = {"appnope", "colorama", "pywin32", "pywinpty"}
    needs = {need for name in have - elsewhere for need in wanted_by(name)}
    assert set() == needs - have


def test_the_exact_versions_are_what_the_project_asks_for(root):
    project = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    lines = (root / "binder" / "requirements.txt").read_text(encoding="utf-8").splitlines()
    pins = dict(line.split(" ;")[0].split("==") for line in lines if PIN.fullmatch(line))
    versions = {canonicalize_name(name): version for name, version in pins.items()}
    asked = [Requirement(text) for text in project["dependencies"]]
    assert [] == [
        str(each) for each in asked if versions[canonicalize_name(each.name)] not in each.specifier
    ]


def test_a_reader_gets_no_grading_tools_and_a_trainer_no_hub(root):
    assert "nbgrader" not in pinned(root, *LISTS[:1])
    assert "nbgrader" in pinned(root, *LISTS[:2])
    assert "jupyterhub" not in pinned(root, *LISTS[:2])


def test_binder_stops_at_the_first_fault(root):
    lines = (root / "binder" / "postBuild").read_text(encoding="utf-8").splitlines()
    assert "set -e" == next(line for line in lines if not line.startswith("#"))
    assert 'exec "$@"' == (root / "binder" / "start").read_text(encoding="utf-8").splitlines()[-1]
