"""How a page is looked at in a browser: in a theme, at a width. Each waits until the page has it."""

__all__ = ["at_width", "in_theme"]


def in_theme(page, scheme: str) -> None:
    """JupyterLab's light or dark theme, as the computer's own setting has it."""
    page.emulate_media(color_scheme=scheme)
    is_light = str(scheme == "light").lower()
    page.locator(f'body[data-jp-theme-light="{is_light}"]').wait_for(state="attached")


def at_width(page, width: int, height: int = 900) -> None:
    """A window so wide, with a page in it that does not scroll sideways."""
    page.set_viewport_size({"width": width, "height": height})
    page.wait_for_function(f"document.documentElement.scrollWidth === {width}")
