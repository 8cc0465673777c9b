"""Standby power: running load, the largest start, fuel, frequency, bypass pumps and trucks, questions.

`STANDBY` has the whole chapter, in the order of teaching.
"""

from solver.engine.family import Level
from solver.topics.limits import GENERATOR_LOAD
from solver.topics.questions import in_words
from solver.topics.scenes import AT_A_WELL
from solver.topics.zones import against

from .stations import BYPASSED, CHAPTER, ENGINE, FUELED, ON_GENERATOR, OVERLOADED, TRUCKED

__all__ = ["STANDBY"]

SIZING = (
    CHAPTER.numeric(
        "running_load",
        "ZR",
        "What a generator carries",
        "running_load",
        ON_GENERATOR,
        Level(
            ("running_pumps", "input_power", "other_load"),
            "On the generator of {station}, {running_pumps} pumps run at once, and each draws "
            "{input_power}. Lights, controls and heaters draw {other_load}. What is the running load, in "
            "{unit}?",
        ),
        Level(
            ("running_pumps", "input_power", "other_load", "load_power_factor"),
            "On the generator of {station}, {running_pumps} pumps run at once, and each draws "
            "{input_power}. Lights, controls and heaters draw {other_load}. The overall power factor is "
            "{load_power_factor}. How many kVA is that?",
            asked="running_kva",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "largest_start",
        "ZG",
        "Starting kVA of the largest motor",
        "starting_peak",
        ON_GENERATOR,
        Level(
            ("running_kva", "starting_kva"),
            "The generator of {station} carries {running_kva}. Then one more pump starts, and it takes "
            "{starting_kva} at the start. Just add them, which is on the safe side: how many kVA does the generator "
            "have to supply?",
        ),
        Level(
            ("running_kva", "rated_volts", "locked_rotor_amps"),
            "The generator of {station} carries {running_kva}. Then one more pump starts across the line. "
            "Its motor is rated {rated_volts} and takes {locked_rotor_amps} with its rotor locked. Just add the "
            "kVA, which is on the safe side: how many does the generator have to supply?",
        ),
        Level(
            ("running_kva", "rated_volts", "full_load_amps", "starting_percent"),
            "The generator of {station} carries {running_kva}. Then one more pump starts, on a soft starter "
            "set to {starting_percent} of full-load amps. Its motor is rated {rated_volts} and "
            "{full_load_amps}. Just add the kVA, which is on the safe side: how many does the generator have to "
            "supply?",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "generator_share",
        "ZL",
        "How far a generator is loaded",
        "generator_load",
        ON_GENERATOR,
        Level(
            ("running_load", "generator_rating"),
            "The generator of {station} is rated {generator_rating} and carries {running_load}. What percent "
            "of its rating is that?",
        ),
        Level(
            ("running_pumps", "input_power", "other_load", "generator_load"),
            "On the generator of {station}, {running_pumps} pumps run at once. Each draws {input_power}, "
            "and everything else draws {other_load}. It should carry that at {generator_load} of "
            "its rating. What rating does it need?",
            asked="generator_rating",
        ),
        since=2,
    ),
    CHAPTER.judged(
        "load_check",
        "ZJ",
        "Is the generator's load right",
        against(
            GENERATOR_LOAD,
            GENERATOR_LOAD.rule,
            (
                "too_light",
                "Too light: under 30% of its rating, so it can wet stack",
                "A diesel that idles along leaves unburned fuel in its exhaust. Add load, or use a load bank.",
            ),
            (
                "right",
                "Right: 30% to 100% of its rating",
                "Warm enough to burn clean, and within what it can carry.",
            ),
            (
                "overloaded",
                "Overloaded: more than its rating",
                "Shed load before the breaker trips or the engine bogs down. Lock pumps out of the sequence.",
            ),
        ),
        OVERLOADED,
        Level(
            ("running_load", "generator_rating"),
            "At the monthly test, the diesel generator of {station} carries {running_load}. It is rated "
            "{generator_rating}. How is it loaded?",
            find=("generator_load",),
        ),
        Level(
            ("running_pumps", "input_power", "other_load", "generator_rating"),
            "At the monthly test, {running_pumps} pumps run on the diesel generator of {station}. "
            "Each draws {input_power}, and everything else draws {other_load}. The generator is rated "
            "{generator_rating}. How is it loaded?",
            find=("running_load", "generator_load"),
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "generator_amps",
        "ZA",
        "A generator's kVA and amps",
        "generator_kva",
        ENGINE,
        Level(
            ("generator_rating", "generator_power_factor"),
            "A three-phase generator is rated {generator_rating} at a power factor of "
            "{generator_power_factor}. How many kVA is that?",
        ),
        Level(
            ("generator_rating", "generator_power_factor", "generator_volts"),
            "A three-phase generator is rated {generator_rating} at a power factor of "
            "{generator_power_factor} and {generator_volts}. What are its full-load amps?",
            asked="generator_amps",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "generator_frequency",
        "ZH",
        "Frequency from engine speed",
        "generator_frequency",
        ENGINE,
        Level(
            ("engine_speed", "generator_poles"),
            "A generator with {generator_poles} poles turns at {engine_speed}. What frequency does it make?",
        ),
        Level(
            ("generator_frequency", "generator_poles"),
            "A generator with {generator_poles} poles makes {generator_frequency}. How fast does its engine "
            "turn?",
            asked="engine_speed",
        ),
        since=2,
    ),
)
FUEL = CHAPTER.numeric(
    "fuel_hours",
    "ZF",
    "Hours of fuel",
    "fuel_hours",
    FUELED,
    Level(
        ("usable_fuel", "fuel_rate"),
        "The generator of {station} has {usable_fuel} of usable fuel and burns {fuel_rate}. How many hours "
        "will it run?",
    ),
    Level(
        ("fuel_tank", "fuel_level", "fuel_reserve", "fuel_rate"),
        "The generator of {station} has a tank of {fuel_tank}, and the gauge shows {fuel_level}. The last "
        "{fuel_reserve} of the tank can't be drawn. It burns {fuel_rate}. How many hours will it run?",
    ),
    Level(
        ("usable_fuel", "running_load", "fuel_per_energy"),
        "The generator of {station} has {usable_fuel} of usable fuel. It carries {running_load}, and at that "
        "load it burns {fuel_per_energy}. How many hours will it run?",
    ),
    Level(
        ("fuel_hours", "running_load", "fuel_per_energy"),
        "The generator of {station} has to run for {fuel_hours} without a delivery. It carries "
        "{running_load}, and at that load it burns {fuel_per_energy}. How much usable fuel does it need?",
        asked="usable_fuel",
    ),
    since=2,
)
BYPASS = (
    CHAPTER.numeric(
        "bypass_flow",
        "ZB",
        "What a bypass has to carry",
        "peak_inflow",
        BYPASSED,
        Level(
            ("inflow", "peaking_factor"),
            "At {station}, {inflow} comes in on average, with a peaking factor of {peaking_factor}. What flow "
            "does a bypass around it have to carry?",
        ),
        Level(
            ("inflow", "peaking_factor", "bypass_pump"),
            "At {station}, {inflow} comes in on average, with a peaking factor of {peaking_factor}. One rented "
            "bypass pump moves {bypass_pump} at the head it has here. How many would the peak take, before "
            "rounding up?",
            asked="bypass_pumps",
        ),
        since=2,
    ),
    CHAPTER.numeric(
        "trucks_needed",
        "ZT",
        "Hauling with trucks",
        "truck_rate",
        TRUCKED,
        Level(
            ("truck_volume", "round_trip"),
            "The pumps of {station} are out of service, and a truck that holds {truck_volume} hauls from its wet "
            "well. Filling, driving, emptying and coming back take {round_trip}. What flow does one truck keep up with, in "
            "{unit}?",
        ),
        Level(
            ("truck_volume", "round_trip", "inflow"),
            "The pumps of {station} are out of service, and {inflow} is coming in. Trucks that hold "
            "{truck_volume} haul from the wet well, and each round trip takes {round_trip}. How many trucks does that take, before rounding up?",
            asked="trucks_needed",
        ),
        since=2,
    ),
)
IN_WORDS = (
    in_words(CHAPTER, "transfer_switch", "ZS", "Transfer switches: tests and dangers", since=2),
    in_words(CHAPTER, "generator_care", "ZC", "Generators: care, fuel and fumes", since=2),
    in_words(
        CHAPTER, "bypass_pumping", "ZP", "Bypass pumping and getting by", since=2, scene=AT_A_WELL
    ),
)

STANDBY = (*SIZING, FUEL, *BYPASS, *IN_WORDS)
