"""An exam on another device: its code in a link and in a QR code, and what a link brought."""

from solver import SolverError
from solver.sets.paper import Paper, read_paper
from workbook.ui import static_site
from workbook.ui.markup import Markup
from workbook.ui.qr import page_elsewhere, qr_svg

__all__ = ["PAGE", "SITE", "in_address", "link_of", "on_another_device", "printed_qr"]

PAGE = "15-practice-exam.ipynb"
WORD = "exam"  # in the address of a page
SITE = "Address of your site, for the QR code on the sheet, if you have one"
SCAN_LINK = "Scan this to take the exam on a phone."
SCAN_CODE = (
    "Scan this to read the exam's code into a phone. Type it at “Exam code” in the workbook."
)


def on_another_device(paper: Paper) -> Markup:
    """A fold with the link to this exam and its QR code; nothing outside the static site."""
    return page_elsewhere(PAGE, "Open this exam on another device", **{WORD: paper.code})


def link_of(paper: Paper, site: str) -> str:
    """The link to an exam on a site whose address somebody typed; empty without one.

    Raises:
        SolverError: the sentence says what an address is.
    """
    if not site.strip():
        return ""
    try:
        return static_site.link_at(site.strip(), PAGE, **{WORD: paper.code})
    except ValueError as refusal:
        raise SolverError(str(refusal)) from None


def printed_qr(paper: Paper, site: str) -> dict[str, str]:
    """The QR code for a sheet, as SVG, and what to do with it.

    Raises:
        SolverError: the site's address is none.
    """
    link = link_of(paper, site)
    return {"svg": qr_svg(link or paper.code, "QR code"), "says": SCAN_LINK if link else SCAN_CODE}


def in_address() -> tuple[Paper | None, str]:
    """The exam in the address of the page, if it has one, or the sentence that says why it is none."""
    text = (static_site.words_of_address() or {}).get(WORD, "")
    if not text:
        return None, ""
    try:
        return read_paper(text), ""
    except SolverError as refusal:
        return None, f"The exam in your link can't be opened. {refusal}"
