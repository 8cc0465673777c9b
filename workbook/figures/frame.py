"""The frame around every figure: sliders, a sentence, the picture, and a table beside it."""

from collections.abc import Sequence
from html import escape

from ipywidgets import HTML, Box, Dropdown, FloatSlider, Layout, VBox

from solver.units import convert
from solver.vocabulary import quantity_named

from .ink import picture
from .view import Figure, Slide, View

__all__ = ["Explorer"]

SYSTEMS = {"us": "US units", "si": "Metric units"}
NO_PICTURE = "The picture is missing here, because matplotlib is not installed. The table has it all."
# Sizes in em follow the reader's letters.
LOOK = """<style>
.w2w-figure { max-width: 60em; color: var(--jp-ui-font-color1, #1b1b1b); }
.w2w-figure .widget-html-content { line-height: 1.5; font-size: 1.08em; }
.w2w-figure h3 { margin: 0.4em 0; }
.w2w-picture { display: block; width: 100%; max-width: 440px; height: auto; }
.w2w-picture text { font-family: var(--jp-ui-font-family, sans-serif) !important; }
.w2w-table { border-collapse: collapse; }
.w2w-table th, .w2w-table td { padding: 0.3em 0.7em; text-align: right; white-space: nowrap;
  border-bottom: 1px solid var(--jp-border-color1, #888); font-weight: normal; }
.w2w-table th[scope=row] { text-align: left; white-space: normal; }
.w2w-table thead th { font-weight: bold; }
</style>"""


def slider(slide: Slide, units: str) -> FloatSlider:
    """The slider of one quantity in one system of units."""
    scale = slide.scale(units)
    decimals = max(0, *(len(f"{n:g}".partition(".")[2]) for n in (scale.step, scale.start)))
    return FloatSlider(
        value=scale.start,
        min=scale.low,
        max=scale.high,
        step=scale.step,
        description=slide.described(units),
        readout_format=f".{decimals}f",
        style={"description_width": "12em"},
        layout=Layout(width="auto", max_width="30em", flex="1 1 20em"),
    )


def table_html(view: View, caption: str) -> str:
    """The numbers of a view as a table, with heads for screen readers."""
    head = "".join(f'<th scope="col">{escape(c)}</th>' if c else "<td></td>" for c in view.columns)
    rows = "".join(
        f'<tr><th scope="row">{escape(first)}</th>{"".join(f"<td>{escape(c)}</td>" for c in rest)}</tr>'
        for first, *rest in view.rows
    )
    return (
        f'<table class="w2w-table"><caption>{escape(caption)}</caption>'
        f"<thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>"
    )


class Explorer(VBox):
    """A figure with its sliders; moving one changes the sentence, the picture and the table."""

    def __init__(self, figure: Figure) -> None:
        self.figure = figure
        self.sliders = {
            units: {slide.name: slider(slide, units) for slide in figure.slides}
            for units in figure.systems
        }
        self.system = Dropdown(
            options=[(SYSTEMS[units], units) for units in figure.systems], description="Units"
        )
        self.controls = Box(layout=Layout(flex_flow="row wrap", overflow="visible"))
        self.headline, self.picture, self.table = HTML(), HTML(), HTML()
        beside = Box(
            [self.picture, self.table], layout=Layout(flex_flow="row wrap", overflow="visible")
        )
        self.picture.layout.flex = "1 1 20em"
        top = HTML(f"{LOOK}<h3>{escape(figure.title)}</h3>")
        choice = [self.system] if len(figure.systems) > 1 else []
        super().__init__([top, *choice, self.controls, self.headline, beside])
        self.add_class("w2w-figure")
        for one in self._all_sliders():
            one.observe(self._refresh, names="value")
        self.system.observe(self._change_system, names="value")
        self._show_sliders()

    def _all_sliders(self) -> Sequence[FloatSlider]:
        return [one for group in self.sliders.values() for one in group.values()]

    @property
    def values(self) -> dict[str, float]:
        """What the sliders stand at."""
        return {name: one.value for name, one in self.sliders[self.system.value].items()}

    @property
    def alt(self) -> str:
        """What the picture shows, in words."""
        return self.view.alt

    def _change_system(self, change) -> None:
        """Keep the same machine: each slider goes to the nearest step in the other system."""
        for slide in self.figure.slides:
            old, new = (quantity_named(slide.name).unit(units) for units in (change.old, change.new))
            one = self.sliders[change.new][slide.name]
            value = convert(self.sliders[change.old][slide.name].value, old, new)
            one.value = round(value / one.step) * one.step
        self._show_sliders()

    def _show_sliders(self) -> None:
        self.controls.children = tuple(self.sliders[self.system.value].values())
        self._refresh()

    def _refresh(self, change=None) -> None:
        self.view = self.figure.view(self.values, self.system.value)
        self.headline.value = f"<p>{escape(self.view.headline)}</p>"
        self.table.value = table_html(self.view, "The same numbers")
        try:
            self.picture.value = picture(self.figure, self.view)
        except ImportError:
            self.picture.value = f"<p>{NO_PICTURE}</p>"
