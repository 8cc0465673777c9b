"""Every figure to explore, in its frame: sliders, a sentence, the picture, a table beside it."""

from ipywidgets import HTML, Box, FloatSlider, IntSlider

from solver.units.unit import convert
from solver.vocabulary import quantity_named
from workbook.ui.controls import UNIT_CHOICES, Panel, chooser, classed
from workbook.ui.markup import tag

from . import (
    absorption,
    column,
    cost,
    cycle,
    drop,
    feeding,
    legs,
    lift,
    losses,
    on_curve,
    sheave,
    signal,
    slowing,
    starting,
    surge,
    triangle,
)
from .beside import LOOK, Beside
from .view import Figure, Slide

__all__ = ["FIGURES", "Explorer"]

FIGURES = {
    figure.name: figure
    for figure in (
        losses.LOSSES,
        legs.LEGS,
        cost.COST,
        column.COLUMN,
        lift.LIFT,
        triangle.TRIANGLE,
        slowing.SLOWING,
        absorption.ABSORPTION,
        cycle.CYCLE,
        drop.DROP,
        signal.SIGNAL,
        on_curve.ON_CURVE,
        sheave.SHEAVE,
        feeding.FEEDING,
        surge.SURGE,
        starting.STARTING,
    )
}


def slider(slide: Slide, units: str) -> IntSlider | FloatSlider:
    """The slider of one quantity in one system of units."""
    scale = slide.scale(units)
    whole = scale.step == int(scale.step)
    return (IntSlider if whole else FloatSlider)(
        value=scale.start,
        min=scale.low,
        max=scale.high,
        step=scale.step,
        description=slide.described(units),
        readout_format="d" if whole else f".{scale.decimals}f",
    )


class Explorer(Panel):
    """A figure with its sliders; moving one changes the sentence, the picture and the table."""

    def __init__(self, figure: Figure) -> None:
        super().__init__("w2w-figure")
        self.figure = figure
        self.sliders = {
            units: {slide.name: slider(slide, units) for slide in figure.slides}
            for units in figure.systems
        }
        offered = [choice for choice in UNIT_CHOICES if choice[1] in figure.systems]
        self.system = chooser("Units", offered, lambda value: None)
        self.controls = classed(Box(), "w2w-sliders")
        self.headline = classed(HTML(), "w2w-headline")
        self.beside = Beside()
        self._refresh = self.safely(self._tell)
        for group in self.sliders.values():
            for one in group.values():
                one.observe(self._refresh, "value")
        self.system.observe(self.safely(self._change_system), "value")
        self._show_sliders()
        top = HTML(LOOK + tag("h3", figure.title))
        choice = [classed(Box([self.system]), "w2w-ask")] if len(offered) > 1 else []
        self.put(top, *choice, self.controls, self.headline, self.beside.box, self.said)

    @property
    def values(self) -> dict[str, float]:
        """What the sliders stand at. A browser sends 61.99999 for 62, so each is put on a step."""
        units = self.system.value
        return {
            slide.name: slide.scale(units).nearest(self.sliders[units][slide.name].value)
            for slide in self.figure.slides
        }

    @property
    def alt(self) -> str:
        """What the picture shows, in words."""
        return self.view.alt

    def _change_system(self, change) -> None:
        """Keep the same machine: each slider goes to the nearest step in the other system."""
        for slide in self.figure.slides:
            old, new = (
                quantity_named(slide.name).unit(units) for units in (change.old, change.new)
            )
            value = convert(self.sliders[change.old][slide.name].value, old, new)
            self.sliders[change.new][slide.name].value = slide.scale(change.new).nearest(value)
        self._show_sliders()

    def _show_sliders(self) -> None:
        self.controls.children = tuple(self.sliders[self.system.value].values())
        self._refresh()

    def _tell(self, change=None) -> None:
        self.view = self.figure.view(self.values, self.system.value)
        self.headline.value = tag("p", self.view.headline)
        self.beside.show(self.figure.name, self.view, self.figure.draw)
