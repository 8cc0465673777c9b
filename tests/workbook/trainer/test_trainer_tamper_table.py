"""Nothing one person sends stops or changes another's, and every case is told; see tamper_cases.py."""

import re
import tracemalloc

import pytest

from tests.workbook.trainer.tamper_cases import bomb
from tests.workbook.trainer.tamper_table import EVERY, outcome_of

KNOWN = {
    "answer-sheet.jsonl", "person.txt", "set.toml", "submission_secret.txt", "timestamp.txt",
    "week-3.ipynb",
}  # fmt: skip


CASES = [case for part in EVERY for case in part.cases]


@pytest.mark.parametrize("case", CASES, ids=[case.about for case in CASES])
def test_what_is_sent_counts_as_it_must_and_harms_nobody_else(case, tmp_path):
    outcome = outcome_of(case, tmp_path)
    assert outcome.ana_has_all
    assert (case.counts, case.late) == (outcome.counts, outcome.late)
    assert case.says in " ".join(outcome.said)
    assert case.hint in outcome.reason
    assert set(outcome.stored) <= KNOWN
    assert not list(tmp_path.rglob("stolen"))
    if case.counts is None:
        assert outcome.said
    assert all(sentence.isprintable() for sentence in (*outcome.said, outcome.reason))
    assert not re.search("<(script|img)", outcome.feedback)


def test_a_zip_that_unpacks_to_far_more_than_it_says_takes_little_memory(tmp_path):
    case = next(case for case in CASES if case.send is bomb)
    tracemalloc.start()
    try:
        outcome_of(case, tmp_path)
        most = tracemalloc.get_traced_memory()[1]
    finally:
        tracemalloc.stop()
    assert most < 100_000_000
