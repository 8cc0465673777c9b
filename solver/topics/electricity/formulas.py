"""Ohm's law, what goes in series and in parallel, and watts.

`ELECTRICITY` has every formula of the chapter; those of the supply are in `formulas_supply.py` and
`formulas_demand.py`.
"""

from solver.algebra.expression import Constant, Figure, Known, Number
from solver.algebra.formula import Formula, Slip
from solver.topics.nameplate.formulas_running import VA_PER_KVA

from .formulas_supply import SUPPLY

__all__ = ["ELECTRICITY"]

DOE = "DOE Fundamentals Handbook, Electrical Science (DOE-HDBK-1011)"
OHM = f"{DOE}, vol. 1: Ohm's law"
SERIES_LAW = f"{DOE}, vol. 1: series circuits"
PARALLEL_LAW = f"{DOE}, vol. 1: parallel circuits"
POWER_LAW = f"{DOE}, vol. 1: the power of a circuit"

MILLIAMPS = Constant(
    "milliamps_per_amp",
    "1,000 milliamps per amp",
    us=Figure(1000, "mA / A", exact=1000.0),
    si=Figure(1000, "mA / A", exact=1000.0),
    source="arithmetic: milli is a thousandth",
)

volts, amps, ohms, watts = map(Known, ("load_volts", "circuit_amps", "load_ohms", "load_watts"))
in_series = tuple(Known(f"series_ohms_{n}") for n in (1, 2, 3))
branches = tuple(Known(f"parallel_ohms_{n}") for n in (1, 2, 3))
loop_ohms, loop_current = Known("loop_ohms"), Known("loop_current")
ONE = Number(1)
SIDE_BY_SIDE = (
    "Each branch is one more path, so add one over each, then turn the sum over. "
    "The total is less than the smallest branch."
)
ADDED = "You added the ohms, as in series. Side by side the current has more paths, so the ohms go down."

CIRCUIT = (
    Formula(
        "circuit_amps",
        volts / ohms,
        OHM,
        "Volts push and ohms hold back, so divide volts by ohms to get amps.",
        slips=(
            Slip(
                "upside_down",
                ohms / volts,
                "You divided ohms by volts. More ohms let less current through: volts go on top.",
            ),
            Slip(
                "multiplied",
                volts * ohms,
                "You multiplied volts by ohms. More ohms let less current through, so divide.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "load_ohms",
        volts / amps,
        OHM,
        "Ohms are the volts it takes for each amp, so divide volts by amps.",
        slips=(
            Slip(
                "upside_down",
                amps / volts,
                "You divided amps by volts. Many volts for few amps is a high resistance: volts go on top.",
            ),
            Slip(
                "multiplied",
                volts * amps,
                "You multiplied volts by amps. That gives watts; for ohms, divide.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "load_volts",
        amps * ohms,
        OHM,
        "Each amp takes as many volts as there are ohms, so multiply amps by ohms.",
        slips=(
            Slip(
                "divided",
                ohms / amps,
                "You divided ohms by amps. More amps through the same ohms take more volts: multiply.",
            ),
            Slip(
                "divided_by_ohms",
                amps / ohms,
                "You divided amps by ohms. More ohms take more volts for the same amps: multiply.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "load_watts",
        volts * amps,
        POWER_LAW,
        "A heater or a lamp takes watts: volts times amps.",
        slips=(
            Slip(
                "divided",
                volts / amps,
                "You divided volts by amps. That gives ohms; for watts, multiply.",
            ),
        ),
        back="Watts are volts times amps, turned around for what you need here.",
    ),
    Formula(
        "load_watts",
        Known("rated_watts") * (volts / Known("rated_volts")) ** 2,
        f"{POWER_LAW}: volts squared over ohms, and the element's ohms stay",
        "Fewer volts also push fewer amps through the same element, so watts change with the square of the volts.",
        slips=(
            Slip(
                "in_proportion",
                Known("rated_watts") * volts / Known("rated_volts"),
                "You used the ratio of the volts once. The amps change too, so use it twice: square it.",
            ),
            Slip(
                "the_other_way",
                Known("rated_watts") * (Known("rated_volts") / volts) ** 2,
                "You turned the ratio of the volts upside down. The volts that are there go on top.",
            ),
            Slip(
                "rated_anyway",
                Known("rated_watts"),
                "You gave the rated watts. The heater makes those only at its rated volts.",
            ),
        ),
    ),
    Formula(
        "input_power",
        watts / VA_PER_KVA,
        f"{POWER_LAW}; kilo is a thousand",
        "A kilowatt is 1,000 watts, and energy is counted in kilowatts times hours.",
        turns=(),
    ),
)

LOOP = (
    Formula(
        "loop_ohms",
        in_series[0] + in_series[1] + in_series[2],
        SERIES_LAW,
        "In series the same current goes through each one in turn, so the ohms add up.",
        slips=(
            Slip(
                "as_in_parallel",
                ONE / (ONE / in_series[0] + ONE / in_series[1] + ONE / in_series[2]),
                "You combined them as if they were in parallel. A loop is one path, so add the ohms.",
            ),
            Slip(
                "averaged",
                (in_series[0] + in_series[1] + in_series[2]) / Number(3),
                "You took the average. The current goes through all of them, so add the ohms.",
            ),
        ),
    ),
    Formula(
        "loop_drop",
        loop_current * loop_ohms / MILLIAMPS,
        f"{OHM}; {SERIES_LAW}",
        "Volts are amps times ohms, and 1,000 milliamps make one amp.",
        slips=(
            Slip(
                "one_of_three",
                loop_current * in_series[0] / MILLIAMPS,
                "You took the volts of the input card alone. The same current goes through all three.",
            ),
        ),
    ),
    Formula(
        "transmitter_volts",
        Known("loop_supply") - Known("loop_drop"),
        f"{SERIES_LAW}: the drops add up to the supply",
        "The other parts of the loop use up their share, and the transmitter gets the rest.",
    ),
)

BRANCHES = (
    Formula(
        "parallel_ohms",
        ONE / (ONE / branches[0] + ONE / branches[1] + ONE / branches[2]),
        PARALLEL_LAW,
        SIDE_BY_SIDE,
        slips=(
            Slip("added", branches[0] + branches[1] + branches[2], ADDED),
            Slip(
                "not_turned_over",
                ONE / branches[0] + ONE / branches[1] + ONE / branches[2],
                "You added one over each and stopped. Turn that sum over to get ohms.",
            ),
            Slip(
                "product_over_sum",
                branches[0] * branches[1] * branches[2] / (branches[0] + branches[1] + branches[2]),
                "You used product over sum. That works for two branches only.",
            ),
            Slip(
                "averaged",
                (branches[0] + branches[1] + branches[2]) / Number(3),
                "You took the average of the ohms. The total is less than the smallest branch.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "parallel_ohms",
        branches[0] * branches[1] / (branches[0] + branches[1]),
        f"{PARALLEL_LAW}: product over sum",
        "For two branches, product over sum is the short way: the total is less than the smaller one.",
        slips=(
            Slip("added", branches[0] + branches[1], ADDED),
            Slip(
                "sum_over_product",
                (branches[0] + branches[1]) / (branches[0] * branches[1]),
                "You put the sum on top. The product goes on top.",
            ),
            Slip(
                "averaged",
                (branches[0] + branches[1]) / Number(2),
                "You took the average of the ohms. The total is always less than the smaller branch.",
            ),
        ),
        unless=("parallel_ohms_3",),
    ),
    Formula(
        "circuit_amps",
        volts / Known("parallel_ohms"),
        f"{OHM}; {PARALLEL_LAW}",
        "Every branch gets the full volts, so the total amps are volts over the parallel ohms.",
        turns=(),
    ),
)

ELECTRICITY = (*CIRCUIT, *LOOP, *BRANCHES, *SUPPLY)
