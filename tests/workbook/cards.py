"""What a reader does with the card of a problem, in a browser: an answer, a code, a button."""

from collections.abc import Callable

import pytest

__all__ = ["SLOWER", "answer", "code_of", "focused", "open_code", "tab_to", "tab_to_part"]

MOST_TABS = 120
SLOWER = 400  # milliseconds: what comes sooner after a key is taken for a double press


def answer(card, text: str) -> None:
    """Type an answer, or click the choice of that number, and press Enter."""
    box = card.locator("input.w2w-box")
    if box.count():
        box.fill(text)
        box.press("Enter")
    else:
        choice = card.get_by_role("radio").nth(int(text) - 1)
        choice.check()
        choice.press("Enter")


def code_of(card) -> str:
    """The code of the problem shown, the last in the small line above it."""
    return card.locator(".w2w-above").inner_text().rpartition(" · ")[2]


def open_code(card, case) -> None:
    """Open a problem by its code, and wait until it is there."""
    fold = card.get_by_role("button", name="Code", exact=True)
    if fold.count():
        fold.click()
    card.get_by_label("Problem code").fill(case.code)
    card.get_by_label("Problem code").press("Enter")
    card.locator(".w2w-question", has_text=case.lead).wait_for()
    card.page.wait_for_timeout(400)  # later than a double click


def focused(page) -> str:
    """What a screen reader calls the control that has the focus; of choices, what they answer."""
    return page.evaluate(FOCUSED)


FOCUSED = """() => {
  const at = document.activeElement;
  const named = at.type === "radio" ? at.closest("fieldset").querySelector("legend") : at.labels?.[0];
  return (named?.textContent ?? (at.ariaLabel || at.textContent)).trim();
}"""


def tab_to(page, name: str) -> None:
    """Press Tab until the control of this name has the focus."""
    _tab_until(page, name, lambda found: found == name)


def tab_to_part(page, name: str) -> None:
    """The same, where this is only the beginning of its name."""
    _tab_until(page, name, lambda found: found.startswith(name))


def _tab_until(page, name: str, meant: Callable[[str], bool]) -> None:
    for _ in range(MOST_TABS):
        page.keyboard.press("Tab")
        if meant(focused(page)):
            page.wait_for_timeout(SLOWER)
            return
    pytest.fail(f"Tab does not lead to {name!r}")
