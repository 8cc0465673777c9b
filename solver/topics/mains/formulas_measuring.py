"""Measuring flow: weirs and Parshall flumes. `MEASURING` has the meters of `formulas_meters.py` too."""

from collections.abc import Callable, Mapping
from math import isclose

from solver.algebra.expression import Constant, Expr, Figure, Known, Lookup, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.errors import NotSolvable
from solver.topics.tables import between_rows, table_rows, table_source

from .formulas_meters import METERS

__all__ = ["MEASURING", "flume_row"]


def constant(name: str, label: str, us: float, si: float, source: str) -> Constant:
    """A constant of an equation that was fitted to measurements."""
    return Constant(name, label, Figure(us, ""), Figure(si, ""), source)


FRANCIS = constant(
    "francis", "Francis constant", 1495, 1838,
    "Francis, in Dighe, Hydraulics Made Easy, Ex 5.5: 3.33 for cfs and ft; 1,495 for gpm and ft, 1,838 for "
    "L/s and m",
)  # fmt: skip
CONTRACTIONS = (
    "Francis: each end contraction takes a tenth of the head off the crest, and there are two"
)
BY_THROAT = (
    ("in", "mm"),
    ("", ""),
)  # what a flume's row is found by, and that its numbers are plain
LEVELS = "arithmetic: the depth upstream, minus the height of the crest"

head = Known("weir_head")
throat = Known("throat_diameter")


def of_notch(angle: float, units: str) -> float:
    """The constant of a V-notch of this angle (degrees).

    Raises:
        NotSolvable: the table has no such notch.
    """
    found = between_rows("v_notch", "angle", units, angle)
    if found is None:
        raise NotSolvable(f"the table of V-notches has no {angle:g} degrees; it has 22.5 to 120")
    return found


SAME_THROAT = 0.01  # 3 in is 76.2 mm, and 76 in the table; 1.5 ft is 18 in but for the last figure


def flume_row(throat: float, units: str, beside: int = 0) -> Mapping[str, float]:
    """The row of a Parshall flume by its throat (in | mm), or of one `beside` it in the table.

    Raises:
        NotSolvable: the table has no such flume.
    """
    rows = table_rows("parshall")
    throats = [row[f"{units}_throat"] for row in rows]
    here = [n for n, size in enumerate(throats) if isclose(size, throat, rel_tol=SAME_THROAT)]
    if not here:
        sizes = ", ".join(f"{size:g}" for size in throats)
        raise NotSolvable(
            f"the table of Parshall flumes has no throat of {throat:g}; it has {sizes}"
        )
    at = here[0] + beside
    return rows[at if at < len(rows) else at - 2 * beside]


def of_flume(what: str, beside: int = 0) -> Callable[[float, str], float]:
    """What reads the constant or the exponent of a flume by its throat."""

    def read(throat: float, units: str) -> float:
        return flume_row(throat, units, beside)[units if what == "constant" else what]

    return read


def fitted(result: str, expr: Expr, source: str, why: str, *slips: Slip) -> Formula:
    """An equation that was fitted to measurements."""
    return Formula(result, expr, source, why, slips, empirical=True)


WEIRS = (
    Formula(
        "weir_head",
        Known("upstream_depth") - Known("crest_height"),
        LEVELS,
        "Only the water above the crest counts. Measure it upstream, where it isn't drawn down yet.",
        slips=(
            Slip(
                "whole_depth",
                Known("upstream_depth"),
                "You used the whole depth. Count only what is above the crest.",
            ),
        ),
    ),
    Formula(
        "notch_constant",
        Lookup(Known("notch_angle"), of_notch, "the table of V-notches at", ("", ""), ("", "")),
        table_source("v_notch"),
        "A wider notch passes more at the same head.",
        turns=(),
    ),
    fitted(
        "weir_flow",
        Known("notch_constant") * head**2.5,
        table_source("v_notch"),
        "The opening gets wider as the water gets higher, so the head goes to the power 2.5.",
        Slip(
            "rectangular_power",
            Known("notch_constant") * head**1.5,
            "You used the power 1.5. That is for a rectangular weir; a V-notch takes 2.5.",
        ),
    ),
    fitted(
        "weir_flow",
        FRANCIS * Known("crest_length") * head**1.5,
        f"{FRANCIS.source}; full width, no end contractions",
        "Flow over a level crest grows with the power 1.5 of the head.",
        Slip(
            "notch_power",
            FRANCIS * Known("crest_length") * head**2.5,
            "You used the power 2.5. That is for a V-notch; a level crest takes 1.5.",
        ),
    ),
    Formula(
        "effective_crest",
        Known("contracted_crest") - Number(0.2) * head,
        CONTRACTIONS,
        "The water bends in at both ends, so the crest works as if it was a little shorter.",
        slips=(
            Slip(
                "one_end",
                Known("contracted_crest") - Number(0.1) * head,
                "You counted one end. The water bends in at both.",
            ),
        ),
        turns=("contracted_crest",),
    ),
    fitted(
        "weir_flow",
        FRANCIS * Known("effective_crest") * head**1.5,
        FRANCIS.source,
        "Flow over a level crest grows with the power 1.5 of the head.",
    ),
)

FLUMES = (
    Formula(
        "flume_constant",
        Lookup(Known("flume_throat"), of_flume("constant"), "the constant of a Parshall flume of", *BY_THROAT),
        table_source("parshall"),
        "A wider flume passes more at the same head.",
        slips=(
            Slip(
                "other_flume",
                Lookup(
                    Known("flume_throat"), of_flume("constant", 1), "the next constant to a Parshall flume of",
                    *BY_THROAT,
                ),
                "You used the constant of another flume. Each size has its own.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "flume_exponent",
        Lookup(Known("flume_throat"), of_flume("exponent"), "the exponent of a Parshall flume of", *BY_THROAT),
        table_source("parshall"),
        "Each size of flume has its own exponent, a little over 1.5.",
        turns=(),
    ),
    Formula(
        "flume_flow",
        Known("flume_constant") * Known("flume_head") ** Known("flume_exponent"),
        table_source("parshall"),
        "In free flow the upstream head alone tells the flow. Twice the head is about three times the flow.",
        empirical=True,
        turns=("flume_head",),
    ),
    Formula(
        "submergence",
        Percent(Known("downstream_head") / Known("flume_head")),
        "US Bureau of Reclamation, Water Measurement Manual, ch. 8 (from memory)",
        "The downstream head over the upstream head tells you whether water backs up into the throat.",
    ),
)  # fmt: skip

MEASURING = (*WEIRS, *FLUMES, *METERS)
