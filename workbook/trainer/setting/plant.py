"""The trainer's own plant: a file brought in, what it holds, and an example to fill in."""

import tomllib
from collections.abc import Callable
from pathlib import Path

from ipywidgets import HTML, Box, FileUpload, VBox

from solver import SolverError
from solver.sets.own_plant import Plant, plant_of
from solver.units.show import counted
from workbook.ui.controls import AUTO, Panel, button, classed, show
from workbook.ui.markup import tag
from workbook.ui.pieces import say
from workbook.ui.saving import link

__all__ = ["PlantPart", "plant_from"]

EXAMPLE = Path(__file__).parent.parent / "example.toml"
LARGEST = 200_000  # bytes
NONE = "The problems are about the invented town and its plant."


def plant_from(data: bytes) -> Plant:
    """The plant of a file, with its keys at the top or below [plant].

    Raises:
        SolverError: the sentence says what the file lacks, or what is wrong in it.
    """
    if len(data) > LARGEST:
        raise SolverError(f"The file has {len(data):,} bytes; no plant needs {LARGEST:,}.")
    try:
        table = tomllib.loads(data.decode("utf-8-sig"))
    except (ValueError, RecursionError):
        raise SolverError(
            "This file doesn't describe a plant. Fill in the example from this page."
        ) from None
    return plant_of(table.get("plant", table))


class PlantPart:
    """Bring in a plant, or leave it out; `keep` hears which one the set has."""

    def __init__(self, panel: Panel, keep: Callable[[Plant | None], None]):
        self._keep = keep
        self.upload = FileUpload(accept=".toml", description="Bring in a plant", layout=AUTO)
        classed(self.upload, "w2w-button").observe(panel.safely(self._brought), "value")
        self.without = button("Leave it out", panel.once(lambda: self._take(None)))
        self.line, self.said = HTML(), HTML(say(""))
        self.example = f"[plant]{EXAMPLE.read_text('utf-8').partition('[plant]')[2]}"
        save = link(
            "Save an example to fill in", "plant.toml", "application/toml", self.example.encode()
        )
        buttons = classed(Box([self.upload, self.without]), "w2w-buttons")
        self.box = VBox(
            [HTML(tag("h4", "Your own plant")), self.line, buttons, self.said, HTML(tag("p", save))]
        )
        self.show(None)

    def show(self, plant: Plant | None) -> None:
        """Say which plant the set has."""
        text = NONE
        if plant:
            text = f"The problems are about “{plant.name}”, {counted(len(plant.places), 'pump')}."
        self.line.value, self.said.value = tag("p", text), say("")
        show(self.without, plant)

    def _take(self, plant: Plant | None) -> None:
        self._keep(plant)
        self.show(plant)

    def _brought(self, _) -> None:
        if not self.upload.value:
            return
        (file, *_), self.upload.value = self.upload.value, ()
        try:
            plant = plant_from(bytes(file["content"]))
        except SolverError as fault:
            self.said.value = say("missing", f"“{file['name'][:80]}” wasn't accepted.", str(fault))
            return
        self._take(plant)
        self.said.value = say("note", "Choose See the set to see problems about it.")
