"""How nbgrader marks in a settled course: nothing that was handed in is run, and no kernel starts.

A notebook that comes back may have cells copied, split, deleted or edited, and code in it would run
with the trainer's rights. So the trainer's own notebook takes its place; what was typed is read as
data; and the trainer's grade cells get the output that running them would have given.
"""

from pathlib import Path

import nbformat
from nbconvert.exporters import NotebookExporter
from nbgrader.coursedir import CourseDirectory
from nbgrader.preprocessors import NbGraderPreprocessor

from .coming_in.handed_in import METADATA, Handed, plain_answers, read_handed
from .coming_in.typed_as import typed_as
from .marking.grade_cell import ANSWERED, fill_in, show_plain_answers
from .marking.marked import mark_handed
from .sets.set_file import SET_FILE, read_set_file

__all__ = ["MARKED", "MarkGradeCells", "OnlyMarks", "TrainersNotebook"]

MARKED = "wire_to_water"  # where the marks stand among what preprocessors hand on


def _handed(course: CourseDirectory, of: dict) -> Handed:
    name, person = of["assignment"], of["student"]
    folder = course.format_path(course.submitted_directory, person, name)
    found = read_handed(Path(folder), name, person)
    return found._replace(typed=typed_as(Path(course.root), name).get(person, ""))


class TrainersNotebook(NotebookExporter):
    """Exports the trainer's notebook in the place of each one that was handed in."""

    def from_file(self, file_stream, resources=None, **kw):
        """The trainer's copy as it went out, with the plain answers of the one handed in."""
        course, of = self.parent.coursedir, resources["nbgrader"]
        name, notebook = of["assignment"], of["notebook"]
        folder = course.format_path(course.release_directory, ".", name)
        page = nbformat.read(Path(folder, f"{notebook}.ipynb"), as_version=4)
        if notebook == name:
            show_plain_answers(page, plain_answers(_handed(course, of).notebook))
        return self.from_notebook_node(page, resources=resources, **kw)


class MarkGradeCells(NbGraderPreprocessor):
    """Marks what was handed in and fills the grade cells with it, in the place of running them."""

    def preprocess(self, nb, resources):
        """The notebook with its marks; they also go on to the preprocessors that come after."""
        course, of = self.parent.parent.coursedir, resources["nbgrader"]
        name, marked = of["assignment"], None
        if of["notebook"] == name:
            folder = course.format_path(course.source_directory, ".", name)
            assigned, handed = read_set_file(Path(folder, SET_FILE)), _handed(course, of)
            marked = mark_handed(assigned, handed)
        fill_in(nb, marked)
        resources[MARKED] = marked
        return nbformat.from_dict(nb), resources


class OnlyMarks(NbGraderPreprocessor):
    """Leaves on a page of feedback what tells about marks; cards that do not work there go."""

    def preprocess(self, nb, resources):
        """The notebook with its headings, plain answers and marks; any other notebook as it is."""
        if METADATA in nb.metadata:
            nb.cells = [cell for cell in nb.cells if self._tells(cell)]
            for cell in nb.cells:
                if cell.cell_type == "code":
                    cell.source = ""
                    cell.outputs = [
                        put for put in cell.outputs if put.output_type == "display_data"
                    ]
        return nb, resources

    def _tells(self, cell) -> bool:
        if cell.cell_type == "code":
            return cell.metadata.get("nbgrader", {}).get("grade", False)
        if "answer" in cell.metadata.get(METADATA, {}):
            return ANSWERED in cell.source
        return cell.id == "title" or cell.id.startswith("heading-")
