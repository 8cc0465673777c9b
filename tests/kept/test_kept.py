"""What earlier versions gave out still opens, and comes to what it came to then."""

import json
import shutil
from pathlib import Path

import pytest

from .facts import PARTS, still

VERSIONS = sorted(
    path for path in Path(__file__).parent.iterdir() if (path / "codes.json").exists()
)


@pytest.fixture(params=VERSIONS, ids=lambda path: path.name)
def kept(request, tmp_path):
    """A copy of the files of a version, which opening may add to."""
    return shutil.copytree(request.param, tmp_path / request.param.name)


@pytest.mark.parametrize("part", PARTS)
def test_what_an_earlier_version_gave_out_comes_to_what_it_came_to_then(kept, part):
    expected = json.loads((kept / "expected.json").read_text("utf-8"))[part]
    found = json.loads(json.dumps(PARTS[part](kept)))
    assert still(expected) == still(found)
