"""What becomes of slips in codes: how many of them read as another code that is none's own.

    python -m tests.benchmarks.code_edits          5,000 codes of each kind
    python -m tests.benchmarks.code_edits 500

A sign is replaced, two neighbors are swapped, a sign is dropped, doubled or inserted: every such slip
is tried in each code, but that of the signs which may be inserted or put in another's place, so many
are drawn by chance. A slip that reads as the same code does no harm, and is not counted.
"""

import sys
from collections.abc import Callable, Iterator
from random import Random
from string import ascii_uppercase, digits

from solver import FAMILIES, BadCode
from solver.engine.code import Code, read_code
from solver.sets.paper import CHAPTERS, Paper, read_paper
from solver.sets.sheet_code import MOST_SHEETS, read_sheet_code, sheet_code
from solver.sets.work_set import MOST, TOP, read_set, set_of

__all__ = ["KINDS", "SLIPS", "counts", "main"]

SIGNS = f"{digits}{ascii_uppercase}-"
DRAWN = 4  # signs drawn by chance for each place


def _problem(chance: Random) -> Code:
    family = chance.choice(FAMILIES)
    level = chance.randint(1, len(family.levels))
    seed = chance.randrange(10 ** chance.randint(1, 6))
    return Code(family.tag, level, chance.choice(["us", "si"]), family.revision, seed)


def _exam(chance: Random) -> Paper:
    chosen = tuple(name for name in CHAPTERS if chance.random() < 0.4) or CHAPTERS[:1]
    level, units, seed = chance.randint(0, 3), chance.choice(["us", "si"]), chance.randrange(10**5)
    return Paper(chosen, level, units, chance.randint(1, 200), 60, chance.random() < 0.5, seed)


def _set(chance: Random):
    families = [family.name for family in chance.sample(FAMILIES, chance.randint(0, 3))]
    return set_of(
        chapters=[name for name in CHAPTERS if chance.random() < 0.2] or CHAPTERS[:1],
        families=families,
        level=chance.randint(0, TOP),
        count=chance.randint(1, MOST),
        seed=chance.randrange(10**5),
    )


def _sheet(chance: Random):
    return sheet_code(f"SET-{chance.random()}", chance.randint(1, MOST_SHEETS), "ana.r")


def _code(made: object) -> str:
    return getattr(made, "code", None) or str(made)


KINDS: dict[str, tuple[Callable[[Random], object], Callable[[str], object]]] = {
    "problem": (_problem, read_code),
    "exam": (_exam, read_paper),
    "set": (_set, read_set),
    "sheet": (_sheet, read_sheet_code),
}


def _replaced(code: str, chance: Random) -> Iterator[str]:
    for at in range(len(code)):
        for sign in chance.sample(SIGNS, DRAWN):
            yield code[:at] + sign + code[at + 1 :]


def _swapped(code: str, chance: Random) -> Iterator[str]:
    for at in range(1, len(code)):
        yield code[: at - 1] + code[at] + code[at - 1] + code[at + 1 :]


def _dropped(code: str, chance: Random) -> Iterator[str]:
    for at in range(len(code)):
        yield code[:at] + code[at + 1 :]


def _doubled(code: str, chance: Random) -> Iterator[str]:
    for at in range(len(code)):
        yield code[: at + 1] + code[at:]


def _inserted(code: str, chance: Random) -> Iterator[str]:
    for at in range(len(code) + 1):
        for sign in chance.sample(SIGNS, DRAWN):
            yield code[:at] + sign + code[at:]


SLIPS = {
    "replaced": _replaced,
    "swapped": _swapped,
    "dropped": _dropped,
    "doubled": _doubled,
    "inserted": _inserted,
}


def counts(kind: str, many: int) -> dict[str, tuple[int, int]]:
    """For each slip, how many were tried in so many codes of a kind, and how many read as another."""
    make, read = KINDS[kind]
    chance = Random(f"{kind} {many}")
    found = dict.fromkeys(SLIPS, (0, 0))
    for _ in range(many):
        made = make(chance)
        code = _code(made)
        if _code(read(code)) != code:
            raise AssertionError(f"{code} does not read back")
        for name, slips in SLIPS.items():
            tried = [slip for slip in slips(code, chance) if slip != code]
            bad = sum(_is_another(slip, read, code) for slip in tried)
            found[name] = found[name][0] + len(tried), found[name][1] + bad
    return found


def _is_another(slip: str, read: Callable[[str], object], code: str) -> bool:
    try:
        return _code(read(slip)) != code
    except BadCode:
        return False


def main(arguments: list[str]) -> int:
    """Print the counts of every kind."""
    many = int(arguments[0]) if arguments else 5000
    print(f"{many:,} codes of each kind: slips that read as another code, of those tried")
    for kind in KINDS:
        said = (f"{name} {bad} of {of:,}" for name, (of, bad) in counts(kind, many).items())
        print(f"{kind:8} {', '.join(said)}", flush=True)
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
