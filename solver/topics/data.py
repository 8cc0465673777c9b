"""The data files in the topics' folders: tables as .csv, questions in words as .toml."""

from collections.abc import Mapping
from functools import cache
from importlib.resources import files
from importlib.resources.abc import Traversable
from types import MappingProxyType

from solver.errors import BadDefinition

__all__ = ["data_files", "text_of"]


@cache
def data_files(ending: str) -> Mapping[str, Traversable]:
    """Every file of the topics with this ending (".csv"), by its name without the ending.

    Raises:
        BadDefinition: two topics have a file of one name.
    """
    found: dict[str, Traversable] = {}
    for topic in sorted(files(__package__).iterdir(), key=lambda folder: folder.name):
        for path in topic.iterdir() if topic.is_dir() else ():
            name = path.name.removesuffix(ending)
            if name == path.name:
                continue
            if name in found:
                raise BadDefinition(f"two topics have a file {path.name}: give each its own name")
            found[name] = path
    return MappingProxyType(found)


def text_of(name: str, ending: str) -> str:
    """What one of those files says; KeyError where there is none of this name."""
    return data_files(ending)[name].read_text("utf-8")
