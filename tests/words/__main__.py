"""Print every text of a chapter, or of files, for reading aloud.

python -m tests.words horsepower
python -m tests.words workbook/exam README.md
python -m tests.words --turns            what the list of turns finds, everywhere
"""

import sys
from collections.abc import Iterator

from solver.sets.paper import CHAPTERS

from .texts import ROOT, Text, chapter_texts, file_texts, reader_files
from .turns import turns_in


def asked_for(name: str) -> Iterator[Text]:
    """The texts of a chapter, a file or a folder."""
    if name in CHAPTERS:
        yield from chapter_texts(name)
        return
    place = (ROOT / name).resolve()
    for path in reader_files():
        if path == place or place in path.parents:
            yield from file_texts(path)


def everything() -> Iterator[Text]:
    """All there is to read."""
    for chapter in CHAPTERS:
        yield from chapter_texts(chapter)
    for path in reader_files():
        yield from file_texts(path)


def main(names: list[str]) -> None:
    """Print what was asked for, a text a line, under where it stands."""
    if names == ["--turns"]:
        for text in everything():
            for turn in turns_in(text.text):
                print(f"{text.where}, {text.part}: “{turn}” in: {text.text[:160]!r}")
        return
    last = ""
    for name in names:
        for where, part, text in asked_for(name):
            if where != last:
                print(f"\n## {where}")
            last = where
            print(f"- {part}: {text}")


if __name__ == "__main__":
    if not sys.argv[1:]:
        sys.exit(f"Name a chapter ({', '.join(CHAPTERS)}), a file or a folder; or --turns.")
    main(sys.argv[1:])
