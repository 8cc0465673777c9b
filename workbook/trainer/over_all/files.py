"""The rows over all sets as files: wide for a spreadsheet, and as learning-management systems take them in."""

from workbook.ui.spreadsheet import csv_of

from .rows import Over, Row

__all__ = ["lms_csv", "passes", "wide_csv"]

OF_A_SET = ("points", "out of", "percent", "late", "tries", "minutes")


def passes(told: Over, row: Row, mark: float) -> bool:
    """Whether a person has this share of the points or more, 0 to 1."""
    return told.share(row) >= mark - 1e-9


def wide_csv(told: Over, mark: float | None = None) -> bytes:
    """One row a person: who, six columns for each set, then all together; blank where nothing came.

    With a pass `mark`, 0 to 1, the last column says whether it is reached.
    """
    heads = ["id", "first name", "last name", "email", "group"]
    heads += [f"{each.name} {column}" for each in told.sets for column in OF_A_SET]
    heads += ["points", "out of", "percent", "hours in class"]
    rows = [[*row.person, *_of_sets(told, row), *_in_all(told, row)] for row in told.rows]
    if mark is not None:
        heads.append(f"passed at {100 * mark:g}%")
        rows = [
            [*cells, "yes" if passes(told, row, mark) else "no"]
            for cells, row in zip(rows, told.rows, strict=True)
        ]
    return csv_of([heads, *rows])


def _of_sets(told: Over, row: Row) -> list[object]:
    cells: list[object] = []
    for each in told.sets:
        worth, one = each.out_of, row.sets.get(each.name)
        if one is None:
            cells += [""] * len(OF_A_SET)
            continue
        percent = round(100 * one.points / worth, 1) if worth else 0.0
        cells += [one.points, worth, percent, "yes" if one.late else "no", one.tries, one.minutes]
    return cells


def _in_all(told: Over, row: Row) -> list[object]:
    return [row.points, told.worth(row.person), round(100 * told.share(row), 1), row.hours]


def lms_csv(told: Over) -> bytes:
    """An id, an email and a column of points for each set, blank where nothing was handed in.

    That is the form that learning-management systems ask for: one row a person, one column an item,
    with what it is worth in its heading.
    """
    heads = ["id", "email", *(f"{each.title} [{each.out_of:g}]" for each in told.sets)]
    rows = [
        [row.person.id, row.person.email, *(_points(row, each.name) for each in told.sets)]
        for row in told.rows
    ]
    return csv_of([heads, *rows])


def _points(row: Row, name: str) -> object:
    one = row.sets.get(name)
    return "" if one is None else one.points
