"""A set of work as a link: it opens the set on the static site, and each person's answers come back as a file."""

from collections.abc import Iterator

from solver import Case, SolverError
from solver.sets.work_set import cases_for
from workbook.group import BadSet, link_at, set_of

from .set_file import Assigned
from .set_keys import SAME

__all__ = ["sentences"]

EACH = (
    "In the set “{}” each person has their own numbers, and a link gives everybody the same ones. "
    'Write numbers = "{}" in its file, or make a new set with --site, then ask for the link again.'
)
BACK = (
    "People open it in a browser, type their name, and press “Save my result”. They send you that "
    "file. Open the same link yourself, and bring the files in at “Bring in results”."
)
PROVES = (
    "A file shows what was typed and when that device says it was. It doesn't prove who typed it, that nobody "
    "helped, or that it was the first try: nothing is signed, and another browser starts fresh. "
    "Use it for practice. For a grade, give out the folder."
)
NO_CASES = "The cases of find the fault aren't in the link: people open those by their codes."


def sentences(assigned: Assigned, site: str) -> Iterator[str]:
    """The link to a set on the site at this address, how the answers come back, and what they prove.

    Raises:
        SolverError: the numbers are each person's own, a problem can't be asked, or the address is none.
    """
    work = assigned.work
    if work.each:
        raise SolverError(EACH.format(assigned.name, SAME))
    codes = []
    for number, case in enumerate(cases_for(work, ""), 1):
        if not isinstance(case, Case):
            raise SolverError(f"Question {number}: {case.why} Make a new set, under another name.")
        codes.append(case.code)
    try:
        link = link_at(site.strip(), set_of(assigned.title[:60], codes))
    except BadSet as refusal:
        raise SolverError(str(refusal)) from None
    yield "This link opens the set on your website:"
    yield f"    {link}"
    yield BACK
    if work.faults:
        yield NO_CASES
    yield PROVES
