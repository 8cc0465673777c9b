"""Three powers without names, whose amps count, and the code letter, as judges of a choice."""

from collections.abc import Mapping

from ..draw import Draw
from ..family import Judgement, Option
from ..formulas.nameplate import code_letter
from ..formulas.three_phase import ROOT_THREE
from ..show import exact, figures, with_unit
from ..tables import named_rows
from .against import too_near
from .judges_slip import LIVE

__all__ = ["CODE", "judge_letter", "judge_names", "judge_share", "judge_use"]

CODE = "Your local code and a licensed electrician decide."
ROWS = 5  # rows of the table of code letters that a question shows


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
            f"The line carries the most, and {factor:g} of it does work. {LIVE}",
        ),
        (
            Option(
                "kw_over_kva",
                named("kW", "kVA", "kvar"),
                "Here more kW come out than kVA go in. The power factor is never above 1.",
            ),
            Option(
                "kvar_for_kw",
                named("kVA", "kvar", "kW"),
                f"Here kW over kVA is not {factor:g}. The kW and the kvar have changed places.",
            ),
        ),
        asks=f"Without names, {', '.join(draw.shuffled(tuple(shown.values())))} were noted. "
        "Which set has the names right?",
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
        f"The overload guards this very motor, so its own nameplate counts. {CODE}"
        if by_nameplate
        else f"The wiring must suit any motor of this size, so the table counts. {CODE}"
    )
    options = [
        ("nameplate", f"The nameplate's {plate}"),
        ("table", f"The table's {table}"),
        ("reading", "Today's reading on the highest leg"),
    ]
    right = options.pop(0 if by_nameplate else 1)
    against_it = {
        "nameplate": "The nameplate sets the overload. Wiring goes by the table.",
        "table": "The table is for wiring. The overload goes by the nameplate.",
        "reading": "A reading is one day's load. Limits go by the rating, not by the day.",
    }
    return Judgement(
        "NEC 430.6(A): the nameplate for the overload, the table for the wiring",
        f"nameplate {plate}, table {table}",
        Option(*right, why),
        tuple(Option(*option, against_it[option[0]]) for option in options),
        asks=f"Whose amps does {use} go by?",
    )


def judge_share(values: Mapping[str, float], units: str, draw: Draw) -> Judgement | None:
    """Conductors at 125 % of the table, against the overload's limit by the nameplate."""
    wires = draw.pick((True, False))
    plate, table = values["full_load_amps"], values["table_amps"]
    share = values["overload_percent"] / 100
    shown = {
        "of_table": (1.25 * table, f"Conductors take 125% of the table. {CODE}"),
        "of_nameplate": (share * plate, f"The overload goes by the nameplate. {CODE}"),
        "table_alone": (table, "These are the table's amps with no margin at all."),
    }
    if wires:
        shown["of_nameplate"] = (
            1.25 * plate,
            "This goes by the nameplate. Wiring goes by the table.",
        )
    else:
        shown["of_table"] = (
            share * table,
            "This goes by the table. The overload goes by the nameplate.",
        )
    options = {
        id: Option(id, with_unit(f"{amps:.3g}", "A"), says) for id, (amps, says) in shown.items()
    }
    if len({option.text for option in options.values()}) < len(options):
        return None
    right = options.pop("of_table" if wires else "of_nameplate")
    return Judgement(
        "NEC 430.22: conductors 125% of the table; 430.32: overload 125% or 115% of the nameplate",
        f"the answer is {right.text}",
        right,
        tuple(options.values()),
        asks="How many amps must its conductors carry at least?"
        if wires
        else "How many amps may its overload be set to at first?",
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
        letters[n]: f"{letters[n]} ends at {least[n + 1] - 0.01:.2f}. Here it is {found}."
        if n < at
        else f"{letters[n]} begins at {least[n]:.2f}. Here it is {found}."
        for n in sorted(set(shown) - {at}, key=lambda n: abs(n - at))[:3]
    }
    without = code_letter(size / ROOT_THREE.us.value)
    if without in wrong and "locked_rotor_amps" in values:
        wrong[without] = "Without root three it would be this one. Three phases take 1.732."
    return Judgement(
        "the letter whose range of kVA per horsepower holds it",
        f"{found} is in {letters[at]}",
        Option(letters[at], letters[at], "A later letter asks more of the supply at each start."),
        tuple(Option(letter, letter, says) for letter, says in wrong.items()),
        asks=f"NEC Table 430.7(B) has, in kVA/hp: {rows}. Which code letter is it?",
    )
