"""Standby power: running load, the largest start, fuel, and getting by without the pumps."""

from solver.algebra.expression import Fraction, Known, Percent
from solver.algebra.formula import Formula, Slip
from solver.topics.constants import LITRES_PER_CUBIC_METRE, SECONDS_PER_MINUTE
from solver.topics.nameplate.formulas_running import ROOT_THREE, SPEED_CONSTANT, VA_PER_KVA
from solver.topics.wet_well.formulas_drawdown import both

__all__ = ["STANDBY"]

PLAIN = "arithmetic"
SIZING = (
    "generator sizing: what runs already plus the largest start, added as kVA (on the safe side); "
    "NFPA 110 and the manufacturer's voltage-dip data decide"
)
THREE_PHASE = "three-phase power: kVA is 1.732 times volts times amps over 1,000"

running_load, running_kva = Known("running_load"), Known("running_kva")
rating, fuel_rate, usable_fuel = map(Known, ("generator_rating", "fuel_rate", "usable_fuel"))
inflow = Known("inflow")


def at_the_start(start: str) -> Formula:
    """What runs already plus a start."""
    return Formula(
        "starting_peak",
        running_kva + Known(start),
        SIZING,
        "The largest motor starts while all else runs, and the generator has to carry both.",
        slips=(
            Slip(
                "start_alone",
                Known(start),
                "You used the start alone. All else is running at the same time.",
            ),
        ),
        back="What isn't the start is what runs already.",
    )


LOADS = (
    Formula(
        "running_load",
        Known("running_pumps") * Known("input_power") + Known("other_load"),
        PLAIN,
        "Every pump that runs takes its kilowatts, and lights, controls and heaters take theirs.",
        slips=(
            Slip(
                "one_pump",
                Known("input_power") + Known("other_load"),
                "You counted one pump. The generator carries all that run.",
            ),
            Slip(
                "pumps_alone",
                Known("running_pumps") * Known("input_power"),
                "You left out the other loads. The generator carries them too.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "running_kva",
        running_load / Known("load_power_factor"),
        "definition of the power factor: kW over kVA",
        "Motors take more kVA than kilowatts. The generator's windings have to carry the kVA.",
        slips=(
            Slip(
                "multiplied",
                running_load * Known("load_power_factor"),
                "You multiplied by the power factor. kVA is more than kW, so divide.",
            ),
        ),
        back="Kilowatts are the part of the kVA that does work.",
    ),
    Formula(
        "soft_start_kva",
        ROOT_THREE
        * Known("rated_volts")
        * Known("full_load_amps")
        * Fraction(Known("starting_percent"))
        / VA_PER_KVA,
        THREE_PHASE,
        "A soft starter holds the starting current to a percent of full-load amps.",
        slips=(
            Slip(
                "without_the_percent",
                ROOT_THREE * Known("rated_volts") * Known("full_load_amps") / VA_PER_KVA,
                "You used full-load amps. The motor takes more than that while it starts.",
            ),
        ),
        turns=("starting_percent",),
    ),
    at_the_start("starting_kva"),
    at_the_start("soft_start_kva"),
    Formula(
        "generator_load",
        Percent(running_load / rating),
        PLAIN,
        "Compare what it carries with what it is rated for.",
        back="The rating times the percent is the load.",
    ),
    Formula(
        "generator_kva",
        rating / Known("generator_power_factor"),
        "definition of the power factor; generators are mostly rated at 0.8",
        "Its kVA are its kilowatts divided by the power factor it is rated at.",
        back="Its kilowatts are its kVA times the power factor it is rated at.",
    ),
    Formula(
        "generator_amps",
        Known("generator_kva") * VA_PER_KVA / (ROOT_THREE * Known("generator_volts")),
        THREE_PHASE,
        "Three-phase amps are kVA times 1,000 over 1.732 times the volts.",
        slips=(
            Slip(
                "one_phase",
                Known("generator_kva") * VA_PER_KVA / Known("generator_volts"),
                "You left out 1.732. This generator has three phases.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "generator_frequency",
        Known("engine_speed") * Known("generator_poles") / SPEED_CONSTANT,
        "Hubert, Electric Machines, ch. 4: f = n p / 120",
        "Each pair of poles makes one cycle per turn.",
        back="For a frequency, more poles take fewer turns.",
    ),
)
FUEL = (
    Formula(
        "fuel_rate",
        running_load * Known("fuel_per_energy"),
        PLAIN,
        "It burns that much fuel for each kilowatt-hour, so kilowatts times that is fuel per hour.",
    ),
    Formula(
        "usable_fuel",
        Known("fuel_tank") * (Fraction(Known("fuel_level")) - Fraction(Known("fuel_reserve"))),
        PLAIN,
        "The fuel below the pickup pipe can't be drawn, so subtract it from what the gauge shows.",
        slips=(
            Slip(
                "all_of_it",
                Known("fuel_tank") * Fraction(Known("fuel_level")),
                "You counted all the fuel. The last of it can't be drawn.",
            ),
        ),
        turns=(),
    ),
    Formula(
        "fuel_hours",
        usable_fuel / fuel_rate,
        PLAIN,
        "Fuel in the tank over fuel per hour gives hours.",
        slips=(
            Slip(
                "multiplied",
                usable_fuel * fuel_rate,
                "You multiplied. Divide the fuel by what it burns in an hour.",
            ),
        ),
        back="Fuel per hour times hours is fuel.",
    ),
)
BYPASS = (
    Formula(
        "peak_inflow",
        inflow * Known("peaking_factor"),
        "peaking factor: peak flow over average flow (Ten States Standards, from memory)",
        "The bypass has to take the peak, not the average.",
        back="The average is the peak over the peaking factor.",
    ),
    Formula(
        "bypass_pumps",
        Known("peak_inflow") / Known("bypass_pump"),
        PLAIN,
        "Each one takes its share. Round up, and have one more standing by.",
    ),
    *both(
        "truck_rate",
        Known("truck_volume") / Known("round_trip"),
        Known("truck_volume") * LITRES_PER_CUBIC_METRE / (Known("round_trip") * SECONDS_PER_MINUTE),
        PLAIN,
        "One truck takes one load in each round trip.",
    ),
    Formula(
        "trucks_needed",
        inflow / Known("truck_rate"),
        PLAIN,
        "Inflow over what one truck hauls gives trucks. Round up to whole ones.",
        slips=(
            Slip(
                "upside_down",
                Known("truck_rate") / inflow,
                "You divided one truck's flow by the inflow. Divide the inflow by one truck's flow.",
            ),
        ),
    ),
)

STANDBY = (*LOADS, *FUEL, *BYPASS)
