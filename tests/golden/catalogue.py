"""The catalogue as it was last given out: what no later change may disturb.

    python -m tests.golden.catalogue

Codes of exams and sets draw from the catalogue whose number they hold. So what that had stays: a
family that comes later says `since`, and so does a level; one that changes says `revised`; one that
goes leaves a line in GONE (solver/topics/catalogue.py). The number to write is one above that of the file.
Run this at a release: it keeps the catalogue of now, and refuses where one given out was disturbed.
"""

import json
import sys
from pathlib import Path

from solver.topics.catalogue import CATALOGUE, kinds_at

__all__ = ["FILE", "TELL", "at", "fault", "kept", "main"]

FILE = Path(__file__).with_name("catalogue.json")
TELL = (
    "The families of a catalogue that was given out changed, so its codes would give other "
    "questions: {}. Write since={} at a new family or level, add it to `revised` of one that "
    "changed, and leave a line in GONE for one that went."
)


def at(catalogue: int) -> list[str]:
    """The kinds of problems of a catalogue, in the order it is drawn from."""
    return [
        f"{kind.chapter} {kind.tag} {kind.name} revision {kind.revision} levels {kind.levels}"
        for kind in kinds_at(catalogue)
    ]


def kept() -> dict[str, list[str]]:
    """What the file holds: every catalogue that was given out."""
    return json.loads(FILE.read_text("utf-8")) if FILE.exists() else {}


def fault() -> str:
    """What is to be done; empty where no catalogue that was given out is disturbed."""
    before = kept()
    for number, kinds in before.items():
        if changed := set(kinds) ^ set(at(int(number))):
            return TELL.format(min(changed), max(map(int, before)) + 1)
        if kinds != at(int(number)):
            return TELL.format("their order", max(map(int, before)) + 1)
    return ""


def main() -> int:
    """Keep the catalogue of now; 1 where one that was given out was disturbed."""
    if wrong := fault():
        print(wrong)
        return 1
    text = json.dumps({**kept(), str(CATALOGUE): at(CATALOGUE)}, indent=0)
    FILE.write_text(f"{text}\n", "utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
