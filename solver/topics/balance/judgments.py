"""Phase balance judged: readings against the limits of a standard, a manual or a nameplate."""

from collections.abc import Mapping
from dataclasses import replace

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.station.need import Need
from solver.station.scene import OneOf
from solver.topics.limits import CURRENT_UNBALANCE, DERATED, NAMEPLATE_AMPS, VOLTAGE_UNBALANCE
from solver.topics.zones import against, too_near
from solver.units.show import figures, with_unit

from .legs import (
    AMPS,
    CHAPTER,
    GRAPH,
    LEGS_READ,
    LINE,
    METHOD,
    POINTS,
    VOLTS,
    VOLTS_READ,
    amps,
    volts,
)

__all__ = ["AMPS_CHECK", "CURRENT_LIMITS", "DERATED_LOAD", "VOLTAGE_LIMITS"]

RULE = "A common rule: up to 5% is good, up to 10% is acceptable."
MANUAL = 5  # percent of current unbalance that a pump's manual allows


def judge_manual(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The 5 % of a pump's manual against the 10 % of common practice: the stricter one holds."""
    size = values["current_unbalance"]
    _, acceptable = CURRENT_UNBALANCE.at(values)
    if too_near(size, MANUAL) or size > acceptable:
        return None
    shown = with_unit(figures(size), "%")
    accept = ("within_manual", "Accept it: it is within the manual's 5%")
    find = ("over_manual", "Find the cause: it is over the manual's 5%")
    usual = Option(
        "usual_for_manual",
        "Accept it: any pump can have up to 10%",
        "The 10% is a general rule. When the pump's manual gives its own limit, go by the manual.",
    )
    over = size > MANUAL
    found = f"current unbalance is {shown}, {'over' if over else 'within'} 5%"
    right, wrong = (find, accept) if over else (accept, find)
    then = (
        "The manual is stricter than the general rule, so go by the manual."
        if over
        else "It is within the manual's limit, so it is within the general 10% too."
    )
    return Judgement(
        "the pump's own manual comes before the general rule",
        found,
        Option(*right, then),
        (Option(*wrong, f"The {found}."), usual),
    )


CURRENT_LIMITS = CHAPTER.judged(
    "current_limits",
    "UL",
    "Current unbalance: accept it or not",
    against(
        CURRENT_UNBALANCE,
        CURRENT_UNBALANCE.rule,
        ("good", "Good: 5% or less", "Write it down with the date, so a later change shows."),
        (
            "acceptable",
            "Acceptable: over 5%, up to 10%",
            "It can run. Write it down and check again soon: if it climbs, look for a fault.",
        ),
        (
            "investigate",
            "Find the cause: over 10%",
            "One winding is running hot. Check the supply, the splices and the motor.",
        ),
    ),
    amps((1.8, 4.7), (5.4, 9.5), (10.5, 15)),
    Level(
        ("amps_average", "amps_deviation"),
        "The legs of {place} average {amps_average}. The largest deviation from the average is "
        f"{{amps_deviation}}. Current unbalance is that deviation divided by the average. {RULE} "
        "What is your call?",
        find=("current_unbalance",),
    ),
    Level(
        AMPS,
        f"{LEGS_READ} Current unbalance is {METHOD}. {RULE} What is your call?",
        find=("current_unbalance",),
    ),
    Level(
        AMPS,
        f"{LEGS_READ} The pump's manual allows 5% current unbalance. A common rule allows 10%. "
        f"Both mean {METHOD}. What is your call?",
        find=("current_unbalance",),
        scene=amps((1.8, 4.7), (5.4, 9.5)),
        judge=judge_manual,
    ),
)

VOLTAGE_LIMITS = CHAPTER.judged(
    "voltage_limits",
    "VL",
    "Voltage unbalance: run, derate or stop",
    against(
        VOLTAGE_UNBALANCE,
        VOLTAGE_UNBALANCE.rule,
        (
            "full_load",
            "Full nameplate load: 1% or less",
            "Volts this even are what the nameplate is based on. Write the readings down.",
        ),
        (
            "derate",
            "Less than nameplate load: over 1%, up to 5%",
            "Unbalanced volts heat the windings. Derate the motor, and find the cause.",
        ),
        (
            "stop",
            "Don't run it: over 5%",
            "NEMA MG 1 says not to run a motor above 5%. Find the cause, or call the power company.",
        ),
    ),
    volts((0.5, 0.9), (1.3, 4.7), (5.4, 7)),
    Level(
        ("volts_average", "volts_deviation"),
        "Line to line, {place} averages {volts_average}. The largest deviation from the average is "
        "{volts_deviation}. What does NEMA MG 1 allow at this voltage unbalance?",
        find=("voltage_unbalance",),
    ),
    Level(
        VOLTS,
        f"{VOLTS_READ} Voltage unbalance is {METHOD}. What does NEMA MG 1 allow?",
        find=("voltage_unbalance",),
    ),
)

# A shaft within the derated power, over it, or over the nameplate itself.
LOADED = OneOf(
    tuple(
        volts((2.5, 4.7), need=Need(drives=("direct",), load=load))
        for load in ((55, 76), (88, 98), (103, 112))
    )
)

DERATED_LOAD = CHAPTER.judged(
    "derated_load",
    "DL",
    "Load on unbalanced volts: carry it or not",
    against(
        DERATED,
        DERATED.rule,
        (
            "carries",
            "Yes: the load is within the derated rating",
            "The motor can carry this load. You still need to find the cause of the unbalance.",
        ),
        (
            "over_derated",
            "No: within the nameplate, but over the derated rating",
            "The nameplate is for balanced volts. On these volts the motor would overheat.",
        ),
        (
            "over_nameplate",
            "No: over the nameplate rating itself",
            "Even on balanced volts, the motor is too small for this load.",
        ),
    ),
    LOADED,
    Level(
        ("motor_size", "brake_power", "voltage_unbalance"),
        "The motor of {place} is rated {motor_size} and carries {brake_power} at the shaft. "
        f"The voltage unbalance is {{voltage_unbalance}}. {GRAPH} Can the motor carry the load?",
        find=("derated_power",),
        table=POINTS,
    ),
    Level(
        ("motor_size", "brake_power", *VOLTS),
        f"{VOLTS_READ} The motor is rated {{motor_size}} and carries {{brake_power}} at the "
        f"shaft. {GRAPH} Can the motor carry the load?",
        find=("derated_power",),
        table=POINTS,
    ),
)

# Amps within the nameplate, in the margin, over it.
OVER_AND_UNDER = OneOf(
    tuple(amps((2, 6), need=replace(LINE, load=load)) for load in ((60, 92), (99, 107), (115, 124)))
)

AMPS_CHECK = CHAPTER.judged(
    "amps_check",
    "AC",
    "Amps against the nameplate",
    against(
        NAMEPLATE_AMPS,
        NAMEPLATE_AMPS.rule,
        (
            "within",
            "Within the nameplate: full-load amps or less",
            "Even the highest leg is within what the nameplate allows all day.",
        ),
        (
            "in_margin",
            "In the service factor: over full-load amps, up to service-factor amps",
            "It may run like this, but hotter and with a shorter life (NEMA MG 1). Find out why soon.",
        ),
        (
            "overloaded",
            "Overloaded: over service-factor amps",
            "The winding is overheating. Take the pump out of service and find the cause.",
        ),
    ),
    OVER_AND_UNDER,
    Level(
        ("amps_highest", "full_load_amps", "service_factor"),
        "The highest leg of {place} draws {amps_highest}. The nameplate shows full-load amps (FLA) "
        "of {full_load_amps} and a service factor (SF) of {service_factor}. "
        "How is the motor loaded?",
        find=("service_factor_amps",),
    ),
    Level(
        (*AMPS, "full_load_amps", "service_factor"),
        f"{LEGS_READ} The nameplate shows full-load amps (FLA) of {{full_load_amps}} and a "
        "service factor (SF) of {service_factor}. How is the motor loaded?",
        find=("service_factor_amps", "amps_highest"),
    ),
)
