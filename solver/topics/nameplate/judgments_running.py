"""A running motor judged: which power is which, what amps tell of the load, the service factor."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.topics.limits import LOAD_BY_AMPS, SERVICE_LOAD
from solver.topics.readings import AMPS, only
from solver.topics.zones import against

from .stations import CHAPTER, LEGS_READ, LIVE, LOADED, READ, SERVICE_PLATE, by_amps, worked

__all__ = ["FROM_AMPS", "SERVICE"]


def listed(names: list[str]) -> str:
    """Three or more in a sentence: "1, 2 and 3"."""
    return f"{', '.join(names[:-1])} and {names[-1]}"


def judge_names(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three readings without names: kVA is the largest, and kW is kVA times the power factor."""
    read = only(values, "apparent_power", "power_factor")
    factor, kva = read["power_factor"], read["apparent_power"]
    kilowatts, kvar = (worked(read, name, units) for name in ("input_power", "reactive_power"))
    if kilowatts < 1.08 * kvar:
        return None
    three = {"kVA": kva, "kW": kilowatts, "kvar": kvar}
    shown = {unit: f"{value:.3g}" for unit, value in three.items()}

    def named(*order: str) -> str:
        numbers = [shown[unit] for unit in order]
        return ", ".join(f"{n} {unit}" for n, unit in zip(numbers, three, strict=True))

    return Judgement(
        "kVA is the largest; kW is kVA times the power factor",
        f"{shown['kVA']} kVA × {factor:g} = {shown['kW']} kW",
        Option(
            "in_order",
            named("kVA", "kW", "kvar"),
            f"The kVA is the largest, and {factor:g} of it is the kW that does the work. {LIVE}",
        ),
        (
            Option(
                "kw_over_kva",
                named("kW", "kVA", "kvar"),
                "That has more kW than kVA. Power factor is never above 1, so kW can't be larger.",
            ),
            Option(
                "kvar_for_kw",
                named("kVA", "kvar", "kW"),
                f"The kW and the kvar are swapped. The kW has to be {factor:g} of the kVA.",
            ),
        ),
        asks=f"Someone wrote down {listed(draw.shuffled(tuple(shown.values())))} but not what "
        "they were. Which set of labels is right?",
    )


FROM_AMPS = (
    CHAPTER.judged(
        "names_of_powers",
        "NJ",
        "Which reading is kVA, kW or kvar",
        judge_names,
        LOADED,
        Level(
            ("power_factor",),
            "{place} runs at a power factor (PF) of {power_factor}. {asks}",
        ),
        Level(
            ("line_volts", "line_amps", "power_factor"),
            f"{READ} The power factor (PF) is {{power_factor}}. {{asks}}",
            find=("apparent_power",),
        ),
    ),
    CHAPTER.judged(
        "load_method",
        "NU",
        "What amps can tell you about the load",
        against(
            LOAD_BY_AMPS,
            LOAD_BY_AMPS.rule,
            (
                "too_low",
                "Too low to tell: measure the kilowatts",
                f"Even with no load, a motor draws a third or more of its full-load amps. {LIVE}",
            ),
            (
                "fair",
                "A fair estimate of the load",
                "In this range the amps follow the load well. Kilowatts are better still.",
            ),
            (
                "over",
                "Over full load: check the service factor",
                "The winding is running hot. Find out why before you let it keep running.",
            ),
        ),
        by_amps(notes=False),
        Level(
            ("line_volts", "line_amps", "rated_volts", "full_load_amps"),
            f"{READ} The nameplate shows {{rated_volts}} and full-load amps (FLA) of "
            "{full_load_amps}. Corrected for the volts, what do the amps tell you about the load?",
            find=("load_by_amps",),
        ),
        Level(
            ("line_volts", *AMPS, "rated_volts", "full_load_amps"),
            f"{LEGS_READ} The nameplate shows {{rated_volts}} and full-load amps (FLA) of "
            "{full_load_amps}. Corrected for the volts, what do the average amps tell you about "
            "the load?",
            find=("load_by_amps",),
            scene=by_amps(notes=True),
        ),
    ),
)


SERVICE = (
    CHAPTER.judged(
        "service_load",
        "NV",
        "Load against the service factor",
        against(
            SERVICE_LOAD,
            SERVICE_LOAD.rule,
            (
                "within",
                "Within the nameplate rating",
                "It can carry this load all day.",
            ),
            (
                "in_margin",
                "In the service factor: over the rating, but within the margin",
                "NEMA MG 1 lets it run there, even all day. But it runs hotter and won't last as long.",
            ),
            (
                "overloaded",
                "Overloaded: over the service factor",
                "The winding is overheating. Reduce the load, and find the cause.",
            ),
        ),
        SERVICE_PLATE,
        Level(
            ("brake_power", "motor_size", "service_factor"),
            "The nameplate of {place} says {motor_size} with a service factor (SF) of "
            "{service_factor}. The shaft is carrying {brake_power}. How is the motor loaded?",
            find=("service_power",),
        ),
        Level(
            (
                "line_volts",
                "line_amps",
                "power_factor",
                "motor_efficiency",
                "motor_size",
                "service_factor",
            ),
            f"{READ} The power factor (PF) is {{power_factor}} and the motor efficiency is "
            "{motor_efficiency}. The nameplate says {motor_size} with a service factor (SF) of "
            "{service_factor}. How is the motor loaded?",
            find=("brake_power", "service_power"),
        ),
    ),
)
