"""Three powers without names, whose amps count, and the code letter, as judges of a choice."""

from collections.abc import Mapping

from solver.engine.draw import Draw
from solver.engine.family import Judgement, Option
from solver.topics.limits import too_near
from solver.topics.tables import named_rows
from solver.units.show import exact, figures, with_unit

from .formulas import code_letter
from .formulas_three_phase import ROOT_THREE
from .judges_slip import LIVE

__all__ = ["CODE", "judge_letter", "judge_names", "judge_share", "judge_use"]

CODE = "Your local code and a licensed electrician have the last word."
ROWS = 5  # rows of the table of code letters that a question shows


def listed(names: list[str]) -> str:
    """Three or more in a sentence: "1, 2 and 3"."""
    return f"{', '.join(names[:-1])} and {names[-1]}"


def judge_names(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Three readings without names: kVA is the largest, and kW is kVA times the power factor."""
    factor, kva = values["power_factor"], values["apparent_power"]
    kilowatts, kvar = kva * factor, kva * (1 - factor**2) ** 0.5
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
    share = values["overload_percent"] / 100
    shown = {
        "of_table": (1.25 * table, f"Conductors have to carry 125% of the table amps. {CODE}"),
        "of_nameplate": (share * plate, f"The overload goes by the nameplate. {CODE}"),
        "table_alone": (table, "Those are the table amps themselves, with no percent applied."),
    }
    if wires:
        shown["of_nameplate"] = (
            1.25 * plate,
            "That starts from the nameplate. Wiring goes by the table.",
        )
    else:
        shown["of_table"] = (
            share * table,
            "That starts from the table. The overload goes by the nameplate.",
        )
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
