"""The server keeps the workbook's pages as they are, and gives them one program; all else is as anywhere."""

import asyncio
import shutil
from types import SimpleNamespace

import pytest
from tornado.web import HTTPError

from workbook.start.contents import Contents
from workbook.start.own_pages import bars_under
from workbook.start.sessions import Sessions
from workbook.ui.pages import CHAPTERS, OPENING, TRAINERS, TRAINERS_OPENING

PAGE, OTHER = "01-three-horsepowers.ipynb", "mine.ipynb"


@pytest.fixture
def contents(tmp_path):
    """A reader's folder with a page, a notebook of their own, and a set from a trainer."""
    for place in (PAGE, OPENING, OTHER, f"week-3/{PAGE}"):
        (tmp_path / place).parent.mkdir(exist_ok=True)
        shutil.copy(CHAPTERS / PAGE, tmp_path / place)
    return Contents(root_dir=str(tmp_path))


def run(doing):
    return asyncio.run(doing)


def test_a_page_can_be_read_and_not_changed(contents, tmp_path):
    before = (tmp_path / PAGE).read_bytes()
    model = run(contents.get(PAGE))
    assert not model["writable"]
    for doing in (
        contents.save(model, PAGE),
        contents.save(model, f"/{PAGE}"),
        contents.delete_file(PAGE),
        contents.rename_file(PAGE, "gone.ipynb"),
        contents.rename_file(OTHER, PAGE),
    ):
        with pytest.raises(HTTPError, match=r"stays as it is\. To change it, choose Open a copy"):
            run(doing)
    assert before == (tmp_path / PAGE).read_bytes()


@pytest.mark.parametrize("path", [OTHER, f"week-3/{PAGE}"])
def test_any_other_notebook_is_saved(contents, tmp_path, path):
    model = run(contents.get(path))
    assert model["writable"]
    model["content"]["cells"] = []
    run(contents.save(model, path))
    assert '"cells": []' in (tmp_path / path).read_text()


def test_a_copy_of_a_page_is_the_readers_own(contents):
    copy = run(contents.copy(PAGE, ""))
    assert run(contents.get(copy["path"]))["writable"]


class Kernels(dict):
    """Programs by their names, instead of real ones."""

    async def start_kernel(self, **_):
        name = f"kernel-{len(self)}"
        self[name] = {"id": name}
        return name

    async def shutdown_kernel(self, name):
        del self[name]

    def kernel_model(self, name):
        return self[name]

    def cwd_for_path(self, path):
        return path


class Alike(Sessions):
    kernel_manager = Kernels()
    contents_manager = None


@pytest.fixture
def sessions(contents):
    found = Alike()
    found.kernel_manager = Kernels()
    found.contents_manager = SimpleNamespace(
        root_dir=contents.root_dir, get_kernel_path=lambda path: path
    )
    return found


def opened(sessions, *paths):
    """The program of each."""

    async def together():
        made = (sessions.create_session(path, path, "notebook", "python3") for path in paths)
        return [session["kernel"]["id"] for session in await asyncio.gather(*made)]

    return run(together())


def test_pages_that_open_at_once_have_one_program_and_all_else_its_own(sessions):
    page, opening, other, a_set = opened(sessions, PAGE, OPENING, OTHER, f"week-3/{PAGE}")
    assert page == opening
    assert 3 == len({page, other, a_set})


def test_when_their_program_is_gone_the_pages_get_one_new_one(sessions):
    [first] = opened(sessions, PAGE)
    del sessions.kernel_manager[first]
    sessions.kernel_manager["another"] = {"id": "another"}
    page, opening = opened(sessions, PAGE, OPENING)
    assert page == opening
    assert page != first


def test_a_page_that_is_ended_leaves_the_program_to_the_others(sessions):
    async def end_all():
        left = []
        for session in await sessions.list_sessions():
            await sessions.delete_session(session["id"])
            left.append(len(sessions.kernel_manager))
        return left

    opened(sessions, PAGE, OPENING)
    assert [1, 0] == run(end_all())


def test_each_place_has_the_bar_of_its_pages(contents, root, tmp_path):
    [bar] = bars_under(contents.root_dir).values()
    assert [
        "Home",
        "Study",
        "Chapters",
        "Exam",
        "Find the fault",
        "Formulas",
        "Record",
        "Group",
    ] == [place["name"] for place in bar["places"]]
    shutil.copy(TRAINERS / TRAINERS_OPENING, contents.root_dir)
    [bar] = bars_under(contents.root_dir).values()
    assert ["Home", "Set work", "The class", "The course"] == [
        bar["places"][n]["name"] for n in (0, -3, -2, -1)
    ]
    whole = bars_under(str(root))
    assert {path.relative_to(root).as_posix() for path in (CHAPTERS, TRAINERS)} == set(whole)
    assert {} == bars_under(str(tmp_path / "week-3"))


def test_every_page_is_in_the_bar_once(contents):
    places = bars_under(contents.root_dir)[""]["places"]
    pages = [page for place in places for page in place.get("pages", [place])]
    assert sorted(path.name for path in CHAPTERS.glob("*.ipynb")) == sorted(
        each["page"] for each in pages
    )
