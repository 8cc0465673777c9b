"""Who somebody is: an id of one form, however it is typed."""

from unicodedata import category, normalize

from solver.errors import SolverError

__all__ = ["person_id"]

LONGEST_ID = 40


def person_id(text: str) -> str:
    """A person's id as it is used everywhere: trimmed, in small letters, each letter in one form.

    >>> person_id(" Ana.R ")
    'ana.r'

    Raises:
        SolverError: the sentence says what an id may be.
    """
    name = text.strip()
    for _ in range(2):  # what folding makes may have another form again
        name = normalize("NFKC", normalize("NFKC", name).casefold()).strip()
    letters = all(
        sign in "._-@" or category(sign)[0] in "LM" or category(sign) == "Nd" for sign in name
    )
    if not (1 <= len(name) <= LONGEST_ID and letters and name[0].isalnum() and name[-1] != "."):
        raise SolverError(
            f"An id has up to {LONGEST_ID} letters, digits and . _ - @, and begins with a letter "
            f"or a digit; you wrote “{' '.join(text[:LONGEST_ID].split())}”."
        )
    return name
