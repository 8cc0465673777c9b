"""Nothing a reader can meet has a turn of phrase from the list, or the name of a maker."""

import re
from hashlib import sha256
from pathlib import Path

import pytest

from solver.sets.paper import CHAPTERS

from .texts import ROOT, chapter_texts, file_texts, reader_files
from .turns import turns_in

# Words of makers, brands, web shops and trade magazines, as the first 12 digits of their SHA-256,
# so that no file names them. To add one to makers.txt: `sha256(b"word").hexdigest()[:12]`.
MAKERS = frozenset(Path(__file__).with_name("makers.txt").read_text("utf-8").split())
WORD = re.compile(r"[a-z][a-z-]+")
ENDINGS = {".py", ".toml", ".csv", ".txt", ".typ", ".md", ".ipynb", ".css", ".js", ".html", ".json"}


def makers_in(text):
    """The words of a text that are names of makers."""
    return {
        w for w in set(WORD.findall(text.lower())) if sha256(w.encode()).hexdigest()[:12] in MAKERS
    }


@pytest.mark.parametrize("chapter", CHAPTERS)
def test_no_problem_has_a_turn_of_phrase_that_nobody_at_a_plant_would_use(chapter):
    found = [(text, turn) for text in chapter_texts(chapter) for turn in turns_in(text.text)]
    assert [] == found


def test_no_page_sentence_or_printed_sheet_has_one_either():
    texts = (text for path in reader_files() for text in file_texts(path))
    assert [] == [(text, turn) for text in texts for turn in turns_in(text.text)]


@pytest.mark.parametrize(
    "said",
    [
        "What head has it then?",
        "Left out: the days.",
        "This multiplies by the efficiency.",
        "It reads 365 megohm.",
        "Correct it to 40 °c.",
        "It has a 11.5 in sheave.",
        "It draws from an 7 ft well.",
        "The dear price goes with the on-peak energy.",
    ],
)
def test_a_turn_that_comes_back_is_found(said):
    assert [] != list(turns_in(said))


def test_no_file_of_the_project_names_a_maker():
    files = [
        path
        for folder in ("solver", "workbook", "tests", "binder")
        for path in sorted((ROOT / folder).rglob("*"))
        if path.suffix in ENDINGS and "golden" not in path.parts and "kept" not in path.parts
    ]
    found = {str(p.relative_to(ROOT)): makers_in(p.read_text("utf-8", "replace")) for p in files}
    assert {} == {name: words for name, words in found.items() if words}


def test_a_name_of_a_maker_is_known_by_its_hash():
    made_up = sha256(b"zzyx").hexdigest()[:12]
    assert made_up not in MAKERS
    assert len(MAKERS) > 20
