"""The link that opens a set on a static site."""

from workbook.ui import static_site

from .set_text import BadSet, ProblemSet

__all__ = ["PAGE", "WORD", "link_at"]

PAGE = "17-group-study.ipynb"
WORD = "set"  # in the address of a page


def link_at(site: str, problems: ProblemSet) -> str:
    """The link to a set on a static site whose address somebody typed.

    >>> link_at("https://example.org/pumps?a=1", ProblemSet("A", ("BP-2U1-7-KMZ",)))[:63]
    'https://example.org/pumps/?path=17-group-study.ipynb&set=W2W%5B'

    Raises:
        BadSet: the sentence says what an address is.
    """
    try:
        return static_site.link_at(site, PAGE, **{WORD: problems.text})
    except ValueError as refusal:
        raise BadSet(str(refusal)) from None
