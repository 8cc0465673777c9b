"""The one-line calls of what stands beside the problems: own numbers, formulas, cautions, contents, figures.

The notebooks call them as `page.formulas(...)`, as all the others. Everything is imported when it is called.
"""

__all__ = [
    "cautions",
    "cautions_in_full",
    "contents",
    "figure",
    "formulas",
    "own_numbers",
    "reference",
    "worked_example",
]


def worked_example(code: str):
    """The worked solution of the problem with this code, opened step by step."""
    from solver import case_from_code

    from .practice.card import WorkedExample

    return WorkedExample(case_from_code(code))


def own_numbers(chapter: str):
    """A reader's own readings, worked by the formulas of a chapter."""
    from .practice.own_numbers import OwnNumbers
    from .ui.chapter import asked_in, quantities_of

    return OwnNumbers(quantities_of(chapter), asked_in(chapter))


def formulas(chapter: str):
    """The formulas of a chapter, with their units, reasons and sources."""
    from .reference.reference_panel import FormulaSheet
    from .ui.chapter import formulas_of

    return FormulaSheet(formulas_of(chapter))


def reference():
    """Every formula solved for each of its quantities, constants, units, tables, limits: to find and to print."""
    from .practice import past, units_of
    from .reference.reference_panel import ReferencePanel
    from .ui.static_site import words_of_address

    wanted = (words_of_address() or {}).get("find", "")
    return ReferencePanel(units_of(past()), wanted)


def cautions(*topics: str):
    """The usual cautions for these topics in one line, which opens to the rules they come from."""
    from .ui.cautions import caution_line

    return caution_line(*topics)


def cautions_in_full(*topics: str):
    """The same in a box: once a chapter, and wherever readings of a real machine are typed in."""
    from .ui.cautions import caution_box

    return caution_box(*topics)


def contents():
    """The chapters, as links, with what each covers."""
    from .ui.contents import list_of_chapters

    return list_of_chapters()


def figure(name: str):
    """A figure to explore, by its name in figures/explorer.py."""
    from .figures import show

    return show(name)
