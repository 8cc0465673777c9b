"""The frame around every figure: sliders, a sentence, the picture, and a table beside it."""

from html import escape

from ipywidgets import HTML, Box, Dropdown, FloatSlider, IntSlider, VBox, Widget

from solver.units import convert
from solver.vocabulary import quantity_named

from .ink import picture
from .view import Figure, Slide, View

__all__ = ["Explorer"]

SYSTEMS = {"us": "US units", "si": "Metric units"}
NO_PICTURE = (
    "The picture needs matplotlib, which is not installed here. The table has every number."
)
# Sizes in em follow the reader's letters; colours are the page's own.
LOOK = """<style>
.w2w-figure { max-width: 66em; overflow: visible; color: var(--jp-ui-font-color1, #1b1b1b); }
.w2w-figure .widget-html-content, .w2w-figure .widget-label, .w2w-figure .widget-readout,
.w2w-figure select { font-size: var(--jp-content-font-size1, 14px); line-height: 1.5; }
.w2w-figure h3 { margin: 0.3em 0; }
.w2w-figure p { margin: 0.5em 0; }
.w2w-sliders { display: grid; gap: 0.2em 2em; overflow: visible;
  grid-template-columns: repeat(auto-fill, minmax(min(100%, 16em), 1fr)); }
.w2w-sliders .widget-hslider { width: auto; height: auto; margin: 2px; flex-wrap: wrap;
  align-items: center; }
.w2w-sliders .widget-label { flex: 1 0 100%; max-width: none; text-align: left; white-space: normal; }
.w2w-sliders .widget-hslider .slider-container { flex: 1 1 8em; }
.w2w-sliders .widget-hslider .noUi-handle { background: var(--jp-ui-font-color1, #1b1b1b);
  border-color: var(--jp-layout-color1, #fff); }
.w2w-sliders .widget-hslider .noUi-target { background: var(--jp-ui-font-color3, #888); }
.w2w-sliders .widget-readout { margin: 0 0 0 1em; }
.w2w-beside { display: flex; flex-wrap: wrap; gap: 0.6em 2em; overflow: visible; }
.w2w-beside .w2w-drawn { flex: 0 1 440px; min-width: min(100%, 330px); }
.w2w-beside .w2w-told { flex: 1 1 18em; max-width: 26em; }
.w2w-picture { display: block; width: 100%; height: auto; }
.w2w-picture text { font-family: var(--jp-ui-font-family, sans-serif) !important; }
.w2w-table { border-collapse: collapse; width: 100%; }
.w2w-table caption { text-align: left; padding: 0.3em 0; font-weight: bold; }
.w2w-table th, .w2w-table td { padding: 0.3em 0; text-align: right; font-weight: normal;
  border-bottom: 1px solid var(--jp-border-color1, #888); }
.w2w-table th + td, .w2w-table td + td, .w2w-table thead * + th { padding-left: 0.9em; }
.w2w-table td { white-space: nowrap; }
.w2w-table th:first-child { text-align: left; }
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
        f'<tr><th scope="row">{escape(first)}</th>{"".join(f"<td>{escape(c)}</td>" for c in rest)}</tr>'
        for first, *rest in view.rows
    )
    return (
        f'<table class="w2w-table"><caption>{escape(caption)}</caption>'
        f"<thead><tr>{head}</tr></thead><tbody>{rows}</tbody></table>"
    )


def classed(widget: Widget, *classes: str) -> Widget:
    """The widget with these names for the style above."""
    for name in classes:
        widget.add_class(name)
    return widget


class Explorer(VBox):
    """A figure with its sliders; moving one changes the sentence, the picture and the table."""

    def __init__(self, figure: Figure) -> None:
        self.figure = figure
        self.system = Dropdown(
            options=[(SYSTEMS[units], units) for units in figure.systems],
            description="Units",
            style={"description_width": "initial"},
        )
        self.sliders = {
            units: {slide.name: slider(slide, units) for slide in figure.slides}
            for units in figure.systems
        }
        self.controls = classed(Box(), "w2w-sliders")
        self.headline = HTML()
        self.picture, self.table = classed(HTML(), "w2w-drawn"), classed(HTML(), "w2w-told")
        beside = classed(Box([self.picture, self.table]), "w2w-beside")
        top = HTML(f"{LOOK}<h3>{escape(figure.title)}</h3>")
        choice = [self.system] if len(figure.systems) > 1 else []
        super().__init__([top, *choice, self.controls, self.headline, beside])
        classed(self, "w2w-figure")
        for group in self.sliders.values():
            for one in group.values():
                one.observe(self._refresh, names="value")
        self.system.observe(self._change_system, names="value")
        self._show_sliders()

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

    def _refresh(self, change=None) -> None:
        self.view = self.figure.view(self.values, self.system.value)
        self.headline.value = f"<p>{escape(self.view.headline)}</p>"
        self.table.value = table_html(self.view, "The same numbers")
        try:
            self.picture.value = picture(self.figure, self.view)
        except ImportError:
            self.picture.value = f"<p>{NO_PICTURE}</p>"
