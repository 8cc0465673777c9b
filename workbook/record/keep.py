"""Where the record that is shown is kept: links to save it, and a button that makes the PDF."""

from collections.abc import Sequence

from ipywidgets import HTML, Box, VBox

from solver import SolverError
from solver.own.record import Examined
from workbook.ui.controls import Panel, button, classed, show
from workbook.ui.markup import Markup, joined, tag
from workbook.ui.pieces import say
from workbook.ui.saving import link

from .fleet import when
from .reading import Pump
from .results import as_csv, as_json, page_name, template

__all__ = ["Keep", "file_name", "template_link"]


class Keep:
    """The links of one record. The PDF is made when it is asked for, as that takes a moment."""

    def __init__(self, panel: Panel):
        self.links, self.pdf = HTML(), HTML()
        self.make = button("Make a PDF to print", panel.once(self._make))
        self.box = VBox([self.links, classed(Box([self.make]), "w2w-buttons"), self.pdf])
        show(self.box, False)
        self._days: Sequence[Pump] = ()

    def show(self, pump: Pump, examined: Examined, years: Sequence[Pump] = ()) -> None:
        """The links of another record. `years` are other days of its pump."""
        # The newest day is the one printed in full, so no later one may be with it.
        before = [one for one in years if when(one.record) < when(pump.record)]
        self._days = [*before, pump]
        self.links.value, self.pdf.value = saves_html(pump, examined), ""
        show(self.box)

    def _make(self) -> None:
        self.pdf.value = say("note", "The PDF is being made.")
        try:
            data = self._printed()
        except SolverError as refusal:
            self.pdf.value = say("missing", str(refusal))
        except Exception:
            self.pdf.value = ""
            raise
        else:
            held = link("Save the PDF", file_name(self._days[-1], "pdf"), "application/pdf", data)
            self.pdf.value = say("worked", "The PDF is made.", html=tag("p", held))

    def _printed(self) -> bytes:
        """The day that is shown in full, after the days before it."""
        from .printed import pdf_of
        from .printed_data import Sheet

        return pdf_of([Sheet.of(one) for one in self._days])


def file_name(pump: Pump, ending: str) -> str:
    """A plain name: pump-day-Tannery-Lane-Pump-2-2024-05-31.csv."""
    return f"pump-day-{page_name(pump, ending).partition('-')[2]}"


def saves_html(pump: Pump, examined: Examined) -> Markup:
    """Links to keep one record, each with the name of its file."""
    kinds = (
        ("Save as CSV, for a spreadsheet", "csv", "text/csv", as_csv),
        ("Save as JSON, for programs", "json", "application/json", as_json),
    )
    items = (
        tag("li", link(says, file_name(pump, ending), kind, made(pump, examined)))
        for says, ending, kind, made in kinds
    )
    return joined(tag("h4", "Keep this record"), tag("ul", items, cls="w2w-saves"))


def template_link(units: str) -> Markup:
    """A link to an empty file with every heading."""
    says = "Save an empty CSV with every heading"
    return tag("p", link(says, "pumps.csv", "text/csv", template(units)))
