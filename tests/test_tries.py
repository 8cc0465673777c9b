"""A browser's test that fails is tried as it stands, then with everything made anew."""

import pytest

pytest_plugins = ["pytester"]

TRIED = """
import pytest
made = []
ended = []

@pytest.fixture(scope="session")
def server():
    made.append("server")
    yield
    ended.append("server")

@pytest.fixture(scope="module")
def reader(server):
    made.append("reader")
    yield []
    ended.append("reader")

def test_before(reader):
    pass

@pytest.mark.browser
def test_it_wants_a_reader_with_no_history(reader):
    reader.append("history")
    assert len(reader) == 1 and len(made) > 2, (reader, made)

def test_after(reader):
    assert made == ["server", "reader"] * 2
    assert ended == ["reader", "server"]
"""


@pytest.fixture
def run(pytester, root, monkeypatch):
    """Run a file of tests with the two plugins, and give what was said."""
    monkeypatch.setenv("PYTHONPATH", str(root))

    def of(text: str):
        pytester.makepyfile(text)
        return pytester.runpytest_subprocess("-p", "tests.tries", "-o", "markers=browser")

    return of


def test_a_third_try_has_everything_made_anew_and_what_was_there_is_ended(run):
    said = run(TRIED)
    said.assert_outcomes(passed=3)
    assert "2 rerun" in said.stdout.str()


def test_one_that_always_fails_is_a_failure_and_one_without_a_browser_is_tried_once(run):
    said = run(
        "import pytest\n@pytest.mark.browser\ndef test_a():\n    assert False\n"
        "def test_b():\n    assert False\n"
    )
    said.assert_outcomes(failed=2)
    assert "2 rerun" in said.stdout.str()
