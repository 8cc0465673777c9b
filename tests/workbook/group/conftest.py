"""A reader of group study, with a log of their own."""

import pytest

from tests.workbook.group.members import WEDNESDAY
from tests.workbook.group.panels import paste, slow
from workbook.group.own_group import OwnGroup
from workbook.group.work_panel import WorkPanel
from workbook.log import Log


@pytest.fixture
def own(tmp_path):
    return OwnGroup(Log(tmp_path / "mine" / "attempts.jsonl"))


@pytest.fixture
def page(own):
    """The panel to work at a set, with the set of Wednesday open."""
    panel = slow(WorkPanel(own))
    paste(panel, WEDNESDAY.text)
    return panel
