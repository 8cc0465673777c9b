"""The static site as files: what is in it, what is not, and what its readers load from where."""

import hashlib
import json
import re
from argparse import Namespace
from urllib.parse import urlsplit
from zipfile import ZipFile

import pytest
from jupyterlite_pyodide_kernel.constants import PYODIDE_CDN_URL, PYODIDE_VERSION

from tests.workbook.online.serving import Served
from workbook.online import NotBuilt, build, command, packages
from workbook.online.runtime import LOCK, Brought, Usual
from workbook.start.bootstrap import READER, pins
from workbook.ui.pages import code_cells, shipped_pages

KERNEL = "@jupyterlite/pyodide-kernel-extension:kernel"


def config_of(site):
    """What the site tells JupyterLab."""
    text = (site / "index.html").read_text(encoding="utf-8")
    return json.loads(re.search(r'application/json">(.*?)</script>', text, re.DOTALL)[1])


def lock_in(site):
    """The list of packages, and the folder it stands in."""
    path = next(site.glob("static/wheels/*/pyodide-lock.json"))
    return json.loads(path.read_text(encoding="utf-8")), path.parent


def wheel(folder, name, *needs):
    """A wheel with one module, which asks for these."""
    lines = ["Metadata-Version: 2.4", f"Name: {name}", "Version: 1", *needs]
    path = folder / f"{name}-1-py3-none-any.whl"
    with ZipFile(path, "w") as made:
        made.writestr(f"{name}/__init__.py", "")
        made.writestr(f"{name}/tests/test_it.py", "")
        made.writestr(f"{name}-1.dist-info/METADATA", "\n".join(lines))
    return path


def test_every_page_that_ships_is_there_and_may_run_as_it_is(built):
    pages = {path.name: code_cells(path) for path in shipped_pages()}
    assert pages == json.loads(config_of(built.out)["wireToWaterPages"])
    assert set(pages) == {path.name for path in (built.out / "files").iterdir()}


def test_no_page_can_be_saved_over(built):
    listed = json.loads((built.out / "api/contents/all.json").read_text(encoding="utf-8"))
    assert {False} == {entry["writable"] for entry in listed["content"]}


def test_each_wheel_is_the_one_on_the_list(built):
    listed, folder = lock_in(built.out)
    marks = {e["file_name"]: e["sha256"] for e in listed["packages"].values()}
    found = {p.name: hashlib.sha256(p.read_bytes()).hexdigest() for p in folder.glob("*.whl")}
    assert found == marks


def test_python_loads_all_of_our_list_before_a_page_runs(built):
    listed, folder = lock_in(built.out)
    kernel = config_of(built.out)["litePluginSettings"][KERNEL]
    assert sorted(listed["packages"]) == sorted(kernel["loadPyodideOptions"]["packages"])
    place = (folder / "pyodide-lock.json").relative_to(built.out).as_posix()
    assert f"./{place}" == kernel["loadPyodideOptions"]["lockFileURL"]


def test_the_solver_and_the_workbook_are_bytecode_with_their_data(built):
    ours = next(built.out.glob("static/wheels/*/wire_to_water-*.whl"))
    names = ZipFile(ours).namelist()
    assert {"solver/topics/library.pyc", "workbook/page.pyc", "solver/units/units.txt"} <= set(
        names
    )
    assert {"workbook/ui/look.css", "workbook/chapters/00-start-here.ipynb"} <= set(names)
    left = [name for name in names if name.endswith((".py", ".png", ".js", ".typ"))]
    assert ["workbook/ui/answer.js", "workbook/ui/order.js"] == left  # a widget's own script
    assert built.quick


def test_versions_are_those_of_a_reader_but_for_what_a_browser_cannot_have():
    readers = {packages.canonical(name): version for name, version in pins(READER).items()}
    other = {name for name, version in packages.wanted().items() if readers.get(name) != version}
    assert {"decorator", "ipython"} == other


def test_a_site_with_its_own_python_names_no_other_address(built, runtime):
    kernel = config_of(built.out)["litePluginSettings"][KERNEL]
    assert "./static/loading.mjs" == kernel["pyodideUrl"]
    assert ["./pyodide/"] == places(built.out)
    addresses = [e["file_name"] for e in lock_in(built.out)[0]["packages"].values()]
    assert [] == [address for address in addresses if "://" in address]
    said = list(command.sentences(built, Brought(runtime)))
    assert (
        "Readers' browsers load nothing from outside, and nothing readers do is sent anywhere."
        in said
    )


def places(site):
    """Where a site's readers look for the runtime, in this order."""
    text = (site / "static/loading.mjs").read_text(encoding="utf-8")
    return json.loads(re.search(r"const PLACES = (\[.*?\]);", text)[1])


def test_the_standard_library_is_bytecode_with_its_data_and_costs_less_than_2_mb(built, runtime):
    plain, ours = runtime / "python_stdlib.zip", built.out / "static/library.zip"
    names = {name.removesuffix("c") for name in ZipFile(ours).namelist()}
    assert {name.removesuffix("c") for name in ZipFile(plain).namelist()} == names
    assert [] == [name for name in ZipFile(ours).namelist() if name.endswith(".py")]
    assert ours.stat().st_size - plain.stat().st_size < 2_000_000


def test_views_and_maps_that_no_reader_asks_for_are_left_out(built):
    files = [path.relative_to(built.out).as_posix() for path in built.out.rglob("*")]
    assert [] == [file for file in files if file.endswith((".map", ".eot"))]
    tops = {file.split("/")[0] for file in files}
    folders = {"api", "build", "extensions", "files", "static", "wire-to-water"}
    front = {"icon-192.png", "icon-512.png", "icon.svg", "index.html", "manifest.webmanifest"}
    assert folders | front | {"service-worker.js"} == tops


def test_no_place_in_the_front_is_left_to_fill(built):
    modules = built.out.glob("static/*.mjs")
    for path in (built.out / "index.html", built.out / "service-worker.js", *modules):
        assert "{{" not in path.read_text(encoding="utf-8"), path.name


def test_every_file_is_kept_for_when_the_network_is_away(built):
    text = (built.out / "service-worker.js").read_text(encoding="utf-8")
    kept = json.loads(re.search(r"const FILES = (\{.*?\});", text)[1])
    files = {p.relative_to(built.out).as_posix() for p in built.out.rglob("*") if p.is_file()}
    unasked = {file for file in files if file.endswith("third-party-licenses.json")}
    unasked |= {"static/pyodide/python_stdlib.zip"}  # another stands for it
    assert files - unasked - {"service-worker.js"} == set(kept)


def test_the_manifest_has_icons_that_are_there(built):
    manifest = json.loads((built.out / "manifest.webmanifest").read_text(encoding="utf-8"))
    assert "Wire to Water" == manifest["name"]
    assert [] == [i["src"] for i in manifest["icons"] if not (built.out / i["src"]).is_file()]


@pytest.fixture(scope="module")
def from_outside(runtime, tmp_path_factory):
    """A site built as by default, with a server on this computer in place of the usual address."""
    with Served(runtime) as usual:
        outside = Usual(usual.address)
        yield build.build(tmp_path_factory.mktemp("default") / "site", outside), outside


def test_by_default_python_alone_comes_from_the_usual_address(from_outside):
    made, outside = from_outside
    assert [f"{outside.outside}/"] == places(made.out)
    addresses = {n: e["file_name"] for n, e in lock_in(made.out)[0]["packages"].items()}
    assert "wire-to-water" in addresses
    assert [] == [name for name, file in addresses.items() if "/" in file]
    assert not {"matplotlib", "numpy"} & set(addresses)


def test_by_default_the_command_says_what_comes_from_outside(from_outside):
    made, outside = from_outside
    said = list(command.sentences(made, outside))
    assert f"Readers' browsers load Python from {outside.outside}" in said
    assert "Nothing else comes from outside, and nothing readers do is sent anywhere." in said
    assert any(line.startswith("127.0.0.1:") and "internet address" in line for line in said)


def test_by_default_only_what_is_first_loaded_from_outside_is_kept_ahead(from_outside):
    made, _ = from_outside
    text = (made.out / "service-worker.js").read_text(encoding="utf-8")
    kept = json.loads(re.search(r"const FILES = (\{.*?\});", text)[1])
    ahead = {address.rpartition("/")[2] for address in kept if "://" in address}
    assert {"pyodide.mjs", "pyodide.asm.mjs", "pyodide.asm.wasm", "python_stdlib.zip"} == ahead


def test_no_address_of_python_stands_in_our_own_files(root):
    usual = urlsplit(PYODIDE_CDN_URL).netloc
    files = [
        p for p in (root / "workbook/online").rglob("*") if p.suffix in {".py", ".js", ".html"}
    ]
    assert usual
    assert files
    assert [] == [p.name for p in files if usual in p.read_text(encoding="utf-8")]


def test_the_runtime_is_the_one_that_the_kernel_asks_for_wherever_it_is_written(root):
    for name in ("README.md", ".ci/run"):
        assert f"pyodide@{PYODIDE_VERSION}" in (root / name).read_text(encoding="utf-8"), name


def test_a_package_that_a_wheel_needs_and_nobody_brings_is_named(tmp_path):
    needy = wheel(tmp_path, "needy", "Requires-Dist: rare-thing>=1")
    with pytest.raises(NotBuilt, match=r"A page needs rare-thing. Add that to"):
        packages.lock_of({"packages": {}}, [needy])


def test_what_only_another_system_needs_is_not_missed(tmp_path):
    elsewhere = 'Requires-Dist: colorama; sys_platform == "win32"'
    listed = packages.lock_of({"packages": {}}, [wheel(tmp_path, "ours", elsewhere)])
    assert ["ours"] == list(listed["packages"])


def test_a_lighter_wheel_has_no_tests_and_is_the_same_each_time(tmp_path):
    whole = wheel(tmp_path, "thing")
    first, second = (
        packages.lighter(whole, tmp_path / name).read_bytes() for name in ("one", "two")
    )
    assert first == second
    assert ["thing/__init__.py", "thing-1.dist-info/METADATA"] == (
        ZipFile(tmp_path / "one" / whole.name).namelist()
    )


def test_a_folder_with_other_things_in_it_is_left_alone(tmp_path, capsys):
    (tmp_path / "mine.txt").write_text("mine")
    options = Namespace(out=str(tmp_path), runtime=None, usual_first=False)
    assert 1 == command.run(options)
    assert (
        "has other files in it. Type the name of a new folder after --out."
        in capsys.readouterr().err
    )
    assert "mine" == (tmp_path / "mine.txt").read_text()


def test_a_runtime_that_is_not_whole_says_what_is_missing_and_how_to_get_it(tmp_path, capsys):
    options = Namespace(out=str(tmp_path / "site"), runtime=str(tmp_path), usual_first=False)
    assert 1 == command.run(options)
    said = capsys.readouterr().err
    assert "has no pyodide.mjs, pyodide.asm.mjs, pyodide.asm.wasm, python_stdlib.zip" in said
    assert "To download it, type: npm pack pyodide@" in said


def test_an_address_that_does_not_answer_is_told(tmp_path):
    with Served(tmp_path) as empty, pytest.raises(NotBuilt, match=r"couldn't be downloaded: .*404"):
        Usual(empty.address).read(LOCK)
