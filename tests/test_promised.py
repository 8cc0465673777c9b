"""Every exact version installs on every Python and system promised; `.ci/lock` refuses another."""

import re
import runpy
import sys
import tomllib
from importlib import metadata
from types import SimpleNamespace

import pytest
from packaging.specifiers import SpecifierSet

ROWS = ["3.11.0 on linux", "3.11.0 on win32", "3.11.0 on darwin"]
# A pip that cannot install what Python 3.11.0 refuses, nor on Windows what has no file for it.
PIP = """#!{python}
import sys
words = " ".join(sys.argv)
if "index versions wntr" in words:
    print("wntr (1.5.0)", "Available versions: 1.5.0, 1.4.0", sep="\\n")
for pin, where in (("late==2", "--python-version 3.11.0 "), ("heavy==3", "win_amd64")):
    if pin in words and where in words:
        print("WARNING: a word besides")
        sys.exit(f"ERROR: No matching distribution found for {{pin}}")
"""


@pytest.fixture(scope="module")
def promised(root):
    return SimpleNamespace(**runpy.run_path(str(root / ".ci" / "promised.py")))


@pytest.fixture
def pip(tmp_path):
    program = tmp_path / "python"
    program.write_text(PIP.format(python=sys.executable))
    program.chmod(0o755)
    return str(program)


def silent(_):
    pass


def test_the_pythons_promised_are_those_that_the_project_admits(root, promised):
    project = tomllib.loads((root / "pyproject.toml").read_text(encoding="utf-8"))["project"]
    pythons = promised.pythons()
    assert project["requires-python"] == f">={pythons[0]}"
    assert pythons == [f"3.{minor}" for minor in range(11, 11 + len(pythons))]
    assert len(pythons) > 3


def test_every_version_that_is_pinned_admits_every_release_of_every_python(root, promised):
    text = "\n".join(path.read_text(encoding="utf-8") for path in root.glob("binder/*.txt"))
    names = re.findall(r"^([\w.-]+)==[\w.!+]+$", text, re.MULTILINE)
    releases = [f"{python}.{number}" for python in promised.pythons() for number in range(30)]
    admits = {
        name: SpecifierSet(metadata.metadata(name).get("Requires-Python") or "") for name in names
    }
    assert len(admits) > 100
    assert [] == [
        f"{name} {admits[name]}: {release}"
        for name in names
        for release in releases
        if release not in admits[name]
    ]


@pytest.mark.skipif(sys.platform == "win32", reason="the stand-in for pip is a Unix program")
@pytest.mark.parametrize(
    ("pins", "places"),
    [
        ("fine==1", []),
        ("late==2", ROWS),
        ("heavy==3", [f"{python}.0 on win32" for python in ("3.11", "3.12", "3.13", "3.14")]),
        ('heavy==3 ; sys_platform == "linux"', []),
    ],
)
def test_a_version_that_does_not_install_somewhere_is_refused_there(promised, pip, pins, places):
    pin = pins.split(" ")[0]
    told = f"ERROR: No matching distribution found for {pin}"
    expected = [f"Python {place}: {told}" for place in places]
    assert expected == promised.refused(pip, [f"# A list.\nfine==1\n{pins}\n"], silent)


@pytest.mark.skipif(sys.platform == "win32", reason="the stand-in for pip is a Unix program")
def test_what_comes_as_source_alone_is_asked_for_by_its_number(promised, pip):
    assert [] == promised.refused(pip, ["wntr==1.5.0\n"], silent)
    faults = promised.refused(pip, ["wntr==1.6.0\n"], silent)
    assert "Python 3.11.0 on linux: wntr==1.6.0 does not admit it" == faults[0]
