"""Where the record that is shown is kept: links to save it, and a button that makes the PDF."""

from collections.abc import Sequence

from ipywidgets import HTML, Box, VBox

from solver import SolverError
from solver.own.record import Examined, examine
from workbook.ui.controls import Panel, button, classed, say
from workbook.ui.saving import link

from .fleet import when
from .reading import Pump
from .saving import file_name, saves_html

__all__ = ["Keep"]


class Keep:
    """The links of one record. The PDF is made when it is asked for, as that takes a moment."""

    def __init__(self, panel: Panel):
        self.links, self.pdf = HTML(), HTML()
        self.make = button("Make a PDF to print", panel.once(self._make))
        self.box = VBox([self.links, classed(Box([self.make]), "w2w-buttons"), self.pdf])
        self.box.layout.display = "none"
        self._days: Sequence[Pump] = ()

    def show(self, pump: Pump, examined: Examined, years: Sequence[Pump] = ()) -> None:
        """The links of another record. `years` are other days of its pump."""
        # The newest day is the one printed in full, so no later one may be with it.
        before = [one for one in years if when(one.record) < when(pump.record)]
        self._days = [*before, pump]
        self.links.value, self.pdf.value = saves_html(pump, examined), ""
        self.box.layout.display = ""

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
            self.pdf.value = say("worked", "The PDF is made.", html=f"<p>{held}</p>")

    def _printed(self) -> bytes:
        """The day that is shown in full, after the days before it; SolverError where none can be."""
        from .print import Sheet, pdf_of

        return pdf_of(
            [Sheet(examine(one.record), tuple(map(str, one.messages))) for one in self._days]
        )
