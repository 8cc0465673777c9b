"""The nameplate judged: the overload, the code's table, the code letter."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Level
from solver.engine.judgement import Judgement, Option
from solver.topics.limits import OVERLOAD_SETTING
from solver.topics.tables import named_rows
from solver.topics.zones import against, too_near
from solver.units.show import exact, figures, with_unit

from .formulas import code_letter
from .formulas_running import ROOT_THREE
from .stations import CHAPTER, ON_THE_LINE, OVERLOADS, PLATE, worked

__all__ = ["CODE_LETTER", "OVERLOAD", "TABLE_USE"]

CODE = "Your local code and a licensed electrician have the last word."
ROWS = 5  # rows of the table of code letters that a question shows


OVERLOAD = (
    CHAPTER.judged(
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
        OVERLOADS,
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


def judge_use(values: Mapping[str, float], units: str, draw: Draw) -> Judgement:
    """Whose amps count: the nameplate's for the overload, the table's for the wiring."""
    uses = ("the overload", "the conductors", "the breaker", "the disconnect")
    use = draw.pick((uses[0], *uses))
    by_nameplate = use == uses[0]
    plate, table = (
        with_unit(exact(values[name]), "A") for name in ("full_load_amps", "table_amps")
    )
    why = (
        f"The overload protects this one motor, so go by its own nameplate. {CODE}"
        if by_nameplate
        else f"The wiring has to suit any motor this size, so go by the table. {CODE}"
    )
    options = [
        ("nameplate", f"{plate}, from the nameplate"),
        ("table", f"{table}, from the table"),
        ("reading", "Today's reading on the highest leg"),
    ]
    right = options.pop(0 if by_nameplate else 1)
    against_it = {
        "nameplate": "The nameplate is for the overload. Wiring goes by the table.",
        "table": "The table is for the wiring. The overload goes by the nameplate.",
        "reading": "A reading is one day's load. Go by the motor's rating, because loads change.",
    }
    return Judgement(
        "NEC 430.6(A): use the nameplate for the overload and the table for the wiring",
        f"nameplate {plate}, table {table}",
        Option(*right, why),
        tuple(Option(*option, against_it[option[0]]) for option in options),
        asks=f"Which amps do you use for {use}?",
    )


def judge_share(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Conductors at 125 % of the table, against the overload's limit by the nameplate."""
    wires = draw.pick((True, False))
    plate, table = values["full_load_amps"], values["table_amps"]

    def carried(amps: float) -> float:
        return worked({"table_amps": amps}, "conductor_amps", units)

    def set_at(amps: float) -> float:
        read = {"full_load_amps": amps, "service_factor": values["service_factor"]}
        return worked(read, "overload_limit", units)

    shown = {
        "of_table": (carried(table), f"Conductors have to carry 125% of the table amps. {CODE}"),
        "of_nameplate": (set_at(plate), f"The overload goes by the nameplate. {CODE}"),
        "table_alone": (table, "Those are the table amps themselves, with no percent applied."),
    }
    if wires:
        from_plate = "That starts from the nameplate. Wiring goes by the table."
        shown["of_nameplate"] = carried(plate), from_plate
    else:
        from_table = "That starts from the table. The overload goes by the nameplate."
        shown["of_table"] = set_at(table), from_table
    options = {
        id: Option(id, with_unit(f"{amps:.3g}", "A"), says) for id, (amps, says) in shown.items()
    }
    if len({option.text for option in options.values()}) < len(options):
        return None
    right = options.pop("of_table" if wires else "of_nameplate")
    return Judgement(
        "conductors: 125% of the table (NEC 430.22); overload: 125% or 115% of nameplate (430.32)",
        f"the answer is {right.text}",
        right,
        tuple(options.values()),
        asks="At least how many amps do the conductors have to carry?"
        if wires
        else "What is the highest first setting for the overload?",
    )


TABLE_USE = (
    CHAPTER.judged(
        "table_or_nameplate",
        "NN",
        "The table or the nameplate",
        judge_use,
        PLATE,
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


def judge_letter(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """The code letter of NEC Table 430.7(B) for kVA per horsepower."""
    size = values["starting_kva_per_hp"]
    letters = tuple(named_rows("code_letters"))
    least = [row[0] for row in named_rows("code_letters").values()]
    at = letters.index(code_letter(size))
    if any(too_near(size, limit) for limit in least[at : at + 2]):
        return None
    first = at - draw.pick(range(1, ROWS - 1))
    shown = range(first, first + ROWS)
    rows = ", ".join(f"{letters[n]} {least[n]:.2f}–{least[n + 1] - 0.01:.2f}" for n in shown)
    found = with_unit(figures(size), "kVA/hp")
    wrong = {
        letters[n]: f"{letters[n]} ends at {least[n + 1] - 0.01:.2f}. This motor takes {found}."
        if n < at
        else f"{letters[n]} starts at {least[n]:.2f}. This motor takes {found}."
        for n in sorted(set(shown) - {at}, key=lambda n: abs(n - at))[:3]
    }
    without = code_letter(size / ROOT_THREE.us.value)
    if without in wrong and "locked_rotor_amps" in values:
        wrong[without] = "You get this one if you leave out the 1.732 for three-phase power."
    return Judgement(
        "find the range of kVA per horsepower that it falls in",
        f"{found} is in {letters[at]}",
        Option(
            letters[at],
            letters[at],
            "It falls in this range. A letter later in the alphabet means the motor takes more from the "
            "supply when it starts.",
        ),
        tuple(Option(letter, letter, says) for letter, says in wrong.items()),
        asks=f"NEC Table 430.7(B), in kVA/hp: {rows}. Which code letter is it?",
    )


CODE_LETTER = (
    CHAPTER.judged(
        "code_letter",
        "NH",
        "The code letter for starting",
        judge_letter,
        ON_THE_LINE,
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
