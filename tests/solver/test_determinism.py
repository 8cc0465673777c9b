"""The same problem on any machine: draws hang on Random(text).random() alone, and on no hash.

Python's documentation promises only of random() that it gives the same numbers in later versions
for the same seed ("Notes on Reproducibility" of the random module).
"""

import os
import random
import subprocess
import sys
from functools import cache
from importlib import import_module
from pathlib import Path

import pytest

from solver import FAMILIES, draw
from solver.engine.draw import Draw

ROOT = Path(__file__).resolve().parents[2]
PINNED = [0.09386316009909024, 0.33827915462745395, 0.4208389090643242, 0.3963424806922847]

DIGEST = """
import hashlib
from solver import FAMILIES, draw
from solver.render.text import steps_text
total = hashlib.sha256()
for family in FAMILIES:
    for level in range(1, len(family.levels) + 1):
        for units in ("us", "si"):
            for seed in (7, 999_999_999):
                case = draw(family, seed, units, level)
                mistakes = [(m.id, m.value, m.low, m.high, m.says) for m in case.mistakes]
                total.update(repr((case.code, case.question, case.known, case.answer, case.low,
                                   case.high, mistakes, case.choices)).encode())
                total.update(steps_text(case.steps, case.known, case.given, units).encode())
print(total.hexdigest())
"""


@cache
def digest(hash_seed: str, *flags: str) -> str:
    environment = os.environ | {"PYTHONHASHSEED": hash_seed, "PYTHONPATH": str(ROOT)}
    command = [sys.executable, *flags, "-c", DIGEST]
    done = subprocess.run(
        command, capture_output=True, text=True, cwd=ROOT, env=environment, timeout=120, check=True
    )
    return done.stdout


def test_the_order_of_hashes_changes_no_problem():
    assert 64 == len(digest("0").strip())
    assert digest("0") == digest("4294967295")


def test_leaving_out_assertions_changes_no_problem():
    assert digest("0") == digest("1", "-OO")


def test_the_stream_of_a_key_is_the_one_it_has_always_been():
    """Pinned from Python 3.11; any Python must give these."""
    chance = Draw("WP 1 1 us 7 0")
    assert PINNED == [chance.between(0, 1) for _ in PINNED]


def test_a_draw_takes_one_number_of_the_stream_for_each_choice():
    stream = random.Random("key").random
    numbers = [stream() for _ in range(8)]
    chance = Draw("key")
    assert 10 + 5 * numbers[0] == chance.between(10, 15)
    assert "abcdef"[int(numbers[1] * 6)] == chance.pick("abcdef")
    assert 10 + 5 * int(numbers[2] * 9) == chance.step(10, 50, 5)
    left, expected = list("wxyz"), []
    for number in numbers[3:7]:
        expected.append(left.pop(int(number * len(left))))
    assert expected == chance.shuffled("wxyz")
    assert numbers[7] == chance.between(0, 1)


class OnlyRandom:
    """A generator that has nothing but random()."""

    __slots__ = ("random",)

    def __init__(self, key: str):
        self.random = random.Random(key).random


@pytest.mark.parametrize("family", FAMILIES, ids=lambda family: family.name)
def test_no_other_method_of_the_generator_is_needed(monkeypatch, family):
    expected = draw(family, 7)
    monkeypatch.setattr(import_module("solver.engine.draw"), "Random", OnlyRandom)
    assert expected == draw(family, 7)


def test_problems_leave_the_shared_generator_alone():
    random.seed(5)
    before = random.getstate()
    for family in FAMILIES:
        draw(family, 11)
    assert before == random.getstate()


@pytest.mark.parametrize(
    ("low", "high", "step"), [(0.05, 0.3, 0.005), (10, 100, 5), (0.1, 0.3, 0.05)]
)
def test_a_step_is_a_round_number_within_its_ends(low, high, step):
    chance = Draw("steps")
    seen = {chance.step(low, high, step) for _ in range(2000)}
    expected = {round(low + step * i, 6) for i in range(round((high - low) / step) + 1)}
    assert expected == seen
