"""The frame around every figure: sliders, a sentence, the picture, and a table beside it."""

from html import escape

from ipywidgets import HTML, Box, FloatSlider, IntSlider

from solver.units.unit import convert
from solver.vocabulary import quantity_named
from workbook.ui.controls import Panel, chooser, classed
from workbook.ui.later import no_picture

from .ink import picture
from .view import Figure, Slide, View

__all__ = ["Explorer"]

SYSTEMS = [("US units", "us"), ("Metric units", "si")]
UNBROKEN = 9  # characters, as in "3,034 kWh"
# What only figures have; look.css has the rest.
LOOK = """<style>
.w2w-panel .w2w-sliders { display: grid; gap: 0.3em 2em; overflow: visible;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 13em), 1fr)); }
.w2w-sliders .widget-hslider { width: auto; height: auto; margin: 0; flex-wrap: wrap;
  align-items: center; }
.w2w-sliders .widget-label, .w2w-sliders .widget-readout { font: inherit; color: inherit; }
.w2w-sliders .widget-label { flex: 1 0 100%; max-width: none; height: auto; text-align: left;
  white-space: normal; }
.w2w-sliders .widget-hslider .slider-container { flex: 1 1 8em; }
.w2w-sliders .widget-hslider .noUi-target { background: var(--jp-ui-font-color3, #888); }
.w2w-sliders .widget-hslider .noUi-handle { background: var(--w2w-accent);
  border-color: var(--w2w-page); width: 24px; height: 24px; top: -10px; right: -12px; }
.w2w-sliders .widget-readout { margin: 0 0 0 1em; font-variant-numeric: tabular-nums; }
.w2w-panel .w2w-beside { display: flex; flex-wrap: wrap; gap: 0.6em 2em; }
.w2w-figure .w2w-ask .w2w-field { flex: 0 1 13em; margin-bottom: 0.6em; }
.w2w-panel .widget-html.w2w-headline { margin: 1em 0 0.4em; }
.w2w-beside .w2w-picture { flex: 0 1 410px; min-width: min(100%, 330px); }
.w2w-beside .w2w-numbers { flex: 1 1 18em; }
.w2w-picture svg { display: block; width: 100%; height: auto; }
.w2w-picture svg text { font-family: var(--jp-ui-font-family, sans-serif) !important; }
.w2w-panel .w2w-numbers table { border-collapse: collapse; width: 100%; margin: 0; font: inherit; }
.w2w-numbers caption { text-align: left; padding: 0.3em 0; color: var(--w2w-soft); }
.w2w-numbers th, .w2w-numbers td { padding: 0.3em 0 0.3em 0.7em; border: 0; text-align: right;
  border-bottom: 1px solid var(--w2w-line); font-weight: normal; background: none; }
.w2w-numbers td { font-weight: 600; font-variant-numeric: tabular-nums; }
@container (max-width: 420px) { .w2w-panel .w2w-numbers table { font-size: 0.92em; } }
.w2w-numbers :is(th, td):first-child { text-align: left; padding-left: 0; }
</style>"""


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


def table_html(view: View, caption: str) -> str:
    """The numbers of a view as a table, with heads for screen readers."""
    head = "".join(f'<th scope="col">{escape(c)}</th>' if c else "<td></td>" for c in view.columns)
    rows = "".join(
        f'<tr><th scope="row">{escape(first)}</th>{"".join(map(_cell, rest))}</tr>'
        for first, *rest in view.rows
    )
    return (
        f"<table><caption>{escape(caption)}</caption>"
        f"<thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>"
    )


def _cell(text: str) -> str:
    """A number with its unit; only a long one may break between the two on a phone."""
    kept = text if len(text) > UNBROKEN else text.replace(" ", "\N{NO-BREAK SPACE}")
    return f"<td>{escape(kept)}</td>"


class Explorer(Panel):
    """A figure with its sliders; moving one changes the sentence, the picture and the table."""

    def __init__(self, figure: Figure) -> None:
        super().__init__("w2w-figure")
        self.figure = figure
        self.sliders = {
            units: {slide.name: slider(slide, units) for slide in figure.slides}
            for units in figure.systems
        }
        offered = [choice for choice in SYSTEMS if choice[1] in figure.systems]
        self.system = chooser("Units", offered, lambda value: None)
        self.controls = classed(Box(), "w2w-sliders")
        self.headline = classed(HTML(), "w2w-headline")
        self.picture, self.table = classed(HTML(), "w2w-picture"), classed(HTML(), "w2w-numbers")
        self._refresh = self.safely(self._tell)
        for group in self.sliders.values():
            for one in group.values():
                one.observe(self._refresh, "value")
        self.system.observe(self.safely(self._change_system), "value")
        self._show_sliders()
        beside = classed(Box([self.picture, self.table]), "w2w-beside")
        top = HTML(f"{LOOK}<h3>{escape(figure.title)}</h3>")
        choice = [classed(Box([self.system]), "w2w-ask")] if len(offered) > 1 else []
        self.put(top, *choice, self.controls, self.headline, beside, self.said)

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
        self.headline.value = f"<p>{escape(self.view.headline)}</p>"
        self.table.value = table_html(self.view, "The same numbers")
        try:
            self.picture.value = picture(self.figure, self.view)
        except ImportError:
            self.picture.value = f"<p>{no_picture(self._tell)}</p>"
