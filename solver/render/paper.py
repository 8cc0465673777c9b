"""A paper as text or JSON: its code, how many questions each chapter gives, and each question's code."""

from collections import Counter
from typing import Any

from solver.sets.paper import Paper
from solver.sets.paper_questions import cases_of
from solver.sets.shares import shares_text

__all__ = ["paper_json", "paper_text"]


def paper_json(paper: Paper) -> dict[str, Any]:
    """What is on a paper, by its chapters and question by question."""
    cases = cases_of(paper)
    each = Counter(case.family.chapter for case in cases)
    return {
        "code": paper.code,
        "level": paper.level,
        "units": paper.units,
        "minutes": paper.minutes,
        "shares": dict(zip(paper.chapters, paper.shares, strict=False)),
        "questions_by_chapter": {name: each[name] for name in paper.chapters},
        "questions": [
            {"number": n, "code": case.code, "title": case.family.title, "level": case.level}
            for n, case in enumerate(cases, 1)
        ],
    }


def paper_text(paper: Paper) -> str:
    """The same for the terminal."""
    told = paper_json(paper)
    lines = [f"Exam {paper.code}", f"{paper.count} questions, {paper.minutes} minutes", ""]
    if paper.shares:
        lines += [f"Shares: {shares_text(told['shares'])}", ""]
    lines += [f"  {count:3}  {name}" for name, count in told["questions_by_chapter"].items()]
    lines += ["", *(f"{q['number']:4}. {q['title']} ({q['code']})" for q in told["questions"])]
    return "\n".join(lines)
