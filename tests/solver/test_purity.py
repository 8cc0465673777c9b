"""The solver is pure computation: light to import, and it asks nothing of the machine it runs on."""

import ast
import pkgutil
import subprocess
import sys
from importlib import import_module
from pathlib import Path

import solver
from tests.in_one import in_one

ROOT = Path(solver.__file__).parent
SOURCES = sorted(ROOT.rglob("*.py"))
MODULES = sorted(m.name for m in pkgutil.walk_packages(solver.__path__, "solver."))
HEAVY = ("numpy", "pint", "matplotlib", "ipywidgets", "IPython", "jupyterlab", "scipy", "workbook")
CLOCKS = {"time", "datetime", "calendar", "locale", "tempfile", "socket", "urllib", "secrets"}
WRITES = {"write_text", "write_bytes", "mkdir", "unlink", "touch"}
COMPILER = "compile.py"  # a maker's tool: it writes one table, with pint

each_source = in_one("path", SOURCES)


def test_importing_all_of_the_solver_brings_in_nothing_heavy():
    ask = f"import sys, {', '.join(MODULES)}; print(*(m for m in {HEAVY} if m in sys.modules))"
    command = [sys.executable, "-c", ask]
    done = subprocess.run(
        command, capture_output=True, text=True, cwd=ROOT.parent, check=True, timeout=60
    )
    assert "\n" == done.stdout


def imports(tree: ast.AST) -> set[str]:
    """The top names of everything a module imports."""
    found = set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Import):
            found |= {alias.name.partition(".")[0] for alias in node.names}
        elif isinstance(node, ast.ImportFrom) and not node.level:
            found.add(node.module.partition(".")[0])
    return found


@each_source
def test_no_file_of_the_solver_looks_at_the_clock_the_place_or_the_network(path):
    assert set() == imports(ast.parse(path.read_text("utf-8"))) & CLOCKS


@in_one("path", [p for p in SOURCES if p.name != COMPILER])
def test_no_file_of_the_solver_writes_a_file(path):
    calls = [n for n in ast.walk(ast.parse(path.read_text("utf-8"))) if isinstance(n, ast.Call)]
    named = {c.func.id for c in calls if isinstance(c.func, ast.Name)}
    methods = {c.func.attr for c in calls if isinstance(c.func, ast.Attribute)}
    assert set() == (named & {"open"}) | (methods & WRITES)


@each_source
def test_randomness_comes_from_the_draw_alone(path):
    if path.name != "draw.py":
        assert "random" not in imports(ast.parse(path.read_text("utf-8")))


@in_one("name", ["solver", *MODULES])
def test_a_module_says_what_it_offers_and_offers_what_it_says(name):
    module = import_module(name)
    if (
        hasattr(module, "__path__")
        and len(ast.parse(Path(module.__file__).read_text("utf-8")).body) == 1
    ):
        return  # a room's docstring alone
    offered = getattr(module, "__all__", None)
    assert offered is not None, f"{name} has no __all__"
    assert sorted(set(offered)) == sorted(offered)
    assert [] == [each for each in offered if not hasattr(module, each)]
