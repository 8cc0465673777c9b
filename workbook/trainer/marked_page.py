"""A set's notebook with the marks of one person in its grade cells, as running it would give."""

from html import escape

from workbook.ui.shown import css

from .feedback import comment_of, feedback_html
from .gradebook.scores import grade_id, score_of
from .marking import Marked
from .plain_answers import ANSWER, METADATA
from .tries import QuestionMark

__all__ = ["ANSWERED", "fill_in", "outputs_of", "show_plain_answers", "shown"]

ANSWERED = "<pre>"  # a plain answer was put in after this


def fill_in(page: dict, marked: Marked | None) -> None:
    """Put the marks into the notebook's grade cells, and nothing into any other cell."""
    by_id = {grade_id(each.number): each for each in marked.questions} if marked else {}
    for cell in page["cells"]:
        if cell["cell_type"] == "code":
            name = cell["metadata"].get("nbgrader", {}).get("grade_id")
            question = by_id.get(name)
            cell["outputs"] = outputs_of(question) if question else []
            cell["execution_count"] = question.number if question else None


def outputs_of(question: QuestionMark) -> list[dict]:
    """What running the grade cell of a question puts out: its feedback, and then its points."""
    return [
        {"output_type": "display_data", "data": shown(question), "metadata": {}},
        {
            "output_type": "execute_result",
            "data": {"text/plain": repr(score_of(question))},
            "execution_count": question.number,
            "metadata": {},
        },
    ]


def shown(question: QuestionMark) -> dict[str, str]:
    """The feedback of a question for a cell; the first one brings the look for all of them."""
    look = css() if question.number == 1 else ""
    html = f'{look}<div class="w2w-panel" style="max-width: 54em">{feedback_html(question)}</div>'
    return {"text/html": html, "text/plain": comment_of(question)}


def show_plain_answers(page: dict, answers: dict[int, str]) -> None:
    """Put what was typed into the cells that ask for plain answers, as text."""
    for cell in page["cells"]:
        number = cell["metadata"].get(METADATA, {}).get("answer")
        if number in answers:
            before = "".join(cell["source"]).partition(ANSWER)[0]
            cell["source"] = f"{before}{ANSWER}\n\n{ANSWERED}{escape(answers[number])}</pre>"
