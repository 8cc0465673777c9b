"""What comes before the load: single-phase power, wire and its voltage drop, transformers.

`SUPPLY` has these and how demand is billed.
"""

from solver.algebra.expression import Constant, Figure, Known, Number, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.nameplate.formulas_running import ROOT_THREE, VA_PER_KVA

from .formulas_demand import DEMAND

__all__ = ["SUPPLY"]

SINGLE_LAW = "DOE Fundamentals Handbook, Electrical Science, vol. 3: single-phase power"
WIRE = "NEC (NFPA 70) Chapter 9 Table 8; Ohm's law for the way out and back"
RATIO = "DOE Fundamentals Handbook, Electrical Science (DOE-HDBK-1011), vol. 4: transformers"

THOUSAND = Constant(
    "table_length",
    "1,000 feet or meters in the wire table",
    us=Figure(1000, "milliohm / ohm", exact=1000.0),
    si=Figure(1000, "milliohm / ohm", exact=1000.0),
    source="NEC (NFPA 70) Chapter 9 Table 8: ohms per 1,000 ft, and per km",
)
COPPER = Constant(
    "copper",
    "resistance of copper, warm",
    us=Figure(12.9, "ohm cmil / ft", also=(12.87, 13.0), exact=12.87),
    si=Figure(0.0225, "ohm mm2 / m", also=(0.0224, 0.0223), exact=0.0225),
    source="NEC (NFPA 70) Chapter 9 Table 8 at 75 °C, ohms times circular mils; in metric, IEC 60364-5-52 (from memory)",
)

length, wire, area, drop, panel = map(
    Known, ("run_length", "wire_ohms", "wire_area", "voltage_drop", "supply_volts")
)
line_amps, line_volts = map(Known, ("line_amps", "line_volts"))
single_volts, single_amps = map(Known, ("single_volts", "single_amps"))
primary_volts, secondary_volts, turns = map(
    Known, ("primary_volts", "secondary_volts", "turns_ratio")
)
secondary_amps = Known("secondary_amps")
kva, factor = map(Known, ("transformer_kva", "power_factor"))
TWO = Number(2)

ONE_WAY = "You counted the wire one way. Single-phase current goes out and comes back: two lengths."

SINGLE_PHASE = (
    Formula(
        "input_power",
        single_volts * single_amps * factor / VA_PER_KVA,
        SINGLE_LAW,
        "Single-phase kilowatts are volts times amps times power factor, over 1,000.",
        slips=(
            Slip(
                "as_three_phase",
                ROOT_THREE * single_volts * single_amps * factor / VA_PER_KVA,
                "You multiplied by 1.732. That's for three phases. Single-phase power is volts times amps times power factor.",
            ),
            Slip(
                "without_the_factor",
                single_volts * single_amps / VA_PER_KVA,
                "You left out the power factor. Volts times amps give kVA, not kilowatts.",
            ),
        ),
        back="Amps are watts over volts and power factor, with 1,000 watts in a kilowatt.",
    ),
)

RUN = (
    Formula(
        "voltage_drop",
        TWO * length * wire * single_amps / THOUSAND,
        WIRE,
        "The current goes out on one wire and back on the other, so the wire is twice the run.",
        slips=(
            Slip("one_way", length * wire * single_amps / THOUSAND, ONE_WAY),
            Slip(
                "three_phase_factor",
                ROOT_THREE * length * wire * single_amps / THOUSAND,
                "You used 1.732. That's for three phases; single-phase takes 2, out and back.",
            ),
        ),
    ),
    Formula(
        "voltage_drop",
        ROOT_THREE * length * wire * line_amps / THOUSAND,
        WIRE,
        "In three phases the drop line to line is 1.732 times the drop in one wire.",
        slips=(
            Slip(
                "out_and_back",
                TWO * length * wire * line_amps / THOUSAND,
                "You used 2, out and back. That's for single-phase; three phases take 1.732.",
            ),
            Slip(
                "one_wire",
                length * wire * line_amps / THOUSAND,
                "You found the drop in one wire. Line to line it is 1.732 times that.",
            ),
        ),
    ),
    Formula(
        "voltage_drop",
        TWO * COPPER * length * single_amps / area,
        f"{COPPER.source}; Ohm's law for the way out and back",
        "More length and more amps lose more volts; more copper loses fewer. Out and back is twice.",
        slips=(Slip("one_way", COPPER * length * single_amps / area, ONE_WAY),),
    ),
    Formula(
        "voltage_drop",
        ROOT_THREE * COPPER * length * line_amps / area,
        f"{COPPER.source}; 1.732 line to line",
        "More length and more amps lose more volts; more copper loses fewer. Three phases take 1.732.",
        slips=(
            Slip(
                "out_and_back",
                TWO * COPPER * length * line_amps / area,
                "You used 2, out and back. That's for single-phase; three phases take 1.732.",
            ),
        ),
    ),
    Formula(
        "voltage_drop",
        panel - Known("far_volts"),
        "arithmetic: what is lost on the way",
        "The volts that are missing at the far end were used up in the wire.",
    ),
    Formula(
        "drop_percent",
        Percent(drop / panel),
        "NEC (NFPA 70) 210.19, informational note: percent of the supply",
        "The percent is of the volts the wire starts with, at the panel.",
        slips=(
            Slip(
                "of_the_far_end",
                Percent(drop / Known("far_volts")),
                "You divided by the volts at the far end. The percent is of the volts at the panel.",
            ),
        ),
    ),
)

TRANSFORMER = (
    Formula(
        "turns_ratio",
        primary_volts / secondary_volts,
        RATIO,
        "Volts follow turns: the side with more turns has more volts.",
        back="Volts follow turns: the side with more turns has more volts.",
    ),
    Formula(
        "primary_amps",
        secondary_amps * secondary_volts / primary_volts,
        RATIO,
        "Volts times amps is about the same on both sides: the side with more volts has fewer amps.",
        slips=(
            Slip(
                "amps_as_volts",
                secondary_amps * primary_volts / secondary_volts,
                "You let the amps go up with the volts. The side with more volts carries fewer amps.",
            ),
            Slip(
                "same_amps",
                secondary_amps,
                "You gave the amps of the secondary. The primary has more volts, so it carries fewer amps.",
            ),
        ),
        back="Volts times amps is about the same on both sides: fewer volts, more amps.",
    ),
    Formula(
        "primary_amps",
        secondary_amps / turns,
        RATIO,
        "The side with more turns has more volts and fewer amps, by the same ratio.",
        slips=(
            Slip(
                "amps_as_volts",
                secondary_amps * turns,
                "You let the amps go up with the turns. The side with more turns carries fewer amps.",
            ),
        ),
        back="The side with fewer turns has fewer volts and more amps, by the same ratio.",
    ),
    Formula(
        "control_amps",
        Known("transformer_va") / secondary_volts,
        RATIO,
        "A single-phase rating in volt-amps is volts times amps, so divide it by the volts.",
        slips=(
            Slip(
                "other_side",
                Known("transformer_va") / primary_volts,
                "You divided by the primary volts. The amps asked for are on the secondary side.",
            ),
            Slip(
                "as_three_phase",
                Known("transformer_va") / (ROOT_THREE * secondary_volts),
                "You divided by 1.732. That's for three phases; a control transformer is single-phase.",
            ),
        ),
    ),
    Formula(
        "transformer_amps",
        kva * VA_PER_KVA / (ROOT_THREE * line_volts),
        RATIO,
        "Three-phase kVA are 1.732 times volts times amps over 1,000, so work back to the amps.",
        slips=(
            Slip(
                "as_single_phase",
                kva * VA_PER_KVA / line_volts,
                "You left out the 1.732. This transformer is three-phase.",
            ),
        ),
    ),
    Formula(
        "transformer_load",
        Percent(Known("apparent_power") / kva),
        RATIO,
        "A transformer is rated in kVA, because its heat comes from amps, whatever the power factor.",
    ),
)

SUPPLY = (*SINGLE_PHASE, *RUN, *TRANSFORMER, *DEMAND)
