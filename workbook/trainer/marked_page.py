"""A set's notebook with the marks of one person in its grade cells, as running it would give."""

from html import escape

from .feedback import comment_of, feedback_html
from .marking import Marked
from .plain_answers import ANSWER, METADATA
from .scores import grade_id, points_of
from .tries import QuestionMark

__all__ = ["fill_in", "show_plain_answers"]


def fill_in(page: dict, marked: Marked | None) -> None:
    """Put the marks into the notebook's grade cells, and nothing into any other cell."""
    by_id = {grade_id(each.number): each for each in marked.questions} if marked else {}
    for cell in page["cells"]:
        if cell["cell_type"] == "code":
            name = cell["metadata"].get("nbgrader", {}).get("grade_id")
            question = by_id.get(name)
            cell["outputs"] = _outputs(question) if question else []
            cell["execution_count"] = question.number if question else None


def _outputs(question: QuestionMark) -> list[dict]:
    shown = {"text/html": feedback_html(question), "text/plain": comment_of(question)}
    points = {"text/plain": repr(points_of(question))}
    return [
        {"output_type": "display_data", "data": shown, "metadata": {}},
        {
            "output_type": "execute_result",
            "data": points,
            "execution_count": question.number,
            "metadata": {},
        },
    ]


def show_plain_answers(page: dict, answers: dict[int, str]) -> None:
    """Put what was typed into the cells that ask for plain answers, as text."""
    for cell in page["cells"]:
        number = cell["metadata"].get(METADATA, {}).get("answer")
        if number in answers:
            before = "".join(cell["source"]).partition(ANSWER)[0]
            cell["source"] = f"{before}{ANSWER}\n\n<pre>{escape(answers[number])}</pre>"
