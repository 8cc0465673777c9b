"""Insulation to ground and winding resistance, judged by IEEE 43, NETA MTS and EASA AR100."""

from functools import partial

from solver.topics.limits import (
    ABSORPTION,
    FORM_INSULATION,
    FORM_OHMS,
    INDEX_CEILING,
    LOW_VOLTAGE,
    OLDER_INSULATION,
    POLARIZATION,
    RANDOM_INSULATION,
    RANDOM_OHMS,
)
from solver.topics.tables import table_rows
from solver.topics.zones import Limits

from .check import Check
from .verdict import (
    BEYOND,
    LOOK,
    NO_LIMIT,
    WITHIN,
    Seen,
    Verdict,
    above,
    at_least,
    at_most,
    no_limit,
)

__all__ = ["INSULATION", "least"]

TESTED = ("insulation", "electrical")
OLDER = "before 1970"
FIELD_VOLTS = (
    1000  # volts DC that many use on motor, cable and starter together, as NETA MTS on the last two
)
FAR_OUT = 20  # percent: a winding this far off is open, shorted or badly joined
TEST_SOURCE = "IEEE 43-2000; up to 1,000 V is common practice, from NETA MTS-2019 Table 100.1 for cable and starter"
DRY = (
    "Isolate the motor and look for moisture at the cable, splices and seal. "
    "Dry it out, and test again before you energize it."
)
TEST_AGAIN = "Clean and dry the leads, then test again. Compare with earlier records."
JOINTS = (
    "Measure again at the motor leads, all at one temperature. Then check splices and connections."
)


def volts_of_test(seen: Seen) -> Verdict:
    """The test volts against the rating: too many may harm the winding, too few tell little."""
    rated, used = seen.known["rated_volts"], seen.known["test_volts"]
    first, *others = table_rows("insulation_tests")
    row = next((row for row in reversed(others) if rated >= row["rated"]), first)
    least, most = row["least"], FIELD_VOLTS if rated < LOW_VOLTAGE else row["most"]
    rule = f"{least:,.0f} V to {most:,.0f} V DC for a {seen.shown('rated_volts')} winding"
    bound = f"{least:,.0f} to {most:,.0f} V"
    found = f"The test was made with {seen.shown('test_volts')}"
    if above(used, most):
        then = "Use a lower test voltage next time: too high can break down the insulation."
        return Verdict(BEYOND, f"{found}, over {most:,.0f} V.", rule, TEST_SOURCE, then, bound)
    if above(least, used):
        then = "Use a higher test voltage: this low, it may not show a weak spot."
        return Verdict(LOOK, f"{found}, under {least:,.0f} V.", rule, TEST_SOURCE, then, bound)
    return Verdict(
        WITHIN, f"{found}, which is normal for its rating.", rule, TEST_SOURCE, "", bound
    )


def least(seen: Seen) -> Limits:
    """The limits for this winding, by its kind and its volts."""
    kind, rated = seen.record.texts.get("winding_kind"), seen.known.get("rated_volts")
    if kind == OLDER and "least_insulation" in seen.known:
        return OLDER_INSULATION
    if rated is None:
        return FORM_INSULATION if kind == "form-wound" else RANDOM_INSULATION
    high = rated >= LOW_VOLTAGE and kind != "random-wound"
    return FORM_INSULATION if high else RANDOM_INSULATION


def older(seen: Seen) -> Verdict:
    """What a winding made before about 1970 must read at least: a limit, not a reading."""
    return no_limit(seen, "least_insulation")


def insulation(seen: Seen) -> Verdict:
    """Megohms at 40 °C against the least for this winding."""
    return at_least(seen, least(seen), "", TEST_AGAIN, DRY)


def insulation_as_read(seen: Seen) -> Verdict:
    """Without a temperature nothing can be brought to 40 °C; a very low reading is said anyhow."""
    value, limits = seen.known["insulation"], least(seen)
    low = seen.limit(limits.low)
    says = f"It reads {seen.shown('insulation')}. Without a winding temperature it can't be corrected to 40 °C."
    then = "Measure the winding temperature too. A cold winding reads high."
    if above(low, value):
        return Verdict(
            BEYOND, f"{says} That is under {low:g} megohms.", limits.rule, limits.source, DRY
        )
    return Verdict(NO_LIMIT, says, limits.rule, limits.source, then)


def told(seen: Seen, *names: str) -> Verdict | None:
    """Why a ratio of readings says nothing, or None where it does."""
    if seen.record.over & {*names}:
        says = "The tester was at the top of its range, so the ratio tells you nothing."
        return Verdict(NO_LIMIT, says, POLARIZATION.rule, POLARIZATION.source)
    if above(seen.known["insulation_1min"], INDEX_CEILING):
        says = f"At {seen.shown('insulation_1min')} the ratio tells you nothing."
        return Verdict(NO_LIMIT, says, POLARIZATION.rule, POLARIZATION.source)
    return None


def polarization(seen: Seen) -> Verdict:
    """The polarization index against the least for the insulation class, where that is known."""
    insulation_class = seen.record.texts.get("insulation_class")
    limits = POLARIZATION
    if insulation_class == "A":
        limits = limits._replace(high=limits.low)
    elif insulation_class:
        limits = limits._replace(low=limits.high)
    then = f"Moisture or dirt is carrying current across the insulation. {TEST_AGAIN}"
    found = at_least(
        seen, limits, "", f"Read the insulation class on the nameplate. {TEST_AGAIN}", then
    )
    return told(seen, "insulation_1min", "insulation_10min") or found


def absorption(seen: Seen) -> Verdict:
    """The dielectric absorption ratio: whether the reading still rose from 30 s to 60 s."""
    found = at_least(
        seen,
        ABSORPTION,
        "",
        TEST_AGAIN,
        f"The reading dropped during the test. {TEST_AGAIN}",
    )
    return told(seen, "insulation_30s", "insulation_1min") or found


def resistance(seen: Seen) -> Verdict:
    """The ohms of the three windings against each other, by the kind of winding."""
    kind = seen.record.texts.get("winding_kind")
    limits = FORM_OHMS if kind == "form-wound" else RANDOM_OHMS
    if kind is None:
        both = f"{RANDOM_OHMS.rule}; {FORM_OHMS.rule}"
        limits = limits._replace(low=FORM_OHMS.low, rule=both)
    far = seen.known["resistance_unbalance"] > FAR_OUT
    then = f"A phase may be open, shorted or badly connected. {JOINTS}" if far else JOINTS
    return at_most(seen, limits, "", JOINTS, then)


OHMS = ("ohms_12", "ohms_23", "ohms_31")
check = partial(Check, "insulation", cautions=TESTED)
INSULATION = (
    check("test_volts", "test volts", (("test_volts", "rated_volts"),), "test_volts", volts_of_test),
    check(
        "least_insulation", "minimum insulation of an older winding",
        (("rated_volts",),), "least_insulation", older, only=("winding_kind", OLDER),
    ),
    check(
        "insulation_at_40", "insulation at 40 °C",
        (("insulation", "winding_temperature"),),
        "insulation_at_40", insulation,
    ),
    check(
        "insulation_as_read", "insulation as read",
        (("insulation",),),
        "insulation", insulation_as_read, unless=("winding_temperature",),
    ),
    check(
        "absorption_ratio", "dielectric absorption ratio",
        (("insulation_30s", "insulation_1min"),), "absorption_ratio", absorption,
    ),
    check(
        "polarization_index", "polarization index",
        (("insulation_1min", "insulation_10min"),), "polarization_index", polarization,
    ),
    check(
        "resistance_unbalance", "winding resistance unbalance",
        (OHMS,), "resistance_unbalance", resistance, legs=True, by_a_hair=True,
    ),
)  # fmt: skip
