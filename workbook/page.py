"""The one-line calls that the notebooks use. Each shows one panel.

Everything is imported when it is called: a page that shows one card loads no more than that.
"""

__all__ = [
    "cautions",
    "contents",
    "figure",
    "formulas",
    "mixed",
    "own_numbers",
    "practice",
    "record",
    "worked_example",
]


def practice(name: str):
    """A practice card over the problem families of a chapter, or over one family."""
    from .card import Card
    from .chapter import families_of
    from .practice import Practice

    return Card(Practice(families_of(name)))


def mixed():
    """A practice card over chapters and levels to choose, which brings back what went wrong."""
    from solver import FAMILIES

    from .mixed import Mixed
    from .mixed_card import MixedCard

    return MixedCard(Mixed(FAMILIES))


def record():
    """One pump's day, or many from a file: worked, judged, followed over the years."""
    from .record.panel import RecordPanel

    return RecordPanel()


def worked_example(code: str):
    """The worked solution of the problem with this code, opened step by step."""
    from solver import case_from_code

    from .worked import WorkedExample

    return WorkedExample(case_from_code(code))


def own_numbers(chapter: str):
    """A reader's own readings, worked by the formulas of a chapter."""
    from .chapter import asked_in, quantities_of
    from .own_numbers import OwnNumbers

    return OwnNumbers(quantities_of(chapter), asked_in(chapter))


def formulas(chapter: str):
    """The formulas of a chapter, with their units, reasons and sources."""
    from .chapter import formulas_of
    from .formula_sheet import FormulaSheet

    return FormulaSheet(formulas_of(chapter))


def cautions(*topics: str):
    """The usual cautions for these topics, and the rules they come from."""
    from .cautions import caution_box

    return caution_box(*topics)


def contents():
    """The chapters, as links, with what each covers."""
    from .contents import list_of_chapters

    return list_of_chapters()


def figure(name: str):
    """A figure to explore, by its name in figures/__init__.py."""
    from .figures import show

    return show(name)
