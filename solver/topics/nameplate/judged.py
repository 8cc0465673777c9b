"""The nameplate judged: the overload, the table, the service factor, the code letter."""

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.topics.drawn.readings import noted
from solver.topics.limits import OVERLOAD_SETTING, SERVICE_LOAD, against

from .judges import CODE, judge_letter, judge_share, judge_use
from .problems_three_phase import READ, judged
from .scenes import nameplate, running, starting

__all__ = ["CODE_LETTER", "OVERLOAD", "SERVICE", "TABLE_USE"]


def overloaded_at(draw: Draw, units: str) -> dict[str, float]:
    """A nameplate, and an overload that somebody has set within the limit, over it, or far over."""
    values = nameplate(draw, units)
    low = values["overload_percent"]
    zones = ((low - 20, low - 3), (low + 3, low + 12), (low + 19, low + 45))
    amps = values["full_load_amps"]
    return values | {
        "overload_limit": noted(amps * low / 100),
        "raised_limit": noted(amps * (low + 15) / 100),
        "overload_setting": noted(amps * draw.between(*draw.pick(zones)) / 100),
    }


def loaded(draw: Draw, units: str) -> dict[str, float]:
    """A motor within its nameplate power, inside its service factor, or over it."""
    values = running(draw, units)
    factor = values["service_factor"]
    now = values["brake_power"] / values["motor_size"]
    zones = ((0.7, 0.97), (1.03, factor - 0.03), (factor + 0.03, factor + 0.12))
    scale = draw.between(*draw.pick(zones)) / now
    return values | {name: noted(values[name] * scale) for name in ("brake_power", "line_amps")}


OVERLOAD = (
    judged(
        "overload_setting",
        "NB",
        "An overload setting: allowed or not",
        against(
            OVERLOAD_SETTING,
            OVERLOAD_SETTING.rule,
            ("allowed", "Allowed", f"It is within the first limit. {CODE}"),
            (
                "if_it_will_not_start",
                "Allowed only if the motor won't start at the first limit",
                f"First find out why the motor needs that much. {CODE}",
            ),
            (
                "never",
                "Not allowed: set it lower",
                f"Set this high, it would let the winding burn up. {CODE}",
            ),
        ),
        overloaded_at,
        Level(
            ("full_load_amps", "overload_limit", "raised_limit", "overload_setting"),
            "The nameplate of {place} shows full-load amps (FLA) of {full_load_amps}. NEC 430.32 "
            "lets you set the overload up to {overload_limit}, or up to {raised_limit} if the "
            "motor won't start. It is set at {overload_setting}. Is that allowed?",
        ),
        Level(
            ("full_load_amps", "service_factor", "overload_setting"),
            "NEC 430.32 allows 125% of full-load amps at a service factor of 1.15 or more, "
            "otherwise 115%. If the motor won't start, it allows 140% or 130%. The nameplate of "
            "{place} shows {full_load_amps} and a service factor of {service_factor}. "
            "The overload is set at {overload_setting}. Is that allowed?",
            find=("overload_limit", "raised_limit"),
        ),
    ),
)

TABLE_USE = (
    judged(
        "table_or_nameplate",
        "NN",
        "The table or the nameplate",
        judge_use,
        nameplate,
        Level(
            ("full_load_amps", "table_amps"),
            "The nameplate of {place} shows full-load amps (FLA) of {full_load_amps}. The code "
            "table lists {table_amps} for a motor this size. {asks}",
        ),
        Level(
            ("full_load_amps", "table_amps", "service_factor"),
            "The nameplate of {place} shows full-load amps (FLA) of {full_load_amps} and a service "
            "factor (SF) of {service_factor}. The code table lists {table_amps}. "
            "Go by NEC 430.22 and 430.32. {asks}",
            judge=judge_share,
        ),
    ),
)

SERVICE = (
    judged(
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
                "The margin isn't meant for every day. The winding runs hotter and ages faster.",
            ),
            (
                "overloaded",
                "Overloaded: over the service factor",
                "The winding is overheating. Reduce the load, and find the cause.",
            ),
        ),
        loaded,
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

CODE_LETTER = (
    judged(
        "code_letter",
        "NH",
        "The code letter for starting",
        judge_letter,
        starting,
        Level(
            ("starting_kva_per_hp",),
            "With the rotor locked, the motor of {place} takes {starting_kva_per_hp}. {asks}",
        ),
        Level(
            ("motor_size", "rated_volts", "locked_rotor_amps"),
            "The {motor_size} motor of {place} has locked-rotor amps (LRA) of {locked_rotor_amps} "
            "at {rated_volts}. {asks}",
            find=("starting_kva_per_hp",),
        ),
    ),
)
