"""Every text that a reader can meet, gathered for reading aloud and for the test of turns.

A chapter's texts come from its families as drawn, so they are what a learner sees; a page's and a
module's come from the file itself: the prose of a notebook, the sentences among Python's literals.
"""

import ast
import json
import re
from collections.abc import Iterator
from pathlib import Path
from tomllib import loads
from typing import NamedTuple

from solver import FAMILIES, Case, draw
from solver.engine.grading import as_typed, grade
from solver.render.text import step_lines

__all__ = ["ROOT", "Text", "chapter_texts", "file_texts", "reader_files"]

ROOT = Path(__file__).parents[2]
SEEDS = (1, 2, 3)
_NUMBER = re.compile(r"\d[\d,.]*")
_SENTENCE = re.compile(r"[A-Za-z’'°%]+[ ,:;][^\n]*[a-z]")
_CODE_LIKE = re.compile(r"[{<\\]|\w+\(|^\w+(-\w+)*$")


class Text(NamedTuple):
    """One text, and where it stands: a family and what part of it, or a file and a line."""

    where: str
    part: str
    text: str


def chapter_texts(chapter: str, seeds: tuple[int, ...] = SEEDS) -> Iterator[Text]:
    """The texts of a chapter's problems in both systems; those that differ only in numbers once."""
    for family in FAMILIES:
        if family.chapter != chapter:
            continue
        seen: set[str] = set()
        yield Text(family.name, "title", family.title)
        for level in range(1, len(family.levels) + 1):
            for units in ("us", "si"):
                for seed in seeds:
                    for part, text in case_texts(draw(family, seed, units, level)):
                        shape = _NUMBER.sub("#", text)
                        if text.strip() and shape not in seen:
                            seen.add(shape)
                            yield Text(f"{family.name} {level} {units}", part, text)


def case_texts(case: Case) -> Iterator[tuple[str, str]]:
    """The parts of one problem and their texts."""
    yield "question", case.question
    for choice in case.choices:
        yield "choice", choice
    for step in case.steps:
        *lines, why = step_lines(step, case.known, case.given, case.units)
        yield "step", " | ".join(lines)
        yield "why", why
    for mistake in case.mistakes:
        yield "mistake", grade(case, as_typed(case, mistake.value)).says


def reader_files() -> Iterator[Path]:
    """The files whose text a reader can meet, besides what problems say.

    The names of quantities are met in problems; their file also has every alias people type.
    """
    yield ROOT / "README.md"
    for folder in ("solver", "workbook"):
        for ending in ("py", "toml", "typ", "md", "ipynb"):
            for path in sorted((ROOT / folder).rglob(f"*.{ending}")):
                if path.name not in (
                    "quantities.py",
                    "README.md",
                ):  # a room's README is for contributors
                    yield path


def file_texts(path: Path) -> Iterator[Text]:
    """The texts of one file: prose of a notebook, sentences of a module, lines of other files."""
    name = path.relative_to(ROOT).as_posix()
    match path.suffix:
        case ".ipynb":
            for cell in json.loads(path.read_text("utf-8"))["cells"]:
                if cell["cell_type"] == "markdown":
                    yield Text(name, cell["id"], "".join(cell["source"]))
        case ".py":
            for line, text in _literals(ast.parse(path.read_text("utf-8"))):
                yield Text(name, f"line {line}", text)
        case ".toml":
            for text in _strings(loads(path.read_text("utf-8"))):
                yield Text(name, "", text)
        case _:
            for line, text in enumerate(path.read_text("utf-8").splitlines(), 1):
                yield Text(name, f"line {line}", text)


def _literals(tree: ast.Module) -> Iterator[tuple[int, str]]:
    """The sentences among the literals of a module; docstrings are for contributors."""
    docs = {
        id(node.body[0].value)
        for node in ast.walk(tree)
        if isinstance(node, ast.Module | ast.ClassDef | ast.FunctionDef | ast.AsyncFunctionDef)
        and node.body
        and isinstance(node.body[0], ast.Expr)
    }
    for node in ast.walk(tree):
        match node:
            case ast.Constant(value=str() as text) if id(node) not in docs and _is_said(text):
                yield node.lineno, text


def _is_said(text: str) -> bool:
    return " " in text.strip() and bool(_SENTENCE.search(text))


def _strings(value: object) -> Iterator[str]:
    match value:
        case str():
            yield value
        case dict():
            for inner in value.values():
                yield from _strings(inner)
        case list():
            for inner in value:
                yield from _strings(inner)
