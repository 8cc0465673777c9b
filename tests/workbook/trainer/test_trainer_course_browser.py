"""A whole class from its list to the record of completion, in the trainer's pages alone, by keyboard."""

from zipfile import ZipFile

import pytest

from solver.sets.work_set import cases_for
from tests.workbook.on_a_phone import faults_on_a_phone
from tests.workbook.trainer.a_class import answered
from tests.workbook.trainer.sheets import right
from tests.workbook.turning import turn_to
from workbook.trainer.learner.answer_sheet import SHEET
from workbook.trainer.sets.set_file import SET_FILE, read_set_file

pytestmark = pytest.mark.browser

NAME = "by-keyboard"
PEOPLE = "Name;ID;Email\nRuiz, Ana;op01;ana@example.org\nBen Kay;op02;ben@example.org\n"
SOON = 200  # ms
LONG = 120_000  # ms; nbgrader makes the set in a program of its own


class ByKeyboard:
    """A panel of a page, used as somebody without a mouse does."""

    def __init__(self, page, panel: str):
        self.page, self.panel = page, page.locator(panel)

    def type_in(self, label: str, text: str, step: str = "") -> None:
        within = self.step(step) if step else self.panel
        within.get_by_label(label, exact=True).focus()
        self.page.keyboard.press("Control+a")
        self.page.keyboard.type(text)

    def step(self, title: str):
        boxes = self.panel.locator(".widget-vbox")
        return boxes.filter(has=self.page.get_by_role("heading", name=title, exact=True)).last

    def press(self, name: str, says: str, key: str = "Enter") -> None:
        self.panel.get_by_role("button", name=name, exact=True).focus()
        self.page.keyboard.press(key)
        self.panel.get_by_text(says).first.wait_for(timeout=LONG)

    def give(self, name: str, *paths) -> None:
        self.panel.get_by_role("button", name=name).focus()
        with self.page.expect_file_chooser() as choosing:
            self.page.wait_for_timeout(
                SOON
            )  # the key would overtake what looks out for the chooser
            self.page.keyboard.press("Enter")
        choosing.value.set_files(paths)
        self.panel.get_by_role("button", name=f"{name} ({len(paths)})").wait_for()


def sent(folder, assigned, person):
    typed = {n: right(case) for n, case in enumerate(cases_for(assigned.work, person), 1)}
    path = folder / f"{NAME}-{person}.zip"
    with ZipFile(path, "w") as packed:
        packed.writestr(f"{person}/{NAME}/{SHEET}", answered(assigned, person, typed, "right"))
    return path


def test_a_class_goes_from_its_list_to_its_records_in_the_pages_by_keyboard(
    serve, page, axe, tmp_path
):
    served = serve(course=True)
    served.open(page, "03-the-course.ipynb")
    course = ByKeyboard(page, ".w2w-course")
    (tmp_path / "class.csv").write_text(PEOPLE)
    course.give("Choose the list", tmp_path / "class.csv")
    course.press("Take the list in", "2 people are on its list.")

    turn_to(served, page, "01-set-work.ipynb")
    setting = ByKeyboard(page, ".w2w-setting")
    setting.type_in("Title", "By keyboard")
    setting.panel.get_by_label("6. Head").and_(page.get_by_role("checkbox")).focus()
    page.keyboard.press("Space")
    setting.type_in("Questions, 1 to 60", "3")
    setting.press("Save the set", "The set is saved in", "Space")
    setting.panel.get_by_role("link", name="The course").focus()
    page.keyboard.press("Enter")
    page.wait_for_url("**/03-the-course.ipynb*")
    page.locator('.wtw-page[data-state="ready"]').wait_for()

    course.press("Make what people get", "As one file to send, it is")
    course.panel.get_by_text("Not yet: Ana Ruiz (op01), Ben Kay (op02).").wait_for()
    assigned = read_set_file(served.folder / "source" / NAME / SET_FILE)
    course.give("Choose what people sent", *(sent(tmp_path, assigned, p) for p in ("op01", "op02")))
    course.press("Take in and grade", "Work from 2 people was taken in.")
    course.panel.get_by_text("Nobody is missing.").wait_for()
    course.type_in("Person", "op02", "Points by hand")
    for text in ("1", "0.5", "copied at the board"):
        page.keyboard.press("Tab")
        page.keyboard.type(text)
    course.press("Give these points", "op02 has 0.5 points for question 1")

    course.type_in("Day, such as 2026-12-01", "2026-12-01")
    for text in ("Head", "2"):
        page.keyboard.press("Tab")
        page.keyboard.type(text)
    course.press("Keep this meeting", "2026-12-01 is kept: Head, 2 hours")
    course.press("Write the grades", "has 2 people and 1 set.")
    course.type_in("Your name, as it is printed", "R. Vance")
    course.press("Make the records", "has 2 records.")
    with page.expect_download() as saving:
        course.panel.get_by_role("link", name="Save completion.html").focus()
        page.keyboard.press("Enter")
    assert all(name in saving.value.path().read_text("utf-8") for name in ("Ana Ruiz", "Ben Kay"))
    course.press("Make a backup", "To go back to it, unpack it somewhere.")
    assert [] == axe(page, ".w2w-course")
    assert [] == faults_on_a_phone(page)

    turn_to(served, page, "02-the-class.ipynb")
    report = ByKeyboard(page, ".w2w-class")
    report.press("Grade and show", "2 sheets graded.")
    report.panel.get_by_text(f"-m workbook class {NAME} --course {served.folder}").wait_for()
