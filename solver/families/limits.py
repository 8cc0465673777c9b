"""Phase balance judged: readings against the limits of a standard, a manual or a nameplate."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Family, Judge, Judgement, Level, Option, Scene
from ..formulas import BALANCE
from ..limits import CURRENT_UNBALANCE, DERATED, NAMEPLATE_AMPS, VOLTAGE_UNBALANCE
from ..show import figures, with_unit
from ..tables import derating_factor
from .against import against, too_near
from .legs import AMPS, GRAPH, LEGS_READ, VOLTS, VOLTS_READ, Ranges, legs

__all__ = ["AMPS_CHECK", "CURRENT_LIMITS", "DERATED_LOAD", "VOLTAGE_LIMITS"]

NEMA = "the largest deviation from the average, over the average (NEMA MG 1)"


def judge_manual(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The 5 % of a pump's manual against the 10 % of common practice: the stricter one holds."""
    size = values["current_unbalance"]
    if too_near(size, 5) or size > 10:
        return None
    shown = with_unit(figures(size), "%")
    accept = ("within_manual", "Accept it: the manual's 5% is kept")
    find = ("over_manual", "Find the cause: it is over the manual's 5%")
    usual = Option(
        "usual_for_manual",
        "Accept it: any pump may have up to 10%",
        "The 10% is common practice. Where a manual gives its own limit, that limit holds.",
    )
    over = size > 5
    found = f"current unbalance is {shown}, {'over' if over else 'not over'} 5%"
    right, wrong = (find, accept) if over else (accept, find)
    then = (
        "The manual is stricter than common practice, so its limit holds."
        if over
        else "It keeps the manual's limit, so it keeps the 10% of common practice too."
    )
    return Judgement(
        "the pump's own manual comes before common practice",
        found,
        Option(*right, then),
        (Option(*wrong, f"The {found}."), usual),
    )


def loaded(draw: Draw, units: str) -> dict[str, float]:
    """A shaft load within the derated power, over it, or over the nameplate itself."""
    values = legs(Ranges(volts=((2.5, 4.7),)))(draw, units)
    unbalance = 100 * values["volts_deviation"] / values["volts_average"]
    share = derating_factor(unbalance, units) / 100
    zones = ((0.72 * share, 0.96 * share), (1.025 * share, 0.98), (1.03, 1.1))
    load = values["motor_size"] * draw.between(*draw.pick(zones))
    return values | {"brake_power": float(f"{load:.3g}")}


def judged(name: str, tag: str, title: str, judge: Judge, scene: Scene, *levels: Level) -> Family:
    return Family(name, tag, "balance", title, "choice", levels, scene, BALANCE, judge)


CURRENT_LIMITS = judged(
    "current_limits",
    "UL",
    "Current unbalance: accept it or not",
    against(
        CURRENT_UNBALANCE,
        CURRENT_UNBALANCE.rule,
        ("good", "Good: not over 5%", "Note it with the date, so that a later change shows."),
        (
            "acceptable",
            "Acceptable: over 5%, not over 10%",
            "It may run. Note it, and look again soon: a rise points to a fault.",
        ),
        (
            "investigate",
            "Find the cause: over 10%",
            "One winding runs hot. Look at the supply, the splices and the motor.",
        ),
    ),
    legs(Ranges(amps=((1.8, 4.7), (5.4, 9.5), (10.5, 15)))),
    Level(
        ("amps_average", "amps_deviation"),
        "The legs of {place} average {amps_average}. The largest deviation from the average is "
        "{amps_deviation}. NEMA MG 1 sets that against the average. Common practice calls up to 5% good and up to 10% "
        "acceptable. What do you say of it?",
        find=("current_unbalance",),
    ),
    Level(
        AMPS,
        f"{LEGS_READ} Take {NEMA}. Common practice calls up to 5% good and up to 10% acceptable. "
        "What do you say of it?",
        find=("current_unbalance",),
    ),
    Level(
        AMPS,
        f"{LEGS_READ} The pump's manual allows 5% of current unbalance, common practice 10%. "
        f"Both mean {NEMA}. What do you say of it?",
        find=("current_unbalance",),
        scene=legs(Ranges(amps=((1.8, 4.7), (5.4, 9.5)))),
        judge=judge_manual,
    ),
)

VOLTAGE_LIMITS = judged(
    "voltage_limits",
    "VL",
    "Voltage unbalance: run, derate or stop",
    against(
        VOLTAGE_UNBALANCE,
        VOLTAGE_UNBALANCE.rule,
        (
            "full_load",
            "Nameplate load is allowed: not over 1%",
            "NEMA MG 1 counts on volts this even. Note the readings.",
        ),
        (
            "derate",
            "Less than nameplate load: over 1%, not over 5%",
            "Uneven volts heat the windings. Derate the motor, and find the cause.",
        ),
        (
            "stop",
            "Do not run it: over 5%",
            "NEMA MG 1 advises no running above 5%. Find the cause, or call the power company.",
        ),
    ),
    legs(Ranges(volts=((0.5, 0.9), (1.3, 4.7), (5.4, 7)))),
    Level(
        ("volts_average", "volts_deviation"),
        "The lines of {place} average {volts_average}. The largest deviation from the average is "
        "{volts_deviation}. NEMA MG 1 sets that against the average. What does it allow?",
        find=("voltage_unbalance",),
    ),
    Level(
        VOLTS,
        f"{VOLTS_READ} Take {NEMA}. What does NEMA MG 1 allow?",
        find=("voltage_unbalance",),
    ),
)

DERATED_LOAD = judged(
    "derated_load",
    "DL",
    "Can the motor carry its load on unbalanced volts",
    against(
        DERATED,
        DERATED.rule,
        (
            "carries",
            "Yes: the load is within the derated power",
            "It carries this load. Still find the cause of the unbalance.",
        ),
        (
            "over_derated",
            "No: within the nameplate, but over the derated power",
            "The nameplate counts on even volts. Here the motor would overheat.",
        ),
        (
            "over_nameplate",
            "No: over the nameplate itself",
            "Even with even volts the motor is too small for this load.",
        ),
    ),
    loaded,
    Level(
        ("motor_size", "brake_power", "voltage_unbalance"),
        "The motor of {place} has a nameplate of {motor_size} and carries {brake_power} at the "
        f"shaft. The voltage unbalance is {{voltage_unbalance}}. {GRAPH} Can it carry the load?",
        find=("derated_power",),
    ),
    Level(
        ("motor_size", "brake_power", *VOLTS),
        f"{VOLTS_READ} The motor's nameplate is {{motor_size}}, and it carries {{brake_power}} "
        f"at the shaft. {GRAPH} Can it carry the load?",
        find=("derated_power",),
    ),
)

AMPS_CHECK = judged(
    "amps_check",
    "AC",
    "Amps against the nameplate",
    against(
        NAMEPLATE_AMPS,
        NAMEPLATE_AMPS.rule,
        (
            "within",
            "Within the nameplate: not over full-load amps",
            "Even the highest leg is within what the nameplate allows all day.",
        ),
        (
            "in_margin",
            "Inside the service factor: over full-load amps, not over service-factor amps",
            "The motor runs on its margin, and hotter. Find out why soon.",
        ),
        (
            "overloaded",
            "Overloaded: over service-factor amps",
            "The winding overheats. Take it out of service and find the cause.",
        ),
    ),
    legs(Ranges(amps=((2, 7),), load=((0.75, 0.93), (0.96, 1.0), (1.01, 1.06), (1.15, 1.2)))),
    Level(
        ("amps_highest", "full_load_amps", "service_factor"),
        "The highest leg of {place} draws {amps_highest}. The nameplate says {full_load_amps} and "
        "a service factor of {service_factor}. How is the motor loaded?",
        find=("service_factor_amps",),
    ),
    Level(
        (*AMPS, "full_load_amps", "service_factor"),
        f"{LEGS_READ} The nameplate says {{full_load_amps}} and a service factor of "
        "{service_factor}. How is the motor loaded?",
        find=("service_factor_amps", "amps_highest"),
    ),
)
